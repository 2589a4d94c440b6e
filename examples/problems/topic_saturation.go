package main

// saturationTopic goes through a saturation table in both directions.
var saturationTopic = topic{name: "saturation", forms: []form{
	{"boiling", func(g *generator, d *draft) error {
		return saturationForm(d, "suction-pressure", dew, g.saturatedAt(30, 50, -1, 10))
	}},
	{"condensing", func(g *generator, d *draft) error {
		return saturationForm(d, "liquid-pressure", bubble, g.saturatedAt(96, 116, 36, 47))
	}},
	{"cylinder", func(g *generator, d *draft) error {
		f := g.fluid()
		d.giveText("refrigerant", f.Designation())
		at := d.give("room", g.saturatedAt(60, 90, 16, 32), g.u.temp)
		d.noise("outdoor-air", "label-charge")
		return d.pressureFor(f, bubble, at, nil)
	}},
	{"coil", func(g *generator, d *draft) error {
		f := g.fluid()
		d.giveText("refrigerant", f.Designation())
		at := d.give("boiling-wanted", g.saturatedAt(34, 48, 1, 9), g.u.temp)
		d.noise("return-air", "outdoor-air")
		return d.pressureFor(f, dew, at, nil)
	}},
}}

func saturationForm(d *draft, name string, column int, at float64) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge(name, f, column, at)
	if err != nil {
		return err
	}
	d.noise("outdoor-air", "suction-line", "liquid-line")
	d.answer(r.at, reading, g.temperatureUnit())
	r.misreadings(d, func(at float64) float64 { return at })
	look := f.BubbleTemperature
	if column == dew {
		look = f.DewTemperature
	}
	t, err := look(g.actual(r.site, r.shown))
	d.again = g.degrees(t)
	return err
}
