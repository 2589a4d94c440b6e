package main

// refrigerationTopic is about cold rooms: superheat, and how far the coil is below
// the room.
var refrigerationTopic = topic{name: "refrigeration", forms: []form{
	{"superheat", coldSuperheat}, {"difference", coldDifference}, {"pressure", coldPressure},
	{"room", coldRoom},
}}

func (g *generator) coldBoiling() float64 { return g.saturatedAt(16, 30, -8, -1) }

func coldSuperheat(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("suction-pressure", f, dew, g.coldBoiling())
	if err != nil {
		return err
	}
	line := d.give("bulb-line", r.at+g.fine(g.among(4, 12, 1, 2, 7, 1)), g.u.temp)
	d.give("room-air", r.at+g.fine(g.among(13, 22, 1, 7, 12, 1)), g.u.temp)
	d.noise("liquid-line", "liquid-pressure")
	d.answer(line-r.at, reading, g.deltaUnit())
	r.misreadings(d, func(at float64) float64 { return line - at })
	d.taken(func(of map[string]float64) float64 { return of["bulb-line"] - r.at }, "bulb-line")
	s, err := f.Superheat(g.actual(r.site, r.shown), g.temperature(line))
	d.again = g.delta(s)
	return err
}

func coldDifference(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("suction-pressure", f, dew, g.coldBoiling())
	if err != nil {
		return err
	}
	room := d.give("room-air", r.at+g.fine(g.among(8, 22, 1, 4, 12, 1)), g.u.temp)
	d.give("bulb-line", r.at+g.fine(g.among(4, 7, 1, 2, 4, 1)), g.u.temp)
	d.noise("liquid-line", "liquid-pressure")
	d.answer(room-r.at, reading, g.deltaUnit())
	r.misreadings(d, func(at float64) float64 { return room - at })
	d.taken(func(of map[string]float64) float64 { return of["room-air"] - r.at }, "room-air")
	t, err := f.DewTemperature(g.actual(r.site, r.shown))
	d.again = room - g.degrees(t)
	return err
}

func coldPressure(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	at, apart := g.coldBoiling(), g.among(8, 14, 2, 5, 8, 1)
	room := d.give("room-wanted", at+apart, g.u.temp)
	d.give("difference-usual", apart, g.u.delta)
	d.noise("outdoor-air", "liquid-line")
	d.set("saturation", at, g.u.temp)
	return d.pressureFor(f, dew, rounded(room-apart, 1), map[string]float64{
		"room-itself": room, "half-difference": room - apart/2, "difference-twice": room - 2*apart,
	})
}

func coldRoom(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("suction-pressure", f, dew, g.coldBoiling())
	if err != nil {
		return err
	}
	apart := d.give("difference-usual", g.fine(g.among(8, 16, 1, 5, 9, 1)), g.u.delta)
	d.noise("outdoor-air", "liquid-pressure")
	d.answer(r.at+apart, reading, g.temperatureUnit())
	r.misreadings(d, func(at float64) float64 { return at + apart })
	d.wrong("difference-off", r.at-apart)
	d.wrong("saturation-itself", r.at)
	d.wrong("difference-added-twice", r.at+2*apart)
	t, err := f.DewTemperature(g.actual(r.site, r.shown))
	d.again = g.degrees(t) + apart
	return err
}
