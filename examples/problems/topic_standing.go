package main

import (
	"cmp"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// standingTopic is about the pressure of a machine that is off, and what it says
// of air in the circuit.
var standingTopic = topic{name: "standing", forms: []form{
	{"expected", func(g *generator, d *draft) error {
		f := g.fluid()
		d.giveText("refrigerant", f.Designation())
		at := d.give("soaked", g.saturatedAt(64, 92, 18, 33), g.u.temp)
		d.noise("label-charge", "voltage")
		return d.pressureFor(f, bubble, at, nil)
	}},
	{"partial", func(g *generator, d *draft) error { return standingForm(d, "partial") }},
	{"degrees", func(g *generator, d *draft) error { return standingForm(d, "degrees") }},
	{"judge", func(g *generator, d *draft) error { return standingForm(d, "judge") }},
}}

// standingForm shows a pressure at a soaked temperature, with air in the circuit
// or without.
func standingForm(d *draft, ask string) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	at := g.saturatedAt(64, 92, 18, 33)
	p, err := f.BubblePressure(g.temperature(at))
	if err != nil {
		return err
	}
	s := d.gaugeSite()
	listed := g.listed(s, p)
	over := g.pressureAmong(12, 30, 0.1, 80, 200, 1)
	var others []*refrigerant.Refrigerant
	truth := "air"
	if ask == "judge" {
		if others, err = otherThan(f); err != nil {
			return err
		}
		truth = g.one("air", "sound", "lost", "other")
		if over, err = d.standingOver(s, listed, at, truth, others); err != nil {
			return err
		}
	}
	shown := d.give("standing-pressure", g.shown(s, listed)+over, g.u.gauge)
	d.give("soaked", at, g.u.temp)
	warm, err := f.BubbleTemperature(g.actual(s, max(shown, g.shown(s, listed))))
	if err != nil {
		return errAgain
	}
	cover := []float64{at}
	if ask == "degrees" {
		cover = append(cover, g.degrees(warm))
	}
	t, err := d.satTable(f, s, cover...)
	if err != nil {
		return err
	}
	pure := rounded(t.lookUp(bubble, at, 0), s.unit.places)
	t.how("sat", 0, bubble, at)
	d.set("pure", pure, s.unit)
	total := shown + s.added
	d.set("total", total, s.unit)
	if s.added != 0 {
		d.bound["total-sum"] = d.bound["standing-pressure"] + " + " + d.bound["atmosphere"] +
			" = " + d.bound["total"]
	}
	fits, err := refrigerant.StandingPressure(g.actual(s, shown), g.temperature(at), 1, f)
	if err != nil {
		return err
	}
	switch ask {
	case "partial":
		d.noise("label-charge", "voltage")
		u := unit{g.u.drop.symbol, g.u.drop.places, false}
		d.answer(total-pure, 0.003*pure, u)
		d.again = g.pressureNumber(fits[0].Over)
		work := func(v float64) float64 { return total - v }
		d.wrong("row-below", work(t.lookUp(bubble, at, 1)))
		d.wrong("row-above", work(t.lookUp(bubble, at, -1)))
		d.wrong("two-rows-below", work(t.lookUp(bubble, at, 2)))
		d.wrong("two-rows-above", work(t.lookUp(bubble, at, -2)))
		d.wrong("dew-column", work(t.lookUp(dew, at, 0)))
		d.wrong("atmosphere-added", work(pure)+g.pressure(s.atm))
		d.wrong("half", work(pure)/2)
		d.wrong("twice", 2*work(pure))
	case "degrees":
		d.noise("label-charge", "voltage")
		hot := rounded(t.read(bubble, total, 0), 1)
		t.how("hot", bubble, 0, total)
		d.set("hot", hot, g.u.temp)
		d.answer(hot-at, reading, g.deltaUnit())
		d.again = g.delta(fits[0].Off)
		for key, slip := range map[string]int{"row-below": 1, "row-above": -1, "two-rows-below": 2,
			"two-rows-above": -2} {
			d.wrongLater(key, t.read(bubble, total, slip)-at)
		}
		d.wrongLater("dew-column", t.read(dew, total, 0)-at)
		d.wrongLater("half", (hot-at)/2)
		d.wrongLater("twice", 2*(hot-at))
		d.later()
	case "judge":
		tolerance := d.give("soak-tolerance", g.either(2, 1), g.u.delta)
		d.noise("label-charge", "voltage")
		found, err := g.standingVerdict(g.actual(s, shown), at, tolerance, f, others)
		if err != nil || found != truth {
			return cmp.Or(err, errAgain)
		}
		d.phrase("because", "because-"+truth)
		d.choice(truth, "air", "sound", "lost", "other")
	}
	return nil
}

