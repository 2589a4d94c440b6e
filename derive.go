package satline

import (
	"errors"
	"fmt"
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// derive works out what follows from the readings by themselves.
func derive(p *prepared, r *Readings) (d Derived, err error) {
	if refused := p.refused(r); len(refused) > 0 {
		return d, refused[0]
	}
	bubbleDoubt, dewDoubt := p.fluid.SaturationUncertainty()
	if r.SuctionPressure.taken {
		d.EvaporatingDew, err = saturation(p, r.SuctionPressure.of, p.fluid.DewTemperature, dewDoubt)
		if err != nil {
			return d, rangeProblem("readings.suctionPressure", err)
		}
	}
	if high, field := highSide(p, r); high != nil {
		d.CondensingBubble, err = saturation(p, *high, p.fluid.BubbleTemperature, bubbleDoubt)
		if err == nil {
			d.CondensingDew, err = saturation(p, *high, p.fluid.DewTemperature, dewDoubt)
		}
		if err != nil {
			return d, rangeProblem(field, err)
		}
		middle := temperatureReading{
			Value: d.CondensingBubble.Value.Add(
				d.CondensingDew.Value.Sub(d.CondensingBubble.Value) / 2,
			),
			Std: (d.CondensingBubble.Std + d.CondensingDew.Std) / 2, // off together
		}
		d.CondensingOverOutdoor = difference(&middle, r.OutdoorDryBulb.read())
		if r.SuctionPressure.taken {
			low := p.absolute(r.SuctionPressure.of)
			if ratio, std, err := charge.CompressionRatio(low, p.absolute(*high)); err == nil {
				d.CompressionRatio = &quantity.UncertainNumber{Value: ratio, Std: std}
			}
		}
	}
	d.Superheat = difference(r.SuctionLine.read(), d.EvaporatingDew)
	d.Subcooling = difference(d.CondensingBubble, r.LiquidLine.read())
	d.Approach = difference(r.LiquidLine.read(), r.OutdoorDryBulb.read())
	d.TemperatureSplit = difference(r.ReturnDryBulb.read(), r.SupplyDryBulb.read())
	if r.ReturnDryBulb.taken && r.ReturnWetBulb.taken {
		share, std, err := relativeHumidity(
			r.ReturnDryBulb.of, r.ReturnWetBulb.of, p.atmosphere.Pressure.Value,
		)
		if err == nil {
			d.ReturnHumidity = &quantity.UncertainNumber{Value: share, Std: std}
		}
	}
	return d, nil
}

// relativeHumidity carries the uncertainty of both thermometers through by
// differences into drier air, which is air always (GUM 5.1.3, note 2). That of
// the atmosphere does not count beside them.
func relativeHumidity(
	dryBulb, wetBulb temperatureReading, p quantity.Pressure,
) (value, std float64, err error) {
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
	std = math.Hypot((warmer-value)*dryBulb.Std, (drier-value)*wetBulb.Std) / float64(step)
	return value, std, nil
}

// highSide is the pressure that stands for that of the liquid line: the reading
// itself, or what standIn makes of the discharge pressure.
func highSide(p *prepared, r *Readings) (*gaugeReading, string) {
	switch {
	case r.LiquidPressure.taken:
		return r.LiquidPressure.read(), "readings.liquidPressure"
	case r.DischargePressure.taken:
		return standIn(p, r.DischargePressure.of), "readings.dischargePressure"
	}
	return nil, ""
}

// standIn makes a liquid pressure of a discharge pressure. The condenser and
// its pipes take 1 to 5 % of the pressure on comfort cooling machines; half of
// that is taken off, with the rest as a rectangular doubt (common practice, no
// source).
func standIn(p *prepared, g gaugeReading) *gaugeReading {
	absolute := float64(p.absolute(g).Value)
	return &gaugeReading{
		Value: g.Value - quantity.GaugePressure(0.03*absolute),
		Std:   math.Hypot(g.Std, 0.02*absolute/math.Sqrt(3)),
	}
}

// saturation looks up a saturation temperature at a gauge reading, carries
// the uncertainty through by the slope of the curve (GUM 5.1.2), and adds the doubt of
// the curve itself.
func saturation(
	p *prepared, g gaugeReading, at func(quantity.Pressure) (quantity.Temperature, error),
	doubt quantity.TemperatureDelta,
) (*temperatureReading, error) {
	absolute := p.absolute(g)
	t, err := at(absolute.Value)
	if err != nil {
		return nil, err
	}
	out := temperatureReading{Value: t}
	step := quantity.Pressure(math.Max(absolute.Std, 1))
	if above, err := at(absolute.Value + step); err == nil {
		out.Std = math.Abs(float64(above.Sub(t))) / float64(step) * absolute.Std
	} else if below, err := at(absolute.Value - step); err == nil {
		out.Std = math.Abs(float64(t.Sub(below))) / float64(step) * absolute.Std
	}
	out.Std = math.Hypot(out.Std, float64(doubt))
	return &out, nil
}

// difference is a less b, with the uncertainty of two independent readings.
func difference(a, b *temperatureReading) *quantity.Uncertain[quantity.TemperatureDelta] {
	if a == nil || b == nil {
		return nil
	}
	return &quantity.Uncertain[quantity.TemperatureDelta]{
		Value: a.Value.Sub(b.Value),
		Std:   math.Hypot(a.Std, b.Std),
	}
}

// refused are the pressures at which the refrigerant has no saturation, or that are in another
// unit than was written.
func (p *prepared) refused(r *Readings) []*VisitError {
	high, field := highSide(p, r)
	if unit := p.inAnotherUnit(r, high, field); unit != nil {
		return []*VisitError{unit}
	}
	var c checker
	atm := p.atmosphere.Pressure.Value
	refuse := func(
		field string, g *gaugeReading, of func(quantity.Pressure) (quantity.Temperature, error),
	) {
		if g == nil {
			return
		}
		_, err := of(g.Value.Absolute(atm))
		wrong, ok := errors.AsType[*quantity.RangeError](err)
		if !ok {
			return
		}
		gauge := func(v fmt.Stringer) fmt.Stringer {
			if absolute, ok := v.(quantity.Pressure); ok {
				return absolute.Gauge(atm)
			}
			return nil
		}
		c.beyond(
			field, g.Value, gauge(wrong.Min), gauge(wrong.Max), p.fluid.Designation()+
				" has no saturation there; check the refrigerant, the reading and its unit",
		)
	}
	refuse("readings.suctionPressure", r.SuctionPressure.read(), p.fluid.DewTemperature)
	refuse(field, high, p.fluid.BubbleTemperature)
	return c
}
