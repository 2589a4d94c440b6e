package testbench

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
)

// leastCharge is the share of the right charge below which a machine does not run.
const leastCharge = 0.1

// ChargeError is by what share of the right charge the machine holds too much; negative
// where it is short.
func (m *Machine) ChargeError() float64 { return m.charge/m.right - 1 }

// Add moves refrigerant into the machine, or out of it where the mass is negative. Read it
// with Again.
func (v *Visit) Add(mass quantity.Mass) error {
	m := v.Machine
	if c := m.charge + float64(mass); math.IsNaN(c) || c < leastCharge*m.right {
		return fmt.Errorf("%.2f kg would leave %.2f of %.2f kg", float64(mass), c, m.right)
	}
	m.charge += float64(mass)
	action := diagnose.Action{Kind: diagnose.ChargeAdded, Mass: mass}
	if mass < 0 {
		action = diagnose.Action{Kind: diagnose.ChargeRecovered, Mass: -mass}
	}
	v.done = append(v.done, action)
	return nil
}

// Mend sets a cause right by its signature, as a filter changed or a wick wetted. It is false
// where the visit has no such cause, and for a wrong charge, which Add sets right.
func (v *Visit) Mend(signature diagnose.Code) bool {
	i := slices.IndexFunc(v.Truth, func(x Injected) bool { return x.Signature == signature })
	if i < 0 {
		return false
	}
	a := &v.Machine.ails
	action := diagnose.RestrictionRemoved
	switch signature {
	case diagnose.LowIndoorAir, diagnose.HighIndoorAir:
		a.indoorAir, a.indoorFoul = 1, 1
		action = diagnose.IndoorAirRestored
	case diagnose.ReturnLeak:
		a.returnLeak = 0
		action = diagnose.IndoorAirRestored
	case diagnose.CondenserAir:
		a.outdoorAir, a.outdoorFoul, a.recirculation = 1, 1, 0
		action = diagnose.OutdoorCoilCleaned
	case diagnose.Restriction:
		a.restriction, a.feed = 0, nothing.feed
	case diagnose.Overfeed:
		a.feed = nothing.feed
		action = diagnose.FeedReduced
	case diagnose.NonCondensables:
		a.gas, v.Machine.charge = 0, v.Machine.right
		action = diagnose.CircuitRecharged
	case diagnose.VaporLeak:
		a.leak, v.Machine.charge = 0, v.Machine.right
		action = diagnose.CircuitRecharged
	case diagnose.Undercharge, diagnose.Overcharge:
		return false
	default: // an instrument
		v.kit.lie, v.Instrument = nil, false
		v.Evidence.Fluid = v.Machine.fluid.refrigerant
		v.Evidence.Others = diagnose.Alternatives(v.Machine.fluid.refrigerant)
		v.Evidence.Atmosphere, v.Evidence.AtmosphereAssumed = v.Weather.Atmosphere, false
		v.Evidence.Input.Atmosphere = v.Weather.Atmosphere
		action = diagnose.InstrumentCorrected
	}
	v.Truth = slices.Delete(v.Truth, i, i+1)
	v.done = append(v.done, diagnose.Action{Kind: action})
	return true
}

// Again reads the machine anew once it has settled, with the instruments of the visit. The
// readings before what was done stand in the evidence as the earlier ones. The error is
// ErrNoOperation where it does not run steadily any more.
func (v *Visit) Again(rng *rand.Rand) error {
	o, err := v.Machine.Operate(v.Weather)
	if err != nil {
		return err
	}
	e := &v.Evidence
	e.Earlier = &diagnose.Earlier{Input: e.Input, Airflow: e.Airflow, Power: e.Power, Done: v.done}
	v.operation, v.done = o, nil
	v.note(v.kit.read(rng, o, v.Weather))
	return nil
}
