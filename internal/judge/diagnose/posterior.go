package diagnose

import (
	"cmp"
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/physics/helmholtz"
)

// A component is one explanation at definite severities: one term of the
// mixture that is the posterior.
type component struct {
	a, b   int     // suspects; none is -1
	sa, sb int     // their states
	fit    float64 // log likelihood of the readings
	log    float64
	weight float64 // posterior, after normalizing
	// followed says that it comes from earlier readings and what was done since, which
	// leaves a relative charge error.
	followed bool
	charge   float64
}

// A caseFile is a diagnosis in the making.
type caseFile struct {
	evidence *Evidence
	table    *signature.Table
	seen     *observation
	clues    []clue
	machine  *machine
	suspects []suspect
	states   [][]state
	prior    []float64
	// short and full are the suspects of a charge that is.
	short, full int
	parts       []component
	// callAt is the chance of a wrong charge from which moving refrigerant counts as an act.
	callAt float64
	// ordinary is the chance that the weather is.
	ordinary float64
	// noDischarge says that the discharge line of this refrigerant is beyond
	// the table.
	noDischarge bool
	// bound is the log likelihood of the air if no instrument lies.
	bound float64

	chances []FaultChance // of the diagnosis, one after the other
	tried   int           // states that add has taken
	work    *workspace
	earlier *caseFile // of the earlier readings
}

const none = -1

// bounds is the log likelihood of the air as it was read: a lie among the causes
// replaces it by that of the readings without the lie.
func (c *caseFile) bounds(p component) float64 {
	var room [2]*state
	bound := c.bound
	for _, s := range c.statesOf(p, &room) {
		if s.bounded {
			bound += s.bound - c.bound
		}
	}
	return bound
}

const (
	// seldom is how much rarer two faults at once are than if faults came
	// independently.
	seldom = 0.7
	// seldomLies is the same where one of the two is an instrument: readings that one cause
	// explains nearly are not made to fit by a gauge that nobody doubted.
	seldomLies = 0.35
	// window is how far, in log likelihood, a pair at a first guess of its sizes may be
	// below all single suspects together and still be gone through: Occam's window of
	// Madigan and Raftery 1994, JASA 89:1535-1546. Both figures were chosen on simulated
	// visits, not those of the trial, by the log probability of the truth and by how often
	// both of two faults are named.
	window = 6
)

// infer fills in the mixture.
func (c *caseFile) infer() {
	c.pack()
	sound := component{a: none, b: none}
	sound.fit = c.weigh(sound)
	c.work.bySound = c.work.factored
	sound.log = math.Log(priorSound*c.ordinary) + sound.fit + c.logClues(nil, nil)
	c.parts = append(c.work.parts[:0], sound)

	var alone [mostSuspects]single
	order := make([]int, 0, mostSuspects)
	for a := range c.suspects {
		from := len(c.parts)
		c.weighAlone(a)
		if !c.evidence.NoPairs && pairs(c.suspects[a].signature) {
			alone[a] = summary(c.parts[from:])
			alone[a].prior = math.Log(c.prior[a])
			order = append(order, a)
		}
	}
	if len(order) > 0 {
		slices.SortStableFunc(
			order, func(i, j int) int { return cmp.Compare(alone[j].log, alone[i].log) },
		)
		least := c.evidenceLog() - window
		for i, b := range order {
			c.pairsWith(b, order[i+1:], &alone, least)
		}
	}
	c.normalize()
}

// A single is a suspect alone: the log of the sum over its states, and the likeliest.
type single struct {
	log       float64
	likeliest int
	prior     float64 // its logarithm, without clues
}

// weighAlone weighs a suspect in all its states.
func (c *caseFile) weighAlone(a int) {
	prior := math.Log(c.prior[a]) + c.logClues(&c.suspects[a], nil)
	for s := range c.states[a] {
		p := component{a: a, b: none, sa: s}
		if x := &c.states[a][s]; c.evidence.NoPairs && x.shifts() {
			p.fit = c.weighShift(x)
			p.log = prior + helmholtz.Log(x.weight) + p.fit
		} else {
			packed := c.packing(a, s)
			c.packState(x, packed)
			p.fit = c.weigh(p)
			p.log = prior + packed.log + p.fit
		}
		c.parts = append(c.parts, p)
	}
}

// summary is what the parts of one suspect alone come to.
func summary(of []component) single {
	likeliest := 0
	for s := range of {
		if of[s].log > of[likeliest].log {
			likeliest = s
		}
	}
	return single{log: sumLog(of), likeliest: likeliest}
}

const (
	// slack is how far the guess of a pair by the covariance of one of the two may be
	// below what the pair comes to.
	slack = 3
	// negligibleBeside is how far, in log likelihood, two sizes of a pair may be below
	// its best by the covariance of that, and still be weighed.
	negligibleBeside = 6
)

