package main

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// condensateTopic is about the water that a coil takes out of the air.
var condensateTopic = topic{name: "condensate", forms: []form{
	{"rate", func(g *generator, d *draft) error { return condensateForm(d, "rate") }},
	{"fall", func(g *generator, d *draft) error { return condensateForm(d, "fall") }},
	{"bucket", func(g *generator, d *draft) error { return condensateForm(d, "bucket") }},
	{"latent", func(g *generator, d *draft) error { return condensateForm(d, "latent") }},
}}

// condensateForm counts with 4.5 lb/h of dry air for each CFM of standard air, or
// 1.2 g/s for each L/s; in thin air with the volume that is given.
func condensateForm(d *draft, ask string) error {
	g := d.g
	atm := d.place()
	dry, wet := g.fine(g.among(74, 80, 1, 23, 27, 1)), g.fine(g.among(63, 68, 1, 17, 20, 1))
	in, err := psychro.FromWetBulb(g.temperature(dry), g.temperature(wet), atm)
	if err != nil {
		return err
	}
	first := rounded(g.whole()*in.HumidityRatio(), 1)
	if in, err = psychro.FromHumidityRatio(g.temperature(dry), first/g.whole(), atm); err != nil {
		return err
	}
	second := rounded(first-g.among(8, 26, 0.1, 1.2, 3.8, 0.1), 1)
	out, err := psychro.FromHumidityRatioAndRelativeHumidity(second/g.whole(), 0.92, atm)
	if err != nil {
		return err
	}
	flow := g.among(800, 1800, 25, 380, 850, 5)
	u := unit{g.u.humidity.symbol, 1, false}
	factor, factorText := g.either(4.5, 4.32), g.pairSymbol("4.5", "4.32")
	d.phrase("standard", "air-standard")
	if g.atLeast(3) {
		d.phrase("standard", "air-thin")
		v := in.SpecificVolume().CubicMetersPerKilogram()
		volume := d.give("volume", g.either(v*16.018463, v),
			unit{g.pairSymbol("ft³/lb", "m³/kg"), int(g.either(1, 3)), false})
		factor = g.either(60, 3.6) / volume
		factorText = g.pairSymbol("60", "3.6") + " / " + fixed(volume, int(g.either(1, 3)))
	}
	d.bound["factor"] = factorText
	d.figure("whole", g.whole(), 0)
	rate := factor * flow * (first - second) / g.whole()
	waterUnit := unit{g.u.water.symbol, 2, false}
	c, err := airside.CapacityOf(in, out, g.flow(flow))
	if err != nil {
		return errAgain
	}
	water := c.Condensate.Value
	if !g.atLeast(3) { // of standard air
		water = quantity.MassFlow(float64(water) / float64(c.DryAir.Value) * float64(g.flow(flow)) *
			g.either(0.075*16.018463, 1.2))
	}
	exact := g.either(water.PoundsPerHour(), 3600*water.KilogramsPerSecond())
	const margin = 0.015
	give := func() {
		d.give("airflow", flow, g.u.flow)
		d.give("water-in", first, u)
		d.give("water-out", second, u)
		d.noise("outdoor-air", "return-air")
	}
	// misweigh are mistakes with the weight of the air, each as a multiple of what it should be.
	misweigh := func(work func(times float64) float64) {
		d.wrong("factor-five", work(5/factor))
		d.wrong("factor-four", work(4/factor))
		d.wrong("bypassed", work(0.8))
		if !g.ip() {
			d.wrong("density-again", work(1.2))
		}
	}
	forget := func(work func(rate float64) float64) {
		d.wrong("in-alone", work(factor*flow*first/g.whole()))
		d.wrong("out-alone", work(factor*flow*second/g.whole()))
		d.wrong("mean-water", work(factor*flow*(first+second)/2/g.whole()))
		d.wrong("half-water", work(rate/2))
		d.wrong("water-twice", work(2*rate))
		if g.ip() {
			d.wrong("temperature-factor", work(1.08*flow*(first-second)/g.whole()))
		} else {
			d.wrong("factor-forgotten", work(3.6*flow*(first-second)/g.whole()))
		}
		if g.atLeast(3) {
			d.wrong("standard-factor", work(g.either(4.5, 4.32)*flow*(first-second)/g.whole()))
		}
		misweigh(func(times float64) float64 { return work(rate * times) })
	}
	switch ask {
	case "rate":
		give()
		d.answer(rate, margin*rate, waterUnit)
		d.again = exact
		forget(func(rate float64) float64 { return rate })
	case "fall":
		given := d.give("water-rate", rate, waterUnit)
		d.give("airflow", flow, g.u.flow)
		d.noise("outdoor-air", "return-air")
		work := func(rate float64) float64 { return rate * g.whole() / (factor * flow) }
		d.answer(work(given), margin*work(given), u)
		d.again = (first - second) * given / exact
		d.wrong("half-water", work(given/2))
		d.wrong("water-twice", work(2*given))
		d.wrong("other-whole", given*g.either(1000, 7000)/(factor*flow))
		misweigh(func(times float64) float64 { return work(given / times) })
		if g.atLeast(3) {
			d.wrong("standard-factor", given*g.whole()/(g.either(4.5, 4.32)*flow))
		}
	case "bucket":
		give()
		bucket := d.give("bucket", g.among(8, 40, 1, 4, 20, 0.5), g.u.mass)
		d.set("water-rate", rate, waterUnit)
		hours := unit{"h", 2, false}
		d.answer(bucket/rate, margin*bucket/rate, hours)
		d.again = bucket / exact
		forget(func(rate float64) float64 { return bucket / rate })
	case "latent":
		give()
		d.set("water-rate", rate, waterUnit)
		heat := g.either(1060, 2501./3600)
		d.bound["to-heat"] = g.pairSymbol("", " / 3,600")
		d.give("latent-heat", g.either(1060, 2501), unit{g.pairSymbol("Btu/lb", "kJ/kg"), 0, true})
		d.answer(rate*heat, (margin+0.01)*rate*heat, g.u.heat.with(int(g.either(-1, 2))))
		latent := water.KilogramsPerSecond() * g.either(1060*2326, 2501e3)
		d.again = g.heatNumber(quantity.Watts(latent))
		forget(func(rate float64) float64 { return rate * heat })
	}
	return nil
}
