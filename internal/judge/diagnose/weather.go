package diagnose

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// Where a condition of the air was not read, it is taken from what is usual:
// outdoors 85 ± 12 °F, return wet bulb 64 ± 3.5 °F, return dry bulb 11 °F above
// the wet bulb ± 4 °F. A machine that cools also dries: damp rooms are rarer than
// dry ones. Common practice, no source.
const (
	usualOutdoor, usualOutdoorStd       = 302.6, 6.7
	usualWetBulb, usualWetBulbStd       = 290.9, 2.0
	usualDepression, usualDepressionStd = 6.1, 2.2
	dampDepressionStd                   = 1.5 // on the damp side
)

// air fills in the conditions of the air that were not read, with the doubt
// that this brings.
func (r *readings) air() (w signature.Weather, std [3]float64) {
	w.Thin = r.thin
	w.Outdoor, std[0] = r.value[rOutdoor], r.std[rOutdoor]
	if !r.have[rOutdoor] {
		w.Outdoor, std[0] = usualOutdoor, usualOutdoorStd
	}
	w.ReturnWetBulb, std[1] = r.value[rReturnWetBulb], r.std[rReturnWetBulb]
	w.ReturnDryBulb, std[2] = r.value[rReturnDryBulb], r.std[rReturnDryBulb]
	wet, dry := r.have[rReturnWetBulb], r.have[rReturnDryBulb]
	switch {
	case !wet && dry:
		w.ReturnWetBulb, std[1] = w.ReturnDryBulb-usualDepression, usualDepressionStd
	case !wet:
		w.ReturnWetBulb, std[1] = usualWetBulb, usualWetBulbStd
	}
	if !dry {
		w.ReturnDryBulb, std[2] = w.ReturnWetBulb+usualDepression, usualDepressionStd
	}
	return w, std
}

// depression is the return dry bulb over the wet bulb, with its standard
// uncertainty.
func (r *readings) depression() (value, std float64) {
	return r.value[rReturnDryBulb] - r.value[rReturnWetBulb], math.Hypot(
		r.std[rReturnDryBulb], r.std[rReturnWetBulb],
	)
}

// usualHabit is the habit of return air that was read right; zero where it was
// not read.
func (r *readings) usualHabit() float64 {
	if !r.have[rReturnWetBulb] || !r.have[rReturnDryBulb] {
		return 0
	}
	read, std := r.depression()
	return habit(read, std, 1)
}

// habit is the log density, up to a constant, of a depression as it is read, with
// a standard uncertainty, through a wick that shows a part of it: that of
// a Student t whose two sides differ.
func habit(read, std, shown float64) float64 {
	damp, dry := math.Hypot(std, shown*dampDepressionStd), math.Hypot(std, shown*usualDepressionStd)
	z := read - shown*usualDepression
	if z < 0 {
		z /= damp
	} else {
		z /= dry
	}
	return -math.Log((damp+dry)/2) - 0.5*(tails+1)*math.Log1p(z*z/(tails-2))
}

// bound is the log likelihood of the air: that of its habit, less where it breaks
// what holds of all air: a wet bulb is below its dry bulb.
func (r *readings) bound() float64 {
	sum := 0.0
	for _, pair := range [...][2]int{
		{rReturnWetBulb, rReturnDryBulb}, {rSupplyWetBulb, rSupplyDryBulb},
	} {
		if !r.have[pair[0]] || !r.have[pair[1]] {
			continue
		}
		if over := r.value[pair[0]] - r.value[pair[1]]; over > 0 {
			std := math.Hypot(r.std[pair[0]], r.std[pair[1]])
			sum -= over * over / (2 * std * std)
		}
	}
	return max(sum, -30) + r.habit
}

// air are the raw readings of the weather.
var air = [3]int{rOutdoor, rReturnWetBulb, rReturnDryBulb}

// conditions are the weather and the fluid as the table takes them, and the doubt of the air.
type conditions struct {
	weather signature.Weather
	fluid   signature.Fluid
	airStd  [3]float64
}

func (r *readings) conditions() (c conditions) {
	c.weather, c.airStd = r.air()
	c.fluid = r.fluid
	c.fluid.Glide = min(c.fluid.Glide, signature.MostGlide)
	return c
}

// inSameAir says that the conditions of both are the same.
func (r *readings) inSameAir(o *readings) bool {
	for _, raw := range air {
		if r.value[raw] != o.value[raw] || r.std[raw] != o.std[raw] || r.have[raw] != o.have[raw] {
			return false
		}
	}
	return r.fluid == o.fluid && r.thin == o.thin
}
