package charge

import "math"

// approachFit is a fit of end + left·exp(−(t−tₙ)/τ), with tₙ the last time.
type approachFit struct {
	tau, end, left float64
	std, sigma     float64 // of end, and of the readings about the curve
	effective      float64 // readings that count as independent
}

const (
	farApproach   = 3.0  // times within, of an approach that has a time constant
	fewestOnCurve = 8    // readings, for three parameters
	farthestTau   = 1.0  // spans of the log; a longer one is a line
	slowDoubt     = 0.15 // of the whole movement, that slower ones too slow to be seen go on
)

// fitApproach fits the curve by least squares, to the whole log or, where one
// exponential does not follow that, to its later half. ok is false where the
// readings do not say where it ends.
func fitApproach(t, y []float64, within float64) (approachFit, bool) {
	noise := jitter(y)
	for len(t) >= fewestOnCurve {
		f, ok := curveThrough(t, y)
		half := len(t) / 2
		if !ok || f.sigma > max(within/4, 1.3*noise) {
			t, y = t[half:], y[half:]
			continue
		}
		// A machine has more than one time constant: where the later half alone
		// ends elsewhere, that counts as doubt.
		later, ok := curveThrough(t[half:], y[half:])
		if !ok || later.tau > farthestTau*3*(t[len(t)-1]-t[half]) {
			return f, false
		}
		f.std = math.Hypot(f.std, max(math.Abs(later.end-f.end)-later.std, 0))
		span := t[len(t)-1] - t[0]
		if f.tau > farthestTau*span || f.std > max(within, math.Abs(f.left)/2) {
			return f, false
		}
		f.std = math.Hypot(f.std, slowDoubt*f.left*math.Exp(span/f.tau))
		return f, true
	}
	return approachFit{}, false
}

// approached is the time constant by which a value that has settled did so, 0 where
// the log does not show it: how long to wait after the next move.
func approached(t, y []float64, within float64) float64 {
	last := y[len(y)-1]
	if math.Abs(y[0]-last) <= farApproach*within && math.Abs(y[1]-last) <= farApproach*within {
		return 0
	}
	f, ok := curveThrough(t, y)
	if !ok || f.tau > (t[len(t)-1]-t[0])/2 || f.sigma > max(within/4, 1.3*jitter(y)) {
		return 0
	}
	return f.tau
}

// curveThrough finds the time constant on a logarithmic grid, then by parabola,
// and counts its doubt into that of the end.
func curveThrough(t, y []float64) (approachFit, bool) {
	span := t[len(t)-1] - t[0]
	if !(span > 0) {
		return approachFit{}, false
	}
	const steps = 16
	low, high := math.Log(span/30), math.Log(3*span)
	width := (high - low) / steps
	var rss [steps + 1]float64
	best := 0
	for i := range rss {
		rss[i] = linearPart(t, y, math.Exp(low+float64(i)*width)).rss
		if rss[i] < rss[best] {
			best = i
		}
	}
	at := low + float64(best)*width
	if best > 0 && best < steps {
		at += lowestOf(rss[best-1], rss[best], rss[best+1], width)
		width /= 8
		cost := func(at float64) float64 { return linearPart(t, y, math.Exp(at)).rss }
		at += lowestOf(cost(at-width), cost(at), cost(at+width), width)
	}
	tau := math.Exp(at)
	p := linearPart(t, y, tau)
	// The end is moved by the time constant too; of the three columns 1,
	// exp and its derivative, what the first has of its own is left.
	n := float64(len(t))
	own := p.ownOfFirst(t, tau)
	f := approachFit{
		tau: tau, end: p.end, left: p.left,
		sigma: math.Sqrt(p.rss / max(n-3, 1)), effective: p.effective,
	}
	if !(own > 0) {
		return f, false
	}
	f.std = f.sigma / math.Sqrt(own) * math.Sqrt(n/p.effective)
	return f, !math.IsNaN(f.std) && !math.IsInf(f.std, 0) && !math.IsInf(f.end, 0)
}

// lowestOf is where the parabola through three values, a step apart, is lowest,
// from the middle one and within a step of it.
func lowestOf(before, middle, after, step float64) float64 {
	curved := before - 2*middle + after
	if !(curved > 0) || math.IsInf(curved, 0) {
		return 0
	}
	return min(max(step*(before-after)/(2*curved), -step), step)
}

// linear is the least squares of end and left for one time constant.
type linear struct{ end, left, rss, effective float64 }

func linearPart(t, y []float64, tau float64) linear {
	n, last := float64(len(t)), t[len(t)-1]
	e, ee, sy, ey := 0.0, 0.0, 0.0, 0.0
	for i := range t {
		v := math.Exp((t[0] - t[i]) / tau)
		e, ee = e+v, ee+v*v
		sy, ey = sy+y[i], ey+v*y[i]
	}
	determinant := n*ee - e*e
	if !(determinant > 1e-12*n*ee) {
		return linear{rss: math.Inf(1), effective: 2}
	}
	b := (n*ey - e*sy) / determinant
	p := linear{end: (sy - b*e) / n, left: b * math.Exp((t[0]-last)/tau)}
	product, before := 0.0, 0.0
	for i := range t {
		r := y[i] - p.end - b*math.Exp((t[0]-t[i])/tau)
		p.rss += r * r
		product += r * before
		before = r
	}
	p.effective = effectiveNumber(n, product, p.rss)
	return p
}

// ownOfFirst is the square of what the constant column has outside the span of
// exp(−u) and u·exp(−u): the reciprocal variance of the end.
func (p linear) ownOfFirst(t []float64, tau float64) float64 {
	var oo, oe, od, ee, ed, dd float64
	for i := range t {
		u := (t[i] - t[0]) / tau
		e := math.Exp(-u)
		d := u * e
		oo, oe, od = oo+1, oe+e, od+d
		ee, ed, dd = ee+e*e, ed+e*d, dd+d*d
	}
	determinant := ee*dd - ed*ed
	if !(determinant > 0) {
		return 0
	}
	return oo - (oe*oe*dd-2*oe*od*ed+od*od*ee)/determinant
}
