package testbench

import "math"

// Coefficients of heat transfer inside a smooth tube, W/(m² K), for a mass flux g in
// kg/(m² s) and a bore d in m.

// singlePhase is Dittus and Boelter's equation as McAdams gave it, and the 3.66 of laminar
// flow under a constant wall temperature where that is more.
func singlePhase(g, d, mu, k, pr float64) float64 {
	return max(0.023*math.Pow(g*d/mu, 0.8)*math.Pow(pr, 0.4), 3.66) * k / d
}

// condensing is the correlation of Shah 1979, International Journal of Heat and Mass Transfer
// 22:547-556, held from a quality of 0.98: beyond it falls to nothing.
func condensing(x, g, d float64, t *transport) float64 {
	x = min(max(x, 0), 0.98)
	liquid := singlePhase(g, d, t.muL, t.kL, t.prL)
	return liquid * (math.Pow(1-x, 0.8) +
		3.8*math.Pow(x, 0.76)*math.Pow(1-x, 0.04)/math.Pow(t.reduced, 0.38))
}

// dryout is the quality from which the wall of an evaporating tube begins to dry; common
// practice, no source.
const dryout = 0.88

// boiling is the correlation of Gungor and Winterton 1987, Chemical Engineering Research and
// Design 65:148-156, for a heat flux q in W/m²; past dryout it falls in a straight line to
// the coefficient of vapor.
func boiling(x, g, d, q float64, t *transport) float64 {
	x = min(max(x, 0), 1)
	wet := min(x, dryout)
	liquid := singlePhase(g*(1-wet), d, t.muL, t.kL, t.prL)
	bo := max(q, 500) / (g * t.latent)
	h := liquid * (1 + 3000*math.Pow(bo, 0.86) +
		1.12*math.Pow(wet/(1-wet), 0.75)*math.Pow(t.rhoL/t.rhoV, 0.41))
	if x > dryout {
		vapor := singlePhase(g, d, t.muV, t.kV, t.prV)
		h += (x - dryout) / (1 - dryout) * (vapor - h)
	}
	return h
}

// friction is the gradient of pressure in Pa/m: of two phases by Müller-Steinhagen and Heck
// 1986, Chemical Engineering and Processing 20:297-308, with Blasius' friction factor; of one
// phase what is left of that at quality 0 or 1. The cusp of the cube root at quality 1, at which
// a solver would stall, is rounded off over the last few per cent.
func friction(x, g, d float64, t *transport) float64 {
	x = min(max(x, 0), 1)
	one := func(mu, rho float64) float64 {
		re := max(g*d/mu, 100)
		return 2 * max(0.079*math.Pow(re, -0.25), 16/re) * g * g / (rho * d)
	}
	a, b := one(t.muL, t.rhoL), one(t.muV, t.rhoV)
	const round = 0.05
	root := (1 - x) / math.Cbrt((1-x)*(1-x)+round*round)
	return (a+2*(b-a)*x)*root + b*x*x*x
}
