package main

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// airTopic is about the water in air.
var airTopic = topic{name: "air", forms: []form{
	{"wet-bulb", airWetBulb}, {"relative", airRelative}, {"dew-point", airDewPoint},
	{"condenses", airCondenses},
}}

// whole is how many of the unit of a humidity ratio a unit of dry air takes for
// one of water.
func (g *generator) whole() float64 { return g.either(7000, 1000) }

// saturatedRatio is the humidity ratio of air in which vapor has a pressure.
func saturatedRatio(pw, p float64) float64 { return 0.621945 * pw / (p - pw) }

// moist gives place and atmosphere, in two decimals.
func (d *draft) moist() (atm quantity.Pressure, printed, sea float64, u unit) {
	atm = d.place()
	u = d.g.u.absolute.with(2)
	if d.g.options.Bar {
		u = u.with(4)
	}
	sea = rounded(d.g.pressureNumber(quantity.StandardAtmosphere), u.places)
	return atm, d.give("atmosphere", d.g.pressureNumber(atm), u), sea, u.with(4)
}

// steam prints an excerpt of the saturation pressure of water.
func (d *draft) steam(u unit, cover ...float64) (grid, error) {
	g := d.g
	u.places = 4
	if g.options.Bar {
		u.places = 5
	}
	t := grid{d: d, units: []unit{g.u.temp, {u.symbol, u.places, false}}}
	low, high := cover[0], cover[0]
	for _, v := range cover {
		low, high = min(low, v), max(high, v)
	}
	from := math.Floor(low+1e-9) - g.pick(2, 4, 1)
	for v := from; v <= math.Ceil(high-1e-9)+g.pick(2, 4, 1); v++ {
		air, err := psychro.Saturated(g.temperature(v), quantity.StandardAtmosphere)
		if err != nil {
			return t, err
		}
		t.rows = append(t.rows, []float64{v,
			rounded(g.pressureNumber(air.VaporPressure()), u.places)})
	}
	t.print(say(d.language, "caption-steam"), []string{g.u.temp.symbol, u.symbol})
	return t, nil
}

// humid makes a humidity ratio the answer. Its margin by the formula is 1 %, and
// by the chart what its lines can be read to: 2 grains/lb or 0.3 g/kg.
func (d *draft) humid(ratio float64) {
	g := d.g
	d.answer(g.whole()*ratio, 0.01*g.whole()*ratio, unit{g.u.humidity.symbol, 1, false})
	d.Answer.ByChart = max(1.5*d.Answer.Within, g.either(2, 0.3))
	d.Air = true
}

func (d *draft) point(key string, air psychro.Air, err error) {
	text, _ := d.word(key)
	d.plot = func(c *chart.Chart) error {
		if err != nil {
			return err
		}
		return c.AddState(text, air)
	}
	d.again = d.g.whole() * air.HumidityRatio()
}

func airWetBulb(g *generator, d *draft) error {
	atm, p, sea, u := d.moist()
	wet := g.among(58, 68, 1, 14, 20, 1)
	if g.atLeast(2) {
		wet += 0.5
	}
	dry := d.give("dry-bulb", wet+g.among(8, 16, 1, 4, 9, 1), g.u.temp)
	d.give("wet-bulb", wet, g.u.temp)
	d.noise("outdoor-air")
	t, err := d.steam(u, wet, dry)
	if err != nil {
		return err
	}
	pws := rounded(t.between(0, 1, wet, 0), t.units[1].places)
	t.how("steam", 0, 1, wet)
	// ratio is equation 33; turn is −1 where the sign of its last term is mistaken.
	ratio := func(ws, turn float64) float64 {
		if g.ip() {
			return ((1093-0.556*wet)*ws - turn*0.240*(dry-wet)) / (1093 + 0.444*dry - wet)
		}
		return ((2501-2.326*wet)*ws - turn*1.006*(dry-wet)) / (2501 + 1.86*dry - 4.186*wet)
	}
	ws := d.figure("ws", saturatedRatio(pws, p), 6)
	d.set("pws", pws, t.units[1])
	d.figure("w", ratio(ws, 1), 5)
	d.figure("whole", g.whole(), 0)
	d.humid(ratio(ws, 1))
	whole := g.whole()
	d.wrong("saturated-at-wet", whole*ws)
	d.wrong("saturated-at-dry", whole*saturatedRatio(t.between(0, 1, dry, 0), p))
	d.wrong("depression-added", whole*ratio(ws, -1))
	d.wrong("depression-half", whole*ratio(ws, 0.5))
	d.wrong("depression-twice", whole*ratio(ws, 2))
	d.wrong("row-below", whole*ratio(saturatedRatio(t.between(0, 1, wet, 2), p), 1))
	d.wrong("row-above", whole*ratio(saturatedRatio(t.between(0, 1, wet, -2), p), 1))
	d.wrong("water-left-in", whole*ratio(0.621945*pws/p, 1))
	if p != sea {
		d.wrong("sea-atmosphere", whole*ratio(saturatedRatio(pws, sea), 1))
	}
	key := "formula-sum-ip"
	if !g.ip() {
		key = "formula-sum-si"
	}
	d.figure("t", dry, 1)
	d.figure("tw", wet, 1)
	d.phrase("formula", key)
	air, err := psychro.FromWetBulb(g.temperature(dry), g.temperature(wet), atm)
	d.point("room-air", air, err)
	return err
}

