package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

const (
	saturationSource = "saturation table of the problem, from the refrigerant's equation of state"
	targetSource     = "California Energy Commission, Reference Residential Appendix RA3.2, Table RA3.2-2 (from memory)"
	toleranceSource  = "ANSI/ACCA 5 QI (from memory)"
	moistAirSource   = "ASHRAE Handbook Fundamentals (2017), chapter 1"
	standardAir      = "standard air, 0.075 lb/ft³ (1.2 kg/m³): ASHRAE Handbook Fundamentals, chapter 1; the factor is common practice"
	definition       = "definition"
)

// The columns of a saturation table.
const (
	bubbleColumn = 1
	dewColumn    = 2
)

// saturationTable is an excerpt of a printed pressure-temperature table, in the
// pressures of the site. It reaches over all the temperatures given, and further
// by some rows drawn, so that the place of a row does not give it away.
func (g *generator) saturationTable(
	f *refrigerant.Refrigerant,
	s gaugeSite,
	cover ...quantity.Temperature,
) (Table, error) {
	step := g.either(2, 1)
	low, high := math.Inf(1), math.Inf(-1)
	for _, t := range cover {
		low, high = min(low, g.scale(t)), max(high, g.scale(t))
	}
	first := step * (math.Floor(low/step+1e-9) - g.pick(1, 4, 1))
	last := step * (math.Ceil(high/step-1e-9) + g.pick(1, 4, 1))
	t := Table{
		Caption: fmt.Sprintf("%s, gauge pressure at sea level (%s)", f.Designation(), s.unit),
		Head:    []string{"temperature " + g.degreeUnit(), "bubble (liquid)", "dew (vapor)"},
	}
	if s.added != 0 {
		t.Caption = fmt.Sprintf("%s, absolute pressure (%s)", f.Designation(), s.unit)
	}
	for v := first; v <= last+step/2; v += step {
		at := g.fromScale(v)
		bubble, err := f.BubblePressure(at)
		if err != nil {
			return Table{}, err
		}
		dew, err := f.DewPressure(at)
		if err != nil {
			return Table{}, err
		}
		t.Rows = append(t.Rows, []string{
			number(v),
			g.cell(g.listed(s, bubble)),
			g.cell(g.listed(s, dew)),
		})
	}
	return t, nil
}

// read looks a pressure up in a column as a student does, with the figures as
// they are printed, and says how. ok is false where it is not in the excerpt.
func (g *generator) read(
	t Table,
	s gaugeSite,
	column int,
	pressure float64,
) (v float64, how string, ok bool) {
	for i, row := range t.Rows {
		p := figure(row[column])
		if p == pressure {
			return figure(
					row[0],
				), fmt.Sprintf(
					"%s %s stands at %s %s",
					g.cell(pressure),
					s.unit,
					row[0],
					g.degreeUnit(),
				), true
		}
		if i == 0 || p < pressure || figure(t.Rows[i-1][column]) > pressure {
			continue
		}
		low, below := figure(t.Rows[i-1][0]), figure(t.Rows[i-1][column])
		span := figure(row[0]) - low
		v = low + (pressure-below)/(p-below)*span
		return v, fmt.Sprintf(
			"%s %s lies between %s and %s: %s + (%s − %s) / (%s − %s) × %s = %s %s",
			g.cell(pressure),
			s.unit,
			g.cell(
				below,
			),
			g.cell(p),
			number(low),
			g.cell(pressure),
			g.cell(below),
			g.cell(p),
			g.cell(below),
			number(span),
			number(v),
			g.degreeUnit(),
		), true
	}
	return 0, "", false
}

// lookUp is the pressure that a column gives for a temperature, and says how it
// was read. The excerpt reaches over the temperature.
func (g *generator) lookUp(t Table, s gaugeSite, column int, at float64) (v float64, how string) {
	for i, row := range t.Rows {
		p, top := figure(row[column]), figure(row[0])
		if math.Abs(top-at) < 1e-6 {
			return p, fmt.Sprintf(
				"%s %s stands beside %s %s",
				row[0],
				g.degreeUnit(),
				g.cell(p),
				s.unit,
			)
		}
		if top < at || i == 0 {
			continue
		}
		low, below := figure(t.Rows[i-1][0]), figure(t.Rows[i-1][column])
		v = below + (at-low)/(top-low)*(p-below)
		return v, fmt.Sprintf(
			"%s %s lies between %s and %s: %s + (%s − %s) / (%s − %s) × (%s − %s) = %s %s",
			number(at),
			g.degreeUnit(),
			number(low),
			number(top),
			g.cell(
				below,
			),
			number(at),
			number(low),
			number(top),
			number(low),
			g.cell(p),
			g.cell(below),
			g.cell(v),
			s.unit,
		)
	}
	return math.NaN(), ""
}

