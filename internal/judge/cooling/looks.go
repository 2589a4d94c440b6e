package cooling

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// dirt that was seen is cleaned, and what a look found is put right: there is nothing to find out
// about it. False where there is none.
func (k *planner) dirt() bool {
	indoors := k.putRight(diagnose.LowIndoorAir, k.c.Seen.FilterDirty, airLook)
	outdoors := k.putRight(diagnose.CondenserAir, k.c.Seen.OutdoorCoilDirty, "outdoor-coil")
	return indoors || outdoors
}

func (k *planner) putRight(cause diagnose.Code, dirty bool, look string) bool {
	found, _ := k.answer(look)
	switch {
	case dirty:
		k.Add(cleans[cause])
	case found:
		k.Add(seen[cause])
	}
	return dirty || found
}

// waterFirst: where water is all there is, the drain is looked at before any gauge.
func (k *planner) waterFirst() bool {
	if !k.c.Seen.WaterComplaint || len(k.c.Given) > 0 {
		return false
	}
	clogged, done := k.answer(drainLook)
	switch {
	case clogged:
		k.Add(modes.ClearDrain)
		k.Add(modes.PourWater)
	case !done:
		k.lookAt(drainLook, fact.Fact{})
	}
	return clogged || !done
}

const drainLook = "condensate-drain"

// looks are taken before the act: the leak of what is called low, a reading that is off its label,
// and those that were decided on.
func (k *planner) looks(d *diagnose.Decision) {
	empty := k.emptied()
	for _, m := range d.Looks {
		if m.OfInstruments() && !empty {
			k.look(m) // minutes, before a search for a leak that may not be
		}
	}
	if k.j.Charge.Outcome == modes.ChargeLow || empty ||
		k.b.cold() != nil && k.b.present(diagnose.Undercharge) {
		k.findLeak() // no dirt hides it, and no reading finds it
	}
	if d.Act == diagnose.Leave || d.Act == diagnose.Mend && !k.b.worthMending(d.Chance) {
		k.readAside()
	}
	for _, m := range d.Looks {
		if !empty || !m.Running() { // an empty machine is not run for a reading more
			k.look(m)
		}
	}
}

// firstOf puts the first of some causes right that is likely, before any refrigerant is moved;
// false where none is, or a look in the plan answers for it.
func (k *planner) firstOf(causes ...diagnose.Code) bool {
	for _, c := range causes {
		if k.b.present(c) && !k.lookedAt(c) {
			k.mend(c)
			k.holdBehind(c)
			return true
		}
	}
	return false
}

// besideFirst looks, before any refrigerant is moved, for what is likely to be wrong beside the
// charge, since the target is not that of such a machine. False where that was done, and where so
// much is missing that nothing is added before the leak is mended, or the machine is stopped.
func (k *planner) besideFirst(d *diagnose.Decision) bool {
	if k.Stopped() || d.Act == diagnose.Add && k.muchMissing() {
		return false
	}
	for _, m := range k.b.Marginals() {
		if m.Chance >= likely && !ofCharge(m.Signature) && k.lookFor(m.Signature) {
			k.hold = append(k.hold, fact.New("charge.look-first"))
			k.Add(modes.LeaveCharge)
			return true
		}
	}
	return false
}

// onlyLooks says that the plan looks or reads, or clears a drain, and changes nothing that was
// read.
func (k *planner) onlyLooks() bool {
	return len(k.Steps) > 0 && !slices.ContainsFunc(k.Steps, func(s modes.Step) bool {
		drain := s.Cause == string(diagnose.Drain)
		return s.Look == "" && s.Field == "" && !leaves(s.Do.Code) && !drain
	})
}

// lookFor takes the look that shows a cause soonest; false where that was done, or none does.
func (k *planner) lookFor(signature diagnose.Code) bool {
	look := k.c.Evidence.LookFor(signature)
	return look != "" && k.lookAt(look, fact.Fact{})
}

