package satline

import (
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// derive works out what follows from the readings by themselves.
func (j *job) derive() error {
	d, r := &j.derived, &j.readings
	var err error
	if r.SuctionPressure != nil {
		if d.EvaporatingDew, err = j.saturation(*r.SuctionPressure, j.fluid.DewTemperature); err != nil {
			return rangeProblem("readings.suctionPressure", err)
		}
	}
	if high, field := j.highSide(); high != nil {
		if d.CondensingBubble, err = j.saturation(*high, j.fluid.BubbleTemperature); err != nil {
			return rangeProblem(field, err)
		}
		if j.condensingDew, err = j.saturation(*high, j.fluid.DewTemperature); err != nil {
			return rangeProblem(field, err)
		}
		middle := temperatureReading{
			Value: d.CondensingBubble.Value.Add(j.condensingDew.Value.Sub(d.CondensingBubble.Value) / 2),
			Std:   d.CondensingBubble.Std,
		}
		d.CondensingOverOutdoor = difference(&middle, r.OutdoorDryBulb)
		if r.SuctionPressure != nil {
			if ratio, std, err := charge.CompressionRatio(j.absolute(*r.SuctionPressure), j.absolute(*high)); err == nil {
				d.CompressionRatio, d.CompressionRatioStd = &ratio, std
			}
		}
	}
	d.Superheat = difference(r.SuctionLine, d.EvaporatingDew)
	d.Subcooling = difference(d.CondensingBubble, r.LiquidLine)
	d.Approach = difference(r.LiquidLine, r.OutdoorDryBulb)
	d.TemperatureSplit = difference(r.ReturnDryBulb, r.SupplyDryBulb)
	if r.ReturnDryBulb != nil && r.ReturnWetBulb != nil {
		if humidity, std, err := relativeHumidity(*r.ReturnDryBulb, *r.ReturnWetBulb, j.atmosphere.Pressure.Value); err == nil {
			d.ReturnHumidity, d.ReturnHumidityStd = &humidity, std
		}
	}
	return nil
}

// relativeHumidity carries the uncertainty of both thermometers through by
// differences into drier air, which is air always (GUM 5.1.3, note 2). That of
// the atmosphere does not count beside them.
func relativeHumidity(dryBulb, wetBulb temperatureReading, p quantity.Pressure) (value, std float64, err error) {
	at := func(warmer, drier quantity.Temperature) (float64, error) {
		air, err := psychro.FromWetBulb(dryBulb.Value+warmer, wetBulb.Value-drier, p)
		return air.RelativeHumidity(), err
	}
	if value, err = at(0, 0); err != nil {
		return 0, 0, err
	}
	const step = quantity.Temperature(0.05)
	warmer, err := at(step, 0)
	if err != nil {
		return 0, 0, err
	}
	drier, err := at(0, step)
	if err != nil {
		return value, 0, nil // the driest air there is
	}
	return value, math.Hypot((warmer-value)*dryBulb.Std, (drier-value)*wetBulb.Std) / float64(step), nil
}

// highSide is the pressure that stands for that of the liquid line: the reading
// itself, or what prepareHighSide made of the discharge pressure.
func (j *job) highSide() (*gaugeReading, string) {
	switch r := &j.readings; {
	case r.LiquidPressure != nil:
		return r.LiquidPressure, "readings.liquidPressure"
	case r.DischargePressure != nil:
		return j.standIn(), "readings.dischargePressure"
	}
	return nil, ""
}

// standIn makes a liquid pressure of a discharge pressure. The condenser and
// its pipes take 1 to 5 % of the pressure on comfort cooling machines; half of
// that is taken off, with the rest as a rectangular doubt (common practice, no
// source).
func (j *job) standIn() *gaugeReading {
	g := *j.readings.DischargePressure
	p := float64(j.absolute(g).Value)
	return &gaugeReading{
		Value: g.Value - quantity.GaugePressure(0.03*p),
		Std:   math.Hypot(g.Std, 0.02*p/math.Sqrt(3)),
	}
}

// absolute turns a gauge reading into an absolute pressure; the uncertainties
// of gauge and atmosphere are independent.
func (j *job) absolute(g gaugeReading) quantity.Uncertain[quantity.Pressure] {
	atm := j.atmosphere.Pressure
	return quantity.Uncertain[quantity.Pressure]{
		Value: g.Value.Absolute(atm.Value),
		Std:   math.Hypot(g.Std, atm.Std),
	}
}

// saturation looks up a saturation temperature at a gauge reading and carries
// the uncertainty through by the slope of the curve (GUM 5.1.2).
func (j *job) saturation(g gaugeReading, at func(quantity.Pressure) (quantity.Temperature, error)) (*temperatureReading, error) {
	p := j.absolute(g)
	t, err := at(p.Value)
	if err != nil {
		return nil, err
	}
	out := temperatureReading{Value: t}
	step := quantity.Pressure(math.Max(p.Std, 1))
	if above, err := at(p.Value + step); err == nil {
		out.Std = math.Abs(float64(above.Sub(t))) / float64(step) * p.Std
	} else if below, err := at(p.Value - step); err == nil {
		out.Std = math.Abs(float64(t.Sub(below))) / float64(step) * p.Std
	}
	return &out, nil
}

// difference is a less b, with the uncertainty of two independent readings.
func difference(a, b *temperatureReading) *quantity.Uncertain[quantity.TemperatureDelta] {
	if a == nil || b == nil {
		return nil
	}
	return &quantity.Uncertain[quantity.TemperatureDelta]{Value: a.Value.Sub(b.Value), Std: math.Hypot(a.Std, b.Std)}
}
