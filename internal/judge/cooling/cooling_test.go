package cooling_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/cooling"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

type (
	temperature = *quantity.Uncertain[quantity.Temperature]
	gauge       = *quantity.Uncertain[quantity.GaugePressure]
)

func fahrenheit(f float64) temperature {
	return new(quantity.Fahrenheit(f).PlusMinus(quantity.FahrenheitDelta(0.8)))
}

// caseOf is a case of three tons of R-410A, with what follows from its readings.
func caseOf(
	t interface{ Fatal(...any) },
	in readcheck.Input,
	metering refrigerant.Metering,
) *modes.Case {
	fluid, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	in.Atmosphere = quantity.StandardAtmosphere
	at := func(of func(quantity.Pressure) (quantity.Temperature, error), g gauge) temperature {
		if g == nil {
			return nil
		}
		v, err := of(g.Value.Absolute(in.Atmosphere))
		if err != nil {
			t.Fatal(err)
		}
		return new(v.PlusMinus(0.3))
	}
	less := func(a, b temperature) *quantity.Uncertain[quantity.TemperatureDelta] {
		if a == nil || b == nil {
			return nil
		}
		return &quantity.Uncertain[quantity.TemperatureDelta]{Value: a.Value.Sub(b.Value), Std: 0.6}
	}
	in.EvaporatingDew = at(fluid.DewTemperature, in.SuctionPressure)
	in.CondensingBubble = at(fluid.BubbleTemperature, in.LiquidPressure)
	in.CondensingDew = at(fluid.DewTemperature, in.LiquidPressure)
	c := &modes.Case{
		Evidence: diagnose.Evidence{
			Input: in, Fluid: fluid, Others: diagnose.Alternatives(fluid),
			Atmosphere: in.Atmosphere, Metering: metering, NominalCapacity: quantity.Tons(3),
			Doubts: readcheck.Check(&in),
		},
		Fluid: fluid, Site: in.Atmosphere.PlusMinus(quantity.Pascals(800)),
		Superheat:   less(in.SuctionLine, in.EvaporatingDew),
		Subcooling:  less(in.CondensingBubble, in.LiquidLine),
		Answered:    func() []charge.Moved { return nil },
		WholeCharge: quantity.Pounds(7), WeighingWants: modes.MeasureLine,
	}
	c.Method = charge.MethodFor(metering)
	return c
}

// sound are the readings of a machine on a hot day with nothing wrong.
func sound() readcheck.Input {
	return readcheck.Input{
		SuctionPressure: new(quantity.PSIG(135).PlusMinus(quantity.PSIG(0.6))),
		LiquidPressure:  new(quantity.PSIG(390).PlusMinus(quantity.PSIG(0.6))),
		SuctionLine:     fahrenheit(58), LiquidLine: fahrenheit(106),
		OutdoorDryBulb: fahrenheit(95),
		ReturnDryBulb:  fahrenheit(76), ReturnWetBulb: fahrenheit(63),
		SupplyDryBulb: fahrenheit(57),
	}
}

func TestFreeze(t *testing.T) {
	for _, x := range []struct {
		name   string
		change func(*readcheck.Input)
		bare   bool // of the capacity
		says   fact.Code
		low    float64 // of the chance
		high   float64
	}{
		{name: "a hot day", says: "freeze.clear", high: 0.05},
		{name: "a suction of 70 psig", says: "freeze.freezing", low: 0.95, high: 1,
			change: func(in *readcheck.Input) {
				in.SuctionPressure = new(quantity.PSIG(70).PlusMinus(quantity.PSIG(0.6)))
				in.SupplyDryBulb = fahrenheit(64) // such a coil cools less
			}},
		{name: "no wet bulb", says: "freeze.not-read",
			change: func(in *readcheck.Input) { in.ReturnWetBulb = nil }},
		{name: "a machine of unknown size", bare: true, says: "freeze.by-rule", high: 0.05},
	} {
		in := sound()
		if x.change != nil {
			x.change(&in)
		}
		c := caseOf(t, in, refrigerant.TXV)
		if x.bare {
			c.NominalCapacity = 0
		}
		f := cooling.Judge(c).Freeze
		if f.Says.Code != x.says || !(f.Chance >= x.low && f.Chance <= x.high) {
			t.Errorf("%s: %s, %.3f", x.name, f.Says.Code, f.Chance)
		}
		if by := airside.IcingChance(*c.EvaporatingDew); x.says != "freeze.not-read" &&
			f.Chance < by {
			t.Errorf("%s: %.3f, and %.3f by the rule", x.name, f.Chance, by)
		}
		if (f.Surface == nil) != (f.Outcome == 0) {
			t.Errorf("%s: %v with a surface of %v", x.name, f.Outcome, f.Surface)
		}
	}
}