// static looks at the way of the air where the blower works against more than its limit.
func (k *planner) static() {
	over, ok := k.c.Evidence.StaticHigh()
	if ok && !k.b.worthMending(k.b.Probability(diagnose.LowIndoorAir)) {
		k.seeAir(over)
	}
}

// seeAir looks at the way of the indoor air; false where that was done, or dirt is cleaned there.
func (k *planner) seeAir(why fact.Fact) bool {
	return !k.Has(modes.CleanFilter) && k.lookAt(airLook, why)
}

const airLook = "indoor-air-path"

// seeFirst looks for what is less likely than not before it is put right; false where that was
// done, or nothing shows it.
func (k *planner) seeFirst(signature diagnose.Code) bool {
	switch {
	case signature == diagnose.LowIndoorAir:
		return k.seeAir(fact.Fact{})
	case signature == diagnose.CondenserAir && !k.c.Seen.OutdoorCoilDirty:
		return k.lookAt("outdoor-coil", fact.Fact{})
	case signature == diagnose.Restriction && k.opens(signature) && k.c.SuctionLine != nil:
		return k.lookAt("suction-clamp-second", fact.Fact{}) // a clamp that reads high looks so
	case signature == diagnose.Drain:
		return k.lookAt(drainLook, fact.Fact{}) // no reading shows it
	}
	return false
}

// lookedAt reports whether a look in the plan answers for a cause.
func (k *planner) lookedAt(code diagnose.Code) bool {
	return slices.ContainsFunc(
		k.b.Decision.Looks, func(m *diagnose.Measurement) bool { return m.Answers(code) },
	)
}

func (k *planner) look(m *diagnose.Measurement) {
	if m.Code == leakLook && k.Has(modes.FindLeak) || m.Look() && k.asks(m.Code) {
		return
	}
	s := modes.Step{
		Do: m.Fact(), Look: lookCode(m), Field: m.Field(),
		Effect: modes.Effect{Running: m.Running()},
	}
	if m.Code == leakLook {
		s.Why = k.orLine()
	}
	k.Put(s)
}

func lookCode(m *diagnose.Measurement) string {
	if m.Look() {
		return m.Code
	}
	return ""
}

// lookBehind looks at what brings the danger that is told of a machine that reads sound; false
// where none is told, or it was seen.
func (k *planner) lookBehind() bool {
	return slices.ContainsFunc(k.j.Dangers, func(x modes.Danger) bool {
		look := behind[x.Code]
		return look != "" && k.lookAt(look, fact.Fact{})
	})
}

// answered says that one of some looks was answered.
func (k *planner) answered(looks ...string) bool {
	return slices.ContainsFunc(
		k.c.Answers, func(a diagnose.Answer) bool { return slices.Contains(looks, a.Code) },
	)
}

// answer is what a look found; false where it was not answered.
func (k *planner) answer(look string) (yes, done bool) {
	for _, a := range k.c.Answers {
		if a.Code == look {
			return a.Yes, true
		}
	}
	return false, false
}

// asks reports whether a step of the plan is a look.
func (k *planner) asks(look string) bool {
	return slices.ContainsFunc(k.Steps, func(s modes.Step) bool { return s.Look == look })
}

// lookAt asks for a look; false where it was answered.
func (k *planner) lookAt(code string, why fact.Fact) bool {
	if _, done := k.answer(code); done {
		return false
	}
	if k.asks(code) {
		return true
	}
	all := Looks()
	i := slices.IndexFunc(all, func(l diagnose.Look) bool { return l.Code == code })
	k.Put(modes.Step{
		Do: fact.New(fact.Code("look." + code)), Look: code,
		Effect: modes.Effect{Running: all[i].Running},
	}).Why = why
	return true
}

// seeOthers takes the look that is worth most before a machine is left; false where none is.
func (k *planner) seeOthers() bool {
	look := k.b.LastLook(&k.c.Evidence)
	return look != "" && k.lookAt(look, fact.Fact{})
}
