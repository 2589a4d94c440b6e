package cooling

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// mendWorth mends what is worth it, where no look in the plan answers for it first. What is
// not likely by itself waits for what is asked for or doubted, and for what opens no circuit.
func (k *planner) mendWorth(signature diagnose.Code, chance float64) {
	if !k.b.worthMending(chance) || k.lookedAt(signature) {
		return
	}
	reads := k.doubted() != "" || k.reads()
	switch unlikely := chance < likely; {
	case unlikely && (reads || k.opens(signature) && len(k.Steps) > 0):
	case (unlikely || signature == diagnose.Drain) && signature != k.secured &&
		k.seeFirst(signature):
	default:
		k.mend(signature)
	}
}

// reads says that a reading is in the plan.
func (k *planner) reads() bool {
	return slices.ContainsFunc(k.Steps, func(s modes.Step) bool { return s.Field != "" })
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
		do, effect.Opens = fact.New(code), effect.Opens || code == otherDrum
	}
	if do.Code == "mend.liquid-line-shut" && k.Has(modes.OpenValves) {
		return // which is done by now
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
		k.Steps = slices.DeleteFunc(k.Steps, func(s modes.Step) bool {
			return s.Do.Code == dirt || s.Do.Code == seen[signature]
		})
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
	leaks, felt := k.answer("reversing-valve")
	one := !k.c.HeatPump || felt && !leaks
	for _, x := range beyond {
		yes, done := k.answer(x.look)
		if x.way == way && done && yes == x.yes && (!x.split || one) && chance >= x.least {
			return x.then, true
		}
	}
	return "", false
}
