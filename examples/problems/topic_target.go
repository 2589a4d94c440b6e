package main

import (
	"math"

	"github.com/satline/satline/charge"
)

// targetTopic is about the target superheat of a fixed restrictor, and what
// follows for the charge.
var targetTopic = topic{name: "target", forms: []form{
	{"read", targetRead}, {"apart", targetApart}, {"judge", targetJudge},
	{"weather", targetWeather},
}}

// target is a cell of the table of target superheat as it is printed: as
// published in °F, and for SI converted and rounded to half a kelvin.
func (g *generator) target(wetBulb, outdoor float64) float64 {
	t, err := charge.TableSuperheat(g.temperature(wetBulb), g.temperature(outdoor))
	if err != nil {
		return math.NaN()
	}
	if g.ip() {
		return math.Round(t.FahrenheitDelta())
	}
	return math.Round(2*t.KelvinDelta()) / 2
}

// targetTable prints an excerpt around a wet bulb, from an outdoor temperature
// downward. Its first column is the outdoor temperature.
func (d *draft) targetTable(wetBulb, first float64) (t grid, column func(wet float64) int) {
	g := d.g
	across, lowest, highest := g.either(4, 3), g.either(55, 15), g.either(115, 45)
	driest, wettest := g.either(50, 10), g.either(76, 24) // as far as the table goes
	start := min(max(driest, wetBulb-across-g.pick(-1, 1, 1)), wettest-2*across)
	t = grid{d: d, units: []unit{g.u.temp}}
	head := []string{g.u.temp.symbol}
	for w := start; w <= start+2*across; w++ {
		head = append(head, g.u.temp.number(w))
		t.units = append(t.units, g.u.delta)
	}
	for o := max(lowest, first); o <= min(highest, first+25); o += 5 {
		row := []float64{o}
		for w := start; w <= start+2*across; w++ {
			row = append(row, g.target(w, o))
		}
		t.rows = append(t.rows, row)
	}
	t.print(say(d.language, "caption-target", "unit", g.u.temp.symbol, "delta", g.u.delta.symbol),
		head)
	return t, func(wet float64) int {
		if i := int(math.Round(wet-start)) + 1; i > 0 && i < len(t.units) {
			return i
		}
		return 0
	}
}

// targetDay draws the weather, with a target in the table that ends on a half,
// gives it, and prints the table.
func (d *draft) targetDay() (t grid, at func(wet, outdoor float64) float64, wet, outdoor float64) {
	g := d.g
	for {
		wet = g.among(57, 72, 1, 14, 22, 1)
		outdoor = g.among(65, 105, 5, 20, 40, 5)
		v, next := g.target(wet, outdoor), g.target(wet, outdoor+5)
		if g.atLeast(2) {
			outdoor += 2.5
			v = (v + next) / 2
		}
		if v >= g.either(8, 4.5) && v <= g.either(26, 14) && v == math.Round(2*v)/2 {
			break
		}
	}
	d.give("return-wet-bulb", wet, g.u.temp)
	d.give("outdoor-air", outdoor, g.u.temp)
	t, column := d.targetTable(wet, 5*(math.Floor(outdoor/5)-g.pick(1, 3, 1)))
	at = func(wet, outdoor float64) float64 {
		c := column(wet)
		if c == 0 {
			return math.NaN()
		}
		return t.between(0, c, outdoor, 0)
	}
	if g.atLeast(3) {
		d.give("return-air", wet+g.among(9, 14, 1, 5, 8, 1), g.u.temp)
		d.noise("current")
	}
	t.how("target", 0, column(wet), outdoor)
	return t, at, wet, outdoor
}

// misread are the targets that mistakes with the table lead to.
func (d *draft) misreadTarget(at func(wet, outdoor float64) float64, wet, outdoor float64,
	work func(target float64) float64) {
	for _, m := range []struct {
		key          string
		wet, outdoor float64
	}{
		{"column-right", 1, 0}, {"column-left", -1, 0}, {"row-below", 0, 5}, {"row-above", 0, -5},
		{"two-columns-right", 2, 0}, {"two-columns-left", -2, 0},
	} {
		d.wrong(m.key, work(at(wet+m.wet, outdoor+m.outdoor)))
	}
	if d.g.atLeast(2) {
		d.wrong("nearer-above", work(at(wet, outdoor-2.5)))
		d.wrong("nearer-below", work(at(wet, outdoor+2.5)))
	}
}

func targetRead(g *generator, d *draft) error {
	_, at, wet, outdoor := d.targetDay()
	d.answer(at(wet, outdoor), g.either(0.6, 0.4), g.deltaUnit())
	d.misreadTarget(at, wet, outdoor, func(v float64) float64 { return v })
	d.again = at(wet, outdoor) // the table is the source; the tests hold the polynomial beside it
	return nil
}

