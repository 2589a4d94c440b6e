package charge

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// course is the fit to a log, in seconds and SI units.
type course struct {
	state             State
	value, std        float64
	low, high, swing  float64
	tau, wait, period float64
	noise             float64
	spikes, gaps      int
}

// Limits of the fit. They decide how much evidence it takes, and are tried out
// by the simulations of the tests.
const (
	fewestReadings = 6    // below that a curve of three parameters proves nothing
	hampelHalf     = 3    // readings to either side that a spike is compared with
	hampelLimit    = 4.0  // robust standard deviations that make a spike
	gapFactor      = 5.0  // times the usual step that make a gap
	mostPoints     = 360  // longer logs are averaged into so many points
	falseAlarm     = 1e-3 // chance that noise alone passes for hunting
	fewestCycles   = 2.0  // swings that must be seen to be called hunting
	leastRegular   = 0.4  // part of the scatter that the sine of a hunting value carries
	evidence       = 6.0  // fall of BIC that an approach must bring: "strong" (Kass and Raftery 1995)
)

// settle fits a + b·exp(−t/τ), and a sine where there is one.
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
		return c.latest(y, TooShort)
	}
	t, y = averaged(t, y, mostPoints)
	span := t[len(t)-1] - t[0]

	best := bestCurve(t, y, within)
	if best.omega > 0 {
		c.period = 2 * math.Pi / best.omega
	}
	c.noise = best.sigma
	c.value, c.std = best.a, best.stdOfA()
	c.low, c.high = best.band(t, y)
	if c.period > 0 {
		c.swing = c.high - c.low
	}
	if best.tau > 0 {
		c.tau = best.tau
		left := math.Abs(best.b) * math.Exp(-span/best.tau)
		switch {
		case left > within && (best.tau > 1.5*span || c.std > max(within, left/2)):
			period := c.period
			c = c.latest(y, Drifting)
			c.tau, c.wait, c.period = 0, span, period
			return c
		case left > within:
			c.state, c.wait = Settling, best.tau*math.Log(left/within)
			return c
		}
	}
	switch {
	case c.std > within:
		c.state, c.wait = TooShort, span
	case c.period > 0:
		c.state = Hunting
	default:
		c.state = Settled
	}
	return c
}

// bestCurve takes up the approach and the swing, each alone and both together,
// where the readings call for them. The swing is looked for with and without the
// approach taken off: either may hide the other.
func bestCurve(t, y []float64, within float64) curve {
	still, moving := fitCurve(t, y, 0, 0), fitApproach(t, y, 0)
	candidates := []curve{moving}
	if omega, ok := hunts(t, still.residuals, within); ok {
		candidates = append(candidates, fitCurve(t, y, 0, omega).refined(t, y))
	}
	if moving.determined() {
		if omega, ok := hunts(t, moving.residuals, within); ok {
			candidates = append(candidates, fitApproach(t, y, omega).refined(t, y))
		}
	}
	best := still
	for _, c := range candidates {
		if c.better(best, within) {
			best = c
		}
	}
	return best
}

// latest fills c from the last third of the readings alone.
func (c course) latest(y []float64, state State) course {
	c.state = state
	if len(y) == 0 {
		return c
	}
	tail := slices.Clone(y[len(y)-max(1, len(y)/3):])
	slices.Sort(tail)
	sum := 0.0
	for _, v := range tail {
		sum += v
	}
	c.value = sum / float64(len(tail))
	c.low, c.high = tail[0], tail[len(tail)-1]
	c.std = (c.high - c.low) / math.Sqrt(12) // all that is known is the range (GUM 4.3.7)
	return c
}

func medianStep(t []float64) float64 {
	if len(t) < 2 {
		return 0
	}
	steps := make([]float64, len(t)-1)
	for i := range steps {
		steps[i] = t[i+1] - t[i]
	}
	return median(steps)
}

// median sorts its argument.
func median(v []float64) float64 {
	slices.Sort(v)
	n := len(v)
	if n%2 == 1 {
		return v[n/2]
	}
	return (v[n/2-1] + v[n/2]) / 2
}

