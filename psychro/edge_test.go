package psychro

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
)

// Dry air has the dew point of no water, whatever the sign of its zero.
func TestDewPointOfDryAir(t *testing.T) {
	for _, m := range []Model{PerfectGas, PerfectGasIAPWS, RealGas} {
		for _, w := range []float64{0, math.Copysign(0, -1)} {
			air, err := m.FromHumidityRatio(quantity.Celsius(20), w, quantity.StandardAtmosphere)
			if err != nil || air.DewPoint() != 0 {
				t.Errorf("%v, %v: dew point %v, %v", m, w, air.DewPoint(), err)
			}
		}
	}
}

// Air that is colder than the room by a rounding alone takes up no heat.
func TestSupplyAirAsWarmAsTheRoom(t *testing.T) {
	room, err := FromRelativeHumidity(quantity.Fahrenheit(62), 0.5, quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	almost := quantity.Temperature(math.Nextafter(float64(room.DryBulb()), 0))
	_, flow, err := SupplyAir(
		room, almost, quantity.Kilowatts(1000), 0, quantity.KilojoulesPerKilogram(2560),
	)
	var out *RangeError
	if err == nil && math.IsInf(float64(flow), 0) || err != nil && !errors.As(err, &out) {
		t.Errorf("flow %v, %v", flow, err)
	}
}
