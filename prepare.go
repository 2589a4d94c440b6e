package satline

import (
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// prepared is a visit that has been checked field by field, with every reading
// carrying an uncertainty.
type prepared struct {
	visit      Visit
	fluid      *refrigerant.Refrigerant
	atmosphere AtmosphereUsed
	readings   Readings
	log        []LogEntry
}

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

// Atmosphere is the pressure that gauges at the site count from: that of the
// barometer, else of the standard atmosphere at the elevation, else of sea level.
// The uncertainty is that of the barometer, of the weather, or of not knowing
// (common practice, no source). The error is a *VisitError.
func (s Site) Atmosphere() (AtmosphereUsed, error) {
	switch {
	case s.Barometer != nil:
		p := *s.Barometer
		if !(p >= quantity.Kilopascals(50) && p <= quantity.Kilopascals(110)) {
			return AtmosphereUsed{}, outOfRange("site.barometer", p, quantity.Kilopascals(50), quantity.Kilopascals(110), "give the pressure as read at the site itself, not that reduced to sea level")
		}
		return AtmosphereUsed{p.PlusMinus(quantity.Pascals(200)), FromBarometer}, nil
	case s.Elevation != nil:
		z := *s.Elevation
		if !(z >= quantity.Meters(-450) && z <= quantity.Meters(5500)) {
			return AtmosphereUsed{}, outOfRange("site.elevation", z, quantity.Meters(-450), quantity.Meters(5500), "give the height of the site above sea level, and check its unit")
		}
		return AtmosphereUsed{quantity.AtmosphereAt(z).PlusMinus(quantity.Pascals(800)), FromElevation}, nil
	}
	return AtmosphereUsed{quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(1500)), SeaLevelAssumed}, nil
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
