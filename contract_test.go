package satline_test

import (
	"encoding"
	"errors"
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// What the public surface promises, spelled out as types: a program that was
// written against these names and signatures compiles against every later
// version. Nothing here runs; a change that breaks a promise does not compile.

// A unit is a quantity with a constructor and an accessor of one name.
type unit[T quantity.Quantity] struct {
	of func(float64) T
	in func(T) float64
}

var _ = []unit[quantity.Temperature]{
	{quantity.Kelvin, quantity.Temperature.Kelvin},
	{quantity.Celsius, quantity.Temperature.Celsius},
	{quantity.Fahrenheit, quantity.Temperature.Fahrenheit},
}

var _ = []unit[quantity.TemperatureDelta]{
	{quantity.KelvinDelta, quantity.TemperatureDelta.KelvinDelta},
	{quantity.CelsiusDelta, quantity.TemperatureDelta.CelsiusDelta},
	{quantity.FahrenheitDelta, quantity.TemperatureDelta.FahrenheitDelta},
	{quantity.KelvinDelta, quantity.TemperatureDelta.Kelvin},
	{quantity.CelsiusDelta, quantity.TemperatureDelta.Celsius},
	{quantity.FahrenheitDelta, quantity.TemperatureDelta.Fahrenheit},
}

var _ = []unit[quantity.Pressure]{
	{quantity.Pascals, quantity.Pressure.Pascals},
	{quantity.Kilopascals, quantity.Pressure.Kilopascals}, {quantity.Bar, quantity.Pressure.Bar},
	{quantity.PSIA, quantity.Pressure.PSIA}, {quantity.InchesHg, quantity.Pressure.InchesHg},
	{quantity.Microns, quantity.Pressure.Microns},
}

var _ = []unit[quantity.GaugePressure]{
	{quantity.PSIG, quantity.GaugePressure.PSIG},
	{quantity.KilopascalsGauge, quantity.GaugePressure.KilopascalsGauge},
	{quantity.BarGauge, quantity.GaugePressure.BarGauge},
}

var (
	_ = unit[quantity.StaticPressure]{quantity.InchesWater, quantity.StaticPressure.InchesWater}
	_ = unit[quantity.Mass]{quantity.Pounds, quantity.Mass.Pounds}
	_ = unit[quantity.Mass]{quantity.Ounces, quantity.Mass.Ounces}
	_ = unit[quantity.Mass]{quantity.Kilograms, quantity.Mass.Kilograms}
	_ = unit[quantity.MassFlow]{quantity.KilogramsPerSecond, quantity.MassFlow.KilogramsPerSecond}
	_ = unit[quantity.MassFlow]{quantity.PoundsPerHour, quantity.MassFlow.PoundsPerHour}
	_ = unit[quantity.VolumeFlow]{quantity.CFM, quantity.VolumeFlow.CFM}
	_ = unit[quantity.VolumeFlow]{quantity.LitersPerSecond, quantity.VolumeFlow.LitersPerSecond}
	_ = unit[quantity.Power]{quantity.Tons, quantity.Power.Tons}
	_ = unit[quantity.Power]{quantity.BtuPerHour, quantity.Power.BtuPerHour}
	_ = unit[quantity.Power]{quantity.Watts, quantity.Power.Watts}
	_ = unit[quantity.SpecificEnthalpy]{quantity.BtuPerPound, quantity.SpecificEnthalpy.BtuPerPound}
	_ = unit[quantity.SpecificEnthalpy]{
		quantity.KilojoulesPerKilogram, quantity.SpecificEnthalpy.KilojoulesPerKilogram,
	}
	_ = unit[quantity.SpecificEntropy]{
		quantity.BtuPerPoundRankine, quantity.SpecificEntropy.BtuPerPoundRankine,
	}
	_ = unit[quantity.Density]{quantity.PoundsPerCubicFoot, quantity.Density.PoundsPerCubicFoot}
	_ = unit[quantity.SpecificVolume]{
		quantity.CubicFeetPerPound, quantity.SpecificVolume.CubicFeetPerPound,
	}
	_ = unit[quantity.Velocity]{quantity.FeetPerMinute, quantity.Velocity.FeetPerMinute}
	_ = unit[quantity.Area]{quantity.SquareFeet, quantity.Area.SquareFeet}
	_ = unit[quantity.Length]{quantity.Feet, quantity.Length.Feet}
	_ = unit[quantity.Current]{quantity.Amperes, quantity.Current.Amperes}
	_ = unit[quantity.Voltage]{quantity.Volts, quantity.Voltage.Volts}

	_ func(
		quantity.Temperature, quantity.Temperature,
	) quantity.TemperatureDelta = quantity.Temperature.Sub
	_ func(
		quantity.Temperature, quantity.TemperatureDelta,
	) quantity.Temperature = quantity.Temperature.Add
	_ func(
		quantity.GaugePressure, quantity.Pressure,
	) quantity.Pressure = quantity.GaugePressure.Absolute
	_ func(quantity.Pressure, quantity.Pressure) quantity.GaugePressure = quantity.Pressure.Gauge
	_ func(quantity.Length) quantity.Pressure                           = quantity.AtmosphereAt
	_ func(
		quantity.Temperature, quantity.TemperatureDelta,
	) quantity.Uncertain[quantity.Temperature] = quantity.Temperature.PlusMinus
)

// text is what every quantity is: shown, written and read with its unit.
type text[T quantity.Quantity] interface {
	*T
	encoding.TextMarshaler
	encoding.TextUnmarshaler
	fmt.Stringer
}

func readsAndWrites[T quantity.Quantity, _ text[T]]() {}

var _ = []func(){
	readsAndWrites[quantity.Area], readsAndWrites[quantity.Conductance],
	readsAndWrites[quantity.Current], readsAndWrites[quantity.Density],
	readsAndWrites[quantity.GaugePressure], readsAndWrites[quantity.HeatingValue],
	readsAndWrites[quantity.Length], readsAndWrites[quantity.Mass],
	readsAndWrites[quantity.MassFlow], readsAndWrites[quantity.Power],
	readsAndWrites[quantity.Pressure], readsAndWrites[quantity.SpecificEnthalpy],
	readsAndWrites[quantity.SpecificEntropy], readsAndWrites[quantity.SpecificVolume],
	readsAndWrites[quantity.StaticPressure], readsAndWrites[quantity.Temperature],
	readsAndWrites[quantity.TemperatureDelta], readsAndWrites[quantity.Velocity],
	readsAndWrites[quantity.Voltage], readsAndWrites[quantity.Volume],
	readsAndWrites[quantity.VolumeFlow],
}

type fluid = *refrigerant.Refrigerant

var (
	_ func(string) (fluid, error)                          = refrigerant.Lookup
	_ func() []fluid                                       = refrigerant.All
	_ func(string, []refrigerant.Component) (fluid, error) = refrigerant.NewBlend
	_ error                                                = refrigerant.ErrUnknownRefrigerant

	_ func(fluid) string                    = fluid.Designation
	_ func(fluid) []refrigerant.Component   = fluid.Composition
	_ func(fluid) refrigerant.SafetyGroup   = fluid.SafetyGroup
	_ func(fluid) bool                      = fluid.Flammable
	_ func(fluid) refrigerant.GWP           = fluid.GWP
	_ func(fluid) refrigerant.CriticalPoint = fluid.Critical
	_ func(fluid) refrigerant.Limits        = fluid.Limits
	_ func(fluid) (bool, string)            = fluid.Estimated

	_ = []func(fluid, quantity.Temperature) (quantity.Pressure, error){
		fluid.BubblePressure, fluid.DewPressure,
	}
	_ = []func(fluid, quantity.Pressure) (quantity.Temperature, error){
		fluid.BubbleTemperature, fluid.DewTemperature,
	}

	_ func(fluid, quantity.Pressure) (quantity.TemperatureDelta, error) = fluid.Glide

	_ = []func(fluid, quantity.Pressure, quantity.Temperature) (quantity.TemperatureDelta, error){
		fluid.Superheat, fluid.Subcooling,
	}
	_ = []func(fluid, quantity.Temperature) (refrigerant.State, error){
		fluid.SaturatedLiquid, fluid.SaturatedVapor,
	}

	_ func(fluid, quantity.Pressure, quantity.Temperature) (refrigerant.State, error) = fluid.State
	_ func(
		fluid, quantity.Pressure, quantity.SpecificEnthalpy,
	) (refrigerant.State, error) = fluid.StateAtEnthalpy
	_ func(
		fluid, quantity.Pressure, quantity.SpecificEntropy,
	) (refrigerant.State, error) = fluid.StateAtEntropy

	_ = refrigerant.State{
		Phase: refrigerant.Vapor, Pressure: quantity.Pressure(0),
		Temperature: quantity.Temperature(0), Density: quantity.Density(0),
		Enthalpy: quantity.SpecificEnthalpy(0),
		Entropy:  quantity.SpecificEntropy(0), Cp: quantity.SpecificHeat(0),
		SpeedOfSound: quantity.Velocity(0), Quality: float64(0),
	}
)

var (
	_ = []func(dryBulb, other quantity.Temperature, p quantity.Pressure) (psychro.Air, error){
		psychro.FromWetBulb, psychro.FromDewPoint,
	}
	_ = []func(
		dryBulb quantity.Temperature, other float64, p quantity.Pressure,
	) (psychro.Air, error){
		psychro.FromRelativeHumidity, psychro.FromHumidityRatio,
	}
	_ func(
		quantity.Temperature, quantity.SpecificEnthalpy, quantity.Pressure,
	) (psychro.Air, error) = psychro.FromEnthalpy

	_ = []func(psychro.Air) quantity.Temperature{
		psychro.Air.DryBulb, psychro.Air.WetBulb, psychro.Air.DewPoint,
	}
	_ = []func(psychro.Air) float64{
		psychro.Air.RelativeHumidity, psychro.Air.HumidityRatio, psychro.Air.DegreeOfSaturation,
	}
	_ = []func(psychro.Air) quantity.Pressure{psychro.Air.VaporPressure, psychro.Air.Pressure}

	_ func(psychro.Air) quantity.SpecificEnthalpy = psychro.Air.Enthalpy
	_ func(psychro.Air) quantity.SpecificVolume   = psychro.Air.SpecificVolume
	_ func(psychro.Air) quantity.Density          = psychro.Air.Density

	_ func(...psychro.Stream) (psychro.Mixture, error)                 = psychro.Mix
	_ func(psychro.Air, quantity.Temperature) (psychro.Process, error) = psychro.SensibleHeatCool
	_ func(
		psychro.Air, quantity.Temperature, float64,
	) (psychro.Process, error) = psychro.CoolAndDehumidify
	_ func(
		dry, wet quantity.Temperature, p quantity.Pressure,
	) (psychro.Air, error) = psychro.RealGas.FromWetBulb
)

var (
	_ func(satline.Visit) (satline.Assessment, error)                     = satline.Assess
	_ func(satline.Visit, ...satline.Scenario) ([]satline.Outlook, error) = satline.Forecast
	_ func([]byte) (satline.Visit, error)                                 = satline.DecodeVisit
	_ func(
		quantity.Temperature,
	) satline.Reading[quantity.Temperature] = satline.Measured[quantity.Temperature]
	_ func(
		quantity.Uncertain[quantity.Temperature],
	) satline.Reading[quantity.Temperature] = satline.ReadingOf[quantity.Temperature]
	_ func(
		quantity.Temperature, quantity.Temperature,
	) (quantity.TemperatureDelta, error) = charge.TableSuperheat
	_ func(charge.Measurement, charge.Target) (charge.Verdict, error) = charge.Judge
	_ func(charge.Dosing) (charge.Dose, error)                        = charge.Dosing.Next
	_ func(
		quantity.Temperature, quantity.Temperature,
	) (quantity.TemperatureDelta, error) = airside.TargetSplit
	_ func(
		fluid, quantity.Power, refrigerant.Metering,
	) (*cycle.System, error) = cycle.DesignResidential
)

// One type catches a value out of range from every package.
var _ = []*quantity.RangeError{
	(*refrigerant.RangeError)(nil), (*psychro.RangeError)(nil), (*charge.RangeError)(nil),
	(*airside.RangeError)(nil), (*cycle.RangeError)(nil),
}

var _, _ = errors.AsType[*quantity.RangeError], errors.AsType[*refrigerant.UnknownError]
