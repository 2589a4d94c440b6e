package satline

import (
	"slices"

	"github.com/satline/satline/quantity"
)

func prepare(v Visit) (*prepared, error) {
	p, problems := checked(v)
	if len(problems) > 0 {
		return nil, problems[0]
	}
	instruments := v.Instruments.withDefaults()
	p.readings.state(instruments)
	p.log = slices.Clone(v.Log)
	for i := range p.log {
		p.log[i].Readings.state(instruments)
	}
	return p, nil
}

// state gives the readings that state no uncertainty that of their instrument, and shares
// none of them with those that it was given.
func (r *Readings) state(in Instruments) {
	for i := range readingFields {
		readingFields[i].state(r, in)
	}
}

func (in Instruments) withDefaults() Instruments {
	d := DefaultInstruments()
	return Instruments{
		Gauge: orElse(in.Gauge, d.Gauge), Clamp: orElse(in.Clamp, d.Clamp),
		Thermometer: orElse(in.Thermometer, d.Thermometer), WetBulb: orElse(in.WetBulb, d.WetBulb),
	}
}

func orElse[T quantity.Quantity](v, otherwise T) T {
	if v == 0 {
		return otherwise
	}
	return v
}
