package main

import (
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// nitrogenTopic is about a pressure test with dry nitrogen whose temperature
// changes.
var nitrogenTopic = topic{name: "nitrogen", forms: []form{
	{"expected", func(g *generator, d *draft) error { return nitrogenForm(d, "expected") }},
	{"missing", func(g *generator, d *draft) error { return nitrogenForm(d, "missing") }},
	{"highest", func(g *generator, d *draft) error { return nitrogenForm(d, "highest") }},
	{"judge", nitrogenJudge},
}}

// nitrogenForm goes by the perfect gas, which is within seven tenths of a percent of what
// nitrogen does here.
func nitrogenForm(d *draft, ask string) error {
	g := d.g
	place := d.place()
	atm := d.give("atmosphere", g.pressureNumber(place), g.u.absolute)
	absolute := d.give("absolute-zero", g.either(459.67, 273.15), unit{g.u.temp.symbol, 2, true})
	t1 := g.among(60, 90, 1, 15, 32, 1)
	// What holds at the end holds before: a limit is of the warmer of the two.
	warms := g.rng.IntN(2) == 0 || ask == "highest"
	t2 := t1 + g.among(10, 35, 1, 6, 19, 1)*map[bool]float64{true: 1, false: -1}[warms]
	p1 := g.pressureAmong(250, 500, 1, 1700, 3400, 10)
	name1, name2 := "gas-start", "gas-end"
	d.give(name1, t1, g.u.temp)
	d.give(name2, t2, g.u.temp)
	d.set("hot-start", t1+absolute, unit{"", 2, true})
	d.set("hot-end", t2+absolute, unit{"", 2, true})
	later := func(p1, t1, t2 float64) float64 { return (p1+atm)*(t2+absolute)/(t1+absolute) - atm }
	exact := func(p float64, from, to float64) (float64, error) {
		v, err := charge.PressureTest{
			Start: g.gaugeOf(p).PlusMinus(0), End: g.gaugeOf(p).PlusMinus(0),
			StartGas: g.temperature(from).PlusMinus(0), EndGas: g.temperature(to).PlusMinus(0),
			Atmosphere: place.PlusMinus(0),
		}.Judge()
		return float64(v.Expected) / float64(g.pascals(1)), err
	}
	u := g.u.gauge
	if !g.ip() && !g.options.Bar {
		u = u.with(0)
	}
	var work func(p1, t1, t2, atm float64) float64
	var err error
	within := 0.007 * p1
	switch ask {
	case "expected":
		d.give("pressure-start", p1, g.u.gauge)
		d.noise("outdoor-air", "label-charge")
		work = func(p1, t1, t2, atm float64) float64 {
			return (p1+atm)*(t2+absolute)/(t1+absolute) - atm
		}
		d.answer(later(p1, t1, t2), within, u)
		d.again, err = exact(p1, t1, t2)
	case "missing":
		d.give("pressure-start", p1, g.u.gauge)
		lost := g.pressureAmong(20, 70, 0.1, 140, 480, 1)
		end := d.give("pressure-end", later(p1, t1, t2)-lost, g.u.gauge)
		d.noise("outdoor-air", "label-charge")
		d.set("expected", later(p1, t1, t2), g.u.gauge)
		work = func(p1, t1, t2, atm float64) float64 {
			return (p1+atm)*(t2+absolute)/(t1+absolute) - atm - end
		}
		d.answer(later(p1, t1, t2)-end, within, unit{g.u.drop.symbol, u.places, false})
		var expected float64
		expected, err = exact(p1, t1, t2)
		d.again = expected - end
	case "highest":
		d.give("pressure-limit", p1, g.u.gauge)
		d.noise("outdoor-air", "label-charge")
		work = func(p1, t1, t2, atm float64) float64 {
			return (p1+atm)*(t1+absolute)/(t2+absolute) - atm
		}
		d.answer(work(p1, t1, t2, atm), within, u)
		d.again, err = exact(p1, t2, t1)
	}
	d.wrong("no-change", work(p1, t1, t1, atm))
	d.wrong("turned-over", work(p1, t2, t1, atm))
	d.wrong("half-change", work(p1, t1, (t1+t2)/2, atm))
	d.wrong("change-twice", work(p1, t1, 2*t2-t1, atm))
	d.wrong("gauge-alone", work(p1, t1, t2, 0))
	if g.ip() {
		d.wrong("kelvin-change", work(p1, t1, t1+(t2-t1)*1.8, atm))
	} else {
		d.wrong("fahrenheit-change", work(p1, t1, t1+(t2-t1)/1.8, atm))
	}
	d.wrong("atmosphere-left-in", work(p1, t1, t2, atm)+atm)
	d.wrong("atmosphere-taken-twice", work(p1, t1, t2, atm)-atm)
	return err
}

func (g *generator) gaugeOf(v float64) quantity.GaugePressure {
	return quantity.GaugePressure(g.pascals(v))
}

func nitrogenJudge(g *generator, d *draft) error {
	place := d.place()
	atm := d.give("atmosphere", g.pressureNumber(place), g.u.absolute)
	absolute := d.give("absolute-zero", g.either(459.67, 273.15), unit{g.u.temp.symbol, 2, true})
	t1, p1 := g.among(60, 90, 1, 15, 32, 1), g.pressureAmong(250, 450, 1, 1700, 3100, 10)
	d.give("gas-start", t1, g.u.temp)
	d.give("pressure-start", p1, g.u.gauge)
	t2 := d.give("gas-end", t1-g.among(8, 25, 1, 4, 14, 1), g.u.temp)
	truth := g.one("holds", "leaks", "short", "too-much")
	expected := (p1+atm)*(t2+absolute)/(t1+absolute) - atm
	end := expected
	hours := g.pick(20, 30, 1)
	switch truth {
	case "leaks":
		end -= g.pressureAmong(12, 40, 1, 80, 280, 5)
	case "short":
		hours = g.pick(0.1, 0.1, 0.1)
	case "too-much":
		end += g.pressureAmong(12, 30, 1, 80, 200, 5)
	}
	end = d.give("pressure-end", end+g.pressureAmong(-1, 1, 1, -5, 5, 5), g.u.gauge)
	d.giveText("held", map[bool]string{true: g.u.hour.print(hours),
		false: g.u.minute.print(60 * hours)}[hours >= 1])
	d.set("expected", expected, g.u.gauge)
	d.set("hot-start", t1+absolute, unit{"", 2, true})
	d.set("hot-end", t2+absolute, unit{"", 2, true})
	gauge := d.give("gauge-tolerance", g.pressureAmong(2, 2, 1, 15, 15, 1), g.u.drop)
	probe := d.give("probe-tolerance", g.either(1, 0.5), g.u.delta)
	d.noise("outdoor-air", "label-charge")
	probeStd := quantity.KelvinDelta(g.either(1/1.8, 1) * probe / 2)
	v, err := charge.PressureTest{
		Start:      g.gaugeOf(p1).PlusMinus(g.gaugeOf(gauge / 2)),
		End:        g.gaugeOf(end).PlusMinus(g.gaugeOf(gauge / 2)),
		StartGas:   g.temperature(t1).PlusMinus(probeStd),
		EndGas:     g.temperature(t2).PlusMinus(probeStd),
		Atmosphere: place.PlusMinus(0), Held: time.Duration(hours * float64(time.Hour)),
	}.Judge()
	if err != nil {
		return err
	}
	found := map[charge.TestOutcome]string{charge.Holds: "holds", charge.Leaks: "leaks",
		charge.TestOpen: "too-much"}[v.Outcome]
	if v.Short {
		found = "short"
	}
	if found != truth {
		return errAgain
	}
	d.phrase("because", "because-"+truth)
	d.choice(truth, "holds", "leaks", "short", "too-much")
	return nil
}
