package main

// subcoolingTopic counts the liquid line from the bubble point.
var subcoolingTopic = topic{name: "subcooling", forms: []form{
	{"find", subcoolingFind}, {"line", subcoolingLine}, {"pressure", subcoolingPressure},
	{"riser", subcoolingRiser},
}}

func (g *generator) fall() float64 { return g.fine(g.among(5, 18, 1, 3, 10, 1)) }

func subcoolingFind(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("liquid-pressure", f, bubble, g.saturatedAt(96, 116, 36, 47))
	if err != nil {
		return err
	}
	line := d.give("liquid-line", r.at-g.fall(), g.u.temp)
	d.give("outdoor-air", line-g.fine(g.among(3, 12, 1, 2, 6, 1)), g.u.temp)
	d.noise("suction-line", "suction-pressure")
	d.answer(r.at-line, reading, g.deltaUnit())
	r.misreadings(d, func(at float64) float64 { return at - line })
	d.wrong("approach", line-d.given[len(d.given)-1].value)
	d.taken(func(of map[string]float64) float64 { return r.at - of["liquid-line"] },
		"liquid-line")
	s, err := f.Subcooling(g.actual(r.site, r.shown), g.temperature(line))
	d.again = g.delta(s)
	return err
}

func subcoolingLine(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("liquid-pressure", f, bubble, g.saturatedAt(96, 116, 36, 47))
	if err != nil {
		return err
	}
	want := d.give("subcooling-wanted", g.fall(), g.u.delta)
	outdoor := d.give("outdoor-air", r.at-want-g.among(3, 12, 1, 2, 6, 1), g.u.temp)
	d.noise("suction-pressure")
	d.answer(r.at-want, reading, g.temperatureUnit())
	r.misreadings(d, func(at float64) float64 { return at - want })
	d.wrong("added", r.at+want)
	d.wrong("saturation-itself", r.at)
	d.wrong("outdoor-plus", outdoor+want)
	d.wrong("taken-twice", r.at-2*want)
	t, err := f.BubbleTemperature(g.actual(r.site, r.shown))
	d.again = g.degrees(t) - want
	return err
}

func subcoolingPressure(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	at, want := g.saturatedAt(96, 116, 36, 47), g.fall()
	line := d.give("liquid-line", at-want, g.u.temp)
	d.give("subcooling-wanted", want, g.u.delta)
	d.noise("outdoor-air", "suction-line")
	d.set("saturation", at, g.u.temp)
	return d.pressureFor(f, bubble, rounded(line+want, 1), map[string]float64{
		"line-itself": line, "half-added": line + want/2, "added-twice": line + 2*want,
	})
}

// subcoolingRiser takes off what the liquid loses on its way up to the device.
func subcoolingRiser(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	at := g.saturatedAt(96, 112, 36, 44)
	p, err := f.BubblePressure(g.temperature(at))
	if err != nil {
		return err
	}
	s := d.gaugeSite()
	drop := g.pressureAmong(8, 20, 1, 50, 140, 10)
	listed := g.listed(s, p)
	shown := d.give("liquid-pressure", g.shown(s, listed)+drop, g.u.gauge)
	d.give("riser-drop", drop, g.u.drop)
	below, err := f.BubbleTemperature(g.actual(s, shown))
	if err != nil {
		return err
	}
	t, err := d.satTable(f, s, at, g.degrees(below))
	if err != nil {
		return err
	}
	r := gaugeReading{site: s, table: t, column: bubble, listed: listed, shown: shown - drop}
	r.at = rounded(t.read(bubble, listed, 0), 1)
	t.how("sat", bubble, 0, listed)
	d.set("saturation", r.at, g.u.temp)
	d.set("listed", listed, s.unit)
	d.set("at-device", shown-drop, g.u.gauge)
	line := d.give("liquid-line", r.at-g.fall(), g.u.temp)
	d.noise("outdoor-air", "suction-line")
	d.answer(r.at-line, reading, g.deltaUnit())
	r.misreadings(d, func(at float64) float64 { return at - line })
	d.wrong("drop-forgotten", t.read(bubble, listed+drop, 0)-line)
	d.wrong("drop-added", t.read(bubble, listed+2*drop, 0)-line)
	sub, err := f.Subcooling(g.actual(s, shown-drop), g.temperature(line))
	d.again = g.delta(sub)
	return err
}
