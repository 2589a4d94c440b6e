package psychro

import "math"

// Saturation pressure of water after Hyland and Wexler, "Formulations for the
// thermodynamic properties of the saturated phases of H2O from 173.15 K to
// 473.15 K", ASHRAE Transactions 89(2A), 1983, p. 500; ASHRAE Handbook
// Fundamentals (2017), chapter 1, equations 5 (ice) and 6 (water).

// hylandWexlerJoin is where the two curves cross, 0.6 µK above the triple
// point. At 273.16 K itself they are 6 parts in 10⁹ apart, and a vapor pressure
// in that gap would have no dew point.
const hylandWexlerJoin = 273.16 + 5.97e-7

// hylandWexlerLn returns ln(p/Pa) of saturation at t kelvin, and its slope per
// kelvin.
func hylandWexlerLn(t float64) (ln, slope float64) {
	if t < hylandWexlerJoin {
		const c1, c2, c3, c4 = -5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7
		const c5, c6, c7 = 2.0747825e-9, -9.4840240e-13, 4.1635019
		r := 1 / t
		ln = c1*r + c2 + t*(c3+t*(c4+t*(c5+t*c6))) + c7*math.Log(t)
		slope = (c7-c1*r)*r + c3 + t*(2*c4+t*(3*c5+t*4*c6))
		return ln, slope
	}
	return hylandWexlerWater(t)
}

// hylandWexlerWater is equation 6 alone.
func hylandWexlerWater(t float64) (ln, slope float64) {
	const c8, c9, c10 = -5.8002206e3, 1.3914993, -4.8640239e-2
	const c11, c12, c13 = 4.1764768e-5, -1.4452093e-8, 6.5459673
	r := 1 / t
	ln = c8*r + c9 + t*(c10+t*(c11+t*c12)) + c13*math.Log(t)
	slope = (c13-c8*r)*r + c10 + t*(2*c11+t*3*c12)
	return ln, slope
}
