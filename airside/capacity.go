package airside

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// An AirReading is one place in the air stream, read with a dry and a wet
// thermometer.
type AirReading struct {
	DryBulb quantity.Uncertain[quantity.Temperature] `json:"dryBulb"`
	WetBulb quantity.Uncertain[quantity.Temperature] `json:"wetBulb"`
}

// CapacityReadings are what a capacity on the air side is measured from.
type CapacityReadings struct {
	Return AirReading `json:"return"`
	Supply AirReading `json:"supply"`
	// Airflow at the condition of the return air.
	Airflow quantity.Uncertain[quantity.VolumeFlow] `json:"airflow"`
	// Atmosphere is a barometer's reading, or quantity.AtmosphereAt of the
	// elevation with some 800 Pa for the weather.
	Atmosphere quantity.Uncertain[quantity.Pressure] `json:"atmosphere"`
}

// A Capacity is what a coil takes out of the air. Every part is negative where
// the coil adds it: a heating coil has negative sensible capacity.
type Capacity struct {
	// Total is the heat taken out of the air, less what the condensate carries
	// away at the temperature of the leaving air.
	Total quantity.Uncertain[quantity.Power] `json:"total"`
	// Sensible is the heat that the leaving air would need to be back at the
	// entering dry bulb; Latent is the rest. Sensible and Latent add up to Total.
	Sensible quantity.Uncertain[quantity.Power] `json:"sensible"`
	Latent   quantity.Uncertain[quantity.Power] `json:"latent"`
	// SensibleHeatRatio is Sensible over Total, and zero where Total is none.
	SensibleHeatRatio    float64 `json:"sensibleHeatRatio"`
	SensibleHeatRatioStd float64 `json:"sensibleHeatRatioStd"`
	// Condensate is the water that leaves the air.
	Condensate quantity.Uncertain[quantity.MassFlow] `json:"condensate"`
	// DryAir is the mass flow of dry air that all of this is counted on.
	DryAir quantity.Uncertain[quantity.MassFlow] `json:"dryAir"`
	// Budget says where the uncertainty of Total comes from.
	Budget quantity.Budget[quantity.Power] `json:"budget"`
}

// CapacityOf returns the capacity that cools a flow of air, at the condition in
// which it enters, from one state to the other. No uncertainty is stated.
//
// It is the energy and water balance of ASHRAE Handbook Fundamentals, chapter 1,
// moist air cooling and dehumidification, where the condensate is taken to leave
// at the temperature of the leaving air. Rating standards count it in: their
// capacity is some 0.5 % larger. Heat of a blower between the two readings is
// included: measured from return to supply the capacity is net, measured around
// the coil it is gross.
//
// The error is a *RangeError where a state is not air, the two are not at one
// pressure, or the flow is negative.
func CapacityOf(entering, leaving psychro.Air, flow quantity.VolumeFlow) (Capacity, error) {
	return capacityOfProcess(coolingProcess(entering, leaving), flow)
}

// capacityOfProcess is [CapacityOf] for a process of package psychro, with the
// condensate at the enthalpy that the process states: Total is what
// psychro.Process.HeatRate takes away.
func capacityOfProcess(process psychro.Process, flow quantity.VolumeFlow) (Capacity, error) {
	if err := checkPair(process.Start, process.End); err != nil {
		return Capacity{}, err
	}
	if err := limit.Within(
		"airflow", flow, 0, largestFlow, "it is the volume per time at the entering condition",
	); err != nil {
		return Capacity{}, err
	}
	for _, part := range []struct {
		name string
		v    quantity.SpecificEnthalpy
	}{{"heat of the process", process.Heat}, {"enthalpy of the water", process.WaterEnthalpy}} {
		if most := quantity.KilojoulesPerKilogram(5000); !(part.v >= -most && part.v <= most) {
			return Capacity{}, &RangeError{
				Quantity: part.name,
				Value:    part.v,
				Min:      -most,
				Max:      most,
				Advice:   "take the process from a function of package psychro",
			}
		}
	}
	if !(process.Water >= -10 && process.Water <= 10) {
		return Capacity{}, &RangeError{
			Quantity: "water of the process per mass of dry air",
			Value:    quantity.Number(process.Water),
			Min:      quantity.Number(-10),
			Max:      quantity.Number(10),
			Advice:   "take the process from a function of package psychro",
		}
	}
	y, err := balance(process, flow)
	if err != nil {
		return Capacity{}, err
	}
	return capacityFrom(y, &contributions{}), nil
}

