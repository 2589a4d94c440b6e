package main

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// weighinTopic is about the charge to weigh in, with line and accessories.
var weighinTopic = topic{name: "weighin", forms: []form{
	{"total", func(g *generator, d *draft) error { return weighinForm(d, "total") }},
	{"extra", func(g *generator, d *draft) error { return weighinForm(d, "extra") }},
	{"short", func(g *generator, d *draft) error { return weighinForm(d, "short") }},
	{"scale", func(g *generator, d *draft) error { return weighinForm(d, "scale") }},
}}

// weighinForm counts in ounces or grams, as scales do.
func weighinForm(d *draft, ask string) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	u := unit{g.u.small.symbol, int(g.either(1, 0)), false}
	small := func(v float64) quantity.Mass {
		if g.ip() {
			return quantity.Ounces(v)
		}
		return quantity.Grams(v)
	}
	label := d.give("label-charge", g.among(60, 190, 1, 1700, 5400, 10), g.u.small)
	factory := d.give("factory-line", g.among(10, 25, 5, 3, 7.5, 0.5), g.u.length)
	length := factory + g.among(8, 60, 1, 3, 18, 0.5)
	if ask == "short" {
		length = factory - g.among(4, 9, 1, 1, 2.5, 0.5)
	}
	length = d.give("line", length, g.u.length)
	per := d.give("adder", g.among(0.3, 1.2, 0.05, 15, 60, 1),
		unit{g.pairSymbol("oz/ft", "g/m"), 2, true})
	adder := &charge.Adder{Mass: small(per), Per: g.length(1)}
	accessory := 0.0
	w := charge.WeighedCharge{Fluid: f, Label: small(label), FactoryLength: g.length(factory),
		Length: g.length(length).PlusMinus(0), Adder: adder}
	tube, err := charge.TubeOf(quantity.Inches(3./8), charge.Annealed)
	if err != nil {
		return err
	}
	w.Tube = tube
	if g.atLeast(2) {
		accessory = d.give("accessory", g.among(3, 14, 0.5, 80, 400, 10), g.u.small)
		w.Accessories = []charge.Accessory{{Name: "drier", Mass: small(accessory)}}
	}
	if g.atLeast(3) {
		d.noise("outdoor-air", "liquid-line")
	}
	weighed, err := w.Weigh()
	if err != nil {
		return err
	}
	line := per * (length - factory)
	d.set("beyond", length-factory, g.u.length)
	d.set("line-part", line, u)
	exact := float64(weighed.Total.Value) / float64(small(1))
	sum := "label-sum"
	if accessory > 0 {
		sum = "label-sum-accessory"
	}
	var work func(line, accessory float64) float64
	switch ask {
	case "total", "short":
		work = func(line, accessory float64) float64 { return label + line + accessory }
		d.again = exact
	case "extra":
		work = func(line, accessory float64) float64 { return line + accessory }
		d.again = exact - label
		if accessory > 0 { // with none, what the line takes is the answer
			d.bound["extra"] = d.bound["line-part"] + " + " + d.bound["accessory"] + " = " +
				u.print(line+accessory)
		}
	case "scale":
		cylinder := d.give("cylinder-now", (label+line+accessory)*g.pick(1.3, 1.9, 0.01), g.u.small)
		work = func(line, accessory float64) float64 { return cylinder - label - line - accessory }
		d.again = cylinder - exact
		sum = "scale-sum"
		if accessory > 0 {
			sum = "scale-sum-accessory"
		}
	}
	d.answer(work(line, accessory), 0.005*label, u)
	if ask == "extra" {
		d.answer(work(line, accessory), 0.01*line, u)
	}
	if ask != "extra" {
		d.phrase("sum", sum)
	}
	d.wrong("whole-line", work(per*length, accessory))
	d.wrong("factory-alone", work(per*factory, accessory))
	d.wrong("line-forgotten", work(0, accessory))
	d.wrong("line-turned", work(-line, accessory))
	d.wrong("line-twice", work(2*line, accessory))
	d.wrong("line-half", work(line/2, accessory))
	d.wrong("both-lengths", work(per*(length+factory), accessory))
	if accessory > 0 {
		d.wrong("accessory-forgotten", work(line, 0))
		d.wrong("accessory-taken", work(line, -accessory))
		d.wrong("accessory-twice", work(line, 2*accessory))
	}
	return nil
}
