package satline

import (
	"math"
	"slices"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A planner puts the steps of a visit in order. It decides nothing about what is wrong: it
// takes the belief, and from it the decision with the least expected loss, and sees to it
// that the steps can be done one after the other.
type planner struct {
	p       *prepared
	s       *settled
	d       *Derived
	t       *targeted
	b       *belief
	mode    ModeFound
	charge  *ChargeVerdict
	dangers []Danger

	steps   []Step
	dose    *charge.Dose
	weighIn *charge.Weighing
	// why no refrigerant is moved although the charge is called low or high.
	hold []fact.Fact
	// secured is the cause that the steps about a danger look for already.
	secured diagnose.Code
	// stopped says that the last step leaves the machine stopped.
	stopped bool
}

// plan makes the steps.
func (k *planner) plan() {
	if k.electricalFirst() {
		return
	}
	if k.mode.Mode != Cooling {
		k.otherMode()
		return
	}
	k.secure()
	switch {
	case k.weighInOnly():
	case k.spoiled():
	case !k.s.later:
		k.afterMove()
	case k.b.Verdict == diagnose.NotEnough:
		k.readFirst()
	case k.movedMuch():
	case k.unexplained():
	default:
		k.byBelief()
	}
	if k.stopped && !k.has(StepEvacuate) { // else it is started once it is charged
		k.add(StepStartAgain)
	}
}

func (k *planner) has(codes ...fact.Code) bool {
	return slices.ContainsFunc(
		k.steps, func(s Step) bool { return slices.Contains(codes, s.Do.Code) },
	)
}

// add appends a step that is not there yet. A step that needs the machine running starts it
// again first, where it was stopped.
func (k *planner) add(code fact.Code, values ...fact.Value) *Step {
	return k.put(Step{Do: fact.New(code, values...), Effect: effects[code]})
}

func (k *planner) put(s Step) *Step {
	for i := range k.steps {
		if k.steps[i].Do.Code == s.Do.Code && s.Do.Code != StepStartAgain && s.Do.Code != StepRead {
			return &k.steps[i]
		}
	}
	if s.Running && k.stopped {
		k.put(Step{Do: fact.New(StepStartAgain), Effect: effects[StepStartAgain]})
	}
	k.stopped = s.Stops || k.stopped && !s.Starts
	k.steps = append(k.steps, s)
	return &k.steps[len(k.steps)-1]
}

func (s *Step) because(why fact.Fact) { s.Why = &why }

// electricalFirst: what is broken electrically is put right before refrigerant is thought of.
func (k *planner) electricalFirst() bool {
	if !k.p.unwell() {
		return false
	}
	for _, s := range k.p.electrical.Plan {
		k.put(Step{Do: s.Do, Why: s.Why, Effect: Effect{Stops: s.Stops, Starts: s.Starts}})
	}
	return true
}

// otherMode: no advice of cooling is given in another mode, nor while it is in doubt.
func (k *planner) otherMode() {
	for _, x := range k.dangers {
		if x.Stops {
			k.add(StepStop).because(x.Says)
			break
		}
	}
	switch k.mode.Mode {
	case 0:
		k.add(StepAskMode).because(k.mode.Says)
		return
	case Refrigeration:
		k.add(StepColdRoomFirst)
	}
	k.add(StepMakersChart, fact.Of("mode", term("mode", k.mode.Mode.String()))).because(k.mode.Says)
}

// secure comes first where the machine may harm itself as it runs.
func (k *planner) secure() {
	for _, x := range k.dangers {
		if !x.Stops {
			continue
		}
		k.add(StepStop).because(x.Says)
		if k.b.present(diagnose.NextToEmpty) {
			break // what is to be done about that follows
		}
		for _, code := range secures[x.Code] {
			k.add(code)
		}
		k.secured = secured[x.Code]
		break
	}
	if len(k.steps) == 0 && k.floods() {
		k.add(StepFeelCompressor).because(k.dangers[0].Says)
	}
}

// weighInOnly: a circuit that was open, or a machine of which nothing was read, is charged by
// weight.
func (k *planner) weighInOnly() bool {
	opened := k.p.visit.Conditions.SealedSystemOpened
	if !opened && (k.b.Verdict != diagnose.NotEnough || anyReading(&k.s.readings)) {
		return false
	}
	w, want := weighing(k.p)
	if w == nil && !opened {
		return false
	}
	k.add(StepNitrogen)
	k.add(StepEvacuate)
	if w != nil {
		k.weighInStep(w)
	} else {
		k.add(want)
	}
	return true
}

// weighInStep is the charge as one figure, with what it is made of.
func (k *planner) weighInStep(w *charge.Weighing) {
	k.weighIn = w
	values := []fact.Value{fact.Amount("total", w.Total.Value), fact.Amount("label", w.Label)}
	code := StepWeighInLabel
	if more := w.Line + w.Accessories; more != 0 {
		code = StepWeighIn
		values = append(values, fact.Amount("more", more))
	}
	k.add(code, values...)
}

func anyReading(r *Readings) bool {
	return slices.ContainsFunc(readingFields, func(f readingField) bool { return f.has(r) })
}

// spoiled: what keeps the machine from running as it usually does is mended first, and
// nothing else is built on what was read.
func (k *planner) spoiled() bool {
	if len(k.b.spoiled) == 0 {
		if k.s.moving() {
			k.add(StepSettle, fact.Of("wait", roundUp(k.s.steadiness.Course.Wait))).
				because(k.s.steadiness.Says)
		}
		return k.s.moving()
	}
	for _, o := range k.b.spoiled {
		if o.Code == "run-short" && k.stopped {
			continue
		}
		way := ways[o.Code]
		if way == StepMakersChart {
			mode := term("mode", k.mode.Mode.String())
			k.add(way, fact.Of("mode", mode)).because(o.Says)
			return true
		}
		values := waitOf(o.Says)
		if way == StepHouseRule {
			values = o.Says.Values
		}
		k.add(way, values...).because(o.Says)
		if way == StepThaw {
			k.add(StepWhyFroze)
		}
	}
	k.dirt()
	if slices.ContainsFunc(k.b.spoiled, func(o charge.Obstacle) bool { return o.WeighIn }) {
		w, want := weighing(k.p)
		if k.weighIn = w; w == nil {
			k.add(want)
		}
	}
	k.add(StepReadAgain)
	return true
}

// waitOf is how long a condition of time still lasts; none for another.
func waitOf(condition fact.Fact) []fact.Value {
	measured, _ := condition.Value("measured")
	limit, _ := condition.Value("limit")
	from, ok := measured.Of.(time.Duration)
	to, same := limit.Of.(time.Duration)
	if !ok || !same {
		return nil
	}
	return []fact.Value{fact.Of("wait", roundUp(to-from))}
}

// dirt that was seen is cleaned; there is nothing to find out about it.
func (k *planner) dirt() {
	c := &k.p.visit.Conditions
	if c.FilterDirty {
		k.add(StepCleanFilter)
	}
	if c.OutdoorCoilDirty {
		k.add(StepCleanOutdoor)
	}
}

// afterMove: nothing but waiting until readings later than the move are there.
func (k *planner) afterMove() {
	if k.movedMuch() {
		return
	}
	k.add(StepWait, fact.Of("wait", charge.WaitAfterMove())).
		because(fact.New("charge.read-before-move"))
	k.add(StepReadAgain)
}

// movedMuch: a good part of the whole charge has been moved, and the reading is not in band:
// something else is wrong.
func (k *planner) movedMuch() bool {
	net, whole := quantity.Mass(0), wholeCharge(k.p)
	for _, m := range k.p.visit.Moves {
		net += m.Added - m.Recovered
	}
	share := math.Abs(float64(net)) / float64(whole)
	if whole == 0 || share <= charge.MostMoved() || k.charge.Outcome == ChargeInBand && k.s.later {
		return false
	}
	if r := k.t.reading; r != nil && r.Deviation != nil &&
		max(r.Deviation.Value, -r.Deviation.Value) <= r.Tolerance {
		return false
	}
	k.add(StepHalt, fact.Of("share", fact.Share(share)))
	k.hold = append(k.hold, fact.New("charge.moved-much", fact.Of("share", fact.Share(share))))
	if net > 0 {
		k.leakPath()
		return true
	}
	if d := &k.b.Decision; len(d.Looks) > 0 {
		k.look(d.Looks[0])
	}
	k.add(StepRecoverRest)
	k.add(StepEvacuate)
	k.byWeight()
	return true
}

func wholeCharge(p *prepared) quantity.Mass {
	e := &p.visit.Equipment
	switch {
	case e.Label.Charge > 0:
		return e.Label.Charge
	case e.NominalCapacity > 0:
		return charge.EstimateCharge(e.NominalCapacity)
	}
	return 0
}

// byWeight ends a sequence with the charge to weigh in, or with what it lacks.
func (k *planner) byWeight() {
	w, want := weighing(k.p)
	if w != nil {
		k.weighInStep(w)
		return
	}
	k.add(want)
}

// waterFirst: where water is all there is, the drain is looked at before any gauge.
func (k *planner) waterFirst() bool {
	v := &k.p.visit
	if v.Complaint != WaterLeak || anyReading(&k.s.readings) {
		return false
	}
	for _, c := range v.Checks {
		if c.Look == drainLook {
			if c.Found {
				k.add(StepClearDrain)
				k.add(StepPourWater)
			}
			return c.Found
		}
	}
	k.put(Step{Do: fact.New("look." + drainLook), Look: drainLook})
	return true
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
		if !fieldNamed(name).has(&k.s.readings) {
			missing = append(missing, name)
		}
	}
	if k.p.visit.Complaint == NotCooling && len(missing) == 8 && k.p.electrical == nil {
		k.add(StepSeeRuns)
	}
	k.add(StepRunOn, fact.Of("wait", charge.ShortestRun()))
	k.add(StepRead, fact.Of("readings", readingTerms(missing)))
}