// figure reads a number of a table back.
func figure(cell string) float64 {
	v, err := strconv.ParseFloat(strings.Replace(cell, "−", "-", 1), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// target is a cell of the table of target superheat as it is printed for the
// unit system: as published in °F, and for SI read between its cells and
// rounded to half a kelvin.
func (g *generator) target(wetBulb, outdoor float64) (float64, bool) {
	t, err := charge.TableSuperheat(g.fromScale(wetBulb), g.fromScale(outdoor))
	if err != nil {
		return 0, false
	}
	if g.ip() {
		return math.Round(t.FahrenheitDelta()), true
	}
	return math.Round(2*t.KelvinDelta()) / 2, true
}

// targetTable is an excerpt of that table around the two temperatures.
func (g *generator) targetTable(wetBulb, outdoor float64) Table {
	return g.targetTableDown(wetBulb, 5*(math.Floor(outdoor/5)-g.pick(1, 3, 1)))
}

// targetTableDown is an excerpt of that table around a wet bulb, from an outdoor
// temperature downward.
func (g *generator) targetTableDown(wetBulb, first float64) Table {
	t := Table{
		Caption: "Target superheat, °F, fixed restrictor: return wet bulb °F across, outdoor dry bulb °F down",
		Head:    []string{"°F"},
	}
	across, lowest, highest := 4.0, 55.0, 115.0
	driest, wettest := 50.0, 76.0 // as far as the table goes
	if !g.ip() {
		t.Caption = "Target superheat, K, fixed restrictor: return wet bulb °C across, outdoor dry bulb °C down (converted from a table in °F)"
		t.Head[0] = "°C"
		across, lowest, highest = 3, 15, 45
		driest, wettest = 10, 24
	}
	var bulbs []float64
	for w := min(max(driest, wetBulb-across-g.pick(0, 2, 1)), wettest-2*across); len(bulbs) < int(2*across)+1; w++ {
		bulbs = append(bulbs, w)
		t.Head = append(t.Head, number(w))
	}
	for o := max(lowest, first); o <= min(highest, first+25); o += 5 {
		row := []string{number(o)}
		for _, w := range bulbs {
			cell := "–"
			if v, ok := g.target(w, o); ok {
				cell = number(v)
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// atmosphereTable is an excerpt of the standard atmosphere.
func (g *generator) atmosphereTable(around quantity.Length) Table {
	t := Table{
		Caption: "Standard atmosphere",
		Head:    []string{"elevation ft", "atmosphere psia", "below sea level psi"},
	}
	middle, step, at := around.Feet(), 1000.0, quantity.Feet
	if !g.ip() {
		t.Head = []string{"elevation m", "atmosphere kPa", "below sea level kPa"}
		middle, step, at = around.Meters(), 200, quantity.Meters
	}
	first := math.Round(middle) - step*g.pick(1, 3, 1)
	for i := range 5 {
		z := first + step*float64(i)
		atm := quantity.AtmosphereAt(at(z))
		absolute := decimals(atm.Kilopascals(), 1)
		if g.ip() {
			absolute = strconv.FormatFloat(atm.PSIA(), 'f', 2, 64)
		}
		t.Rows = append(
			t.Rows,
			[]string{number(z), absolute, g.cell(g.gauge(quantity.StandardAtmosphere, atm))},
		)
	}
	return t
}

// steamTable is an excerpt of the saturation pressure of water.
func (g *generator) steamTable(from, to quantity.Temperature, places int) (Table, error) {
	t := Table{Caption: "Saturation pressure of water", Head: []string{"°F", "psia"}}
	if !g.ip() {
		t.Head = []string{"°C", "kPa"}
	}
	for v := g.scale(from) - g.pick(1, 3, 1); v <= g.scale(to)+g.pick(1, 2, 1); v++ {
		p, err := g.steam(g.fromScale(v), places)
		if err != nil {
			return Table{}, err
		}
		t.Rows = append(t.Rows, []string{number(v), strconv.FormatFloat(p, 'f', places, 64)})
	}
	return t, nil
}

// steam is the saturation pressure of water at t, as the table prints it.
func (g *generator) steam(t quantity.Temperature, places int) (float64, error) {
	air, err := psychro.Saturated(t, quantity.StandardAtmosphere)
	if err != nil {
		return 0, err
	}
	p := air.VaporPressure().Kilopascals()
	if g.ip() {
		p = air.VaporPressure().PSIA()
	}
	scale := math.Pow10(places)
	return math.Round(scale*p) / scale, nil
}

// enthalpyTable is an excerpt of the enthalpy of moist air, by wet and dry bulb.
func (g *generator) enthalpyTable(
	wetLow, wetHigh float64,
	dry []float64,
	atm quantity.Pressure,
	place string,
) Table {
	t := Table{
		Caption: "Enthalpy of moist air " + place + ", Btu/lb of dry air: wet bulb °F down, dry bulb °F across; – where there is no such air",
		Head:    []string{"°F"},
	}
	if !g.ip() {
		t.Caption = "Enthalpy of moist air " + place + ", kJ/kg of dry air: wet bulb °C down, dry bulb °C across; – where there is no such air"
		t.Head[0] = "°C"
	}
	for _, d := range dry {
		t.Head = append(t.Head, number(d))
	}
	for w := wetLow; w <= wetHigh+0.25; w++ {
		row := []string{number(w)}
		for _, d := range dry {
			cell := "–" // no air has this pair
			if air, err := psychro.FromWetBulb(g.fromScale(d), g.fromScale(w), atm); err == nil {
				cell = strconv.FormatFloat(g.enthalpy(air), 'f', int(g.either(2, 1)), 64)
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// enthalpy is as the table prints it; the inch-pound scale counts from dry air
// at 0 °F.
func (g *generator) enthalpy(a psychro.Air) float64 {
	if g.ip() {
		return math.Round(100*a.EnthalpyIP().BtuPerPound()) / 100
	}
	return math.Round(10*a.Enthalpy().KilojoulesPerKilogram()) / 10
}