func airRelative(g *generator, d *draft) error {
	atm, p, sea, u := d.moist()
	dry := g.among(70, 80, 1, 21, 27, 1)
	if g.atLeast(2) {
		dry += 0.5
	}
	d.give("dry-bulb", dry, g.u.temp)
	percent := d.give("relative-humidity", g.pick(30, 70, 1), g.u.percent)
	d.noise("outdoor-air")
	t, err := d.steam(u, dry)
	if err != nil {
		return err
	}
	pws := rounded(t.between(0, 1, dry, 0), t.units[1].places)
	t.how("steam", 0, 1, dry)
	d.set("pws", pws, t.units[1])
	pw := d.set("pw", pws*percent/100, t.units[1])
	d.figure("whole", g.whole(), 0)
	whole := g.whole()
	d.humid(saturatedRatio(pw, p))
	d.wrong("as-saturated", whole*saturatedRatio(pws, p))
	d.wrong("factor-left-out", whole*pw/p)
	d.wrong("twice-relative", whole*saturatedRatio(pw*percent/100, p))
	d.wrong("could-take-up", whole*saturatedRatio(pws-pw, p))
	d.wrong("two-rows-below", whole*saturatedRatio(t.between(0, 1, dry, 2)*percent/100, p))
	d.wrong("two-rows-above", whole*saturatedRatio(t.between(0, 1, dry, -2)*percent/100, p))
	d.wrong("both-pressures", whole*0.621945*pw/(p+pw))
	if p != sea {
		d.wrong("sea-atmosphere", whole*saturatedRatio(pw, sea))
	}
	air, err := psychro.FromRelativeHumidity(g.temperature(dry), percent/100, atm)
	d.point("room-air", air, err)
	return err
}

func airDewPoint(g *generator, d *draft) error {
	atm, p, sea, u := d.moist()
	point := g.among(48, 62, 1, 9, 17, 1)
	if g.atLeast(2) {
		point += 0.5
	}
	dry := d.give("dry-bulb", point+g.among(12, 24, 1, 7, 13, 1), g.u.temp)
	d.give("dew-point", point, g.u.temp)
	d.noise("outdoor-air")
	t, err := d.steam(u, point, dry)
	if err != nil {
		return err
	}
	pw := rounded(t.between(0, 1, point, 0), t.units[1].places)
	t.how("steam", 0, 1, point)
	d.set("pw", pw, t.units[1])
	d.figure("whole", g.whole(), 0)
	whole := g.whole()
	d.humid(saturatedRatio(pw, p))
	d.wrong("saturated-at-dry", whole*saturatedRatio(t.between(0, 1, dry, 0), p))
	d.wrong("mean-temperature", whole*saturatedRatio(t.between(0, 1, (dry+point)/2, 0), p))
	d.wrong("factor-left-out", whole*pw/p)
	d.wrong("two-rows-below", whole*saturatedRatio(t.between(0, 1, point, 2), p))
	d.wrong("two-rows-above", whole*saturatedRatio(t.between(0, 1, point, -2), p))
	d.wrong("row-above", whole*saturatedRatio(t.between(0, 1, point, -1), p))
	d.wrong("row-below", whole*saturatedRatio(t.between(0, 1, point, 1), p))
	if p != sea {
		d.wrong("sea-atmosphere", whole*saturatedRatio(pw, sea))
	}
	air, err := psychro.FromDewPoint(g.temperature(dry), g.temperature(point), atm)
	d.point("room-air", air, err)
	return err
}

// airCondenses asks at what temperature of a surface a room begins to sweat.
func airCondenses(g *generator, d *draft) error {
	atm := d.place()
	dry := g.among(70, 80, 1, 21, 27, 1)
	if g.atLeast(2) {
		dry += 0.5
	}
	d.give("dry-bulb", dry, g.u.temp)
	percent := d.give("relative-humidity", g.pick(40, 70, 1), g.u.percent)
	d.noise("outdoor-air", "supply-air")
	air, err := psychro.FromRelativeHumidity(g.temperature(dry), percent/100, atm)
	if err != nil {
		return err
	}
	near := g.degrees(air.DewPoint())
	t, err := d.steam(g.u.absolute, dry, near)
	if err != nil {
		return err
	}
	pws := rounded(t.between(0, 1, dry, 0), t.units[1].places)
	t.how("steam", 0, 1, dry)
	d.set("pws", pws, t.units[1])
	pw := d.set("pw", pws*percent/100, t.units[1])
	point := t.between(1, 0, pw, 0)
	t.how("back", 1, 0, pw)
	d.answer(point, g.either(0.3, 0.2), g.temperatureUnit())
	d.Answer.ByChart = g.either(1, 0.6)
	d.Air = true
	d.wrong("row-below", t.between(1, 0, pw, 1))
	d.wrong("row-above", t.between(1, 0, pw, -1))
	d.wrong("percent-of-degrees", dry*percent/100)
	d.wrong("halfway", (dry+point)/2)
	d.wrong("two-rows-below", t.between(1, 0, pw, 2))
	d.wrong("two-rows-above", t.between(1, 0, pw, -2))
	d.wrong("low-row", t.between(1, 0, t.between(0, 1, dry, -2)*percent/100, 0))
	d.wrong("high-row", t.between(1, 0, t.between(0, 1, dry, 2)*percent/100, 0))
	text, _ := d.word("room-air")
	d.plot = func(c *chart.Chart) error { return c.AddState(text, air) }
	d.again = near
	return nil
}
