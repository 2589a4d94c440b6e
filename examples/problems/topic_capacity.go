package main

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// capacityTopic turns two air states and an airflow into cooling capacity.
var capacityTopic = topic{name: "capacity", forms: []form{
	{"total", capacityTotal}, {"airflow", capacityAirflow}, {"leaving", capacityLeaving},
	{"share", capacityShare},
}}

// coilAir is air on its way through a coil, as the print has it.
type coilAir struct {
	in, out                      psychro.Air
	dryIn, wetIn, dryOut, wetOut float64
	hi, ho                       float64 // enthalpies as they are read
	factor                       float64 // times airflow and difference is the capacity
	flow                         float64
	table                        grid
}

// coilAir draws the states and the airflow, gives what give asks for, and prints
// the table of enthalpies.
func (d *draft) coilAir(give ...string) (c coilAir, err error) {
	g := d.g
	atm := d.place()
	for {
		c.wetIn, c.dryIn = g.among(62, 68, 1, 16, 20, 1), g.among(74, 80, 1, 23, 27, 1)
		c.wetOut = g.among(53, 57, 1, 11, 14, 1)
		c.dryOut = c.wetOut + g.either(1, 0.5)
		if g.atLeast(2) {
			c.wetIn += 0.5
		}
		c.in, err = psychro.FromWetBulb(g.temperature(c.dryIn), g.temperature(c.wetIn), atm)
		if err != nil {
			return c, err
		}
		c.out, err = psychro.FromWetBulb(g.temperature(c.dryOut), g.temperature(c.wetOut), atm)
		if err != nil {
			return c, err
		}
		// A coil that cools takes water out, seldom less than a twentieth or more
		// than half of its capacity, and the line through both airs meets the
		// saturation curve.
		if _, _, err := psychro.ApparatusDewPoint(c.in, c.out); err != nil {
			continue
		}
		fall := float64(c.in.Enthalpy() - c.out.Enthalpy())
		latent := 2501e3 * (c.in.HumidityRatio() - c.out.HumidityRatio())
		if share := 1 - latent/fall; share < 0.95 && share > 0.5 {
			break
		}
	}
	c.flow = g.among(800, 1600, 25, 350, 750, 5)
	for _, name := range give {
		switch name {
		case "airflow":
			d.give(name, c.flow, g.u.flow)
		case "entering-dry":
			d.give(name, c.dryIn, g.u.temp)
		case "entering-wet":
			d.give(name, c.wetIn, g.u.temp)
		case "leaving-dry":
			d.give(name, c.dryOut, g.u.temp)
		case "leaving-wet":
			d.give(name, c.wetOut, g.u.temp)
		}
	}
	d.noise("outdoor-air")
	c.table = d.enthalpies(c, atm)
	u := g.u.enthalpy.with(g.u.enthalpy.places + 1)
	c.hi = d.set("hi", c.table.between(0, 4, c.wetIn, 0), u)
	c.ho = d.set("ho", c.table.between(0, 1, c.wetOut, 0), u)
	c.table.how("hi", 0, 4, c.wetIn)
	c.table.how("ho", 0, 1, c.wetOut)
	d.set("fall", c.hi-c.ho, u)
	c.factor = g.either(4.5, 1.2e-3)
	d.phrase("standard", "air-standard")
	d.bound["factor"] = g.pairSymbol("4.5", "1.2 / 1,000")
	if g.atLeast(3) {
		d.phrase("standard", "air-thin")
		v := c.in.SpecificVolume().CubicMetersPerKilogram()
		volume := d.give("volume", g.either(v*16.018463, v), unit{
			g.pairSymbol("ft³/lb", "m³/kg"), int(g.either(1, 3)), false,
		})
		c.factor = g.either(60, 1e-3) / volume
		d.bound["factor"] = g.pairSymbol("60 / ", "1 / 1,000 / ") +
			fixed(volume, int(g.either(1, 3)))
	}
	d.Air = true
	d.plot = func(p *chart.Chart) error {
		entering, _ := d.word("entering")
		leaving, _ := d.word("leaving")
		if err := p.AddState(entering, c.in); err != nil {
			return err
		}
		if err := p.AddState(leaving, c.out); err != nil {
			return err
		}
		return p.AddCoil("", c.in, c.out)
	}
	return c, nil
}

