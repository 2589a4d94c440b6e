package cycle

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

func reversed(t testing.TB, fluid string, m refrigerant.Metering) *Reversed {
	t.Helper()
	s := mustDesign(t, Spec{
		Refrigerant: lookup(t, fluid), Capacity: quantity.Tons(3), Metering: m, HeatPump: true,
	})
	h, err := s.Reversed(HeatingSpec{})
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func heat(t testing.TB, h *Reversed, outdoor float64, f Faults) Heating {
	t.Helper()
	c := HeatingRatingConditions()
	c.OutdoorDryBulb = quantity.Fahrenheit(outdoor)
	o, err := h.Solve(c, f)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// At its rating a machine has the superheat and the subcooling that it was set to.
func TestHeatingMeetsItsRating(t *testing.T) {
	for _, m := range []refrigerant.Metering{
		refrigerant.TXV, refrigerant.EXV, refrigerant.FixedRestrictor, refrigerant.Capillary,
	} {
		for _, fluid := range []string{"R-410A", "R-22", "R-32", "R-454B"} {
			o := heat(t, reversed(t, fluid, m), 47, Faults{})
			if d := math.Abs(o.Superheat.Fahrenheit() - 8); d > 2 {
				t.Errorf("%s %v: superheat %v", fluid, m, o.Superheat)
			}
			if d := math.Abs(o.Subcooling.Fahrenheit() - 12); d > 2 {
				t.Errorf("%s %v: subcooling %v", fluid, m, o.Subcooling)
			}
		}
	}
}

// What is given to the room comes from the outdoor air and from the wires, but for what the
// shell and the lines exchange with what is around them.
func TestHeatingConserves(t *testing.T) {
	h := reversed(t, "R-410A", refrigerant.TXV)
	rapid.Check(t, func(t *rapid.T) {
		c := HeatingConditions{
			OutdoorDryBulb:  quantity.Fahrenheit(rapid.Float64Range(-10, 65).Draw(t, "outdoor")),
			OutdoorHumidity: rapid.Float64Range(0.3, 1).Draw(t, "humidity"),
			ReturnDryBulb:   quantity.Fahrenheit(rapid.Float64Range(55, 80).Draw(t, "room")),
			Frost:           rapid.Float64Range(0, 0.6).Draw(t, "frost"),
		}
		o, err := h.Solve(c, Faults{Charge: rapid.Float64Range(-0.4, 0.3).Draw(t, "charge")})
		if err != nil {
			t.Fatal(err)
		}
		if o.Limit != NoLimit {
			t.Skip("it would not run")
		}
		if o.COP < 1 || o.COP > 6 || o.Evaporating > c.OutdoorDryBulb ||
			o.Condensing < c.ReturnDryBulb {
			t.Fatalf("%+v gives %+v", c, o)
		}
	})
}

// The measured machine of Yoon, Payne and Domanski 2011, Applied Thermal Engineering 31:765
// (NIST TN 1648), R-410A of 8.8 kW with a valve, in heating: which way each fault moves what is
// read. The directions are from memory.
func TestHeatingFaultTrends(t *testing.T) {
	h := reversed(t, "R-410A", refrigerant.TXV)
	sound := heat(t, h, 47, Faults{})
	for _, c := range []struct {
		name   string
		faults Faults
		moves  func(o Heating) bool
	}{
		{"leaking compressor: less capacity, higher suction, lower head, hotter discharge",
			Faults{CompressorLeak: 0.2}, func(o Heating) bool {
				return o.Capacity < sound.Capacity && o.Evaporating > sound.Evaporating &&
					o.Condensing < sound.Condensing && o.DischargeLine > sound.DischargeLine
			}},
		{"less outdoor air: colder coil, less capacity",
			Faults{OutdoorAirflow: -0.4}, func(o Heating) bool {
				return o.Capacity < sound.Capacity && o.Evaporating < sound.Evaporating-0.5
			}},
		{"less indoor air: higher head, warmer supply, hotter discharge, lower COP",
			Faults{IndoorAirflow: -0.3}, func(o Heating) bool {
				return o.Condensing > sound.Condensing+3 && o.Supply > sound.Supply &&
					o.DischargeLine > sound.DischargeLine && o.COP < sound.COP
			}},
		{"undercharge: less subcooling, lower head",
			Faults{Charge: -0.15}, func(o Heating) bool {
				return o.Subcooling < sound.Subcooling-2 && o.Condensing < sound.Condensing
			}},
		{"overcharge: more subcooling, higher head, lower COP",
			Faults{Charge: 0.2}, func(o Heating) bool {
				return o.Subcooling > sound.Subcooling+4 && o.Condensing > sound.Condensing+2 &&
					o.COP < sound.COP
			}},
		{"restricted liquid line: colder coil, more superheat, more subcooling",
			Faults{LiquidRestriction: quantity.Bar(15)}, func(o Heating) bool {
				return o.Evaporating < sound.Evaporating-1 && o.Superheat > sound.Superheat+2 &&
					o.Subcooling > sound.Subcooling
			}},
	} {
		if o := heat(t, h, 47, c.faults); !c.moves(o) {
			t.Errorf("%s:\nsound %+v\nfault %+v", c.name, sound, o)
		}
	}
}

// Capacity and efficiency at the low-temperature rating point of AHRI 210/240 (17 °F) over
// those at 47 °F. The curves are fits to makers' data, the model an ordinary machine, whose
// compressor loses less at a high ratio than theirs: a tenth and a little more.
func TestHeatingInTheCold(t *testing.T) {
	nrel := verify.Source{
		Cite: "NREL/TP-5500-56354 (Cutler and others 2013), heat pump of one speed, " +
			"as OpenStudio-HPXML has its coefficients",
		Kind: verify.Published,
	}
	h := reversed(t, "R-410A", refrigerant.TXV)
	at47, at17 := heat(t, h, 47, Faults{}), heat(t, h, 17, Faults{})
	verify.Relative(t, nrel, "heating capacity at 17 °F over that at 47 °F", "1",
		0.633, float64(at17.Capacity/at47.Capacity), 0.12)
	verify.Relative(t, nrel, "power for the heat at 17 °F over that at 47 °F", "1",
		1.356, at47.COP/at17.COP, 0.12)
	// Rated COP at 47 °F of machines of 8 HSPF is 3.2 to 3.8.
	ratings := verify.Source{Cite: "ratings of heat pumps by AHRI 210/240", Kind: verify.FromMemory}
	verify.Value(t, ratings, "COP at 47 °F", "1", 3.5, at47.COP, 0.3)
}

func TestHeatingRefuses(t *testing.T) {
	h := reversed(t, "R-410A", refrigerant.TXV)
	room := quantity.Fahrenheit(70)
	for name, c := range map[string]HeatingConditions{
		"summer":       {OutdoorDryBulb: quantity.Fahrenheit(95), ReturnDryBulb: room},
		"no room":      {OutdoorDryBulb: quantity.Fahrenheit(35)},
		"all frost":    {OutdoorDryBulb: quantity.Fahrenheit(35), ReturnDryBulb: room, Frost: 1},
		"not a number": {OutdoorDryBulb: quantity.Temperature(math.NaN()), ReturnDryBulb: room},
	} {
		if _, err := h.Solve(c, Faults{}); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if _, err := new(Reversed).Solve(HeatingRatingConditions(), Faults{}); err != ErrNoSystem {
		t.Error(err)
	}
	if _, err := new(System).Reversed(HeatingSpec{}); err != ErrNoSystem {
		t.Error(err)
	}
	s := machine(t, "R-410A", refrigerant.TXV)
	if _, err := s.Reversed(HeatingSpec{Superheat: 50}); err == nil {
		t.Error("any superheat will do")
	}
}

func BenchmarkHeating(b *testing.B) {
	h := reversed(b, "R-410A", refrigerant.TXV)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := h.Solve(HeatingRatingConditions(), Faults{Charge: -0.1}); err != nil {
			b.Fatal(err)
		}
	}
}
