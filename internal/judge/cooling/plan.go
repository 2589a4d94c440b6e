package cooling

import (
	"math"
	"slices"
	"strings"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
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
	default:
		k.byBelief()
	}
	if k.Stopped() && !k.Has(modes.Evacuate) { // else it is started once it is charged
		k.Add(modes.StartAgain)
	}
}

// secure comes first where the machine may harm itself as it runs.
func (k *planner) secure() {
	for _, x := range k.j.Dangers {
		if !x.Stops {
			continue
		}
		k.Add(modes.Stop).Why = x.Says
		by := secures[x.Code]
		if _, done := k.answer(by.look); done {
			break
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
		break
	}
	if flood := k.flood(); len(k.Steps) == 0 && flood != nil && !k.c.Seen.CoilIced {
		k.Add(modes.FeelCompressor).Why = flood.Says // ice stops it anyway
	}
}

// wrongSetting: where gauges are set to another refrigerant, or read from another place than the
// clamp, every figure is another's, and so is every rule about it.
func (k *planner) wrongSetting() bool {
	switch d := k.b.cannotBe(); {
	case k.b.present(diagnose.OtherRefrigerant):
		k.mend(diagnose.OtherRefrigerant)
	case d != nil:
		k.reread(d)
	default:
		return false
	}
	k.Add(modes.ReadAgain)
	return true
}

// reread says what to see to before readings that cannot be are taken again.
func (k *planner) reread(d *readcheck.Doubt) {
	code := fact.Code("doubt." + d.Code)
	k.Add(code + ".mend").Why = fact.New(code, d.Values...)
}

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

// shown is how long after a start a compressor that pumps has made its difference, and a circuit
// with refrigerant in it has filled: common practice, no source.
const shown = 5 * time.Minute

// shownByNow: that next to nothing is in it, or nothing pumped, shows before all else has settled,
// and it is not run on for a reading more.
func (k *planner) shownByNow() bool {
	early := func(o charge.Obstacle) bool { return o.Code == "run-short" }
	return len(k.c.Spoils) > 0 && k.c.Running >= shown && k.c.Moving.IsZero() &&
		!slices.ContainsFunc(k.c.Spoils, func(o charge.Obstacle) bool { return !early(o) }) &&
		k.b.present(diagnose.NextToEmpty, diagnose.NotPumping)
}

// spoiled: what keeps the machine from running as it usually does is mended first, and
// nothing else is built on what was read.
func (k *planner) spoiled() bool {
	if len(k.c.Spoils) == 0 {
		if !k.c.Moving.IsZero() {
			wait := fact.Of("wait", modes.Minutes(k.c.Course.Wait))
			k.Add(modes.Settle, wait).Why = k.c.Moving
		}
		return !k.c.Moving.IsZero()
	}
	for _, o := range k.c.Spoils {
		if o.Code == "run-short" && (k.Stopped() || k.waitsAsLongFor("just-moved", o)) {
			continue
		}
		way := ways[o.Code]
		if way == modes.MakersChart {
			k.Add(way, fact.Of("mode", fact.Term("mode.cooling"))).Why = o.Says
			return true
		}
		values := modes.WaitOf(o.Says)
		if way == modes.HouseRule {
			values = o.Says.Values
		}
		k.Add(way, values...).Why = o.Says
		if way == modes.Thaw {
			k.whyFroze()
		}
	}
	k.dirt()
	if slices.ContainsFunc(k.c.Spoils, func(o charge.Obstacle) bool { return o.WeighIn }) {
		if k.j.WeighIn = k.c.Weighing; k.j.WeighIn == nil && k.Has(modes.WarmerDay) {
			k.Add(k.c.WeighingWants)
		}
	}
	k.Add(modes.ReadAgain)
	return true
}

// waitsAsLongFor reports whether the wait for a condition lasts until another is gone too.
func (k *planner) waitsAsLongFor(code string, other charge.Obstacle) bool {
	left := func(o charge.Obstacle) (most time.Duration) {
		for _, v := range modes.WaitOf(o.Says) {
			most, _ = v.Of.(time.Duration)
		}
		return most
	}
	return slices.ContainsFunc(k.c.Spoils, func(o charge.Obstacle) bool {
		return o.Code == code && left(o) >= left(other)
	})
}

// whyFroze finds what made the ice while it melts: the way of the air, where that was not looked
// at, and the leak where refrigerant is likely to be missing.
func (k *planner) whyFroze() {
	switch blocked, seen := k.answer(airLook); {
	case k.c.Seen.FilterDirty:
		k.Add(modes.CleanFilter)
		if !seen {
			k.Add(modes.WhyFrozeBeside)
		}
	case !seen || blocked:
		k.Add(modes.WhyFroze)
	}
	if k.c.Seen.OilStains || k.b.Any(diagnose.Undercharge, diagnose.NextToEmpty) >= likely {
		k.findLeak()
	}
}

// dirt that was seen is cleaned; there is nothing to find out about it.
func (k *planner) dirt() {
	if k.c.Seen.FilterDirty {
		k.Add(modes.CleanFilter)
	}
	if k.c.Seen.OutdoorCoilDirty {
		k.Add(modes.CleanOutdoor)
	}
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
		if !ofCharge(m.Signature) && k.worthMending(m.Chance) && !k.opens(m.Signature) &&
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

// readFirst asks for the readings that a judgement starts from.
func (k *planner) readFirst() {
	if k.waterFirst() {
		return
	}
	var missing []string
	for _, name := range []string{
		"suctionPressure", "suctionLine", "liquidPressure", "liquidLine", "outdoorDryBulb",
		"returnDryBulb", "returnWetBulb", "supplyDryBulb",
	} {
		if k.c.NoLiquidPort && strings.HasPrefix(name, "liquid") {
			continue
		}
		if !slices.Contains(k.c.Given, name) {
			missing = append(missing, name)
		}
	}
	if k.c.Seen.NotCoolingComplaint && len(k.c.Given) == 0 && !k.c.Metered {
		k.Add(modes.SeeRuns)
	}
	k.Add(modes.RunOn, fact.Of("wait", charge.ShortestRun()))
	k.Add(modes.Read, fact.Of("readings", modes.ReadingTerms(missing)))
}

// unexplained: readings that cannot be true together, and no cause that says why, are taken
// again before anything is built on them.
func (k *planner) unexplained() bool {
	if k.b.misread() ||
		k.b.present(diagnose.NextToEmpty, diagnose.NotPumping, diagnose.OtherRefrigerant) {
		return false
	}
	for _, x := range k.c.Doubts {
		if x.Weight == readcheck.Impossible ||
			k.b.Contradictory() && x.Weight == readcheck.Doubtful {
			k.reread(&x)
			k.Add(modes.ReadAgain)
			return true
		}
	}
	if k.b.Contradictory() {
		k.Add(modes.Reread)
		return true
	}
	return false
}

// starved: without a reading of the liquid a leak and a restriction read alike; where no port has
// liquid, the scale tells them apart.
func (k *planner) starved() bool {
	if !k.b.starved() || k.c.Seen.FilterDirty || k.c.Seen.OutdoorCoilDirty || k.c.NoPairs {
		return false
	}
	var unread []string // of the suction
	if k.c.SuctionPressure == nil {
		unread = append(unread, "suctionPressure")
	}
	if k.c.SuctionLine == nil {
		unread = append(unread, "suctionLine")
	}
	if len(unread) == 2 { // the air alone says little of the circuit, or whether it runs at all
		idle := k.b.Probability(diagnose.NextToEmpty) + k.b.Probability(diagnose.NotPumping)
		if idle >= likely && !k.c.Metered && k.c.Current == nil && k.c.Power == nil {
			k.Add(modes.SeeRuns)
		}
		k.seeAir(fact.Fact{})
	} else {
		k.findLeak()
	}
	if k.b.Probability(diagnose.LowIndoorAir) >= worth/2 {
		k.seeAir(fact.Fact{})
	}
	if !k.c.NoLiquidPort {
		missing := append(unread, "liquidPressure", "liquidLine")
		k.Add(modes.Read, fact.Of("readings", modes.ReadingTerms(missing)))
		k.Add(modes.LeaveCharge)
		return true
	}
	k.Add(modes.RecoverWeigh)
	k.Add(modes.MendLeak)
	k.Add(modes.Nitrogen)
	k.Add(modes.Evacuate)
	k.byWeight()
	return true
}

// byBelief follows the decision: looks first, then the act, then what else is likely.
func (k *planner) byBelief() {
	d := &k.b.Decision
	k.iceFirst()
	k.dirt()
	if !k.c.Valve.IsZero() {
		k.Add(modes.ValveHunts).Why = k.c.Valve
	}
	dirty := k.Has(modes.CleanFilter, modes.CleanOutdoor)
	// A reading is doubted before the machine is.
	for _, m := range k.b.Marginals() {
		if diagnose.OfInstrument(m.Signature) && k.worthMending(m.Chance) && !k.lookedAt(m.Signature) {
			k.mend(m.Signature)
		}
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
		if !moves(d) && !ofCharge(m.Signature) && m.Signature != d.Signature {
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
	case !k.readAside():
		k.chargeStays()
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

// looks are taken before the act: the leak of what is called low, a reading that is off its label,
// and those that were decided on.
func (k *planner) looks(d *diagnose.Decision) {
	empty := k.emptied()
	for _, m := range d.Looks {
		if m.OfInstruments() && !empty {
			k.look(m) // minutes, before a search for a leak that may not be
		}
	}
	if k.j.Charge.Outcome == modes.ChargeLow || empty {
		k.findLeak() // no dirt hides it, and no reading finds it
	}
	if d.Act == diagnose.Leave || d.Act == diagnose.Mend && !k.worthMending(d.Chance) {
		k.readAside()
	}
	for _, m := range d.Looks {
		if !empty || !m.Running() { // an empty machine is not run for a reading more
			k.look(m)
		}
	}
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
	case moves && k.c.Seen.ChargeWeighed && k.c.NetMoved != 0: // it is trimmed once
		k.chargeStays()
	case moves && k.c.NoPairs:
		k.Add(modes.WholeFirst)
	case d.Act == diagnose.Recover && k.j.Charge.Outcome == modes.NotJudged && k.Stopped():
		k.weighAnew() // it cannot run until it is right
	case moves && k.j.Charge.Outcome == modes.NotJudged:
		k.Add(modes.LeaveCharge)
	case d.Act == diagnose.Add && k.c.NetMoved > 0 && k.floods():
		k.whyLiquid()
		k.Add(modes.LeaveCharge) // more of it would come back too
	case d.Act == diagnose.Add:
		k.short()
	case d.Act == diagnose.Recover:
		k.over()
	case d.Act == diagnose.Mend && k.worthMending(d.Chance):
		k.mendWorth(d.Signature, d.Chance)
	case !dirty && k.doubts(d) && k.lookFor(d.Signature):
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
// charge, since the target is not that of such a machine, and for dirt outdoors before any comes
// out: it reads like too much, and who stands there sees it. False where that was done, and where
// so much is missing that nothing is added before the leak is mended, or the machine is stopped.
func (k *planner) besideFirst(d *diagnose.Decision) bool {
	if k.Stopped() || d.Act == diagnose.Add && k.muchMissing() {
		return false
	}
	first := d.Act == diagnose.Recover && k.c.NetMoved == 0 && k.lookAt("outdoor-coil", fact.Fact{})
	for _, m := range k.b.Marginals() {
		first = first ||
			m.Chance >= likely && !ofCharge(m.Signature) && k.lookFor(m.Signature)
	}
	if first {
		k.hold = append(k.hold, fact.New("charge.look-first"))
		k.Add(modes.LeaveCharge)
	}
	return first
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

// onlyLooks says that the plan looks or reads, or clears a drain, and changes nothing that was
// read.
func (k *planner) onlyLooks() bool {
	return len(k.Steps) > 0 && !slices.ContainsFunc(k.Steps, func(s modes.Step) bool {
		drain := s.Cause == string(diagnose.Drain)
		return s.Look == "" && s.Field == "" && !leaves(s.Do.Code) && !drain
	})
}

// doubts: mending a cause would be worth it, and it is neither likelier than that the machine is
// sound, nor is that likely.
func (k *planner) doubts(d *diagnose.Decision) bool {
	return d.Act == diagnose.Mend && d.Chance >= worth && k.b.Healthy < likely && !k.floods()
}

// lookFor takes the look that shows a cause soonest; false where that was done, or none does.
func (k *planner) lookFor(signature diagnose.Code) bool {
	look := k.c.Evidence.LookFor(signature)
	return look != "" && k.lookAt(look, fact.Fact{})
}

// static looks at the way of the air where the blower works against more than its limit.
func (k *planner) static() {
	over, ok := k.c.Evidence.StaticHigh()
	if ok && !k.worthMending(k.b.Probability(diagnose.LowIndoorAir)) {
		k.seeAir(over)
	}
}

// seeAir looks at the way of the indoor air; false where that was done, or dirt is cleaned there.
func (k *planner) seeAir(why fact.Fact) bool {
	return !k.Has(modes.CleanFilter) && k.lookAt(airLook, why)
}

const airLook = "indoor-air-path"

// mendWorth mends what is worth it, where no look in the plan answers for it first. What is
// not likely by itself waits for what is asked for or doubted, and for what opens no circuit.
func (k *planner) mendWorth(signature diagnose.Code, chance float64) {
	if !k.worthMending(chance) || k.lookedAt(signature) {
		return
	}
	reads := k.doubted() != "" || slices.ContainsFunc(
		k.Steps, func(s modes.Step) bool { return s.Field != "" },
	)
	switch unlikely := chance < likely; {
	case unlikely && (reads || k.opens(signature) && len(k.Steps) > 0):
	case unlikely && signature != k.secured && k.seeFirst(signature):
	default:
		k.mend(signature)
	}
}

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
	}
	return false
}

// leaves says that a step leaves the machine as it is.
func leaves(code fact.Code) bool {
	switch code {
	case modes.LeaveCharge, modes.ChargeStays, modes.WholeFirst, modes.ReadLabel, modes.FindLeak,
		modes.WhyCurrent, modes.FindNoise, modes.AskUse, modes.OtherWater, modes.FeelCompressor:
		return true
	}
	return false
}

// opens says that what mends the likeliest fault of a cause opens the circuit.
func (k *planner) opens(signature diagnose.Code) bool {
	for _, m := range k.b.Marginals() {
		if m.Signature == signature && len(m.Faults) > 0 {
			return m.Faults[0].Fault.Opens
		}
	}
	return false
}

// worthMending: what is less likely than that nothing is wrong is not taken apart.
func (k *planner) worthMending(chance float64) bool {
	return chance >= worth && chance > k.b.Healthy
}

func ofCharge(c diagnose.Code) bool { return c == diagnose.Undercharge || c == diagnose.Overcharge }

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
	k.Put(modes.Step{
		Do: m.Fact(), Look: lookCode(m), Field: m.Field(),
		Effect: modes.Effect{Running: m.Running()},
	})
}

func lookCode(m *diagnose.Measurement) string {
	if m.Look() {
		return m.Code
	}
	return ""
}

// mend puts a cause right, by the name of its fault where one is likeliest by far. An instrument
// that was found right is looked at again only where it is likely all the same.
func (k *planner) mend(signature diagnose.Code) {
	if signature == k.secured {
		return
	}
	i := slices.IndexFunc(
		k.b.Marginals(), func(m diagnose.Marginal) bool { return m.Signature == signature },
	)
	if i < 0 {
		return
	}
	m := &k.b.Marginals()[i]
	if m.Chance < likely && k.c.Cleared(signature) {
		return
	}
	do, effect, said := fact.New(fact.Code("mend."+string(signature))), modes.Effect{}, m.Chance
	for _, f := range m.Faults {
		effect.Running = effect.Running || f.Fault.Running
	}
	if named := m.Named(); named != nil && (len(m.Faults) == 1 || m.Chance*named.Chance >= likely) {
		f := named.Fault
		if !k.Has(cleans[signature]) { // else the dirt was seen
			said *= named.Chance
		}
		effect = modes.Effect{Opens: f.Opens, Running: f.Running}
		if do = fact.New(fact.Code("mend." + string(f.Code))); f.Own {
			do = fact.New("mend.house",
				fact.Of("fault", string(f.Code)), fact.Of("house", f.Sources[0].Title))
		}
	}
	if code, ok := k.shownAlready(do.Code, m.Chance); ok {
		do = fact.New(code)
	}
	if do.Code == "mend.condenser-recirculation" && k.lookAt("outdoor-air-at-coil", fact.Fact{}) {
		return // a fan that turns too slowly reads so, and is missed by the eye
	}
	if slices.Contains(leakWithin, do.Code) && k.c.Evidence.Current == nil && !k.c.Metered {
		do = do.With(fact.Of("current", fact.Term("reading.compressorCurrent")))
	}
	step := k.Put(modes.Step{
		Do:    do.With(fact.Of("chance", fact.Share(said))),
		Cause: string(signature), Chance: m.Chance, Effect: effect,
	})
	if dirt, ok := cleans[signature]; ok { // one step says it, with what may lie behind the dirt
		k.Steps = slices.DeleteFunc(k.Steps, func(s modes.Step) bool { return s.Do.Code == dirt })
		return
	}
	step.Why = k.b.findingFact(m)
}

// shownAlready is how a cause is put right where the usual way would look once more for what a look
// has shown, or what both numbers of a restrictor say; chance is that of the cause.
func (k *planner) shownAlready(way fact.Code, chance float64) (fact.Code, bool) {
	if slices.Contains(leakWithin, way) && k.c.HeatPump && !k.answered("reversing-valve", atStop) {
		return "mend.valve-before-compressor", true
	}
	if k.c.Bore > 0 && k.c.RatedBore > 0 && slices.Contains(bored, way) {
		return "mend.restrictor-fit", true
	}
	for _, x := range beyond {
		yes, done := k.answer(x.look)
		if x.way == way && done && yes == x.yes && (!x.split || !k.c.HeatPump) &&
			chance >= x.least {
			return x.then, true
		}
	}
	return "", false
}

// flood is the danger of liquid that comes back, whatever makes it; nil where none does.
func (k *planner) flood() *modes.Danger {
	for i := range k.j.Dangers {
		if x := &k.j.Dangers[i]; x.Code == "floodback" || x.Code == "slugging" {
			return x
		}
	}
	return nil
}

func (k *planner) floods() bool { return k.flood() != nil }

// leave: nothing to do, and nothing more to read. A machine that liquid comes back to is not
// left before it is known why.
func (k *planner) leave() {
	if k.c.Seen.WaterComplaint {
		k.Add(modes.OtherWater)
		return
	}
	if k.floods() {
		k.whyLiquid()
		return
	}
	complains := k.c.Seen.FrozenComplaint || k.c.Seen.NotCoolingComplaint ||
		k.c.Complaint == "high bill"
	if complains && k.seeAir(fact.Fact{}) {
		return // somebody called, whatever it reads now
	}
	if k.readAside() || k.unread() || k.lookBehind() ||
		k.b.Healthy < likely && k.seeOthers() {
		return
	}
	if k.drawsMuch() {
		k.Add(modes.WhyCurrent)
		return
	}
	if k.c.Complaint == "noise" {
		k.Add(modes.FindNoise)
	}
	switch r := k.c.Reading; {
	case r == nil || k.j.Charge.Outcome == modes.ChargeInBand:
		k.Add(modes.Leave)
	case r.Within():
		k.Add(modes.Leave).Why = r.Says
	default:
		k.chargeStays()
	}
	switch {
	case k.c.Seen.FrozenComplaint && k.b.present(diagnose.LowLoad):
		k.mend(diagnose.LowLoad)
	case complains:
		k.Add(modes.AskUse)
	}
}

// lookBehind looks at what brings the danger that is told of a machine that reads sound; false
// where none is told, or it was seen.
func (k *planner) lookBehind() bool {
	return slices.ContainsFunc(k.j.Dangers, func(x modes.Danger) bool {
		look := behind[x.Code]
		return look != "" && k.lookAt(look, fact.Fact{})
	})
}

// drawsMuch: the compressor draws more than its rated current, and nobody has measured why.
func (k *planner) drawsMuch() bool {
	return !k.c.Metered && slices.ContainsFunc(
		k.j.Dangers, func(x modes.Danger) bool { return x.Code == "current-high" },
	)
}

// unread asks for what the charge is read from before a machine is left; false where it is there,
// where no port has it, or where nobody put gauges on a machine that is only maintained.
func (k *planner) unread() bool {
	maintained := k.c.Complaint == "maintenance" &&
		k.c.SuctionPressure == nil && k.c.LiquidPressure == nil
	if len(k.c.Wanting) == 0 || k.c.NoLiquidPort || maintained {
		return false
	}
	k.Add(modes.Read, fact.Of("readings", modes.ReadingTerms(k.c.Wanting)))
	return true
}

// readAside: what is farther off the label's own target than its tolerance and the instruments
// allow is looked at once more before it is left: the clamp first, then what makes it so; false
// where that was done, or there is no need.
func (k *planner) readAside() bool {
	r := k.c.Reading
	if r == nil || r.Deviation == nil || k.c.Target == nil || k.c.Target.General() {
		return false
	}
	const coverage = 2
	off := math.Abs(float64(r.Deviation.Value)) - float64(r.Tolerance)
	if off <= coverage*r.Deviation.Std {
		return false
	}
	looks := asides[r.Method].above
	if r.Deviation.Value < 0 {
		looks = asides[r.Method].below
	}
	return slices.ContainsFunc(looks, func(code string) bool { return k.lookAt(code, r.Says) })
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

// whyLiquid looks for what sends liquid back, from outside: the bulb or the sensors of a valve, and
// the way of the air, then whether gas is beside the refrigerant. Where all of that is right, what
// is likelier than not too much comes out.
func (k *planner) whyLiquid() {
	switch {
	case k.c.Metering == refrigerant.TXV && k.lookAt("valve-bulb", fact.Fact{}):
	case k.c.Metering == refrigerant.EXV && k.lookAt("valve-sensors", fact.Fact{}):
	case k.seeAir(fact.Fact{}):
	case k.tooFull() && k.lookAt("standing-pressure", fact.Fact{}):
	case k.b.Charge.High >= likely && k.fewOunces():
		k.over()
	case k.seeOthers():
	default:
		k.Add(modes.WhyLiquid)
	}
}

// seeOthers looks for the likeliest cause that nobody has looked for, where it is likely enough;
// false where none is left.
func (k *planner) seeOthers() bool {
	for _, m := range k.b.Marginals() {
		if m.Chance >= worth && !ofCharge(m.Signature) && k.lookFor(m.Signature) {
			return true
		}
	}
	return false
}

// fewOunces: where too much is likely, a measured part of it that comes out tells as much as an
// empty circuit, in a tenth of the time. Where gas may be beside it nothing but emptying helps,
// and what a capillary holds is weighed.
func (k *planner) fewOunces() bool {
	return k.c.NetMoved == 0 && !k.Stopped() && !k.c.NoPairs &&
		k.b.Probability(diagnose.NonCondensables) < worth/2 &&
		k.c.Metering != refrigerant.Capillary && !k.c.NoLiquidPort
}

// clampFirst looks at a line clamp that may lie, before a circuit is emptied by what it reads;
// false where none may, where that was done, or where a leak was found.
func (k *planner) clampFirst() bool {
	if found, _ := k.answer(leakLook); found {
		return false
	}
	for _, x := range clamps {
		if k.b.Probability(x.cause) >= diagnose.WorthDoubting && k.lookAt(x.look, fact.Fact{}) {
			return true
		}
	}
	return false
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