// coolingProcess is the process between two states whose condensate leaves at the
// temperature of the leaving air. What would leave below 0 °C stays on the coil
// as ice, and is counted as water at 0 °C.
func coolingProcess(entering, leaving psychro.Air) psychro.Process {
	c := psychro.Process{
		Start: entering,
		End:   leaving,
		Water: leaving.HumidityRatio() - entering.HumidityRatio(),
	}
	// No liquid above the boiling point, and none condenses there.
	c.WaterEnthalpy, _ = psychro.LiquidEnthalpy(
		max(leaving.DryBulb(), quantity.Celsius(0)), leaving.Pressure(),
	)
	c.Heat = leaving.Enthalpy() - entering.Enthalpy() - quantity.SpecificEnthalpy(
		c.Water,
	)*c.WaterEnthalpy
	return c
}

func checkPair(entering, leaving psychro.Air) error {
	for _, a := range []struct {
		name string
		air  psychro.Air
	}{{"entering", entering}, {"leaving", leaving}} {
		if !a.air.IsValid() {
			return &RangeError{
				Quantity: a.name + " air",
				Advice: "it is no state of air; make it with psychro.FromWetBulb or another " +
					"constructor",
			}
		}
	}
	// A coil takes some 100 Pa from the air; a different place takes more.
	const coilDrop = 2000
	p, q := entering.Pressure(), leaving.Pressure()
	return limit.Within(
		"pressure of the leaving air", q, p-coilDrop, p+coilDrop,
		"both states are of one place; use one atmosphere for both",
	)
}

// The places of each result in outputs.
const (
	outTotal = iota
	outSensible
	outLatent
	outRatio
	outCondensate
	outDryAir
)

func balance(c psychro.Process, flow quantity.VolumeFlow) (outputs, error) {
	entering, leaving := c.Start, c.End
	m := float64(entering.DryAirFlow(flow))
	water := -m * c.Water
	h1, h2 := float64(entering.Enthalpy()), float64(leaving.Enthalpy())
	var y outputs
	if c.Water <= 0 {
		// Between the two: as warm as it came, as dry as it goes.
		dried, err := leaving.Model().
			FromHumidityRatio(entering.DryBulb(), leaving.HumidityRatio(), leaving.Pressure())
		if err != nil {
			return outputs{}, err
		}
		y[outSensible] = m * (float64(dried.Enthalpy()) - h2)
		y[outLatent] = m * (h1 - float64(dried.Enthalpy()))
	} else {
		// Where the air takes up water that state may be fog; as dry as it came
		// and as warm as it goes is not.
		warmed, err := leaving.Model().FromHumidityRatio(
			leaving.DryBulb(), entering.HumidityRatio(), leaving.Pressure(),
		)
		if err != nil {
			return outputs{}, err
		}
		y[outSensible] = m * (h1 - float64(warmed.Enthalpy()))
		y[outLatent] = m * (float64(warmed.Enthalpy()) - h2)
	}
	y[outLatent] -= water * float64(c.WaterEnthalpy)
	y[outTotal] = -m * float64(c.Heat)
	if math.Abs(y[outTotal]) > 1e-9*math.Abs(y[outSensible]) {
		y[outRatio] = y[outSensible] / y[outTotal]
	}
	y[outCondensate], y[outDryAir] = water, m
	return y, nil
}

func capacityFrom(y outputs, c *contributions) Capacity {
	power := func(k int) quantity.Uncertain[quantity.Power] {
		return quantity.Power(y[k]).PlusMinus(quantity.Power(c.std(k)))
	}
	return Capacity{
		Total: power(outTotal), Sensible: power(outSensible), Latent: power(outLatent),
		SensibleHeatRatio: y[outRatio], SensibleHeatRatioStd: c.std(outRatio),
		Condensate: quantity.MassFlow(y[outCondensate]).
			PlusMinus(quantity.MassFlow(c.std(outCondensate))),
		DryAir: quantity.MassFlow(y[outDryAir]).PlusMinus(quantity.MassFlow(c.std(outDryAir))),
		Budget: budgetOf[quantity.Power](c, outTotal, &capacityReadings),
	}
}

