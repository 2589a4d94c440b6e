package satline

import (
	"slices"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func mustFluid(t testing.TB, designation string) *refrigerant.Refrigerant {
	t.Helper()
	f, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// A refrigerant that is none of comfort cooling is neither judged nor dosed, whatever the
// gauges show.
func TestUnsuitableFluidsAreNotJudged(t *testing.T) {
	read := 0
	for _, designation := range []string{"R-744", "R-717", "R-718", "R-23", "R-123"} {
		fluid := mustFluid(t, designation)
		for _, metering := range []Metering{FixedRestrictor, TXV} {
			v := load(t, "sound-r410a-piston")
			v.Equipment.Refrigerant, v.Equipment.Metering = designation, metering
			for _, warm := range []quantity.TemperatureDelta{0, 25} {
				suction, err := fluid.DewPressure(quantity.Fahrenheit(40))
				if err != nil {
					t.Fatal(err)
				}
				liquid, err := fluid.BubblePressure(
					min(quantity.Fahrenheit(100), fluid.Critical().Temperature),
				)
				if err != nil {
					t.Fatal(err)
				}
				low, high := suction.Gauge(quantity.StandardAtmosphere),
					liquid.Gauge(quantity.StandardAtmosphere)
				v.Readings.SuctionPressure, v.Readings.LiquidPressure = Measured(low), Measured(high)
				v.Readings.SuctionLine = Measured(quantity.Fahrenheit(45).Add(warm))
				a, err := Assess(v)
				if err != nil {
					continue // such pressures cannot be read
				}
				if a.Charge.Outcome != ChargeNotJudged || a.Dose != nil && a.Dose.Mass != 0 {
					t.Errorf(
						"%s, %v: %v, dose %+v", designation, metering, a.Charge.Outcome, a.Dose,
					)
				}
				if len(a.Charge.Why) == 0 ||
					a.Charge.Reading != nil && a.Charge.Reading.Target != nil ||
					!otherFluid(a) && len(a.Findings) > 0 {
					t.Errorf(
						"%s, %v: why %v, reading %+v, findings %v", designation, metering,
						a.Charge.Why, a.Charge.Reading, a.Findings,
					)
				}
				read++
			}
		}
	}
	if read < 6 {
		t.Errorf("only %d visits were read", read)
	}
}

// otherFluid says that the readings are taken for those of another refrigerant.
func otherFluid(a Assessment) bool {
	return slices.ContainsFunc(
		a.Findings, func(f Finding) bool { return f.Cause == "other-refrigerant" },
	)
}
