package satline

import (
	"cmp"
	"errors"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/cooling"
	"github.com/satline/satline/internal/judge/modes"
)

// aim chooses the method of the machine and holds its reading against its target. It judges
// nothing: the belief does.
func aim(p *prepared, s *settled, d *Derived, mode Mode) (modes.Aim, error) {
	situation := situationOf(p, s, d, mode)
	method, obstacles := charge.ChooseMethod(situation)
	if method == charge.WeighIn {
		method = charge.MethodFor(situation.Metering)
	}
	t := modes.Aim{Method: method, Obstacles: append(obstacles, p.visit.House.holds(method)...)}
	if mode != Cooling || !modes.OfComfort(p.fluid) {
		return t, nil
	}
	if t.Wanting = wanting(p, &s.readings, method); len(t.Wanting) > 0 {
		return t, nil
	}
	measured, err := charge.NewMeasurement(
		method, *ofMethod(method, d.Superheat, d.Subcooling, d.Approach),
	)
	var tooWide *charge.RangeError
	switch {
	case errors.As(err, &tooWide) && len(p.log) > 0: // the log goes up and down too far for now
		t.Wanting = slices.Clone(modes.MethodReadings(method))
		return t, nil
	case err != nil:
		return t, rangeProblem("readings."+modes.MethodReadings(method)[0], err)
	}
	t.Reading = &modes.Reading{Method: method, Measured: measured.Value}
	target, err := targetOf(&p.visit, &s.readings, method)
	var notNow *charge.NotNowError
	switch {
	case errors.As(err, &notNow):
		t.Obstacles = appendObstacle(t.Obstacles, notNow.Obstacle())
		t.Reading.Says = charge.Verdict{Method: method, Measured: measured}.Fact()
		return t, nil
	case err != nil:
		return t, rangeProblem("equipment.label", err)
	}
	t.Target = &target
	verdict, err := charge.Judge(measured, target)
	if err != nil {
		return t, rangeProblem("readings."+modes.MethodReadings(method)[0], err)
	}
	r := t.Reading
	r.Target, r.Tolerance, r.Deviation = &target.Value, target.Tolerance, &verdict.Deviation
	r.TargetSource, r.ToleranceSource = target.Source, target.ToleranceSource
	r.Says = verdict.Fact()
	return t, nil
}

func appendObstacle(all []charge.Obstacle, o charge.Obstacle) []charge.Obstacle {
	if slices.ContainsFunc(all, func(x charge.Obstacle) bool { return x.Code == o.Code }) {
		return all
	}
	return append(slices.Clip(all), o)
}

// wanting names the readings that a method needs and the visit does not have.
func wanting(p *prepared, r *Readings, m charge.Method) []string {
	var out []string
	for _, name := range modes.MethodReadings(m) {
		ofTarget := name == "returnWetBulb" || name == "outdoorDryBulb"
		if m == charge.Superheat && ofTarget && p.visit.stated(m) != nil {
			continue
		}
		if name == "liquidPressure" && r.DischargePressure.taken {
			continue
		}
		i := slices.IndexFunc(readingFields, func(f readingField) bool { return f.name == name })
		if !readingFields[i].has(r) {
			out = append(out, name)
		}
	}
	return out
}

// ofLabel is the target on the label; nil where it has none.
func (v *Visit) ofLabel(m charge.Method) *deltaReading {
	l := &v.Equipment.Label
	return ofMethod(m, l.Superheat, l.Subcooling, l.Approach)
}

// stated is the target of the label, or else of the house.
func (v *Visit) stated(m charge.Method) *deltaReading {
	return cmp.Or(v.ofLabel(m), v.House.target(m))
}

// targetOf is that of the label, else of the house, else of the trade, with the tolerance
// that the label states for its own, else that of the house.
func targetOf(v *Visit, r *Readings, m charge.Method) (t charge.Target, err error) {
	stated := v.stated(m)
	switch {
	case m == charge.Superheat && stated != nil:
		t, err = charge.SuperheatTarget(stated, temperatureReading{}, temperatureReading{})
	case m == charge.Superheat:
		t, err = charge.SuperheatTarget(nil, r.ReturnWetBulb.of, r.OutdoorDryBulb.of)
	case m == charge.Subcooling:
		t, err = charge.SubcoolingTarget(stated)
	default:
		t, err = charge.ApproachTarget(stated)
	}
	if err != nil {
		return t, err
	}
	if stated != nil && v.ofLabel(m) == nil {
		t.Source = v.House.source()
	}
	switch label := &v.Equipment.Label; {
	case label.Tolerance != 0 && v.ofLabel(m) != nil:
		return t.WithTolerance(label.Tolerance, t.Source)
	case v.House != nil && v.House.Tolerance != 0:
		return t.WithTolerance(v.House.Tolerance, v.House.source())
	}
	return t, nil
}

func situationOf(p *prepared, s *settled, d *Derived, mode Mode) charge.Situation {
	v, r, c := &p.visit, &s.readings, &p.visit.Conditions
	return charge.Situation{
		Metering:            v.Equipment.Metering,
		Fluid:               p.fluid,
		LabelSuperheat:      v.stated(charge.Superheat) != nil,
		LabelSubcooling:     v.stated(charge.Subcooling) != nil,
		LabelApproach:       v.stated(charge.Approach) != nil,
		OutdoorDryBulb:      r.OutdoorDryBulb.read(),
		ReturnDryBulb:       r.ReturnDryBulb.read(),
		ReturnWetBulb:       r.ReturnWetBulb.read(),
		Superheat:           d.Superheat,
		Subcooling:          d.Subcooling,
		Airflow:             r.Airflow.read(),
		NominalCapacity:     v.Equipment.NominalCapacity,
		Running:             c.Running,
		SinceMove:           s.since,
		Heating:             mode == Heating,
		CoilWet:             c.CoilWet,
		PanelsOff:           c.PanelsOff,
		DoorsOpen:           c.DoorsOpen,
		EconomizerOpen:      c.EconomizerOpen,
		CoilIced:            v.coilIced(),
		FilterDirty:         c.FilterDirty,
		OutdoorCoilDirty:    c.OutdoorCoilDirty,
		SealedSystemOpened:  c.opened(),
		CondenserFanCycling: c.CondenserFanCycling,
	}
}

// coilIced says that ice was seen, before or by the look that was asked for.
func (v *Visit) coilIced() bool {
	return v.Conditions.CoilIced ||
		slices.Contains(v.Checks, Check{Look: cooling.IceLook, Found: true})
}
