package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// A pattern is how a fault moves the five values of a machine from where they
// are when it is sound, in °F: suction saturation, superheat, condensing over
// outdoor air, subcooling, temperature split. The signs are those of the rule
// tables of fault diagnosis (Rossi and Braun 1997, from memory) as far as a
// change is large enough to see; the sizes follow the cycle model, which the
// tests solve again.
type pattern struct {
	cause, why string
	moves      [5]float64
}

var restrictorPatterns = []pattern{
	{
		"undercharge",
		"little liquid backs up in the condenser, and the coil runs out of it early",
		[5]float64{-5, +14, -4, -8, -4},
	},
	{
		"overcharge",
		"liquid backs up in the condenser and takes its surface, and the higher pressure pushes more through the restrictor than the coil can boil",
		[5]float64{0, -9, +5, +8, 0},
	},
	{
		"low indoor airflow",
		"the coil gets little heat, so it is cold and floods, and the little air is cooled far",
		[5]float64{-6, -9, -1, -1, +8},
	},
	{
		"fouled condenser",
		"heat leaves only at a higher temperature, and the higher pressure feeds the coil more",
		[5]float64{+1, -9, +10, 0, 0},
	},
	{
		"liquid line restriction",
		"the coil starves while the liquid waits in the condenser",
		[5]float64{-12, +25, -1, +5, -6},
	},
	{
		"leaking compressor valves",
		"what is pumped slips back, so both pressures draw together and the coil floods",
		[5]float64{+8, -9, -5, -8, -4},
	},
}

// A valve holds the superheat, so the superheat tells only where it cannot.
var valvePatterns = []pattern{
	{
		"undercharge",
		"the valve still feeds the coil, and what is missing is missing from the condenser",
		[5]float64{0, +1, -1, -8, -1},
	},
	{
		"overcharge",
		"the valve holds the superheat, and what is too much backs up in the condenser",
		[5]float64{0, 0, +5, +9, 0},
	},
	{
		"low indoor airflow",
		"the coil is cold for want of heat, and the little air is cooled far; the valve holds the superheat",
		[5]float64{-7, +1, -1, +1, +8},
	},
	{
		"fouled condenser",
		"heat leaves only at a higher temperature; the valve takes up the higher pressure",
		[5]float64{+1, -1, +10, +1, 0},
	},
	{
		"restriction before the coil, or a valve that hardly opens",
		"the coil starves while the liquid waits in the condenser",
		[5]float64{-10, +25, -1, +5, -5},
	},
	{
		"leaking compressor valves",
		"what is pumped slips back, so both pressures draw together; the valve holds the superheat",
		[5]float64{+6, -1, -5, -1, -4},
	},
	{
		"valve bulb loose on the line",
		"the bulb feels warm air, so the valve stands open and floods the coil with what the condenser should hold",
		[5]float64{+1, -11, -1, -8, 0},
	},
}

const (
	// faintest is the least change of a pattern that counts as one, °F.
	faintest     = 3.0
	patternNames = "rule tables of Rossi and Braun 1997 (from memory), sizes from a cycle model"
)

var valueNames = [5]string{
	"suction saturation",
	"superheat",
	"condensing over outdoor air",
	"subcooling",
	"temperature split",
}

// soundValues are of a machine in order, at 85 °F (29 °C) outdoors.
func (g *generator) soundValues() [5]float64 {
	if g.ip() {
		return [5]float64{42, 11, 20, 11, 20}
	}
	return [5]float64{6, 6.5, 11, 6, 11}
}

// moves are in the student's unit, rounded to be read off an instrument.
func (g *generator) moves(p pattern) [5]float64 {
	out := p.moves
	if !g.ip() {
		for i := range out {
			out[i] = math.Round(2*out[i]/1.8) / 2
		}
	}
	return out
}

func toward(move float64) string {
	switch {
	case move >= faintest:
		return "high"
	case move <= -faintest:
		return "low"
	}
	return "about right"
}

// diagnosisProblem takes the faults of machines with a fixed restrictor, those
// with a valve, and mistaken instruments in turn.
func diagnosisProblem(g *generator) (Problem, error) {
	switch g.turn(3) {
	case 0:
		return g.faultProblem("a fixed restrictor", restrictorPatterns)
	case 1:
		return g.faultProblem("a thermostatic expansion valve (TXV)", valvePatterns)
	}
	return g.instrumentProblem()
}

