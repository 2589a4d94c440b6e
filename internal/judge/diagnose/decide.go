package diagnose

import (
	"math"
	"math/bits"
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

// leakLook shows a leak, which is looked for before anything is added; after that the machine
// answers better.
const leakLook = "oil-and-leak"

// mostLooks is how many looks are asked for at once.
const mostLooks = 2

// worthLooking is the chance of what a look is after from which it is asked for: a list of
// every small doubt is read by nobody.
const worthLooking = 0.2

// WorthDoubting is that of an instrument before refrigerant is moved: one reading too high or too
// low looks like a wrong charge, and a second thermometer takes three minutes. What the look saves
// has to be worth them as well.
const WorthDoubting = 0.015

// leaning is the chance of too much refrigerant from which what speaks against it is looked at,
// however small each doubt is: more causes read like it than like too little, and what is left
// when they are answered calls the charge.
const leaning = 0.5

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

// decide chooses by expected loss over the mixture (Raiffa and Schlaifer 1961, Applied
// Statistical Decision Theory, chapters 4 and 5: the value of sample information).
func (c *caseFile) decide(charge *ChargeBelief) Decision {
	call := charge.Call()
	all := c.byExplanation()
	d := c.best(all, call == ChargeLow, call == ChargeHigh)
	worth := [2]float64{worthLooking, worthLooking}
	if (d.Act == Recover || d.Act == Add) && charge.moved == 0 {
		worth[1] = WorthDoubting
	}
	going := charge.moved != 0 && (call == ChargeLow || call == ChargeHigh) &&
		c.besides(all) < leaning
	if going {
		d.goOn(call, charge)
	}
	c.callAt = CallLow
	if call == ChargeOpen && charge.High >= leaning {
		least := worthLooking * (1 - charge.High)
		worth, c.callAt = [2]float64{least, least}, leaning
	}
	taken, now := map[string]bool{leakLook: charge.moved != 0}, all
	if m, then := c.lookAtLie(all); m != nil && charge.moved != 0 {
		d.Looks, taken[m.Code], now, going = append(d.Looks, m), true, then, true
	}
	c.addLooks(&d, now, worth, taken, going)
	c.lookFirst(&d, charge, all)
	return d
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

// besides is the chance of the likeliest cause that no refrigerant puts right.
func (c *caseFile) besides(all []weighted) (most float64) {
	var chance [mostSuspects]float64
	for i := range all {
		for _, a := range all[i].key {
			if a != none && a != c.short && a != c.full {
				chance[a] += all[i].weight
			}
		}
	}
	for _, x := range chance {
		most = max(most, x)
	}
	return most
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

// goOn follows the call of a charge that is being put right: what each dose costs was
// weighed there.
func (d *Decision) goOn(call ChargeCall, charge *ChargeBelief) {
	switch call {
	case ChargeLow:
		d.Act, d.Signature, d.Chance = Add, Undercharge, charge.Low
	case ChargeHigh:
		d.Act, d.Signature, d.Chance = Recover, Overcharge, charge.High
	}
}

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