// A verdict alone holds no freezing.
func TestVerdictWithoutFreeze(t *testing.T) {
	c := caseOf(t, sound(), refrigerant.TXV)
	c.NoPairs = true
	if f := cooling.Judge(c).Freeze; f != nil {
		t.Errorf("%+v", f)
	}
}

var (
	dangers = []string{
		"condensing-highest", "suction-in-vacuum", "floodback", "slugging", "discharge-cool",
		"current-high", "evaporating-coldest",
	}
	spoils = []string{
		"coil-iced", "panels-off", "run-short", "just-moved", "coil-wet", "doors-open", "house",
		"outdoor-cold", "fluid-in-vacuum",
	}
)

// anyCase is one of any readings, sights and answers that belong together or not.
func anyCase(t *rapid.T) *modes.Case {
	some := func(name string) bool { return rapid.IntRange(0, 4).Draw(t, name) > 0 }
	seldom := func(name string) bool { return rapid.IntRange(0, 7).Draw(t, name) == 0 }
	read := func(name string, low, high float64) temperature {
		if !some(name + " is read") {
			return nil
		}
		return fahrenheit(rapid.Float64Range(low, high).Draw(t, name))
	}
	pressure := func(name string, low, high float64) gauge {
		if !some(name + " is read") {
			return nil
		}
		p := quantity.PSIG(rapid.Float64Range(low, high).Draw(t, name))
		return new(p.PlusMinus(quantity.PSIG(0.6)))
	}
	devices := []refrigerant.Metering{
		refrigerant.FixedRestrictor, refrigerant.TXV, refrigerant.EXV, refrigerant.Capillary,
	}
	c := caseOf(t, readcheck.Input{
		SuctionPressure: pressure("suction", 5, 300), LiquidPressure: pressure("liquid", 50, 600),
		SuctionLine: read("suction line", 0, 130), LiquidLine: read("liquid line", 20, 150),
		DischargeLine: read("discharge", 60, 280), OutdoorDryBulb: read("outdoor", 20, 125),
		ReturnDryBulb: read("return", 50, 100), ReturnWetBulb: read("wet bulb", 40, 85),
		SupplyDryBulb: read("supply", 25, 95), CondenserLeaving: read("leaving", 30, 150),
	}, rapid.SampledFrom(devices).Draw(t, "metering"))
	if seldom("of unknown size") {
		c.NominalCapacity, c.WholeCharge = 0, 0
	}
	if target, err := charge.SubcoolingTarget(nil); err == nil && c.Method == charge.Subcooling &&
		c.Subcooling != nil {
		c.Target = &target
		off := quantity.Uncertain[quantity.TemperatureDelta]{
			Value: c.Subcooling.Value - target.Value.Value, Std: c.Subcooling.Std,
		}
		c.Reading = &modes.Reading{
			Method: c.Method, Measured: *c.Subcooling, Target: &target.Value,
			Tolerance: target.Tolerance, Deviation: &off, Says: fact.New("reading.within"),
		}
	}
	if c.SuctionPressure != nil {
		c.Given = append(c.Given, "suctionPressure")
	}
	c.Seen = diagnose.Sights{
		FilterDirty: seldom("filter"), OutdoorCoilDirty: seldom("coil"), CoilIced: seldom("ice"),
		SealedSystemOpened: seldom("opened"), WaterComplaint: seldom("water"),
		NotCoolingComplaint: seldom("warm"), OilStains: seldom("oil"),
	}
	for _, code := range dangers {
		if seldom(code) {
			c.Dangers = append(c.Dangers, modes.Danger{
				Code: code, Stops: code == "condensing-highest" || code == "suction-in-vacuum",
				Says: fact.New(fact.Code("danger." + code)),
			})
		}
	}
	if seldom("spoiled") {
		code := rapid.SampledFrom(spoils).Draw(t, "spoils")
		c.Spoils = append(c.Spoils, charge.Obstacle{
			Code: code, Spoils: true, Says: fact.New(fact.Code("condition." + code)),
		})
	}
	if seldom("moved") {
		c.Moved = quantity.Ounces(rapid.Float64Range(-60, 60).Draw(t, "mass"))
		c.NetMoved, c.ReadBeforeMove = c.Moved, rapid.Bool().Draw(t, "read before")
		if c.Reading != nil {
			c.Answered = func() []charge.Moved {
				return []charge.Moved{
					{Value: c.Target.Value}, {Net: c.NetMoved, Value: c.Reading.Measured},
				}
			}
		}
	}
	c.NoPairs = seldom("verdict")
	for _, l := range cooling.Looks() {
		if rapid.IntRange(0, 15).Draw(t, l.Code) == 0 {
			c.Answers = append(
				c.Answers,
				diagnose.Answer{Code: l.Code, Yes: rapid.Bool().Draw(t, "yes")},
			)
		}
	}
	return c
}

