package main

import (
	"math"
	"slices"
	"strings"

	"github.com/satline/satline/refrigerant"
)

// diagnosisTopic is about the fault behind five values, and the instrument that
// misleads.
var diagnosisTopic = topic{name: "diagnosis", forms: []form{
	{"restrictor", func(g *generator, d *draft) error { return faultForm(d, restrictorFaults) }},
	{"valve", func(g *generator, d *draft) error { return faultForm(d, valveFaults) }},
	{"instrument", instrumentForm}, {"pattern", patternForm},
}}

// A pattern is how a fault moves the five values of a machine from where they
// are when it is sound, in °F: suction saturation, superheat, condensing over
// outdoor air, subcooling, temperature split. The signs are those of the rule
// tables of fault diagnosis (Rossi and Braun 1997, from memory) as far as a
// change is large enough to see; the sizes follow the cycle model, which the
// tests solve again.
type pattern struct {
	fault string
	moves [5]float64
}

var restrictorFaults = []pattern{
	{"undercharge", [5]float64{-5, +14, -4, -8, -4}}, {"overcharge", [5]float64{0, -9, +5, +8, 0}},
	{"low-airflow", [5]float64{-6, -9, -1, -1, +8}}, {"fouled", [5]float64{+1, -9, +10, 0, 0}},
	{"liquid-line", [5]float64{-12, +25, -1, +5, -6}},
	{"valves-leak", [5]float64{+8, -9, -5, -8, -4}},
}

// A valve holds the superheat, so the superheat tells only where it cannot.
var valveFaults = []pattern{
	{"undercharge", [5]float64{0, +1, -1, -8, -1}}, {"overcharge", [5]float64{0, 0, +5, +9, 0}},
	{"low-airflow", [5]float64{-7, +1, -1, +1, +8}}, {"fouled", [5]float64{+1, -1, +10, +1, 0}},
	{"before-coil", [5]float64{-10, +25, -1, +5, -5}},
	{"valves-leak", [5]float64{+6, -1, -5, -1, -4}}, {"bulb-loose", [5]float64{+1, -11, -1, -8, 0}},
}

// faintest is the least change of a pattern that counts as one, °F.
const faintest = 3.0

var valueNames = [5]string{"suction", "superheat", "condensing-over", "subcooling", "split"}

func toward(move float64) string {
	switch {
	case move >= faintest:
		return "high"
	case move <= -faintest:
		return "low"
	}
	return "right-about"
}

// fiveValues are those of a machine with a fault, on the student's scale, beside
// those of the sound machine.
func (d *draft) fiveValues(p pattern) (sound, now [5]float64) {
	g := d.g
	sound = [5]float64{42, 11, 20, 11, 20}
	if !g.ip() {
		sound = [5]float64{6, 6.5, 11, 6, 11}
	}
	for i, move := range p.moves {
		if !g.ip() {
			move = math.Round(2*move/1.8) / 2
		}
		sound[i] += g.among(-1, 1, 1, -0.5, 0.5, 0.5)
		now[i] = sound[i] + move
		if g.atLeast(2) {
			now[i] += g.among(-1, 1, 0.5, -0.5, 0.5, 0.5)
		}
		now[i] = max(now[i], 0.5)
	}
	return sound, now
}

// way is the word for how a value has moved, in the gender of its name.
func (d *draft) way(value int, move float64) string {
	name := toward(move)
	if text, ok := d.word(name + "-" + valueNames[value]); ok {
		return text
	}
	return d.must(name)
}

func faultNames(patterns []pattern) []string {
	var out []string
	for _, p := range patterns {
		out = append(out, p.fault)
	}
	return out
}

