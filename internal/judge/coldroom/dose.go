package coldroom

import (
	"math"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// muchGlide is the glide from which a leak leaves another blend behind, doseShare what is
// added or taken at a time (common practice, no source).
const (
	muchGlide = quantity.TemperatureDelta(3)
	doseShare = 0.05
)

// short finds the leak, mends it, and charges. Behind a receiver the glass and the level tell
// when it is enough, and a move is small; where the charge is critical, or the blend has
// changed, all of it is weighed in.
func (p *planner) short(add fact.Code) {
	p.add(modes.FindLeak)
	glides := false
	if c := p.c.SuctionPressure; c != nil {
		glide, err := p.c.Fluid.Glide(c.Value.Absolute(p.c.Atmosphere))
		glides = err == nil && glide > muchGlide
	}
	if p.k.usual.Receiver < 0.5 || glides {
		p.wholeCharge()
		return
	}
	p.add("step.cold-mend-leak")
	p.dose(add)
	p.add("step.cold-level")
}

// wholeCharge takes out what is left, mends the leak and weighs in all of it: where air may have
// come in, where the charge is critical, or where the blend has changed.
func (p *planner) wholeCharge() {
	p.add(modes.RecoverRest)
	p.add(modes.MendLeak)
	p.closed()
}

// closed tests, empties and charges a circuit that was open.
func (p *planner) closed() {
	p.add(modes.Nitrogen)
	p.add(modes.Evacuate)
	p.byWeight()
}

// gas comes out with all of the charge only.
func (p *planner) gas() {
	p.add(modes.RecoverRest)
	p.add("step.cold-new-drier").Opens = true
	p.add(modes.Evacuate)
	p.byWeight()
}

// dose is a small share of the label's charge, where that is known.
func (p *planner) dose(code fact.Code) {
	if whole := p.c.Charge; whole > 0 {
		ounces := math.Max(1, math.Round(doseShare*float64(whole)/float64(quantity.Ounces(1))))
		p.add(code, fact.Amount("mass", quantity.Ounces(ounces)))
		return
	}
	p.add(code + "-share")
}

func (p *planner) over() {
	if p.stopped() {
		p.dose("step.cold-recover-standing")
		return
	}
	p.dose("step.cold-recover")
}

// byWeight weighs in the label's charge, else what the glass and the receiver ask for, or the
// frost on the coil where there is neither.
func (p *planner) byWeight() {
	receiver := p.k.usual.Receiver >= 0.5
	switch {
	case p.c.Charge <= 0 && receiver:
		p.add("step.cold-weigh-glass")
	case p.c.Charge <= 0:
		p.add("step.cold-weigh-frost")
	case p.c.Weighing == nil:
		p.add(modes.WeighInLabel, fact.Amount("label", p.c.Charge))
	default:
		p.weighIn = p.c.Weighing
		p.steps = append(p.steps, p.c.WeighIn())
	}
	if receiver {
		p.add("step.cold-start-level")
		return
	}
	p.add("step.cold-start-frost")
}
