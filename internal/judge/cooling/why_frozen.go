package cooling

import (
	"errors"

	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// An Icing answers why a coil froze: the visit as it was read, the night outdoors and its
// room, each alone and together; then what may have been there beside, and what can be changed.
type Icing struct {
	AsRead, Outdoors, Room, Together Night
	Causes, Controls                 []IcingStep
}

// A Night is what the machine does in a scenario.
type Night struct {
	modes.Scenario
	modes.Outlook
}

// An IcingStep is one cause or control, and the night with it; nil for what changes nothing
// but that the machine stops. Surface is how much warmer the coil is for it.
type IcingStep struct {
	Code    string
	Night   *Night
	Surface quantity.TemperatureDelta
}

// WhyFrozen answers why a coil froze on a night. The error is that of Forecast.
func WhyFrozen(c *modes.Case, night modes.Scenario) (out Icing, err error) {
	m, err := fit(c)
	if err != nil {
		return out, err
	}
	outdoors, room := night, night
	outdoors.ReturnDryBulb, outdoors.ReturnWetBulb = 0, 0
	room.OutdoorDryBulb = 0
	out.AsRead.Name = "as read"
	out.Outdoors.Scenario, out.Room.Scenario, out.Together.Scenario = outdoors, room, night
	for _, n := range []*Night{&out.AsRead, &out.Outdoors, &out.Room, &out.Together} {
		if n.Outlook, err = m.Outlook(n.Scenario, cycle.Faults{}, c.Charge); err != nil {
			return out, err
		}
	}
	if out.Causes, err = out.weigh(c, m, causesOfIce(c, m, night)); err != nil {
		return out, err
	}
	out.Controls, err = out.weigh(c, m, controlsOfIce(c, m, night))
	return out, err
}

// A whatIf is a scenario with what has become of the machine in it.
type whatIf struct {
	code    string
	s       modes.Scenario
	changed cycle.Faults
}

// causesOfIce are of a size that is met often and missed by nobody who looks (common
// practice, no source).
func causesOfIce(c *modes.Case, m *fitted.Machine, night modes.Scenario) []whatIf {
	return []whatIf{
		{"filter", night, cycle.Faults{IndoorAirflow: -0.3}},
		{"indoor-coil", night, cycle.Faults{IndoorAirflow: -0.2, EvaporatorFouling: 0.3}},
		{"blower", night, cycle.Faults{IndoorAirflow: -0.4}},
		{"set-point", roomAt(c, m, night, -5/1.8), cycle.Faults{}},
		{"charge", night, cycle.Faults{Charge: -0.2}},
	}
}

// higherSetPoint is what a customer bears (common practice, no source).
const higherSetPoint = quantity.TemperatureDelta(3 / 1.8)

// heldHead is what a fan-cycling or fan-speed control holds the condensing temperature
// at in cool weather (common practice, no source).
const heldHead = quantity.Temperature((90 + 459.67) / 1.8)

func controlsOfIce(c *modes.Case, m *fitted.Machine, night modes.Scenario) []whatIf {
	var out []whatIf
	full := modes.FullAirflow(c.RatedAirflow, c.NominalCapacity)
	flow := full // the machine of the fit has the rated one where none was measured
	if m.Seen.Airflow != 0 {
		flow = m.Seen.Airflow
	}
	if float64(flow)*(1+m.Airflow()) < 0.95*float64(full) {
		airy := night
		airy.Airflow = full
		out = append(out, whatIf{code: "airflow", s: airy})
	}
	held := night
	held.HeadPressure = heldHead
	return append(out,
		whatIf{code: "set-point", s: roomAt(c, m, night, higherSetPoint)},
		whatIf{code: "head-pressure", s: held},
		whatIf{code: "freeze-thermostat"})
}

// roomAt is the night in a room that is warmer by so much, at the same relative
// humidity.
func roomAt(
	c *modes.Case, m *fitted.Machine, night modes.Scenario, warmer quantity.TemperatureDelta,
) modes.Scenario {
	dry, wet := night.ReturnDryBulb, night.ReturnWetBulb
	if dry == 0 {
		dry = m.Seen.ReturnDryBulb
	}
	if wet == 0 {
		wet = m.Seen.ReturnWetBulb
	}
	night.ReturnDryBulb, night.ReturnWetBulb = dry.Add(warmer), wet.Add(warmer)
	pressure := c.Site.Value
	air, err := psychro.FromWetBulb(dry, wet, pressure)
	if err != nil {
		return night
	}
	air, err = psychro.FromRelativeHumidity(night.ReturnDryBulb, air.RelativeHumidity(), pressure)
	if err == nil {
		night.ReturnWetBulb = air.WetBulb()
	}
	return night
}

// weigh asks what each would make of the night; one that leads beyond the range of the model
// is left out.
func (i *Icing) weigh(c *modes.Case, m *fitted.Machine, ifs []whatIf) ([]IcingStep, error) {
	var out []IcingStep
	for _, x := range ifs {
		if x.s == (modes.Scenario{}) {
			out = append(out, IcingStep{Code: x.code})
			continue
		}
		x.s.Name = x.code
		o, err := m.Outlook(x.s, x.changed, c.Charge)
		var far *quantity.RangeError
		if errors.As(err, &far) {
			continue
		}
		if err != nil {
			return nil, err
		}
		warmer := o.CoilSurface.Value.Sub(i.Together.CoilSurface.Value)
		out = append(out, IcingStep{Code: x.code, Night: &Night{x.s, o}, Surface: warmer})
	}
	return out, nil
}