func faultForm(d *draft, patterns []pattern) error {
	g := d.g
	truth := patterns[g.rng.IntN(len(patterns))]
	sound, now := d.fiveValues(truth)
	outdoor := d.give("outdoor-air", g.among(83, 88, 1, 28, 31, 1), g.u.temp)
	d.noise("label-charge")
	table := Table{Caption: say(d.language, "caption-same-machine"), Head: []string{
		say(d.language, "head-value"), say(d.language, "head-sound"), say(d.language, "head-now"),
	}}
	if g.atLeast(3) { // the readings that the values of now follow from
		table.Head = table.Head[:2]
		indoor := d.give("return-air", g.among(75, 78, 1, 24, 26, 1), g.u.temp)
		d.give("boiling", now[0], g.u.temp)
		d.give("suction-line", now[0]+now[1], g.u.temp)
		d.give("condensing", outdoor+now[2], g.u.temp)
		d.give("liquid-line", outdoor+now[2]-now[3], g.u.temp)
		d.give("supply-air", indoor-now[4], g.u.temp)
	}
	var seen []string
	for i, name := range valueNames {
		u := g.u.delta
		if i == 0 {
			u = g.u.temp
		}
		text, _ := d.word(name)
		seen = append(seen, text+" "+u.print(sound[i])+" → "+u.print(now[i])+": "+
			d.way(i, truth.moves[i]))
		table.Rows = append(table.Rows,
			[]string{text, u.print(sound[i]), u.print(now[i])}[:len(table.Head)])
	}
	d.table(table)
	d.bound["seen"] = strings.Join(seen, "; ")
	d.phrase("because", "because-"+truth.fault)
	d.reasoned = true
	d.choice(truth.fault, faultNames(patterns)...)
	d.disagreements(truth, patterns)
	return nil
}

// disagreements give each wrong fault the values that it would move otherwise.
func (d *draft) disagreements(truth pattern, patterns []pattern) {
	for i, w := range d.Wrong {
		is := func(p pattern) bool { return p.fault == w.Code }
		other := patterns[slices.IndexFunc(patterns, is)]
		var not []string
		for v, move := range other.moves {
			if toward(move) != toward(truth.moves[v]) {
				name, _ := d.word(valueNames[v])
				not = append(not, name+": "+d.way(v, move))
			}
		}
		d.Wrong[i].Mistake = say(d.language, "with-it", "values", strings.Join(not, ", "))
	}
}

