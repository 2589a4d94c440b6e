package charge

import "math"

// What it takes to call a swing hunting, in multiples of what counts as settled
// (common practice, no source): a superheat that goes up and down by 3 °F or more,
// twice at least, and still does.
const (
	fewestLegs    = 4    // two cycles
	leastSwing    = 3.0  // below that it is called steady, with its band
	plainScatter  = 1.9  // standard deviation, of a swing of 5.4; no instrument scatters so
	widestSwing   = 60.0 // above that something was taken off and put on
	leastContrary = 0.33 // anticorrelation of readings half a cycle apart
	shortestHunt  = 180.0
)

// swinging is the stretch of a log up to its end that goes up and down alike.
type swinging struct {
	turns     []int     // indices of the turning points, in order
	crossings []float64 // times at which each leg is half done
	swing     float64
	period    float64
}

// huntOn looks for a swing that still goes on, from the coarsest scale down.
func huntOn(t, y []float64, within float64) (swinging, bool) {
	last := len(t) - 1
	if t[last]-t[0] < shortestCalm {
		return swinging{}, false
	}
	if low, high := bounds(y); high-low < leastSwing*within {
		return swinging{}, false
	}
	for _, scale := range [...]float64{5, 3, 1.5} {
		s := trailing(t, y, turningPoints(y, scale*within))
		if s.hunts(t, y, within) {
			return s, true
		}
	}
	return swinging{}, false
}

// turningPoints returns the highs and lows of y between which it goes by at
// least size: a leg ends where y has come back by size from its furthest.
func turningPoints(y []float64, size float64) []int {
	var turns []int
	low, high := 0, 0
	up := 0 // direction of the leg; 0 before the first
	for i, v := range y {
		if v > y[high] {
			high = i
		}
		if v < y[low] {
			low = i
		}
		if up >= 0 && y[high]-v >= size {
			turns = append(turns, high)
			up, low = -1, i
			high = i
		} else if up <= 0 && v-y[low] >= size {
			turns = append(turns, low)
			up, high = 1, i
			low = i
		}
	}
	return turns
}

// trailing keeps the last turning points whose legs are alike in height, within
// a factor of three of their median, and takes swing and period from them.
func trailing(t, y []float64, turns []int) swinging {
	if len(turns) < fewestLegs+1 {
		return swinging{}
	}
	legs := make([]float64, 0, len(turns))
	from := len(turns) - 1
	for from > 0 && t[turns[len(turns)-1]]-t[turns[from-1]] <= longestCalm {
		leg := math.Abs(y[turns[from]] - y[turns[from-1]])
		if len(legs) >= fewestLegs-1 {
			if m := median(legs); leg > 2.5*m || leg < m/3 {
				break
			}
		}
		legs = append(legs, leg)
		from--
	}
	if len(legs) < fewestLegs {
		return swinging{}
	}
	s := swinging{turns: turns[from:], swing: median(legs)}
	for i := 1; i < len(s.turns); i++ {
		s.crossings = append(s.crossings, halfway(t, y, s.turns[i-1], s.turns[i]))
	}
	n := len(s.crossings)
	s.period = 2 * (s.crossings[n-1] - s.crossings[0]) / float64(n-1)
	return s
}

// halfway is when a leg from one turning point to the next is half done.
func halfway(t, y []float64, from, to int) float64 {
	half := (y[from] + y[to]) / 2
	i := from
	for i+1 < to && (y[i+1] < half) == (y[from] < half) {
		i++
	}
	if y[i+1] == y[i] {
		return t[i]
	}
	share := min(max((half-y[i])/(y[i+1]-y[i]), 0), 1)
	return t[i] + share*(t[i+1]-t[i])
}

