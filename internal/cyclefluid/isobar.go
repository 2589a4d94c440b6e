package cyclefluid

import "math"

// An Edge is a saturated state: the bubble or the dew point.
type Edge struct {
	T, H, S, V float64 // K, J/kg, J/(kg K), m³/kg
}

// An Isobar is the fluid at one pressure.
type Isobar struct {
	P           float64
	Bubble, Dew Edge

	span    float64
	rOverP  float64
	t, s, z [degree]float64
	z0      float64
}

// At returns the isobar at p, in Pa, or the nearest there is.
func (f *Fluid) At(p float64) Isobar {
	var b Isobar
	f.Set(&b, p)
	return b
}

// Set is At without the copy.
func (f *Fluid) Set(b *Isobar, p float64) {
	x := (math.Log(p) - f.logLow) * f.perStep
	last := len(f.isobars) - 2
	i := min(max(int(x), 0), last)
	x = min(max(x-float64(i), 0), 1)
	// Cubic through the values and slopes at both knots.
	x2, x3 := x*x, x*x*x
	wv1, ws0, ws1 := 3*x2-2*x3, x-2*x2+x3, x3-x2
	wv0 := 1 - wv1
	k0, k1 := &f.isobars[i], &f.isobars[i+1]
	var v [rowLen]float64
	for c := range v {
		v[c] = wv0*k0.value[c] + wv1*k1.value[c] + ws0*k0.slope[c] + ws1*k1.slope[c]
	}
	b.P = p
	b.Bubble = Edge{v[0], v[2], v[4], math.Exp(v[6])}
	b.Dew = Edge{v[1], v[3], v[5], math.Exp(v[7])}
	b.span = v[8]
	copy(b.t[:], v[9:])
	copy(b.s[:], v[9+degree:])
	copy(b.z[:], v[9+2*degree:])
	b.rOverP = f.gasConstant / p
	b.z0 = b.Dew.V / (b.rOverP * b.Dew.T)
}

// A State is a point on an isobar.
type State struct {
	T, H, S, V float64
	X          float64 // quality; below 0 for liquid, above 1 for vapor, by enthalpy
}

// Quality returns the place of h between the bubble and the dew point, 0 to 1
// there and beyond 0 and 1 outside.
func (b *Isobar) Quality(h float64) float64 {
	return (h - b.Bubble.H) / (b.Dew.H - b.Bubble.H)
}

// AtEnthalpy returns the two-phase or vapor state at h. Of a blend, temperature
// and the volumes of the phases are taken in a straight line between the bubble
// and the dew point. Liquid is taken at the bubble point.
func (b *Isobar) AtEnthalpy(h float64) State {
	if h >= b.Dew.H {
		return b.vapor(h)
	}
	x := b.Quality(h)
	if x <= 0 {
		return State{b.Bubble.T, h, b.Bubble.S + (h-b.Bubble.H)/b.Bubble.T, b.Bubble.V, x}
	}
	return State{
		T: b.Bubble.T + x*(b.Dew.T-b.Bubble.T),
		H: h,
		S: b.Bubble.S + x*(b.Dew.S-b.Bubble.S),
		V: b.Bubble.V + x*(b.Dew.V-b.Bubble.V),
		X: x,
	}
}

// vapor evaluates the polynomials; past their end the heat capacity stays as it
// is there.
func (b *Isobar) vapor(h float64) State {
	eta := (h - b.Dew.H) / b.span
	e := min(eta, 1)
	t := b.Dew.T + poly(&b.t, e)
	s := b.Dew.S + poly(&b.s, e)
	z := b.z0 + poly(&b.z, e)
	if eta > 1 {
		end := t
		t += (h - b.Dew.H - b.span) * slope(&b.t, 1) / b.span
		s += (h - b.Dew.H - b.span) / ((end + t) / 2)
	}
	return State{t, h, s, z * b.rOverP * t, b.Quality(h)}
}

// AtEntropy returns the state of entropy s: where an ideal compression to the
// pressure of b ends.
func (b *Isobar) AtEntropy(s float64) State {
	if s <= b.Dew.S {
		return b.AtEnthalpy(b.Bubble.H + (s-b.Bubble.S)*(b.Dew.H-b.Bubble.H)/(b.Dew.S-b.Bubble.S))
	}
	// At constant pressure dh = T·ds.
	h := b.Dew.H + (s-b.Dew.S)*b.Dew.T
	var v State
	for range 8 {
		v = b.vapor(h)
		step := (s - v.S) * v.T
		if math.Abs(step) < 1e-9*b.span {
			break
		}
		h += step
	}
	return v
}

// VaporAt returns the vapor at temperature t, not below the dew point.
func (b *Isobar) VaporAt(t float64) State {
	if t <= b.Dew.T {
		return State{b.Dew.T, b.Dew.H, b.Dew.S, b.Dew.V, 1}
	}
	target := t - b.Dew.T
	eta := target / (b.t[0] + b.t[1])
	for range 8 {
		e := min(eta, 1)
		dt := slope(&b.t, e)
		step := (target - poly(&b.t, e) - (eta-e)*dt) / dt
		eta += step
		if math.Abs(step) < 1e-11 {
			break
		}
	}
	return b.vapor(b.Dew.H + max(eta, 0)*b.span)
}

// poly has no constant term: it is 0 at the dew point.
func poly(c *[degree]float64, x float64) float64 {
	v := 0.0
	for j := degree - 1; j >= 0; j-- {
		v = (v + c[j]) * x
	}
	return v
}

func slope(c *[degree]float64, x float64) float64 {
	v := 0.0
	for j := degree - 1; j >= 0; j-- {
		v = v*x + float64(j+1)*c[j]
	}
	return v
}
