package main

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// recoveryTopic is about how far a circuit is pumped down before it is opened.
var recoveryTopic = topic{name: "recovery", forms: []form{
	{"absolute", recoveryAbsolute}, {"more", recoveryMore}, {"mountain", recoveryMountain},
	{"which", recoveryWhich},
}}

// vacuum prints pressures of recovery: inches of mercury, kPa or bar.
func (g *generator) vacuum() unit {
	switch {
	case g.ip():
		return unit{g.options.symbol("mercury"), 2, true}
	case g.options.Bar:
		return unit{"bar", 3, true}
	}
	return unit{"kPa", 1, true}
}

func (g *generator) vacuumNumber(p quantity.Pressure) float64 {
	if g.ip() {
		return float64(p) / float64(quantity.InchesHg(1))
	}
	return g.pressureNumber(p)
}

// recovered is a refrigerant of the set for which the rule asks for a vacuum, or
// else a common one.
func (g *generator) recovered() (*refrigerant.Refrigerant, error) {
	var asked []*refrigerant.Refrigerant
	for _, f := range g.fluids {
		level, err := charge.RecoverTo(f, quantity.Pounds(500))
		if err == nil && level.To < quantity.StandardAtmosphere {
			asked = append(asked, f)
		}
	}
	if len(asked) == 0 {
		return refrigerant.Lookup(g.one("R-22", "R-134a"))
	}
	return asked[g.rng.IntN(len(asked))], nil
}

// recoveryCase draws a refrigerant and a charge, gives them with the class of the
// refrigerant, and prints the table. It returns the vacuum asked for and the other
// figures of the table, which mistakes lead to.
func (d *draft) recoveryCase(least float64) (level charge.RecoveryLevel, asked float64,
	other map[string]float64, err error) {
	g := d.g
	f, err := g.recovered()
	if err != nil {
		return level, 0, nil, err
	}
	d.giveText("refrigerant", f.Designation())
	small := g.rng.IntN(3) == 0
	charged := g.among(205, 600, 5, 93, 280, 1)
	if small {
		charged = g.among(6, 190, 2, 3, 85, 1)
	}
	charged = d.give("whole-charge", charged, g.u.mass)
	if level, err = charge.RecoverTo(f, g.mass(charged)); err != nil {
		return level, 0, nil, err
	}
	rows := []struct {
		class        charge.RecoveryClass
		name         string
		small, large float64 // inches of mercury
	}{
		{charge.VeryHighPressure, "class-very-high", 0, 0},
		{charge.HighPressure, "class-high", 0, 10}, {charge.MediumPressure, "class-medium", 10, 15},
	}
	u := g.vacuum()
	number := func(inches float64) float64 {
		return rounded(g.vacuumNumber(quantity.InchesHg(inches)), u.places)
	}
	threshold, _ := d.word("head-below")
	above, _ := d.word("head-from")
	class, _ := d.word("head-class")
	t := Table{Head: []string{class, threshold, above}}
	t.Caption, _ = d.word("caption")
	t.Caption += " (" + u.symbol + ")"
	other = map[string]float64{}
	for _, r := range rows {
		name, _ := d.word(r.name)
		t.Rows = append(t.Rows, []string{
			name, u.number(number(r.small)), u.number(number(r.large)),
		})
		if r.class == level.Class {
			d.giveText("class", name)
			asked, other["other-size"] = number(r.large), number(r.small)
			if small {
				asked, other["other-size"] = other["other-size"], asked
			}
		}
	}
	for _, r := range rows {
		if r.class != level.Class {
			v := number(r.large)
			if small {
				v = number(r.small)
			}
			other["other-class-"+r.name] = v
		}
	}
	d.table(t)
	if asked < least || len(d.Given) < 3 {
		return level, asked, other, errAgain
	}
	d.set("asked", asked, u)
	return level, asked, other, nil
}

