package main

import (
	"math"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// noise adds readings that the question does not need, from the second level on,
// and one more at the third. They fit the machine of the question.
func (d *draft) noise(names ...string) {
	if !d.g.atLeast(2) {
		return
	}
	if d.g.atLeast(3) {
		for _, n := range []string{"label-charge", "voltage", "current"} {
			if !slices.Contains(names, n) && !d.contradicts(n) {
				names = append(slices.Clone(names), n)
				break
			}
		}
	}
	for _, n := range names {
		if !d.contradicts(n) {
			d.noiseOf(n)
		}
	}
}

// beside are the facts that a reading would contradict: another charge that of the
// label, and a machine that is off a current.
var beside = map[string][]string{
	"label-charge": {"whole-charge", "charge"}, "current": {"soaked", "stands"},
}

// contradicts reports whether a reading is among the facts, or contradicts one.
func (d *draft) contradicts(name string) bool {
	return slices.ContainsFunc(append([]string{name}, beside[name]...),
		func(n string) bool { _, given := d.bound[n]; return given })
}

func (d *draft) noiseOf(name string) {
	g, give := d.g, d.give
	switch name {
	case "outdoor-air":
		outdoor := g.among(78, 95, 1, 25, 35, 1)
		line := d.known("liquid-line", math.NaN())
		at, ok := d.saturation("liquid-pressure", (*refrigerant.Refrigerant).BubbleTemperature)
		switch {
		case line > 0:
			outdoor = math.Round(line) - g.among(4, 10, 1, 2, 6, 1)
		case ok:
			outdoor = math.Round(at) - g.among(15, 22, 1, 8, 12, 1)
		}
		give(name, outdoor, g.u.temp)
	case "cold-air":
		give("outdoor-air", g.among(20, 45, 1, -6, 7, 1), g.u.temp)
	case "return-air":
		give(name, g.among(72, 79, 1, 22, 26, 1), g.u.temp)
	case "return-wet-bulb":
		give(name, g.among(60, 66, 1, 15, 19, 1), g.u.temp)
	case "supply-air":
		give(name, g.among(52, 58, 1, 11, 15, 1), g.u.temp)
	case "suction-line":
		line := g.among(48, 60, 1, 9, 15, 1)
		dew := (*refrigerant.Refrigerant).DewTemperature
		if at, ok := d.saturation("suction-pressure", dew); ok {
			line = math.Round(at) + g.among(8, 16, 1, 5, 9, 1)
		}
		give(name, line, g.u.temp)
	case "liquid-line":
		give(name, d.known("outdoor-air", g.either(86, 30))+g.among(4, 10, 1, 2, 6, 1), g.u.temp)
	case "suction-pressure":
		line := d.known("suction-line", g.either(54, 12))
		d.noisePressure(name, line-g.among(8, 16, 1, 5, 9, 1),
			(*refrigerant.Refrigerant).DewPressure)
	case "liquid-pressure":
		line := d.known("liquid-line", d.known("outdoor-air", g.either(86, 30))+g.either(7, 4))
		d.noisePressure(name, line+g.among(7, 14, 1, 4, 8, 1),
			(*refrigerant.Refrigerant).BubblePressure)
	case "label-charge":
		give(name, g.among(5, 12, 0.1, 2.2, 5.5, 0.05), g.u.mass)
	case "current":
		give(name, g.pick(8, 24, 0.1), g.u.ampere)
	case "voltage":
		give(name, g.pick(208, 242, 1), g.u.volt)
	case "airflow":
		give(name, g.among(700, 1800, 25, 330, 850, 5), g.u.flow)
	}
}

// known is the number of a fact, or what to take where it is not given.
func (d *draft) known(name string, without float64) float64 {
	for _, f := range d.given {
		if f.name == name {
			return f.value
		}
	}
	return without
}

// refrigerant is that of the question, or else R-410A.
func (d *draft) refrigerant() (*refrigerant.Refrigerant, error) {
	designation, ok := d.bound["refrigerant"]
	if !ok {
		designation = "R-410A"
	}
	return refrigerant.Lookup(designation)
}

// saturation is the temperature that goes with a gauge of the facts, about, where it
// is given.
func (d *draft) saturation(gauge string, of func(*refrigerant.Refrigerant,
	quantity.Pressure) (quantity.Temperature, error)) (at float64, ok bool) {
	shown := d.known(gauge, math.NaN())
	if math.IsNaN(shown) {
		return 0, false
	}
	f, err := d.refrigerant()
	if err != nil {
		return 0, false
	}
	t, err := of(f, d.g.pascals(shown)+quantity.StandardAtmosphere)
	return d.g.degrees(t), err == nil
}

// noisePressure is what a gauge about shows where the refrigerant of the question, or
// else R-410A, is saturated at a temperature.
func (d *draft) noisePressure(name string, at float64,
	saturated func(*refrigerant.Refrigerant, quantity.Temperature) (quantity.Pressure, error)) {
	g := d.g
	f, err := d.refrigerant()
	if err != nil {
		d.err = err
		return
	}
	p, err := saturated(f, g.temperature(at))
	if err != nil {
		d.err = err
		return
	}
	step := g.either(0.5, 5)
	if g.options.Bar {
		step = 0.05
	}
	gauge := g.pressureNumber(p) - g.pressureNumber(quantity.StandardAtmosphere)
	d.give(name, rounded(step*math.Round(gauge/step), 2), g.u.gauge)
}
