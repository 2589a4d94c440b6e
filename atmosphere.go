package satline

import "github.com/satline/satline/quantity"

// AtmosphereUsed says which atmosphere was taken and where it came from.
type AtmosphereUsed struct {
	Pressure quantity.Uncertain[quantity.Pressure] `json:"pressure"`
	Source   AtmosphereSource                      `json:"source"`
}

// AtmosphereSource is where the pressure of the atmosphere comes from.
type AtmosphereSource string

// The sources of an atmosphere.
const (
	FromBarometer   AtmosphereSource = "barometer"
	FromElevation   AtmosphereSource = "elevation"
	SeaLevelAssumed AtmosphereSource = "sea-level-assumed"
)

// Atmosphere is the pressure that gauges at the site count from: that of the
// barometer, else of the standard atmosphere at the elevation, else of sea level.
// The uncertainty is that of the barometer, of the weather, or of not knowing
// (common practice, no source). The error is a *VisitError.
func (s Site) Atmosphere() (AtmosphereUsed, error) {
	switch {
	case s.Barometer != nil:
		p := *s.Barometer
		if !(p >= quantity.Kilopascals(50) && p <= quantity.Kilopascals(110)) {
			return AtmosphereUsed{}, outOfRange(
				"site.barometer", p, quantity.Kilopascals(50), quantity.Kilopascals(110),
				"give the pressure as read at the site itself, not that reduced to sea level",
			)
		}
		return AtmosphereUsed{p.PlusMinus(quantity.Pascals(200)), FromBarometer}, nil
	case s.Elevation != nil:
		z := *s.Elevation
		if !(z >= quantity.Meters(-450) && z <= quantity.Meters(5500)) {
			return AtmosphereUsed{}, outOfRange(
				"site.elevation", z, quantity.Meters(-450), quantity.Meters(5500),
				"give the height of the site above sea level, and check its unit",
			)
		}
		return AtmosphereUsed{
			quantity.AtmosphereAt(z).PlusMinus(quantity.Pascals(800)), FromElevation,
		}, nil
	}
	return AtmosphereUsed{
		quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(1500)), SeaLevelAssumed,
	}, nil
}
