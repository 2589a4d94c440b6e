package charge

import "math"

// hunts looks for a swing in residuals: the highest peak of the Lomb-Scargle
// periodogram (Lomb 1976, Scargle 1982), which takes irregular times. A peak
// counts when noise alone would hardly reach it, when at least two cycles were
// seen, when the sine carries a good part of the scatter (a sawtooth holds 61 % in
// its first harmonic), and when the swing is larger than what counts as settled.
func hunts(t, r []float64, within float64) (omega float64, found bool) {
	n := len(t)
	span := t[n-1] - t[0]
	variance := 0.0
	for _, v := range r {
		variance += v * v
	}
	variance /= float64(n - 1)
	if variance == 0 || span == 0 {
		return 0, false
	}
	lowest := fewestCycles / span
	highest := 0.5 / medianStep(t)
	if highest <= lowest {
		return 0, false
	}
	step := 1 / (4 * span)
	count := int(min((highest-lowest)/step, 4*mostPoints)) + 1
	best := 0.0
	for k := range count {
		w := 2 * math.Pi * (lowest + float64(k)*step)
		if p := lombScargle(t, r, w) / variance; p > best {
			best, omega = p, w
		}
	}
	// Scargle's false alarm: independent frequencies are a quarter of these.
	alarm := -math.Expm1(float64(max(count/4, 1)) * math.Log1p(-math.Exp(-best)))
	amplitude := math.Sqrt(best * variance * 4 / float64(n))
	regular := amplitude*amplitude/2 > leastRegular*variance
	return omega, alarm < falseAlarm && regular && 2*amplitude > within
}

// lombScargle is the periodogram at one angular frequency (Scargle 1982,
// equation 10).
func lombScargle(t, r []float64, omega float64) float64 {
	s2, c2 := 0.0, 0.0
	for _, ti := range t {
		s, c := math.Sincos(2 * omega * ti)
		s2, c2 = s2+s, c2+c
	}
	tau := math.Atan2(s2, c2) / (2 * omega)
	rc, rs, cc, ss := 0.0, 0.0, 0.0, 0.0
	for i, ti := range t {
		s, c := math.Sincos(omega * (ti - tau))
		rc, rs = rc+r[i]*c, rs+r[i]*s
		cc, ss = cc+c*c, ss+s*s
	}
	p := 0.0
	if cc > 0 {
		p += rc * rc / cc
	}
	if ss > 0 {
		p += rs * rs / ss
	}
	return p / 2
}

// refined moves the frequency to the least squares between the steps of the
// periodogram.
func (f curve) refined(t, y []float64) curve {
	span := t[len(t)-1] - t[0]
	step := 2 * math.Pi / (4 * span)
	best := f
	for range 40 {
		moved := false
		for _, omega := range [2]float64{best.omega - step, best.omega + step} {
			if omega <= 0 {
				continue
			}
			if g := fitCurve(t, y, f.tau, omega); g.rss < best.rss {
				if f.tau > 0 {
					g = g.withTauDoubt(t)
				}
				if g.determined() {
					best, moved = g, true
				}
			}
		}
		if !moved {
			step /= 2
		}
	}
	return best
}
