package charge

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// MeasureSuperheat returns the superheat of the suction line: the line less the
// dew temperature at the suction pressure. For a blend with glide that is the
// temperature at which the last liquid evaporates; counted from the bubble
// point, the superheat would come out too high by the whole glide.
//
// The gauge counts from atm, the atmosphere at the site: at 6,000 ft the same
// reading is 2.9 psi less than at sea level. The uncertainty is first order
// (GUM 5.1.2): the line counts degree for degree, gauge and atmosphere by the
// slope of the saturation curve, and of an estimated refrigerant its
// SaturationUncertainty.
//
// A negative superheat is returned as measured. Errors are *RangeError, and
// refrigerant.ErrNoRefrigerant for a nil fluid.
func MeasureSuperheat(
	fluid *refrigerant.Refrigerant, suction quantity.Uncertain[quantity.GaugePressure],
	atm quantity.Uncertain[quantity.Pressure], line quantity.Uncertain[quantity.Temperature],
) (Measurement, error) {
	return measure(fluid, Superheat, suction, atm, line)
}

// MeasureSubcooling returns the subcooling of the liquid line: the bubble
// temperature at the liquid pressure less the line. For a blend with glide that
// is the temperature at which the last vapor condenses; counted from the dew
// point, the subcooling would come out too high by the whole glide.
//
// Uncertainty, atmosphere and errors are as for MeasureSuperheat.
func MeasureSubcooling(
	fluid *refrigerant.Refrigerant, liquid quantity.Uncertain[quantity.GaugePressure],
	atm quantity.Uncertain[quantity.Pressure], line quantity.Uncertain[quantity.Temperature],
) (Measurement, error) {
	return measure(fluid, Subcooling, liquid, atm, line)
}

func measure(
	fluid *refrigerant.Refrigerant, method Method, gauge gauge, atm pressure, line temperature,
) (Measurement, error) {
	if fluid == nil {
		return Measurement{}, refrigerant.ErrNoRefrigerant
	}
	pressureIs, lineIs := "suction pressure", "suction line temperature"
	fromPressure, fromLine, sign := fromSuctionPressure, fromSuctionLine, 1.0
	bubbleDoubt, doubt := fluid.SaturationUncertainty()
	saturation := fluid.DewTemperature
	if method == Subcooling {
		pressureIs, lineIs = "liquid pressure", "liquid line temperature"
		fromPressure, fromLine, sign = fromLiquidPressure, fromLiquidLine, -1
		saturation, doubt = fluid.BubbleTemperature, bubbleDoubt
	}
	if err := checkGauge(pressureIs, gauge, atm); err != nil {
		return Measurement{}, err
	}
	if err := checkStd(lineIs, line.Std); err != nil {
		return Measurement{}, err
	}
	p := gauge.Value.Absolute(atm.Value)
	at, err := saturation(p)
	if err != nil {
		return Measurement{}, err
	}
	m := Measurement{Method: method}
	m.Value.Value = quantity.TemperatureDelta(sign * float64(line.Value.Sub(at)))
	slope := saturationSlope(saturation, p, at)
	m.Saturation = temperature{
		Value: at,
		Std:   math.Hypot(slope*math.Hypot(gauge.Std, atm.Std), float64(doubt)),
	}
	take(&m.Budget, fromPressure, gauge.Std, -sign*slope)
	take(&m.Budget, fromAtmosphere, atm.Std, -sign*slope)
	take(&m.Budget, fromSaturation, float64(doubt), -sign)
	take(&m.Budget, fromLine, line.Std, sign)
	m.Value.Std = float64(m.Budget.Std())
	if err := m.check(); err != nil {
		return Measurement{}, err
	}
	return m, nil
}

// saturationSlope returns dT/dp in kelvin per pascal by a central difference,
// one-sided at the end of the saturation curve.
func saturationSlope(
	saturation func(quantity.Pressure) (quantity.Temperature, error), p quantity.Pressure,
	at quantity.Temperature,
) float64 {
	h := p * 1e-3
	above, below, width := at, at, quantity.Pressure(0)
	if t, err := saturation(p + h); err == nil {
		above, width = t, width+h
	}
	if t, err := saturation(p - h); err == nil {
		below, width = t, width+h
	}
	if width == 0 {
		return 0
	}
	return float64(above.Sub(below)) / float64(width)
}

func checkGauge(what string, g gauge, atm pressure) error {
	const lowest, highest = quantity.Pressure(20e3), quantity.Pressure(120e3)
	const mostStd = 1e6
	switch {
	case !(atm.Value >= lowest && atm.Value <= highest):
		return &RangeError{
			Quantity: "atmospheric pressure",
			Value:    atm.Value,
			Min:      lowest,
			Max:      highest,
			Advice:   "read a barometer at the site, or take quantity.AtmosphereAt its elevation",
		}
	case !(g.Std >= 0 && g.Std <= mostStd):
		return &RangeError{
			Quantity: "standard uncertainty of the " + what,
			Value:    quantity.Pressure(g.Std),
			Min:      quantity.Pressure(0),
			Max:      quantity.Pressure(mostStd),
			Advice:   "give one standard deviation of the gauge",
		}
	case !(atm.Std >= 0 && atm.Std <= mostStd):
		return &RangeError{
			Quantity: "standard uncertainty of the atmospheric pressure",
			Value:    quantity.Pressure(atm.Std),
			Min:      quantity.Pressure(0),
			Max:      quantity.Pressure(mostStd),
			Advice:   "give one standard deviation",
		}
	case math.IsNaN(float64(g.Value)):
		return &RangeError{
			Quantity: what,
			Value:    g.Value,
			Advice:   "read the gauge again; this is not a number",
		}
	}
	return nil
}

// MeasureApproach returns the approach: the liquid line less the outdoor air
// that enters the condenser. The error is a *RangeError.
func MeasureApproach(
	liquidLine, outdoor quantity.Uncertain[quantity.Temperature],
) (Measurement, error) {
	for _, c := range [2]struct {
		name string
		std  float64
	}{{"liquid line temperature", liquidLine.Std}, {"outdoor dry bulb", outdoor.Std}} {
		if err := checkStd(c.name, c.std); err != nil {
			return Measurement{}, err
		}
	}
	m := Measurement{Method: Approach, Saturation: outdoor}
	m.Value.Value = liquidLine.Value.Sub(outdoor.Value)
	take(&m.Budget, fromLiquidLine, liquidLine.Std, 1)
	take(&m.Budget, fromOutdoorDryBulb, outdoor.Std, -1)
	m.Value.Std = float64(m.Budget.Std())
	if err := m.check(); err != nil {
		return Measurement{}, err
	}
	return m, nil
}
