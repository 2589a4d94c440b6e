package heatpump

import (
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// mayFallShort is where a heat pump that is sound may give less than its house loses: common
// practice, no source.
var mayFallShort = quantity.Fahrenheit(40)

// withoutMend is for a machine that there is nothing to do about yet: what a customer complained
// of is looked at before it is left alone, and a charge in warm weather is one of cooling.
func (p *planner) withoutMend() {
	o := p.c.OutdoorDryBulb
	switch {
	case p.complained():
	case p.has("step.stop"):
	case p.liquidReturns():
	case o != nil && o.Value >= warmest && ofCharge(p.ranked[0].code):
		p.add(modes.Do("step.heating-change-over", fact.Amount("outdoor", o.Value)))
	case p.b.of(sound) < likely && p.seeOthers():
	case p.b.of(sound) >= worth && p.b.of(undercharge, overcharge) < likely:
		p.leave()
	default:
		p.chargeStays()
	}
}

// leave is for a machine that nothing is found wrong with.
func (p *planner) leave() {
	t := p.c.OutdoorDryBulb
	if p.c.Seen.NotCoolingComplaint && t != nil && t.Value < mayFallShort {
		p.add(modes.Do("step.heating-auxiliary", fact.Amount("outdoor", t.Value)))
	}
	if p.c.Complaint == "noise" {
		p.add(modes.Do(modes.FindNoise))
	}
	p.add(modes.Do("step.leave"))
}
