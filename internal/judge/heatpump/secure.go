package heatpump

import (
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// secures is what is looked at, with the machine stopped, about a danger; in heating the head
// is a matter of the indoor air.
var secures = map[string]struct {
	step        fact.Code
	look, cause string
}{
	"condensing-highest": {"step.heating-indoor-air", "indoor-air-path", lowIndoorAir},
	"suction-in-vacuum":  {step: modes.OpenValves},
	"current-highest":    {step: modes.Voltage},
}

func (p *planner) secure() {
	if d := p.j.Dangers.Stop(); d != nil {
		p.add(modes.Do(modes.Stop).Because(d.Says))
		switch by := secures[d.Code]; {
		case by.step == "":
		case by.look == "":
			p.add(modes.Do(by.step))
		case !answered(p.c, by.look):
			step := modes.Do(by.step)
			step.Look, p.secured = by.look, by.cause
			p.add(step)
		}
		return
	}
	if d := p.j.Dangers.Flood(); d != nil {
		p.add(modes.Do(modes.FeelCompressor).Because(d.Says))
	}
}

// liquidReturns asks what lets liquid come back, where it does, and reports whether it does: such a
// machine is not left as it is.
func (p *planner) liquidReturns() bool {
	if p.j.Dangers.Flood() == nil {
		return false
	}
	p.askFor("check-valves")
	p.askFor("valve-bulb")
	if p.c.Complaint == "noise" {
		p.add(modes.Do(modes.FindNoise))
	}
	p.chargeStays()
	return true
}
