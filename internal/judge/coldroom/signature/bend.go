package signature

import "math"

// bends is where the scale of a feature turns from straight to logarithmic, K: machines differ by
// parts of what they read where that is much, and by degrees where it is little, so that on this
// scale they spread alike. Zero for a feature on a straight scale. The figures were chosen on
// visits of the bench that no trial uses.
var bends = Vector{
	Difference: 10, Superheat: 10, BulbSuperheat: 10, Split: 10, OverOutdoor: 10, Subcooling: 10,
	Hot: 30, Rise: 10,
}

// Bend takes a value of a feature to the scale of the means and spreads, with the slope of the
// scale there.
func Bend(f int, x float64) (y, slope float64) {
	s := bends[f]
	if s == 0 {
		return x, 1
	}
	return s * math.Asinh(x/s), 1 / math.Hypot(1, x/s)
}

// Straighten takes a value back from the scale of the means, with the slope that Bend has there.
func Straighten(f int, y float64) (x, slope float64) {
	s := bends[f]
	if s == 0 {
		return y, 1
	}
	return s * math.Sinh(y/s), 1 / math.Cosh(y/s)
}
