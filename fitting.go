package satline

import (
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// forecastReadings are the readings that a forecast stands on.
var forecastReadings = []string{
	"outdoorDryBulb", "returnDryBulb", "returnWetBulb", "suctionPressure", "liquidPressure",
	"suctionLine",
}

// fitTo fits a machine of common make to the readings.
func fitTo(p *prepared, s *settled, d *Derived, doubts []readcheck.Doubt) (*fitted.Machine, error) {
	r, e := &s.readings, &p.visit.Equipment
	switch {
	case e.NominalCapacity == 0:
		return nil, missing(
			"equipment.nominalCapacity", "a forecast starts from the size of the machine",
		)
	case r.OutdoorDryBulb == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SuctionPressure == nil:
		return nil, missing(
			"readings",
			"a forecast needs outdoorDryBulb, returnDryBulb, returnWetBulb and suctionPressure",
		)
	}
	for _, x := range doubts {
		if x.Weight == readcheck.Impossible &&
			slices.ContainsFunc(
				x.Fields, func(f string) bool { return slices.Contains(forecastReadings, f) },
			) {
			return nil, &VisitError{
				Field:   "readings." + x.Fields[0],
				Kind:    FieldContradictory,
				Problem: "it cannot be true together with the other readings (" + x.Code + "); read it again",
			}
		}
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: p.fluid,
		Capacity:    e.NominalCapacity,
		Metering:    asFitted(e.Metering),
		Airflow:     e.Label.RatedAirflow,
	})
	if err != nil {
		return nil, rangeProblem("equipment", err)
	}
	seen := cycle.Conditions{
		OutdoorDryBulb: r.OutdoorDryBulb.Value, ReturnDryBulb: r.ReturnDryBulb.Value, ReturnWetBulb: r.ReturnWetBulb.Value,
		Elevation: elevationOf(p.visit.Site),
	}
	visit := cycle.Visit{
		OutdoorStd:        quantity.TemperatureDelta(r.OutdoorDryBulb.Std),
		DryBulbStd:        quantity.TemperatureDelta(r.ReturnDryBulb.Std),
		WetBulbStd:        quantity.TemperatureDelta(r.ReturnWetBulb.Std),
		SuctionPressure:   r.SuctionPressure,
		LiquidPressure:    r.LiquidPressure,
		DischargePressure: r.DischargePressure,
		SuctionLine:       r.SuctionLine,
		LiquidLine:        r.LiquidLine,
		DischargeLine:     r.DischargeLine,
		Supply:            r.SupplyDryBulb,
		CondenserLeaving:  r.CondenserLeaving,
		Power:             r.Power,
	}
	if r.Airflow != nil {
		seen.Airflow = r.Airflow.Value
		visit.AirflowStd = r.Airflow.Std / float64(r.Airflow.Value)
	}
	visit.Conditions = seen
	fit, err := fitted.Fit(system, fitted.Read{
		Visit: visit, Superheat: d.Superheat, Subcooling: d.Subcooling, Evaporating: d.EvaporatingDew,
	})
	if err != nil {
		return nil, rangeProblem("readings", err)
	}
	fit.Believe = append(forbidding(p, s, d, doubts), fit.Believe...)
	return fit, nil
}

// outlookOf is what the fitted machine will do in a scenario, with what has become of it by
// then.
func outlookOf(
	p *prepared, fit *fitted.Machine, s Scenario, become cycle.Faults,
) (Outlook, error) {
	o, err := fit.Outlook(fitted.Scenario{
		OutdoorDryBulb: s.OutdoorDryBulb, ReturnDryBulb: s.ReturnDryBulb,
		ReturnWetBulb: s.ReturnWetBulb, Airflow: s.Airflow, Added: s.Added,
		HeadPressure: s.HeadPressure,
	}, become, p.visit.Equipment.Label.Charge)
	if err != nil {
		return Outlook{}, err
	}
	out := Outlook{
		Scenario: s, Superheat: o.Superheat, Subcooling: o.Subcooling,
		Evaporating: o.Evaporating, Condensing: o.Condensing, CoilSurface: o.CoilSurface,
		Supply: o.Supply, Capacity: o.Capacity, FreezeChance: o.FreezeChance,
		Extrapolating: o.Extrapolating, Says: o.Says, Believe: slices.Clone(fit.Believe),
	}
	speak(&out, p.visit.Language.book(p.visit.Units))
	return out, nil
}

// forbidding says what forbids to build on a forecast: a machine that does not run as it
// will later, or readings that are in doubt.
func forbidding(p *prepared, s *settled, d *Derived, doubts []readcheck.Doubt) []fact.Fact {
	var out []fact.Fact
	not := func(why fact.Fact) {
		out = append(
			out,
			fact.New("forecast.do-not-build", fact.Of("why", fact.Term(why.Code))).
				With(why.Values...),
		)
	}
	situation := situationOf(p, s, d, Cooling)
	for _, o := range charge.Obstacles(situation, charge.MethodFor(p.visit.Equipment.Metering)) {
		if o.Spoils {
			not(o.Says)
		}
	}
	if s.moving() {
		not(s.steadiness.Says)
	}
	for _, x := range doubts {
		if x.Weight != readcheck.Note {
			not(fact.New(fact.Code("doubt."+x.Code), x.Values...))
		}
	}
	return out
}

// elevationOf is that of the site, or the one that its barometer stands for.
func elevationOf(site Site) quantity.Length {
	switch {
	case site.Barometer != nil:
		return quantity.ElevationOf(*site.Barometer)
	case site.Elevation != nil:
		return *site.Elevation
	}
	return 0
}

// asFitted is the device that a machine is fitted with: a capillary tube is followed as the
// short tube that passes as much.
func asFitted(m Metering) Metering {
	if m == refrigerant.Capillary {
		return FixedRestrictor
	}
	return m
}
