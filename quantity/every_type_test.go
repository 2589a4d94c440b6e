package quantity

import (
	"encoding"
	"math"
	"strconv"
	"testing"
)

// A named pair of constructor and accessor, and the symbol of the unit as text.
type named[T Quantity] struct {
	symbol string
	make   func(float64) T
	read   func(T) float64
}

// holdType holds what every type promises: each constructor is undone by its
// accessor and agrees with the text in its unit, and the texts that a value
// writes read back, bit for bit where that is promised.
func holdType[T Quantity](t *testing.T, parse func(string) (T, error), plusMinus func(T, T) Uncertain[T], units ...named[T]) {
	t.Helper()
	for _, u := range units {
		for _, v := range []float64{0, 1, -3.25, 62, 1e4} {
			x := u.make(v)
			if got := u.read(x); math.Abs(got-v) > 1e-12*(math.Abs(v)+460) {
				t.Errorf("%v %s read back as %v", v, u.symbol, got)
			}
			text := strconv.FormatFloat(v, 'f', -1, 64) + " " + u.symbol
			if got, err := parse(text); err != nil || math.Abs(float64(got-x)) > 1e-12*(math.Abs(float64(x))+460) {
				t.Errorf("%q reads as %v, want %v: %v", text, float64(got), float64(x), err)
			}
			back := x
			exact, err := any(x).(encoding.TextMarshaler).MarshalText()
			if err == nil {
				err = any(&back).(encoding.TextUnmarshaler).UnmarshalText(exact)
			}
			if err != nil || back != x {
				t.Errorf("%v %s written as %q reads as %v: %v", v, u.symbol, exact, float64(back), err)
			}
			for _, sys := range []System{SI, IP} {
				if _, err := parse(x.Format(sys)); err != nil {
					t.Errorf("%q is shown and not read: %v", x.Format(sys), err)
				}
			}
			if x.String() != x.Format(SI) {
				t.Errorf("String %q, Format %q", x.String(), x.Format(SI))
			}
		}
		if got := plusMinus(u.make(2), -u.make(1)); got.Std < 0 || got.Value != u.make(2) {
			t.Errorf("with an uncertainty below zero: %+v", got)
		}
	}
	if back := *new(T); any(&back).(encoding.TextUnmarshaler).UnmarshalText([]byte("1 parsec per fortnight")) == nil {
		t.Errorf("%T reads any unit", back)
	}
}