// unexplained: readings that cannot be true together, and no cause that says why, are taken
// again before anything is built on them.
func (k *planner) unexplained() bool {
	explained := k.b.present(diagnose.NextToEmpty, diagnose.NotPumping, diagnose.OtherRefrigerant)
	for _, l := range diagnose.WrongInstruments() {
		explained = explained || k.b.present(l.Signature)
	}
	if explained {
		return false
	}
	for _, x := range k.b.doubts {
		if beliefs[x.Weight] == Impossible ||
			k.b.Verdict == diagnose.Contradictory && beliefs[x.Weight] == Doubted {
			step := k.put(
				Step{Do: fact.New(fact.Code("doubt." + x.Code + ".mend")), Effect: Effect{}},
			)
			step.because(fact.New(fact.Code("doubt."+x.Code), x.Values...))
			k.add(StepReadAgain)
			return true
		}
	}
	if k.b.Verdict == diagnose.Contradictory {
		k.add(StepReread)
		return true
	}
	return false
}

// byBelief follows the decision: looks first, then the act, then what else is likely.
func (k *planner) byBelief() {
	d := &k.b.Decision
	k.dirt()
	if k.s.valve != nil {
		k.add(StepValveHunts).because(k.s.valve.Says)
	}
	dirty := k.has(StepCleanFilter, StepCleanOutdoor)
	// A reading is doubted before the machine is.
	for _, m := range k.b.Marginals() {
		if ofInstrument(m.Signature) && k.worthMending(m.Chance) && !k.lookedAt(m.Signature) {
			k.mend(m.Signature)
		}
	}
	for _, m := range d.Looks {
		k.look(m)
	}
	moves := d.Act == diagnose.Add || d.Act == diagnose.Recover
	switch {
	case k.b.present(diagnose.NextToEmpty):
		k.leakPath()
		return
	case moves && (dirty || len(d.Looks) > 0):
		if d.Act == diagnose.Add && len(d.Looks) == 0 { // dirt hides no leak
			if k.muchMissing() {
				k.leakPath()
				return
			}
			k.add(StepFindLeak)
		}
		k.holdFor(d, dirty)
		k.add(StepLeaveCharge)
	case moves && (k.p.visit.Scope == VerdictOnly || k.charge.Outcome == ChargeNotJudged):
		k.add(StepLeaveCharge)
	case d.Act == diagnose.Add:
		k.short()
	case d.Act == diagnose.Recover:
		k.over()
	case d.Act == diagnose.Mend && k.worthMending(d.Chance):
		k.mend(d.Signature)
	case len(d.Looks) == 0 && !dirty && k.s.valve == nil && k.b.Healthy >= worth:
		k.leave()
	}
	for _, m := range k.b.Marginals() {
		if k.worthMending(m.Chance) && !ofCharge(m.Signature) && m.Signature != d.Signature &&
			!k.lookedAt(m.Signature) &&
			!moves {
			k.mend(m.Signature)
		}
	}
	if !k.has(StepLeave, StepWait, StepEvacuate) {
		k.add(StepReadAgain)
	}
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
	k.put(
		Step{
			Do:     m.Fact(),
			Look:   lookCode(m),
			Field:  m.Field(),
			Effect: Effect{Running: m.Running()},
		},
	)
}