var capacityReadings = [maxInputs]string{
	"returnDryBulb", "returnWetBulb", "supplyDryBulb", "supplyWetBulb", "airflow", "atmosphere",
}

// MeasureCapacity is [CapacityOf] from readings, with uncertainties. A wet bulb
// that reads above its dry bulb by no more than the two thermometers explain is
// taken as saturated air; by more, the error is a *RangeError.
func MeasureCapacity(r CapacityReadings) (Capacity, error) {
	if err := r.check(); err != nil {
		return Capacity{}, err
	}
	x, std := r.inputs()
	y, c, err := propagate(x, std, func(x inputs) (outputs, error) {
		entering, leaving, err := r.states(x)
		if err != nil {
			return outputs{}, err
		}
		return balance(coolingProcess(entering, leaving), quantity.VolumeFlow(x[4]))
	})
	if err != nil {
		return Capacity{}, err
	}
	return capacityFrom(y, &c), nil
}

func (r *CapacityReadings) check() error {
	for _, u := range []struct {
		name string
		u    quantity.Uncertain[quantity.Temperature]
	}{
		{"return dry bulb", r.Return.DryBulb}, {"return wet bulb", r.Return.WetBulb},
		{"supply dry bulb", r.Supply.DryBulb}, {"supply wet bulb", r.Supply.WetBulb},
	} {
		if err := airTemperature(u.name, u.u); err != nil {
			return err
		}
	}
	if err := limit.Reading(
		"airflow", r.Airflow, 0, largestFlow,
		"it is the volume per time at the condition of the return air",
	); err != nil {
		return err
	}
	return checkAtmosphere(r.Atmosphere)
}

func checkAtmosphere(u quantity.Uncertain[quantity.Pressure]) error {
	return limit.Reading(
		"atmosphere", u, 20e3, 200e3,
		"it is the absolute pressure of the air, a barometer's or quantity.AtmosphereAt of the "+
			"elevation",
	)
}

func (r *CapacityReadings) inputs() (x, std inputs) {
	x = inputs{
		float64(r.Return.DryBulb.Value), float64(r.Return.WetBulb.Value),
		float64(r.Supply.DryBulb.Value), float64(r.Supply.WetBulb.Value), float64(r.Airflow.Value),
		float64(r.Atmosphere.Value),
	}
	std = inputs{
		r.Return.DryBulb.Std, r.Return.WetBulb.Std, r.Supply.DryBulb.Std, r.Supply.WetBulb.Std,
		r.Airflow.Std, r.Atmosphere.Std,
	}
	return x, std
}

// states returns the air before and after the coil for inputs as inputs() lays
// them out.
func (r *CapacityReadings) states(x inputs) (entering, leaving psychro.Air, err error) {
	p := quantity.Pressure(x[5])
	if entering, err = readAir(x[0], x[1], r.Return.spread(), p); err != nil {
		return entering, leaving, err
	}
	leaving, err = readAir(x[2], x[3], r.Supply.spread(), p)
	return entering, leaving, err
}

// spread is the standard uncertainty of the wet-bulb depression.
func (r AirReading) spread() float64 { return math.Hypot(r.DryBulb.Std, r.WetBulb.Std) }

// readAir takes a wet bulb above the dry bulb as saturated air where the
// instruments explain it: within two standard uncertainties (GUM 6.3.3).
func readAir(dryBulb, wetBulb, std float64, p quantity.Pressure) (psychro.Air, error) {
	const coverage = 2
	if wetBulb > dryBulb && wetBulb-dryBulb <= coverage*std {
		wetBulb = dryBulb
	}
	return psychro.FromWetBulb(quantity.Temperature(dryBulb), quantity.Temperature(wetBulb), p)
}
