package cooling

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// A planner puts the steps of a visit in order. It decides nothing about what is wrong: it
// takes the belief, and from it the decision with the least expected loss, and sees to it
// that the steps can be done one after the other.
type planner struct {
	modes.Plan
	c *modes.Case
	b *belief
	j *modes.Judgement
	// why no refrigerant is moved although the charge is called low or high.
	hold []fact.Fact
	// secured is the cause that the steps about a danger look for already.
	secured diagnose.Code
}

// plan makes the steps.
func (k *planner) plan() {
	k.secure()
	switch {
	case k.weighInOnly():
	case k.wrongSetting():
	case !k.shownByNow() && k.spoiled():
	case k.c.ReadBeforeMove:
		k.afterMove()
	case k.b.NotEnough():
		k.readFirst()
	case k.movedMuch():
	case k.unexplained():
	case k.starved():
	case k.slow():
	default:
		k.byBelief()
	}
	if k.Stopped() && !k.Has(modes.Evacuate) { // else it is started once it is charged
		k.Add(modes.StartAgain)
	}
}

// secure comes first where the machine may harm itself as it runs.
func (k *planner) secure() {
	if x := k.j.Dangers.Stop(); x != nil {
		k.Add(modes.Stop).Why = x.Says
		k.seeTo(x.Code)
	}
	if flood := k.j.Dangers.Flood(); len(k.Steps) == 0 && flood != nil && !k.c.Seen.CoilIced {
		k.Add(modes.FeelCompressor).Why = flood.Says // ice stops it anyway
	}
}

// seeTo looks at what brings a danger, with the machine stopped, or puts right what was found.
func (k *planner) seeTo(danger string) {
	by := secures[danger]
	if found, done := k.answer(by.look); done {
		if found {
			k.dirt()
		}
		return
	}
	for _, code := range by.steps {
		if code == modes.OutdoorCoil && k.c.Seen.OutdoorCoilDirty {
			code = modes.CleanOutdoor
		}
		k.Add(code)
	}
	if k.secured = by.cause; !k.c.Seen.OutdoorCoilDirty {
		k.Steps[len(k.Steps)-1].Look = by.look
	}
}

// byBelief follows the decision: looks first, then the act, then what else is likely.
func (k *planner) byBelief() {
	d := &k.b.Decision
	k.iceFirst()
	dirty := k.dirt()
	if !k.c.Valve.IsZero() {
		k.Add(modes.ValveHunts).Why = k.c.Valve
	}
	// A reading is doubted before the machine is.
	for _, m := range k.b.Marginals() {
		if diagnose.OfInstrument(m.Signature) && k.b.worthMending(m.Chance) && !k.lookedAt(m.Signature) {
			k.mend(m.Signature)
		}
	}
	if k.b.leaks() {
		k.leakPath()
		return
	}
	k.looks(d)
	if k.emptied() {
		k.leakPath()
		return
	}
	if !moves(d) {
		k.static()
	}
	k.act(d, dirty)
	for _, m := range k.b.Marginals() {
		proved := weak(m.Signature) && weak(d.Signature) // by one test
		if !moves(d) && !ofCharge(m.Signature) && m.Signature != d.Signature && !proved {
			k.mendWorth(m.Signature, m.Chance)
		}
	}
	if !moves(d) && !k.idle() && !k.Has(modes.ChargeStays, modes.Evacuate, modes.Recover) &&
		k.b.present(diagnose.Undercharge, diagnose.Overcharge) {
		k.Add(modes.LeaveCharge) // what the headline names is not acted on yet
	}
	switch { // nothing is likely enough to act on
	case !k.idle():
	case len(d.Looks) == 0 && !k.Has(iceLook) && k.c.Valve.IsZero() && k.b.Healthy >= worth:
		k.leave()
	case k.warmerDay():
	case !k.readAside():
		k.chargeStays()
	}
	if k.onlyLooks() {
		if !k.reads() && max(k.b.Healthy, k.b.Marginals()[0].Chance) < likely {
			k.unread()
		}
		k.warmerDay()
	}
	if !k.Has(modes.Leave, modes.Wait, modes.Evacuate) && !k.onlyLooks() {
		k.Add(modes.ReadAgain)
	}
}

