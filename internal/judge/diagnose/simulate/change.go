package simulate

import (
	"fmt"
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// A Change is a machine with a fault to which refrigerant is added.
type Change struct {
	Signature diagnose.Code
	Size      float64
	Added     float64 // share of the label charge
}

// DrawChange makes the visit after the refrigerant was added, with the earlier
// readings in it, to a machine whose class is stated.
func DrawChange(rng *rand.Rand, x Change) (diagnose.Evidence, error) {
	for range attempts {
		m, err := drawMachine(rng, Options{Class: true})
		if err != nil {
			continue // a design that cannot be
		}
		weather := drawWeather(rng)
		faults := m.Own
		var v Visit
		v.Evidence = m.evidence()
		impose(rng, x.Signature, x.Size, &v, &faults)
		before, err := m.solve(weather, faults)
		if err != nil {
			return v.Evidence, err
		}
		faults.Charge += x.Added
		after, err := m.solve(weather, faults)
		if err != nil {
			return v.Evidence, err
		}
		if before.Limit != cycle.NoLimit || after.Limit != cycle.NoLimit {
			continue
		}
		earlier := v
		if err := earlier.readAndWrite(rng, m, weather, &before, faults); err != nil {
			return v.Evidence, err
		}
		if err := v.readAndWrite(rng, m, weather, &after, faults); err != nil {
			return v.Evidence, err
		}
		v.Evidence.Charge = m.System.Charge()
		v.Evidence.Earlier = &diagnose.Earlier{
			Input: earlier.Evidence.Input, Airflow: earlier.Evidence.Airflow,
			Power: earlier.Evidence.Power,
			Done: []diagnose.Action{
				{
					Kind: diagnose.ChargeAdded,
					Mass: quantity.Mass(x.Added * float64(m.System.Charge())),
				},
			},
		}
		return v.Evidence, nil
	}
	return diagnose.Evidence{}, fmt.Errorf("%s of %.2f: %w", x.Signature, x.Size, errStopped)
}

func (v *Visit) readAndWrite(
	rng *rand.Rand, m *machine, c cycle.Conditions, o *cycle.Operating, f cycle.Faults,
) error {
	w, err := readPorts(m, c, o, f)
	if err != nil {
		return err
	}
	return v.writeDown(rng, Options{Full: true}, m, w)
}

// A Frozen machine has a fault, or meets weather in °F, in which its coil ices.
type Frozen struct {
	Signature                             diagnose.Code
	Size                                  float64
	Outdoor, ReturnDryBulb, ReturnWetBulb float64
}

// icing is the dew temperature at which ice starts to build, the surface being
// some degrees warmer; common practice, no source.
var icing = quantity.Fahrenheit(29)

// DrawFrozen makes a visit to it, after the ice is gone; false where its coil
// stays above freezing after all, or the design drawn cannot be.
func DrawFrozen(rng *rand.Rand, x Frozen) (diagnose.Evidence, bool, error) {
	m, err := drawMachine(rng, Options{})
	if err != nil {
		return diagnose.Evidence{}, false, nil // a design that cannot be
	}
	weather := drawWeather(rng)
	if x.Outdoor > 0 {
		weather = cycle.Conditions{
			OutdoorDryBulb: quantity.Fahrenheit(x.Outdoor),
			ReturnDryBulb:  quantity.Fahrenheit(x.ReturnDryBulb),
			ReturnWetBulb:  quantity.Fahrenheit(x.ReturnWetBulb),
		}
	}
	faults := m.Own
	var v Visit
	v.Evidence = m.evidence()
	impose(rng, x.Signature, x.Size, &v, &faults)
	found, err := m.solve(weather, faults)
	if err != nil {
		return v.Evidence, false, err
	}
	if found.Limit != cycle.NoLimit || found.Evaporating > icing {
		return v.Evidence, false, nil
	}
	v.Evidence.Seen.FrozenComplaint = true
	return v.Evidence, true, v.readAndWrite(rng, m, weather, &found, faults)
}
