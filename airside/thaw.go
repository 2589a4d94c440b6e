package airside

import (
	"encoding/json"
	"math"
	"time"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// heatOfFusion of ice at 0 °C, J/kg: IAPWS R10-06, Equation of State of Ice Ih
// (from memory: 333.43 kJ/kg).
const heatOfFusion = 333.43e3

// IceFrom returns the ice that a coil below freezing gathers: all the water that
// the air leaves on it, for as long as it ran. It overstates an old block of ice,
// for the ice shuts off the air that brings the water. It takes at most 30 days;
// the error is a *RangeError.
func IceFrom(condensate quantity.MassFlow, ran time.Duration) (quantity.Mass, error) {
	if err := limit.Within(
		"condensate", condensate, 0, 10, "it is the water the air leaves, see Capacity",
	); err != nil {
		return 0, err
	}
	if most := 30 * 24 * time.Hour; ran < 0 || ran > most {
		return 0, &RangeError{
			Quantity: "running time",
			Value:    ran,
			Min:      time.Duration(0),
			Max:      most,
			Advice:   "it is how long the coil was below freezing",
		}
	}
	return quantity.Mass(float64(condensate) * ran.Seconds()), nil
}

// Thaw is a coil to be thawed with the compressor off and the blower on.
type Thaw struct {
	// Ice on the coil: [IceFrom], or weighed by eye.
	Ice quantity.Mass `json:"ice"`
	// Return is the air that thaws it.
	Return psychro.Air `json:"return"`
	// Airflow is what the blower moves through a clear coil.
	Airflow quantity.VolumeFlow `json:"airflow"`
}

// A ThawTime is how long a coil takes to thaw.
type ThawTime struct {
	// Soonest is with a third of the airflow through the ice, as through frost
	// between the fins, Likely with a tenth of it, for a coil that is iced over,
	// and Latest with a thirtieth, for a solid block (common practice, no source:
	// half an hour to two hours is usual).
	Soonest time.Duration `json:"soonest"`
	Likely  time.Duration `json:"likely"`
	Latest  time.Duration `json:"latest"`
	// Water is what will run off: see that the drain takes it.
	Water quantity.Volume `json:"water"`
}

type thawTimeFields ThawTime

type thawTimeJSON struct {
	Soonest span.Span `json:"soonest"`
	Likely  span.Span `json:"likely"`
	Latest  span.Span `json:"latest"`
	thawTimeFields
}

// MarshalJSON writes the fields by their tags, and the times as "1h30m0s".
func (t ThawTime) MarshalJSON() ([]byte, error) {
	return json.Marshal(
		thawTimeJSON{
			span.Span(t.Soonest), span.Span(t.Likely), span.Span(t.Latest), thawTimeFields(t),
		},
	)
}

// UnmarshalJSON reads what MarshalJSON writes.
func (t *ThawTime) UnmarshalJSON(text []byte) error {
	var j thawTimeJSON
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*t = ThawTime(j.thawTimeFields)
	t.Soonest, t.Likely = time.Duration(j.Soonest), time.Duration(j.Likely)
	t.Latest = time.Duration(j.Latest)
	return nil
}

// Time returns how long the blower alone takes. Air passing the ice comes near
// to saturated air of 32 °F; what it gives up, moisture that condenses on the
// ice included, melts it. The error is a *RangeError where the air is too cold to
// melt anything.
func (t Thaw) Time() (ThawTime, error) {
	if err := checkPass(t.Return, t.Airflow, Freezing); err != nil {
		return ThawTime{}, err
	}
	if err := limit.Within("ice", t.Ice, 0, 1000, "it is the mass of ice on the coil"); err != nil {
		return ThawTime{}, err
	}
	if t.Airflow == 0 {
		return ThawTime{}, &RangeError{
			Quantity: "airflow",
			Value:    t.Airflow,
			Min:      quantity.CFM(1),
			Advice: "without the blower, warm the coil gently with room air; no flame, " +
				"no chipping",
		}
	}
	melted, err := psychro.Saturated(Freezing, t.Return.Pressure())
	if err != nil {
		return ThawTime{}, err
	}
	const approach = 0.8 // of the way to saturated air at 32 °F; common practice, no source
	heat := approach * float64(t.Return.DryAirFlow(t.Airflow)) *
		float64(t.Return.Enthalpy()-melted.Enthalpy())
	const least = quantity.Temperature(278.15)
	if err := limit.Within(
		"return air for thawing", t.Return.DryBulb(), least, hottestAir,
		"such air hardly melts ice: warm the space first",
	); err != nil {
		return ThawTime{}, err
	}
	if heat <= 0 {
		return ThawTime{}, &RangeError{
			Quantity: "enthalpy of the return air",
			Value:    t.Return.Enthalpy(),
			Min:      melted.Enthalpy(),
			Advice: "so dry and cold an air evaporates ice rather than melting it: " +
				"warm the space first",
		}
	}
	seconds := float64(t.Ice) * heatOfFusion / heat
	lasting := func(share float64) time.Duration {
		return time.Duration(math.Min(seconds/share, 1e9) * float64(time.Second)).Round(time.Second)
	}
	return ThawTime{
		Soonest: lasting(1. / 3), Likely: lasting(1. / 10), Latest: lasting(1. / 30),
		Water: quantity.Liters(t.Ice.Kilograms()),
	}, nil
}
