package fitted

import (
	"math"
	"slices"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant/cycle"
)

// Outlook is what the machine will do in a scenario, with what has become of it by then; label
// is its whole charge, zero where that is not known. The error is a *quantity.RangeError or
// that of the model.
func (m *Machine) Outlook(
	s modes.Scenario, become cycle.Faults, label quantity.Mass,
) (modes.Outlook, error) {
	fitted, at, changed, err := m.under(s, label)
	if err != nil {
		return modes.Outlook{}, err
	}
	become.Charge += changed.Charge
	become.IndoorAirflow = (1+become.IndoorAirflow)*(1+changed.IndoorAirflow) - 1
	changed = become
	p, err := fitted.Predict(at, changed)
	if err != nil {
		return modes.Outlook{}, err
	}
	freeze, err := fitted.Freeze(at, changed)
	if err != nil {
		return modes.Outlook{}, err
	}
	o := modes.Outlook{
		Superheat:   Widened(p.Superheat, m.off.superheat),
		Subcooling:  Widened(p.Subcooling, m.off.subcooling),
		Evaporating: Widened(p.Evaporating, m.off.evaporating), Condensing: p.Condensing,
		CoilSurface: Widened(freeze.Surface, m.off.evaporating),
		Supply:      p.Supply, Capacity: p.NetCapacity, Believe: slices.Clone(m.Believe),
	}
	bySurface := normal.Below(
		-float64(o.CoilSurface.Value.Sub(airside.Freezing)) / o.CoilSurface.Std,
	)
	o.FreezeChance = max(bySurface, airside.IcingChance(o.Evaporating))
	for _, x := range p.Extrapolating {
		o.Extrapolating = append(o.Extrapolating, x.Fact())
	}
	o.Says = says(&o, freeze)
	return o, nil
}

// under is the fitted machine in a scenario: what holds its head pressure, the weather and
// the air, and how its charge has changed from that of the label.
func (m *Machine) under(
	s modes.Scenario, label quantity.Mass,
) (fitted *cycle.Fitted, at cycle.Conditions, changed cycle.Faults, err error) {
	fitted, at = m.fitted, m.Seen
	for _, c := range []struct {
		to   *quantity.Temperature
		from quantity.Temperature
	}{{&at.OutdoorDryBulb, s.OutdoorDryBulb}, {&at.ReturnDryBulb, s.ReturnDryBulb},
		{&at.ReturnWetBulb, s.ReturnWetBulb}} {
		if c.from != 0 {
			*c.to = c.from
		}
	}
	if s.Airflow != 0 { // all of it, whatever the fit took away
		at.Airflow = s.Airflow
		changed.IndoorAirflow = 1/(1+m.Airflow()) - 1
	}
	if s.Added != 0 {
		const least, most = -0.8, 1 // of the whole charge, as for cycle.Faults
		changed.Charge = fitted.ChargeChange(s.Added, label)
		if !(changed.Charge >= least && changed.Charge <= most) {
			perKilogram := fitted.ChargeChange(quantity.Kilograms(1), label)
			return nil, at, changed, &quantity.RangeError{
				Quantity: "refrigerant added", Value: s.Added,
				Min: quantity.Kilograms(least / perKilogram),
				Max: quantity.Kilograms(most / perKilogram),
				Advice: "what is recovered is negative; the model goes from 20 % of a charge to " +
					"twice as much",
			}
		}
	}
	if s.HeadPressure != 0 {
		low, high := quantity.Fahrenheit(50), quantity.Fahrenheit(150)
		if !(s.HeadPressure >= low && s.HeadPressure <= high) {
			return nil, at, changed, &quantity.RangeError{
				Quantity: "condensing temperature that the head is held at", Value: s.HeadPressure,
				Min: low, Max: high,
				Advice: "give the setting of the control as a saturation temperature, or 0 for " +
					"no control",
			}
		}
		fitted = fitted.WithHeadPressure(s.HeadPressure)
	}
	return fitted, at, changed, nil
}

// Airflow is the share by which the fit found more than was measured, or than is rated
// where nothing was.
func (m *Machine) Airflow() float64 {
	for _, u := range m.fitted.Unknowns() {
		if u.Name == "indoor airflow" {
			return u.Value
		}
	}
	return 0
}

// tellable is the widest standard uncertainty of a superheat or a surface by which
// anything is called likely.
const tellable = 4.0 // K

// says is the outlook in facts: whether the coil freezes first.
func says(o *modes.Outlook, freeze cycle.FreezeForecast) []fact.Fact {
	code := fact.Code("forecast.no-ice")
	switch {
	case o.CoilSurface.Std > tellable:
		code = "forecast.ice-too-wide"
	case o.FreezeChance > 0.9:
		code = "forecast.ice"
	case o.FreezeChance > 0.5:
		code = "forecast.ice-likely"
	case o.FreezeChance > 0.1:
		code = "forecast.ice-possible"
	}
	out := []fact.Fact{
		fact.New(code, fact.Of("chance", fact.Share(o.FreezeChance))),
		fact.New(
			"forecast.cold", fact.Measured("evaporating", o.Evaporating),
			fact.Measured("surface", o.CoilSurface),
		),
		fact.New(
			"forecast.state", fact.Measured("superheat", o.Superheat),
			fact.Measured("subcooling", o.Subcooling), fact.Measured("capacity", o.Capacity),
		),
	}
	if o.FreezeChance < 0.5 {
		if freeze.Outdoor != nil {
			out = append(
				out, fact.New("freeze.at-outdoor", fact.Amount("outdoor", *freeze.Outdoor)),
			)
		}
		if freeze.WetBulb != nil {
			out = append(
				out, fact.New("freeze.at-wet-bulb", fact.Amount("wetBulb", *freeze.WetBulb)),
			)
		}
		if freeze.Airflow != nil {
			out = append(
				out, fact.New("freeze.at-airflow", fact.Of("share", fact.Share(*freeze.Airflow))),
			)
		}
	}
	liquid := normal.Below(-float64(o.Superheat.Value) / o.Superheat.Std)
	switch {
	case o.Superheat.Std > tellable:
		out = append(out, fact.New("forecast.superheat-too-wide"))
	case liquid >= 0.1:
		out = append(out, fact.New("forecast.liquid", fact.Of("chance", fact.Share(liquid))))
	}
	return out
}

// Widened is a value that may be off by more, for reasons of their own: by what the fitted machine
// is off at the visit, since it will not be off by less elsewhere.
func Widened[T quantity.Quantity](u quantity.Uncertain[T], off ...float64) quantity.Uncertain[T] {
	for _, x := range off {
		u.Std = math.Hypot(u.Std, x)
	}
	return u
}