// patternForm names the fault and asks how the values move.
func patternForm(g *generator, d *draft) error {
	patterns, device := restrictorFaults, "device-restrictor"
	if g.rng.IntN(2) == 0 {
		patterns, device = valveFaults, "device-valve"
	}
	truth := patterns[g.rng.IntN(len(patterns))]
	d.phrase("device", device)
	d.phrase("fault", truth.fault)
	d.phrase("because", "because-"+truth.fault)
	d.giveText("expansion", d.bound["device"])
	shown := []int{1, 3, 4} // the values that are asked after
	if g.atLeast(2) {
		shown = []int{0, 1, 2, 3}
	}
	if g.atLeast(3) {
		shown = []int{0, 1, 2, 3, 4}
	}
	text := func(p pattern) string {
		var out []string
		for _, i := range shown {
			name, _ := d.word(valueNames[i])
			out = append(out, name+" "+d.way(i, p.moves[i]))
		}
		return sentence(strings.Join(out, ", "))
	}
	d.Answer = Answer{Text: text(truth), Words: true}
	d.rightCode = truth.fault + device
	for _, p := range patterns {
		if t := text(p); t != d.Answer.Text {
			name, _ := d.word(p.fault)
			d.Wrong = append(d.Wrong, Wrong{Code: p.fault, Text: t,
				Mistake: say(d.language, "pattern-of", "fault", lower(name))})
		}
	}
	return nil
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// readings are a set of temperatures on the student's scale; those of the gauges
// are as the manifold shows them, for R-22.
type readings struct {
	returnDry, returnWet, supply, outdoor, evaporating, suctionLine, condensing, liquidLine float64
}

// A mishap is a mistake with an instrument. doubt is the code by which an
// assessment of the readings names it.
type mishap struct {
	code, doubt string
	spoil       func(*generator, *readings) error
}

var mishaps = []mishap{
	{"dry-wick", "return-saturated",
		func(g *generator, r *readings) error { r.returnWet = r.returnDry; return nil }},
	{"swapped-bulbs", "return-wet-bulb-above-dry-bulb", func(g *generator, r *readings) error {
		r.returnDry, r.returnWet = r.returnWet, r.returnDry
		return nil
	}},
	{"in-the-sun", "liquid-line-below-outdoor", func(g *generator, r *readings) error {
		r.outdoor = r.liquidLine + g.among(5, 8, 1, 3, 5, 1)
		return nil
	}},
	{"wrong-table", "evaporating-above-supply", (*generator).otherTable},
	{"clamp-liquid", "suction-line-above-outdoor-and-return",
		func(g *generator, r *readings) error { r.suctionLine = r.liquidLine; return nil }},
}

// otherTable turns the gauge temperatures of R-410A into those of R-22.
func (g *generator) otherTable(r *readings) error {
	in, err := refrigerant.Lookup("R-410A")
	if err != nil {
		return err
	}
	set, err := refrigerant.Lookup("R-22")
	if err != nil {
		return err
	}
	low, err := in.DewPressure(g.temperature(r.evaporating))
	if err != nil {
		return err
	}
	high, err := in.BubblePressure(g.temperature(r.condensing))
	if err != nil {
		return err
	}
	e, err := set.DewTemperature(low)
	if err != nil {
		return err
	}
	c, err := set.BubbleTemperature(high)
	r.evaporating, r.condensing = math.Round(g.degrees(e)), math.Round(g.degrees(c))
	return err
}

// instrumentForm gives the readings of a sound machine with one mistake among
// them.
func instrumentForm(g *generator, d *draft) error {
	r := readings{
		returnDry: g.among(74, 78, 1, 23, 26, 1), outdoor: g.among(85, 97, 1, 29, 36, 1),
		evaporating: g.among(38, 42, 1, 4, 6, 1),
	}
	r.returnWet = r.returnDry - g.among(11, 14, 1, 6, 8, 1)
	r.supply = r.returnDry - g.either(19, 10.5)
	r.suctionLine = r.evaporating + g.among(10, 13, 1, 6, 7, 1)
	r.condensing = r.outdoor + g.among(18, 22, 1, 10, 12, 1)
	r.liquidLine = r.condensing - g.among(8, 12, 1, 5, 7, 1)
	truth := mishaps[g.rng.IntN(len(mishaps))]
	if err := truth.spoil(g, &r); err != nil {
		return err
	}
	d.give("return-air", r.returnDry, g.u.temp)
	d.give("return-wet-bulb", r.returnWet, g.u.temp)
	d.give("supply-air", r.supply, g.u.temp)
	d.give("boiling", r.evaporating, g.u.temp)
	d.give("suction-line", r.suctionLine, g.u.temp)
	d.give("outdoor-air", r.outdoor, g.u.temp)
	d.give("condensing", r.condensing, g.u.temp)
	d.give("liquid-line", r.liquidLine, g.u.temp)
	if g.atLeast(2) {
		d.noise("current", "label-charge")
	}
	if g.atLeast(3) {
		d.noise("airflow")
	}
	for name, v := range map[string]float64{
		"superheat-found": r.suctionLine - r.evaporating, "split-found": r.returnDry - r.supply,
		"subcooling-found": r.condensing - r.liquidLine, "over-found": r.liquidLine - r.outdoor,
		"depression-found": r.returnDry - r.returnWet,
	} {
		d.set(name, v, g.u.delta)
	}
	d.phrase("law", "law-"+truth.code)
	var names []string
	for _, m := range mishaps {
		names = append(names, m.code)
	}
	d.reasoned = true
	d.choice(truth.code, names...)
	for i, w := range d.Wrong {
		law, _ := d.word("law-" + w.Code)
		d.Wrong[i].Mistake = say(d.language, "law-kept", "law", law)
	}
	return nil
}
