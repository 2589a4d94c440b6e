package satline

import (
	"errors"

	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// An Icing answers why a coil froze. A coil that is sound by day freezes on a cool
// night in a room that has cooled down with it: the night and the room are
// answered together, and each alone for how much of it is whose.
type Icing struct {
	AsRead   Outlook `json:"asRead"`   // the weather and the room of the visit
	Outdoors Outlook `json:"outdoors"` // the night outdoors, the room of the visit
	Room     Outlook `json:"room"`     // the room of the night, the weather of the visit
	Together Outlook `json:"together"` // both
	// Causes are what may have been there that night beside the state of the visit, in
	// the order in which they are looked at: "filter", "indoor-coil", "blower",
	// "set-point", "charge". One that leads beyond the range of the model is left out.
	Causes []IcingStep `json:"causes"`
	// Controls are what can be changed, the mending of the airflow first: "airflow" where
	// it is below what is rated, "set-point", "head-pressure", "freeze-thermostat".
	Controls []IcingStep `json:"controls"`
}

// An IcingStep is one cause or control, and the night with it.
type IcingStep struct {
	Code string `json:"code"`
	// Outlook is nil for a freeze thermostat: it stops the compressor before ice
	// builds, and changes nothing else.
	Outlook *Outlook `json:"outlook,omitempty"`
	// Surface is how much warmer the coldest surface of the coil is for it than it is
	// that night without; below zero where it is colder.
	Surface quantity.TemperatureDelta `json:"surface"`
}

// WhyFrozen is Forecast for the question why the coil froze on a night, such as
// CoolNight: its outdoor air and its room, every cause on top of them, and every
// control against them. The error is that of Forecast.
func WhyFrozen(v Visit, night Scenario) (Icing, error) {
	p, fit, err := fittedOf(v)
	if err != nil {
		return Icing{}, err
	}
	var out Icing
	outdoors, room := night, night
	outdoors.ReturnDryBulb, outdoors.ReturnWetBulb = 0, 0
	room.OutdoorDryBulb = 0
	for _, c := range []struct {
		to *Outlook
		s  Scenario
	}{{&out.AsRead, Scenario{Name: "as read"}}, {&out.Outdoors, outdoors}, {&out.Room, room}, {&out.Together, night}} {
		if *c.to, err = outlookOf(p, fit, c.s, cycle.Faults{}); err != nil {
			return Icing{}, rangeProblem("night", err)
		}
	}
	if out.Causes, err = icing(p, fit, &out, causesOfIce(p, fit, night)); err != nil {
		return Icing{}, err
	}
	out.Controls, err = icing(p, fit, &out, controlsOfIce(p, fit, night))
	return out, err
}

// A whatIf is a scenario with what has become of the machine in it.
type whatIf struct {
	code    string
	s       Scenario
	changed cycle.Faults
}

// causesOfIce are of a size that is met often and missed by nobody who looks (common
// practice, no source).
func causesOfIce(p *prepared, fit *fitted.Machine, night Scenario) []whatIf {
	return []whatIf{
		{"filter", night, cycle.Faults{IndoorAirflow: -0.3}},
		{"indoor-coil", night, cycle.Faults{IndoorAirflow: -0.2, EvaporatorFouling: 0.3}},
		{"blower", night, cycle.Faults{IndoorAirflow: -0.4}},
		{"set-point", roomAt(p, fit, night, -5/1.8), cycle.Faults{}},
		{"charge", night, cycle.Faults{Charge: -0.2}},
	}
}

// higherSetPoint is what a customer bears (common practice, no source).
const higherSetPoint = quantity.TemperatureDelta(3 / 1.8)

// heldHead is what a fan-cycling or fan-speed control holds the condensing temperature
// at in cool weather (common practice, no source).
const heldHead = quantity.Temperature((90 + 459.67) / 1.8)

func controlsOfIce(p *prepared, fit *fitted.Machine, night Scenario) []whatIf {
	var out []whatIf
	e := &p.visit.Equipment
	full := modes.FullAirflow(e.Label.RatedAirflow, e.NominalCapacity)
	flow := full // the machine of the fit has the rated one where none was measured
	if fit.Seen.Airflow != 0 {
		flow = fit.Seen.Airflow
	}
	if float64(flow)*(1+fit.Airflow()) < 0.95*float64(full) {
		airy := night
		airy.Airflow = full
		out = append(out, whatIf{code: "airflow", s: airy})
	}
	held := night
	held.HeadPressure = heldHead
	return append(out,
		whatIf{code: "set-point", s: roomAt(p, fit, night, higherSetPoint)},
		whatIf{code: "head-pressure", s: held},
		whatIf{code: "freeze-thermostat"})
}

// roomAt is the night in a room that is warmer by so much, at the same relative
// humidity.
func roomAt(
	p *prepared, fit *fitted.Machine, night Scenario, warmer quantity.TemperatureDelta,
) Scenario {
	dry, wet := night.ReturnDryBulb, night.ReturnWetBulb
	if dry == 0 {
		dry = fit.Seen.ReturnDryBulb
	}
	if wet == 0 {
		wet = fit.Seen.ReturnWetBulb
	}
	night.ReturnDryBulb, night.ReturnWetBulb = dry.Add(warmer), wet.Add(warmer)
	pressure := p.atmosphere.Pressure.Value
	air, err := psychro.FromWetBulb(dry, wet, pressure)
	if err != nil {
		return night
	}
	if air, err = psychro.FromRelativeHumidity(night.ReturnDryBulb, air.RelativeHumidity(), pressure); err == nil {
		night.ReturnWetBulb = air.WetBulb()
	}
	return night
}

func icing(p *prepared, fit *fitted.Machine, of *Icing, ifs []whatIf) ([]IcingStep, error) {
	var out []IcingStep
	for _, x := range ifs {
		if x.s == (Scenario{}) {
			out = append(out, IcingStep{Code: x.code})
			continue
		}
		x.s.Name = x.code
		o, err := outlookOf(p, fit, x.s, x.changed)
		var far *quantity.RangeError
		if errors.As(err, &far) {
			continue
		}
		if err != nil {
			return nil, rangeProblem("night", err)
		}
		warmer := o.CoilSurface.Value.Sub(of.Together.CoilSurface.Value)
		out = append(out, IcingStep{Code: x.code, Outlook: &o, Surface: warmer})
	}
	return out, nil
}
