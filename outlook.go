package satline

import (
	"fmt"
	"math"
	"strings"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/normal"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// outlook is what the fitted machine will do in a scenario.
func (j *job) outlook(fit *fitting, s Scenario) (Outlook, error) {
	fitted, at, changed, err := fit.under(s, j.visit.Equipment.Label.Charge)
	if err != nil {
		return Outlook{}, err
	}
	p, err := fitted.Predict(at, changed)
	if err != nil {
		return Outlook{}, err
	}
	freeze, err := fitted.Freeze(at, changed)
	if err != nil {
		return Outlook{}, err
	}
	o := Outlook{
		Scenario: s, Superheat: widened(p.Superheat, fit.off.superheat), Subcooling: widened(p.Subcooling, fit.off.subcooling),
		Evaporating: widened(p.Evaporating, fit.off.evaporating), Condensing: p.Condensing,
		CoilSurface: widened(freeze.Surface, fit.off.evaporating), Supply: p.Supply, Capacity: p.NetCapacity, Believe: fit.believe,
	}
	bySurface := normal.Below(-float64(o.CoilSurface.Value.Sub(airside.Freezing)) / o.CoilSurface.Std)
	byRule := airside.IcingChance(o.Evaporating)
	o.FreezeChance = max(bySurface, byRule)
	for _, x := range p.Extrapolating {
		o.Extrapolating = append(o.Extrapolating, x.Text(j.visit.Units))
	}
	now := at == fit.seen && changed == (cycle.Faults{}) && s.HeadPressure == 0
	o.Says = j.says(&o, freeze, bySurface, byRule, now)
	return o, nil
}

// under is the fitted machine in a scenario: what holds its head pressure, the weather and
// the air, and how its charge has changed from that of the label.
func (fit *fitting) under(s Scenario, label quantity.Mass) (fitted *cycle.Fitted, at cycle.Conditions, changed cycle.Faults, err error) {
	fitted, at = fit.machine, fit.seen
	for _, c := range []struct {
		to   *quantity.Temperature
		from quantity.Temperature
	}{{&at.OutdoorDryBulb, s.OutdoorDryBulb}, {&at.ReturnDryBulb, s.ReturnDryBulb}, {&at.ReturnWetBulb, s.ReturnWetBulb}} {
		if c.from != 0 {
			*c.to = c.from
		}
	}
	if s.Airflow != 0 {
		at.Airflow = s.Airflow
	}
	if s.Added != 0 {
		const least, most = -0.6, 1 // of the whole charge, as for cycle.Faults
		changed.Charge = fitted.ChargeChange(s.Added, label)
		if !(changed.Charge >= least && changed.Charge <= most) {
			perKilogram := fitted.ChargeChange(quantity.Kilograms(1), label)
			return nil, at, changed, &quantity.RangeError{Quantity: "refrigerant added", Value: s.Added, Min: quantity.Kilograms(least / perKilogram), Max: quantity.Kilograms(most / perKilogram), Advice: "what is recovered is negative; the model goes from 40 % of a charge to twice as much"}
		}
	}
	if s.HeadPressure != 0 {
		if low, high := quantity.Fahrenheit(50), quantity.Fahrenheit(150); !(s.HeadPressure >= low && s.HeadPressure <= high) {
			return nil, at, changed, &quantity.RangeError{Quantity: "condensing temperature that the head is held at", Value: s.HeadPressure, Min: low, Max: high, Advice: "give the setting of the control as a saturation temperature, or 0 for no control"}
		}
		fitted = fitted.WithHeadPressure(s.HeadPressure)
	}
	return fitted, at, changed, nil
}

// says is the outlook in sentences, with what was measured beside it where it is of the
// machine as it runs now.
func (j *job) says(o *Outlook, freeze cycle.FreezeForecast, bySurface, byRule float64, now bool) []string {
	sys, d := j.visit.Units, &j.derived
	beside := func(have bool, measured string) string {
		if !now || !have {
			return ""
		}
		return " (measured " + measured + ")"
	}
	boils := "the refrigerant boils at " + o.Evaporating.Format(sys) + beside(d.EvaporatingDew != nil, formatted(d.EvaporatingDew, sys))
	coldest := "the coldest surface of the coil is at " + o.CoilSurface.Format(sys)
	out := []string{fmt.Sprintf("%s: the chance of ice on the coil is %s", willFreeze(o.FreezeChance), normal.Percent(o.FreezeChance))}
	if o.FreezeChance < 0.01 {
		out = append(out, boils, coldest)
	} else {
		out = append(out,
			fmt.Sprintf("%s: by %s, the chance is %s", boils, airside.IcingText(sys), normal.Percent(byRule)),
			fmt.Sprintf("%s: the chance that it is below freezing is %s", coldest, normal.Percent(bySurface)))
	}
	out = append(out,
		fmt.Sprintf("superheat %s%s, subcooling %s%s, capacity %s",
			o.Superheat.Format(sys), beside(d.Superheat != nil, formatted(d.Superheat, sys)),
			o.Subcooling.Format(sys), beside(d.Subcooling != nil, formatted(d.Subcooling, sys)), rounded(o.Capacity, sys).Format(sys)))
	if o.FreezeChance < 0.5 {
		out = append(out, surfaceFreezes(freeze, sys)...)
	}
	if liquid := normal.Below(-float64(o.Superheat.Value) / o.Superheat.Std); o.Superheat.Value <= 0 {
		out = append(out, "no superheat is left there: liquid is likely to come back to the compressor")
	} else if liquid >= 0.1 {
		out = append(out, "the chance that liquid comes back to the compressor there is "+normal.Percent(liquid))
	}
	if len(o.Extrapolating) > 0 {
		var far []string
		for _, text := range o.Extrapolating {
			far = append(far, strings.TrimSuffix(text, thanSeen))
		}
		out = append(out, "far from what was seen, and the more uncertain for it: "+listed(far)+thanSeen)
	}
	return out
}

// thanSeen is how a departure from the visit ends.
const thanSeen = " than at the visit"

// willFreeze answers the question of a forecast.
func willFreeze(chance float64) string {
	switch {
	case chance > 0.9:
		return "it will freeze"
	case chance > 0.5:
		return "it will probably freeze"
	case chance > 0.1:
		return "it may freeze"
	}
	return "it is not likely to freeze"
}

// surfaceFreezes says what would bring the coldest surface to freezing.
func surfaceFreezes(freeze cycle.FreezeForecast, sys quantity.System) []string {
	var at []string
	if freeze.Outdoor != nil {
		at = append(at, freeze.Outdoor.Format(sys)+" outdoors")
	}
	if freeze.WetBulb != nil {
		at = append(at, "a return wet bulb of "+freeze.WetBulb.Format(sys))
	}
	if freeze.Airflow != nil {
		at = append(at, fmt.Sprintf("%.0f %% of this airflow", 100**freeze.Airflow))
	}
	switch len(at) {
	case 0:
		return nil
	case 1:
		return []string{"all else as here, " + at[0] + " would bring that surface to freezing"}
	}
	return []string{"all else as here, any one of these would bring that surface to freezing: " + listed(at)}
}

func formatted[T quantity.Quantity](u *quantity.Uncertain[T], sys quantity.System) string {
	if u == nil {
		return ""
	}
	return u.Value.Format(sys)
}

// rounded shows a power to the place of its uncertainty.
func rounded(u quantity.Uncertain[quantity.Power], sys quantity.System) quantity.Uncertain[quantity.Power] {
	unit := float64(quantity.Watts(1))
	if sys == quantity.IP {
		unit = float64(quantity.BtuPerHour(1))
	}
	step := unit * math.Pow(10, math.Floor(math.Log10(max(u.Std/unit, 1))))
	return quantity.Uncertain[quantity.Power]{Value: quantity.Power(to(float64(u.Value), step)), Std: to(u.Std, step)}
}

// widened is a value whose uncertainty covers what the fitted machine is off by at the
// visit: it will not be off by less elsewhere.
func widened[T quantity.Quantity](u quantity.Uncertain[T], off float64) quantity.Uncertain[T] {
	u.Std = math.Hypot(u.Std, off)
	return u
}