// notFinite finds a number that is none, or without end.
func notFinite(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float64:
		return math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0)
	case reflect.Pointer, reflect.Interface:
		return !v.IsNil() && notFinite(v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			if notFinite(v.Field(i)) {
				return true
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if notFinite(v.Index(i)) {
				return true
			}
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			if notFinite(v.MapIndex(k)) {
				return true
			}
		}
	}
	return false
}

// What package modes says that a judge owes.
func TestJudgeOwes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCase(t)
		j := cooling.Judge(c)
		if notFinite(reflect.ValueOf(j)) {
			t.Fatalf("not a finite number in %+v", j)
		}
		chance := func(what string, p float64) {
			if !(p >= 0 && p <= 1+1e-9) {
				t.Fatalf("%s: a chance of %v", what, p)
			}
		}
		for _, f := range j.Findings {
			chance(f.Cause, f.Chance)
			sum := 0.0
			for _, x := range f.Faults {
				chance(x.Fault, x.Chance)
				sum += x.Chance
			}
			chance("faults of "+f.Cause, sum)
		}
		for field, p := range j.Lies {
			chance(field, p)
		}
		if q := j.Ask; q != nil {
			sum := 0.0
			for _, o := range q.Outcomes {
				chance(o.Then, o.ThenChance)
				sum += o.Chance
			}
			chance("answers", sum)
		}
		sum := j.Charge.Low + j.Charge.InBand + j.Charge.High
		unjudged := j.Charge.Outcome == modes.NotJudged
		if unjudged != (sum == 0) || sum != 0 && math.Abs(sum-1) > 1e-9 {
			t.Fatalf("the charge is %s: %+v", j.Charge.Outcome, j.Charge)
		}
		if unjudged && len(j.Charge.Why) == 0 {
			t.Fatal("no reason why the charge is not judged")
		}
		if j.Headline.IsZero() || len(j.Steps) == 0 {
			t.Fatalf("%v, %d steps", j.Headline, len(j.Steps))
		}
		for _, s := range j.Steps {
			chance(string(s.Do.Code), s.Chance)
			if c.NoPairs && s.Moves &&
				slices.Contains([]fact.Code{modes.Add, modes.Recover}, s.Do.Code) {
				t.Fatalf("%s by a verdict alone", s.Do.Code)
			}
		}
		exact := cmp.Exporter(func(reflect.Type) bool { return true })
		if d := cmp.Diff(j.Steps, modes.InOrder(j.Steps), exact); d != "" {
			t.Fatalf("out of order: %s", d)
		}
		if d := cmp.Diff(j, cooling.Judge(c), exact); d != "" {
			t.Fatalf("two answers to one case: %s", d)
		}
	})
}
