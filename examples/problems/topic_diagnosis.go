package main

import (
	"fmt"
	"slices"
	"strings"
)

// A pattern is how the readings of a machine with a fixed restrictor lie
// against those of a sound one: the rule tables of fault diagnosis (Rossi and
// Braun 1997; Breuker and Braun 1998) as trades teach them; from memory.
type pattern struct {
	cause, why string
	// Signs of suction saturation, superheat, condensing over ambient,
	// subcooling and temperature split against sound values.
	signs [5]int
}

var patterns = []pattern{
	{"undercharge", "little liquid backs up in the condenser, and the coil runs out of it early", [5]int{-1, +1, -1, -1, -1}},
	{"overcharge", "liquid backs up in the condenser and is pushed through the restrictor faster than the coil can boil it", [5]int{+1, -1, +1, +1, -1}},
	{"low indoor airflow", "the coil gets little heat, so it is cold and floods, and the little air is cooled far", [5]int{-1, -1, -1, +1, +1}},
	{"fouled condenser", "heat leaves only at a higher temperature, and the higher pressure feeds the coil more", [5]int{+1, -1, +1, -1, -1}},
	{"liquid line restriction", "the coil starves while the liquid waits behind the restriction", [5]int{-1, +1, -1, +1, -1}},
}

// Sound values and how far a fault moves them, °F, for the numbers of a problem.
var (
	soundValues = [5]float64{42, 14, 18, 10, 19}
	moveBy      = [5]float64{7, 11, 6, 7, 4}
	valueNames  = [5]string{"suction saturation", "superheat (target 14 °F)", "condensing over outdoor air", "subcooling", "temperature split (target 19 °F)"}
)

// diagnosisProblem gives five values and asks for the cause. The answer is the
// place of the cause in an alphabetical list.
func diagnosisProblem(g *generator) (Problem, error) {
	truth := patterns[g.rng.IntN(len(patterns))]
	names := make([]string, len(patterns))
	for i, p := range patterns {
		names[i] = p.cause
	}
	slices.Sort(names)
	var values [5]float64
	var p Problem
	for i := range values {
		spread := []float64{0, 1, 2}[g.difficulty-1]
		values[i] = soundValues[i] + float64(truth.signs[i])*moveBy[i] + g.pick(-spread, spread, 1)
		p.Given = append(p.Given, Given{valueNames[i], number(values[i]) + " °F"})
	}
	p.Statement = "A machine with a fixed restrictor, charged with a refrigerant of no glide, gives the values below after half an hour of steady running. When sound, under the same conditions, it gives: " + soundText() + "."
	p.Ask = "Which one of these explains all five: " + strings.Join(names, ", ") + "?"
	for i, sign := range truth.signs {
		word := "high"
		if sign < 0 {
			word = "low"
		}
		p.Steps = append(p.Steps, step("Rossi and Braun 1997; Breuker and Braun 1998 (from memory)", "%s is %s.", sentence(valueNames[i]), word))
	}
	p.Steps = append(p.Steps, step("physics", "Only one cause does all five: %s, because %s.", truth.cause, truth.why))
	place := float64(slices.Index(names, truth.cause))
	p.Answer = Answer{Text: truth.cause, Value: place}
	for _, other := range patterns {
		if other.cause == truth.cause {
			continue
		}
		var not []string
		for i, sign := range other.signs {
			if sign != truth.signs[i] {
				not = append(not, valueNames[i])
			}
		}
		p.Wrong = append(p.Wrong, Wrong{Text: other.cause, Mistake: "it would move the other way: " + strings.Join(not, ", ")})
	}
	p.again = func() (float64, error) {
		best, most := "", -1.0
		for _, c := range patterns {
			score := 0.0
			for i, v := range values {
				score += float64(c.signs[i]) * (v - soundValues[i]) / moveBy[i]
			}
			if score > most {
				best, most = c.cause, score
			}
		}
		return float64(slices.Index(names, best)), nil
	}
	return p, nil
}

func soundText() string {
	var out []string
	for i, v := range soundValues {
		out = append(out, fmt.Sprintf("%s %s °F", strings.SplitN(valueNames[i], " (", 2)[0], number(v)))
	}
	return strings.Join(out, ", ")
}

func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
