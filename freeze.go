package satline

import (
	"slices"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// freezeOf says how near the coil is to freezing, what would freeze it, and what made the ice
// that is there or was complained of. Where something is missing for it, it says what.
func freezeOf(p *prepared, s *settled, d *Derived, b *belief) *FreezeVerdict {
	v := judgeSurface(p, s, d, b)
	if f := b.Freeze; f != nil {
		if p.visit.Conditions.CoilIced && !f.Explains() {
			v.Causes = []fact.Fact{fact.New("freeze.read-on-ice")}
			return &v
		}
		v.Causes, v.Controls = f.CauseFacts(), f.ControlFacts()
	}
	return &v
}

func judgeSurface(p *prepared, s *settled, d *Derived, b *belief) FreezeVerdict {
	r := &s.readings
	var missing []string
	if d.EvaporatingDew == nil {
		missing = append(missing, "suctionPressure")
	}
	if r.ReturnDryBulb == nil {
		missing = append(missing, "returnDryBulb")
	}
	if r.ReturnWetBulb == nil {
		missing = append(missing, "returnWetBulb")
	}
	if len(missing) > 0 {
		return FreezeVerdict{
			Says: fact.New("freeze.not-read", fact.Of("readings", readingTerms(missing))),
		}
	}
	e := &p.visit.Equipment
	flow, full := airflowOf(p, s, b), fullAirflow(e)
	capacity := e.NominalCapacity
	if capacity == 0 && full > 0 {
		capacity = quantity.Tons(full.CFM() / 400)
	}
	if flow == nil || capacity == 0 {
		return byRule(d)
	}
	coil, err := airside.RatedCoil(capacity, full)
	if err != nil {
		return byRule(d)
	}
	frost, err := airside.JudgeFrost(airside.FrostReadings{
		Return: airside.AirAt{
			DryBulb:    *r.ReturnDryBulb,
			WetBulb:    *r.ReturnWetBulb,
			Atmosphere: p.atmosphere.Pressure,
		},
		Airflow:     *flow,
		Evaporating: *d.EvaporatingDew,
		Coil:        coil,
	})
	if err != nil {
		return byRule(d)
	}
	v := FreezeVerdict{
		Outcome: frost.Outcome, Surface: &frost.Surface, Margin: &frost.Margin,
		Chance: max(frost.SurfaceChance, airside.IcingChance(*d.EvaporatingDew)),
	}
	v.Says = fact.New(
		fact.Code("freeze."+frost.Outcome.String()), fact.Measured("surface", frost.Surface),
		fact.Amount("evaporating", d.EvaporatingDew.Value), fact.Of("chance", fact.Share(v.Chance)),
	)
	if r.OutdoorDryBulb != nil && !p.visit.Conditions.CoilIced {
		v.Would = wouldFreeze(p, r, d, coil, flow.Value)
		if b.present(diagnose.Undercharge, diagnose.Restriction) {
			// Starved, it falls with the head far sooner; a forecast tells how.
			v.Would = slices.DeleteFunc(
				v.Would, func(f fact.Fact) bool { return f.Code == "freeze.at-outdoor" },
			)
		}
	}
	return v
}

// byRule judges by the evaporating temperature alone, by the rule of the trade.
func byRule(d *Derived) FreezeVerdict {
	chance := airside.IcingChance(*d.EvaporatingDew)
	return FreezeVerdict{Chance: chance, Says: fact.New("freeze.by-rule",
		fact.Amount("evaporating", d.EvaporatingDew.Value), fact.Of("chance", fact.Share(chance)))}
}

// wouldFreeze looks for what would bring the coil to freezing, each by itself.
func wouldFreeze(
	p *prepared, r *Readings, d *Derived, coil airside.Coil, flow quantity.VolumeFlow,
) []fact.Fact {
	air, err := psychro.FromWetBulb(
		r.ReturnDryBulb.Value, r.ReturnWetBulb.Value, p.atmosphere.Pressure.Value,
	)
	if err != nil {
		return nil
	}
	at := airside.Conditions{Return: air, Airflow: flow, Outdoor: r.OutdoorDryBulb.Value}
	plant, err := airside.NewCapacityLine(coil, at, d.EvaporatingDew.Value)
	if err != nil {
		return nil
	}
	limits, err := airside.FindFreezeLimits(plant, at)
	if err != nil || limits.Freezes {
		return nil
	}
	var out []fact.Fact
	if t := limits.Outdoor; t != nil {
		out = append(out, fact.New("freeze.at-outdoor", fact.Amount("outdoor", *t)))
	}
	if t := limits.ReturnDryBulb; t != nil {
		out = append(out, fact.New("freeze.at-return", fact.Amount("return", *t)))
	}
	if f := limits.Airflow; f != nil && flow > 0 {
		out = append(out, fact.New("freeze.at-airflow", fact.Of("share", fact.Share(*f/flow))))
	}
	return out
}