func lookCode(m *diagnose.Measurement) string {
	if m.Look() {
		return m.Code
	}
	return ""
}

// mend puts a cause right, by the name of its fault where one is likeliest by far.
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
	do, opens := fact.New(fact.Code("mend."+string(signature))), false
	if len(m.Faults) > 0 && (m.Faults[0].Chance >= 0.7 || len(m.Faults) == 1) {
		f := m.Faults[0].Fault
		opens = f.Opens
		if do = fact.New(fact.Code("mend." + string(f.Code))); f.Own {
			do = fact.New("mend.house",
				fact.Of("fault", string(f.Code)), fact.Of("house", f.Sources[0].Title))
		}
	}
	step := k.put(Step{
		Do:    do.With(fact.Of("chance", fact.Share(m.Chance))),
		Cause: string(signature), Chance: m.Chance, Effect: Effect{Opens: opens},
	})
	if dirt, ok := cleans[signature]; ok { // one step says it, with what may lie behind the dirt
		k.steps = slices.DeleteFunc(k.steps, func(s Step) bool { return s.Do.Code == dirt })
		return
	}
	step.because(k.b.findingFact(m))
}

// floods reports whether liquid is known to come back, whatever makes it.
func (k *planner) floods() bool {
	return slices.ContainsFunc(
		k.dangers, func(x Danger) bool { return x.Code == "floodback" || x.Code == "slugging" },
	)
}