func recoveryAbsolute(g *generator, d *draft) error {
	level, asked, other, err := d.recoveryCase(0.01)
	if err != nil {
		return err
	}
	u := g.vacuum()
	sea := d.give("standard-atmosphere", g.vacuumNumber(quantity.StandardAtmosphere), u)
	d.noise("outdoor-air", "suction-pressure")
	d.answer(sea-asked, 0.005*sea, u)
	for key, v := range sorted(other) {
		d.wrong(key, sea-v)
	}
	d.wrong("vacuum-itself", asked)
	d.wrong("vacuum-added", sea+asked)
	d.wrong("half-way", sea-asked/2)
	d.wrong("vacuum-twice", sea-2*asked)
	d.wrong("half-of-it", (sea-asked)/2)
	d.wrong("quarter-more", sea-1.25*asked)
	d.wrong("quarter-less", sea-0.75*asked)
	d.again = g.vacuumNumber(level.To)
	return nil
}

func recoveryMore(g *generator, d *draft) error {
	level, asked, other, err := d.recoveryCase(0.01)
	if err != nil {
		return err
	}
	u := g.vacuum()
	now := d.give("vacuum-now", asked*g.pick(0.2, 0.8, 0.01), u)
	sea := rounded(g.vacuumNumber(quantity.StandardAtmosphere), u.places)
	d.noise("outdoor-air", "label-charge")
	d.answer(asked-now, 0.01*asked, u)
	for key, v := range sorted(other) {
		d.wrong(key, v-now)
	}
	d.wrong("now-itself", now)
	d.wrong("asked-itself", asked)
	d.wrong("now-added", asked+now)
	d.wrong("from-absolute", sea-asked-now)
	d.wrong("twice", 2*(asked-now))
	d.wrong("half-way", (asked-now)/2)
	d.wrong("quarter-more", 1.25*asked-now)
	d.wrong("quarter-less", 0.75*asked-now)
	d.again = g.vacuumNumber(quantity.StandardAtmosphere-level.To) - now
	return nil
}

// recoveryMountain asks what a gauge shows up there, which counts from thinner
// air than the rule.
func recoveryMountain(g *generator, d *draft) error {
	level, asked, other, err := d.recoveryCase(0.01)
	if err != nil {
		return err
	}
	u := g.vacuum()
	z := d.give("elevation", g.among(2000, 7000, 500, 600, 2100, 100), g.u.length)
	here := quantity.AtmosphereAt(g.length(z))
	atm := d.give("atmosphere", g.vacuumNumber(here), u)
	sea := d.give("standard-atmosphere", g.vacuumNumber(quantity.StandardAtmosphere), u)
	d.noise("outdoor-air")
	shows := asked - (sea - atm)
	d.set("to", sea-asked, u)
	d.answer(shows, 0.01*asked, u)
	for key, v := range sorted(other) {
		d.wrong(key, v-(sea-atm))
	}
	d.wrong("sea-gauge", asked)
	d.wrong("thin-added", asked+(sea-atm))
	d.wrong("in-proportion", asked*atm/sea)
	d.wrong("thin-half", asked-(sea-atm)/2)
	d.wrong("thin-twice", asked-2*(sea-atm))
	d.wrong("to-itself", sea-asked)
	d.wrong("half-way", shows/2)
	d.wrong("proportion-twice", asked*atm/sea*atm/sea)
	d.again = g.vacuumNumber(here - level.To)
	return nil
}

func recoveryWhich(g *generator, d *draft) error {
	_, asked, _, err := d.recoveryCase(-1)
	if err != nil {
		return err
	}
	d.noise("outdoor-air", "suction-pressure")
	u := g.vacuum()
	for name, inches := range map[string]float64{"v0": 0, "v10": 10, "v15": 15, "v25": 25} {
		d.set(name, g.vacuumNumber(quantity.InchesHg(inches)), u)
	}
	right := "none"
	for name, inches := range map[string]float64{"ten": 10, "fifteen": 15} {
		if asked == rounded(g.vacuumNumber(quantity.InchesHg(inches)), u.places) {
			right = name
		}
	}
	d.choice(right, "none", "ten", "fifteen", "deep")
	return nil
}
