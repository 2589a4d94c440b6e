package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/satline/satline/quantity"
)

// The units a student works in. Temperatures are whole degrees of the scale,
// pressures are printed as the tables print them.

// degrees makes a temperature of a number on the student's scale, given for
// both scales so that either comes out round.
func (g *generator) degrees(f, c float64) quantity.Temperature {
	if g.ip() {
		return quantity.Fahrenheit(f)
	}
	return quantity.Celsius(c)
}

func (g *generator) scale(t quantity.Temperature) float64 {
	return quantity.UnitOf[quantity.Temperature](g.sys).Number(t)
}

func (g *generator) fromScale(v float64) quantity.Temperature { return g.degrees(v, v) }

func (g *generator) delta(d quantity.TemperatureDelta) float64 {
	return quantity.UnitOf[quantity.TemperatureDelta](g.sys).Number(d)
}

func (g *generator) degreeUnit() string {
	return quantity.UnitOf[quantity.Temperature](g.sys).Symbol()
}

func (g *generator) deltaUnit() string {
	return quantity.UnitOf[quantity.TemperatureDelta](g.sys).Symbol()
}

// either chooses by the unit system.
func (g *generator) either(ip, si float64) float64 {
	if g.ip() {
		return ip
	}
	return si
}

// gauge is a gauge pressure as a table prints it: to 0.1 psig or 1 kPa.
func (g *generator) gauge(p quantity.Pressure, atm quantity.Pressure) float64 {
	if g.ip() {
		return math.Round(10*p.Gauge(atm).PSIG()) / 10
	}
	return math.Round(p.Gauge(atm).KilopascalsGauge())
}

func (g *generator) gaugePressure(v float64) quantity.GaugePressure {
	return quantity.UnitOf[quantity.GaugePressure](g.sys).Value(v)
}

func (g *generator) gaugeUnit() string {
	return quantity.UnitOf[quantity.GaugePressure](g.sys).Symbol()
}

// absoluteUnit is that of absolute pressures.
func (g *generator) absoluteUnit() string {
	return quantity.UnitOf[quantity.Pressure](g.sys).Symbol()
}

func (g *generator) temperature(t quantity.Temperature) string {
	return number(g.scale(t)) + " " + g.degreeUnit()
}

func (g *generator) difference(v float64) string { return number(v) + " " + g.deltaUnit() }

func (g *generator) pressure(v float64) string { return g.cell(v) + " " + g.gaugeUnit() }

// cell is a pressure as the tables print it, with its decimal even where it is 0.
func (g *generator) cell(v float64) string {
	return fixed(v, int(g.either(1, 0)))
}

func (g *generator) pressureDifference(v float64) string {
	if g.ip() {
		return g.cell(v) + " psi"
	}
	return g.cell(v) + " kPa"
}

// number prints at most one decimal and none that is zero.
func number(v float64) string { return decimals(v, 1) }

// decimals prints at most n decimals and none that is zero at the end; a
// negative n rounds to tens, hundreds and so on.
func decimals(v float64, n int) string {
	if n < 0 {
		scale := math.Pow10(-n)
		v, n = math.Round(v/scale)*scale, 0
	}
	s := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return strings.Replace(s, "-", "−", 1)
}

// fixed prints n decimals, zeros too, where they tell how exact a figure is.
func fixed(v float64, n int) string {
	return strings.Replace(strconv.FormatFloat(v, 'f', n, 64), "-", "−", 1)
}

func given(pairs ...string) []Given {
	var out []Given
	for i := 0; i+1 < len(pairs); i += 2 {
		out = append(out, Given{pairs[i], pairs[i+1]})
	}
	return out
}

func step(source, format string, args ...any) Step {
	return Step{Text: fmt.Sprintf(format, args...), Source: source}
}
