package main

import (
	"math"
	"strconv"
	"strings"

	"github.com/satline/satline/quantity"
)

// A unit is how a kind of quantity is printed for the student.
type unit struct {
	symbol string
	places int // decimals that tables and instruments show
	// free says that zeros at the end are not printed.
	free bool
}

// units are those of one student.
type units struct {
	temp, delta, gauge, absolute, drop, mass, small, flow, heat, power unit
	length, static, enthalpy, ratio, percent, vacuum, water, floor     unit
	volt, ampere, farad, minute, hour, plain, humidity, massFlow       unit
}

// symbol is that of a unit that is a word, in the language of the set.
func (o Options) symbol(name string) string { return say(o.Language, "unit-"+name) }

// unitsOf are those of a set.
func unitsOf(o Options) units {
	u := units{
		temp: unit{"°F", 1, true}, delta: unit{"°F", 1, true},
		gauge: unit{"psig", 1, false}, absolute: unit{"psia", 1, false},
		drop: unit{"psi", 1, false}, mass: unit{"lb", 1, true}, small: unit{"oz", 1, true},
		flow: unit{"CFM", 0, true}, heat: unit{"Btu/h", 0, true}, power: unit{"kW", 2, true},
		length: unit{"ft", 0, true}, static: unit{o.symbol("water-column"), 2, false},
		enthalpy: unit{"Btu/lb", 2, false}, vacuum: unit{o.symbol("microns"), 0, true},
		water: unit{"lb/h", 1, true}, floor: unit{"ft²", 0, true},
		humidity: unit{o.symbol("grains"), 1, true}, massFlow: unit{"lb/h", 0, true},
	}
	if o.Units == quantity.SI {
		u.temp.symbol, u.delta.symbol = "°C", "K"
		u.gauge, u.absolute = unit{"kPag", 0, false}, unit{"kPa", 0, false}
		u.drop, u.mass, u.small = unit{"kPa", 0, false}, unit{"kg", 2, true}, unit{"g", 0, true}
		u.flow, u.heat, u.length = unit{"L/s", 0, true}, unit{"kW", 2, true}, unit{"m", 1, true}
		u.static, u.enthalpy = unit{"Pa", 0, false}, unit{"kJ/kg", 1, false}
		u.vacuum, u.water, u.floor = unit{"Pa", 1, true}, unit{"kg/h", 2, true}, unit{"m²", 0, true}
		u.humidity, u.massFlow = unit{"g/kg", 1, true}, unit{"g/s", 1, true}
		if o.Bar {
			u.gauge, u.absolute = unit{"barg", 2, false}, unit{"bar", 2, false}
			u.drop = unit{"bar", 2, false}
		}
	}
	u.ratio, u.percent, u.plain = unit{"", 2, true}, unit{"%", 0, true}, unit{"", 0, true}
	u.volt, u.ampere, u.farad = unit{"V", 1, true}, unit{"A", 1, true}, unit{"µF", 1, true}
	u.minute, u.hour = unit{"min", 0, true}, unit{"h", 1, true}
	return u
}

func (u unit) with(places int) unit { return unit{u.symbol, places, u.free} }

// print is a value with its unit, as an instrument or a label gives it.
func (u unit) print(v float64) string { return u.join(u.number(v)) }

func (u unit) number(v float64) string {
	s := fixed(v, u.places)
	if u.free && strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "−0" {
		return "0"
	}
	return s
}

func (u unit) join(number string) string {
	if u.symbol == "" {
		return number
	}
	return number + " " + u.symbol
}

// fixed prints n decimals, with commas between thousands; a negative n rounds to
// tens, hundreds and so on.
func fixed(v float64, n int) string {
	v = rounded(v, n)
	s := strconv.FormatFloat(math.Abs(v), 'f', max(n, 0), 64)
	whole, part, _ := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if part != "" {
		whole += "." + part
	}
	if v < 0 && strings.Trim(whole, "0.,") != "" {
		return "−" + whole
	}
	return whole
}

// rounded is v to n decimals.
func rounded(v float64, n int) float64 {
	if n < 0 {
		scale := math.Pow10(-n)
		return math.Round(v/scale) * scale
	}
	scale := math.Pow10(n)
	return math.Round(v*scale) / scale
}

// figure reads a printed number back, NaN where there is none.
func figure(cell string) float64 {
	cell, _, _ = strings.Cut(strings.TrimSpace(cell), " ")
	v, err := strconv.ParseFloat(strings.NewReplacer("−", "-", ",", "").Replace(cell), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// either chooses by the unit system.
func (g *generator) either(ip, si float64) float64 {
	if g.ip() {
		return ip
	}
	return si
}

// temperature of a number on the student's scale, and back.
func (g *generator) temperature(v float64) quantity.Temperature {
	return quantity.UnitOf[quantity.Temperature](g.options.Units).Value(v)
}

func (g *generator) degrees(t quantity.Temperature) float64 {
	return quantity.UnitOf[quantity.Temperature](g.options.Units).Number(t)
}

func (g *generator) delta(d quantity.TemperatureDelta) float64 {
	return quantity.UnitOf[quantity.TemperatureDelta](g.options.Units).Number(d)
}

// pascals of a pressure or a difference of pressures in the student's unit.
func (g *generator) pascals(v float64) quantity.Pressure {
	switch {
	case g.ip():
		return quantity.PSIA(v)
	case g.options.Bar:
		return quantity.Bar(v)
	}
	return quantity.Kilopascals(v)
}

// pressureNumber is an absolute pressure in the student's unit, not rounded.
func (g *generator) pressureNumber(p quantity.Pressure) float64 {
	return float64(p) / float64(g.pascals(1))
}

// pressure is one as a gauge or a table prints it.
func (g *generator) pressure(p quantity.Pressure) float64 {
	return rounded(g.pressureNumber(p), g.u.gauge.places)
}

func (g *generator) mass(v float64) quantity.Mass {
	return quantity.Mass(v * g.either(0.45359237, 1))
}

func (g *generator) flow(v float64) quantity.VolumeFlow {
	if g.ip() {
		return quantity.CFM(v)
	}
	return quantity.LitersPerSecond(v)
}

// heat is Btu/h or kW.
func (g *generator) heat(v float64) quantity.Power {
	if g.ip() {
		return quantity.BtuPerHour(v)
	}
	return quantity.Kilowatts(v)
}

func (g *generator) heatNumber(q quantity.Power) float64 {
	return float64(q) / float64(g.heat(1))
}
