package main

import (
	"math"
	"time"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// heatingTopic is about a heat pump that heats, and its defrost.
var heatingTopic = topic{name: "heating", forms: []form{
	{"capacity", heatingCapacity}, {"cop", heatingCOP}, {"auxiliary", heatingAuxiliary},
	{"frost", heatingFrost},
}}

func heatingCapacity(g *generator, d *draft) error {
	atm := d.place()
	flow := d.give("airflow", g.among(800, 1600, 25, 380, 760, 5), g.u.flow)
	back := d.give("return-air", g.fine(g.among(66, 71, 1, 19, 21, 1)), g.u.temp)
	supply := d.give("supply-air", back+g.fine(g.among(16, 32, 1, 9, 17, 1)), g.u.temp)
	factor := d.sensibleFactor(atm)
	if g.atLeast(2) {
		d.give("outdoor-air", g.fine(g.among(25, 52, 1, -4, 11, 1)), g.u.temp)
	}
	work := func(rise float64) float64 { return g.either(1, 1e-3) * factor * flow * rise }
	right := work(supply - back)
	d.set("rise", supply-back, g.u.delta)
	d.bound["thousand"] = g.pairSymbol("", " / 1,000")
	d.answer(right, 0.01*right, g.u.heat.with(int(g.either(-2, 2))))
	d.wrong("other-degrees", right*g.either(1/1.8, 1.8))
	d.wrong("other-degrees-back", right*g.either(1.8, 1/1.8))
	if g.atLeast(3) {
		d.wrong("sea-factor", right/factor*g.either(1.08, 1.21))
	}
	d.wrong("supply-itself", work(supply))
	d.wrong("mean-rise", work((supply-back)/2))
	d.wrong("twice", 2*right)
	d.wrong("factor-left-out", right/factor)
	d.wrong("factor-twice", right*factor)
	air, err := psychro.FromHumidityRatio(g.temperature(back), 0.006, atm)
	if err != nil {
		return err
	}
	warm, err := psychro.SensibleHeatCool(air, g.temperature(supply))
	if err != nil {
		return err
	}
	d.again = g.heatNumber(warm.HeatRate(air.DryAirFlow(g.flow(flow))))
	return nil
}

func heatingCOP(g *generator, d *draft) error {
	capacity := d.give("heating-capacity", g.among(16000, 46000, 100, 5, 14, 0.1), g.u.heat)
	kw := rounded(float64(g.heat(capacity))/1000/g.pick(1.9, 3.8, 0.05), 2)
	blower := 0.0
	if g.atLeast(2) {
		blower = d.give("blower", g.pick(0.3, 0.6, 0.01), g.u.power)
		d.give("outdoor-unit", kw-blower, g.u.power)
		d.bound["all-power"] = "(" + d.bound["outdoor-unit"] + " + " + d.bound["blower"] + ")"
	} else {
		d.give("power", kw, g.u.power)
		d.bound["all-power"] = d.bound["power"]
	}
	strip := 0.0
	if g.atLeast(3) { // with a strip heater that is off, which belongs to neither
		strip = d.give("strip", g.pick(2, 5, 0.5), g.u.power)
	}
	d.give("outdoor-air", g.fine(g.among(25, 52, 1, -4, 11, 1)), g.u.temp)
	heat := float64(g.heat(capacity)) / 1000
	kilowatts := unit{"kW", 3, true}
	d.set("heat-kw", heat, kilowatts)
	if g.ip() {
		d.bound["heat-sum"] = d.bound["heating-capacity"] + " / 3,412 = " + d.bound["heat-kw"]
	}
	cop := heat / kw
	d.answer(cop, 0.01*cop, unit{"", 2, false})
	d.wrong("cooling", (heat-kw)/kw)
	d.wrong("one-more", (heat+kw)/kw)
	d.wrong("half", cop/2)
	d.wrong("twice", 2*cop)
	if g.ip() {
		d.wrong("by-three", capacity/3000/kw)
		d.wrong("by-four", capacity/4000/kw)
	}
	if blower > 0 {
		d.wrong("blower-forgotten", heat/(kw-blower))
		d.wrong("blower-twice", heat/(kw+blower))
		d.wrong("blower-heat", (heat+blower)/kw)
	} else {
		d.wrong("volt-ampere-more", heat/(kw/0.85))
		d.wrong("volt-ampere-less", heat/(kw*0.85))
	}
	if strip > 0 {
		d.wrong("strip-counted", heat/(kw+strip))
		d.wrong("strip-heat", (heat+strip)/(kw+strip))
		d.wrong("strip-heat-alone", (heat+strip)/kw)
	}
	e, err := airside.EfficiencyOf(
		g.heat(capacity).PlusMinus(0), quantity.Kilowatts(kw).PlusMinus(0),
	)
	d.again = e.COP
	return err
}

// heatingAuxiliary reads the heat pump's capacity off a table of outdoor
// temperatures, and asks for what is missing from the load.
func heatingAuxiliary(g *generator, d *draft) error {
	t := grid{d: d, units: []unit{g.u.temp, g.u.heat}}
	t.units[1].free = false
	best := g.among(28000, 48000, 500, 8, 14, 0.1)
	step, first := g.either(10, 5), g.either(0, -18)
	fall := g.pick(0.075, 0.1, 0.005)
	for i := range 7 {
		t.rows = append(t.rows, []float64{first + step*float64(i),
			rounded(best*(1-fall*float64(6-i)-0.002*float64((6-i)*(6-i))), int(g.either(-2, 2)))})
	}
	outdoor := first + step*g.pick(2, 4, 1)
	if g.atLeast(2) {
		outdoor += rounded(step*g.pick(0.2, 0.8, 0.1), 1)
	}
	outdoor = d.give("outdoor-air", outdoor, g.u.temp)
	caption, _ := d.word("caption")
	head, _ := d.word("name-outdoor-air")
	capacity, _ := d.word("name-heating-capacity")
	t.print(caption, []string{head + " (" + g.u.temp.symbol + ")",
		capacity + " (" + g.u.heat.symbol + ")"})
	gives := t.between(0, 1, outdoor, 0)
	t.how("gives", 0, 1, outdoor)
	d.set("gives", gives, g.u.heat)
	load := rounded(gives*g.pick(1.2, 1.8, 0.01), int(g.either(-2, 1)))
	if g.atLeast(3) { // the load by its loss for each degree
		room := d.give("return-air", g.either(70, 21), g.u.temp)
		loss := d.give("loss", load/(room-outdoor),
			unit{g.pairSymbol(g.options.symbol("loss"), "kW/K"), int(g.either(0, 3)), true})
		load = loss * (room - outdoor)
		d.set("load", load, g.u.heat)
		d.bound["load-sum"] = d.bound["loss"] + " × (" + d.bound["return-air"] + " − " +
			d.bound["outdoor-air"] + ") = " + d.bound["load"]
	} else {
		load = d.give("load", load, g.u.heat)
	}
	kw := func(v float64) float64 { return v * g.either(1/3412., 1) }
	d.bound["to-kw"] = g.pairSymbol(" / 3,412", "")
	missing := load - gives
	d.answer(kw(missing), 0.01*kw(load), unit{"kW", 2, false})
	d.wrong("row-below", kw(load-t.between(0, 1, outdoor, 1)))
	d.wrong("row-above", kw(load-t.between(0, 1, outdoor, -1)))
	d.wrong("load-itself", kw(load))
	d.wrong("pump-itself", kw(gives))
	d.wrong("at-best", kw(load-t.rows[6][1]))
	d.wrong("at-worst", kw(load-t.rows[0][1]))
	d.wrong("half", kw(missing)/2)
	d.wrong("twice", 2*kw(missing))
	d.again = (g.heat(load) - g.heat(gives)).Kilowatts()
	return nil
}

// heatingFrost asks for the heat that a defrost takes to melt what has gathered.
func heatingFrost(g *generator, d *draft) error {
	rate := d.give("frost-rate", g.among(1, 4, 0.1, 0.5, 1.8, 0.05),
		unit{g.pairSymbol("lb/h", "kg/h"), 2, true})
	minutes := d.give("between", g.pick(30, 90, 5), g.u.minute)
	melt := d.give("melting", g.either(144, 334), unit{g.pairSymbol("Btu/lb", "kJ/kg"), 0, true})
	d.give("outdoor-air", g.fine(g.among(26, 38, 1, -3, 3, 1)), g.u.temp)
	if g.atLeast(2) {
		d.give("airflow", g.among(800, 1600, 25, 380, 760, 5), g.u.flow)
	}
	share := 1.0
	if g.atLeast(3) {
		share = d.give("runs", g.pick(50, 90, 5), g.u.percent) / 100
		d.bound["of-time"] = " × " + d.bound["runs"]
	} else {
		d.bound["of-time"] = ""
	}
	heat := rate * minutes / 60 * share * melt
	d.answer(heat, 0.01*heat, unit{g.pairSymbol("Btu", "kJ"), 0, true})
	d.wrong("hour", rate*share*melt)
	d.wrong("turned", rate*60/minutes*share*melt)
	d.wrong("half", heat/2)
	d.wrong("twice", 2*heat)
	d.wrong("hundred-minutes", rate*minutes/100*share*melt)
	if share < 1 {
		d.wrong("runs-forgotten", heat/share)
		d.wrong("off-time", heat/share*(1-share))
	}
	ice, err := airside.IceFrom(quantity.MassFlow(float64(g.mass(rate))/3600),
		time.Duration(minutes*share*float64(time.Minute)))
	d.again = math.Abs(float64(ice)) / float64(g.mass(1)) * melt
	return err
}
