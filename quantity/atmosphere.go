package quantity

import "math"

// StandardAtmosphere is the pressure at sea level, exact by definition.
const StandardAtmosphere Pressure = 101325

// AtmosphereAt returns the pressure of the standard atmosphere at an elevation
// above sea level: ASHRAE Handbook Fundamentals, chapter 1, equation 3, good
// from −5,000 to 11,000 m. Elevations beyond are taken at the nearer end, and
// what is not a number at sea level. Weather moves the true pressure by about
// ±1.5 kPa (0.2 psi); a barometer at the site is better.
func AtmosphereAt(elevation Length) Pressure {
	z := float64(elevation)
	if math.IsNaN(z) {
		return StandardAtmosphere
	}
	z = math.Max(-5000, math.Min(11000, z))
	return StandardAtmosphere * Pressure(math.Pow(1-2.25577e-5*z, 5.2559))
}

// ElevationOf returns the elevation at which AtmosphereAt has a pressure, for what asks for an
// elevation where a barometer was read. Pressures beyond those of −5,000 to 11,000 m are taken
// at the nearer end, and what is not a number at sea level.
func ElevationOf(atmosphere Pressure) Length {
	ratio := float64(atmosphere / StandardAtmosphere)
	if math.IsNaN(ratio) {
		return 0
	}
	z := (1 - math.Pow(math.Max(ratio, 0), 1/5.2559)) / 2.25577e-5
	return Length(math.Max(-5000, math.Min(11000, z)))
}

// Absolute returns the absolute pressure of g where the atmosphere is atm. Take
// atm from a barometer, or from AtmosphereAt the elevation of the site.
func (g GaugePressure) Absolute(atm Pressure) Pressure { return Pressure(g) + atm }

// Gauge returns what a gauge shows for p in the atmosphere atm.
func (p Pressure) Gauge(atm Pressure) GaugePressure { return GaugePressure(p - atm) }
