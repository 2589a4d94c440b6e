package main

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

// cycleTopic follows the refrigerant around the machine by its enthalpies.
var cycleTopic = topic{name: "cycle", forms: []form{
	{"flow", func(g *generator, d *draft) error {
		return cycleForm(d, func(c cycleFigures) {
			d.answer(c.capacity/(c.h1-c.h4), 0.01*c.capacity/(c.h1-c.h4), g.u.massFlow.with(
				int(g.either(0, 1))))
			d.wrong("of-condenser", c.capacity/(c.h2-c.h4))
			d.wrong("of-compressor", c.capacity/(c.h2-c.h1))
			d.wrong("cold-liquid", c.capacity/(c.hv-c.hl))
			d.wrong("hot-liquid", c.capacity/(c.h1-c.hs))
			d.wrong("from-vapor", c.capacity/(c.hv-c.h4))
			d.wrong("liquid-left-out", c.capacity/c.h1)
			d.wrong("discharge-mean", c.capacity/((c.h1+c.h2)/2-c.h4))
			d.again = c.watts / c.takenUp / float64(g.either(0.45359237/3600, 1e-3))
		}, 1.4)
	}},
	{"condenser", func(g *generator, d *draft) error {
		return cycleForm(d, func(c cycleFigures) {
			d.answer(c.shown*(c.h2-c.h4)/(c.h1-c.h4), 0.01*c.shown*1.2,
				g.u.heat.with(int(g.either(-2, 2))))
			d.wrong("taken-up", c.shown)
			d.wrong("work-alone", c.shown*(c.h2-c.h1)/(c.h1-c.h4))
			d.wrong("turned-over", c.shown*(c.h1-c.h4)/(c.h2-c.h4))
			d.wrong("to-saturated", c.shown*(c.h2-c.hs)/(c.h1-c.h4))
			d.wrong("over-vapor", c.shown*(c.h2-c.h4)/(c.hv-c.h4))
			d.wrong("over-cold", c.shown*(c.h2-c.h4)/(c.hv-c.hs))
			d.wrong("work-twice", c.shown*(2*c.h2-c.h1-c.h4)/(c.h1-c.h4))
			d.again = g.heatNumber(quantity.Watts(c.watts * (1 + c.work/c.takenUp)))
		}, 1.4)
	}},
	{"work", func(g *generator, d *draft) error {
		return cycleForm(d, func(c cycleFigures) {
			kw := c.watts / 1000
			d.answer(kw*(c.h2-c.h1)/(c.h1-c.h4), 0.02*kw*(c.h2-c.h1)/(c.h1-c.h4), g.u.power)
			d.wrong("of-condenser", kw*(c.h2-c.h4)/(c.h1-c.h4))
			d.wrong("over-rejected", kw*(c.h2-c.h1)/(c.h2-c.h4))
			d.wrong("from-vapor", kw*(c.h2-c.hv)/(c.h1-c.h4))
			d.wrong("over-vapor", kw*(c.h2-c.h1)/(c.hv-c.h4))
			d.wrong("over-cold", kw*(c.h2-c.h1)/(c.hv-c.hl))
			d.wrong("over-hot", kw*(c.h2-c.h1)/(c.h1-c.hs))
			d.wrong("superheat-off", kw*(c.h2-2*c.h1+c.hv)/(c.h1-c.h4))
			d.wrong("half", kw*(c.h2-c.h1)/(c.h1-c.h4)/2)
			d.wrong("over-all", kw*(c.h2-c.h1)/(c.h2-c.hl))
			d.wrong("double-counted", kw*(c.h2-c.h1)/(c.h1-c.h4-(c.h2-c.h1)))
			d.again = kw * c.work / c.takenUp
		}, 8)
	}},
	{"cop", func(g *generator, d *draft) error {
		return cycleForm(d, func(c cycleFigures) {
			d.answer((c.h1-c.h4)/(c.h2-c.h1), 0.02*(c.h1-c.h4)/(c.h2-c.h1), g.u.ratio)
			d.wrong("heating", (c.h2-c.h4)/(c.h2-c.h1))
			d.wrong("from-vapor", (c.h1-c.h4)/(c.h2-c.hv))
			d.wrong("to-vapor", (c.hv-c.h4)/(c.h2-c.h1))
			d.wrong("to-hot", (c.h1-c.hs)/(c.h2-c.h1))
			d.wrong("cold-liquid", (c.hv-c.hl)/(c.h2-c.h1))
			d.wrong("heating-saturated", (c.h2-c.hs)/(c.h2-c.h1))
			d.wrong("heating-cold", (c.h2-c.hl)/(c.h2-c.h1))
			d.wrong("superheat-off", (c.h1-c.h4)/(c.h2-2*c.h1+c.hv))
			d.wrong("half", (c.h1-c.h4)/(c.h2-c.h1)/2)
			d.wrong("one-less", (c.h1-c.h4)/(c.h2-c.h1)-1)
			d.again = c.takenUp / c.work
		}, 8)
	}},
}}

