package charge_test

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func ExampleMeasureSuperheat() {
	r22, _ := refrigerant.Lookup("R-22")
	atmosphere := quantity.AtmosphereAt(quantity.Feet(6000)).PlusMinus(quantity.Pascals(800))
	m, err := charge.MeasureSuperheat(r22,
		quantity.PSIG(65.6).PlusMinus(quantity.PSIG(0.6)), atmosphere,
		quantity.Fahrenheit(52).PlusMinus(quantity.FahrenheitDelta(0.9)))
	fmt.Println(m.Value.Format(quantity.IP), err)
	for _, term := range m.Budget.Terms() {
		fmt.Println(term.Reading, term.Contribution.Format(quantity.IP))
	}
	// Output:
	// 16.2 °F ± 1.0 °F <nil>
	// suctionPressure 0.4 °F
	// atmosphere 0.1 °F
	// suctionLine 0.9 °F
}

func ExampleMeasureSubcooling() {
	r22, _ := refrigerant.Lookup("R-22")
	m, err := charge.MeasureSubcooling(
		r22,
		quantity.PSIG(210).
			PlusMinus(quantity.PSIG(1.5)),
		quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(800)),
		quantity.Fahrenheit(94).PlusMinus(quantity.FahrenheitDelta(0.9)),
	)
	fmt.Println(m.Value.Format(quantity.IP), err)
	// Output: 10.7 °F ± 1.0 °F <nil>
}

func ExampleMeasureApproach() {
	m, err := charge.MeasureApproach(
		quantity.Fahrenheit(94).PlusMinus(quantity.FahrenheitDelta(0.9)),
		quantity.Fahrenheit(84).PlusMinus(quantity.FahrenheitDelta(0.6)))
	fmt.Println(m.Value.Format(quantity.IP), err)
	// Output: 10.0 °F ± 1.1 °F <nil>
}

// A superheat that hunts is judged at its mean, with the scatter in its doubt.
func ExampleMeasurement_At() {
	r22, _ := refrigerant.Lookup("R-22")
	m, _ := charge.MeasureSuperheat(r22,
		quantity.PSIG(68.5).PlusMinus(quantity.PSIG(0.6)), quantity.StandardAtmosphere.PlusMinus(0),
		quantity.Fahrenheit(54).PlusMinus(quantity.FahrenheitDelta(0.9)))
	// As SteadinessOf gives it.
	mean := quantity.FahrenheitDelta(10).PlusMinus(quantity.FahrenheitDelta(0.4))
	fmt.Println(
		m.Value.Format(quantity.IP), "read once,", m.At(mean).Value.Format(quantity.IP),
		"over time",
	)
	// Output: 14.0 °F ± 1.0 °F read once, 10.0 °F ± 1.1 °F over time
}

// R-407C boils over a range of temperatures: superheat counts from the dew
// point, subcooling from the bubble point.
func ExampleMeasureSuperheat_glide() {
	r407c, _ := refrigerant.Lookup("R-407C")
	atmosphere := quantity.StandardAtmosphere.PlusMinus(0)
	suction := quantity.PSIG(70).PlusMinus(quantity.PSIG(0.6))
	m, _ := charge.MeasureSuperheat(
		r407c, suction, atmosphere,
		quantity.Fahrenheit(58).PlusMinus(quantity.FahrenheitDelta(0.9)),
	)
	glide, _ := r407c.Glide(suction.Value.Absolute(quantity.StandardAtmosphere))
	fmt.Printf(
		"superheat %s; counted from the bubble point it would read %.0f °F too high\n",
		m.Value.Format(quantity.IP), glide.Fahrenheit(),
	)
	// Output:
	// superheat 13.5 °F ± 1.0 °F; counted from the bubble point it would read 11 °F too high
}
