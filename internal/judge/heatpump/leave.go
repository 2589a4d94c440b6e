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
	case p.has(modes.Stop):
	case p.liquidReturns():
	case o != nil && o.Value >= warmest && ofCharge(p.ranked[0].code):
		p.add(modes.Do("step.heating-change-over", fact.Amount("outdoor", o.Value)))
	case p.odd() && p.askFor("liquid-clamp-second"):
	case p.b.of(sound) < likely && p.seeOthers():
	case p.ranked[0].code == sound && p.b.of(undercharge, overcharge) < likely && !p.odd():
		p.leave()
	default:
		p.chargeStays()
	}
}

// odd says that the subcooling is beyond what makers' heating charts ask for, of a machine that is
// not likely to be sound: it is not left before a second clamp agrees, nor told that nothing is
// wrong.
func (p *planner) odd() bool {
	const least, most = quantity.TemperatureDelta(5 / 1.8), quantity.TemperatureDelta(20 / 1.8)
	m := p.c.Subcooling
	if m == nil || p.b.of(sound) >= likely {
		return false
	}
	doubt := quantity.TemperatureDelta(2 * m.Std)
	return m.Value+doubt < least || m.Value-doubt > most
}

// leave is for a machine that nothing is found wrong with.
func (p *planner) leave() {
	if p.c.Seen.ChargeWeighed && p.askFor("outdoor-coil") {
		return // what hid behind a wrong charge is seen before the caps are on
	}
	t := p.c.OutdoorDryBulb
	if p.c.Seen.NotCoolingComplaint && t != nil && t.Value < mayFallShort {
		p.add(modes.Do("step.heating-auxiliary", fact.Amount("outdoor", t.Value)))
	}
	if p.c.Complaint == "noise" {
		p.add(modes.Do(modes.FindNoise))
	}
	p.add(modes.Do(modes.Leave))
}