// leave: nothing to do, and nothing more to read. A machine that liquid comes back to is not
// left before it is known why.
func (k *planner) leave() {
	if k.p.visit.Complaint == WaterLeak {
		k.add(StepOtherWater)
		return
	}
	if k.floods() {
		k.add(StepWhyLiquid)
		return
	}
	if r := k.t.reading; r == nil || k.charge.Outcome == ChargeInBand {
		k.add(StepLeave)
		return
	}
	k.add(StepLeaveCharge).because(k.t.reading.Says)
	if k.t.target != nil && k.t.target.General() {
		k.add(StepBackToTarget)
	}
}

// holdFor says why refrigerant is not moved yet.
func (k *planner) holdFor(d *diagnose.Decision, dirty bool) {
	if dirty {
		k.hold = append(k.hold, fact.New("charge.clean-first"))
	}
	if len(d.Looks) > 0 {
		k.hold = append(k.hold, fact.New("charge.look-first"))
	}
}

// muchMissing is the part of a charge from which topping up is no repair, muchGlide the
// glide from which a leak leaves another blend behind (common practice, no source).
const (
	muchMissing = 0.30
	muchGlide   = quantity.TemperatureDelta(3)
	anyMissing  = 0.10
)

// muchMissing: so much is missing that topping up is no repair, or has left another blend.
func (k *planner) muchMissing() bool {
	missing := -k.b.Charge.ErrorGivenLow.Mean
	glides := false
	if r := k.s.readings.SuctionPressure; r != nil {
		glide, err := k.p.fluid.Glide(k.p.absolute(*r).Value)
		glides = err == nil && glide > muchGlide
	}
	return missing >= muchMissing || glides && missing >= anyMissing
}

// short: the leak, then the dose where topping up is still honest.
func (k *planner) short() {
	if k.muchMissing() {
		k.leakPath()
		return
	}
	k.add(StepFindLeak)
	k.move(StepAdd, StepAddLittle)
}