// cycleFigures are the enthalpies as they are printed, in the order around the
// machine: suction, discharge, liquid line; saturated vapor and liquid at
// boiling, saturated liquid at condensing. capacity is in the unit that goes with
// the flow, shown as it is given; watts, takenUp and work are the library's, the
// last two per kilogram.
type cycleFigures struct {
	h1, h2, h4, hv, hl, hs float64
	capacity, shown, watts float64
	takenUp, work          float64
}

// cycleForm lets ask make the answer of the figures. chartPercent is the margin of
// one who reads the printed diagram, whose enthalpies can be read to 0.7 Btu/lb
// (1.6 kJ/kg): the grid has a line at every 10 Btu/lb.
func cycleForm(d *draft, ask func(cycleFigures), chartPercent float64) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	boiling := d.give("boiling", g.among(36, 46, 2, 2, 8, 1), g.u.temp)
	suction := d.give("suction-line", boiling+g.among(8, 16, 2, 5, 9, 1), g.u.temp)
	condensing := d.give("condensing", g.among(100, 120, 5, 38, 48, 2), g.u.temp)
	liquid := d.give("liquid-line", condensing-g.among(6, 14, 2, 3, 8, 1), g.u.temp)
	shown := d.give("capacity", g.among(18000, 60000, 500, 5, 16, 0.1), g.u.heat)
	d.noise("outdoor-air", "return-air")
	c := cycleFigures{shown: shown, watts: float64(g.heat(shown)), capacity: shown}
	if !g.ip() {
		c.capacity *= 1000
	}
	s, err := cycleStates(f, g.temperature(boiling), g.temperature(condensing),
		g.temperature(suction), g.temperature(liquid))
	if err != nil {
		return err
	}
	u := unit{g.u.enthalpy.symbol, 1, false}
	h := func(name string, s refrigerant.State) float64 {
		return d.set(name, g.enthalpy(s.Enthalpy), u)
	}
	c.h1, c.h2, c.h4 = h("h1", s.suction), h("h2", s.discharge), h("h4", s.liquid)
	c.hv, c.hl, c.hs = h("hv", s.coldVapor), h("hl", s.coldLiquid), h("hs", s.hotLiquid)
	d.set("taken-up", c.h1-c.h4, u)
	d.set("added", c.h2-c.h1, u)
	d.set("given-off", c.h2-c.h4, u)
	d.bound["capacity-small"] = d.bound["capacity"]
	if !g.ip() {
		d.bound["capacity-small"] = "1,000 × " + d.bound["capacity"]
	}
	d.set("capacity-kw", c.watts/1000, unit{"kW", 3, true})
	row := func(name string, at float64, h float64) []string {
		text, _ := d.word(name)
		return []string{text, g.u.temp.print(at), u.number(h)}
	}
	table := Table{
		Caption: say(d.language, "caption-enthalpy", "refrigerant", f.Designation(), "unit",
			u.symbol),
		Head: []string{say(d.language, "head-state"), say(d.language, "head-at"),
			say(d.language, "head-enthalpy")},
		Rows: [][]string{
			row("state-suction", suction, c.h1),
			row("state-discharge", math.Round(g.degrees(s.discharge.Temperature)), c.h2),
			row("state-cold-liquid", boiling, c.hl), row("state-cold-vapor", boiling, c.hv),
			row("state-hot-liquid", condensing, c.hs),
		},
	}
	if g.atLeast(3) { // the liquid line has to be read between two rows
		apart := g.among(4, 6, 2, 2, 4, 1)
		low, high, err := liquidsAround(g, f, liquid, apart)
		if err != nil {
			return err
		}
		low, high = rounded(low, 1), rounded(high, 1)
		c.h4 = d.set("h4", (low+high)/2, u.with(2))
		d.set("taken-up", c.h1-c.h4, u.with(2))
		d.set("given-off", c.h2-c.h4, u.with(2))
		d.bound["liquid-sum"] = "(" + u.number(low) + " + " + u.number(high) + ") / 2 = " +
			u.with(2).print(c.h4)
		table.Rows = append(table.Rows, row("state-liquid", liquid-apart, low),
			row("state-liquid", liquid+apart, high))
	} else {
		table.Rows = append(table.Rows, row("state-liquid-line", liquid, c.h4))
	}
	d.table(table)
	d.Cycle = f
	mark := func(key string, s refrigerant.State) diagram.Mark {
		text, _ := d.word(key)
		return diagram.Mark{Label: text, State: s}
	}
	d.marks = []diagram.Mark{mark("name-suction-line", s.suction), mark("discharge", s.discharge),
		mark("name-liquid-line", s.liquid), mark("inlet", s.inlet)}
	c.takenUp, c.work = s.estimate(), float64(s.discharge.Enthalpy-s.suction.Enthalpy)
	ask(c)
	d.Answer.ByChart = max(2*d.Answer.Within, chartPercent/100*d.Answer.Value)
	return nil
}

