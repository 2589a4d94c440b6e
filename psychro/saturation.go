package psychro

import (
	"math"
	"sync/atomic"
)

// A boundary is a saturation curve of water and ice, and its inverse, made
// from an equation for ln p. Between minTemperature and maxTemperature it
// agrees with the equation to 1 part in 10¹².
type boundary struct {
	pressure    curve // Pa, of kelvin
	temperature curve // kelvin, of ln(p/Pa)

	// Frost points below minTemperature are extrapolated from there with the
	// slope of ln p in 1/T, which is the heat of sublimation and all but
	// constant.
	lowest, lowestSlope float64
	highest             float64 // the pressure at maxTemperature

	join   float64 // kelvin, where ice gives way to water
	atZero float64 // the pressure at 0 °C
}

// newBoundary tabulates ln(p/Pa) and its slope, as equation gives them. The
// cells meet at join, where the equation changes from ice to water.
func newBoundary(equation func(t float64) (ln, slope float64), join float64) *boundary {
	b := &boundary{
		pressure: newCurve(func(t float64) float64 {
			ln, _ := equation(t)
			return math.Exp(ln)
		}, join-102, 1, 303),
	}
	inverse := func(ln float64) float64 {
		t := 1 / (1/join - (ln-math.Log(611.657))/6140)
		for range 50 {
			f, slope := equation(t)
			step := (f - ln) / slope
			t -= step
			if math.Abs(step) < 1e-13*t {
				break
			}
		}
		return t
	}
	triple, _ := equation(join)
	b.temperature = newCurve(inverse, triple-14, 0.25, 88)
	ln, slope := equation(minTemperature)
	b.lowest, b.lowestSlope = math.Exp(ln), slope*minTemperature*minTemperature
	b.highest = b.pressure.at(maxTemperature)
	b.join = join
	b.atZero = b.pressure.at(zeroCelsius)
	return b
}

// hylandWexler is made on first use, so that a program which only imports the
// package starts no later. Two that make it at once make the same.
var hylandWexler atomic.Pointer[boundary]

func hylandWexlerBoundary() *boundary {
	if b := hylandWexler.Load(); b != nil {
		return b
	}
	return makeHylandWexler()
}

func makeHylandWexler() *boundary {
	b := newBoundary(hylandWexlerLn, hylandWexlerJoin)
	hylandWexler.Store(b)
	return b
}

// temperatureAt returns the temperature at which the saturation pressure is pw.
// It tends to 0 K as pw tends to 0. Beyond maxTemperature, which every caller
// refuses, it only goes on rising.
func (b *boundary) temperatureAt(pw float64) float64 {
	if pw >= b.lowest {
		if pw > b.highest {
			return maxTemperature + 30*math.Log(pw/b.highest)
		}
		return b.temperature.at(math.Log(pw))
	}
	if pw <= 0 { // a zero may have a sign
		return 0
	}
	return 1 / (1/minTemperature + math.Log(b.lowest/pw)/b.lowestSlope)
}