func TestEveryType(t *testing.T) {
	holdType(t, ParseTemperature, func(v, u Temperature) Uncertain[Temperature] { return v.PlusMinus(TemperatureDelta(u)) },
		named[Temperature]{"K", Kelvin, Temperature.Kelvin}, named[Temperature]{"°C", Celsius, Temperature.Celsius},
		named[Temperature]{"°F", Fahrenheit, Temperature.Fahrenheit})
	holdType(t, ParseTemperatureDelta, TemperatureDelta.PlusMinus,
		named[TemperatureDelta]{"K", KelvinDelta, TemperatureDelta.KelvinDelta}, named[TemperatureDelta]{"°C", CelsiusDelta, TemperatureDelta.CelsiusDelta},
		named[TemperatureDelta]{"°F", FahrenheitDelta, TemperatureDelta.FahrenheitDelta}, named[TemperatureDelta]{"K", KelvinDelta, TemperatureDelta.Kelvin},
		named[TemperatureDelta]{"°C", CelsiusDelta, TemperatureDelta.Celsius}, named[TemperatureDelta]{"°F", FahrenheitDelta, TemperatureDelta.Fahrenheit})
	holdType(t, ParsePressure, Pressure.PlusMinus,
		named[Pressure]{"Pa", Pascals, Pressure.Pascals}, named[Pressure]{"kPa", Kilopascals, Pressure.Kilopascals}, named[Pressure]{"bar", Bar, Pressure.Bar},
		named[Pressure]{"psia", PSIA, Pressure.PSIA}, named[Pressure]{"inHg", InchesHg, Pressure.InchesHg}, named[Pressure]{"micron", Microns, Pressure.Microns})
	holdType(t, ParseGaugePressure, GaugePressure.PlusMinus,
		named[GaugePressure]{"psig", PSIG, GaugePressure.PSIG}, named[GaugePressure]{"kPag", KilopascalsGauge, GaugePressure.KilopascalsGauge},
		named[GaugePressure]{"barg", BarGauge, GaugePressure.BarGauge})
	holdType(t, ParseStaticPressure, StaticPressure.PlusMinus,
		named[StaticPressure]{"in. w.c.", InchesWater, StaticPressure.InchesWater}, named[StaticPressure]{"Pa", PascalsStatic, StaticPressure.PascalsStatic})
	holdType(t, ParseMass, Mass.PlusMinus,
		named[Mass]{"kg", Kilograms, Mass.Kilograms}, named[Mass]{"lb", Pounds, Mass.Pounds}, named[Mass]{"oz", Ounces, Mass.Ounces}, named[Mass]{"g", Grams, Mass.Grams})
	holdType(t, ParseMassFlow, MassFlow.PlusMinus,
		named[MassFlow]{"kg/s", KilogramsPerSecond, MassFlow.KilogramsPerSecond}, named[MassFlow]{"g/s", GramsPerSecond, MassFlow.GramsPerSecond},
		named[MassFlow]{"lb/h", PoundsPerHour, MassFlow.PoundsPerHour})
	holdType(t, ParseVolume, Volume.PlusMinus,
		named[Volume]{"m³", CubicMeters, Volume.CubicMeters}, named[Volume]{"L", Liters, Volume.Liters}, named[Volume]{"ft³", CubicFeet, Volume.CubicFeet},
		named[Volume]{"in³", CubicInches, Volume.CubicInches})
	holdType(t, ParseVolumeFlow, VolumeFlow.PlusMinus,
		named[VolumeFlow]{"m³/s", CubicMetersPerSecond, VolumeFlow.CubicMetersPerSecond}, named[VolumeFlow]{"L/s", LitersPerSecond, VolumeFlow.LitersPerSecond},
		named[VolumeFlow]{"CFM", CFM, VolumeFlow.CFM}, named[VolumeFlow]{"m³/h", CubicMetersPerHour, VolumeFlow.CubicMetersPerHour})
	holdType(t, ParsePower, Power.PlusMinus,
		named[Power]{"W", Watts, Power.Watts}, named[Power]{"kW", Kilowatts, Power.Kilowatts}, named[Power]{"Btu/h", BtuPerHour, Power.BtuPerHour}, named[Power]{"ton", Tons, Power.Tons})
	holdType(t, ParseSpecificEnthalpy, SpecificEnthalpy.PlusMinus,
		named[SpecificEnthalpy]{"J/kg", JoulesPerKilogram, SpecificEnthalpy.JoulesPerKilogram}, named[SpecificEnthalpy]{"kJ/kg", KilojoulesPerKilogram, SpecificEnthalpy.KilojoulesPerKilogram},
		named[SpecificEnthalpy]{"Btu/lb", BtuPerPound, SpecificEnthalpy.BtuPerPound})
	holdType(t, ParseSpecificEntropy, SpecificEntropy.PlusMinus,
		named[SpecificEntropy]{"J/(kg·K)", JoulesPerKilogramKelvin, SpecificEntropy.JoulesPerKilogramKelvin},
		named[SpecificEntropy]{"kJ/(kg·K)", KilojoulesPerKilogramKelvin, SpecificEntropy.KilojoulesPerKilogramKelvin},
		named[SpecificEntropy]{"Btu/(lb·°R)", BtuPerPoundRankine, SpecificEntropy.BtuPerPoundRankine})
	holdType(t, ParseDensity, Density.PlusMinus,
		named[Density]{"kg/m³", KilogramsPerCubicMeter, Density.KilogramsPerCubicMeter}, named[Density]{"lb/ft³", PoundsPerCubicFoot, Density.PoundsPerCubicFoot})
	holdType(t, ParseSpecificVolume, SpecificVolume.PlusMinus,
		named[SpecificVolume]{"m³/kg", CubicMetersPerKilogram, SpecificVolume.CubicMetersPerKilogram}, named[SpecificVolume]{"ft³/lb", CubicFeetPerPound, SpecificVolume.CubicFeetPerPound})
	holdType(t, ParseVelocity, Velocity.PlusMinus,
		named[Velocity]{"m/s", MetersPerSecond, Velocity.MetersPerSecond}, named[Velocity]{"fpm", FeetPerMinute, Velocity.FeetPerMinute})
	holdType(t, ParseArea, Area.PlusMinus,
		named[Area]{"m²", SquareMeters, Area.SquareMeters}, named[Area]{"ft²", SquareFeet, Area.SquareFeet}, named[Area]{"in²", SquareInches, Area.SquareInches})
	holdType(t, ParseLength, Length.PlusMinus,
		named[Length]{"m", Meters, Length.Meters}, named[Length]{"ft", Feet, Length.Feet}, named[Length]{"in", Inches, Length.Inches}, named[Length]{"mm", Millimeters, Length.Millimeters})
	holdType(t, ParseCurrent, Current.PlusMinus, named[Current]{"A", Amperes, Current.Amperes})
	holdType(t, ParseVoltage, Voltage.PlusMinus, named[Voltage]{"V", Volts, Voltage.Volts})
	holdType(t, ParseConductance, Conductance.PlusMinus,
		named[Conductance]{"W/K", WattsPerKelvin, Conductance.WattsPerKelvin}, named[Conductance]{"Btu/(h·°F)", BtuPerHourFahrenheit, Conductance.BtuPerHourFahrenheit})
	holdType(t, ParseHeatingValue, HeatingValue.PlusMinus,
		named[HeatingValue]{"MJ/m³", MegajoulesPerCubicMeter, HeatingValue.MegajoulesPerCubicMeter}, named[HeatingValue]{"Btu/ft³", BtuPerCubicFoot, HeatingValue.BtuPerCubicFoot})
}
