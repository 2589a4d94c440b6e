package main

import (
	"math"

	"github.com/satline/satline/quantity"
)

// place is where a problem happens: at sea level, and from difficulty
// 3 on a mountain.
func (g *generator) place() (z quantity.Length, atm quantity.Pressure, text string) {
	if g.difficulty < 3 {
		return 0, quantity.StandardAtmosphere, "at sea level"
	}
	z = quantity.Feet(g.pick(4000, 7000, 1000))
	if !g.ip() {
		z = quantity.Meters(g.pick(1200, 2100, 300))
	}
	return z, quantity.AtmosphereAt(z), "at " + elevationText(z, g.sys)
}

// atmosphere is in psia or kPa, rounded as it is printed.
func (g *generator) atmosphere(p quantity.Pressure) (v float64, unit string) {
	return math.Round(100*g.either(p.PSIA(), p.Kilopascals())) / 100, g.absoluteUnit()
}

func elevationText(z quantity.Length, sys quantity.System) string {
	if sys == quantity.IP {
		return decimals(z.Feet(), 0) + " ft"
	}
	return decimals(z.Meters(), 0) + " m"
}
