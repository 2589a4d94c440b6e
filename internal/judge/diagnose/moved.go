package diagnose

import (
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// label is the label charge, or the usual one for the capacity.
func (e *Evidence) label() quantity.Mass {
	if e.Charge > 0 {
		return e.Charge
	}
	capacity := e.NominalCapacity
	if capacity <= 0 {
		capacity = quantity.Tons(3)
	}
	return charge.EstimateCharge(capacity)
}

// A way is how a machine may answer to a mass that is moved: the mass comes to so much of what it
// comes to of the label's charge, and readings change by so much of what is usual for that.
type way struct{ mass, steep, chance float64 }

// Machines answer by a third more or less than is usual, and where nobody read the label, those
// of one capacity hold a third more or less than is usual: three points with that standard
// deviation (common practice, no source).
var (
	asUsual    = []way{{1, 1, 1}}
	byLabel    = []way{{1, 1, 0.4}, {1, 0.7, 0.3}, {1, 1.43, 0.3}}
	byCapacity = []way{{1, 1, 0.4}, {0.71, 0.8, 0.3}, {1.4, 1.25, 0.3}}
)

func (e *Evidence) ways() []way {
	if e.Charge > 0 {
		return byLabel
	}
	return byCapacity
}

// moved is the way of the last move of refrigerant in this visit: 1 in, -1 out, 0 none.
func (e *Evidence) moved() int {
	mass := e.Moved
	if e.Earlier != nil {
		for _, a := range e.Earlier.Done {
			switch a.Kind {
			case ChargeAdded:
				mass = a.Mass
			case ChargeRecovered:
				mass = -a.Mass
			}
		}
	}
	switch {
	case mass > 0:
		return 1
	case mass < 0:
		return -1
	}
	return 0
}

// elsewhereMoved is the chance that what was moved is not what the circuit gained: hoses, a
// scale that was read wrong, a leak that took it again.
const elsewhereMoved = 0.05

// countMoves takes what was added or recovered before the readings into the prior of the
// charge. What is there now is what was there before and what was moved: after half a charge
// was added, a machine that is still short was all but empty before, and one that was sound
// is overfull by half.
func (c *caseFile) countMoves() {
	low, high := c.suspect(Undercharge), c.suspect(Overcharge)
	moved := float64(c.evidence.Moved) / float64(c.evidence.label())
	if moved == 0 || math.IsNaN(moved) || low == none || high == none {
		return
	}
	right := 1 - traitsOf[Undercharge].prior - traitsOf[Overcharge].prior
	least := c.states[low][0].severity / 2
	var before chargeDensity
	before.spreadAbout(0, least, right)
	c.spreadPrior(&before, low, -1)
	c.spreadPrior(&before, high, 1)
	before.seenBy(moved)

	var now chargeDensity
	for _, s := range c.evidence.ways() {
		steps := int(math.Round(min(max(s.mass*moved, -2), 2) / chargeStep))
		for i, w := range before {
			to := min(max(i+steps, 0), chargeCells-1)
			now[to] += (1 - elsewhereMoved) * s.chance * w
		}
	}
	for i, w := range before {
		now[i] += elsewhereMoved * w
	}
	// The share of the states is that of the errors nearest to them.
	kept := 0.0
	shares := [2][]float64{
		make([]float64, len(c.states[low])), make([]float64, len(c.states[high])),
	}
	for i, w := range now {
		x := chargeAt(i)
		if math.Abs(x) < least {
			kept += w
			continue
		}
		k, a := 0, low
		if x > 0 {
			k, a = 1, high
		}
		shares[k][c.nearest(a, math.Abs(x))] += w
	}
	for k, a := range [...]int{low, high} {
		sum := 0.0
		for _, w := range shares[k] {
			sum += w
		}
		// Priors are those beside a charge that is right.
		c.prior[a] = right * sum / kept
		for s := range c.states[a] {
			c.states[a][s].weight = max(shares[k][s]/sum, 1e-9)
		}
	}
}

// askedFor is how much likelier refrigerant is added to a machine that is short, and recovered from
// one that is overfull, than to or from one that is not: whoever moves it has read something
// (common practice, no source).
const askedFor = 5

// seenBy takes in that somebody moved refrigerant.
func (d *chargeDensity) seenBy(moved float64) {
	for i := range d {
		if x := chargeAt(i); x*moved < 0 && math.Abs(x) > ChargeBand {
			d[i] *= askedFor
		}
	}
}

// spreadPrior adds the prior of a signature over the sizes between its states.
func (c *caseFile) spreadPrior(density *chargeDensity, a int, sign float64) {
	states := c.states[a]
	for k := range states {
		from, to := states[k].severity, states[k].severity
		switch {
		case k == 0:
			from /= 2
		default:
			from = (from + states[k-1].severity) / 2
		}
		if k+1 < len(states) {
			to = (to + states[k+1].severity) / 2
		} else {
			to += to - from
		}
		n := max(1, math.Round((to-from)/chargeStep))
		for x := 0.5; x < n; x++ {
			density[chargeCell(sign*(from+(to-from)*x/n))] += c.prior[a] * states[k].weight / n
		}
	}
}

// nearest is the state of a suspect whose size is nearest.
func (c *caseFile) nearest(a int, severity float64) int {
	off := func(k int) float64 { return math.Abs(c.states[a][k].severity - severity) }
	best := 0
	for s := range c.states[a] {
		if off(s) < off(best) {
			best = s
		}
	}
	return best
}
