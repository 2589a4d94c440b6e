package charge

import (
	"math"

	"github.com/satline/satline/internal/base/thin"
)

// course is the judgement of a log, in seconds and SI units.
type course struct {
	state            Course
	value, std       float64
	from, to         float64 // the stretch that value is the mean of
	low, high, noise float64
	swing, period    float64
	end, endStd      float64
	tau, wait        float64
	spikes, gaps     int
}

// What it takes to call a value steady. "It has moved by no more than 1 °F in the
// last five minutes" is how people say it (common practice, no source); the
// figures beside it are tried out by the simulations of the tests.
const (
	fewestReadings = 6     // below that a line through noise proves nothing
	shortestCalm   = 300.0 // s, over which a value may move by what was asked for
	longestCalm    = 1200. // s, of which the mean is taken at most
	gapFactor      = 5.0   // times the usual step that make a gap
	hampelHalf     = 3     // readings to either side that a spike is compared with
	hampelLimit    = 4.0   // robust standard deviations that make a spike
	mostSpikes     = 0.1   // share of readings; what comes oftener is no freak,
	fewestSpikes   = 3.0   // in a log that is not very short
	swings         = 3     // neighbors half as far to one side, or more: no freak
	latestSeconds  = 30.0  // of a value on the move that are called its last readings
)

// settle judges readings y at times t, in order.
func settle(t, y []float64, within float64) course {
	var c course
	step := medianStep(t)
	for i := 1; i < len(t); i++ {
		if t[i]-t[i-1] > gapFactor*step {
			c.gaps++
		}
	}
	t, y, c.spikes = withoutSpikes(t, y, within)
	if len(t) < fewestReadings {
		return c.few(t, y, within)
	}
	if h, ok := huntOn(t, y, within); ok {
		return c.hunting(t, y, within, h)
	}
	calm, moves := calmStretch(t, y, within, jitter(y))
	switch {
	case calm.n > 0:
		c = c.over(t, y, calm)
		c.tau = approached(t, y, within)
		return c
	case moves:
		return c.moving(t, y, within)
	}
	c = c.latest(t, y, TooShort)
	c.wait = shortestCalm
	if span := t[len(t)-1] - t[0]; span < shortestCalm {
		c.wait -= span
	}
	return c
}

// few says of fewer readings than prove anything for how long the last of them must go on as they
// are, where any of them differs from the others.
func (c course) few(t, y []float64, within float64) course {
	c = c.latest(t, y, TooShort)
	n := len(y)
	for i := n - 1; i >= 0; i-- {
		if low, high := bounds(y[i:]); high-low > within {
			c.wait = max(shortestCalm-(t[n-1]-t[i+1]), 0)
			break
		}
	}
	return c
}

// over takes the value from a stretch in which it stood still.
func (c course) over(t, y []float64, s line) course {
	c.state, c.from, c.to = Settled, t[len(t)-s.n], t[len(t)-1]
	c.value, c.noise = s.mean, s.sigma
	c.std = math.Hypot(s.sigma/math.Sqrt(s.effective), s.slope*s.span/3)
	c.low, c.high = band(y[len(y)-s.n:])
	return c
}

// latest takes the value from the last half minute, or the last two readings.
func (c course) latest(t, y []float64, state Course) course {
	c.state = state
	n := len(y)
	if n == 0 {
		return c
	}
	from := max(n-2, 0)
	for from > 0 && t[from-1] >= t[n-1]-latestSeconds {
		from--
	}
	c.from, c.to = t[from], t[n-1]
	last := y[from:]
	for _, v := range last {
		c.value += v / float64(len(last))
	}
	c.low, c.high = bounds(last)
	c.value = min(max(c.value, c.low), c.high)
	c.std = (c.high - c.low) / math.Sqrt(12) // all that is known is the range (GUM 4.3.7)
	return c
}

// moving looks for the end of a movement, with its swing taken off where it has
// one, and estimates it where the readings determine the curve.
func (c course) moving(t, y []float64, within float64) course {
	swing := c.swing
	c = c.latest(t, y, Drifting)
	end := t[len(t)-1]
	span := end - t[0]
	c.wait = max(shortestCalm, span)
	if c.period > 0 {
		t, y = smoothed(t, y, c.period)
	}
	f, ok := fitApproach(t, y, within+swing/4)
	if !ok {
		return c
	}
	f.left *= math.Exp((t[len(t)-1] - end) / f.tau)
	c.state, c.tau, c.end, c.endStd, c.noise = Settling, f.tau, f.end, f.std, f.sigma
	// Until it moves by no more than within in five minutes.
	ahead := math.Abs(f.left) * math.Expm1(shortestCalm/f.tau)
	c.wait = max(f.tau*math.Log(ahead/within), shortestCalm-span, 0)
	return c
}

