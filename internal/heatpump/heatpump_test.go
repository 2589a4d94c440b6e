package heatpump_test

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/heatpump"
	"github.com/satline/satline/internal/modes"
	"github.com/satline/satline/internal/readcheck"
	"github.com/satline/satline/internal/words"
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
	"liquid-gauge-zero": true, "supply-sensor": true,
}

// drawn is a case of any readings at all.
func drawn(t *rapid.T) *modes.Case {
	fluid := lookup(t, rapid.SampledFrom([]string{"R-410A", "R-22", "R-454B", "R-407C"}).Draw(t, "fluid"))
	maybe := func(name string, low, high float64) *quantity.Uncertain[quantity.Temperature] {
		if rapid.IntRange(0, 3).Draw(t, name+" read") == 0 {
			return nil
		}
		return temperature(rapid.Float64Range(low, high).Draw(t, name), 0.8)
	}
	c := &modes.Case{Fluid: fluid, WholeCharge: quantity.Pounds(8), WeighingWants: "step.measure-line"}
	c.Evidence = diagnose.Evidence{
		Input: readcheck.Input{
			EvaporatingDew: maybe("evaporating", -40, 60), CondensingBubble: maybe("condensing", 30, 150),
			SuctionLine: maybe("suction line", -40, 140), LiquidLine: maybe("liquid line", 10, 150),
			DischargeLine: maybe("discharge", 40, 260), OutdoorDryBulb: maybe("outdoor", -30, 75),
			ReturnDryBulb: maybe("return", 40, 90), SupplyDryBulb: maybe("supply", 40, 150),
			CondenserLeaving: maybe("leaving", -40, 75), Atmosphere: quantity.StandardAtmosphere,
		},
		Fluid: fluid, Others: diagnose.Alternatives(fluid), Atmosphere: quantity.StandardAtmosphere,
		Metering:        rapid.SampledFrom([]refrigerant.Metering{0, 1, 2, 3, 4}).Draw(t, "metering"),
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
			if _, ok := shapes["owner.cause."+f.Cause]; !ok && f.Cause != "sound" && !ofInstrument[f.Cause] {
				t.Fatalf("no words to the owner for %s", f.Cause)
			}
			for _, s := range append(f.For, f.Against...) {
				said(s)
			}
		}
		if !(sum <= 1.000001) || math.IsNaN(sum) {
			t.Fatalf("chances add up to %g", sum)
		}
		if c := j.Charge; c.Outcome != "not-judged" && math.Abs(c.Low+c.InBand+c.High-1) > 1e-9 {
			t.Fatalf("%+v", c)
		}
		for _, f := range append(j.Performance, j.Charge.Why...) {
			said(f)
		}
	})
}