// commonInMachines are what a machine may hold in place of what its label says, each
// with a pressure of its own.
var commonInMachines = []string{"R-134a", "R-22", "R-407C", "R-410A"}

// otherThan are up to three of them whose pressure is an eighth apart from that of a
// refrigerant, which a gauge tells.
func otherThan(f *refrigerant.Refrigerant) ([]*refrigerant.Refrigerant, error) {
	at := quantity.Celsius(25)
	own, err := f.BubblePressure(at)
	if err != nil {
		return nil, err
	}
	var out []*refrigerant.Refrigerant
	for _, n := range commonInMachines {
		other, err := refrigerant.Lookup(n)
		if err != nil {
			return nil, err
		}
		p, err := other.BubblePressure(at)
		if err != nil {
			return nil, err
		}
		if math.Abs(math.Log(float64(p/own))) > math.Log(1.125) {
			out = append(out, other)
		}
	}
	return out[max(0, len(out)-3):], nil
}

// standingOver gives what the others would show, and is how far the gauge stands over
// the refrigerant of the label.
func (d *draft) standingOver(s gaugeSite, listed, at float64, truth string,
	others []*refrigerant.Refrigerant) (float64, error) {
	g := d.g
	var shows []float64
	for i, other := range others {
		p, err := other.BubblePressure(g.temperature(at))
		if err != nil {
			return 0, errAgain
		}
		name := "other-" + string(rune('a'+i))
		d.bound[name] = other.Designation()
		shows = append(shows, d.give(name+"-shows", g.shown(s, g.listed(s, p)), g.u.gauge))
	}
	switch slip := g.pressureAmong(-0.5, 0.5, 0.5, -3, 3, 3); truth {
	case "sound":
		return slip, nil
	case "lost":
		return -rounded(g.pick(0.3, 0.8, 0.01)*listed, g.u.gauge.places), nil
	case "other":
		i := g.rng.IntN(len(shows))
		d.bound["other"] = others[i].Designation()
		return shows[i] - g.shown(s, listed) + slip, nil
	}
	return g.pressureAmong(12, 30, 0.1, 80, 200, 1), nil
}

// standingVerdict is what a pressure at rest says: of the label's refrigerant, another
// that is listed, air beside it, or no liquid left. It is none where two would do.
func (g *generator) standingVerdict(p quantity.Pressure, at, tolerance float64,
	label *refrigerant.Refrigerant, others []*refrigerant.Refrigerant) (string, error) {
	off := func(f *refrigerant.Refrigerant) (float64, error) {
		fits, err := refrigerant.StandingPressure(p, g.temperature(at), 1, f)
		if err != nil {
			return 0, err
		}
		return g.delta(fits[0].Off), nil
	}
	own, err := off(label)
	if err != nil {
		return "", err
	}
	near, like := false, false
	for _, f := range others {
		apart, err := off(f)
		if err != nil {
			return "", err
		}
		like = like || math.Abs(apart) <= tolerance
		near = near || math.Abs(apart) <= 2*tolerance
	}
	switch {
	case math.Abs(own) <= tolerance && !near:
		return "sound", nil
	case math.Abs(own) <= 2*tolerance || near && !like:
		return "", nil
	case like:
		return "other", nil
	case own > 0:
		return "air", nil
	}
	return "lost", nil
}
