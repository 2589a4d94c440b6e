package main

import "github.com/satline/satline/refrigerant"

// glideTopic is about blends, which boil and condense over a span of
// temperatures at one pressure.
var glideTopic = topic{name: "glide", glides: true, forms: []form{
	{"evaporator", func(g *generator, d *draft) error {
		return glideForm(d, "evaporator-pressure", g.saturatedAt(36, 48, 2, 9), 0, 1, -1)
	}},
	{"condenser", func(g *generator, d *draft) error {
		return glideForm(d, "condenser-pressure", g.saturatedAt(96, 112, 36, 44), 0, 1, -1)
	}},
	{"mean", func(g *generator, d *draft) error {
		return glideForm(d, "evaporator-pressure", g.saturatedAt(36, 48, 2, 9), 0, 0.5, 0.5)
	}},
	{"inlet", func(g *generator, d *draft) error {
		quality := g.pick(15, 35, 5)
		d.give("vapor-at-inlet", quality, g.u.percent)
		return glideForm(d, "evaporator-pressure", g.saturatedAt(36, 48, 2, 9), 0,
			quality/100, 1-quality/100)
	}},
}}

// glideForm makes ofDew parts of the dew temperature and ofBubble parts of the
// bubble temperature at one pressure the answer.
func glideForm(d *draft, name string, at, _, ofDew, ofBubble float64) error {
	g, f := d.g, d.g.glider()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge(name, f, bubble, at)
	if err != nil {
		return err
	}
	d.noise("outdoor-air", "return-air")
	low, high := r.at, rounded(r.table.read(dew, r.listed, 0), 1)
	r.table.how("dew", dew, 0, r.listed)
	d.set("dew", high, g.u.temp)
	d.set("bubble", low, g.u.temp)
	d.set("glide", high-low, g.u.delta)
	work := func(low, high float64) float64 { return ofDew*high + ofBubble*low }
	unit := g.temperatureUnit()
	if ofDew+ofBubble == 0 {
		unit = g.deltaUnit()
	}
	d.answer(work(low, high), reading, unit)
	row := g.either(2, 1)
	d.wrong("dew-below", work(low, high+row))
	d.wrong("dew-above", work(low, high-row))
	d.wrong("bubble-below", work(low+row, high))
	d.wrong("bubble-above", work(low-row, high))
	if ofDew == 1 {
		d.wrong("half", (high-low)/2)
		d.wrong("pressures", float64(r.table.read(0, r.listed, 0)))
	} else {
		d.wrong("dew-itself", high)
		d.wrong("bubble-itself", low)
		d.wrong("wrong-end", ofDew*low+ofBubble*high)
		d.wrong("glide-added", high+ofDew*(high-low))
		d.wrong("glide-taken", low-ofDew*(high-low))
	}
	return glideAgain(d, f, r, work)
}

func glideAgain(
	d *draft, f *refrigerant.Refrigerant, r gaugeReading, work func(low, high float64) float64,
) error {
	g := d.g
	p := g.actual(r.site, r.shown)
	low, err := f.BubbleTemperature(p)
	if err != nil {
		return err
	}
	glide, err := f.Glide(p)
	d.again = work(g.degrees(low), g.degrees(low)+g.delta(glide))
	return err
}
