package cooling

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// splitOf holds the temperature split against its target, as a fact beside the belief; nil
// where a reading is missing, or there is no target.
func splitOf(c *modes.Case) *modes.Air {
	if c.ReturnDryBulb == nil || c.ReturnWetBulb == nil || c.SupplyDryBulb == nil {
		return nil
	}
	v, err := airside.JudgeSplit(airside.SplitReadings{
		ReturnDryBulb: *c.ReturnDryBulb, ReturnWetBulb: *c.ReturnWetBulb,
		SupplyDryBulb: *c.SupplyDryBulb, Atmosphere: c.Site.Value,
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
	return &modes.Air{
		Measured: v.Measured, Target: v.Target, Deviation: v.Deviation, Tolerance: v.Tolerance,
		Says: fact.New(
			code, fact.Measured("measured", v.Measured), fact.Amount("target", v.Target.Value),
			fact.Amount("off", off), fact.Amount("band", v.Tolerance),
		),
	}
}

// airflow is the measured one, or the rated or usual one with a wide doubt, less what the
// belief says is missing of it; nil where neither is known.
func (b *belief) airflow() *quantity.Uncertain[quantity.VolumeFlow] {
	if b.c.Airflow != nil {
		return b.c.Airflow
	}
	full := modes.FullAirflow(b.c.RatedAirflow, b.c.NominalCapacity)
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
