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
	v0, v1, s0, s1 := hermite(x)
	k0, k1 := &f.isobars[i], &f.isobars[i+1]
	var v [rowLen]float64
	for c := range v {
		v[c] = v0*k0.value[c] + v1*k1.value[c] + s0*k0.slope[c] + s1*k1.slope[c]
	}
	b.P = p
	b.rOverP = f.gasConstant / p
	b.z0 = v[dewZ]
	b.Bubble = Edge{v[bubbleT], v[bubbleH], v[bubbleS], v[bubbleV]}
	b.Dew = Edge{v[dewT], v[dewH], v[dewS], b.z0 * b.rOverP * v[dewT]}
	b.span = v[spanH]
	copy(b.t[:], v[vaporT:])
	copy(b.s[:], v[vaporS:])
	copy(b.z[:], v[vaporZ:])
}

// hermite returns the weights at x, 0 to 1 between two knots, of their values and of their
// slopes: the cubic through all four.
func hermite(x float64) (v0, v1, s0, s1 float64) {
	x2, x3 := x*x, x*x*x
	v1 = 3*x2 - 2*x3
	return 1 - v1, v1, x - 2*x2 + x3, x3 - x2
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
		end, cp := t, b.span/slope(&b.t, 1)
		t += (h - b.Dew.H - b.span) / cp
		s += cp * math.Log(t/end) // ds = cp·dT/T
	}
	return State{t, h, s, z * b.rOverP * t, b.Quality(h)}
}

// End returns the enthalpy of the hottest vapor that was sampled.
func (b *Isobar) End() float64 { return b.Dew.H + b.span }

// AtEntropy returns the state of entropy s: where an ideal compression to the
// pressure of b ends.
func (b *Isobar) AtEntropy(s float64) State {
	if s <= b.Dew.S {
		return b.AtEnthalpy(b.Bubble.H + (s-b.Bubble.S)*(b.Dew.H-b.Bubble.H)/(b.Dew.S-b.Bubble.S))
	}
	// Past the end of the polynomials, at the heat capacity there.
	if past := s - b.Dew.S - poly(&b.s, 1); past > 0 {
		t, cp := b.Dew.T+poly(&b.t, 1), b.span/slope(&b.t, 1)
		return b.vapor(b.Dew.H + b.span + cp*t*math.Expm1(past/cp))
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

// DewPressure returns the pressure of the isobar whose dew point is t.
func (f *Fluid) DewPressure(t float64) float64 { return f.pressureAt(t, dewT) }

// BubblePressure returns the pressure of the isobar whose bubble point is t.
func (f *Fluid) BubblePressure(t float64) float64 { return f.pressureAt(t, bubbleT) }

// pressureAt inverts a column.
func (f *Fluid) pressureAt(t float64, column int) float64 {
	low, high := 0, len(f.isobars)-1
	for high-low > 1 {
		mid := (low + high) / 2
		if f.isobars[mid].value[column] <= t {
			low = mid
		} else {
			high = mid
		}
	}
	k0, k1 := &f.isobars[low], &f.isobars[low+1]
	a, b := k0.value[column], k1.value[column]
	x := min(max((t-a)/(b-a), 0), 1)
	for range 6 {
		v0, v1, s0, s1 := hermite(x)
		step := (t - v0*a - v1*b - s0*k0.slope[column] - s1*k1.slope[column]) / (b - a)
		x = min(max(x+step, 0), 1)
		if math.Abs(step) < 1e-13 {
			break
		}
	}
	return math.Exp(f.logLow + (float64(low)+x)/f.perStep)
}

// DewHeatCapacity returns the heat capacity of vapor at the dew point, J/(kg K).
func (b *Isobar) DewHeatCapacity() float64 { return b.span / b.t[0] }
