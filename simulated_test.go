package satline

import (
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
	"github.com/satline/satline/quantity"
)

// simulated draws a visit to a simulated machine, with what is true of it.
func simulated(t testing.TB, rng *rand.Rand, o simulate.Options) (Visit, simulate.Visit) {
	t.Helper()
	truth, err := simulate.Draw(rng, o)
	if err != nil {
		t.Fatal(err)
	}
	return visitOf(&truth.Evidence), truth
}

// visitOf writes down as a technician would what the simulation read.
func visitOf(e *diagnose.Evidence) Visit {
	arrangement := Split
	if e.HeatPump {
		arrangement = SplitHeatPump
	}
	v := Visit{
		Equipment: Equipment{
			Refrigerant: e.Fluid.Designation(), Metering: Metering(e.Metering),
			Arrangement:     arrangement,
			NominalCapacity: e.NominalCapacity,
			Label: Label{
				Charge:            e.Charge,
				RatedAirflow:      e.RatedAirflow,
				MaxExternalStatic: e.MaxExternalStatic,
			},
		},
		Readings: readingsIn(e),
		Conditions: Conditions{
			FilterDirty: e.Seen.FilterDirty, OutdoorCoilDirty: e.Seen.OutdoorCoilDirty,
			OilStains: e.Seen.OilStains,
		},
	}
	v.Readings.ExternalStatic = given(e.ExternalStatic)
	if !e.AtmosphereAssumed {
		v.Site.Barometer = new(e.Atmosphere)
	}
	for _, x := range e.Expected {
		if x.Feature == signature.Subcooling {
			v.Equipment.Label.Subcooling = new(
				quantity.TemperatureDelta(x.Value).PlusMinus(quantity.TemperatureDelta(x.Std)),
			)
		}
	}
	for _, a := range e.Answers {
		v.Checks = append(v.Checks, Check{Look: a.Code, Found: a.Yes})
	}
	return v
}

// readingsIn are those of a machine that runs.
func readingsIn(e *diagnose.Evidence) Readings {
	return Readings{
		SuctionPressure: given(e.SuctionPressure), LiquidPressure: given(e.LiquidPressure),
		SuctionLine: given(e.SuctionLine), LiquidLine: given(e.LiquidLine),
		DischargeLine:  given(e.DischargeLine),
		OutdoorDryBulb: given(e.OutdoorDryBulb), CondenserLeaving: given(e.CondenserLeaving),
		ReturnDryBulb: given(e.ReturnDryBulb), ReturnWetBulb: given(e.ReturnWetBulb),
		SupplyDryBulb: given(e.SupplyDryBulb), SupplyWetBulb: given(e.SupplyWetBulb),
		Airflow: given(e.Airflow), Power: given(e.Power),
	}
}

// given is a reading of a simulated machine, not taken where its bench has none.
func given[T quantity.Quantity](u *quantity.Uncertain[T]) Reading[T] {
	if u == nil {
		return Reading[T]{}
	}
	return ReadingOf(*u)
}