// idle: nothing is in the plan but to feel whether liquid comes back, and to look for ice.
func (k *planner) idle() bool {
	return !slices.ContainsFunc(k.Steps, func(s modes.Step) bool {
		return s.Do.Code != modes.FeelCompressor && s.Do.Code != iceLook
	})
}

// emptied: next to nothing is in it, or so little that it comes to the same; it is not run for a
// reading more.
func (k *planner) emptied() bool {
	some := k.b.Probability(diagnose.NextToEmpty) >= worth && k.muchMissing()
	return k.b.present(diagnose.NextToEmpty) ||
		some && k.b.Any(diagnose.NextToEmpty, diagnose.Undercharge) >= offFrom
}

func moves(d *diagnose.Decision) bool { return d.Act == diagnose.Add || d.Act == diagnose.Recover }

// act takes the act that was decided on, where neither looks nor dirt come before it.
func (k *planner) act(d *diagnose.Decision, dirty bool) {
	switch moves, looks := moves(d), len(d.Looks) > 0 || k.Has(iceLook); {
	case moves && k.doubted() != "":
		k.holdBehind(k.doubted())
	case moves && k.firstOf(diagnose.Restriction, diagnose.NonCondensables):
	case moves && !looks && !dirty && k.besideFirst(d):
	case moves && (dirty || looks):
		if d.Act == diagnose.Add && len(d.Looks) == 0 && k.muchMissing() {
			k.leakPath()
			return
		}
		k.holdFor(d, dirty)
		k.Add(modes.LeaveCharge)
	case moves && k.c.Seen.ChargeWeighed && (k.c.NetMoved != 0 || k.Stopped()): // trimmed once
		k.chargeStays()
	case moves && k.c.NoPairs:
		k.Add(modes.WholeFirst)
	case d.Act == diagnose.Recover && k.j.Charge.Outcome == modes.NotJudged && k.Stopped():
		k.weighAnew() // it cannot run until it is right
	case d.Act == diagnose.Add && k.b.cold() != nil && k.muchMissing():
		k.leakPath()
	case moves && k.warmerDay():
	case moves && (k.j.Charge.Outcome == modes.NotJudged || k.unread()):
		k.Add(modes.LeaveCharge) // nobody doses blindly
	case d.Act == diagnose.Add && k.c.NetMoved > 0 && k.floods():
		k.whyLiquid()
		k.Add(modes.LeaveCharge) // more of it would come back too
	case d.Act == diagnose.Add:
		k.short()
	case d.Act == diagnose.Recover:
		k.over()
	case d.Act == diagnose.Mend && k.b.worthMending(d.Chance):
		k.mendWorth(d.Signature, d.Chance)
	case !dirty && k.doubts(d) && k.lookFor(d.Signature):
	}
}

// holdBehind leaves the charge alone until a cause is put right.
func (k *planner) holdBehind(cause diagnose.Code) {
	k.hold = append(k.hold, fact.New("charge.instrument-first", fact.Of("cause", causeTerm(cause))))
	k.Add(modes.LeaveCharge)
}

// doubted is the instrument that is doubted in the plan, empty for none: no refrigerant is moved
// by it.
func (k *planner) doubted() diagnose.Code {
	for _, s := range k.Steps {
		if c := diagnose.Code(s.Cause); diagnose.OfInstrument(c) {
			return c
		}
	}
	return ""
}

// doubts: mending a cause would be worth it, and it is neither likelier than that the machine is
// sound, nor is that likely.
func (k *planner) doubts(d *diagnose.Decision) bool {
	return d.Act == diagnose.Mend && d.Chance >= worth && k.b.Healthy < likely && !k.floods()
}

func ofCharge(c diagnose.Code) bool { return c == diagnose.Undercharge || c == diagnose.Overcharge }

// holdFor says why refrigerant is not moved yet.
func (k *planner) holdFor(d *diagnose.Decision, dirty bool) {
	if dirty {
		k.hold = append(k.hold, fact.New("charge.clean-first"))
	}
	iced := k.Has(iceLook)
	if len(d.Looks) > 0 || iced {
		first := fact.Code("charge.look-first")
		if !iced && d.Looks[0].Field() != "" {
			first = "charge.reading-first"
		}
		k.hold = append(k.hold, fact.New(first))
	}
}
