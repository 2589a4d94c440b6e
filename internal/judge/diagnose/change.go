package diagnose

import (
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
	// mostHistories is how many components of the earlier readings are followed.
	mostHistories = 60
	// hardlyLikely is the part of the chance of the likeliest of them up to which one is followed
	// through a machine that answers as is usual, and no other.
	hardlyLikely = 0.02
	// notAsSaid is the chance below which the readings did not move as said.
	notAsSaid = 0.005
)

// compareWith follows every explanation of the earlier readings through what was
// done, and weighs it by both sets of readings together: the machine's own
// offset is the same in both, so the difference counts for much.
func (c *caseFile) compareWith(earlier *Earlier) *Change {
	was := c.before(earlier)
	histories := was.work.histories
	if len(histories) == 0 {
		return nil
	}
	// Both weighed alone, in case something unforeseen came between.
	between := math.Log(unforeseen) + was.evidenceLog()
	for i := range c.parts {
		c.parts[i].log += between
		c.parts[i].weight = 0
	}
	likeliest := &histories[0]
	first, firstAfter, best := likeliest, component{a: none, b: none}, 0.0
	for i := range histories {
		b := &histories[i]
		ways := asUsual
		if c.chargeMoved(earlier.Done) != 0 && b.weight > hardlyLikely*likeliest.weight {
			ways = c.evidence.ways()
		}
		for _, w := range ways {
			a, ok := c.after(was, b.component, earlier.Done, w)
			if !ok {
				continue
			}
			j, ok := c.join(was, b, a)
			if !ok {
				continue
			}
			// The first explanation is held to its word at the severity that keeps it
			// best, among those that the earlier readings left likely.
			if b.a == likeliest.a && b.b == likeliest.b && b.weight > 0.05*likeliest.weight {
				if chance := departure(j.squared, c.seen.n); i == 0 || chance > best {
					first, firstAfter, best = b, a, chance
				}
			}
			a.log = math.Log((1-unforeseen)*w.chance) + b.log + j.log + c.bounds(a)
			c.parts = append(c.parts, c.withoutBand(a))
		}
	}
	c.normalize()

	now := c.withoutBand(firstAfter)
	out := &Change{
		Before: was.explanation([2]int{first.a, first.b}),
		after:  c.explanation([2]int{now.a, now.b}),
	}
	out.Before.Probability = was.probability(first.component)
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
func (c *caseFile) remnants(
	b component, done []Action, w way,
) (left []remnant, charge float64) {
	reads := 0.0
	for k, a := range [...]int{b.a, b.b} {
		if a == none || mends(done, c.suspects[a].signature) {
			continue
		}
		index := [...]int{b.sa, b.sb}[k]
		code, s := c.suspects[a].signature, &c.states[a][index]
		switch code {
		case Undercharge:
			reads -= s.severity
		case Overcharge:
			reads += s.severity
		default:
			left = append(left, remnant{code, s.severity, index, s})
		}
	}
	mass := w.mass * c.chargeMoved(done)
	charge, reads = reads/w.steep+mass, reads+w.steep*mass
	const slight = 0.02 // of the charge: no fault
	switch {
	case reads < -slight:
		left = append(left, remnant{Undercharge, -reads, none, nil})
	case reads > slight:
		left = append(left, remnant{Overcharge, reads, none, nil})
	}
	return left, charge
}

// after is what an explanation of the earlier readings becomes by what was
// done; it may add a state to a suspect of c.
func (c *caseFile) after(
	was *caseFile, b component, done []Action, w way,
) (component, bool) {
	left, charge := was.remnants(b, done, w)
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

// withoutBand is what an explanation was followed to without a charge that is in the band: that is
// no fault.
func (c *caseFile) withoutBand(p component) component {
	if math.Abs(p.charge) > ChargeBand {
		return p
	}
	charge := func(a int) bool {
		return a != none &&
			(c.suspects[a].signature == Undercharge || c.suspects[a].signature == Overcharge)
	}
	if charge(p.b) {
		p.b, p.sb = none, 0
	}
	if charge(p.a) {
		p.a, p.sa, p.b, p.sb = p.b, p.sb, none, 0
	}
	return p
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

// departure is the chance of a squared distance at least this large of n readings.
func departure(squared float64, n int) float64 {
	return 1 - distuv.ChiSquared{K: float64(n)}.CDF(squared*(tails-2)/tails)
}

// moves compares each feature after with what the earlier diagnosis and what
// was done let expect, given the readings before.
func (c *caseFile) moves(out *Change, was *caseFile, b *history, a component) {
	j, ok := c.join(was, b, a)
	if !ok || c.seen.n == 0 {
		out.AsSaid, out.Chance = true, 1
		return
	}
	out.Chance = departure(j.squared, c.seen.n)
	out.AsSaid = out.Chance >= notAsSaid
	for i, f := range c.work.at[:c.work.n] {
		if !was.seen.have[f] {
			continue
		}
		m := Move{
			Feature: signature.Feature(f), Before: was.seen.value[f], After: c.seen.value[f],
			Expected: c.seen.value[f] - j.off[i], ExpectedStd: math.Sqrt(j.variance[i]),
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
