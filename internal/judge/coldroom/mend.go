package coldroom

import (
	"slices"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// putRight adds what was seen and no step of the plan is for yet.
func (p *planner) putRight() {
	for _, s := range sights {
		of := slices.IndexFunc(faults, func(f fault) bool { return f.code == s.fault })
		mends := []fact.Code{fact.Code("mend." + s.fault), fact.Code("mend." + faults[of].cause)}
		if p.k.seen(s.look) && !p.has(mends...) {
			p.add(s.step)
		}
	}
}

// oil stays out in a coil that is starved, and is washed out of a compressor that is flooded.
func (p *planner) oil() {
	if p.stopped() || p.has(modes.Evacuate) || p.k.usual.Receiver < 0.5 {
		return // a small sealed compressor has no glass to see it by
	}
	for _, code := range []string{undercharge, restriction, starving, flooding} {
		if p.b.cause(code) >= likely {
			p.add("step.cold-oil")
			return
		}
	}
}

// mends puts right what is worth it, but for a shortage.
func (p *planner) mends(low float64, waits bool) {
	for i := range p.ranking {
		r := &p.ranking[i]
		if r.code == sound || r.chance < worth || p.ratherSound(r) ||
			low >= likely && (r.chance < likely || p.ofCharge(r)) {
			continue
		}
		if p.ofCharge(r) && waits && !p.gasProved(r) && !p.holdsTooMuch(r) {
			p.hold = fact.New("charge.look-first")
			continue
		}
		if i > 0 && p.asked != nil && r.chance < likely {
			continue // the look comes first
		}
		switch {
		case r.code == gas && p.gasProved(r):
			p.gas()
		case r.code == overcharge && r.chance >= likely:
			p.over()
		case !p.ofCharge(r) && !(p.stopped() && faults[r.faults[0]].code == pullsDown):
			p.mend(r) // a machine that stands pulls nothing down
		}
	}
}

// ratherSound says that nothing wrong is likelier than a cause: it is left alone then, but for what
// can be put right from outside where nothing wrong is not likely either.
func (p *planner) ratherSound(r *ranked) bool {
	whole := p.b.cause(sound)
	return r.chance < whole &&
		(whole >= likely || p.ofCharge(r) || faults[r.faults[0]].opens)
}

// mend puts a cause right, by the name of its fault where one is likeliest by far. What a look of
// the plan would find waits for it.
func (p *planner) mend(r *ranked) {
	code, chance, opens := fact.Code("mend."+r.code), r.chance, false
	l := p.quickLook(&faults[r.faults[0]])
	if l != nil && p.unseen(r) && !slices.Contains(p.looks, l) {
		p.askFor(l)
		return
	}
	i := slices.IndexFunc(
		r.faults, func(f int) bool { return !p.asksAfter(&faults[f]) && !p.denied(r, f) },
	)
	if i < 0 {
		return
	}
	f := r.faults[i]
	if others := p.asksAfterAny(r); others || p.alone(r) {
		code, opens = fact.Code("mend."+faults[f].code), faults[f].opens
		if others {
			if chance = p.b.faults[f]; chance < worth {
				return
			}
			if l := p.quickLook(&faults[f]); l != nil && !p.found(&faults[f]) {
				p.askFor(l)
				return
			}
		}
	}
	switch _, warmed := p.k.answers["cold-bulb-warm"]; {
	case warmed && r.code == starving:
		code = "mend.cold-valve-inside"
	case r.code == compressor:
		code, opens = p.ofCompressor(code, r.chance)
	}
	drier := opens && r.code == restriction
	whole := drier && !p.k.valve && !p.stopped()
	if whole && p.looks != nil {
		return // nothing is recovered before a look is answered
	}
	if drier {
		code = p.ofDrier(code, whole)
	}
	s := p.add(code, p.mendsWith(code, chance)...)
	s.Cause, s.Chance = r.code, chance
	s.Opens = s.Opens || opens
	if whole {
		p.closed()
	}
}

// mendsWith are the figures of a step that mends.
func (p *planner) mendsWith(code fact.Code, chance float64) []fact.Value {
	out := []fact.Value{fact.Of("chance", fact.Share(chance)), fact.Of("defrost", p.defrost())}
	if usual, ok := controlFigure(p.c, &p.k.usual); ok && code == "mend.cold-pressure-control" {
		out = append(out, usual.Values...)
	}
	if wait, ok := p.k.course.rest(p.k); ok && code == "mend."+pullsDown {
		out = append(out, fact.Of("wait", wait))
	}
	return out
}

// ofDrier is how one is renewed, else by code; behind a tube the whole charge is recovered, for
// there is no receiver to pump it into.
func (p *planner) ofDrier(code fact.Code, whole bool) fact.Code {
	switch {
	case whole:
		p.add(modes.RecoverRest)
		return "mend.cold-drier-tube"
	case p.stopped() && !p.k.answers["cold-drier-drop"]:
		return "mend.cold-drier-stopped"
	}
	return code
}

// ofCompressor is how a compressor is seen to that leaks within, else by code: no part is condemned
// before that is proved, by more than one test of which the readings say otherwise, and what has no
// valve to shut the liquid with cannot be pumped down.
func (p *planner) ofCompressor(code fact.Code, chance float64) (_ fact.Code, opens bool) {
	const condemned = 0.9
	if p.c.Room.Defrost == coldroom.HotGas { // its valve leaks as a compressor does
		p.add("step.cold-hot-gas")
	}
	failed, pumped := p.k.answers["cold-pump-down"]
	switch {
	case failed && chance >= condemned:
		return "mend.cold-compressor-proved", true
	case pumped || p.k.usual.Receiver < 0.5:
		return "mend.cold-compressor-sealed", false
	case p.stopped():
		return "mend.cold-compressor-stopped", false
	}
	return code, false
}