// withoutSpikes leaves out readings far from the median of their neighbors, by
// the identifier of Hampel (1974): more than four robust standard deviations.
// What differs by less than within is never a spike.
func withoutSpikes(t, y []float64, within float64) (tt, yy []float64, spikes int) {
	n := len(y)
	if n <= hampelHalf {
		return t, y, 0
	}
	var window, spread [2*hampelHalf + 1]float64
	for i := range y {
		from := min(max(i-hampelHalf, 0), max(n-len(window), 0))
		w := window[:copy(window[:], y[from:min(from+len(window), n)])]
		center := median(w)
		s := spread[:len(w)]
		for k, v := range w {
			s[k] = math.Abs(v - center)
		}
		const robust = 1.4826 // MAD of a normal distribution to its standard deviation
		if d := math.Abs(y[i] - center); d > hampelLimit*robust*median(s) && d > within {
			spikes++
			continue
		}
		tt, yy = append(tt, t[i]), append(yy, y[i])
	}
	return tt, yy, spikes
}

// averaged means neighbors together until at most n points are left.
func averaged(t, y []float64, n int) ([]float64, []float64) {
	group := (len(t) + n - 1) / n
	if group <= 1 {
		return t, y
	}
	var tt, yy []float64
	for i := 0; i < len(t); i += group {
		end := min(i+group, len(t))
		st, sy := 0.0, 0.0
		for k := i; k < end; k++ {
			st, sy = st+t[k], sy+y[k]
		}
		tt, yy = append(tt, st/float64(end-i)), append(yy, sy/float64(end-i))
	}
	return tt, yy
}

// curve is a fit of a + b·exp(−(t−t₀)/τ) + c·cos ωt + s·sin ωt. Where τ is 0
// there is no approach, where ω is 0 no swing.
type curve struct {
	tau, omega float64
	a, b       float64
	parameters int
	rss, sigma float64
	residuals  []float64
	covA       float64 // variance of a per unit variance of a reading
	effective  float64 // readings that count as independent
}

// fitCurve solves the linear part for given τ and ω by the normal equations;
// the columns are few and far from parallel.
func fitCurve(t, y []float64, tau, omega float64) curve {
	return fitColumns(columnsOf(t, tau, omega), y, tau, omega)
}

func fitColumns(x [][]float64, y []float64, tau, omega float64) curve {
	n, k := len(y), len(x)
	f := curve{tau: tau, omega: omega, parameters: k, rss: math.Inf(1), covA: math.Inf(1)}
	if omega > 0 {
		f.parameters++
	}
	normal, inverse := normalOf(x)
	if inverse == nil {
		return f
	}
	right := mat.NewVecDense(k, nil)
	for p := range x {
		right.SetVec(p, floats.Dot(x[p], y))
	}
	var beta mat.VecDense
	if err := inverse.SolveVecTo(&beta, right); err != nil {
		return f
	}
	f.a = beta.AtVec(0)
	if tau > 0 {
		f.b = beta.AtVec(1)
	}
	f.residuals = slices.Clone(y)
	for p := range x {
		floats.AddScaled(f.residuals, -beta.AtVec(p), x[p])
	}
	f.rss = floats.Dot(f.residuals, f.residuals)
	f.sigma = math.Sqrt(f.rss / float64(max(n-f.parameters, 1)))
	f.effective = effectiveNumber(f.residuals)
	f.covA = firstVariance(normal, inverse)
	return f
}

// columnsOf returns the columns of the design matrix: 1, the approach, and
// cosine and sine of the swing.
func columnsOf(t []float64, tau, omega float64) [][]float64 {
	one := make([]float64, len(t))
	floats.AddConst(1, one)
	x := [][]float64{one}
	if tau > 0 {
		x = append(x, approach(make([]float64, len(t)), t, tau))
	}
	if omega > 0 {
		c, s := make([]float64, len(t)), make([]float64, len(t))
		for i, ti := range t {
			s[i], c[i] = math.Sincos(omega * ti)
		}
		x = append(x, c, s)
	}
	return x
}

// approach fills e with exp(−(t−t₀)/τ).
func approach(e, t []float64, tau float64) []float64 {
	for i, ti := range t {
		e[i] = math.Exp(-(ti - t[0]) / tau)
	}
	return e
}

