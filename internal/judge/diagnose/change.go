package diagnose

import (
	"cmp"
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"gonum.org/v1/gonum/stat/distuv"
)

// A Change compares the readings with those before something was done.
type Change struct {
	// Before is the first explanation by the earlier readings alone.
	Before *Explanation
	Moves  []Move
	// AsSaid reports whether the readings moved as Before and what was done say;
	// Chance is the probability of a departure at least this large if they did.
	AsSaid bool
	Chance float64
	// Revised says that the first explanation now is not what Before and what
	// was done would have led to.
	Revised bool
	after   *Explanation
}

// A Move is how one feature moved, and how it should have.
type Move struct {
	Feature               signature.Feature
	Before, After         float64
	Expected, ExpectedStd float64 // of After
}

const (
	// unforeseen is the prior that the machine or an instrument changed in
	// a way that what was done does not account for.
	unforeseen = 0.05
	// sharedNoise is how much of an instrument's error is the same before and
	// after: its calibration stays, its placing does not. Common practice.
	sharedNoise = 0.5
	// sharedRest is the same for how a machine answers a fault.
	sharedRest = 0.8
	// histories is how many components of the earlier readings are followed.
	histories = 60
	// notAsSaid is the chance below which the readings did not move as said.
	notAsSaid = 0.005
)

// compareWith follows every explanation of the earlier readings through what
// was done, and weighs it by both sets of readings together: the machine's own
// offset is the same in both, so the difference counts for much.
func (c *caseFile) compareWith(earlier *Earlier) *Change {
	past := *c.evidence
	past.Input, past.Airflow, past.Power = earlier.Input, earlier.Airflow, earlier.Power
	past.Earlier = nil
	was := open(&past)
	c.earlier = was // whose states go on in this one
	if was.seen.n == 0 {
		return nil
	}
	was.infer()

	// Both weighed alone, in case something unforeseen came between.
	between := math.Log(unforeseen) + was.evidenceLog()
	for i := range c.parts {
		c.parts[i].log += between
		c.parts[i].weight = 0
	}
	order := make([]int, len(was.parts))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(was.parts[j].weight, was.parts[i].weight)
	})
	likeliest := was.parts[order[0]]
	first, firstAfter, best := likeliest, component{a: none, b: none}, 0.0
	for i, at := range order[:min(histories, len(order))] {
		b := was.parts[at]
		a, ok := c.after(was, b, earlier.Done)
		if !ok {
			continue
		}
		var x [maxDim]float64
		n1, n, ok := c.joint(was, b, a, &x)
		if !ok {
			continue
		}
		// The first explanation is held to its word at the severity that keeps it
		// best, among those that the earlier readings left likely.
		if b.a == likeliest.a && b.b == likeliest.b && b.weight > 0.05*likeliest.weight {
			if chance := departure(x[n1:n]); i == 0 || chance > best {
				first, firstAfter, best = b, a, chance
			}
		}
		a.log = math.Log(1-unforeseen) + was.priorLog(b) + c.jointLog(x[:n]) +
			was.bounds(b) + c.bounds(a)
		c.parts = append(c.parts, a)
	}
	c.normalize()

	out := &Change{
		Before: was.explanation([2]int{first.a, first.b}),
		after:  c.explanation([2]int{firstAfter.a, firstAfter.b}),
	}
	out.Before.Probability = was.probability(first)
	c.moves(out, was, first, firstAfter)
	return out
}

// probability of the explanation a component belongs to.
func (c *caseFile) probability(p component) float64 {
	sum := 0.0
	for _, x := range c.parts {
		if x.a == p.a && x.b == p.b {
			sum += x.weight
		}
	}
	return sum
}

// priorLog is the log prior of a component with what was seen.
func (c *caseFile) priorLog(p component) float64 {
	switch {
	case p.a == none:
		return math.Log(priorSound*c.ordinary) + c.logClues(nil, nil)
	case p.b == none:
		return math.Log(c.prior[p.a]*c.states[p.a][p.sa].weight) + c.logClues(&c.suspects[p.a], nil)
	}
	return math.Log(
		c.seldom(
			p.a, p.b,
		)*c.prior[p.a]*c.prior[p.b]*c.states[p.a][p.sa].weight*c.states[p.b][p.sb].weight,
	) +
		c.logClues(&c.suspects[p.a], &c.suspects[p.b])
}

// chargeMoved is the net charge added as a fraction of the label charge, or of the
// usual one for the capacity.
func (c *caseFile) chargeMoved(done []Action) float64 {
	whole := float64(c.evidence.label())
	sum := 0.0
	for _, a := range done {
		switch a.Kind {
		case ChargeAdded:
			sum += float64(a.Mass) / whole
		case ChargeRecovered:
			sum -= float64(a.Mass) / whole
		}
	}
	return sum
}

// mended lists what each action puts right.
var mended = map[ActionKind][]Code{
	IndoorAirRestored:   {LowIndoorAir},
	OutdoorCoilCleaned:  {CondenserAir},
	RestrictionRemoved:  {Restriction},
	FeedReduced:         {Overfeed},
	CircuitRecharged:    {Undercharge, Overcharge, NonCondensables, OtherRefrigerant},
	InstrumentCorrected: instrumentSignatures,
}