// line is the least squares line through the last n readings.
type line struct {
	n                 int
	span, mean, slope float64
	slopeDoubt        float64 // standard uncertainty of the slope
	last              float64 // of the line, at the last reading
	sigma             float64 // scatter about the line
	effective         float64 // readings that count as independent
}

// lineOver fits the readings from index from on.
func lineOver(t, y []float64, from int) line {
	t = t[from:]
	y = y[from:][:len(t)]
	n, span := float64(len(t)), t[len(t)-1]-t[0]
	middle, mean := 0.0, 0.0
	for i := range t {
		middle += t[i] - t[0]
		mean += y[i] - y[0]
	}
	middle, mean = t[0]+middle/n, y[0]+mean/n
	tt, ty, slope := 0.0, 0.0, 0.0
	for i := range t {
		tt += square(t[i] - middle)
		ty += (t[i] - middle) * (y[i] - mean)
	}
	if tt > 0 {
		slope = ty / tt
	}
	product, squares, before := 0.0, 0.0, 0.0
	for i := range t {
		r := y[i] - mean - slope*(t[i]-middle)
		squares += r * r
		product += r * before
		before = r
	}
	l := line{
		n: len(t), span: span, mean: mean, slope: slope,
		last:      mean + slope*(t[len(t)-1]-middle),
		sigma:     math.Sqrt(squares / max(n-2, 1)),
		effective: effectiveNumber(n, product, squares),
	}
	if tt > 0 {
		l.slopeDoubt = l.sigma * math.Sqrt(n/(tt*l.effective))
	}
	return l
}

// effectiveNumber is how many independent readings n correlated ones are worth:
// n(1−ρ)/(1+ρ) for a first-order process, with ρ the correlation of neighbors.
func effectiveNumber(n, product, squares float64) float64 {
	if squares == 0 {
		return n
	}
	rho := min(max(product/squares, 0), 0.95)
	return max(n*(1-rho)/(1+rho), 2)
}

// calmStretch returns the longest stretch up to the last reading in which the
// value stood still, n = 0 where there is none; moves says that it does not.
func calmStretch(t, y []float64, within, noise float64) (calm line, moves bool) {
	last := len(t) - 1
	if t[last]-t[0] < shortestCalm {
		l := lineOver(t, y, 0)
		moved := math.Abs(l.slope) * l.span
		return line{}, moved-3*l.slopeDoubt*l.span > within
	}
	var core line
	from := last
	for reach := shortestCalm; reach <= longestCalm; reach *= 4. / 3 {
		from = reachBack(t, from, reach)
		l := lineOver(t, y, from)
		moved, doubt := math.Abs(l.slope)*shortestCalm, l.slopeDoubt*shortestCalm
		if core.n == 0 {
			core = l
			low, high := band(y[from:])
			if moved-2*doubt > within && high-low > within {
				return line{}, true
			}
			if high-low <= 1.5*within && moved <= within {
				doubt = 0
			}
		}
		still := moved <= max(within-doubt, within/2) && doubt <= within/2 &&
			math.Abs(l.mean-core.mean) <= within/4+4*noise/math.Sqrt(float64(core.n))
		if !still && calm.n > 0 || calm.n > 0 && math.Abs(l.slope)*l.span > within {
			break
		}
		if still {
			calm = l
		}
		if from == 0 {
			break
		}
	}
	return calm, calm.n == 0 && math.Abs(core.slope)*shortestCalm > within
}

// reachBack returns the reading, from or an earlier one, from which the log to its end lasts for
// reach and has enough readings; the first where none does.
func reachBack(t []float64, from int, reach float64) int {
	last := len(t) - 1
	for from > 0 && (t[last]-t[from] < reach || last-from+1 < fewestReadings) {
		from--
	}
	return from
}

// band holds 95 % of the readings.
func band(y []float64) (low, high float64) {
	var usual [thin.Kept + 1]float64
	v := append(usual[:0], y...)
	last := float64(len(v) - 1)
	from, to := int(math.Floor(0.025*last)), int(math.Ceil(0.975*last))
	low = nth(v, from)
	return low, nth(v[from:], to-from)
}

