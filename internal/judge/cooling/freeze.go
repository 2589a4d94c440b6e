package cooling

import (
	"slices"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// freeze says how near the coil is to freezing, what would freeze it, and what made the ice
// that is there or was complained of. Where something is missing for it, it says what.
func (b *belief) freeze() *modes.Freeze {
	if b.present(diagnose.OtherRefrigerant, diagnose.HosesSwapped, diagnose.SuctionHose) {
		return &modes.Freeze{Says: fact.New("freeze.readings-first")}
	}
	v := b.surface()
	if f := b.Freeze; f != nil {
		if b.c.Seen.CoilIced && !f.Explains() {
			v.Causes = []fact.Fact{fact.New("freeze.read-on-ice")}
			return &v
		}
		if b.Contradictory() {
			return &v // by readings that are not what they are taken for
		}
		v.Causes, v.Controls = f.CauseFacts(), f.ControlFacts()
	}
	return &v
}

// surface judges the coldest surface of the coil.
func (b *belief) surface() modes.Freeze {
	c := b.c
	var missing []string
	if c.EvaporatingDew == nil {
		missing = append(missing, "suctionPressure")
	}
	if c.ReturnDryBulb == nil {
		missing = append(missing, "returnDryBulb")
	}
	if c.ReturnWetBulb == nil {
		missing = append(missing, "returnWetBulb")
	}
	if len(missing) > 0 {
		return modes.Freeze{
			Says: fact.New("freeze.not-read", fact.Of("readings", modes.ReadingTerms(missing))),
		}
	}
	flow, full := b.airflow(), modes.FullAirflow(c.RatedAirflow, c.NominalCapacity)
	capacity := c.NominalCapacity
	if capacity == 0 && full > 0 {
		capacity = quantity.Tons(full.CFM() / 400)
	}
	if flow == nil || capacity == 0 {
		return byRule(*c.EvaporatingDew)
	}
	coil, err := airside.RatedCoil(capacity, full)
	if err != nil {
		return byRule(*c.EvaporatingDew)
	}
	frost, err := airside.JudgeFrost(airside.FrostReadings{
		Return: airside.AirAt{
			DryBulb:    *c.ReturnDryBulb,
			WetBulb:    *c.ReturnWetBulb,
			Atmosphere: c.Site,
		},
		Airflow:     *flow,
		Evaporating: *c.EvaporatingDew,
		Coil:        coil,
	})
	if err != nil {
		return byRule(*c.EvaporatingDew)
	}
	v := modes.Freeze{
		Outcome: frost.Outcome, Surface: &frost.Surface, Margin: &frost.Margin,
		Chance: max(frost.SurfaceChance, airside.IcingChance(*c.EvaporatingDew)),
	}
	v.Says = fact.New(
		fact.Code("freeze."+frost.Outcome.String()), fact.Measured("surface", frost.Surface),
		fact.Amount("evaporating", c.EvaporatingDew.Value), fact.Of("chance", fact.Share(v.Chance)),
	)
	if c.OutdoorDryBulb != nil && !c.Seen.CoilIced && frost.Margin.Value >= 0 {
		v.Would = wouldFreeze(c, coil, flow.Value)
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
func byRule(evaporating quantity.Uncertain[quantity.Temperature]) modes.Freeze {
	chance := airside.IcingChance(evaporating)
	return modes.Freeze{Chance: chance, Says: fact.New("freeze.by-rule",
		fact.Amount("evaporating", evaporating.Value), fact.Of("chance", fact.Share(chance)))}
}

// wouldFreeze looks for what would bring the coil to freezing, each by itself.
func wouldFreeze(c *modes.Case, coil airside.Coil, flow quantity.VolumeFlow) []fact.Fact {
	air, err := psychro.FromWetBulb(
		c.ReturnDryBulb.Value, c.ReturnWetBulb.Value, c.Site.Value,
	)
	if err != nil {
		return nil
	}
	at := airside.Conditions{Return: air, Airflow: flow, Outdoor: c.OutdoorDryBulb.Value}
	plant, err := airside.NewCapacityLine(coil, at, c.EvaporatingDew.Value)
	if err != nil {
		return nil
	}
	limits, err := airside.FindFreezeLimits(
		plant, at, airside.FreezeByReturn, airside.FreezeByOutdoor, airside.FreezeByAirflow,
	)
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
