package quantity_test

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// One function reads every type.
func ExampleParse() {
	charge, err := quantity.Parse[quantity.Mass]("6 lb 4 oz")
	fmt.Println(charge, err)
	_, err = quantity.Parse[quantity.Temperature]("-300 °C")
	fmt.Println(err)
	// Output:
	// 2.835 kg <nil>
	// temperature "-300 °C": it is below absolute zero; write a number and one of °C, °F, K
}

// Where decimals stand behind a comma, a point may be what parts thousands.
func ExampleParseStyled() {
	comma := quantity.Style{Comma: true}
	for _, text := range []string{"1,5 kg", "1.5 kg", "1.500 kg"} {
		m, err := quantity.ParseStyled[quantity.Mass](text, comma)
		if err != nil {
			fmt.Println("refused:", text)
			continue
		}
		fmt.Println(m.Grams())
	}
	// Output:
	// 1500
	// 1500
	// refused: 1.500 kg
}

func ExampleStyle() {
	superheat := quantity.FahrenheitDelta(12.3).PlusMinus(quantity.FahrenheitDelta(1.1))
	fmt.Println(superheat.Styled(quantity.Style{}))
	fmt.Println(superheat.Styled(quantity.Style{System: quantity.SI, Comma: true}))
	fmt.Println(superheat.Styled(quantity.Style{System: quantity.SI, OneUnit: true}))
	// Output:
	// 12.3 °F ± 1.1 °F
	// 6,8 K ± 0,6 K
	// 6.8 ± 0.6 K
}

// A gauge in bar, to two decimals.
func ExampleStyle_In() {
	style := quantity.Style{System: quantity.SI}.In("barg", 2)
	fmt.Println(quantity.PSIG(118).Styled(style), quantity.Celsius(5).Styled(style))
	// Output: 8.14 barg 5.0 °C
}

// A report of many values is written into one buffer.
func ExampleTemperature_AppendStyled() {
	line := []byte("suction line ")
	line = quantity.Fahrenheit(56.5).AppendStyled(line, quantity.Style{System: quantity.SI})
	fmt.Println(string(line))
	// Output: suction line 13.6 °C
}

// The button beside a field offers these, the usual one first.
func ExampleUnits() {
	for _, u := range quantity.Units[quantity.GaugePressure](quantity.SI) {
		fmt.Printf("%s %.2f\n", u.Symbol(), u.Number(quantity.PSIG(118)))
	}
	// Output:
	// kPag 813.58
	// barg 8.14
	// psig 118.00
}

// The axis of a diagram: numbers in the unit of a system, and its symbol.
func ExampleUnitOf() {
	axis := quantity.UnitOf[quantity.Power](quantity.SI)
	fmt.Printf("%.1f %s\n", axis.Number(quantity.Tons(3)), axis.Symbol())
	fmt.Println(axis.Value(7).Format(quantity.IP))
	// Output:
	// 10.6 kW
	// 23885 Btu/h
}

func ExampleSymbols() {
	fmt.Println(quantity.Symbols()[:6])
	// Output: [% A Btu/(h·°F) Btu/(lb·°R) Btu/ft³ Btu/h]
}

// A run capacitor against its label.
func ExampleMicrofarads() {
	label, read := quantity.Microfarads(45), quantity.Microfarads(42.3)
	fmt.Println(read, quantity.Ratio(read/label-1))
	// Output: 42.3 µF -6.0 %
}

func ExampleMegohms() {
	insulation, err := quantity.ParseResistance("20 megohms")
	fmt.Println(insulation >= quantity.Megohms(1), err)
	// Output: true <nil>
}

func ExamplePercent() {
	chance := quantity.Percent(27)
	fmt.Println(chance, float64(chance))
	// Output: 27 % 0.27
}
