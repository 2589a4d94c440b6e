package satline

import (
	"slices"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// What tells the modes apart: rooms are kept above coldRoom; the liquid line of a machine
// that cools is near the outdoor air, that of one that heats near the room; and refrigerants
// of cold rooms seldom cool houses. Common practice, no source.
const (
	coldRoom       = quantity.Temperature((55 + 459.67) / 1.8)
	mildOutdoor    = quantity.Temperature((70 + 459.67) / 1.8)
	noCooling      = quantity.Temperature((50 + 459.67) / 1.8) // outdoors, for houses
	coldEvaporator = quantity.Temperature((28 + 459.67) / 1.8)
	liquidFar      = quantity.TemperatureDelta(30 / 1.8)
	supplyWarmer   = quantity.TemperatureDelta(8 / 1.8)
)

var coldRoomFluids = []string{
	"R-404A", "R-507A", "R-448A", "R-449A", "R-452A", "R-454A", "R-455A", "R-408A", "R-402A",
	"R-502", "R-422A", "R-407A", "R-407F",
}

// findMode takes the mode that the visit states, or looks for it in the readings.
func findMode(p *prepared, r *Readings, d *Derived) ModeFound {
	if m := p.visit.Conditions.Mode; m != 0 {
		says := fact.New("mode.stated", fact.Of("mode", term("mode", m.String())))
		return ModeFound{Mode: m, Stated: true, Says: says}
	}
	found := func(m Mode, code fact.Code, values ...fact.Value) ModeFound {
		return ModeFound{Mode: m, Says: fact.New(code, values...)}
	}
	if p.visit.Equipment.ColdRoom != (coldroom.Room{}) {
		return found(Refrigeration, "mode.cold-room-named")
	}
	heatPump := p.visit.Equipment.Arrangement == SplitHeatPump ||
		p.visit.Equipment.Arrangement == PackageHeatPump
	if s, t := r.SupplyDryBulb, r.ReturnDryBulb; s != nil && t != nil &&
		s.Value.Sub(t.Value) > supplyWarmer {
		m := Mode(0)
		if heatPump {
			m = Heating
		}
		return found(
			m, "mode.supply-warm", fact.Amount("supply", s.Value), fact.Amount("return", t.Value),
		)
	}
	if l, o := r.LiquidLine, r.OutdoorDryBulb; heatPump && l != nil && o != nil &&
		o.Value < mildOutdoor && l.Value.Sub(o.Value) > liquidFar {
		m := Mode(0)
		if o.Value < noCooling {
			m = Heating
		}
		return found(
			m, "mode.liquid-warm", fact.Amount("line", l.Value), fact.Amount("outdoor", o.Value),
		)
	}
	// Few houses are cooled in the cold: where nobody said what it is, it may heat.
	if l, o := r.LiquidLine, r.OutdoorDryBulb; p.visit.Equipment.Arrangement == 0 && l != nil &&
		o != nil && o.Value < noCooling && l.Value.Sub(o.Value) > liquidFar &&
		(r.ReturnDryBulb == nil || r.ReturnDryBulb.Value >= coldRoom) {
		return found(
			0, "mode.liquid-warm", fact.Amount("line", l.Value), fact.Amount("outdoor", o.Value),
		)
	}
	cold := d.EvaporatingDew != nil && d.EvaporatingDew.Value < coldEvaporator
	if t := r.ReturnDryBulb; t != nil && t.Value < coldRoom {
		return found(Refrigeration, "mode.cold-room", fact.Amount("return", t.Value))
	}
	if cold && r.ReturnDryBulb == nil && slices.Contains(coldRoomFluids, p.fluid.Designation()) {
		m := Refrigeration
		if heatPump {
			m = 0
		}
		return found(
			m, "mode.cold-evaporator", fact.Amount("evaporating", d.EvaporatingDew.Value),
			fact.Of("fluid", p.fluid.Designation()),
		)
	}
	return found(Cooling, "mode.assumed")
}
