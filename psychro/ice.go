package psychro

import "math/cmplx"

// The Gibbs energy of ice Ih: IAPWS R10-06(2009), "Revised Release on the
// Equation of State 2006 for H2O Ice Ih", from R. Feistel and W. Wagner, J. Phys.
// Chem. Ref. Data 35, 2006, pp. 1021-1047. The residual entropy is the one that
// meets IAPWS-95, so that h counts from liquid at the triple point.

const triplePressure = 611.657 // Pa

// iceState is what moist air needs of ice.
type iceState struct {
	enthalpy        float64 // J/kg
	volume          float64 // m³/kg
	compressibility float64 // 1/Pa, at constant temperature
	enthalpySlope   float64 // J/(kg Pa), at constant temperature
}

// iceAt evaluates equation 1 of the release and its derivatives at t kelvin and
// p Pa.
func iceAt(t, p float64) iceState {
	const (
		s0  = -0.332733756492168e4
		g00 = -0.632020233335886e6
		g01 = 0.655022213658955
		g02 = -0.189369929326131e-7
		g03 = 0.339746123271053e-14
		g04 = -0.556464869058991e-21
		t1  = 0.368017112855051e-1 + 0.510878114959572e-1i
		r1  = 0.447050716285388e2 + 0.656876847463481e2i
		t2  = 0.337315741065416 + 0.335449415919309i
		r20 = -0.725974574329220e2 - 0.781008427112870e2i
		r21 = -0.557107698030123e-4 + 0.464578634580806e-4i
		r22 = 0.234801409215913e-10 - 0.285651142904972e-10i
	)
	tau := complex(t/triplePoint, 0)
	// The release divides pressures by that of the triple point and counts them
	// from 101325 Pa.
	x := (p - 101325) / triplePressure
	g0 := g00 + x*(g01+x*(g02+x*(g03+x*g04)))
	g0p := (g01 + x*(2*g02+x*(3*g03+x*4*g04))) / triplePressure
	g0pp := (2*g02 + x*(6*g03+x*12*g04)) / (triplePressure * triplePressure)
	cx := complex(x, 0)
	r2 := r20 + cx*(r21+cx*r22)
	r2p := (r21 + 2*cx*r22) / complex(triplePressure, 0)
	r2pp := complex(0, 0) + 2*r22/complex(triplePressure*triplePressure, 0)

	// The bracket of equation 1 and its slope in τ.
	bracket := func(tk complex128) (v, slope complex128) {
		minus, plus := cmplx.Log(tk-tau), cmplx.Log(tk+tau)
		v = (tk-tau)*minus + (tk+tau)*plus - 2*tk*cmplx.Log(tk) - tau*tau/tk
		slope = plus - minus - 2*tau/tk
		return v, slope
	}
	b1, d1 := bracket(t1)
	b2, d2 := bracket(t2)
	g := g0 - s0*t + triplePoint*real(r1*b1+r2*b2)
	s := s0 - real(r1*d1+r2*d2)
	gp := g0p + triplePoint*real(r2p*b2)
	gpp := g0pp + triplePoint*real(r2pp*b2)
	gtp := real(r2p * d2)
	return iceState{
		enthalpy:        g + t*s,
		volume:          gp,
		compressibility: -gpp / gp,
		enthalpySlope:   gp - t*gtp,
	}
}
