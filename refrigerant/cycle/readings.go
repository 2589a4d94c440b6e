package cycle

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// Readings are what was read of one machine that cools, at one steady time. Whatever was not
// read is nil; the more there is, the narrower the fit. A reading is written
// new(quantity.PSIG(56).PlusMinus(quantity.PSIG(0.6))).
type Readings struct {
	// Conditions of the readings. Airflow 0 is not measured: it is then one of the
	// unknowns.
	Conditions Conditions
	// OutdoorStd, DryBulbStd and WetBulbStd are the standard uncertainties of the air
	// temperatures; 0 takes 0.4 K.
	OutdoorStd, DryBulbStd, WetBulbStd quantity.TemperatureDelta
	// AirflowStd is that of a measured airflow, relative; 0 takes 0.08.
	AirflowStd float64

	SuctionPressure, LiquidPressure, DischargePressure *quantity.Uncertain[quantity.GaugePressure]
	SuctionLine, LiquidLine, DischargeLine             *quantity.Uncertain[quantity.Temperature]
	Supply, CondenserLeaving                           *quantity.Uncertain[quantity.Temperature]
	// Power is that of compressor and both fans.
	Power *quantity.Uncertain[quantity.Power]
}

// A reading pairs what was read with where the model has it, in kelvins or as a logarithm.
type reading struct {
	name          string
	measured, std float64
	of            func(*Operating) float64
	show          func(float64) fmt.Stringer
}

// The readings by their names.
const (
	suctionPressure   = "suction pressure"
	liquidPressure    = "liquid pressure"
	dischargePressure = "discharge pressure"
	suctionLine       = "suction line temperature"
	liquidLine        = "liquid line temperature"
	dischargeLine     = "discharge line temperature"
	supply            = "supply dry bulb"
	condenserLeaving  = "air leaving the condenser"
	power             = "electric power"
)

// What the model itself is off by at the fit, beyond the instruments: the spread of real
// machines about a model of this kind (own judgement; the cover of the bands is tested
// against machines with other laws).
const (
	pressureDoubt    = 0.010 // relative
	temperatureDoubt = 0.5   // K
	dischargeDoubt   = 2.5
	powerDoubt       = 0.02 // relative
)

// check refuses what no instrument shows: a fit to it would say nothing.
func (v *Readings) check() error {
	if err := v.Conditions.check(); err != nil {
		return err
	}
	const advice = "read it again, in the unit it was read in"
	vacuum := quantity.Pascals(0).Gauge(v.atmosphere())
	for _, p := range []struct {
		name string
		u    *quantity.Uncertain[quantity.GaugePressure]
	}{
		{suctionPressure, v.SuctionPressure}, {liquidPressure, v.LiquidPressure},
		{dischargePressure, v.DischargePressure},
	} {
		if err := readable(p.name, p.u, vacuum+1, quantity.BarGauge(150), advice); err != nil {
			return err
		}
	}
	for _, t := range []struct {
		name string
		u    *quantity.Uncertain[quantity.Temperature]
	}{
		{suctionLine, v.SuctionLine}, {liquidLine, v.LiquidLine}, {dischargeLine, v.DischargeLine},
		{supply, v.Supply}, {condenserLeaving, v.CondenserLeaving},
	} {
		if err := readable(
			t.name, t.u, quantity.Celsius(-60), quantity.Celsius(250), advice,
		); err != nil {
			return err
		}
	}
	if err := readable(
		power, v.Power, quantity.Watts(1), quantity.Kilowatts(1000),
		"leave it out where the meter shows nothing",
	); err != nil {
		return err
	}
	for _, d := range []quantity.TemperatureDelta{v.OutdoorStd, v.DryBulbStd, v.WetBulbStd} {
		if err := limit.Within(
			"standard uncertainty of an air temperature", d, 0, quantity.CelsiusDelta(20),
			"0 takes 0.4 K",
		); err != nil {
			return err
		}
	}
	return limit.Within(
		"relative standard uncertainty of the airflow", quantity.Number(v.AirflowStd), 0, 1,
		"0 takes 0.08",
	)
}

// atmosphere is what the gauges of v count from.
func (v *Readings) atmosphere() quantity.Pressure {
	return quantity.AtmosphereAt(v.Conditions.Elevation)
}

// readings lists what v has, pressures and power as logarithms. check has let them through.
func (v *Readings) readings() []reading {
	var all []reading
	atmosphere := v.atmosphere()
	gauge := func(
		name string, u *quantity.Uncertain[quantity.GaugePressure],
		of func(*Operating) quantity.Pressure,
	) {
		if u == nil {
			return
		}
		p := float64(u.Value.Absolute(atmosphere))
		all = append(all, reading{
			name, math.Log(p), math.Hypot(u.Std/p, pressureDoubt),
			func(o *Operating) float64 { return math.Log(float64(of(o))) },
			func(x float64) fmt.Stringer {
				return quantity.Pressure(math.Exp(x)).Gauge(atmosphere)
			},
		})
	}
	clamp := func(
		name string, u *quantity.Uncertain[quantity.Temperature], doubt float64,
		of func(*Operating) quantity.Temperature,
	) {
		if u == nil {
			return
		}
		all = append(all, reading{
			name, float64(u.Value), math.Hypot(u.Std, doubt),
			func(o *Operating) float64 { return float64(of(o)) },
			func(x float64) fmt.Stringer { return quantity.Temperature(x) },
		})
	}
	gauge(
		suctionPressure, v.SuctionPressure,
		func(o *Operating) quantity.Pressure { return o.Suction.Pressure },
	)
	gauge(
		liquidPressure, v.LiquidPressure,
		func(o *Operating) quantity.Pressure { return o.Liquid.Pressure },
	)
	gauge(
		dischargePressure, v.DischargePressure,
		func(o *Operating) quantity.Pressure { return o.Discharge.Pressure },
	)
	clamp(
		suctionLine, v.SuctionLine, temperatureDoubt,
		func(o *Operating) quantity.Temperature { return o.Suction.Temperature },
	)
	clamp(
		liquidLine, v.LiquidLine, temperatureDoubt,
		func(o *Operating) quantity.Temperature { return o.Liquid.Temperature },
	)
	clamp(
		dischargeLine, v.DischargeLine, dischargeDoubt,
		func(o *Operating) quantity.Temperature { return o.Discharge.Temperature },
	)
	clamp(
		supply, v.Supply, temperatureDoubt,
		func(o *Operating) quantity.Temperature { return o.Supply },
	)
	clamp(
		condenserLeaving, v.CondenserLeaving, temperatureDoubt,
		func(o *Operating) quantity.Temperature { return o.CondenserLeaving },
	)
	if u := v.Power; u != nil {
		all = append(all, reading{
			power, math.Log(float64(u.Value)), math.Hypot(u.Std/float64(u.Value), powerDoubt),
			func(o *Operating) float64 { return math.Log(float64(o.Power)) },
			func(x float64) fmt.Stringer { return quantity.Power(math.Exp(x)) },
		})
	}
	return all
}