// jitter is the scatter from one reading to the next, as a standard deviation of
// single readings: robust, and blind to what changes slowly.
func jitter(y []float64) float64 {
	const ofDifferences = 0.6745 * math.Sqrt2 // median of |a−b| of a normal distribution
	return medianStep(y) / ofDifferences
}

// medianStep is the median of how far each is from the one before; 0 where there are no two.
func medianStep(y []float64) float64 {
	if len(y) < 2 {
		return 0
	}
	var usual [thin.Kept]float64
	steps := usual[:0]
	for i, v := range y[1:] {
		steps = append(steps, math.Abs(v-y[i]))
	}
	return median(steps)
}

// median changes the order of its argument.
func median(v []float64) float64 {
	n := len(v)
	middle := nth(v, n/2)
	if n%2 == 1 {
		return middle
	}
	_, below := bounds(v[:n/2])
	return (below + middle) / 2
}

// bounds are the least and the greatest of numbers, without the care that slices.Min takes
// of what is none.
func bounds(v []float64) (low, high float64) {
	low, high = v[0], v[0]
	for _, x := range v {
		if x < low {
			low = x
		}
		if x > high {
			high = x
		}
	}
	return low, high
}

// nth is the value that stands at k once v is sorted; what is less stands before it afterwards
// (Hoare 1961, Algorithm 65: Find, Communications of the ACM 4:321). The parts are made without a
// branch that depends on a value, for no processor guesses which half one falls in.
func nth(v []float64, k int) float64 {
	const few = 12 // are sorted sooner
	for len(v) > few {
		pivot := middleOf(v[0], v[len(v)/2], v[len(v)-1])
		less := 0
		for i, x := range v {
			v[i], v[less] = v[less], x
			less += count(x < pivot)
		}
		if k < less {
			v = v[:less]
			continue
		}
		if v, k = v[less:], k-less; less > 0 {
			continue
		}
		same := 0
		for i, x := range v {
			v[i], v[same] = v[same], x
			same += count(x == pivot)
		}
		if k < same || same == 0 { // or it is no number
			return pivot
		}
		v, k = v[same:], k-same
	}
	for i, x := range v {
		for ; i > 0 && x < v[i-1]; i-- {
			v[i] = v[i-1]
		}
		v[i] = x
	}
	return v[k]
}

// middleOf is the median of three.
func middleOf(a, b, c float64) float64 {
	if a > b {
		a, b = b, a
	}
	switch {
	case c < a:
		return a
	case c > b:
		return b
	}
	return c
}

func count(yes bool) (n int) {
	if yes {
		n = 1
	}
	return n
}

// withoutSpikes leaves out readings far from the median of their neighbors, by
// the identifier of Hampel (1974): more than four robust standard deviations.
// What differs by less than within is never a spike, what comes again and again
// is none, nor what swings with its neighbors, and two at the end are a change.
func withoutSpikes(t, y []float64, within float64) (tt, yy []float64, spikes int) {
	n := len(y)
	if n <= hampelHalf {
		return t, y, 0
	}
	if low, high := bounds(y); high-low <= within {
		return t, y, 0
	}
	freak := make([]bool, n)
	var window, spread [2*hampelHalf + 1]float64
	for i := range y {
		from := min(max(i-hampelHalf, 0), max(n-len(window), 0))
		w := window[:copy(window[:], y[from:min(from+len(window), n)])]
		if low, high := bounds(w); max(y[i]-low, high-y[i]) <= within {
			continue // nor can it be farther from their median
		}
		center := median(w)
		off := math.Abs(y[i] - center)
		if off <= within {
			continue
		}
		s, alike := spread[:len(w)], 0
		for k, v := range w {
			s[k] = math.Abs(v - center)
			alike += count((v-center)*(y[i]-center) > off*off/2)
		}
		const robust = 1.4826 // MAD of a normal distribution to its standard deviation
		freak[i] = alike < swings && off > hampelLimit*robust*median(s)
	}
	if freak[n-1] && freak[n-2] {
		for i := n - 1; i >= 0 && freak[i]; i-- {
			freak[i] = false
		}
	}
	tt, yy = make([]float64, 0, n), make([]float64, 0, n)
	for i := range y {
		if !freak[i] {
			tt, yy = append(tt, t[i]), append(yy, y[i])
		}
	}
	if spikes = n - len(yy); float64(spikes) > max(mostSpikes*float64(n), fewestSpikes) {
		return t, y, 0
	}
	return tt, yy, spikes
}
