package satline

import (
	"cmp"
	"slices"
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
		p.logged |= p.log[i].Readings.state(instruments)
	}
	return p, nil
}

// state gives the readings that state no uncertainty that of their instrument, and returns
// which were taken.
func (r *Readings) state(in Instruments) (taken fieldSet) {
	for i := range readingFields {
		if readingFields[i].state(r, in) {
			taken |= 1 << i
		}
	}
	return taken
}

func (in Instruments) withDefaults() Instruments {
	d := DefaultInstruments()
	return Instruments{
		Gauge: cmp.Or(in.Gauge, d.Gauge), Clamp: cmp.Or(in.Clamp, d.Clamp),
		Thermometer: cmp.Or(in.Thermometer, d.Thermometer), WetBulb: cmp.Or(in.WetBulb, d.WetBulb),
		GaugePart:   in.GaugePart,
		AirflowPart: cmp.Or(in.AirflowPart, d.AirflowPart),
		StaticPart:  cmp.Or(in.StaticPart, d.StaticPart),
		PowerPart:   cmp.Or(in.PowerPart, d.PowerPart),
		CurrentPart: cmp.Or(in.CurrentPart, d.CurrentPart),
	}
}
