package coil

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// wet integrates the coil from where its surface is at the dew point, or from
// the front where all of it is wet.
//
// Let z run from 0 where the surface is as cold as the refrigerant to 1 where it
// is at the dew point, Y the kelvins between, H(z) the enthalpy of air saturated
// at the surface, and R = cp·UAr/UAa. The air over a surface at z has
//
//	h = H + R·Y·z,    and    m·(H′ + R·Y)/z·dz = −UAr·Y·dx.
//
// With H = c0 + c1·z + … + c4·z⁴ this integrates to
//
//	(c1 + R·Y)·ln(z1/z2) + E(z1) − E(z2) = UAr·Y·(x2 − x1)/m,
//	E(z) = 2·c2·z + 3/2·c3·z² + 4/3·c4·z³.
func (c *pass) wet(dryShare float64) Result {
	span := c.dew - c.tr
	hw := cpWater * max(0, (c.dew+c.tr)/2-zeroCelsius) // condensate leaves between the two
	sat := saturation(c.tr, span, c.p, hw)
	ry := c.cp * c.refUA / c.airUA * span

	// Where the wet part begins.
	z1, t1, entering := 1.0, c.t, 0.0
	if dryShare > 0 {
		t1 = c.tr + span/c.surface
		entering = c.tr + c.surface*(c.t-c.tr)
	} else {
		z1 = sat.under(enthalpy(c.t, c.w, hw), ry)
		entering = c.tr + span*z1
	}

	share := 1 - dryShare
	x := c.refUA * span * share / c.m
	s := sat.decay(z1, x, ry)
	z2 := z1 * math.Exp(-s)
	h2 := sat.at(z2) + ry*z2
	t2 := c.tr + c.leaving(&sat, t1-c.tr, z1, z2, s, x, ry, share, span)
	w2 := humidityRatioAt(t2, h2, hw)
	// Fog is possible below the dew point where the enthalpy is near saturation.
	const near = 500.0 // J/kg, more than the polynomial may be off
	if t2 < c.dew && h2 > sat.at((t2-c.tr)/span)-near {
		if ws, ok := saturatedAt(t2, c.p); ok && w2 > ws {
			t2, w2 = c.fogged(t2, h2, hw)
		}
	}

	water := c.m * (c.w - w2)
	change := enthalpy(c.t, c.w, 0) - enthalpy(t2, w2, 0)
	return Result{
		T: t2, W: w2,
		Heat:       c.m*change - water*cpWater*max(0, t2-zeroCelsius),
		Sensible:   c.m * (cpDryAir + w2*cpVapor) * (c.t - t2),
		Condensate: water,
		Surface:    c.tr + span*z2, SurfaceEntering: entering,
		Wet: share,
	}
}

// leaving integrates m·cp·dT = −UAa·(T − Ts)·dx along the wet part, for the
// surface temperature that the enthalpy balance gives, and returns how far above
// the refrigerant the air leaves. By parts, with N = UAa/(m·cp),
//
//	T2 − Ts2 = (T1 − Ts1)·e^(−N·(x2−x1)) − ∫ e^(−N·(x2−x))·dTs:
//
// the air follows the surface and lags behind. In s = ln(z1/z) the integrand is
// a sum of exponentials, and six Gauss-Legendre points are enough. The points lie
// in pairs around the middle, so one exponential serves two.
func (c *pass) leaving(sat *quartic, above, z1, z2, s, x, ry, share, span float64) float64 {
	n := c.airUA / (c.m * c.cp)
	perX := n * c.m / (c.refUA * span)
	lag, a, e1 := 0.0, sat[1]+ry, sat.e(z1)
	for i, g := range gauss {
		near := z1 * math.Exp(-s*g)
		far := z1 * z2 / near
		lag += gaussWeight[i] * (near*math.Exp(-perX*(x-a*s*g-e1+sat.e(near))) +
			far*math.Exp(-perX*(x-a*s*(1-g)-e1+sat.e(far))))
	}
	return span*z2 + (above-span*z1)*math.Exp(-n*share) + span*s*lag
}

// Gauss-Legendre points below the middle, and weights, on 0 to 1 (Abramowitz and
// Stegun, table 25.4, n = 6).
var (
	gauss = [3]float64{
		0.5 - 0.9324695142031521/2, 0.5 - 0.6612093864662645/2, 0.5 - 0.2386191860831969/2,
	}
	gaussWeight = [3]float64{0.1713244923791704 / 2, 0.3607615730481386 / 2, 0.4679139345726910 / 2}
)

// fogged returns saturated air of the same enthalpy, for air that would leave
// with more vapor than it can hold.
func (c *pass) fogged(t, h, hw float64) (float64, float64) {
	for range 8 {
		ws, ok := saturatedAt(t, c.p)
		if !ok {
			break
		}
		tc := t - zeroCelsius
		// Clausius and Clapeyron: a slope good to a few parts in a thousand.
		slope := cpDryAir + ws*cpVapor +
			(evaporation0+cpVapor*tc-hw)*ws*(1+ws/0.622)*evaporation0/(461.5*t*t)
		step := (h - enthalpy(t, ws, hw)) / slope
		t += step
		if math.Abs(step) < 1e-11 {
			break
		}
	}
	w := humidityRatioAt(t, h, hw)
	if ws, ok := saturatedAt(t, c.p); ok {
		w = min(w, ws)
	}
	return t, w
}

// coldest keeps states of saturated air within the range of package psychro.
const coldest = 180.0

func saturatedAt(t, p float64) (w float64, ok bool) {
	a, err := psychro.Saturated(quantity.Temperature(max(t, coldest)), quantity.Pressure(p))
	return a.HumidityRatio(), err == nil
}
