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
	coolRoom       = quantity.Temperature((60 + 459.67) / 1.8)
	mildOutdoor    = quantity.Temperature((70 + 459.67) / 1.8)
	noCooling      = quantity.Temperature((50 + 459.67) / 1.8) // outdoors, for houses
	coldEvaporator = quantity.Temperature((28 + 459.67) / 1.8)
	liquidFar      = quantity.TemperatureDelta(30 / 1.8)
	condensingFar  = quantity.TemperatureDelta(45 / 1.8)
	supplyWarmer   = quantity.TemperatureDelta(8 / 1.8)
)

var coldRoomFluids = []string{
	"R-404A", "R-507A", "R-448A", "R-449A", "R-452A", "R-454A", "R-455A", "R-408A", "R-402A",
	"R-502", "R-422A", "R-407A", "R-407F",
}

// houseFluids hardly ever keep a cold room; the others may.
var houseFluids = []string{"R-410A", "R-32", "R-454B", "R-452B", "R-466A"}

// findMode takes the mode that the visit states, or looks for it in the readings.
func findMode(p *prepared, r *Readings, d *Derived) ModeFound {
	if m := p.visit.Conditions.Mode; m != 0 {
		return ModeFound{m, true, fact.New("mode.stated", fact.Of("mode", term("mode", m.String())))}
	}
	if p.visit.Equipment.ColdRoom != (coldroom.Room{}) {
		return foundMode(Refrigeration, "mode.cold-room-named")
	}
	e := &p.visit.Equipment
	f := modeFinder{
		r: r, d: d, fluid: p.fluid.Designation(), metering: e.Metering, unsaid: e.Arrangement == 0,
		heatPump: e.Arrangement.reverses(),
	}
	if f.heatPump && p.visit.Complaint == NotHeating {
		return foundMode(Heating, "mode.not-heating")
	}
	for _, by := range []func() (ModeFound, bool){f.bySupply, f.byHead, f.byCold} {
		if found, ok := by(); ok {
			return found
		}
	}
	return foundMode(Cooling, "mode.assumed")
}

// A modeFinder looks for a mode in readings: in each of its ways, where that says any.
type modeFinder struct {
	r        *Readings
	d        *Derived
	fluid    string
	metering Metering
	// heatPump says that it is one, unsaid that nobody said what it is.
	heatPump, unsaid bool
}

func foundMode(m Mode, code fact.Code, values ...fact.Value) ModeFound {
	return ModeFound{Mode: m, Says: fact.New(code, values...)}
}

// bySupply: air that comes out warmer is heated, by a heat pump or by something else, or the two
// thermometers are exchanged: where nothing can heat, or it is warm and the return reads cold.
func (f *modeFinder) bySupply() (ModeFound, bool) {
	s, t := f.r.SupplyDryBulb.read(), f.r.ReturnDryBulb.read()
	if s == nil || t == nil || s.Value.Sub(t.Value) <= supplyWarmer {
		return ModeFound{}, false
	}
	m, o, e := Mode(0), f.r.OutdoorDryBulb.read(), f.d.EvaporatingDew
	if f.heatPump {
		m = Heating
	}
	if o != nil && e != nil && e.Value < t.Value && (o.Value >= mildOutdoor && t.Value < coolRoom ||
		!f.heatPump && !f.unsaid && o.Value >= noCooling) {
		return foundMode(Cooling, "mode.assumed"), true
	}
	return foundMode(
		m, "mode.supply-warm", fact.Amount("supply", s.Value), fact.Amount("return", t.Value),
	), true
}

// byHead: what is liquid far above the outdoor air was condensed indoors, unless it is as far above
// a room that gets colder air: a fan is dead. In the cold it may heat where nobody said.
func (f *modeFinder) byHead() (ModeFound, bool) {
	o, m := f.r.OutdoorDryBulb.read(), Mode(0)
	t, far, code, name := f.r.LiquidLine.read(), liquidFar, fact.Code("mode.liquid-warm"), "line"
	if t == nil {
		t, far, code, name = f.d.CondensingBubble, condensingFar, "mode.condensing-warm",
			"condensing"
	}
	if t == nil || o == nil || t.Value.Sub(o.Value) <= far {
		return ModeFound{}, false
	}
	room, air := f.r.ReturnDryBulb.of.Value, f.r.SupplyDryBulb.of.Value // 0 K where not read
	coldBox := room > 0 && room < coldRoom
	cools := air > 0 && room.Sub(air) > supplyWarmer && t.Value.Sub(room) > far
	switch cold := o.Value < noCooling; {
	case f.heatPump && cold:
		m = Heating
	case f.heatPump && o.Value < mildOutdoor && !cools, f.unsaid && cold && !coldBox:
	default:
		return ModeFound{}, false
	}
	return foundMode(m, code, fact.Amount(name, t.Value), fact.Amount("outdoor", o.Value)), true
}

// byCold: a room that is cold, or an evaporator that is where no room was read.
func (f *modeFinder) byCold() (ModeFound, bool) {
	if t := f.r.ReturnDryBulb.read(); t != nil {
		m := Refrigeration
		if t.Value >= coldRoom || slices.Contains(houseFluids, f.fluid) {
			m = 0 // a cool cellar, a house in the morning, another unit of temperature
		}
		return foundMode(m, "mode.cold-room", fact.Amount("return", t.Value)),
			t.Value < coldRoom || f.unsaid && t.Value < coolRoom && f.mayKeepCold()
	}
	t := f.d.EvaporatingDew
	if t == nil || t.Value >= coldEvaporator {
		return ModeFound{}, false
	}
	m := Mode(0)
	switch ofColdRooms := slices.Contains(coldRoomFluids, f.fluid); {
	case ofColdRooms && !f.heatPump:
		m = Refrigeration
	case !ofColdRooms && !(f.unsaid && f.mayKeepCold()):
		return ModeFound{}, false
	}
	return foundMode(
		m, "mode.cold-evaporator", fact.Amount("evaporating", t.Value), fact.Of("fluid", f.fluid),
	), true
}

// mayKeepCold says that it may be a machine of a cold room by its refrigerant and its metering:
// pistons meter into the coils of houses alone, and wet bulbs are read there.
func (f *modeFinder) mayKeepCold() bool {
	return !f.r.ReturnWetBulb.taken && f.metering != FixedRestrictor &&
		!slices.Contains(houseFluids, f.fluid)
}
