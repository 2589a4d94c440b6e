package main

import "math"

// superheatTopic counts the suction line from the dew point.
var superheatTopic = topic{name: "superheat", forms: []form{
	{"find", superheatFind}, {"line", superheatLine}, {"pressure", superheatPressure},
	{"coil", superheatCoil},
}}

// rise draws a superheat: whole degrees at difficulty 1, tenths beyond.
func (g *generator) rise() float64 {
	return g.fine(g.among(6, 26, 1, 3, 14, 1))
}

// fine adds tenths to a temperature, of a clamp that shows them.
func (g *generator) fine(v float64) float64 {
	return rounded(v+g.pick(0.1, 0.9, 0.1), 1)
}

func superheatFind(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("suction-pressure", f, dew, g.saturatedAt(34, 48, 1, 9))
	if err != nil {
		return err
	}
	line := d.give("suction-line", r.at+g.rise(), g.u.temp)
	d.noise("outdoor-air", "liquid-line", "liquid-pressure")
	d.answer(line-r.at, reading, g.deltaUnit())
	r.misreadings(d, func(at float64) float64 { return line - at })
	d.wrong("line-less-pressure", math.Abs(r.shown-line))
	d.taken(func(of map[string]float64) float64 { return of["suction-line"] - r.at },
		"suction-line")
	s, err := f.Superheat(g.actual(r.site, r.shown), g.temperature(line))
	d.again = g.delta(s)
	return err
}

func superheatLine(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	r, err := d.gauge("suction-pressure", f, dew, g.saturatedAt(34, 48, 1, 9))
	if err != nil {
		return err
	}
	want := d.give("superheat-wanted", g.rise(), g.u.delta)
	d.noise("outdoor-air", "liquid-pressure")
	d.answer(r.at+want, reading, g.temperatureUnit())
	r.misreadings(d, func(at float64) float64 { return at + want })
	d.wrong("taken-off", r.at-want)
	d.wrong("saturation-itself", r.at)
	d.wrong("added-twice", r.at+2*want)
	t, err := f.DewTemperature(g.actual(r.site, r.shown))
	d.again = g.degrees(t) + want
	return err
}

func superheatPressure(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	at := g.saturatedAt(34, 48, 1, 9)
	want := g.rise()
	line := d.give("suction-line", at+want, g.u.temp)
	d.give("superheat-wanted", want, g.u.delta)
	d.noise("outdoor-air", "return-air")
	d.set("saturation", at, g.u.temp)
	return d.pressureFor(f, dew, rounded(line-want, 1), map[string]float64{
		"line-itself": line, "half-taken": line - want/2, "taken-twice": line - 2*want,
	})
}

func superheatCoil(g *generator, d *draft) error {
	f := g.fluid()
	d.giveText("refrigerant", f.Designation())
	at := g.saturatedAt(38, 50, 4, 10)
	p, err := f.DewPressure(g.temperature(at))
	if err != nil {
		return err
	}
	s := d.gaugeSite()
	drop := g.pressureAmong(2, 5, 1, 15, 35, 5)
	listed := g.listed(s, p)
	shown := d.give("suction-pressure", g.shown(s, listed)-drop, g.u.gauge)
	d.give("suction-drop", drop, g.u.drop)
	less, err := f.DewTemperature(g.actual(s, shown))
	if err != nil {
		return err
	}
	low, err := f.DewTemperature(g.actual(s, shown-drop))
	if err != nil {
		return err
	}
	t, err := d.satTable(f, s, at, g.degrees(less), g.degrees(low))
	if err != nil {
		return err
	}
	r := gaugeReading{site: s, table: t, column: dew, listed: listed, shown: shown + drop}
	r.at = rounded(t.read(dew, listed, 0), 1)
	t.how("sat", dew, 0, listed)
	d.set("saturation", r.at, g.u.temp)
	d.set("listed", listed, s.unit)
	d.set("at-coil", shown+drop, g.u.gauge)
	line := d.give("coil-outlet", r.at+g.rise(), g.u.temp)
	d.noise("outdoor-air", "liquid-line")
	d.answer(line-r.at, reading, g.deltaUnit())
	r.misreadings(d, func(at float64) float64 { return line - at })
	d.wrong("drop-forgotten", line-t.read(dew, listed-drop, 0))
	d.wrong("drop-taken-off", line-t.read(dew, listed-2*drop, 0))
	over, err := f.Superheat(g.actual(s, shown+drop), g.temperature(line))
	d.again = g.delta(over)
	return err
}
