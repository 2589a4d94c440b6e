package diagnose

import (
	"math"
	"math/bits"
)

// answered is by every test the chance of the causes that it decides about.
func (c *caseFile) answered(all []weighted) (sum [mostTests]float64) {
	for i := range all {
		var by uint64
		for _, a := range all[i].key {
			if a != none {
				by |= c.suspects[a].decided
			}
		}
		for ; by != 0; by &= by - 1 {
			sum[bits.TrailingZeros64(by)] += all[i].weight
		}
	}
	return sum
}

// addLooks adds the looks and readings that save more than they cost, each as it is worth once
// those before it found nothing; now is what is believed by then, and taken what was looked at.
func (c *caseFile) addLooks(
	d *Decision, now []weighted, worth [2]float64, taken map[string]bool, going bool,
) {
	for len(d.Looks) < mostLooks {
		before := c.least(now).Loss
		best, then, saves := c.bestTest(now, before, worth, taken)
		// The next dose answers what a reading would, and does what there is to do.
		if !going && len(d.Looks) == 0 && d.Doubt > anotherRound && !c.evidence.NoPairs {
			least := 0.0
			if d.Act == Mend {
				least = leastSaved * before
			}
			if m, v := c.bestReading(before, least); m != nil && v > saves {
				best, then = m, nil
			}
		}
		if best == nil {
			return
		}
		d.Looks = append(d.Looks, best)
		if then == nil {
			return
		}
		taken[best.Code] = true
		now = then
	}
}

// lookFirst adds the look from outside, where no other is asked for, before refrigerant is moved
// for the first time or a circuit is opened, that costs less than what is expected to be harmed
// where something else is there. It costs its minutes, and another round where it finds by chance
// what is not there.
func (c *caseFile) lookFirst(d *Decision, charge *ChargeBelief, all []weighted) {
	right, harm := none, 0.0
	switch {
	case len(d.Looks) > 0:
	case d.Act == Mend && c.opens(c.suspect(d.Signature)):
		right, harm = c.suspect(d.Signature), openInVain
	case charge.moved != 0:
	case d.Act == Add:
		right, harm = c.short, addToEnough
	case d.Act == Recover:
		right, harm = c.full, recoverFromEnough
	}
	saves := 0.0
	for i := range tests {
		t := &tests[i]
		if right == none || t.opens || c.evidence.answered(t) ||
			t.fits != nil && !t.fits(c.evidence) {
			continue
		}
		found, yes := 0.0, c.ends(t, all)[0]
		for k := range all {
			if x := &all[k]; !x.holds(right) && c.decides(t, x) {
				found += yes[k].weight
			}
		}
		if s := found*harm - t.minutes - t.usual*anotherRound; s > saves {
			d.Looks, saves = []*Measurement{c.tryTest(t, all)}, s
		}
	}
}

// LastLook is the code of the look that is worth most of those that were not taken, before a
// machine is left that something may be wrong with: what it would find costs another round if it
// is not found. Empty where none is worth its minutes.
func (d *Diagnosis) LastLook(e *Evidence) (code string) {
	most := 0.0
	for i := range tests {
		t := &tests[i]
		if t.opens || e.answered(t) || t.fits != nil && !t.fits(e) {
			continue
		}
		worth := -t.minutes
		for k := range d.marginals {
			if m := &d.marginals[k]; t.decides(m.Signature) {
				worth += m.Chance * anotherRound
			}
		}
		if worth > most {
			code, most = t.code, worth
		}
	}
	return code
}

// opens says that what mends the likeliest fault of a suspect opens the circuit.
func (c *caseFile) opens(a int) bool {
	s, likeliest := &c.suspects[a], 0
	for i, share := range s.share {
		if share > s.share[likeliest] {
			likeliest = i
		}
	}
	return s.faults[likeliest].Opens
}

// decides says that a test decides about a suspect of an explanation.
func (c *caseFile) decides(t *test, x *weighted) bool {
	for _, a := range x.key {
		if a != none && c.suspects[a].decided&(1<<t.index) != 0 {
			return true
		}
	}
	return false
}

// bestTest is the test, of those not taken and worth it by the chance of what they are after, that
// saves most of a loss, with what is believed after its likelier answer; nil where none saves
// anything.
func (c *caseFile) bestTest(
	now []weighted, loss float64, worth [2]float64, taken map[string]bool,
) (best *Measurement, then []weighted, saves float64) {
	answered := c.answered(now)
	for i := range tests {
		t := &tests[i]
		least := worth[0]
		if t.instruments {
			least = worth[1]
		}
		if answered[i] < least || taken[t.code] || t.opens || c.evidence.answered(t) ||
			t.fits != nil && !t.fits(c.evidence) {
			continue
		}
		ends := c.ends(t, now)
		after, heavier := 0.0, 0
		for k, end := range ends {
			after += weightOf(end) * c.least(end).Loss
			if weightOf(end) > weightOf(ends[heavier]) {
				heavier = k
			}
		}
		if v := loss - after - t.minutes; v > saves {
			best, then, saves = c.tryTest(t, now), normalized(ends[heavier]), v
		}
	}
	return best, then, saves
}

// lookAtLie is the look at the instrument that is likeliest to lie, with what is believed after
// its likelier answer: once refrigerant was moved, the machine may have answered by more than is
// usual, and an answer goes on from there, as a second reading by the same clamp does not. nil
// where none is likely enough, or was looked at.
func (c *caseFile) lookAtLie(all []weighted) (*Measurement, []weighted) {
	best, most := none, worthLooking
	for a := range c.suspects {
		if c.suspects[a].faults[0].Kind != Instrument {
			continue
		}
		chance := 0.0
		for i := range all {
			if all[i].holds(a) {
				chance += all[i].weight
			}
		}
		if chance >= most {
			best, most = a, chance
		}
	}
	if best == none {
		return nil, nil
	}
	for i := range tests {
		t := &tests[i]
		if t.decides(c.suspects[best].signature) && !t.opens && !c.evidence.answered(t) {
			ends := c.ends(t, all)
			likelier := 0
			if weightOf(ends[1]) > weightOf(ends[0]) {
				likelier = 1
			}
			then := normalized(ends[likelier])
			return c.tryTest(t, all), then
		}
	}
	return nil, nil
}

// leastSaved is the part of the expected loss that one more reading has to save where something
// is mended: it is found there before anything is done, so that a reading before it has to tell
// more than a belief that is a model can promise. Refrigerant once moved does not show where it
// came from.
const leastSaved = 0.15

// bestReading is the reading, of those that were not taken, that saves most of a loss and at
// least so much; nil where none does.
func (c *caseFile) bestReading(loss, least float64) (best *Measurement, saves float64) {
	untaken := c.untaken()
	if len(untaken) == 0 {
		return nil, 0
	}
	leading := c.leading(untaken)
	saves = least
	for i := range untaken {
		s := &untaken[i]
		r := c.rangesOf(s, leading)
		if v := loss - c.lossAfter(r) - s.minutes; v > saves {
			best, saves = c.measurement(s, r), v
		}
	}
	return best, saves
}

// lossAfter is the expected loss once a reading was taken, by the ranges that it is told
// apart in.
func (c *caseFile) lossAfter(r *ranges) float64 {
	loss, total := 0.0, 0.0
	for i := range r.spans {
		s := &r.spans[i]
		if s.total > 0 {
			loss += s.total * c.least(r.ends(s)).Loss
			total += s.total
		}
	}
	if total == 0 {
		return math.Inf(1)
	}
	return loss / total
}
