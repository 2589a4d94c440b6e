package diagnose

import (
	"slices"
)

// least is the act with the least expected loss. Refrigerant is moved only where the charge
// would be called, or where looks may come to that.
func (c *caseFile) least(all []weighted) Decision {
	total, low, high := 0.0, 0.0, 0.0
	for i := range all {
		x := &all[i]
		total += x.weight
		if x.holds(c.short) {
			low += x.weight
		}
		if x.holds(c.full) {
			high += x.weight
		}
	}
	atLow := min(c.callAt, callLow(c.evidence.Metering.Fixed()))
	return c.best(all, low >= atLow*total, high >= c.callAt*total)
}

// holds reports whether an explanation has a suspect.
func (x *weighted) holds(a int) bool { return a != none && (x.key[0] == a || x.key[1] == a) }

// stakes are what the acts are about, summed over explanations.
type stakes struct {
	total float64 // weight of the explanations
	// neglected is what it costs to leave all that is wrong, known what it would if all were
	// known.
	neglected, known float64
	// chance of every suspect, and what is saved of neglected where it is mended.
	chance, saved [mostSuspects]float64
	// adding and recovering are the harm of these acts.
	adding, recovering float64
}

// take adds an explanation. Whoever leaves a machine as it is neglects all that is wrong with
// it. Whoever mends what is there, or moves refrigerant, reads again, and what else is wrong
// then costs its mending and another round at most.
func (s *stakes) take(c *caseFile, x *weighted) {
	w := x.weight
	s.total += w
	var soft, spared [2]float64
	for k, a := range x.key {
		if a != none {
			cost := c.suspects[a].cost
			s.neglected += w * cost.neglect
			s.known += w * min(cost.mend, cost.neglect)
			soft[k] = min(cost.neglect, cost.mend+anotherRound)
			spared[k] = cost.neglect - soft[k]
		}
	}
	for k, a := range x.key {
		if a == none {
			continue
		}
		s.chance[a] += w
		s.saved[a] += w * (c.suspects[a].cost.neglect + spared[1-k])
		if a != c.short {
			s.adding += w * soft[k]
		}
		if a != c.full {
			s.recovering += w * soft[k]
		}
	}
	isShort, isFull := x.holds(c.short), x.holds(c.full)
	if !isShort {
		s.adding += w * addToEnough
	}
	if !isFull {
		s.recovering += w * recoverFromEnough
	}
	if isFull {
		s.adding += w * addToFull
	}
	if isShort {
		s.recovering += w * recoverFromShort
	}
}

// best is the act with the least expected loss: of what is left as it is, of what the act does
// to a machine that it is wrong for, and of the time; whoever mends what is not there has lost
// his.
func (c *caseFile) best(all []weighted, add, recover bool) Decision {
	var s stakes
	for i := range all {
		s.take(c, &all[i])
	}
	if s.total <= 0 {
		return Decision{Act: Leave}
	}
	best := Decision{Act: Leave, Loss: s.neglected / s.total}
	consider := func(act Act, a int, loss float64) {
		if a != none && loss < best.Loss {
			best = Decision{
				Act: act, Signature: c.suspects[a].signature, Chance: s.chance[a] / s.total,
				Loss: loss,
			}
		}
	}
	if add {
		consider(Add, c.short, costOf(Undercharge).mend+s.adding/s.total)
	}
	if recover {
		consider(Recover, c.full, costOf(Overcharge).mend+s.recovering/s.total)
	}
	for a := range c.suspects {
		if a != c.short && a != c.full && c.suspects[a].signature != readingsClash {
			consider(Mend, a, c.suspects[a].cost.mend+(s.neglected-s.saved[a])/s.total)
		}
	}
	best.Doubt = best.Loss - s.known/s.total
	return best
}

func weightOf(all []weighted) float64 {
	sum := 0.0
	for _, x := range all {
		sum += x.weight
	}
	return sum
}

func normalized(all []weighted) []weighted {
	sum := weightOf(all)
	out := slices.Clone(all)
	for i := range out {
		if sum > 0 {
			out[i].weight /= sum
		}
	}
	return out
}
