package main

import (
	"maps"
	"math"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// The columns of a saturation table.
const (
	bubble = 1
	dew    = 2
)

func columnName(column int) string { return [...]string{"", "bubble", "dew"}[column] }

// A gaugeSite is where the gauge of a problem hangs, and what its table of
// saturation counts from: gauge pressures at sea level, or absolute ones.
type gaugeSite struct {
	atm quantity.Pressure
	// added is the atmosphere as it is printed, which belongs to a reading before
	// a table of absolute pressures; 0 where the table is in gauge pressure.
	added float64
	unit  unit // of the pressures in the table
}

// place says where a problem happens, at sea level and from difficulty 3 on a
// mountain, and gives elevation and atmosphere there.
func (d *draft) place() quantity.Pressure {
	g := d.g
	if !g.atLeast(3) {
		d.phrase("site", "sea-level")
		return quantity.StandardAtmosphere
	}
	feet := g.among(4000, 7000, 500, 1200, 2100, 100)
	d.give("elevation", feet, g.u.length)
	atm := quantity.AtmosphereAt(g.length(feet))
	d.phrase("site", "on-mountain")
	d.Elevation = g.length(feet)
	return atm
}

func (g *generator) length(v float64) quantity.Length {
	if g.ip() {
		return quantity.Feet(v)
	}
	return quantity.Meters(v)
}

// gaugeSite is at sea level, and from difficulty 3 on a mountain, with a table of
// absolute pressures.
func (d *draft) gaugeSite() gaugeSite {
	g := d.g
	if !g.atLeast(3) {
		d.phrase("site", "sea-level")
		return gaugeSite{atm: quantity.StandardAtmosphere, unit: g.u.gauge}
	}
	s := gaugeSite{atm: d.place(), unit: g.u.absolute}
	s.added = d.give("atmosphere", g.pressure(s.atm), g.u.absolute)
	return s
}

// listed is a pressure as the table has it.
func (g *generator) listed(s gaugeSite, p quantity.Pressure) float64 {
	if s.added == 0 {
		p -= quantity.StandardAtmosphere
	}
	return g.pressure(p)
}

// shown is what the gauge shows for a pressure of the table.
func (g *generator) shown(s gaugeSite, listed float64) float64 {
	return rounded(listed-s.added, g.u.gauge.places)
}

// actual is the absolute pressure behind a gauge reading.
func (g *generator) actual(s gaugeSite, shown float64) quantity.Pressure {
	return g.pascals(shown) + s.atm
}

// A satTable is an excerpt of a printed table of saturation: temperature, bubble
// and dew.
type satTable struct {
	grid
	site gaugeSite
}

// satTable prints an excerpt that reaches over all the temperatures given, and
// further by some rows drawn, so that the place of a row does not give it away.
func (d *draft) satTable(
	f *refrigerant.Refrigerant, s gaugeSite, cover ...float64,
) (satTable, error) {
	g := d.g
	step := g.either(2, 1)
	first := step * (math.Floor(slices.Min(cover)/step+1e-9) - g.pick(2, 4, 1))
	last := step * (math.Ceil(slices.Max(cover)/step-1e-9) + g.pick(2, 4, 1))
	t := satTable{site: s, grid: grid{d: d, units: []unit{g.u.temp, s.unit, s.unit}}}
	print := Table{Head: []string{
		say(d.language, "head-temperature", "unit", g.u.temp.symbol),
		say(d.language, "head-bubble"), say(d.language, "head-dew"),
	}}
	caption := "caption-gauge"
	if s.added != 0 {
		caption = "caption-absolute"
	}
	print.Caption = say(d.language, caption,
		"refrigerant", f.Designation(), "unit", s.unit.symbol)
	for v := first; v <= last+step/2; v += step {
		low, err := f.BubblePressure(g.temperature(v))
		if err != nil {
			return t, err
		}
		high, err := f.DewPressure(g.temperature(v))
		if err != nil {
			return t, err
		}
		t.rows = append(t.rows, []float64{v, g.listed(s, low), g.listed(s, high)})
	}
	t.print(print.Caption, print.Head)
	return t, nil
}

// read looks a pressure up in a column as a student does. It is NaN outside the
// excerpt. slip reads so many rows off.
func (t satTable) read(column int, pressure float64, slip int) float64 {
	return t.between(column, 0, pressure, slip)
}

// lookUp is the pressure that a column gives for a temperature.
func (t satTable) lookUp(column int, at float64, slip int) float64 {
	return t.between(0, column, at, slip)
}

// A gaugeReading is what a gauge shows where what its column says saturates at a
// temperature, and what a student makes of it in the printed table.
type gaugeReading struct {
	site   gaugeSite
	table  satTable
	column int
	listed float64 // in the table
	shown  float64 // by the gauge
	at     float64 // the temperature that the print gives
}

// saturatedAt draws a temperature of boiling or condensing: a row of the table at
// difficulty 1, and between two rows from 2 on.
func (g *generator) saturatedAt(low, high, lowSI, highSI float64) float64 {
	at := g.among(low, high, 2, lowSI, highSI, 1)
	if g.atLeast(2) {
		at += g.among(0.3, 1.7, 0.1, 0.2, 0.8, 0.1)
	}
	return at
}

// gauge hangs a gauge at a site, gives its reading, and prints the table.
func (d *draft) gauge(
	name string, f *refrigerant.Refrigerant, column int, at float64,
) (r gaugeReading, err error) {
	g := d.g
	r = gaugeReading{column: column, site: d.gaugeSite()}
	pressureAt, other := f.BubblePressure, f.DewTemperature
	if column == dew {
		pressureAt, other = f.DewPressure, f.BubbleTemperature
	}
	p, err := pressureAt(g.temperature(at))
	if err != nil {
		return r, err
	}
	misread, err := other(p)
	if err != nil {
		return r, err
	}
	r.listed = g.listed(r.site, p)
	r.shown = g.shown(r.site, r.listed)
	cover := []float64{at, g.degrees(misread)}
	if g.atLeast(3) { // the excerpt holds what the wrong atmosphere leads to
		sea, err := other(g.pascals(r.shown) + quantity.StandardAtmosphere)
		if err != nil {
			return r, err
		}
		cover = append(cover, g.degrees(sea))
	}
	if r.table, err = d.satTable(f, r.site, cover...); err != nil {
		return r, err
	}
	r.at = r.table.read(column, r.listed, 0)
	if r.at = rounded(r.at, 1); math.IsNaN(r.at) {
		return r, errAgain
	}
	d.give(name, r.shown, g.u.gauge)
	d.set("listed", r.listed, r.site.unit)
	if r.site.added != 0 {
		d.phrase("table-kind", "table-absolute")
		d.bound["table-sum"] = g.u.gauge.number(r.shown) + " + " +
			r.site.unit.number(r.site.added) + " = " + r.site.unit.print(r.listed)
	} else {
		d.phrase("table-kind", "table-gauge")
		d.bound["table-sum"] = ""
	}
	d.set("saturation", r.at, g.u.temp)
	r.table.how("sat", column, 0, r.listed)
	return r, nil
}

// misreadings hands every temperature that a mistake with the table leads to, all
// of them within the excerpt, to wrong answers worked out from it. Where the
// students read rows, a temperature between two is taken for the nearer.
func (r gaugeReading) misreadings(d *draft, work func(at float64) float64) {
	wrong := func(key string, at float64) {
		if row := d.g.either(2, 1); !d.g.atLeast(2) {
			at = row * math.Round(at/row)
		}
		d.wrong(key, work(at))
	}
	mark := d.g.pressureMark()
	wrong(columnName(3-r.column)+"-column", r.table.read(3-r.column, r.listed, 0))
	wrong("row-below", r.table.read(r.column, r.listed, 1))
	wrong("row-above", r.table.read(r.column, r.listed, -1))
	wrong("two-rows-below", r.table.read(r.column, r.listed, 2))
	wrong("two-rows-above", r.table.read(r.column, r.listed, -2))
	wrong("mark-above", r.table.read(r.column, mark*(math.Floor(r.shown/mark)+1)+r.site.added, 0))
	wrong("mark-below", r.table.read(r.column, mark*(math.Ceil(r.shown/mark)-1)+r.site.added, 0))
	if r.site.added != 0 {
		sea := d.g.pressure(quantity.StandardAtmosphere)
		wrong("sea-level-added", r.table.read(r.column, r.shown+sea, 0))
	}
	wrong("not-absolute", r.table.read(r.column, r.shown-d.g.pressure(r.site.atm)+
		2*r.site.added, 0))
}

// pressureMark is the distance of the numbered marks of a gauge.
func (g *generator) pressureMark() float64 {
	if g.options.Bar {
		return 0.5
	}
	return g.either(10, 50)
}

// pressureFor makes the pressure at which a column saturates at a temperature the
// answer, with the mistakes of reading it; mistaken are other temperatures that a
// mistake leads to.
func (d *draft) pressureFor(
	f *refrigerant.Refrigerant, column int, at float64, mistaken map[string]float64,
) error {
	g := d.g
	s := d.gaugeSite()
	cover := []float64{at}
	for _, t := range mistaken {
		if math.Abs(t-at) < g.either(16, 9) {
			cover = append(cover, t)
		}
	}
	t, err := d.satTable(f, s, cover...)
	if err != nil {
		return err
	}
	listed := rounded(t.lookUp(column, at, 0), s.unit.places)
	d.set("listed", listed, s.unit)
	t.how("sat", 0, column, at)
	d.bound["table-sum"] = ""
	if s.added != 0 {
		d.bound["table-sum"] = s.unit.number(listed) + " − " + s.unit.number(s.added) + " = " +
			g.u.gauge.print(listed-s.added)
		d.phrase("table-kind", "answer-absolute")
	} else {
		d.phrase("table-kind", "answer-gauge")
	}
	within := 0.003 * listed
	d.answer(listed-s.added, within, g.u.gauge)
	wrong := func(key string, listed float64) {
		if !math.IsNaN(listed) {
			d.wrong(key, listed-s.added)
		}
	}
	wrong(columnName(3-column)+"-column", t.lookUp(3-column, at, 0))
	for i, key := range []string{"two-rows-above", "row-above", "", "row-below", "two-rows-below"} {
		if key != "" {
			wrong(key, t.lookUp(column, at, i-2))
		}
	}
	for key, t2 := range sorted(mistaken) {
		wrong(key, t.lookUp(column, t2, 0))
	}
	sea := g.pressure(quantity.StandardAtmosphere)
	if s.added == 0 {
		wrong("atmosphere-added", listed+sea)
		wrong("atmosphere-taken-off", listed-sea)
	} else {
		wrong("listed-itself", listed+s.added)
		wrong("sea-level-taken-off", listed-sea+s.added)
		wrong("atmosphere-twice", listed-s.added)
	}
	look := f.BubblePressure
	if column == dew {
		look = f.DewPressure
	}
	p, err := look(g.temperature(at))
	d.again = g.pressureNumber(p - s.atm)
	return err
}

// sorted goes through a map in the order of its keys, so that a seed stays its set.
func sorted(m map[string]float64) func(func(string, float64) bool) {
	return func(yield func(string, float64) bool) {
		for _, k := range slices.Sorted(maps.Keys(m)) {
			if !yield(k, m[k]) {
				return
			}
		}
	}
}

// temperatureUnit and deltaUnit print tenths, zero or not.
func (g *generator) temperatureUnit() unit { return unit{g.u.temp.symbol, 1, false} }

func (g *generator) deltaUnit() unit { return unit{g.u.delta.symbol, 1, false} }

// reading is how far an answer from a saturation table may be off.
const reading = 0.2