// mends reports whether what was done put a signature right.
func mends(done []Action, code Code) bool {
	return slices.ContainsFunc(
		done, func(a Action) bool { return slices.Contains(mended[a.Kind], code) },
	)
}

// A remnant is a cause that what was done has left.
type remnant struct {
	signature Code
	severity  float64
	index     int // of the state, which stays what it is; or none
	state     *state
}

// remnants are what is left of an explanation of the earlier readings by what was done, with
// the relative charge error.
func (c *caseFile) remnants(b component, done []Action) (left []remnant, charge float64) {
	for k, a := range [...]int{b.a, b.b} {
		if a == none || mends(done, c.suspects[a].signature) {
			continue
		}
		index := [...]int{b.sa, b.sb}[k]
		code, s := c.suspects[a].signature, &c.states[a][index]
		switch code {
		case Undercharge:
			charge -= s.severity
		case Overcharge:
			charge += s.severity
		default:
			left = append(left, remnant{code, s.severity, index, s})
		}
	}
	charge += c.chargeMoved(done)
	const slight = 0.02 // of the charge: no fault
	switch {
	case charge < -slight:
		left = append(left, remnant{Undercharge, -charge, none, nil})
	case charge > slight:
		left = append(left, remnant{Overcharge, charge, none, nil})
	}
	return left, charge
}

// after is what an explanation of the earlier readings becomes by what was
// done; it may add a state to a suspect of c.
func (c *caseFile) after(was *caseFile, b component, done []Action) (component, bool) {
	left, charge := was.remnants(b, done)
	out := component{a: none, b: none, followed: true, charge: charge}
	for _, r := range left[:min(2, len(left))] {
		a := c.suspect(r.signature)
		if a == none {
			return out, false
		}
		index := r.index // in the table, and so the same in both
		switch {
		case r.index == none:
			index = c.followedTo(a, r.severity)
		case r.state.level == nil:
			index = c.alsoIn(a, *r.state)
		}
		if out.a == none {
			out.a, out.sa = a, index
		} else {
			out.b, out.sb = a, index
		}
	}
	if out.b != none && out.a > out.b {
		out.a, out.b, out.sa, out.sb = out.b, out.a, out.sb, out.sa
	}
	return out, true
}

// alsoIn adds a state to a suspect, with no chance of its own, and returns its index.
func (c *caseFile) alsoIn(a int, s state) int {
	s.weight = 0
	c.states[a] = append(c.states[a], s)
	return len(c.states[a]) - 1
}

// followedTo is the index of a state of a tabled cause at a severity, which many explanations
// may be followed to.
func (c *caseFile) followedTo(a int, severity float64) int {
	tabled := len(c.levels(c.suspects[a].signature))
	for s := tabled; s < len(c.states[a]); s++ {
		if x := &c.states[a][s]; x.weight == 0 && x.severity == severity {
			return s
		}
	}
	return c.alsoIn(a, c.at(a, severity))
}

var noState = state{gain: new(matrix), rest: new(matrix)}

// at interpolates a tabled cause to a severity, from nothing at zero.
func (c *caseFile) at(a int, severity float64) state {
	n := len(c.levels(c.suspects[a].signature))
	high := slices.IndexFunc(c.states[a][:n], func(s state) bool { return s.severity >= severity })
	if high < 0 {
		high = n - 1
	}
	upper, lower := &c.states[a][high], &noState
	if high > 0 {
		lower = &c.states[a][high-1]
	}
	t := (severity - lower.severity) / (upper.severity - lower.severity)
	s := state{
		severity: severity,
		gain:     c.work.matrix(),
		rest:     c.work.matrix(),
		level:    upper.level,
		capacity: lower.capacity + t*(upper.capacity-lower.capacity),
	}
	for f := range features {
		s.shift[f] = lower.shift[f] + t*(upper.shift[f]-lower.shift[f])
		for g := range features {
			s.gain[f][g] = lower.gain[f][g] + t*(upper.gain[f][g]-lower.gain[f][g])
			s.rest[f][g] = max(0, 1-t)*lower.rest[f][g] + t*upper.rest[f][g]
		}
	}
	s.doubt = modelDoubt(&s.shift)
	return s
}

// follow is how the features of a component follow the machine's own offset, as the clamps
// show it; bare is one for one.
func (c *caseFile) follow(p component) (m matrix, bare bool) {
	var room [2]*state
	states := c.statesOf(p, &room)
	m, bare = follow(states)
	for _, s := range states {
		if s.pull != nil {
			s.pull.follow(&m)
			bare = false
		}
	}
	return m, bare
}

// cross is the covariance of the features after, by row, with those before, as far as both
// come from the machine's own offset and the instruments.
func (c *caseFile) cross(was *caseFile, b, a component) matrix {
	cross := c.machine.scatter
	before, bareBefore := was.follow(b)
	after, bareAfter := c.follow(a)
	for f := range cross {
		if bareBefore && bareAfter || !c.seen.have[f] {
			continue
		}
		half := c.machine.scattered(&after[f])
		for g := range cross {
			if was.seen.have[g] {
				cross[f][g] = dot(&half, &before[g])
			}
		}
	}
	for f := range cross {
		for g := range cross {
			cross[f][g] += sharedNoise * c.seen.noise[f][g]
		}
	}
	return cross
}