func targetApart(g *generator, d *draft) error {
	_, at, wet, outdoor := d.targetDay()
	target := at(wet, outdoor)
	off := g.fine(g.among(6, 14, 1, 3, 8, 1))
	if g.rng.IntN(2) == 0 && target-off > 1 {
		off = -off
		d.phrase("side", "below")
	} else {
		d.phrase("side", "above")
	}
	measured := d.give("measured-superheat", target+off, g.u.delta)
	off = measured - target
	d.set("target", target, g.u.delta)
	sum := [2]string{d.bound["measured-superheat"], d.bound["target"]}
	if off < 0 {
		sum[0], sum[1] = sum[1], sum[0]
	}
	d.bound["apart-sum"] = sum[0] + " − " + sum[1]
	d.answer(math.Abs(off), g.either(0.6, 0.4), g.deltaUnit())
	work := func(target float64) float64 { return math.Abs(measured - target) }
	d.misreadTarget(at, wet, outdoor, work)
	d.wrong("fixed-target", work(g.either(10, 5.5)))
	d.again = math.Abs(measured - target)
	return nil
}

// targetJudge gives superheat and subcooling of a fixed restrictor with both
// targets and tolerances: a high superheat is a lack of refrigerant only where
// the subcooling is low too.
func targetJudge(g *generator, d *draft) error {
	_, at, wet, outdoor := d.targetDay()
	target := at(wet, outdoor)
	d.set("target", target, g.u.delta)
	band := d.give("superheat-tolerance", g.either(5, 3), g.u.delta)
	sound := d.give("usual-subcooling", g.among(8, 12, 1, 4, 7, 1), g.u.delta)
	liquidBand := d.give("subcooling-tolerance", g.either(3, 2), g.u.delta)
	cases := map[string][2]int{ // superheat and subcooling: below, in or above the band
		"add": {1, -1}, "recover": {-1, 1}, "leave": {0, 0}, "restriction": {1, 1},
		"airflow": {-1, 0},
	}
	answers := []string{"add", "airflow", "leave", "recover", "restriction"}
	right := g.one(answers...)
	side := func(way int, band float64) float64 {
		if way == 0 {
			return band * g.pick(-0.5, 0.5, 0.25)
		}
		return float64(way) * (band + g.among(2, 7, 0.5, 1, 4, 0.5))
	}
	superheat := target + side(cases[right][0], band)
	subcooling := sound + side(cases[right][1], liquidBand)
	if superheat < 0.5 || subcooling < 0.5 {
		return errAgain
	}
	d.give("measured-superheat", superheat, g.u.delta)
	d.give("measured-subcooling", subcooling, g.u.delta)
	way := func(v float64) string { return [...]string{"low", "in-band", "high"}[int(v)+1] }
	d.phrase("superheat-way", way(float64(cases[right][0])))
	d.phrase("subcooling-way", way(float64(cases[right][1])))
	d.phrase("why", "reason-"+right)
	d.choice(right, answers...)
	return nil
}

// targetWeather asks on a day with a target in the table, and on days without.
func targetWeather(g *generator, d *draft) error {
	if g.rng.IntN(4) > 0 {
		_, at, wet, outdoor := d.targetDay()
		if !g.atLeast(3) {
			d.noise("current")
		}
		measured := d.give("measured-superheat", g.among(6, 24, 1, 3, 14, 1), g.u.delta)
		d.set("a", at(wet, outdoor), g.u.delta)
		for name, v := range map[string]float64{
			"b": at(wet-1, outdoor), "c": at(wet, outdoor+5), "d": at(wet+1, outdoor),
			"e": measured,
		} {
			if math.IsNaN(v) {
				return errAgain
			}
			d.set(name, v, g.u.delta)
		}
		d.phrase("why", "reason-target")
		d.choice("charge-a", "charge-a", "charge-b", "charge-c", "charge-d", "charge-e", "none")
		return nil
	}
	var wet, outdoor float64
	for {
		wet, outdoor = g.among(52, 60, 1, 11, 15, 1), g.among(95, 110, 5, 35, 40, 5)
		if math.IsNaN(g.target(wet, outdoor)) &&
			!math.IsNaN(g.target(wet+g.either(4, 2), outdoor-5)) {
			break
		}
	}
	d.give("return-wet-bulb", wet, g.u.temp)
	d.give("outdoor-air", outdoor, g.u.temp)
	d.give("measured-superheat", g.among(6, 16, 1, 3, 9, 1), g.u.delta)
	if g.atLeast(3) {
		d.give("return-air", wet+g.among(12, 20, 1, 7, 11, 1), g.u.temp)
	}
	d.noise("current")
	d.targetTable(wet+2, outdoor-20)
	d.bound["a"], d.bound["e"] = "", d.bound["measured-superheat"]
	d.set("b", g.either(5, 3), g.u.delta)
	d.set("c", g.either(10, 5.5), g.u.delta)
	d.set("d", g.either(7, 4), g.u.delta)
	d.phrase("why", "reason-none")
	d.choice("none", "charge-b", "charge-c", "charge-d", "charge-e", "none")
	return nil
}
