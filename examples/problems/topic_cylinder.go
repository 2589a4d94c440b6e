package main

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// cylinderTopic is about the room in a recovery cylinder.
var cylinderTopic = topic{name: "cylinder", forms: []form{
	{"net", func(g *generator, d *draft) error { return cylinderForm(d, "net") }},
	{"gross", func(g *generator, d *draft) error { return cylinderForm(d, "gross") }},
	{"room", func(g *generator, d *draft) error { return cylinderForm(d, "room") }},
	{"stays", func(g *generator, d *draft) error { return cylinderForm(d, "stays") }},
}}

func cylinderForm(d *draft, ask string) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	water := d.give("water-capacity", g.among(26, 120, 0.1, 12, 54, 0.1), g.u.mass)
	tare := rounded(water*g.pick(0.4, 0.6, 0.01), int(g.either(1, 2)))
	fill, err := refrigerant.Cylinder{WaterCapacity: g.mass(water), Tare: g.mass(tare)}.SafeFill(f)
	if err != nil {
		return errAgain
	}
	factor := rounded(float64(fill.Net/g.mass(water)), 3)
	share := 1.0
	hot, err := f.BubbleDensity(quantity.Fahrenheit(130))
	gravity := rounded(float64(hot)/999.0, 3)
	if err == nil && g.atLeast(3) && math.Abs(0.8*gravity-factor) < 0.004 {
		factor, share = 0.8*gravity, 0.8
		d.give("gravity", gravity, g.u.ratio.with(3))
		d.give("fill-share", 80, g.u.percent)
		d.bound["factor"] = d.bound["fill-share"] + " × " + d.bound["gravity"]
	} else {
		d.give("fill-factor", factor, g.u.ratio.with(3))
		d.bound["factor"] = d.bound["fill-factor"]
	}
	u := unit{g.u.mass.symbol, int(g.either(1, 2)), false}
	safe := factor * water
	d.set("safe", safe, u)
	var right float64
	var work func(net float64) float64
	switch ask {
	case "net":
		d.give("tare", tare, g.u.mass)
		work = func(net float64) float64 { return net }
		right = float64(fill.Net)
	case "gross":
		d.give("tare", tare, g.u.mass)
		work = func(net float64) float64 { return net + tare }
		right = float64(fill.Gross)
	case "room":
		d.give("tare", tare, g.u.mass)
		scale := d.give("scale", tare+safe*g.pick(0.2, 0.7, 0.01), g.u.mass)
		d.set("inside", scale-tare, u)
		work = func(net float64) float64 { return net - (scale - tare) }
		room, err := refrigerant.Cylinder{WaterCapacity: g.mass(water), Tare: g.mass(tare)}.
			RoomFor(f, g.mass(scale))
		if err != nil {
			return err
		}
		right = float64(room.MayTake)
		d.wrongLater("tare-forgotten", safe-scale)
		d.wrongLater("inside-itself", scale-tare)
		d.wrongLater("gross-room", safe+tare-scale+tare)
		d.wrongLater("inside-added", safe+scale-tare)
	case "stays":
		whole := d.give("whole-charge", safe*g.pick(1.3, 2.4, 0.01), g.u.mass)
		d.give("tare", tare, g.u.mass)
		work = func(net float64) float64 { return whole - net }
		right = float64(g.mass(whole) - fill.Net)
		d.wrongLater("net-itself", safe)
		d.wrongLater("tare-counted", whole-safe+tare)
		d.wrongLater("tare-taken", whole-safe-tare)
	}
	d.noise("outdoor-air", "liquid-pressure")
	d.answer(work(safe), 0.01*safe, u)
	d.wrong("water-itself", work(water))
	d.wrong("eighty-percent", work(0.8*water))
	d.wrong("factor-over", work(water/factor))
	d.wrong("eighty-twice", work(0.8*factor*water))
	d.wrong("less-tare", work(factor*(water-tare)))
	d.wrong("of-gross", work(factor*(water+tare)))
	if share < 1 {
		d.wrong("eighty-forgotten", work(gravity*water))
		d.wrong("gravity-over", work(0.8*water/gravity))
	}
	d.later()
	d.again = right / float64(g.mass(1))
	return nil
}