// shareRest adds to such a covariance how the machine answers a cause that is there before
// and after, at the lesser severity of the two.
func (c *caseFile) shareRest(was *caseFile, b, a component, cross *matrix) {
	for i, p := range [...]int{a.a, a.b} {
		for j, q := range [...]int{b.a, b.b} {
			if p == none || q == none || c.suspects[p].signature != was.suspects[q].signature {
				continue
			}
			s := &c.states[p][[...]int{a.sa, a.sb}[i]]
			t := &was.states[q][[...]int{b.sa, b.sb}[j]]
			if t.severity < s.severity {
				s = t
			}
			for f := range cross {
				for g := range cross {
					cross[f][g] += sharedRest * s.left(f, g)
				}
			}
		}
	}
}

// jointPrediction stacks the features before, then after, of b and a: residuals
// of what was read, and their covariance in the scratch triangle. It returns
// the count before and in all.
func (c *caseFile) jointPrediction(
	was *caseFile, b, a component, x *[maxDim]float64, shareRest bool,
) (first, n int) {
	meanBefore, covBefore := was.predict(b, &was.seen.have, was.seen.noise)
	meanAfter, covAfter := c.predict(a, &c.seen.have, c.seen.noise)
	cross := c.cross(was, b, a)
	if shareRest {
		c.shareRest(was, b, a, &cross)
	}
	var at [maxDim]int
	for f := range features {
		if was.seen.have[f] {
			x[n], at[n] = was.seen.value[f]-meanBefore[f], f
			for k := range n + 1 {
				c.work.triangle.l[n][k] = covBefore[f][at[k]]
			}
			n++
		}
	}
	first = n
	for f := range features {
		if c.seen.have[f] {
			x[n], at[n] = c.seen.value[f]-meanAfter[f], f
			for k := range first {
				c.work.triangle.l[n][k] = cross[f][at[k]]
			}
			for k := first; k <= n; k++ {
				c.work.triangle.l[n][k] = covAfter[f][at[k]]
			}
			n++
		}
	}
	return first, n
}

// joint factors the covariance of both sets of readings and whitens their
// residuals.
func (c *caseFile) joint(
	was *caseFile, b, a component, x *[maxDim]float64,
) (first, n int, ok bool) {
	for _, share := range [...]bool{true, false} {
		first, n = c.jointPrediction(was, b, a, x, share)
		if c.work.triangle.factor(n) {
			c.work.triangle.whiten(x[:n])
			return first, n, true
		}
	}
	return first, n, false
}

// jointLog is the log likelihood of both sets of readings by the residuals that joint whitened.
func (c *caseFile) jointLog(x []float64) float64 {
	d2 := 0.0
	for _, v := range x {
		d2 += v * v
	}
	return logStudent(len(x), c.work.triangle.logDet(), d2)
}

// departure is the chance of whitened residuals at least this large.
func departure(x []float64) float64 {
	distance := 0.0
	for _, v := range x {
		distance += v * v
	}
	return 1 - distuv.ChiSquared{K: float64(len(x))}.CDF(distance*(tails-2)/tails)
}

// moves compares each feature after with what the earlier diagnosis and what
// was done let expect, given the readings before.
func (c *caseFile) moves(out *Change, was *caseFile, b, a component) {
	var x [maxDim]float64
	first, n, ok := c.joint(was, b, a, &x)
	if !ok || n == first {
		out.AsSaid, out.Chance = true, 1
		return
	}
	out.Chance = departure(x[first:n])
	out.AsSaid = out.Chance >= notAsSaid
	i := first
	for f := range features {
		if !c.seen.have[f] {
			continue
		}
		// The whitened residuals before give the conditional mean, the rows of
		// the factor after give its spread.
		residual, variance := 0.0, 0.0
		for k := range i + 1 {
			residual += c.work.triangle.l[i][k] * x[k]
		}
		expected := 0.0
		for k := range first {
			expected += c.work.triangle.l[i][k] * x[k]
		}
		for k := first; k <= i; k++ {
			variance += c.work.triangle.l[i][k] * c.work.triangle.l[i][k]
		}
		i++
		if !was.seen.have[f] {
			continue
		}
		m := Move{
			Feature: signature.Feature(f), Before: was.seen.value[f], After: c.seen.value[f],
			Expected: c.seen.value[f] - residual + expected, ExpectedStd: math.Sqrt(variance),
		}
		if m.Feature == signature.Evaporating {
			glide := c.seen.raw.evapGlide
			m.Before += was.seen.raw.evapGlide
			m.After, m.Expected = m.After+glide, m.Expected+glide
		}
		out.Moves = append(out.Moves, m)
	}
}

// revise compares the first explanation now with what was to be expected.
func (x *Change) revise(now *Explanation) { x.Revised = now.Code() != x.after.Code() }