// dryAir is the library's flow of dry air: of standard air at sea level, and of
// the air itself where it is thin.
func (c coilAir) dryAir(g *generator) float64 {
	if g.atLeast(3) {
		return float64(c.in.DryAirFlow(g.flow(c.flow)))
	}
	return float64(g.flow(c.flow)) * g.either(0.075*16.018463, 1.2)
}

// enthalpies prints an excerpt by wet bulb down and dry bulb across.
func (d *draft) enthalpies(c coilAir, atm quantity.Pressure) grid {
	g := d.g
	t := grid{d: d, units: []unit{g.u.temp}}
	dry := []float64{c.dryOut, c.dryOut + 2, c.dryIn - 2, c.dryIn}
	head := []string{g.u.temp.symbol}
	for _, v := range dry {
		head = append(head, g.u.temp.number(v))
		t.units = append(t.units, g.u.enthalpy)
	}
	for w := c.wetOut - g.pick(2, 3, 1); w <= math.Ceil(c.wetIn)+g.pick(2, 3, 1); w++ {
		row := []float64{w}
		for _, v := range dry {
			cell := math.NaN() // no air has this pair
			air, err := psychro.FromWetBulb(g.temperature(v), g.temperature(w), atm)
			if err == nil {
				h := air.EnthalpyIP().BtuPerPound()
				if !g.ip() {
					h = air.Enthalpy().KilojoulesPerKilogram()
				}
				cell = rounded(h, g.u.enthalpy.places)
			}
			row = append(row, cell)
		}
		t.rows = append(t.rows, row)
	}
	t.print(say(d.language, "caption-air", "unit", g.u.enthalpy.symbol, "degree", g.u.temp.symbol),
		head)
	return t
}

// fallByChart is the relative margin of a fall of enthalpy that was read off the
// chart, whose lines can be read to 0.3 Btu/lb or 0.7 kJ/kg at each end.
func (c coilAir) fallByChart(g *generator) float64 {
	return math.Sqrt2 * g.either(0.3, 0.7) / (c.hi - c.ho)
}

// misreadFall are the falls of enthalpy that mistakes with the table lead to.
func (d *draft) misreadFall(c coilAir, work func(fall float64) float64) {
	d.wrong("entering-below", work(c.table.between(0, 4, c.wetIn, 1)-c.ho))
	d.wrong("entering-above", work(c.table.between(0, 4, c.wetIn, -1)-c.ho))
	d.wrong("leaving-below", work(c.hi-c.table.between(0, 1, c.wetOut, 1)))
	d.wrong("leaving-above", work(c.hi-c.table.between(0, 1, c.wetOut, -1)))
	d.wrong("entering-two-below", work(c.table.between(0, 4, c.wetIn, 2)-c.ho))
	d.wrong("leaving-two-above", work(c.hi-c.table.between(0, 1, c.wetOut, -2)))
	d.wrong("wet-bulbs", work(c.wetIn-c.wetOut))
	d.wrong("dry-bulbs", work(c.dryIn-c.dryOut))
	d.wrong("sensible", work(d.g.either(0.24, 1.006)*(c.dryIn-c.dryOut)))
}

func capacityTotal(g *generator, d *draft) error {
	c, err := d.coilAir("airflow", "entering-dry", "entering-wet", "leaving-dry", "leaving-wet")
	if err != nil {
		return err
	}
	total := c.factor * c.flow * (c.hi - c.ho)
	d.answer(total, 0.01*total, g.u.heat.with(int(g.either(-2, 2))))
	d.Answer.ByChart = max(0.01, c.fallByChart(g)) * total
	d.misreadFall(c, func(fall float64) float64 { return c.factor * c.flow * fall })
	if g.atLeast(3) {
		d.wrong("standard-factor", g.either(4.5, 1.2e-3)*c.flow*(c.hi-c.ho))
	}
	d.again = g.heatNumber(quantity.Watts(c.dryAir(g) * float64(c.in.Enthalpy()-c.out.Enthalpy())))
	return nil
}

