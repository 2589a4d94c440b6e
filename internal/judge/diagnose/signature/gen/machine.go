package main

import (
	"errors"
	"math"
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// A sample is a machine in some weather with one fault.
type sample struct {
	system   *cycle.System
	kind     int // of population.Kinds
	nominal  quantity.Power
	fluid    signature.Fluid
	weather  cycle.Conditions
	slight   cycle.Faults // what no machine is free of, sound or not
	faults   cycle.Faults
	severity float64
	// leak is the share of attic air that joins the return past its reading.
	leak  float64
	attic quantity.Temperature
	// supplyGain is what the supply air gains before it is read.
	supplyGain quantity.TemperatureDelta
	// dischargeFall is what the discharge gas loses up to the clamp.
	dischargeFall quantity.TemperatureDelta
}

var refrigerants = []string{"R-410A", "R-410A", "R-22", "R-32", "R-454B", "R-407C"}

// draw makes a machine of the population, with any refrigerant: what a refrigerant does to
// a machine is kept apart from which machines it is found in.
func (s *sample) draw(rng *rand.Rand, d signature.Device) error {
	uniform := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	r, err := refrigerant.Lookup(refrigerants[rng.IntN(len(refrigerants))])
	if err != nil {
		return err
	}
	if s.fluid, err = signature.FluidOf(r); err != nil {
		return err
	}
	metering := refrigerant.FixedRestrictor
	if d == signature.Valve {
		metering = refrigerant.TXV
	}
	m, err := population.Draw(rng, population.Options{Metering: metering, Refrigerant: r})
	if err != nil {
		return err
	}
	s.kind, s.nominal = m.Index(), m.Nominal
	s.supplyGain, s.dischargeFall = m.SupplyGain, m.DischargeFall
	if s.system, err = m.System.Tuned(cycle.Tuning{Form: doubt(rng)}); err != nil {
		return err
	}
	// Most days are ordinary; some are cool nights or cold rooms.
	wet, outdoor := uniform(56, 73), uniform(62, 119)
	if rng.IntN(5) == 0 {
		wet = uniform(50, 60)
	}
	if rng.IntN(6) == 0 {
		outdoor = uniform(48, 70)
	}
	s.weather = cycle.Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(outdoor),
		ReturnWetBulb:  quantity.Fahrenheit(wet),
		ReturnDryBulb:  quantity.Fahrenheit(max(wet+uniform(5, 17), 64)),
	}
	s.slight = m.Own
	s.faults = s.slight
	s.attic = quantity.Fahrenheit(uniform(95, 130))
	// A third of the machines stand in the hills, up to where few people live.
	if rng.IntN(3) == 0 {
		s.weather.Elevation = quantity.Feet(uniform(0, 9000))
	}
	return nil
}

// doubt is how this machine departs from the model: reality is not the model,
// and the table must not be surer than that. The powers that coils and metering
// device follow are drawn about those of the model, as widely as published
// correlations differ, by judgement; and any share of the liquid that comes back is swept.
func doubt(rng *rand.Rand) cycle.Form {
	between := func(low, high, x float64) float64 { return min(max(x, low), high) }
	return cycle.Form{
		AirExponent:         between(0.35, 0.95, 0.672+0.12*rng.NormFloat64()),
		RefrigerantExponent: between(0.4, 1.1, 0.8+0.15*rng.NormFloat64()),
		MeteringPressure:    between(-0.3, 0.3, 0.1*rng.NormFloat64()),
		MeteringSubcooling:  between(-0.2, 0.2, 0.06*rng.NormFloat64()),
		LiquidSwept:         rng.Float64(),
	}
}

var errRange = errors.New("a machine outside the model")

