package electrical

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func (j *judge) control() {
	c := &j.r.Control
	rated := c.Rated
	if rated == 0 {
		rated = quantity.Volts(24)
	}
	least := rated * closesFrom
	source := rated
	if t := c.Transformer; t != nil {
		source = t.Value
		values := []fact.Value{fact.Amount("measured", t.Value), fact.Amount("low", least),
			fact.Amount("high", max(mostClassTwo, rated*1.25))}
		v := sureVolts(*t)
		switch at := sideOf(v, least, max(mostClassTwo, rated*1.25)); {
		case t.Value < rated/2:
			j.add(ControlPart, "electrical.control-dead", values...)
			return
		case at == below:
			j.add(ControlPart, "electrical.control-low", values...)
		case at == above:
			j.add(ControlPart, "electrical.control-high", values...)
		default:
			j.add(ControlPart, "electrical.control-within", values...)
		}
	}
	for _, s := range c.Across {
		j.across(s, source)
	}
	if c.Coil == nil {
		return
	}
	values := []fact.Value{fact.Amount("measured", c.Coil.Value), fact.Amount("low", least)}
	switch at := sideOf(sureVolts(*c.Coil), least, quantity.Voltage(most)); {
	case c.Coil.Value < rated/2:
		j.add(ControlPart, "electrical.coil-dead", values...)
	case at == below:
		j.add(ControlPart, "electrical.coil-low", values...)
	default:
		j.add(ControlPart, "electrical.coil-fed", values...)
	}
}

func (j *judge) across(s SwitchReading, source quantity.Voltage) {
	code := fact.Code("electrical.switch-closed")
	switch {
	case s.Voltage.Value >= openFrom*source:
		code = "electrical.switch-open"
	case s.Voltage.Value > closedWithin:
		code = "electrical.switch-poor"
	}
	j.add(ControlPart, code, termValue("switch", "switch."+s.Switch.String()),
		fact.Amount("measured", s.Voltage.Value))
	if code == "electrical.switch-open" {
		j.does(switchSteps[s.Switch])
	}
}

func (j *judge) contactor() {
	c := &j.r.Contactor
	fed := j.found(ControlPart, "electrical.coil-fed")
	if in := c.PulledIn; in != nil {
		switch {
		case *in && j.found(ControlPart, "electrical.coil-dead"):
			j.add(ContactorPart, "electrical.contactor-stuck")
		case *in:
			j.add(ContactorPart, "electrical.contactor-in")
		case fed:
			j.add(ContactorPart, "electrical.contactor-out",
				fact.Amount("measured", j.r.Control.Coil.Value))
		default:
			j.add(ContactorPart, "electrical.contactor-idle")
		}
	}
	if c.Pitted {
		j.add(ContactorPart, "electrical.contactor-pitted")
	}
	open := quantity.Voltage(openFrom) * max(j.r.Nameplate.Voltage, 100)
	for i, d := range c.Drops {
		code := fact.Code("electrical.contact-within")
		switch {
		case d.Value >= open:
			code = "electrical.contact-open"
		case d.Value >= burntDrop:
			code = "electrical.contact-burnt"
		case sideOf(sureVolts(d), 0, wornDrop) == above:
			code = "electrical.contact-worn"
		}
		j.add(ContactorPart, code, fact.Of("pole", i+1), fact.Amount("measured", d.Value),
			fact.Amount("limit", wornDrop))
	}
}
