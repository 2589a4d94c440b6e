package main

import (
	"math"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// airflowTopic finds an airflow from a known heat and a temperature rise.
var airflowTopic = topic{name: "airflow", forms: []form{
	{"electric", func(g *generator, d *draft) error { return airflowForm(d, true) }},
	{"furnace", func(g *generator, d *draft) error { return airflowForm(d, false) }},
	{"rise", airflowRise}, {"per-ton", airflowPerTon},
}}

// sensibleFactor is Btu/h for a CFM and °F, or W for an L/s and K, of the air here,
// and how it is found.
func (d *draft) sensibleFactor(atm quantity.Pressure) float64 {
	g := d.g
	factor := g.either(1.08, 1.21)
	d.bound["factor"] = fixed(factor, 2)
	if !g.atLeast(3) {
		return factor
	}
	u := g.u.absolute.with(g.u.absolute.places + 1)
	here := d.give("atmosphere", g.pressureNumber(atm), u)
	sea := d.give("atmosphere-sea", g.pressureNumber(quantity.StandardAtmosphere), u)
	thin := d.figure("factor", factor*here/sea, 3)
	d.bound["thin-sum"] = fixed(factor, 2) + " × " + u.number(here) + " / " + u.number(sea) +
		" = " + fixed(thin, 3)
	return thin
}

// warming is the library's rise of air in a flow, K, by a heat.
func (g *generator) warming(room float64, atm quantity.Pressure, rise float64) (perFlow float64,
	err error) {
	air, err := psychro.FromHumidityRatio(g.temperature(room), 0.006, atm)
	if err != nil {
		return 0, err
	}
	warm, err := psychro.SensibleHeatCool(air, g.temperature(room+rise))
	return float64(warm.Heat) / float64(air.SpecificVolume()), err
}

func airflowForm(d *draft, electric bool) error {
	g := d.g
	atm := d.place()
	room := g.either(70, 20)
	var heat, rise float64 // Btu/h or W
	if electric {
		volts := d.give("voltage", g.among(232, 244, 1, 224, 236, 1), g.u.volt)
		amps := d.give("current", g.pick(20, 60, 0.5), g.u.ampere)
		rise = g.fine(g.among(15, 40, 1, 8, 20, 1))
		heat = volts * amps * g.either(3.412, 1)
		d.set("heat", heat, unit{g.pairSymbol("Btu/h", "W"), 0, true})
		d.bound["to-heat"] = g.pairSymbol(" × 3.412", "")
	} else {
		input := d.give("input", g.among(40000, 100000, 1000, 12, 30, 0.5), g.u.heat)
		percent := d.give("efficiency", g.pick(80, 96, 1), g.u.percent)
		rise = g.fine(g.among(40, 60, 1, 22, 32, 1))
		heat = input * percent / 100 * g.either(1, 1000)
		d.set("heat", heat, unit{g.pairSymbol("Btu/h", "W"), 0, true})
		d.bound["to-watts"] = g.pairSymbol("", " × 1,000")
	}
	if !g.atLeast(2) {
		d.give("rise", rise, g.u.delta)
		d.phrase("warms", "warms-by")
	} else {
		room = d.give("return-air", g.fine(g.among(66, 72, 1, 18, 22, 1)), g.u.temp)
		d.give("supply-air", room+rise, g.u.temp)
		d.set("rise", rise, g.u.delta)
		d.phrase("warms", "warms-from")
		d.bound["rise-sum"] = d.bound["supply-air"] + " − " + d.bound["return-air"] + " = " +
			d.bound["rise"]
	}
	factor := d.sensibleFactor(atm)
	d.noise("cold-air")
	flow := heat / (factor * rise)
	if flow < g.either(500, 230) || flow > g.either(2200, 1050) {
		return errAgain
	}
	d.answer(flow, 0.01*flow, g.u.flow.with(int(g.either(-1, 0))))
	plain := g.either(1.08, 1.21)
	if g.atLeast(3) {
		d.wrong("sea-factor", heat/(plain*rise))
		d.wrong("factor-turned", heat/(plain*plain/factor*rise))
	}
	if electric {
		d.wrong("three-phase", flow*math.Sqrt(3))
		d.wrong("three-phase-less", flow/math.Sqrt(3))
		d.wrong("half-voltage", flow/2)
		d.wrong("both-legs", flow*2)
	} else {
		percent := figure(d.bound["efficiency"]) / 100
		d.wrong("efficiency-forgotten", flow/percent)
		d.wrong("efficiency-turned", flow/percent/percent)
		d.wrong("efficiency-twice", flow*percent)
		d.wrong("losses-taken", flow*(1-percent)/percent)
	}
	d.wrong("factor-left-out", flow*factor)
	d.wrong("factor-twice", flow/factor)
	if g.ip() {
		d.wrong("enthalpy-factor", flow*1.08/4.5)
		d.wrong("rise-in-kelvin", flow*1.8)
		d.wrong("rise-again-in-fahrenheit", flow/1.8)
	} else {
		d.wrong("rise-in-fahrenheit", flow/1.8)
		d.wrong("rise-again-in-celsius", flow*1.8)
	}
	perFlow, err := g.warming(room, atm, rise)
	d.again = heat / g.either(3.412142, 1) / perFlow / float64(g.flow(1))
	return err
}

func airflowRise(g *generator, d *draft) error {
	atm := d.place()
	flow := d.give("airflow", g.among(800, 1800, 25, 380, 850, 5), g.u.flow)
	volts := d.give("voltage", g.among(232, 244, 1, 224, 236, 1), g.u.volt)
	amps := d.give("current", g.pick(20, 60, 0.5), g.u.ampere)
	heat := volts * amps * g.either(3.412, 1)
	d.set("heat", heat, unit{g.pairSymbol("Btu/h", "W"), 0, true})
	d.bound["to-heat"] = g.pairSymbol(" × 3.412", "")
	factor := d.sensibleFactor(atm)
	d.noise("cold-air", "return-air")
	rise := heat / (factor * flow)
	d.answer(rise, 0.01*rise, g.deltaUnit())
	if g.atLeast(3) {
		d.wrong("sea-factor", heat/(g.either(1.08, 1.21)*flow))
	}
	d.wrong("three-phase", rise*math.Sqrt(3))
	d.wrong("three-phase-less", rise/math.Sqrt(3))
	d.wrong("half-voltage", rise/2)
	d.wrong("both-legs", rise*2)
	d.wrong("factor-left-out", rise*factor)
	d.wrong("factor-twice", rise/factor)
	d.wrong("other-degrees", rise*g.either(1/1.8, 1.8))
	perFlow, err := g.warming(g.either(70, 20), atm, rise)
	d.again = rise * (heat / g.either(3.412142, 1)) / (perFlow * float64(g.flow(flow)))
	return err
}

func airflowPerTon(g *generator, d *draft) error {
	d.place()
	flow := d.give("airflow", g.among(800, 1800, 25, 380, 850, 5), g.u.flow)
	nominal := d.give("capacity", g.among(24000, 60000, 500, 7, 17.5, 0.1), g.u.heat)
	d.noise("outdoor-air", "return-air", "current")
	tons := nominal / g.either(12000, 1)
	per := flow / tons
	if per < g.either(250, 33) || per > g.either(550, 75) {
		return errAgain
	}
	u := unit{g.pairSymbol("CFM/ton", g.options.symbol("flow-per-kilowatt")), int(g.either(0, 1)),
		false}
	d.phrase("each", g.pairSymbol("each-ton", "each-kilowatt"))
	d.set("tons", tons, unit{g.pairSymbol(g.options.symbol("tons"), "kW"), 3, true})
	if g.ip() {
		d.bound["tons-sum"] = d.bound["capacity"] + " / 12,000 = " + d.bound["tons"]
	}
	d.answer(per, 0.01*per, u)
	half := g.either(0.5, 1)
	if g.ip() {
		d.wrong("ten-thousand", flow/(nominal/10000))
		d.wrong("fifteen-thousand", flow/(nominal/15000))
	}
	d.wrong("sensible-share", per/0.75)
	d.wrong("rejected", per/1.25)
	d.wrong("size-up", flow/(half*math.Ceil(tons/half+1e-6)))
	d.wrong("size-down", flow/(half*math.Floor(tons/half-1e-6)))
	d.wrong("two-sizes-up", flow/(half*math.Ceil(tons/half+1+1e-6)))
	d.wrong("two-sizes-down", flow/(half*math.Floor(tons/half-1-1e-6)))
	d.again = airside.Airflow{Flow: g.flow(flow).PlusMinus(0)}.PerTon(g.heat(nominal)) /
		g.either(1, quantity.Tons(1).Kilowatts()/quantity.CFM(1).LitersPerSecond())
	return nil
}

// pairSymbol chooses by the unit system.
func (g *generator) pairSymbol(ip, si string) string {
	if g.ip() {
		return ip
	}
	return si
}
