package main

import (
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
)

// capacitorTopic is about run capacitors, read while the motor runs.
var capacitorTopic = topic{name: "capacitor", forms: []form{
	{"load", func(g *generator, d *draft) error { return capacitorForm(d, "load") }},
	{"percent", func(g *generator, d *draft) error { return capacitorForm(d, "percent") }},
	{"current", func(g *generator, d *draft) error { return capacitorForm(d, "current") }},
	{"least", func(g *generator, d *draft) error { return capacitorForm(d, "least") }},
}}

// capacitorForm works with the factor of the frequency: microfarads for each
// ampere, times volts.
func capacitorForm(d *draft, ask string) error {
	g := d.g
	rated := d.give("rated", g.oneOf(20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80), g.u.farad)
	hertz := d.give("frequency", g.either(60, 50), unit{"Hz", 0, true})
	factor := d.give("farad-factor", g.either(2653, 3183), unit{"µF·V/A", 0, true})
	volts := g.pick(310, 420, 1)
	real := rated * g.pick(0.72, 1.02, 0.01)
	amps := rounded(real*volts/factor, 1)
	u := unit{g.u.farad.symbol, 1, false}
	loaded := func(amps, volts float64) (float64, error) {
		c, err := electrical.CapacitanceUnderLoad(quantity.Amperes(amps).PlusMinus(0),
			quantity.Volts(volts).PlusMinus(0), quantity.Hertz(hertz))
		return c.Value.Microfarads(), err
	}
	noise := func() {
		if g.atLeast(2) {
			d.give("line-voltage", g.pick(228, 244, 1), g.u.volt)
			d.give("motor-current", g.pick(9, 22, 0.1), g.u.ampere)
		}
		if g.atLeast(3) {
			most := g.oneOf(370, 440)
			if volts > 360 {
				most = 440
			}
			d.give("case-voltage", most, g.u.volt)
		}
	}
	mistaken := func(work func(c float64) float64, amps, volts float64) {
		d.wrong("other-frequency", work(g.either(3183, 2653)*amps/volts))
		d.wrong("other-frequency-back", work(factor*factor/g.either(3183, 2653)*amps/volts))
		if g.atLeast(2) {
			line, motor := figure(d.bound["line-voltage"]), figure(d.bound["motor-current"])
			d.wrong("by-line-voltage", work(factor*amps/line))
			d.wrong("by-motor-current", work(factor*motor/volts))
		}
		if g.atLeast(3) {
			d.wrong("by-case-voltage", work(factor*amps/figure(d.bound["case-voltage"])))
		}
		d.wrong("root-three", work(factor*amps/volts*1.732))
		d.wrong("root-three-less", work(factor*amps/volts/1.732))
		d.wrong("half", work(factor*amps/volts/2))
		d.wrong("twice", work(2*factor*amps/volts))
	}
	switch ask {
	case "load", "percent":
		amps = d.give("capacitor-current", amps, g.u.ampere)
		volts = d.give("capacitor-voltage", volts, g.u.volt)
		noise()
		c := factor * amps / volts
		found, err := loaded(amps, volts)
		if err != nil {
			return err
		}
		if ask == "load" {
			d.answer(c, 0.01*c, u)
			d.again = found
			mistaken(func(c float64) float64 { return c }, amps, volts)
			d.wrong("rated-itself", rated)
			return nil
		}
		d.set("found", c, u)
		d.answer(100*c/rated, 1, unit{"%", 1, false})
		d.again = 100 * found / rated
		mistaken(func(c float64) float64 { return 100 * c / rated }, amps, volts)
		d.wrong("turned", 100*rated/c)
	case "current":
		volts = d.give("capacitor-voltage", volts, g.u.volt)
		noise()
		i := rated * volts / factor
		d.answer(i, 0.01*i, unit{g.u.ampere.symbol, 2, false})
		found, err := loaded(i, volts)
		d.again = i * rated / found
		d.wrong("other-frequency", rated*volts/g.either(3183, 2653))
		d.wrong("other-frequency-back", i*g.either(3183, 2653)/factor)
		if g.atLeast(2) {
			d.wrong("by-line-voltage", rated*figure(d.bound["line-voltage"])/factor)
		}
		d.wrong("root-three", i*1.732)
		d.wrong("root-three-less", i/1.732)
		d.wrong("half", i/2)
		d.wrong("twice", 2*i)
		return err
	case "least":
		tolerance := d.give("tolerance", g.oneOf(5, 6, 10), g.u.percent)
		volts = d.give("capacitor-voltage", volts, g.u.volt)
		noise()
		low := rated * (1 - tolerance/100)
		i := low * volts / factor
		d.set("low", low, u)
		d.answer(i, 0.01*i, unit{g.u.ampere.symbol, 2, false})
		found, err := loaded(i, volts)
		d.again = i * low / found
		d.wrong("of-rated", rated*volts/factor)
		d.wrong("above-rated", rated*(1+tolerance/100)*volts/factor)
		d.wrong("tolerance-twice", rated*(1-tolerance/50)*volts/factor)
		d.wrong("other-frequency", low*volts/g.either(3183, 2653))
		d.wrong("other-frequency-back", i*g.either(3183, 2653)/factor)
		if g.atLeast(2) {
			d.wrong("by-line-voltage", low*figure(d.bound["line-voltage"])/factor)
		}
		d.wrong("root-three-less", i/1.732)
		d.wrong("root-three", i*1.732)
		return err
	}
	return nil
}

// oneOf draws one of some numbers.
func (g *generator) oneOf(of ...float64) float64 { return of[g.rng.IntN(len(of))] }
