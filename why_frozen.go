package satline

import (
	"github.com/satline/satline/internal/judge/cooling"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
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
	p, c, mode, err := caseToForetell(v)
	if err != nil {
		return Icing{}, err
	}
	if mode != Cooling {
		return Icing{}, notKnownToCool()
	}
	found, err := cooling.WhyFrozen(c, modes.Scenario(night))
	if err != nil {
		return Icing{}, foretold("night", err)
	}
	told := func(n cooling.Night) Outlook { return p.outlookOf(Scenario(n.Scenario), n.Outlook) }
	steps := func(of []cooling.IcingStep) []IcingStep {
		var out []IcingStep
		for _, x := range of {
			s := IcingStep{Code: x.Code, Surface: x.Surface}
			if x.Night != nil {
				s.Outlook = new(told(*x.Night))
			}
			out = append(out, s)
		}
		return out
	}
	return Icing{
		told(found.AsRead), told(found.Outdoors), told(found.Room), told(found.Together),
		steps(found.Causes), steps(found.Controls),
	}, nil
}