func capacityAirflow(g *generator, d *draft) error {
	c, err := d.coilAir("entering-dry", "entering-wet", "leaving-dry", "leaving-wet")
	if err != nil {
		return err
	}
	total := d.give("total", c.factor*c.flow*(c.hi-c.ho), g.u.heat.with(int(g.either(-2, 1))))
	flow := total / (c.factor * (c.hi - c.ho))
	d.answer(flow, 0.01*flow, g.u.flow.with(int(g.either(-1, 0))))
	d.Answer.ByChart = max(0.01, c.fallByChart(g)) * flow
	d.misreadFall(c, func(fall float64) float64 { return total / (c.factor * fall) })
	if g.atLeast(3) {
		d.wrong("standard-factor", total/(g.either(4.5, 1.2e-3)*(c.hi-c.ho)))
	}
	perFlow := c.dryAir(g) / c.flow * float64(c.in.Enthalpy()-c.out.Enthalpy())
	d.again = float64(g.heat(total)) / perFlow
	return nil
}

// capacityLeaving asks for the enthalpy with which the air leaves.
func capacityLeaving(g *generator, d *draft) error {
	c, err := d.coilAir("airflow", "entering-dry", "entering-wet")
	if err != nil {
		return err
	}
	total := d.give("total", c.factor*c.flow*(c.hi-c.ho), g.u.heat.with(int(g.either(-2, 1))))
	fall := total / (c.factor * c.flow)
	d.set("fall", fall, g.u.enthalpy)
	within := 0.01*fall + g.either(0.02, 0.1)
	d.answer(c.hi-fall, within, g.u.enthalpy)
	d.Answer.ByChart = within + g.either(0.3, 0.7)
	d.wrong("fall-itself", fall)
	d.wrong("fall-added", c.hi+fall)
	d.wrong("entering-below", c.table.between(0, 4, c.wetIn, 1)-fall)
	d.wrong("entering-above", c.table.between(0, 4, c.wetIn, -1)-fall)
	d.wrong("entering-two-below", c.table.between(0, 4, c.wetIn, 2)-fall)
	d.wrong("entering-two-above", c.table.between(0, 4, c.wetIn, -2)-fall)
	d.wrong("fall-half", c.hi-fall/2)
	if g.ip() {
		d.wrong("temperature-factor", c.hi-total/(1.08*c.flow))
	}
	if g.atLeast(3) {
		d.wrong("standard-factor", c.hi-total/(g.either(4.5, 1.2e-3)*c.flow))
	}
	perKilogram := float64(g.heat(total)) / c.dryAir(g)
	left := quantity.SpecificEnthalpy(float64(c.in.Enthalpy()) - perKilogram)
	d.again = left.KilojoulesPerKilogram()
	if g.ip() {
		d.again = c.in.EnthalpyIP().BtuPerPound() -
			quantity.SpecificEnthalpy(perKilogram).BtuPerPound()
	}
	return nil
}

// capacityShare holds the measured capacity against the nominal one.
func capacityShare(g *generator, d *draft) error {
	c, err := d.coilAir("airflow", "entering-dry", "entering-wet", "leaving-dry", "leaving-wet")
	if err != nil {
		return err
	}
	total := c.factor * c.flow * (c.hi - c.ho)
	d.set("total", total, g.u.heat)
	nominal := d.give("nominal", rounded(total*g.pick(1.05, 1.5, 0.01), int(g.either(-3, 1))),
		g.u.heat)
	share := 100 * total / nominal
	d.answer(share, 0.01*share, g.u.percent)
	d.Answer.ByChart = max(0.01, c.fallByChart(g)) * share
	d.misreadFall(c, func(fall float64) float64 { return 100 * c.factor * c.flow * fall / nominal })
	d.wrong("turned-over", 100*nominal/total)
	if g.atLeast(3) {
		d.wrong("standard-factor", 100*g.either(4.5, 1.2e-3)*c.flow*(c.hi-c.ho)/nominal)
	}
	watts := c.dryAir(g) * float64(c.in.Enthalpy()-c.out.Enthalpy())
	d.again = 100 * watts / float64(g.heat(nominal))
	return nil
}
