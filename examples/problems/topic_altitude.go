package main

import (
	"github.com/satline/satline/quantity"
)

// altitudeTopic is about gauges where the air is thin, beside a table for the
// level of the sea.
var altitudeTopic = topic{name: "altitude", forms: []form{
	{"superheat", func(g *generator, d *draft) error {
		return altitudeForm(d, "suction-pressure", "suction-line", dew,
			g.saturatedAt(36, 46, 2, 8), g.rise())
	}},
	{"subcooling", func(g *generator, d *draft) error {
		return altitudeForm(d, "liquid-pressure", "liquid-line", bubble,
			g.saturatedAt(96, 112, 36, 44), -g.fall())
	}},
	{"shown", altitudeShown}, {"absolute", altitudeAbsolute},
}}

// mountain gives an elevation and how far its atmosphere is below that of the
// sea, from difficulty 2 on by a table.
func (d *draft) mountain() (atm quantity.Pressure, short float64) {
	g := d.g
	z := d.give("elevation", g.among(3000, 9000, 500, 1000, 2800, 100), g.u.length)
	atm = quantity.AtmosphereAt(g.length(z))
	short = g.pressure(quantity.StandardAtmosphere - atm)
	if !g.atLeast(2) {
		return atm, d.give("atmosphere-lower", short, g.u.drop)
	}
	d.set("atmosphere-lower", short, g.u.drop)
	step := g.either(500, 100)
	t := Table{Caption: say(d.language, "caption-atmosphere"), Head: []string{
		say(d.language, "head-elevation", "unit", g.u.length.symbol),
		say(d.language, "head-atmosphere", "unit", g.u.absolute.symbol),
		say(d.language, "head-lower", "unit", g.u.drop.symbol),
	}}
	first := z - step*g.pick(1, 3, 1)
	for i := range 5 {
		at := first + step*float64(i)
		p := quantity.AtmosphereAt(g.length(at))
		t.Rows = append(t.Rows, []string{g.u.length.number(at),
			g.u.absolute.with(g.u.absolute.places + 1).number(g.pressureNumber(p)),
			g.u.drop.number(g.pressure(quantity.StandardAtmosphere - p))})
	}
	d.table(t)
	return atm, short
}

func altitudeForm(d *draft, gauge, clamp string, column int, at, apart float64) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	look, count, way := f.DewPressure, f.Superheat, 1.0
	if column == bubble {
		look, count, way = f.BubblePressure, f.Subcooling, -1
	}
	p, err := look(g.temperature(at))
	if err != nil {
		return err
	}
	sea := gaugeSite{atm: quantity.StandardAtmosphere, unit: g.u.gauge}
	listed := g.listed(sea, p)
	atm, short := d.mountain()
	shown := d.give(gauge, listed+short, g.u.gauge)
	t, err := d.satTable(f, sea, at)
	if err != nil {
		return err
	}
	r := gaugeReading{site: sea, table: t, column: column, listed: listed, shown: shown}
	r.at = rounded(t.read(column, listed, 0), 1)
	t.how("sat", column, 0, listed)
	d.set("saturation", r.at, g.u.temp)
	d.set("at-sea", listed, g.u.gauge)
	line := d.give(clamp, r.at+apart, g.u.temp)
	if g.atLeast(3) {
		d.noise("outdoor-air", "return-air")
	}
	work := func(at float64) float64 { return way * (line - at) }
	d.answer(work(r.at), reading, g.deltaUnit())
	d.wrong("as-at-sea", work(t.read(column, shown, 0)))
	d.wrong("difference-added", work(t.read(column, shown+short, 0)))
	d.wrong("difference-twice", work(t.read(column, listed-short, 0)))
	r.misreadings(d, work)
	s, err := count(g.pascals(shown)+atm, g.temperature(line))
	d.again = g.delta(s)
	return err
}

// altitudeShown asks what a gauge up there shows for a temperature of boiling.
func altitudeShown(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	atm, short := d.mountain()
	at := d.give("boiling-wanted", g.saturatedAt(34, 48, 1, 9), g.u.temp)
	sea := gaugeSite{atm: quantity.StandardAtmosphere, unit: g.u.gauge}
	t, err := d.satTable(f, sea, at)
	if err != nil {
		return err
	}
	listed := rounded(t.lookUp(dew, at, 0), g.u.gauge.places)
	t.how("sat", 0, dew, at)
	d.set("listed", listed, g.u.gauge)
	if g.atLeast(3) {
		d.noise("outdoor-air", "return-air")
	}
	d.answer(listed+short, 0.003*listed, g.u.gauge)
	d.wrong("table-itself", listed)
	d.wrong("taken-off", listed-short)
	d.wrong("difference-twice", listed+2*short)
	d.wrong("atmosphere-added", listed+g.pressure(quantity.StandardAtmosphere))
	d.wrong("row-below", t.lookUp(dew, at, 1)+short)
	d.wrong("row-above", t.lookUp(dew, at, -1)+short)
	d.wrong("two-rows-below", t.lookUp(dew, at, 2)+short)
	d.wrong("two-rows-above", t.lookUp(dew, at, -2)+short)
	d.wrong("bubble-column", t.lookUp(bubble, at, 0)+short)
	p, err := f.DewPressure(g.temperature(at))
	d.again = g.pressureNumber(p - atm)
	return err
}

// altitudeAbsolute asks for the absolute pressure behind a gauge.
func altitudeAbsolute(g *generator, d *draft) error {
	atm, short := d.mountain()
	sea := g.pressure(quantity.StandardAtmosphere)
	d.give("atmosphere-sea", sea, g.u.absolute)
	shown := d.give("suction-pressure", g.pressureAmong(20, 70, 0.1, 140, 480, 1), g.u.gauge)
	if g.atLeast(3) {
		d.noise("outdoor-air", "liquid-pressure")
	}
	d.set("atmosphere-here", sea-short, g.u.absolute)
	d.answer(shown+sea-short, 0, g.u.absolute)
	d.Answer.Within = 3 * d.Answer.Within
	d.wrong("sea-added", shown+sea)
	d.wrong("gauge-itself", shown)
	d.wrong("atmosphere-taken-off", shown-sea+short)
	d.wrong("difference-added-too", shown+sea+short)
	d.wrong("difference-alone", shown+short)
	d.wrong("difference-taken", shown-short)
	d.wrong("difference-counted-twice", shown+sea-2*short)
	d.wrong("atmosphere-twice", shown+2*(sea-short))
	d.again = g.pressureNumber((g.pascals(shown) + atm))
	return nil
}
