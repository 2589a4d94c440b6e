package heatpump_test

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/heatpump"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"golang.org/x/text/language"
	"pgregory.net/rapid"
)

func lookup(t interface{ Fatal(...any) }, designation string) *refrigerant.Refrigerant {
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func temperature(f, std float64) *quantity.Uncertain[quantity.Temperature] {
	u := quantity.Fahrenheit(f).PlusMinus(quantity.FahrenheitDelta(std))
	return &u
}

// ofInstrument are the causes that an owner is told as a measurement taken again.
var ofInstrument = map[string]bool{
	"suction-clamp": true, "liquid-clamp": true, "suction-gauge-zero": true,
	"liquid-gauge-zero": true, "supply-sensor": true, "discharge-clamp": true,
}

// drawn is a case of any readings at all.
func drawn(t *rapid.T) *modes.Case {
	fluids := []string{"R-410A", "R-22", "R-454B", "R-407C"}
	fluid := lookup(t, rapid.SampledFrom(fluids).Draw(t, "fluid"))
	maybe := func(name string, low, high float64) *quantity.Uncertain[quantity.Temperature] {
		if rapid.IntRange(0, 3).Draw(t, name+" read") == 0 {
			return nil
		}
		return temperature(rapid.Float64Range(low, high).Draw(t, name), 0.8)
	}
	c := &modes.Case{
		Fluid: fluid, WholeCharge: quantity.Pounds(8), WeighingWants: "step.measure-line",
	}
	c.Evidence = diagnose.Evidence{
		Input: readcheck.Input{
			EvaporatingDew:   maybe("evaporating", -40, 60),
			CondensingBubble: maybe("condensing", 30, 150),
			SuctionLine:      maybe("suction line", -40, 140),
			LiquidLine:       maybe("liquid line", 10, 150),
			DischargeLine:    maybe("discharge", 40, 260),
			OutdoorDryBulb:   maybe("outdoor", -30, 75),
			ReturnDryBulb:    maybe("return", 40, 90),
			SupplyDryBulb:    maybe("supply", 40, 150),
			CondenserLeaving: maybe("leaving", -40, 75),
			Atmosphere:       quantity.StandardAtmosphere,
		},
		Fluid: fluid, Others: diagnose.Alternatives(fluid), Atmosphere: quantity.StandardAtmosphere,
		Metering: rapid.SampledFrom([]refrigerant.Metering{0, 1, 2, 3, 4}).
			Draw(t, "metering"),
		NominalCapacity: quantity.Tons(rapid.SampledFrom([]float64{0, 2, 5}).Draw(t, "tons")),
	}
	c.CondensingDew = c.CondensingBubble
	for _, l := range heatpump.Looks() {
		switch rapid.IntRange(0, 9).Draw(t, l.Code) {
		case 0:
			c.Answers = append(c.Answers, diagnose.Answer{Code: l.Code, Yes: true})
		case 1:
			c.Answers = append(c.Answers, diagnose.Answer{Code: l.Code})
		}
	}
	c.Seen.CoilIced = rapid.Bool().Draw(t, "ice")
	c.Seen.FilterDirty = rapid.Bool().Draw(t, "filter")
	return c
}

// Whatever is read, chances are chances, every fact has its sentence, no refrigerant is added,
// and where the machine is stopped no step needs it running before it is started again.
func TestJudgeOfAnything(t *testing.T) {
	shapes := words.Shapes(language.English)
	rapid.Check(t, func(t *rapid.T) {
		c := drawn(t)
		j := heatpump.Judge(c)
		said := func(f fact.Fact) {
			if _, ok := shapes[string(f.Code)]; !ok {
				t.Fatalf("no sentence for %q", f.Code)
			}
			for _, v := range f.Values {
				if x, is := v.Of.(fact.Share); is && !(x >= 0 && x <= 1.0000001) {
					t.Fatalf("%v", f)
				}
				if x, is := v.Of.(fact.Term); is {
					if _, ok := shapes[string(x)]; !ok {
						t.Fatalf("no words for %q", x)
					}
				}
			}
		}
		said(j.Headline)
		for _, d := range j.Dangers {
			said(d.Says)
			said(fact.New(fact.Code("danger." + d.Code + ".why")))
		}
		if len(j.Steps) == 0 {
			t.Fatal("nothing to do")
		}
		for _, s := range j.Steps {
			said(s.Do)
			if !s.Why.IsZero() {
				said(s.Why)
			}
			if s.Do.Code == "step.add" || s.Do.Code == "step.add-little" {
				t.Fatal("refrigerant is added in heating")
			}
		}
		sum := 0.0
		for _, f := range j.Findings {
			sum += f.Chance
			said(f.Says)
			said(fact.New(fact.Code("cause." + f.Cause)))
			_, ok := shapes["owner.cause."+f.Cause]
			if !ok && f.Cause != "sound" && !ofInstrument[f.Cause] {
				t.Fatalf("no words to the owner for %s", f.Cause)
			}
			for _, s := range append(f.For, f.Against...) {
				said(s)
			}
		}
		// Two causes may be at once, and neither where nothing is wrong.
		nothing, most := 0.0, 0.0
		for _, f := range j.Findings {
			if f.Cause == "sound" {
				nothing = f.Chance
			} else {
				most = max(most, f.Chance)
			}
		}
		if !(nothing+most <= 1.000001) || !(sum <= 2-nothing+0.000001) {
			t.Fatalf("chances add up to %g, nothing wrong %g, the likeliest %g", sum, nothing, most)
		}
		if c := j.Charge; c.Outcome != "not-judged" && math.Abs(c.Low+c.InBand+c.High-1) > 1e-9 {
			t.Fatalf("%+v", c)
		}
		for _, f := range append(j.Performance, j.Charge.Why...) {
			said(f)
		}
	})
}

// soundCase is a machine that heats as it should.
func soundCase(t interface{ Fatal(...any) }) *modes.Case {
	fluid := lookup(t, "R-410A")
	c := &modes.Case{
		Fluid: fluid, WholeCharge: quantity.Pounds(8), WeighingWants: "step.measure-line",
	}
	c.Evidence = diagnose.Evidence{
		Input: readcheck.Input{
			EvaporatingDew: temperature(24, 0.4), CondensingBubble: temperature(106, 0.4),
			CondensingDew: temperature(106, 0.4), SuctionLine: temperature(32, 0.9),
			LiquidLine: temperature(93, 0.9), DischargeLine: temperature(178, 1.5),
			OutdoorDryBulb: temperature(39, 0.6), ReturnDryBulb: temperature(70, 0.6),
			SupplyDryBulb: temperature(97, 0.6), Atmosphere: quantity.StandardAtmosphere,
		},
		Fluid: fluid, Atmosphere: quantity.StandardAtmosphere,
		Metering: refrigerant.TXV, NominalCapacity: quantity.Tons(3),
	}
	return c
}

// A customer who complains of the bill, of a machine that reads as it should, has its defrost
// or its auxiliary heat looked at; nobody else is sent to look.
func TestComplaintOfTheBill(t *testing.T) {
	c := soundCase(t)
	if j := heatpump.Judge(c); j.Ask != nil || j.Steps[0].Do.Code != "step.leave" {
		t.Errorf("without a complaint: %v", j.Steps)
	}
	c.Complaint = "high bill"
	j := heatpump.Judge(c)
	if j.Ask == nil || j.Ask.Look != "defrost-test" && j.Ask.Look != "strips-current" {
		t.Errorf("with one: %v", j.Steps)
	}
}

// Auxiliary heat that the supply shows is found by its rise alone, and a look decides.
func TestAuxiliaryHeat(t *testing.T) {
	c := soundCase(t)
	c.SupplyDryBulb = temperature(113, 0.6)
	if j := heatpump.Judge(c); j.Findings[0].Cause != "auxiliary-heat" {
		t.Errorf("%v", j.Findings[0])
	}
	c.Answers = []diagnose.Answer{{Code: "strips-current"}, {Code: "supply-second", Yes: true}}
	if j := heatpump.Judge(c); j.Findings[0].Cause == "auxiliary-heat" {
		t.Errorf("no current flows in it: %v", j.Findings[0])
	}
}

// A head that no sound machine has comes first and stops it; what is looked at is the indoor
// air, for that is what the condenser has in heating.
func TestHeadFirst(t *testing.T) {
	c := soundCase(t)
	c.CondensingBubble, c.CondensingDew = temperature(144, 0.4), temperature(144, 0.4)
	c.DischargeLine, c.SupplyDryBulb = temperature(236, 1.5), temperature(139, 0.6)
	c.Dangers = []modes.Danger{{
		Code: "discharge-hottest", Grave: true, Stops: true,
		Says: fact.New("danger.discharge-hottest",
			fact.Amount("figure", quantity.Fahrenheit(236)),
			fact.Amount("limit", quantity.Fahrenheit(225))),
	}}
	j := heatpump.Judge(c)
	if j.Dangers[0].Code != "condensing-highest" || j.Steps[0].Do.Code != "step.stop" ||
		j.Steps[1].Do.Code != "step.heating-indoor-air" {
		t.Errorf("%v, %v", j.Dangers, j.Steps)
	}
}

// A suction without superheat is usual behind a fixed device in the cold; with a cool
// discharge line it is liquid that the compressor gets.
func TestFloodback(t *testing.T) {
	for discharge, want := range map[float64]int{160: 0, 110: 1} {
		c := soundCase(t)
		c.Metering = refrigerant.FixedRestrictor
		c.OutdoorDryBulb, c.EvaporatingDew = temperature(14, 0.6), temperature(4, 0.4)
		c.SuctionLine, c.CondensingBubble = temperature(5, 0.9), temperature(90, 0.4)
		c.CondensingDew, c.LiquidLine = temperature(90, 0.4), temperature(86, 0.9)
		c.SupplyDryBulb, c.DischargeLine = temperature(87, 0.6), temperature(discharge, 1.5)
		c.Dangers = []modes.Danger{
			{Code: "floodback", Grave: true, Says: fact.New("danger.floodback")},
		}
		if j := heatpump.Judge(c); len(j.Dangers) != want {
			t.Errorf("discharge %g °F: %v", discharge, j.Dangers)
		}
	}
}

// The maker's chart for the weather decides where there is one: within it the charge is right,
// and off it nothing is called right.
func TestMakersChart(t *testing.T) {
	for off, want := range map[float64]string{0: "in-band", 40: "not-judged"} {
		c := soundCase(t)
		gauge := func(
			at func(quantity.Temperature) (quantity.Pressure, error),
			t0 *quantity.Uncertain[quantity.Temperature],
		) quantity.GaugePressure {
			p, err := at(t0.Value)
			if err != nil {
				t.Fatal(err)
			}
			return p.Gauge(quantity.StandardAtmosphere)
		}
		c.Evidence.Atmosphere = quantity.StandardAtmosphere
		c.Normal = []diagnose.NormalReading{{
			Outdoor: quantity.Fahrenheit(39), ReturnDryBulb: quantity.Fahrenheit(70),
			Suction: gauge(c.Fluid.DewPressure, c.EvaporatingDew),
			Liquid:  gauge(c.Fluid.BubblePressure, c.CondensingBubble) + quantity.PSIG(off),
		}}
		if j := heatpump.Judge(c); j.Charge.Outcome != want {
			t.Errorf("%g psi off: %+v", off, j.Charge)
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	c := soundCase(b)
	for b.Loop() {
		heatpump.Judge(c)
	}
}
