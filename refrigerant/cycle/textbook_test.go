package cycle

import (
	"fmt"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// The two cycles of the ASHRAE Handbook Fundamentals, chapter 2, state by state. Its R-22
// rests on an equation of state older than the one here, which is why its states are held to
// 0.25 % only.
func TestTextbookCycles(t *testing.T) {
	book := func(example string) verify.Source {
		return verify.Source{
			Cite: "ASHRAE Handbook Fundamentals, chapter 2, " + example,
			Kind: verify.FromMemory,
		}
	}
	theory := book("example 1: theoretical cycle of R-134a, -20 and 30 °C")
	r := lookup(t, "R-134a")
	suction, err := r.SaturatedVapor(quantity.Celsius(-20))
	if err != nil {
		t.Fatal(err)
	}
	liquid, err := r.SaturatedLiquid(quantity.Celsius(30))
	if err != nil {
		t.Fatal(err)
	}
	discharge, err := r.StateAtEntropy(liquid.Pressure, suction.Entropy)
	if err != nil {
		t.Fatal(err)
	}
	kJ := func(h quantity.SpecificEnthalpy) float64 { return float64(h) / 1e3 }
	table := verify.Source{
		Cite: "saturation tables of refrigerants on the IIR datum, as the open library scisuit " +
			"carries them",
		Kind: verify.Published,
	}
	verify.Value(
		t, table, "R-134a at -20 °C: pressure", "kPa", 132.73, suction.Pressure.Kilopascals(), 0.05,
	)
	verify.Value(
		t, table, "R-134a at -20 °C: vapor enthalpy", "kJ/kg", 386.55, kJ(suction.Enthalpy), 0.05,
	)
	verify.Value(t, theory, "discharge enthalpy", "kJ/kg", 423.07, kJ(discharge.Enthalpy), 0.05)
	verify.Value(t, theory, "liquid enthalpy", "kJ/kg", 241.72, kJ(liquid.Enthalpy), 0.05)
	cop := float64((suction.Enthalpy - liquid.Enthalpy) / (discharge.Enthalpy - suction.Enthalpy))
	verify.Value(t, theory, "COP", "", 3.97, cop, 0.01)
	verify.Value(
		t, theory, "flow at 50 kW", "kg/s", 0.345, 50e3/float64(suction.Enthalpy-liquid.Enthalpy),
		0.0005,
	)

	measured := book("example 5: measured machine with R-22, 7 kW")
	r = lookup(t, "R-22")
	for _, c := range []struct {
		name       string
		kPa, c     float64
		h, s, v    float64
		volumeHeld bool
	}{
		{"leaving the evaporator", 310, -10, 402.08, 1.7810, 0.07558, true},
		{"entering the compressor", 304, -4, 406.25, 1.7984, 0.07946, true},
		{"leaving the compressor", 1450, 82, 454.20, 1.8165, 0.02057, true},
		{"entering the condenser", 1435, 70, 444.31, 1.7891, 0.01970, true},
		{"leaving the condenser", 1410, 34, 241.40, 1.1400, 0.00086, false},
		{"entering the expansion valve", 1405, 33, 240.13, 1.1359, 0.00086, false},
	} {
		s, err := r.State(quantity.Kilopascals(c.kPa), quantity.Celsius(c.c))
		if err != nil {
			t.Fatal(err)
		}
		verify.Relative(t, measured, c.name+": enthalpy", "kJ/kg", c.h, kJ(s.Enthalpy), 0.0025)
		verify.Relative(
			t, measured, c.name+": entropy", "kJ/(kg K)", c.s, float64(s.Entropy)/1e3, 0.0025,
		)
		if c.volumeHeld {
			verify.Relative(
				t, measured, c.name+": volume", "m³/kg", c.v, 1/float64(s.Density), 0.0025,
			)
		}
	}
}

// A fixed restrictor charged at the rating test to the superheat of the charging chart reads
// that of the chart at other weather too, within the chart's own tolerance of 5 °F. The model
// does not know the chart. Where the return wet bulb is below 62 °F it floods sooner than
// the chart has it.
func TestSuperheatFollowsTheChargingChart(t *testing.T) {
	source := verify.Source{
		Cite: "California Energy Commission, Residential Appendices RA3.2, table RA3.2-2, " +
			"target superheat",
		Kind: verify.Published,
	}
	const atRating = 12 // °F, the chart between its columns of 66 and 68 °F
	spec := Spec{
		Refrigerant: lookup(t, "R-22"),
		Capacity:    quantity.Tons(3),
		Metering:    refrigerant.FixedRestrictor,
		Superheat:   quantity.FahrenheitDelta(atRating),
	}
	s := mustDesign(t, spec)
	for _, c := range []struct{ outdoor, wetBulb, target float64 }{
		{105, 68, 9}, {105, 70, 13}, {95, 64, 6}, {95, 66, 10}, {95, 68, 14}, {95, 70, 18},
		{85, 64, 11}, {85, 66, 15}, {85, 68, 19}, {85, 70, 22}, {75, 66, 21}, {75, 68, 24},
		{65, 64, 24}, {65, 66, 27}, {65, 68, 30},
	} {
		o := solve(t, s, weather(c.outdoor, 76, c.wetBulb), Faults{})
		name := quantity.Fahrenheit(c.outdoor).
			Format(quantity.IP) +
			" outdoors, " + quantity.Fahrenheit(c.wetBulb).
			Format(quantity.IP) +
			" wet bulb"
		verify.Value(t, source, name, "°F", c.target, o.Superheat.Fahrenheit(), 5)
	}
}

// Cooling capacity follows the weather as a published curve of air conditioners has it, which
// is of a return of 80 °F: at that of other rooms the same wet bulb leaves the coil wetter.
func TestCapacityFollowsACurve(t *testing.T) {
	source := verify.Source{
		Cite: "EnergyPlus 7.1, example file DXCoilSystemAuto: total cooling capacity as a function " +
			"of entering wet bulb and outdoor dry bulb, as Modelica Buildings Library prints it",
		Kind: verify.Published,
	}
	curve := func(outdoor, wetBulb float64) float64 {
		o, w := (outdoor-32)/1.8, (wetBulb-32)/1.8
		return 0.766956 + 0.0107756*w - 0.0000414703*w*w + 0.00134961*o - 0.000261144*o*o +
			0.000457488*o*w
	}
	for _, m := range []refrigerant.Metering{refrigerant.FixedRestrictor, refrigerant.TXV} {
		s := mustDesign(t, Spec{
			Refrigerant: lookup(t, "R-22"), Capacity: quantity.Tons(3), Metering: m,
		})
		rated := solve(t, s, weather(95, 80, 67), Faults{}).Capacity
		for _, outdoor := range []float64{75, 85, 95, 105} {
			for _, wetBulb := range []float64{62, 67, 72} {
				o := solve(t, s, weather(outdoor, 80, wetBulb), Faults{})
				verify.Value(
					t, source, fmt.Sprintf(
						"%v, %.0f °F outdoors, %.0f °F wet bulb: capacity over the rated",
						m, outdoor, wetBulb,
					), "", curve(outdoor, wetBulb)/curve(95, 67), float64(o.Capacity/rated), 0.06,
				)
			}
		}
	}
}

// By a maker's table of normal operating pressures the suction of a machine with a fixed
// orifice falls from 95 to 65 °F outdoors by 7 to 15 psi, over nine sizes.
func TestRestrictorOnACoolDay(t *testing.T) {
	source := verify.Source{
		Cite: "installation instructions of R-22 split air conditioners of 10 SEER, table of " +
			"normal operating pressures",
		Kind: verify.Published,
	}
	falls := []float64{13, 15, 13, 14, 12, 8, 7, 11, 11}
	s := mustDesign(
		t,
		Spec{
			Refrigerant: lookup(t, "R-22"),
			Capacity:    quantity.Tons(3),
			Metering:    refrigerant.FixedRestrictor,
			Suction:     quantity.Fahrenheit(45.7),
		},
	)
	psi := func(outdoor float64) float64 {
		return solve(t, s, weather(outdoor, 80, 67), Faults{}).Suction.Pressure.PSIA()
	}
	mean := 0.0
	for _, x := range falls {
		mean += x / float64(len(falls))
	}
	verify.Value(
		t, source, "fall of the suction from 95 to 65 °F outdoors", "psi", mean, psi(95)-psi(65), 3,
	)
}
