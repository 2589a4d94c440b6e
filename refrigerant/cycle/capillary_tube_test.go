package cycle

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
)

// chartFlow is a fit to the rating charts for in the ASHRAE Handbook,
// Equipment volume 1988, chapter 19, figures 38 to 41, by O'Neal and Penson, "An analysis of
// efficiency improvements in room air conditioners", Texas A&M ESL/88-04, 1988, for choked
// flow of subcooled liquid. Lengths in inches, pressure in psia, subcooling in °F, lb/h.
func chartFlow(diameter, length, pressure, subcooling float64) float64 {
	a := 0.4035 + 0.4175*math.Exp(-0.04*subcooling)
	b := 356 + 0.641*math.Pow(math.Abs(subcooling-31)/10, 3.56)
	base := b * math.Pow(pressure/1500, a)
	ld, ll := math.Log(diameter), math.Log(length)
	return base * math.Exp(7.1539+2.2088*ld+0.1619*ll+0.0807*ll*ld-0.0421*ll*ll) / 1.011
}

func TestCapillaryAgainstChart(t *testing.T) {
	r := lookup(t, "R-22")
	source := verify.Source{
		Cite: "O'Neal and Penson, ESL/88-04, 1988: fit to ASHRAE Equipment 1988, chapter 19, " +
			"figures 38-41",
		Kind: verify.Computed,
	}
	worst, mean, n := 0.0, 0.0, 0.0
	var at [2]float64
	for _, mm := range []float64{1.2, 1.4, 1.63, 1.8} {
		for _, m := range []float64{0.8, 1.2, 1.6, 2} {
			for _, tc := range []float64{40, 45, 50} {
				for _, sub := range []float64{3, 6, 9} {
					c := CapillaryTube{quantity.Millimeters(mm), quantity.Meters(m), 1}
					up := liquidAt(t, r, tc, sub)
					got, err := c.Flow(r, up, 5e5)
					if err != nil {
						t.Fatal(err)
					}
					ref := chartFlow(mm/25.4, m/0.0254, up.Pressure.PSIA(), 1.8*sub)
					off := got.PoundsPerHour()/ref - 1
					mean += off
					n++
					if math.Abs(off) > math.Abs(worst) {
						worst, at = off, [2]float64{got.PoundsPerHour(), ref}
					}
				}
			}
		}
	}
	t.Logf("largest deviation %+.1f %%, mean %+.1f %%", 100*worst, 100*mean/n)
	verify.Relative(
		t, source, "R-22 through capillaries of 1.2 to 1.8 mm, largest deviation", "lb/h", at[1],
		at[0], 0.10,
	)
	if math.Abs(mean/n) > 0.02 {
		t.Errorf("mean deviation %.1f %%", 100*mean/n)
	}
}

// The volume of the flashing mixture is what the equation of state gives along an isenthalp.
func TestCapillaryFlashing(t *testing.T) {
	for _, d := range fluids {
		r := lookup(t, d)
		up := liquidAt(t, r, 40, 0)
		pb := float64(up.Pressure)
		vl := 1 / float64(up.Density)
		for _, share := range []float64{0.7, 0.5, 0.35} {
			s, err := r.StateAtEnthalpy(quantity.Pressure(share*pb), up.Enthalpy)
			if err != nil {
				t.Fatal(err)
			}
			k := 2.62e5 / math.Pow(pb, 0.75)
			if off := vl * (1 + k*(1/share-1)) * float64(s.Density); math.Abs(off-1) > 0.08 {
				t.Errorf(
					"%s at %.2f of its bubble pressure: %.2f of the volume of the equation", d,
					share, off,
				)
			}
		}
	}
}
