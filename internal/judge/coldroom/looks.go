package coldroom

import (
	"maps"
	"slices"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// look asks for the look that is worth most, of those that are named where any are.
func (p *planner) look(after ...string) {
	if p.asked = p.b.next(p.k, after...); p.asked == nil {
		return
	}
	l := p.asked.look
	if l.running && p.stopped() {
		p.asked = nil
		return
	}
	p.askFor(l)
	if !p.found(&faults[p.ranking[0].faults[0]]) {
		p.lookOn(after...)
	}
}

func (p *planner) askFor(l *look) {
	p.looks = append(p.looks, l)
	s := p.add(fact.Code("look." + l.code))
	s.Look, s.Running = l.code, l.running
}

// lookOn asks for a second look where it would be worth its minutes if the first finds nothing,
// and takes few.
func (p *planner) lookOn(after ...string) {
	k := *p.k
	k.answers = maps.Clone(k.answers)
	k.answers[p.asked.look.code] = false
	b := weigh(&k, p.b.clusters)
	next := b.next(&k, after...)
	if next == nil || next.look.minutes > fewMinutes || next.look.running && p.stopped() {
		return
	}
	// What is nearly certain by then is gone after first.
	const nearly = 0.85
	if cause, chance := b.bestCause(b.faults); chance >= nearly && !next.look.after(cause) {
		return
	}
	p.askFor(next.look)
	if last := len(p.steps) - 1; 2*next.look.minutes < p.asked.look.minutes { // much the shorter
		p.steps[last-1], p.steps[last] = p.steps[last], p.steps[last-1]
	}
}

// asksAfter says that a look of the plan would find a fault that none has found yet.
func (p *planner) asksAfter(f *fault) bool {
	return !p.found(f) &&
		slices.ContainsFunc(p.looks, func(l *look) bool { return l.chance(f) >= likely })
}

// found says that a look that was taken found a fault.
func (p *planner) found(f *fault) bool {
	if f.code == pullsDown && p.k.course.falls() {
		return true
	}
	for i := range looks {
		l := &looks[i]
		if l.chance(f) >= likely && p.k.seen(l.code) {
			return true
		}
	}
	return false
}

// seen says that a look found what it is after, or that it was seen without being asked for.
func (k *known) seen(look string) bool { return k.answers[look] || slices.Contains(k.hints, look) }

// proved says that a look found a fault that is after that very one.
func (k *known) proved(f *fault) bool {
	return slices.ContainsFunc(looks, func(l look) bool {
		return k.answers[l.code] && l.of[f.code] >= likely
	})
}

// bulb asks for the superheat at the bulb, which alone tells what the valve does.
func (p *planner) bulb() {
	if p.stopped() || p.has(modes.Read) || !p.b.wantsBulb(p.k) {
		return
	}
	p.add(modes.Read, fact.Of("readings", fact.Terms{"reading.bulbLine"})).Field = "bulbLine"
}

// sights are what a look finds that is put right whatever else is the matter, by the look, with
// the fault that it is; ice is seen to by itself. What keeps a coil from its air is put right
// before any refrigerant is moved.
var sights = []struct {
	look, fault string
	step        fact.Code
	coil        bool
}{
	{"cold-condenser-dirt", "cold-condenser-dirty", "step.cold-seen-dirt", true},
	{"cold-condenser-fan-stands", "cold-condenser-fan", "step.cold-seen-condenser-fan", true},
	{"cold-evaporator-fans", "cold-evaporator-fan", "step.cold-seen-fan", true},
	{"cold-door-leaks", "cold-door", "step.cold-seen-door", false},
	{"cold-bulb-off", "cold-bulb-loose", "step.cold-seen-bulb", false},
	{"cold-defrost-by-clock", defrostHeats, "step.cold-seen-termination", false},
}

// inSight are the steps of sights.
var inSight = func() (out []fact.Code) {
	for i := range sights {
		out = append(out, sights[i].step)
	}
	return out
}()

// oilMarks has the leak looked for where oil marks it, however sound the readings are.
func (p *planner) oilMarks() {
	if p.k.stains && !p.has(modes.FindLeak) {
		p.add(modes.FindLeak)
	}
}

// suctionLine has the pipe seen that warms its vapor on the way more than such pipes do; the valve
// is not to blame for that.
func (p *planner) suctionLine() {
	if p.k.gain > 0 && p.b.cause(clamp) < worth {
		p.add("step.cold-suction-line", fact.Amount("gain", p.k.gain))
	}
}

// slowLookLast puts a look that takes half an hour behind what is mended meanwhile without opening
// the circuit: it may be answered by that.
func (p *planner) slowLookLast() {
	if p.asked == nil || p.asked.look.minutes < manyMinutes {
		return
	}
	at := slices.IndexFunc(p.steps, func(s modes.Step) bool { return s.Look == p.asked.look.code })
	last := len(p.steps) - 1
	mends := func(s modes.Step) bool { return s.Cause != "" }
	waits := func(s modes.Step) bool { return s.Opens || s.Moves }
	if at < 0 || !slices.ContainsFunc(p.steps[at:], mends) ||
		slices.ContainsFunc(p.steps[at:], waits) {
		return
	}
	slow := p.steps[at]
	copy(p.steps[at:], p.steps[at+1:])
	p.steps[last] = slow
}

// denied says that a look was after one fault of several and did not find it, or that this machine
// cannot have it.
func (p *planner) denied(r *ranked, f int) bool {
	if len(r.faults) == 1 || p.k.proved(&faults[f]) {
		return false
	}
	for i := range looks {
		found, asked := p.k.answers[looks[i].code]
		if asked && !found && looks[i].chance(&faults[f]) >= likely {
			return true
		}
	}
	return p.b.faults[f] == 0
}

// unseen says that a look comes before a cause is mended by its likeliest fault. What warms a box,
// and what keeps a coil from its air, is found by the eye, not by what is left over; and no circuit
// is opened for what a hand on the pipe would find in minutes.
func (p *planner) unseen(r *ranked) bool {
	f := &faults[r.faults[0]]
	coil := (r.code == condenser || r.code == evaporator) && p.alone(r) && !p.stopped()
	return (r.code == load || coil) && !p.found(f) || f.opens && !p.k.proved(f)
}

// quickLook is an unanswered one that finds a fault in few minutes; nil for none.
func (p *planner) quickLook(f *fault) *look {
	for i := range looks {
		l := &looks[i]
		if l.minutes <= fewMinutes && l.chance(f) >= likely && p.k.open(l) &&
			!(l.running && p.stopped()) {
			return l
		}
	}
	return nil
}

// alone says that one fault of a cause is likeliest by far, or the only one that no look denied.
func (p *planner) alone(r *ranked) bool {
	const byFar = 0.7
	left := 0
	for _, f := range r.faults {
		if !p.denied(r, f) {
			left++
		}
	}
	return p.b.faults[r.faults[0]] >= byFar*r.chance || left == 1
}

func (p *planner) asksAfterAny(r *ranked) bool {
	return slices.ContainsFunc(r.faults, func(f int) bool { return p.asksAfter(&faults[f]) })
}
