package satline

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// splitOf holds the temperature split against its target, as a fact beside the belief; nil
// where a reading is missing, or there is no target.
func splitOf(p *prepared, r *Readings) *AirVerdict {
	if r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SupplyDryBulb == nil {
		return nil
	}
	v, err := airside.JudgeSplit(airside.SplitReadings{
		ReturnDryBulb: *r.ReturnDryBulb, ReturnWetBulb: *r.ReturnWetBulb, SupplyDryBulb: *r.SupplyDryBulb,
		Atmosphere: p.atmosphere.Pressure.Value,
	})
	if err != nil {
		return nil
	}
	code, off := fact.Code("split.within"), v.Deviation.Value
	switch {
	case off > v.Tolerance:
		code = "split.above"
	case off < -v.Tolerance:
		code, off = "split.below", -off
	}
	return &AirVerdict{
		Measured: v.Measured, Target: v.Target, Deviation: v.Deviation, Tolerance: v.Tolerance,
		Says: fact.New(
			code, fact.Measured("measured", v.Measured), fact.Amount("target", v.Target.Value),
			fact.Amount("off", off), fact.Amount("band", v.Tolerance),
		),
	}
}

// withCapacity adds to what is derived the capacity by the air on both sides of the coil and
// its flow, where all of them were read.
func withCapacity(p *prepared, r *Readings, d Derived) Derived {
	if r.Airflow == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil ||
		r.SupplyDryBulb == nil ||
		r.SupplyWetBulb == nil {
		return d
	}
	c, err := airside.MeasureCapacity(airside.CapacityReadings{
		Return:     airside.AirReading{DryBulb: *r.ReturnDryBulb, WetBulb: *r.ReturnWetBulb},
		Supply:     airside.AirReading{DryBulb: *r.SupplyDryBulb, WetBulb: *r.SupplyWetBulb},
		Airflow:    *r.Airflow,
		Atmosphere: p.atmosphere.Pressure,
	})
	if err != nil {
		return d // the readings contradict each other, and a doubt says so
	}
	d.TotalCapacity, d.SensibleCapacity, d.LatentCapacity, d.Condensate = &c.Total, &c.Sensible, &c.Latent, &c.Condensate
	if c.SensibleHeatRatio != 0 {
		d.SensibleHeatRatio = &Ratio{c.SensibleHeatRatio, c.SensibleHeatRatioStd}
	}
	if r.Power != nil {
		if e, err := airside.EfficiencyOf(c.Total, *r.Power); err == nil {
			d.Efficiency = &e
		}
	}
	return d
}

// airflowOf is the measured one, or the rated or usual one with a wide doubt, less what the
// belief says is missing of it; nil where neither is known.
func airflowOf(p *prepared, s *settled, b *belief) *quantity.Uncertain[quantity.VolumeFlow] {
	if s.readings.Airflow != nil {
		return s.readings.Airflow
	}
	full := fullAirflow(&p.visit.Equipment)
	if full == 0 {
		return nil
	}
	found := full
	for _, m := range b.Marginals() {
		if m.Signature == diagnose.LowIndoorAir && m.Chance >= likely {
			found = full * quantity.VolumeFlow(1-m.Severity.Mean)
		}
	}
	u := found.PlusMinus(airflowDoubt * full)
	return &u
}

// airflowDoubt is the standard uncertainty of an airflow that was not measured, as a
// part of the full one (common practice, no source).
const airflowDoubt = 1. / 6

// fullAirflow is the label's, or 400 CFM a ton (common practice, no source); zero where the
// capacity is not known either.
func fullAirflow(e *Equipment) quantity.VolumeFlow {
	if e.Label.RatedAirflow > 0 {
		return e.Label.RatedAirflow
	}
	return quantity.CFM(400 * e.NominalCapacity.Tons())
}
