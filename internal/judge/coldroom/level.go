package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// missingCharge is what is done where refrigerant is likely to be missing; waits that something
// comes before it.
func (p *planner) missingCharge(low float64, waits bool) {
	onlyLevel := p.b.cause(reserve) > p.b.cause(undercharge)
	level := p.k.answers["cold-receiver-low"]
	switch {
	case low < likely && low >= worth && level && onlyLevel && !p.stopped():
		p.markLevel()
	case low < likely:
	case waits:
		p.hold = fact.New("charge.look-first")
	case p.shutOff():
		p.add(modes.FindLeak)
		p.hold = fact.New("charge.look-first")
	case onlyLevel && low < sure && p.c.Moved == 0:
		// Nothing shows but a level, which may be that of a cool day.
		p.markLevel()
	case onlyLevel:
		p.short("step.cold-add-level")
	default:
		p.short("step.cold-add")
	}
}

// shutOff asks for the receiver's level where nothing tells yet that the liquid is not there, or a
// clear glass says that it is: behind a valve that stays shut all of it stands in the receiver, and
// the gauges read as if it were gone.
func (p *planner) shutOff() bool {
	const level = "cold-receiver-low"
	at := slices.IndexFunc(looks, func(l look) bool { return l.code == level })
	has := p.c.Room.Receiver
	bubbles, seen := p.k.answers["cold-glass"]
	known := p.levelKnown() && (bubbles || !seen)
	if has == nil || !*has || known || p.stopped() || !p.k.open(&looks[at]) {
		return false
	}
	p.askFor(&looks[at])
	return true
}

// heldUp asks, where suction was pulled into a vacuum and the machine stopped for it, whether
// liquid is held up ahead of a valve: nothing is recovered before that is known. Where the head is
// below the saturation of its air there is no liquid anywhere, and nothing to ask.
func (p *planner) heldUp(low float64) {
	at := slices.IndexFunc(looks, func(l look) bool { return l.vacuum })
	_, done := p.k.answers[looks[at].code]
	if done || !p.k.vacuum || !p.k.valve || !p.stopped() || low < likely || p.asked != nil ||
		p.k.below(signature.OverOutdoor) || p.levelKnown() {
		return
	}
	a := p.b.ask(&looks[at])
	p.asked = &a
	p.askFor(a.look)
}

// levelKnown says that a look tells already whether liquid reaches the valve.
func (p *planner) levelKnown() bool {
	return slices.ContainsFunc(
		[]string{"cold-glass", "cold-receiver-low", "cold-drier-drop"},
		func(code string) bool { _, asked := p.k.answers[code]; return asked },
	)
}

// markLevel has the leak looked for and the level watched; no refrigerant is moved on it.
func (p *planner) markLevel() {
	p.add(modes.FindLeak)
	p.add("step.cold-mark-level")
	p.hold = fact.New("charge.cold-level-only")
}

// gasProved says that a machine has a gas in it, by the pressure at which it stands. Where nobody
// read that yet, it is asked for: no charge is thrown away on what else makes a head high. Where it
// stands as it should, and it is gas all the same or too much, all of it is weighed in anew, which
// puts right either.
func (p *planner) gasProved(r *ranked) bool {
	if r.code != gas || p.asked != nil || p.beside() {
		return false
	}
	const code = "cold-standing"
	proved, answered := p.k.answers[code]
	if much := p.b.cause(overcharge); answered {
		return proved && r.chance >= likely || much < likely && much+r.chance >= sure
	}
	if at := slices.IndexFunc(looks, func(l look) bool { return l.code == code }); r.chance >= likely {
		a := p.b.ask(&looks[at])
		p.asked, p.hold = &a, fact.New("charge.look-first")
		p.askFor(a.look)
	}
	return false
}

// holdsTooMuch says that nothing but too much refrigerant is likely in a machine that stands for
// its head, and nothing is left to look at: it does not run before some of it is out.
func (p *planner) holdsTooMuch(r *ranked) bool {
	return r.code == overcharge && r.chance >= sure && p.stopped() && p.asked == nil &&
		!p.beside() && !p.has(modes.Read)
}
