package cooling

import (
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

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
	if r := k.c.SuctionPressure; r != nil {
		glide, err := k.c.Fluid.Glide(r.Value.Absolute(k.c.Site.Value))
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
	k.Add(modes.FindLeak)
	k.move(modes.Add, modes.AddLittle)
}

// leakPath recovers, mends, tests, evacuates and weighs in, in that order.
func (k *planner) leakPath() {
	for _, step := range k.c.LeakPath() {
		k.Put(step)
	}
	k.j.WeighIn = k.c.Weighing
}

func (k *planner) over() { k.move(modes.Recover, modes.RecoverLittle) }

// move sizes the next dose by how this machine has answered so far, or by how much is
// believed to be missing where there is no target.
func (k *planner) move(sized, little fact.Code) {
	whole := k.c.WholeCharge
	if whole == 0 {
		k.Add(little)
		return
	}
	if k.c.Target == nil || k.c.Reading == nil {
		k.byShare(whole, sized, little)
		return
	}
	plan := charge.Dosing{
		Target: *k.c.Target, History: k.c.Answered(), Obstacles: k.c.Obstacles, Fluid: k.c.Fluid,
		LabelCharge: k.c.Charge, NominalCapacity: k.c.NominalCapacity,
	}
	if k.c.Course != nil {
		plan.Settling = *k.c.Course
	}
	dose, err := plan.Next()
	if err != nil {
		k.Add(little)
		return
	}
	up := dose.Action == charge.Add
	switch {
	case dose.Action == charge.Halt && dose.Reason != "too-small":
		k.hold = append(k.hold, dose.Fact())
		k.Put(modes.Step{Do: dose.Fact()})
	case dose.Mass == 0 || up != (sized == modes.Add):
		// The reading is nearer to its target than the belief has the charge.
		k.byShare(whole, sized, little)
	default:
		k.j.Dose = &dose
		step := k.Add(sized, fact.Amount("mass", dose.Mass))
		// Behind a zero there may be any depth: then nothing is known of what will be read.
		change := dose.After.Value - k.c.Reading.Measured.Value
		if math.Abs(float64(change)) > dose.After.Std/2 {
			step.Why = fact.New(
				"dose.expect", fact.Of("method", methodTerm(k.c.Method)),
				fact.Measured("after", dose.After),
			)
		}
		k.Add(modes.Wait, fact.Of("wait", modes.Minutes(dose.Wait)))
	}
}

// byShare moves what is missing or too much with 95 % certainty, and at most a tenth of the
// charge.
func (k *planner) byShare(whole quantity.Mass, sized, little fact.Code) {
	const surely, most = 0.05, 0.10
	share := k.b.Charge.Quantile(surely)
	if sized == modes.Add {
		share = -k.b.Charge.Quantile(1 - surely)
	}
	ounces := math.Floor(min(share, most)*float64(whole)/float64(quantity.Ounces(1))*2) / 2
	if ounces < 1 {
		k.Add(little)
	} else {
		k.j.Dose = &charge.Dose{
			Action: charge.Add, Mass: quantity.Ounces(ounces), Reason: "by-belief",
			Wait: charge.WaitAfterMove(),
		}
		if sized == modes.Recover {
			k.j.Dose.Action = charge.Recover
		}
		k.Add(sized, fact.Amount("mass", k.j.Dose.Mass)).Why = fact.New("dose.without-target")
	}
	k.Add(modes.Wait, fact.Of("wait", charge.WaitAfterMove()))
}
