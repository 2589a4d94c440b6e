package satline

import (
	"slices"

	"github.com/satline/satline/internal/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Mode is how a machine is operated.
type Mode int

// The modes.
const (
	// Cooling: the indoor coil cools the air of rooms.
	Cooling Mode = iota + 1
	// Heating: a heat pump whose indoor coil condenses.
	Heating
	// Refrigeration: a cold room, a cooler or a freezer.
	Refrigeration
)

var modeNames = []string{notStated, "cooling", "heating", "refrigeration"}

// String returns the mode as the JSON form writes it.
func (m Mode) String() string { return enum.Name(modeNames, m) }

// MarshalText implements encoding.TextMarshaler.
func (m Mode) MarshalText() ([]byte, error) { return enum.Text("mode", modeNames, m) }

// UnmarshalText reads the names that String writes.
func (m *Mode) UnmarshalText(text []byte) error { return enum.Parse("mode", modeNames, text, m) }

// ModeFound is the mode that a machine is taken to run in.
type ModeFound struct {
	// Mode is the one stated, else the one that the readings show; the zero Mode where they
	// are in doubt, and then the first step asks.
	Mode   Mode      `json:"mode"`
	Stated bool      `json:"stated,omitzero"`
	Says   fact.Fact `json:"says"`
}

// What tells the modes apart: rooms are kept above coldRoom; the liquid line of a machine
// that cools is near the outdoor air, that of one that heats near the room; and refrigerants
// of cold rooms seldom cool houses. Common practice, no source.
const (
	coldRoom       = quantity.Temperature((55 + 459.67) / 1.8)
	mildOutdoor    = quantity.Temperature((70 + 459.67) / 1.8)
	coldEvaporator = quantity.Temperature((28 + 459.67) / 1.8)
	liquidFar      = quantity.TemperatureDelta(30 / 1.8)
	supplyWarmer   = quantity.TemperatureDelta(8 / 1.8)
)

var coldRoomFluids = []string{
	"R-404A", "R-507A", "R-448A", "R-449A", "R-452A", "R-454A", "R-455A", "R-408A", "R-402A", "R-502", "R-422A", "R-407A", "R-407F",
}

// findMode takes the mode that the visit states, or looks for it in the readings.
func findMode(p *prepared, r *Readings, d *Derived) ModeFound {
	if m := p.visit.Conditions.Mode; m != 0 {
		return ModeFound{Mode: m, Stated: true, Says: fact.New("mode.stated", fact.Of("mode", term("mode", m.String())))}
	}
	found := func(m Mode, code fact.Code, values ...fact.Value) ModeFound {
		return ModeFound{Mode: m, Says: fact.New(code, values...)}
	}
	heatPump := p.visit.Equipment.Arrangement == SplitHeatPump || p.visit.Equipment.Arrangement == PackageHeatPump
	if s, t := r.SupplyDryBulb, r.ReturnDryBulb; s != nil && t != nil && s.Value.Sub(t.Value) > supplyWarmer {
		m := Mode(0)
		if heatPump {
			m = Heating
		}
		return found(m, "mode.supply-warm", fact.Amount("supply", s.Value), fact.Amount("return", t.Value))
	}
	if l, o := r.LiquidLine, r.OutdoorDryBulb; heatPump && l != nil && o != nil && o.Value < mildOutdoor && l.Value.Sub(o.Value) > liquidFar {
		return found(0, "mode.liquid-warm", fact.Amount("line", l.Value), fact.Amount("outdoor", o.Value))
	}
	cold := d.EvaporatingDew != nil && d.EvaporatingDew.Value < coldEvaporator
	if t := r.ReturnDryBulb; t != nil && t.Value < coldRoom {
		return found(Refrigeration, "mode.cold-room", fact.Amount("return", t.Value))
	}
	if cold && r.ReturnDryBulb == nil && slices.Contains(coldRoomFluids, p.fluid.Designation()) {
		return found(0, "mode.cold-evaporator", fact.Amount("evaporating", d.EvaporatingDew.Value), fact.Of("fluid", p.fluid.Designation()))
	}
	return found(Cooling, "mode.assumed")
}

// term is the code of a word of a vocabulary.
func term(vocabulary, code string) fact.Term { return fact.Term(vocabulary + "." + code) }