// solve returns the sample, and false where the machine would stop.
func (s *sample) solve() (signature.Sample, bool, error) {
	out := signature.Sample{
		Fluid: s.fluid, Kind: s.kind, Severity: s.severity,
		Weather: signature.Weather{
			Outdoor:       float64(s.weather.OutdoorDryBulb),
			ReturnWetBulb: float64(s.weather.ReturnWetBulb),
			ReturnDryBulb: float64(s.weather.ReturnDryBulb),
			Thin: 1 - float64(
				quantity.AtmosphereAt(s.weather.Elevation)/quantity.StandardAtmosphere,
			),
		},
	}
	good, err := s.system.Solve(s.weather, s.slight)
	if err != nil {
		return out, false, err
	}
	entering := s.weather
	if s.leak > 0 {
		if entering, err = s.mixed(); err != nil {
			return out, false, err
		}
	}
	bad, err := s.system.Solve(entering, s.faults)
	if err != nil {
		return out, false, err
	}
	if good.Limit != 0 || bad.Limit != 0 {
		return out, false, nil
	}
	if out.Sound, err = s.read(&good, &s.slight); err != nil {
		return out, false, err
	}
	if out.Faulty, err = s.read(&bad, &s.faults); err != nil {
		return out, false, err
	}
	out.Capacity = 1 - float64(bad.Capacity)/float64(good.Capacity)
	out.Efficiency = 1 - bad.COP/good.COP
	return out, true, nil
}

// mixed is the air at the coil where attic air joins the return: as humid as
// the outdoors of a summer day, here a dew point of 60 °F.
func (s *sample) mixed() (cycle.Conditions, error) {
	p := quantity.AtmosphereAt(s.weather.Elevation)
	room, err := psychro.FromWetBulb(s.weather.ReturnDryBulb, s.weather.ReturnWetBulb, p)
	if err != nil {
		return s.weather, err
	}
	hot, err := psychro.FromDewPoint(s.attic, quantity.Fahrenheit(60), p)
	if err != nil {
		return s.weather, err
	}
	w := (1-s.leak)*room.HumidityRatio() + s.leak*hot.HumidityRatio()
	t := (1-s.leak)*float64(room.DryBulb()) + s.leak*float64(hot.DryBulb())
	air, err := psychro.FromHumidityRatio(quantity.Temperature(t), w, p)
	if err != nil {
		return s.weather, err
	}
	c := s.weather
	c.ReturnDryBulb, c.ReturnWetBulb = air.DryBulb(), air.WetBulb()
	return c, nil
}

// read takes the readings as gauges and thermometers would.
func (s *sample) read(o *cycle.Operating, f *cycle.Faults) (v signature.Vector, err error) {
	r := s.system.Refrigerant()
	evapDew, e1 := r.DewTemperature(o.Suction.Pressure)
	evapBubble, e2 := r.BubbleTemperature(o.Suction.Pressure)
	condDew, e3 := r.DewTemperature(o.Liquid.Pressure)
	condBubble, e4 := r.BubbleTemperature(o.Liquid.Pressure)
	if err := errors.Join(e1, e2, e3, e4); err != nil {
		return v, err
	}
	condensing := (float64(condDew) + float64(condBubble)) / 2
	outdoor := float64(s.weather.OutdoorDryBulb)
	v[signature.Evaporating] = float64(evapDew) - 0.4*float64(evapDew-evapBubble)
	v[signature.Superheat] = float64(o.Suction.Temperature - evapDew)
	v[signature.CondensingOver] = condensing - outdoor
	v[signature.Subcooling] = float64(condBubble - o.Liquid.Temperature)
	v[signature.DischargeOver] = float64(o.Discharge.Temperature.Add(-s.dischargeFall)) - condensing
	read := o.Supply.Add(s.supplyGain)
	v[signature.Split] = float64(s.weather.ReturnDryBulb - read)
	supply, err := psychro.FromHumidityRatio(
		read, o.SupplyHumidityRatio, quantity.AtmosphereAt(s.weather.Elevation),
	)
	if err != nil {
		return v, err
	}
	v[signature.WetBulbSplit] = float64(s.weather.ReturnWetBulb - supply.WetBulb())
	v[signature.CondenserRise] = float64(o.CondenserLeaving) - outdoor
	airflow := float64(s.system.Spec().Airflow) * (1 + f.IndoorAirflow)
	v[signature.Airflow] = 100 * math.Log(airflow/float64(quantity.CFM(400*s.nominal.Tons())))
	v[signature.Power] = 100 * math.Log(float64(o.Power)/float64(s.nominal))
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return v, errRange
		}
	}
	return v, nil
}