// faultProblem gives five values, at difficulty 3 the readings they follow from,
// and asks for the cause. The answer is the place of the cause in an alphabetical
// list.
func (g *generator) faultProblem(device string, patterns []pattern) (Problem, error) {
	truth := patterns[g.rng.IntN(len(patterns))]
	names := make([]string, len(patterns))
	for i, p := range patterns {
		names[i] = p.cause
	}
	slices.Sort(names)
	sound, moves := g.soundValues(), g.moves(truth)
	var values [5]float64
	p := Problem{
		Statement: fmt.Sprintf(
			"A machine with %s, charged with a refrigerant of no glide, gives the values below after half an hour of steady running.",
			device,
		),
		Given: given(
			"expansion device",
			device,
			"running",
			"half an hour, steady",
			"outdoor air",
			g.temperature(g.degrees(85, 29)),
		),
		Ask:   "Which one of these explains them all?",
		Among: names,
	}
	for i := range values {
		values[i] = sound[i] + moves[i]
		if g.difficulty >= 2 {
			values[i] += g.either(g.pick(-1, 1, 1), g.pick(-0.5, 0.5, 0.5))
		}
	}
	table := Table{
		Caption: "The same machine under the same conditions",
		Head:    []string{"", "sound", "now"},
	}
	var sums [5]string
	if g.difficulty >= 3 {
		p.Statement = fmt.Sprintf(
			"A machine with %s, charged with a refrigerant of no glide, gives the readings below after half an hour of steady running. The table has what followed from its readings under the same conditions when it was sound.",
			device,
		)
		table.Head = table.Head[:2]
		var read []Given
		read, sums = g.readingsOf(values)
		p.Given = append(p.Given, read...)
	}
	for i := range values {
		show := g.difference
		if i == 0 {
			show = func(v float64) string { return g.temperature(g.fromScale(v)) }
		}
		row := []string{valueNames[i], show(sound[i]), show(values[i])}
		table.Rows = append(table.Rows, row[:len(table.Head)])
		p.Steps = append(
			p.Steps,
			step(
				"comparison with the sound values",
				"%s is %s: %s%s against %s.",
				sentence(valueNames[i]),
				toward(truth.moves[i]),
				sums[i],
				show(values[i]),
				show(sound[i]),
			),
		)
	}
	p.Tables = []Table{table}
	p.Steps = append(
		p.Steps,
		step(
			patternNames,
			"Only one of the causes does all of it: %s. The reason: %s.",
			truth.cause,
			truth.why,
		),
	)
	p.Answer = Answer{Text: truth.cause, Value: float64(slices.Index(names, truth.cause))}
	for _, other := range patterns {
		if other.cause == truth.cause {
			continue
		}
		var not []string
		for i, move := range other.moves {
			if toward(move) != toward(truth.moves[i]) {
				not = append(not, fmt.Sprintf("%s would be %s", valueNames[i], toward(move)))
			}
		}
		p.Wrong = append(
			p.Wrong,
			Wrong{Text: other.cause, Mistake: "with it " + strings.Join(not, ", ")},
		)
	}
	p.again = func() (float64, error) {
		var moved [5]float64
		for i := range moved {
			moved[i] = (values[i] - sound[i]) / g.either(1, 1/1.8)
		}
		cause, err := nearestFault(strings.Contains(device, "valve"), moved)
		return float64(
			slices.IndexFunc(names, func(n string) bool { return strings.Contains(n, cause) }),
		), err
	}
	return p, nil
}

// readingsOf are the temperatures that the five values follow from, and how.
func (g *generator) readingsOf(values [5]float64) (read []Given, sums [5]string) {
	outdoor, indoor := g.either(85, 29), g.either(77, 25)
	boiling, condensing := values[0], outdoor+values[2]
	suctionLine, liquidLine, supply := boiling+values[1], condensing-values[3], indoor-values[4]
	show := func(v float64) string { return number(v) + " " + g.degreeUnit() }
	read = given(
		"boiling (suction gauge)",
		show(boiling),
		"suction line",
		show(suctionLine),
		"condensing (liquid gauge)",
		show(condensing),
		"liquid line",
		show(liquidLine),
		"return air",
		show(indoor),
		"supply air",
		show(supply),
	)
	sum := func(from, less float64) string { return number(from) + " − " + number(less) + " = " }
	return read, [5]string{
		"",
		sum(suctionLine, boiling),
		sum(condensing, outdoor),
		sum(condensing, liquidLine),
		sum(indoor, supply),
	}
}

func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
