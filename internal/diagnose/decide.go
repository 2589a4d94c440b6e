package diagnose

import (
	"math"
	"slices"
)

// An Act is what is done about a machine.
type Act int

// The acts.
const (
	Leave   Act = iota + 1 // leave it as it is
	Add                    // add refrigerant
	Recover                // recover refrigerant
	Mend                   // put right what Signature names
)

// A Decision is what to do by all that is known: the look that is worth its minutes, else
// the act with the least expected loss.
type Decision struct {
	Act Act
	// Signature is what Mend mends, and Chance that it is present.
	Signature Code
	Chance    float64
	// Looks are those worth taking before, the best first; the second is chosen for the case
	// that the first says what is likeliest.
	Looks []*Measurement
	// Loss is what the act is expected to cost, in minutes; Doubt is how much of that knowing
	// everything would save.
	Loss, Doubt float64
}

// mostLooks is how many looks are asked for at once.
const mostLooks = 2

// worthLooking is the chance of what a look is after from which it is asked for: a list of
// every small doubt is read by nobody.
const worthLooking = 0.2

// answeredBy is the chance of the causes that a test decides about.
func (c *caseFile) answeredBy(t *test, all []weighted) float64 {
	sum := 0.0
	for _, x := range all {
		if slices.ContainsFunc(
			x.key[:],
			func(a int) bool { return a != none && t.decides(c.suspects[a].signature) },
		) {
			sum += x.weight
		}
	}
	return sum
}

// decide chooses by expected loss over the mixture (Raiffa and Schlaifer 1961, Applied
// Statistical Decision Theory, chapters 4 and 5: the value of sample information).
func (c *caseFile) decide(call ChargeCall) Decision {
	all := c.byExplanation()
	d := c.best(all, call == ChargeLow, call == ChargeHigh)
	taken := map[string]bool{}
	for now := all; len(d.Looks) < mostLooks; {
		best, value := (*Measurement)(nil), 0.0
		var then []weighted
		before := c.least(now).Loss
		for i := range tests {
			t := &tests[i]
			if taken[t.code] || t.opens || c.evidence.answered(t) ||
				t.fits != nil && !t.fits(c.evidence) ||
				c.answeredBy(t, now) < worthLooking {
				continue
			}
			ends := c.ends(t, now)
			loss, heavier := 0.0, 0
			for k, end := range ends {
				loss += weightOf(end) * c.least(normalized(end)).Loss
				if weightOf(end) > weightOf(ends[heavier]) {
					heavier = k
				}
			}
			if v := before - loss - t.minutes; v > value {
				best, value, then = c.tryTest(t, now), v, normalized(ends[heavier])
			}
		}
		if len(d.Looks) == 0 && d.Doubt > anotherRound {
			leading := c.leading()
			for _, s := range c.untaken() {
				m := c.tryReading(s, leading)
				if v := before - c.lossAfter(m) - s.minutes; v > value {
					best, value, then = m, v, nil
				}
			}
		}
		if best == nil {
			break
		}
		d.Looks = append(d.Looks, best)
		if then == nil {
			break
		}
		taken[best.Code] = true
		now = then
	}
	return d
}

// least is the act with the least expected loss. Refrigerant is moved only where the charge
// would be called.
func (c *caseFile) least(all []weighted) Decision {
	low, high := 0.0, 0.0
	for _, x := range all {
		if c.within(x.key, Undercharge) {
			low += x.weight
		}
		if c.within(x.key, Overcharge) {
			high += x.weight
		}
	}
	return c.best(all, low >= CallLow, high >= CallHigh)
}

func (c *caseFile) best(all []weighted, add, recover bool) Decision {
	best := Decision{Loss: math.Inf(1)}
	known := 0.0
	consider := func(act Act, signature Code) {
		loss, chance := 0.0, 0.0
		for _, x := range all {
			loss += x.weight * c.loss(act, signature, x.key)
			if signature != "" && c.within(x.key, signature) {
				chance += x.weight
			}
		}
		if loss < best.Loss {
			best = Decision{Act: act, Signature: signature, Chance: chance, Loss: loss}
		}
	}
	consider(Leave, "")
	if add {
		consider(Add, Undercharge)
	}
	if recover {
		consider(Recover, Overcharge)
	}
	for a := range c.suspects {
		if s := c.suspects[a].signature; s != readingsClash && s != Undercharge && s != Overcharge {
			consider(Mend, s)
		}
	}
	for _, x := range all {
		known += x.weight * c.atBest(x.key)
	}
	best.Doubt = best.Loss - known
	return best
}

// loss is what an act costs where an explanation is the truth.
func (c *caseFile) loss(act Act, signature Code, key [2]int) float64 {
	loss := 0.0
	switch act {
	case Add:
		loss = costOf(Undercharge).mend
		if !c.within(key, Undercharge) {
			loss += addToEnough
		}
		if c.within(key, Overcharge) {
			loss += addToFull
		}
	case Recover:
		loss = costOf(Overcharge).mend
		if !c.within(key, Overcharge) {
			loss += recoverFromEnough
		}
		if c.within(key, Undercharge) {
			loss += recoverFromShort
		}
	case Mend:
		loss = costOf(signature).mend
	}
	right := c.within(key, signature)
	for _, a := range key {
		if a == none || c.suspects[a].signature == signature {
			continue
		}
		left := costOf(c.suspects[a].signature)
		if right || act == Add || act == Recover { // what else is wrong shows in the next readings
			loss += min(left.neglect, left.mend+anotherRound)
		} else {
			loss += left.neglect
		}
	}
	return loss
}

// atBest is the least that an explanation costs whoever knows it.
func (c *caseFile) atBest(key [2]int) float64 {
	loss := 0.0
	for _, a := range key {
		if a != none {
			k := costOf(c.suspects[a].signature)
			loss += min(k.mend, k.neglect)
		}
	}
	return loss
}

func (c *caseFile) within(key [2]int, signature Code) bool {
	return slices.ContainsFunc(
		key[:],
		func(a int) bool { return a != none && c.suspects[a].signature == signature },
	)
}

// lossAfter is the expected loss once a reading was taken, by the ranges that it is told
// apart in.
func (c *caseFile) lossAfter(m *Measurement) float64 {
	loss, total := 0.0, 0.0
	for i := range m.Outcomes {
		end := m.Outcomes[i].ends
		w := weightOf(end)
		if w > 0 {
			loss += w * c.least(normalized(end)).Loss
			total += w
		}
	}
	if total == 0 {
		return math.Inf(1)
	}
	return loss / total
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
