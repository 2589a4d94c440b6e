package cooling

import (
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// muchMissing is the part of a charge from which topping up is no repair, and anyMissing that of
// a blend with more glide than muchGlide, since a leak leaves another blend behind, and of what
// burns readily, whose leak is mended before anything is added (common practice, no source).
const (
	muchMissing = 0.30
	anyMissing  = 0.10
	muchGlide   = quantity.TemperatureDelta(3)
)

// muchMissing: so much is missing that topping up is no repair, has left another blend, or would
// feed a leak of what burns.
func (k *planner) muchMissing() bool {
	missing := -k.b.Charge.ErrorGivenLow.Mean
	glides := false
	if r := k.c.SuctionPressure; r != nil {
		glide, err := k.c.Fluid.Glide(r.Value.Absolute(k.c.Site.Value))
		glides = err == nil && glide > muchGlide
	}
	group := k.c.Fluid.SafetyGroup()
	burns := k.c.Fluid.Flammable() && group != refrigerant.A2L && group != refrigerant.B2L
	return missing >= muchMissing || (glides || burns) && missing >= anyMissing
}

// short: the leak, then the dose where topping up is still honest: no leak was found, and the
// machine may run.
func (k *planner) short() {
	if found, _ := k.answer(leakLook); found || k.muchMissing() || k.Stopped() {
		k.leakPath()
		return
	}
	k.findLeak()
	k.move(modes.Add, modes.AddLittle)
}

const leakLook = "oil-and-leak"

// findLeak looks for the leak, unless that was done. A machine that was never charged for all of
// its line may lack as much, or a good part of it, without one.
func (k *planner) findLeak() {
	if _, done := k.answer(leakLook); done {
		return
	}
	k.Add(modes.FindLeak).Why = k.orLine()
}

// orLine asks about a line that takes a good part of what is missing.
func (k *planner) orLine() fact.Fact {
	missing := -k.b.Charge.ErrorGivenLow.Mean * float64(k.c.WholeCharge)
	if w := k.c.Weighing; w != nil && float64(w.Line) > missing/4 {
		return fact.New("leak.or-line", fact.Amount("more", w.Line))
	}
	return fact.Fact{}
}

// leakPath recovers, mends, tests, evacuates and weighs in, in that order. A leak that was found
// is not looked for again; where a search found none, the test under pressure looks for it.
func (k *planner) leakPath() {
	found, searched := k.answer(leakLook)
	if searched && !found {
		k.weighAnew()
		return
	}
	for _, step := range k.c.LeakPath() {
		if !found || step.Do.Code != modes.FindLeak {
			k.Put(step)
		}
	}
	k.j.WeighIn = k.c.Weighing
}

// unsized is what is moved where nothing tells how much: common practice, no source.
var unsized = quantity.Ounces(3)

func (k *planner) over() { k.move(modes.Recover, modes.RecoverLittle) }

// move sizes the next dose by how this machine has answered so far, or by how much is
// believed to be missing where there is no target.
func (k *planner) move(sized, little fact.Code) {
	whole := k.c.WholeCharge
	if k.c.Charge == 0 && k.c.NetMoved == 0 {
		k.Add(modes.ReadLabel) // machines of one capacity differ by half in what they hold
	}
	if whole == 0 {
		k.Add(little, fact.Amount("mass", unsized))
		return
	}
	if k.c.Target == nil || k.c.Reading == nil {
		k.byShare(whole, sized, little)
		return
	}
	plan := dosing(k.c)
	plan.Most = k.share(whole, sized)
	if k.c.Course != nil {
		plan.Settling = *k.c.Course
	}
	dose, err := plan.Next()
	if err != nil {
		k.Add(little, fact.Amount("mass", unsized))
		return
	}
	up := dose.Action == charge.Add
	// What the method may not be read for, and what lies at its floor, the belief has weighed.
	weighed := dose.Reason == "forbidden" || dose.Reason == "no-response" && k.atFloor()
	switch {
	case dose.Action == charge.Halt && dose.Reason != "too-small" && !weighed:
		k.hold = append(k.hold, dose.Fact())
		k.Put(modes.Step{Do: dose.Fact()})
	case dose.Mass == 0 || up != (sized == modes.Add):
		// The reading is nearer to its target than the belief has the charge.
		k.byShare(whole, sized, little)
	default:
		k.j.Dose = &dose
		step := k.Add(sized, fact.Amount("mass", dose.Mass))
		// Behind a zero there may be any depth: then nothing is known of what will be read.
		change, why := dose.After.Value-k.c.Reading.Measured.Value, fact.Fact{}
		if math.Abs(float64(change)) > dose.After.Std/2 {
			why = fact.New(
				"dose.expect", fact.Of("method", methodTerm(k.c.Method)),
				fact.Measured("after", dose.After),
			)
		}
		step.Why = k.withClamp(why)
		k.Add(modes.Wait, fact.Of("wait", modes.Minutes(dose.Wait)))
	}
}

// withClamp is the reason of the first dose with the clamp to lay a hand on before, where one that
// lies is too unlikely to read again with another: common practice, no source.
func (k *planner) withClamp(why fact.Fact) fact.Fact {
	const least = 0.003
	for _, x := range clamps {
		lies := k.b.Probability(x.cause)
		if _, done := k.answer(x.look); lies >= least && !done && k.c.NetMoved == 0 {
			if why.IsZero() {
				why.Code = "dose.clamp-first"
			}
			return why.With(fact.Of("first", x.word))
		}
	}
	return why
}

func dosing(c *modes.Case) charge.Dosing {
	return charge.Dosing{
		Target: *c.Target, History: c.Answered(), Obstacles: c.Obstacles, Fluid: c.Fluid,
		LabelCharge: c.Charge, NominalCapacity: c.NominalCapacity,
	}
}

// features are those that the charge is read from, by method.
var features = map[charge.Method]signature.Feature{
	charge.Superheat: signature.Superheat, charge.Subcooling: signature.Subcooling,
	charge.Approach: diagnose.Approach,
}

// responseOf is that of the machine to what was moved; nil before anything was.
func responseOf(c *modes.Case) *diagnose.Response {
	if c.Target == nil || c.Reading == nil || c.ReadBeforeMove || c.WholeCharge == 0 {
		return nil
	}
	plan := dosing(c)
	if len(plan.History) < 2 {
		return nil
	}
	dose, err := plan.Next()
	if err != nil || dose.PerOunce.Value == 0 {
		return nil
	}
	ounces := c.WholeCharge.Ounces()
	return &diagnose.Response{Feature: features[c.Method], PerCharge: diagnose.Spread{
		Mean: ounces * float64(dose.PerOunce.Value), Std: ounces * dose.PerOunce.Std,
	}}
}

// byShare moves the part of the charge that is expected to cost least.
func (k *planner) byShare(whole quantity.Mass, sized, little fact.Code) {
	if mass := k.share(whole, sized); mass <= 0 {
		k.Add(little, fact.Amount("mass", unsized))
	} else {
		k.j.Dose = &charge.Dose{
			Action: charge.Add, Mass: mass, Reason: "by-belief", Wait: charge.WaitAfterMove(),
		}
		if sized == modes.Recover {
			k.j.Dose.Action = charge.Recover
		}
		step := k.Add(sized, fact.Amount("mass", k.j.Dose.Mass))
		step.Why = k.withClamp(fact.New("dose.without-target"))
	}
	k.Add(modes.Wait, fact.Of("wait", charge.WaitAfterMove()))
}

// seldomPast is how likely a dose may pass the right charge by what is believed of it, as a dose
// towards a target may: common practice, no source.
const seldomPast = 0.05

// share is the part of the charge that is expected to cost least, in half ounces. Where the reading
// that the charge is known by lies at its floor and has not answered to a move, it may come off it
// with the next ounce: then no more is moved than the band is wide, or than is surely too much,
// which floods the compressor as long as it is there.
func (k *planner) share(whole quantity.Mass, sized fact.Code) quantity.Mass {
	part := k.b.Charge.Dose(sized == modes.Add)
	if k.c.NetMoved != 0 && k.atFloor() {
		most := diagnose.ChargeBand
		if sized == modes.Recover {
			most = max(most, k.b.Charge.Quantile(seldomPast))
		}
		part = min(part, most)
	}
	return quantity.Ounces(math.Floor(2*part*whole.Ounces()) / 2)
}

// hardlyAny is a superheat at which drops reach the clamp: common practice, no source.
const hardlyAny = quantity.TemperatureDelta(5 / 1.8)

// atFloor says that no liquid leaves the condenser, or that liquid leaves the coil: how much is
// missing or too much then does not show.
func (k *planner) atFloor() bool {
	r := k.c.Reading
	if k.floods() || r == nil {
		return k.floods()
	}
	const coverage = 2
	least := quantity.TemperatureDelta(coverage * r.Measured.Std)
	return r.Measured.Value <= least || r.Method == charge.Superheat && r.Measured.Value <= hardlyAny
}
