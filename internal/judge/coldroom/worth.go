package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom/signature"
)

// best is the fault that is likeliest, with its chance.
func best(chances []float64) (int, float64) {
	at := 0
	for i := range chances {
		if chances[i] > chances[at] {
			at = i
		}
	}
	return at, chances[at]
}

// An asked look is what it is worth before anything is done.
type asked struct {
	look        *look
	gain        float64
	yes         float64   // chance
	ifYes, ifNo []float64 // of each fault, not yet divided by the chance of the answer
}

// next is the look that most raises the chance of naming the cause, against the minutes it
// takes; nil where none is worth them. It is one of those after, where there are any.
func (b *belief) next(k *known, after ...string) *asked {
	const perMinute = 0.003
	worthGain := 0.04
	var top, quick *asked
	code, now := b.bestCause(b.faults)
	holds := k.read(signature.OverBox) && k.value[signature.OverBox] < 1.5
	if code == sound && (holds && now >= likely || now >= 0.65) {
		worthGain = 0.12 // nothing calls for a look
	}
	for i := range looks {
		l := &looks[i]
		if !k.open(l) || len(after) > 0 && !slices.Contains(after, l.code) {
			continue
		}
		a := b.ask(l)
		better := func(than *asked) bool {
			return than == nil || a.gain-perMinute*l.minutes >
				than.gain-perMinute*than.look.minutes
		}
		if a.gain-perMinute*l.minutes <= worthGain {
			continue
		}
		if better(top) {
			top = &a
		}
		if l.minutes <= fewMinutes && better(quick) {
			quick = &a
		}
	}
	// What is seen at once comes before what takes a stop or half an hour.
	if top != nil && top.look.minutes >= manyMinutes && quick != nil {
		return quick
	}
	return top
}

// fewMinutes is what a look may take that comes before one that takes manyMinutes.
const fewMinutes, manyMinutes = 6, 15

// wantsBulb says that the superheat at the bulb was not read and a valve may be at fault.
func (b *belief) wantsBulb(k *known) bool {
	const may, settled = 0.1, 0.9
	_, top := b.bestCause(b.faults)
	return k.valve && !k.read(signature.BulbSuperheat) && top <= settled &&
		b.cause(flooding)+b.cause(starving) >= may
}

// open says that a look can be taken on the machine and was not yet; what is asked of a vacuum
// alone, heldUp asks.
func (k *known) open(l *look) bool {
	_, done := k.answers[l.code]
	// A box that falls, and a circuit that stood while it was filled, tell of a stop themselves.
	shown := (k.course.falls() || k.weighed) && l.of[pullsDown] >= likely
	return !done && !shown && !slices.Contains(k.hints, l.code) && (k.valve || !l.valve) &&
		(k.heated || !l.heated) && (k.usual.Receiver >= 0.5 || !l.receiver) &&
		!l.vacuum
}

// ask is what a look is worth, which raises the chance of naming the cause. Which of the faults
// of a cause it is counts for half of which cause it is.
func (b *belief) ask(l *look) asked {
	a := asked{look: l, ifYes: make([]float64, len(faults)), ifNo: make([]float64, len(faults))}
	answer := func(chance, p float64, of ...int) {
		a.yes += chance * p
		for _, j := range of {
			a.ifYes[j] += chance * p
			a.ifNo[j] += chance * (1 - p)
		}
	}
	for j := range faults {
		answer(b.alone[j], l.chance(&faults[j]), j)
	}
	for _, p := range b.pairs {
		both := l.chanceOfBoth(&faults[p.first], &faults[p.second])
		answer(p.chance, both, p.first, p.second)
	}
	_, now := b.bestCause(b.faults)
	_, yes := b.bestCause(a.ifYes)
	_, no := b.bestCause(a.ifNo)
	_, faultNow := best(b.faults)
	_, faultYes := best(a.ifYes)
	_, faultNo := best(a.ifNo)
	a.gain = yes + no - now + 0.5*(faultYes+faultNo-faultNow)
	return a
}

// bestCause is the likeliest cause by chances of faults, which need not add up to one.
func (b *belief) bestCause(chances []float64) (code string, chance float64) {
	sums := make([]float64, len(signature.Causes))
	for i := range faults {
		sums[causeOf[i]] += chances[i]
	}
	at, chance := best(sums)
	return signature.Causes[at].Code, chance
}