// hunts reports whether the swing is one that people would name.
func (s swinging) hunts(t, y []float64, within float64) bool {
	last := len(t) - 1
	if s.swing < leastSwing*within || s.swing > widestSwing*within ||
		t[last]-t[s.turns[0]] < shortestHunt {
		return false
	}
	// It still goes on: the last cycle and a bit saw most of it.
	low, high := y[last], y[last]
	for i := last; i >= 0 && t[i] >= t[last]-1.25*s.period; i-- {
		low, high = min(low, y[i]), max(high, y[i])
	}
	if high-low < 0.6*s.swing {
		return false
	}
	contrary, scatter := s.contrary(t, y)
	return scatter >= plainScatter*within || contrary > leastContrary
}

// contrary is how far readings half a cycle apart stand on opposite sides: 1 for
// a sine, ½ for a saw, about 0 for noise; scatter is their standard deviation.
func (s swinging) contrary(t, y []float64) (contrary, scatter float64) {
	from, to := s.turns[0], s.turns[len(s.turns)-1]
	l := lineOver(t[:to+1], y[:to+1], from)
	middle := (t[from] + t[to]) / 2
	off := func(i int) float64 { return y[i] - l.mean - l.slope*(t[i]-middle) }
	lag := max((to-from)/(len(s.turns)-1), 1)
	product, squares := 0.0, 0.0
	for i := from; i <= to; i++ {
		squares += square(off(i))
		if i+lag <= to {
			product += off(i) * off(i+lag)
		}
	}
	n := float64(to - from + 1)
	squares /= n
	return -product / max(n-float64(lag), 1) / squares, math.Sqrt(squares)
}

// hunting takes the mean over whole cycles, as far back as it stood still.
func (c course) hunting(t, y []float64, within float64, s swinging) course {
	var means, times []float64
	for i := 2; i < len(s.crossings); i++ {
		means = append(means, meanBetween(t, y, s.crossings[i-2], s.crossings[i]))
		times = append(times, (s.crossings[i-2]+s.crossings[i])/2)
	}
	l := lineOver(times, means, 0)
	doubt := 0.08 * s.swing / max(l.span, s.period)
	if l.n > 3 {
		doubt = l.slopeDoubt
	}
	c.period, c.swing = s.period, s.swing
	if (math.Abs(l.slope)-2*doubt)*shortestCalm > max(within, s.swing/4) {
		return c.moving(t, y, within)
	}
	last := len(s.crossings) - 1
	first := last % 2 // whole cycles
	c.state, c.from, c.to = Hunting, s.crossings[first], s.crossings[last]
	c.value = meanBetween(t, y, c.from, c.to)
	c.std = math.Hypot(0.05*s.swing, l.sigma/math.Sqrt(float64(l.n)/2)) // cycles overlap by half
	c.low, c.high = band(y[s.turns[0]:])
	c.swing = c.high - c.low
	return c
}

// meanBetween is the mean over the time between two times, of straight lines from
// reading to reading.
func meanBetween(t, y []float64, from, to float64) float64 {
	area := 0.0
	for i := 0; i+1 < len(t); i++ {
		a, b := max(t[i], from), min(t[i+1], to)
		if a < b {
			middle := (a + b) / 2
			area += (b - a) * (y[i] + (y[i+1]-y[i])*(middle-t[i])/(t[i+1]-t[i]))
		}
	}
	return area / (to - from)
}

// smoothed takes a swing off: the mean over one period about each reading, as far
// as there is one.
func smoothed(t, y []float64, period float64) (tt, yy []float64) {
	from, to, sum := 0, 0, 0.0
	for i := range t {
		for to < len(t) && t[to] <= t[i]+period/2 {
			sum, to = sum+y[to], to+1
		}
		for t[from] < t[i]-period/2 {
			sum, from = sum-y[from], from+1
		}
		if t[i]-t[0] >= period/2 && t[len(t)-1]-t[i] >= period/2 {
			tt, yy = append(tt, t[i]), append(yy, sum/float64(to-from))
		}
	}
	return tt, yy
}
