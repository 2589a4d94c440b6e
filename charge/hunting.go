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
	lowestR, highestR, variance := r[0], r[0], 0.0
	for _, v := range r {
		lowestR, highestR = min(lowestR, v), max(highestR, v)
		variance += v * v
	}
	variance /= float64(n - 1)
	if highestR-lowestR <= within || span == 0 {
		return 0, false
	}
	lowest := fewestCycles / span
	highest := 0.5 / medianStep(t)
	if highest <= lowest {
		return 0, false
	}
	step := 1 / (4 * span)
	count := int(min((highest-lowest)/step, 4*mostPoints)) + 1
	best, at := periodogram(t, r, lowest, step, count)
	best /= variance
	omega = 2 * math.Pi * (lowest + float64(at)*step)
	// Scargle's false alarm: independent frequencies are a quarter of these.
	alarm := -math.Expm1(float64(max(count/4, 1)) * math.Log1p(-math.Exp(-best)))
	amplitude := math.Sqrt(best * variance * 4 / float64(n))
	regular := amplitude*amplitude/2 > leastRegular*variance
	return omega, alarm < falseAlarm && regular && 2*amplitude > within
}

// periodogram returns the highest power and where it stands among count
// frequencies, by Scargle (1982), equation 10. Sine and cosine of every reading
// are turned on by one step from frequency to frequency.
func periodogram(t, r []float64, lowest, step float64, count int) (best float64, at int) {
	type turn struct{ c, s, stepC, stepS float64 }
	turns := make([]turn, len(t))
	for i, ti := range t {
		s, c := math.Sincos(2 * math.Pi * lowest * ti)
		ds, dc := math.Sincos(2 * math.Pi * step * ti)
		turns[i] = turn{c, s, dc, ds}
	}
	n := float64(len(t))
	for k := range count {
		rc, rs, c2, s2 := 0.0, 0.0, 0.0, 0.0
		for i := range turns {
			q := &turns[i]
			rc += r[i] * q.c
			rs += r[i] * q.s
			c2 += q.c*q.c - q.s*q.s
			s2 += 2 * q.c * q.s
			q.c, q.s = q.c*q.stepC-q.s*q.stepS, q.s*q.stepC+q.c*q.stepS
		}
		// The phase that makes cosine and sine independent over these times.
		sin, cos := math.Sincos(math.Atan2(s2, c2) / 2)
		both := math.Hypot(c2, s2)
		p := 0.0
		if cc := (n + both) / 2; cc > 0 {
			p += square(rc*cos+rs*sin) / cc
		}
		if ss := (n - both) / 2; ss > 1e-9*n {
			p += square(rs*cos-rc*sin) / ss
		}
		if p /= 2; p > best {
			best, at = p, k
		}
	}
	return best, at
}

// refined moves the frequency to the least squares between the steps of the
// periodogram.
func (f curve) refined(t, y []float64) curve {
	span := t[len(t)-1] - t[0]
	step := 2 * math.Pi / (4 * span)
	best := f
	for range 16 {
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