// pairsWith weighs a suspect, at first at its likeliest size, beside each of others, which
// fit worse alone.
func (c *caseFile) pairsWith(b int, others []int, alone *[mostSuspects]single, least float64) {
	w := c.work
	sb := alone[b].likeliest
	c.weigh(component{a: b, b: none, sa: sb})
	base := w.factored
	_, bPulls := c.pulls(b)
	for _, a := range others {
		if c.suspects[a].opposite == c.suspects[b].signature {
			continue
		}
		prior := c.logSeldom(a, b) + alone[a].prior + alone[b].prior +
			c.logClues(&c.suspects[a], &c.suspects[b])
		if prior-0.5*base.logDet+c.bound < least-slack {
			continue // would not be worth it if it explained all
		}
		// The one that fits better alone stays at its size for the guess.
		sa, guess := 0, math.Inf(-1)
		_, aPulls := c.pulls(a)
		for s := range c.states[a] {
			var g float64
			if aPulls {
				g = c.pair(a, b, s, sb, prior).log
			} else {
				p := c.packing(a, s)
				g = prior + p.log + c.packing(b, sb).log +
					logStudent(w.n, base.logDet, base.distance(w.n, &p.by, nil)) + c.bound + p.bound
			}
			if g > guess {
				sa, guess = s, g
			}
		}
		if guess < least-slack {
			continue
		}
		best := c.pair(a, b, sa, sb, prior)
		if best.log < least {
			continue
		}
		c.weigh(component{a: a, b: b, sa: sa, sb: sb})
		c.pairSizes(a, b, sa, sb, prior, best.log, aPulls || bPulls)
	}
}

// pulls says whether a state of a suspect is a pull, which no shift stands for.
func (c *caseFile) pulls(a int) (first int, yes bool) {
	for s := range c.states[a] {
		if c.states[a][s].pull != nil {
			return s, true
		}
	}
	return 0, false
}

// pairSizes weighs a pair at all sizes that the covariance at (sa, sb), which was just
// factored, leaves likely.
func (c *caseFile) pairSizes(a, b, sa, sb int, prior, best float64, pull bool) {
	w := c.work
	at := w.factored
	centerA, centerB := c.packing(a, sa), c.packing(b, sb)
	var stepsA, stepsB [mostLevels + 8][features]float64
	for s := range c.states[a] {
		stepsA[min(s, len(stepsA)-1)] = at.step(w.n, &c.packing(a, s).by, &centerA.by)
	}
	for s := range c.states[b] {
		stepsB[min(s, len(stepsB)-1)] = at.step(w.n, &c.packing(b, s).by, &centerB.by)
	}
	for i := range c.states[a] {
		for j := range c.states[b] {
			if !pull {
				squared := 0.0
				for k := range w.n {
					x := at.x[k] - stepsA[min(i, len(stepsA)-1)][k] -
						stepsB[min(j, len(stepsB)-1)][k]
					squared += x * x * at.inverse[k]
				}
				first, second := c.packing(a, i), c.packing(b, j)
				guess := prior + first.log + second.log + logStudent(w.n, at.logDet, squared) +
					c.bound + first.bound + second.bound
				if guess < best-negligibleBeside {
					continue
				}
			}
			c.parts = append(c.parts, c.pair(a, b, i, j, prior))
		}
	}
}

// pair weighs two suspects in two states; prior is that of the two together.
func (c *caseFile) pair(a, b, sa, sb int, prior float64) component {
	if a > b {
		a, b, sa, sb = b, a, sb, sa
	}
	p := component{a: a, b: b, sa: sa, sb: sb}
	p.fit = c.weigh(p)
	p.log = prior + c.packing(a, sa).log + c.packing(b, sb).log + p.fit
	return p
}

func (c *caseFile) normalize() {
	top, sum := topLog(c.parts), 0.0
	for i := range c.parts {
		p := &c.parts[i]
		p.weight = math.Exp(p.log - top)
		sum += p.weight
	}
	for i := range c.parts {
		c.parts[i].weight /= sum
	}
}

// evidenceLog is the log of the sum of prior times likelihood.
func (c *caseFile) evidenceLog() float64 { return sumLog(c.parts) }

func topLog(parts []component) float64 {
	top := math.Inf(-1)
	for i := range parts {
		top = max(top, parts[i].log)
	}
	return top
}

func sumLog(parts []component) float64 {
	top := topLog(parts)
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.0
	for i := range parts {
		sum += math.Exp(parts[i].log - top)
	}
	return top + math.Log(sum)
}

// pairs says whether a suspect may come beside another: not 'the readings contradict each
// other', nor a machine that no cycle runs in.
func pairs(a Code) bool {
	switch a {
	case readingsClash, LowLoad, LowAmbient, Economizer, Drain, NextToEmpty, NotPumping, Heating:
		return false
	}
	return !isExchange(a)
}

// logSeldom is how much rarer two suspects are at once than if they came independently.
func (c *caseFile) logSeldom(a, b int) float64 {
	for _, x := range [...]int{a, b} {
		if c.suspects[x].faults[0].Kind == Instrument {
			return logSeldomLies
		}
	}
	return logSeldom
}

var logSeldom, logSeldomLies = math.Log(seldom), math.Log(seldomLies)