// leakPath recovers, mends, tests, evacuates and weighs in, in that order.
func (k *planner) leakPath() {
	k.add(StepFindLeak)
	var rest []fact.Value
	if level, err := charge.RecoverTo(k.p.fluid, wholeCharge(k.p)); err == nil {
		rest = append(rest, fact.Amount("to", level.To))
	}
	k.add(StepRecoverRest, rest...)
	k.add(StepMendLeak)
	k.add(StepNitrogen)
	k.add(StepEvacuate)
	k.byWeight()
}

func (k *planner) over() { k.move(StepRecover, StepRecoverLittle) }

// move sizes the next dose by how this machine has answered so far, or by how much is
// believed to be missing where there is no target.
func (k *planner) move(sized, little fact.Code) {
	whole := wholeCharge(k.p)
	if whole == 0 {
		k.add(little)
		return
	}
	if k.t.target == nil || k.t.reading == nil {
		k.byShare(whole, sized, little)
		return
	}
	plan := charge.Dosing{
		Target: *k.t.target, History: moved(k.p, k.t), Obstacles: k.t.obstacles, Fluid: k.p.fluid,
		LabelCharge: k.p.visit.Equipment.Label.Charge, NominalCapacity: k.p.visit.Equipment.NominalCapacity,
	}
	if k.s.steadiness != nil {
		plan.Settling = k.s.steadiness.Course
	}
	dose, err := plan.Next()
	if err != nil {
		k.add(little)
		return
	}
	up := dose.Action == charge.Add
	switch {
	case dose.Action == charge.Halt && dose.Reason != "too-small":
		k.hold = append(k.hold, dose.Fact())
		k.put(Step{Do: dose.Fact()})
	case dose.Mass == 0 || up != (sized == StepAdd):
		// The reading is nearer to its target than the belief has the charge.
		k.byShare(whole, sized, little)
	default:
		k.dose = &dose
		step := k.add(sized, fact.Amount("mass", dose.Mass))
		// Behind a zero there may be any depth: then nothing is known of what will be read.
		if change := dose.After.Value - k.t.reading.Measured.Value; math.Abs(
			float64(change),
		) > dose.After.Std/2 {
			step.because(fact.New(
				"dose.expect", fact.Of("method", term("method", k.t.method.String())),
				fact.Measured("after", dose.After),
			))
		}
		k.add(StepWait, fact.Of("wait", roundUp(dose.Wait)))
	}
}

// byShare moves what is missing or too much with 95 % certainty, and at most a tenth of the
// charge.
func (k *planner) byShare(whole quantity.Mass, sized, little fact.Code) {
	const surely, most = 0.05, 0.10
	share := k.b.Charge.Quantile(surely)
	if sized == StepAdd {
		share = -k.b.Charge.Quantile(1 - surely)
	}
	ounces := math.Floor(min(share, most)*float64(whole)/float64(quantity.Ounces(1))*2) / 2
	if ounces < 1 {
		k.add(little)
	} else {
		k.add(sized, fact.Amount("mass", quantity.Ounces(ounces))).because(fact.New("dose.without-target"))
	}
	k.add(StepWait, fact.Of("wait", charge.WaitAfterMove()))
}

// moved pairs the net mass moved with where the reading had settled before the
// next move; intervals that the log does not show are left out.
func moved(p *prepared, t *targeted) []charge.Moved {
	var out []charge.Moved
	net, from := quantity.Mass(0), 0
	for _, m := range p.visit.Moves {
		to := from
		for to < len(p.log) && p.log[to].At <= m.At {
			to++
		}
		if to > from {
			if course, err := follow(p, thinned(p.log[from:to]), t.method); err == nil &&
				course.State != 0 {
				v := course.Value
				if course.State == charge.Settling { // it went on there, as far as can be told
					v = course.Estimate
				}
				v.Std = max(v.Std, t.reading.Measured.Std)
				out = append(out, charge.Moved{Net: net, Value: v})
			}
		}
		net += m.Added - m.Recovered
		from = to
	}
	return append(out, charge.Moved{Net: net, Value: t.reading.Measured})
}