// liquidsAround are the enthalpies of saturated liquid so far below and above.
func liquidsAround(
	g *generator, f *refrigerant.Refrigerant, at, apart float64,
) (low, high float64, err error) {
	below, err := f.SaturatedLiquid(g.temperature(at - apart))
	if err != nil {
		return 0, 0, err
	}
	above, err := f.SaturatedLiquid(g.temperature(at + apart))
	return g.enthalpy(below.Enthalpy), g.enthalpy(above.Enthalpy), err
}

func (g *generator) enthalpy(h quantity.SpecificEnthalpy) float64 {
	return g.either(h.BtuPerPound(), h.KilojoulesPerKilogram())
}

// states are those around the machine, and the saturated ones of the table.
type states struct {
	suction, discharge, liquid, inlet refrigerant.State
	coldLiquid, coldVapor, hotLiquid  refrigerant.State
	superheat                         quantity.TemperatureDelta
	coolLiquid                        refrigerant.State // saturated, as warm as the liquid line
}

// cycleStates compresses at an isentropic efficiency of 0.7 (common practice,
// no source).
func cycleStates(
	f *refrigerant.Refrigerant, boiling, condensing, suction, liquid quantity.Temperature,
) (s states, err error) {
	s.superheat = suction.Sub(boiling)
	try := func(into *refrigerant.State, state refrigerant.State, failed error) {
		if err == nil {
			*into, err = state, failed
		}
	}
	low, lowErr := f.DewPressure(boiling)
	high, highErr := f.BubblePressure(condensing)
	if lowErr != nil || highErr != nil {
		return s, errAgain
	}

	state, failed := f.State(low, suction)
	try(&s.suction, state, failed)
	ideal, failed := f.StateAtEntropy(high, s.suction.Entropy)
	if failed != nil {
		return s, failed
	}
	state, failed = f.StateAtEnthalpy(high,
		s.suction.Enthalpy+(ideal.Enthalpy-s.suction.Enthalpy)/0.7)
	try(&s.discharge, state, failed)
	state, failed = f.State(high, liquid)
	try(&s.liquid, state, failed)
	state, failed = f.StateAtEnthalpy(low, s.liquid.Enthalpy)
	try(&s.inlet, state, failed)
	state, failed = f.SaturatedLiquid(boiling)
	try(&s.coldLiquid, state, failed)
	state, failed = f.SaturatedVapor(boiling)
	try(&s.coldVapor, state, failed)
	state, failed = f.SaturatedLiquid(condensing)
	try(&s.hotLiquid, state, failed)
	state, failed = f.SaturatedLiquid(liquid)
	try(&s.coolLiquid, state, failed)
	return s, err
}

// estimate is what a kilogram takes up, J, from saturated states alone: the
// vapor warmed at its specific heat, less liquid whose enthalpy goes with its
// temperature and hardly with its pressure.
func (s states) estimate() float64 {
	return float64(s.coldVapor.Enthalpy-s.coolLiquid.Enthalpy) +
		float64(s.coldVapor.Cp)*float64(s.superheat)
}
