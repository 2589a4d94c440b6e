package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
)

// inputOf is what the checks and the diagnosis look at.
func inputOf(p *prepared, r *Readings, d *Derived, mode Mode) readcheck.Input {
	return readcheck.Input{
		SuctionPressure: r.SuctionPressure.read(), LiquidPressure: r.LiquidPressure.read(),
		EvaporatingDew:   d.EvaporatingDew,
		CondensingBubble: d.CondensingBubble, CondensingDew: d.CondensingDew,
		SuctionLine: r.SuctionLine.read(), LiquidLine: r.LiquidLine.read(),
		DischargeLine:  r.DischargeLine.read(),
		OutdoorDryBulb: r.OutdoorDryBulb.read(), CondenserLeaving: r.CondenserLeaving.read(),
		ReturnDryBulb: r.ReturnDryBulb.read(), ReturnWetBulb: r.ReturnWetBulb.read(),
		SupplyDryBulb: r.SupplyDryBulb.read(), SupplyWetBulb: r.SupplyWetBulb.read(),
		Atmosphere: p.atmosphere.Pressure.Value,
		Heating:    mode != Cooling,
	}
}

func evidenceOf(p *prepared, s *settled, input readcheck.Input, t *modes.Aim) diagnose.Evidence {
	v, r, c, e := &p.visit, &s.readings, &p.visit.Conditions, &p.visit.Equipment
	out := diagnose.Evidence{
		Input:             input,
		Airflow:           r.Airflow.read(),
		Power:             r.Power.read(),
		ExternalStatic:    r.ExternalStatic.read(),
		Current:           r.CompressorCurrent.read(),
		RatedLoadCurrent:  e.Label.RatedLoadCurrent,
		Fluid:             p.fluid,
		Others:            diagnose.Alternatives(p.fluid),
		Atmosphere:        p.atmosphere.Pressure.Value,
		AtmosphereAssumed: p.atmosphere.Source == SeaLevelAssumed,
		Metering:          e.Metering,
		HeatPump:          e.Arrangement.reverses(),
		NominalCapacity:   e.NominalCapacity,
		RatedAirflow:      e.Label.RatedAirflow,
		MaxExternalStatic: e.Label.MaxExternalStatic,
		Bore:              e.Restrictor,
		RatedBore:         e.Label.Restrictor,
		Charge:            e.Label.Charge,
		Expected:          expected(v, t),
		Known:             knownOf(e, c),
		Seen: diagnose.Sights{
			FilterDirty: c.FilterDirty, OutdoorCoilDirty: c.OutdoorCoilDirty,
			CoilIced: v.coilIced(), CoilWet: c.CoilWet, PanelsOff: c.PanelsOff,
			DoorsOpen: c.DoorsOpen, EconomizerOpen: c.EconomizerOpen,
			SealedSystemOpened: c.opened(), OilStains: c.OilStains,
			ChargeWeighed:   c.ChargeWeighed,
			FrozenComplaint: v.Complaint == FrozenCoil, WaterComplaint: v.Complaint == WaterLeak,
			NotCoolingComplaint: v.Complaint == NotCooling || v.Complaint == NotHeating,
		},
		House:   v.House.faults(),
		NoPairs: v.Scope == VerdictOnly,
	}
	p.seeElectrical(&out)
	if u := r.CompressorCurrent.read(); u != nil && u.Value < atRest {
		out.Seen.CompressorStill = true
	}
	for _, n := range e.Label.Normal {
		out.Normal = append(out.Normal, diagnose.NormalReading(n))
	}
	for _, c := range v.Checks {
		out.Answers = append(out.Answers, diagnose.Answer{Code: c.Look, Yes: c.Found})
	}
	return out
}

// atRest is what a meter may show around the wire of a compressor that stands still (common
// practice, no source).
const atRest quantity.Current = 0.3

// knownOf is what is known of how a machine is built and runs.
func knownOf(e *Equipment, c *Conditions) population.Known {
	k := population.Known{
		Year: e.Label.Year, Arrangement: e.Arrangement.known(), SEER: e.Label.SEER,
		Stages: population.Stages(e.Stages), Share: c.CapacityShare,
	}
	if k.SEER == 0 {
		k.SEER = e.Label.SEER2 * population.SEERPerSEER2
	}
	return k
}

// expected is what this machine should read when sound, by label, house and table.
func expected(v *Visit, t *modes.Aim) []diagnose.Expectation {
	var out []diagnose.Expectation
	if t.Target != nil && t.Method == charge.Superheat {
		u := &t.Target.Value
		out = append(out, diagnose.Expectation{
			Feature: signature.Superheat, Value: float64(u.Value), Std: u.Std,
			Rule: t.Target.General(),
		})
	}
	for _, x := range []struct {
		method  charge.Method
		feature signature.Feature
	}{{charge.Subcooling, signature.Subcooling}, {charge.Approach, diagnose.Approach}} {
		if u := v.stated(x.method); u != nil {
			ofLabel := v.ofLabel(x.method) != nil
			out = append(out, diagnose.Expectation{
				Feature: x.feature, Value: float64(u.Value), Std: max(u.Std, 1),
				AtRated: ofLabel, Rule: !ofLabel,
			})
		}
	}
	return out
}
