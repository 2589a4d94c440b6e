package cooling

import (
	"slices"

	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// Forecast fits a machine of common make to what was read of one that cools.
func Forecast(c *modes.Case) (modes.Foretell, error) {
	m, err := fit(c)
	if err != nil {
		return nil, err
	}
	return func(s modes.Scenario) (modes.Outlook, error) {
		return m.Outlook(s, cycle.Faults{}, c.Charge)
	}, nil
}

// needed are the readings that a forecast stands on.
var needed = []string{
	"outdoorDryBulb", "returnDryBulb", "returnWetBulb", "suctionPressure", "liquidPressure",
	"suctionLine",
}

// fit fits a machine of common make to the readings.
func fit(c *modes.Case) (*fitted.Machine, error) {
	switch {
	case c.NominalCapacity == 0:
		return nil, modes.Lacking(
			"equipment.nominalCapacity", "a forecast starts from the size of the machine",
		)
	case c.OutdoorDryBulb == nil || c.ReturnDryBulb == nil || c.ReturnWetBulb == nil ||
		c.SuctionPressure == nil:
		return nil, modes.Lacking(
			"readings",
			"a forecast needs outdoorDryBulb, returnDryBulb, returnWetBulb and suctionPressure",
		)
	}
	for _, x := range c.Doubts {
		if x.Weight == readcheck.Impossible && slices.ContainsFunc(
			x.Fields, func(f string) bool { return slices.Contains(needed, f) },
		) {
			return nil, &modes.Refused{
				Field: "readings." + x.Fields[0],
				Why: "it cannot be true together with the other readings (" + x.Code +
					"); read it again",
			}
		}
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: c.Fluid, Capacity: c.NominalCapacity, Metering: asFitted(c.Metering),
		Airflow: c.RatedAirflow,
	})
	if err != nil {
		return nil, &modes.Refused{Field: "equipment", Err: err}
	}
	read := cycle.Readings{
		Conditions: cycle.Conditions{
			OutdoorDryBulb: c.OutdoorDryBulb.Value, ReturnDryBulb: c.ReturnDryBulb.Value,
			ReturnWetBulb: c.ReturnWetBulb.Value, Elevation: quantity.ElevationOf(c.Site.Value),
		},
		OutdoorStd:        quantity.TemperatureDelta(c.OutdoorDryBulb.Std),
		DryBulbStd:        quantity.TemperatureDelta(c.ReturnDryBulb.Std),
		WetBulbStd:        quantity.TemperatureDelta(c.ReturnWetBulb.Std),
		SuctionPressure:   c.SuctionPressure,
		LiquidPressure:    c.LiquidPressure,
		DischargePressure: c.DischargePressure,
		SuctionLine:       c.SuctionLine,
		LiquidLine:        c.LiquidLine,
		DischargeLine:     c.DischargeLine,
		Supply:            c.SupplyDryBulb,
		CondenserLeaving:  c.CondenserLeaving,
		Power:             c.Power,
	}
	if a := c.Airflow; a != nil {
		read.Conditions.Airflow = a.Value
		read.AirflowStd = a.Std / float64(a.Value)
	}
	m, err := fitted.Fit(system, fitted.Read{
		Visit: read, Superheat: c.Superheat, Subcooling: c.Subcooling,
		Evaporating: c.EvaporatingDew,
	})
	if err != nil {
		return nil, &modes.Refused{Field: "readings", Err: err}
	}
	m.Believe = append(forbidding(c), m.Believe...)
	return m, nil
}

// forbidding says what forbids to build on a forecast: a machine that does not run as it
// will later, or readings that are in doubt.
func forbidding(c *modes.Case) []fact.Fact {
	var out []fact.Fact
	not := func(why fact.Fact) { out = append(out, modes.DoNotBuild(why)) }
	for _, o := range c.Spoils {
		not(o.Says)
	}
	if !c.Moving.IsZero() {
		not(c.Moving)
	}
	for _, x := range c.Doubts {
		if x.Weight != readcheck.Note {
			not(fact.New(fact.Code("doubt."+x.Code), x.Values...))
		}
	}
	return out
}

// asFitted is the device that a machine is fitted with: a capillary tube is followed as the
// short tube that passes as much.
func asFitted(m refrigerant.Metering) refrigerant.Metering {
	if m == refrigerant.Capillary {
		return refrigerant.FixedRestrictor
	}
	return m
}
