package testbench

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Energy and refrigerant are conserved wherever a machine runs: what the two coils exchange
// with the air is the power of the compressor less its shell's loss and the gains of the
// lines, to the tolerance of the solver; and the charge is all there.
func TestConserves(t *testing.T) {
	all := machines(t, 60, nil)
	rapid.Check(t, func(t *rapid.T) {
		m := all[rapid.IntRange(0, len(all)-1).Draw(t, "machine")]
		weather := Rated()
		weather.Outdoor += rapidTemperature(t, "outdoor", -12, 8)
		weather.ReturnWetBulb += rapidTemperature(t, "wet bulb", -4, 3)
		a := nothing
		a.indoorAir = rapid.Float64Range(0.6, 1.3).Draw(t, "indoor air")
		a.outdoorAir = rapid.Float64Range(0.6, 1.1).Draw(t, "outdoor air")
		charge := m.right * rapid.Float64Range(0.75, 1.15).Draw(t, "charge")
		w, err := weather.climate()
		if err != nil {
			t.Fatal(err)
		}
		c, _, err := m.solve(w, &a, charge)
		if err != nil {
			t.Skip(err)
		}
		outside := float64(weather.Outdoor)
		lines := m.lines.suctionGain*(outside-c.indoor.t) - m.lines.liquidLoss*(c.outdoor.t-outside)
		in := c.indoor.heat + c.compression.power*(1-m.compressor.shellLoss) + lines
		if off := (in + c.outdoor.heat) / c.outdoor.heat; math.Abs(off) > 1e-4 {
			t.Errorf("%.0f W in, %.0f W out", in, -c.outdoor.heat)
		}
		air := c.air.flow * (c.air.h - c.indoor.leavingH)
		if math.Abs(air/c.indoor.heat-1) > 5e-3 {
			t.Errorf("the air gave %.0f W, the indoor coil took %.0f W", air, c.indoor.heat)
		}
		if math.Abs(c.mass/charge-1) > 1e-4 {
			t.Errorf("%.4f kg of %.4f kg found", c.mass, charge)
		}
	})
}
