package psychro_test

import (
	"fmt"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// One state of real air by every pair of readings that leaves the dry bulb to be found.
func ExampleModel_FromWetBulbAndDewPoint() {
	m, p := psychro.RealGas, quantity.StandardAtmosphere
	a, err := m.FromWetBulb(quantity.Celsius(25), quantity.Celsius(18), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	wet, dew, h := a.WetBulb(), a.DewPoint(), a.Enthalpy()
	w, rh := a.HumidityRatio(), a.RelativeHumidity()
	show := func(pair string, b psychro.Air, err error) {
		fmt.Println(pair, b.DryBulb().Format(quantity.SI), err)
	}
	b, err := m.FromWetBulbAndDewPoint(wet, dew, p)
	show("wet bulb, dew point:", b, err)
	b, err = m.FromWetBulbAndRelativeHumidity(wet, rh, p)
	show("wet bulb, relative humidity:", b, err)
	b, err = m.FromDewPointAndRelativeHumidity(dew, rh, p)
	show("dew point, relative humidity:", b, err)
	b, err = m.FromDewPointAndEnthalpy(dew, h, p)
	show("dew point, enthalpy:", b, err)
	b, err = m.FromEnthalpyAndHumidityRatio(h, w, p)
	show("enthalpy, humidity ratio:", b, err)
	b, err = m.FromEnthalpyAndRelativeHumidity(h, rh, p)
	show("enthalpy, relative humidity:", b, err)
	b, err = m.FromEnthalpy(a.DryBulb(), h, p)
	show("dry bulb, enthalpy:", b, err)
	// Output:
	// wet bulb, dew point: 25.0 °C <nil>
	// wet bulb, relative humidity: 25.0 °C <nil>
	// dew point, relative humidity: 25.0 °C <nil>
	// dew point, enthalpy: 25.0 °C <nil>
	// enthalpy, humidity ratio: 25.0 °C <nil>
	// enthalpy, relative humidity: 25.0 °C <nil>
	// dry bulb, enthalpy: 25.0 °C <nil>
}
