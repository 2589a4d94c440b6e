package cooling

import (
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// weighInOnly: a circuit that was open, or a machine of which nothing was read, is charged by
// weight.
func (k *planner) weighInOnly() bool {
	opened := k.c.Seen.SealedSystemOpened
	if !opened && (!k.b.NotEnough() || len(k.c.Given) > 0) {
		return false
	}
	if k.c.Weighing == nil && !opened {
		return false
	}
	if k.c.SuctionPressure != nil || k.c.LiquidPressure != nil {
		k.Put(k.c.RecoverRest()) // what it ran on
	}
	k.Add(modes.Nitrogen)
	k.Add(modes.Evacuate)
	k.byWeight()
	return true
}

// afterMove: nothing but waiting until readings later than the move are there.
func (k *planner) afterMove() {
	if k.movedMuch() {
		return
	}
	wait := fact.Of("wait", charge.WaitAfterMove())
	k.Add(modes.Wait, wait).Why = fact.New("charge.read-before-move")
}

// movedMuch: a good part of the whole charge has been moved, and the reading is not in band:
// something else is wrong. What went too far may go back; where it is not known which way the
// charge is off, only weighing it in ends that.
func (k *planner) movedMuch() bool {
	share := math.Abs(float64(k.c.NetMoved)) / float64(k.c.WholeCharge)
	if k.c.WholeCharge == 0 || share <= charge.MostMoved() ||
		k.j.Charge.Outcome == modes.ChargeInBand && !k.c.ReadBeforeMove {
		return false
	}
	right := k.b.Charge.InBand >= likely && !moves(&k.b.Decision)
	if right || k.c.Reading != nil && k.c.Reading.Within() || k.tooFar() || k.answersRecovery() {
		return false
	}
	k.Add(modes.Halt, fact.Of("share", fact.Share(share)))
	k.hold = append(k.hold, fact.New("charge.moved-much", fact.Of("share", fact.Share(share))))
	if k.c.NetMoved > 0 && k.b.Charge.Low >= offFrom {
		k.leakPath()
		return true
	}
	for _, m := range k.b.Marginals() { // what answers for the reading, and opens nothing
		if !ofCharge(m.Signature) && k.b.worthMending(m.Chance) && !k.opens(m.Signature) &&
			!k.lookedAt(m.Signature) {
			k.mend(m.Signature)
		}
	}
	if d := &k.b.Decision; len(d.Looks) > 0 && d.Looks[0].Look() {
		k.look(d.Looks[0])
	}
	k.weighAnew()
	return true
}

// weighAnew empties the circuit and weighs the charge in, tested where it may leak; a leak that was
// found is mended first.
func (k *planner) weighAnew() {
	if found, _ := k.answer(leakLook); found {
		k.leakPath()
		return
	}
	k.Put(k.c.RecoverRest())
	if k.b.present(diagnose.Undercharge, diagnose.NextToEmpty) {
		k.Add(modes.Nitrogen)
	}
	k.Add(modes.Evacuate)
	k.byWeight()
}

// offFrom is the chance of a wrong charge from which the circuit is emptied for it, where no dose
// may tell: common practice, no source.
const offFrom = 0.7

// tooFar says that more was added than was missing, or more recovered than was too much.
func (k *planner) tooFar() bool {
	return k.c.NetMoved > 0 && k.j.Charge.Outcome == modes.ChargeHigh ||
		k.c.NetMoved < 0 && k.j.Charge.Outcome == modes.ChargeLow
}

// answersRecovery says that a machine which is overfull still was read to answer to what was
// recovered as one does, and that its dosing goes on.
func (k *planner) answersRecovery() bool {
	if k.j.Charge.Outcome != modes.ChargeHigh || k.c.Target == nil || k.c.Reading == nil {
		return false
	}
	plan := dosing(k.c)
	dose, err := plan.Next()
	return err == nil && dose.Action == charge.Recover && len(plan.History) > 1
}

// byWeight ends a sequence with the charge to weigh in, or with what it lacks.
func (k *planner) byWeight() {
	k.j.WeighIn = k.c.Weighing
	k.Put(k.c.WeighIn())
}

// chargeStays: no refrigerant is moved by what was read. Where the charge is likely to be wrong,
// and all was looked at, weighing it in ends the doubt.
func (k *planner) chargeStays() {
	off := max(k.b.Charge.Low, k.b.Charge.High)
	if off >= offFrom && k.b.present(diagnose.Undercharge, diagnose.Overcharge) &&
		!k.c.NoPairs && !k.c.Seen.ChargeWeighed {
		switch {
		case k.clampFirst():
			k.Add(modes.LeaveCharge)
		case k.b.Charge.High >= offFrom && k.fewOunces():
			k.over()
		default:
			k.weighAnew()
		}
		return
	}
	if k.tooFull() && k.lookAt("standing-pressure", fact.Fact{}) {
		k.Add(modes.LeaveCharge)
		return
	}
	if k.floods() {
		k.whyLiquid()
		return
	}
	if k.b.Healthy < likely && k.seeOthers() {
		k.Add(modes.LeaveCharge)
		return
	}
	step := k.Add(modes.ChargeStays)
	for _, x := range [...]diagnose.Code{diagnose.Undercharge, diagnose.Overcharge} {
		if k.b.present(x) {
			step.Cause, step.Chance = string(x), k.b.Probability(x)
			step.Do = step.Do.With(fact.Of("chance", fact.Share(step.Chance)))
		}
	}
	if k.c.Reading == nil {
		return
	}
	step.Why = k.c.Reading.Says
	if !k.c.Reading.Within() && k.c.Target != nil && k.c.Target.General() {
		k.Add(modes.ReadLabel)
	}
}

// fewOunces: where too much is likely, a measured part of it that comes out tells as much as an
// empty circuit, in a tenth of the time. Where gas may be beside it nothing but emptying helps,
// and what a capillary holds is weighed.
func (k *planner) fewOunces() bool {
	return k.c.NetMoved == 0 && !k.Stopped() && !k.c.NoPairs &&
		k.b.Probability(diagnose.NonCondensables) < worth/2 &&
		k.c.Metering != refrigerant.Capillary && !k.c.NoLiquidPort
}

// tooFull: too much refrigerant, or gas beside it, is likely, and nothing tells which but the
// pressures at rest. Where liquid comes back nothing else is likelier to send it.
func (k *planner) tooFull() bool {
	least := offFrom
	if k.floods() {
		least = likely
	}
	return !k.c.NoPairs && k.b.Any(diagnose.Overcharge, diagnose.NonCondensables) >= least
}