// normalOf returns xᵀx and its factors, nil where the columns do not determine
// the parameters.
func normalOf(x [][]float64) (*mat.SymDense, *mat.Cholesky) {
	normal := mat.NewSymDense(len(x), nil)
	for p := range x {
		for q := p; q < len(x); q++ {
			normal.SetSym(p, q, floats.Dot(x[p], x[q]))
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(normal) {
		return normal, nil
	}
	return normal, &chol
}

// firstVariance returns element (0, 0) of (xᵀx)⁻¹, infinite where x does not
// determine the first parameter.
func firstVariance(normal *mat.SymDense, inverse *mat.Cholesky) float64 {
	if inverse == nil {
		return math.Inf(1)
	}
	first := mat.NewVecDense(normal.SymmetricDim(), nil)
	first.SetVec(0, 1)
	var column mat.VecDense
	if err := inverse.SolveVecTo(&column, first); err != nil || !(column.AtVec(0) >= 0) {
		return math.Inf(1)
	}
	return column.AtVec(0)
}

// effectiveNumber is how many independent readings n correlated ones are worth:
// n(1−ρ)/(1+ρ) for a first-order process, with ρ the correlation of neighbors.
func effectiveNumber(r []float64) float64 {
	n := float64(len(r))
	product, square := 0.0, 0.0
	for i, v := range r {
		square += v * v
		if i > 0 {
			product += v * r[i-1]
		}
	}
	if square == 0 {
		return n
	}
	rho := min(max(product/square, 0), 0.95)
	return max(n*(1-rho)/(1+rho), 2)
}

// fitApproach finds the time constant of least squares: on a logarithmic grid
// first, then by golden section.
func fitApproach(t, y []float64, omega float64) curve {
	span := t[len(t)-1] - t[0]
	low, high := math.Log(max(medianStep(t), span/500)), math.Log(3*span)
	const steps = 24
	x := columnsOf(t, span, omega)
	cost := func(logTau float64) float64 {
		tau := math.Exp(logTau)
		approach(x[1], t, tau)
		return fitColumns(x, y, tau, omega).rss
	}
	best, at := math.Inf(1), low
	width := (high - low) / steps
	for i := range steps + 1 {
		logTau := low + float64(i)*width
		if v := cost(logTau); v < best {
			best, at = v, logTau
		}
	}
	from, to := max(at-width, low), min(at+width, high)
	const golden = 0.6180339887498949
	x1, x2 := to-golden*(to-from), from+golden*(to-from)
	f1, f2 := cost(x1), cost(x2)
	for to-from > 0.01 {
		if f1 < f2 {
			to, x2, f2 = x2, x1, f1
			x1 = to - golden*(to-from)
			f1 = cost(x1)
		} else {
			from, x1, f1 = x1, x2, f2
			x2 = from + golden*(to-from)
			f2 = cost(x2)
		}
	}
	return fitCurve(t, y, math.Exp((from+to)/2), omega).withTauDoubt(t)
}

// withTauDoubt counts the time constant as one of the fitted parameters, to
// first order: its doubt moves the settled value too.
func (f curve) withTauDoubt(t []float64) curve {
	perTau := make([]float64, len(t))
	for i, ti := range t {
		u := (ti - t[0]) / f.tau
		perTau[i] = f.b * u / f.tau * math.Exp(-u)
	}
	f.parameters++
	f.covA = firstVariance(normalOf(append(columnsOf(t, f.tau, f.omega), perTau)))
	f.sigma = math.Sqrt(f.rss / float64(max(len(t)-f.parameters, 1)))
	return f
}

// better reports whether f explains the readings so much better than another
// fit that the parameters it has more are called for (Schwarz 1978).
// Differences far below what counts as settled explain nothing.
func (f curve) better(other curve, within float64) bool {
	if !f.determined() {
		return false
	}
	n := float64(len(other.residuals))
	floor := n * (within / 50) * (within / 50)
	more := float64(f.parameters - other.parameters)
	return f.effective*math.Log((other.rss+floor)/(f.rss+floor))-more*math.Log(f.effective) > evidence
}

// determined reports whether the readings fix all parameters of the fit.
func (f curve) determined() bool { return !math.IsInf(f.rss, 0) && !math.IsInf(f.covA, 0) }

// stdOfA is the standard uncertainty of the settled value.
func (f curve) stdOfA() float64 {
	n := float64(len(f.residuals))
	return f.sigma * math.Sqrt(f.covA*n/f.effective)
}

// band holds 95 % of the readings, less their approach.
func (f curve) band(t, y []float64) (low, high float64) {
	level := make([]float64, len(y))
	for i := range y {
		level[i] = y[i]
		if f.tau > 0 {
			level[i] -= f.b * math.Exp(-(t[i]-t[0])/f.tau)
		}
	}
	slices.Sort(level)
	last := float64(len(level) - 1)
	return level[int(math.Floor(0.025*last))], level[int(math.Ceil(0.975*last))]
}
