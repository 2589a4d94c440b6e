package main

import (
	"fmt"
	"strings"
)

// dosingProblem learns the gain from one move and sizes the next, in turn by the
// superheat of a fixed restrictor and by the subcooling of a valve. From difficulty
// 2 on other readings stand beside; at 3 there is too much refrigerant as often as
// too little.
func dosingProblem(g *generator) (Problem, error) {
	over := g.difficulty >= 3 && g.rng.IntN(2) == 0
	todo, did := "add", "added"
	if over {
		todo, did = "recover", "recovered"
	}
	// rises is the way that the dose moves what is measured.
	name, device, rises := "superheat", "a fixed restrictor", -1.0
	var target, perPortion float64
	last := "Superheat falls faster as the coil fills"
	switch {
	case g.turn(2) == 1:
		name, device, rises = "subcooling", "a thermostatic expansion valve (TXV)", 1
		target, perPortion = g.either(
			g.pick(8, 12, 1),
			g.pick(5, 7, 1),
		), g.either(
			g.pick(1, 2, 1),
			1,
		)
		last = "Subcooling rises faster as the condenser fills"
		if over {
			last = "Subcooling does not fall at one rate as the condenser empties"
		}
	case over:
		target, perPortion = g.either(g.pick(20, 24, 1), g.pick(11, 13, 1)), g.either(2, 1)
		last = "Superheat does not rise at one rate as the coil empties"
	default:
		target, perPortion = g.either(
			g.pick(10, 18, 1),
			g.pick(6, 10, 1),
		), g.either(
			g.pick(2, 4, 1),
			g.pick(1, 2, 1),
		)
	}
	if over {
		rises = -rises
	}
	why := last
	last += ", so move about half of it, wait until it settles, and measure again."
	if over {
		last += " Recover into a cylinder that has room."
		if name == "superheat" {
			last += " Until it is in band liquid may reach the compressor: watch it."
		}
	}
	// A portion moves it by perPortion. Within the tolerance of ±5 °F (2.8 K) of a
	// superheat, ±3 °F (1.7 K) of a subcooling, nothing would be moved, and who moves
	// the first dose again is not to be right by chance.
	portion, unit := g.either(g.pick(2, 4, 2), g.pick(40, 50, 10)), "oz"
	if !g.ip() {
		unit = "g"
	}
	band := g.either(6, 3)
	if name == "subcooling" {
		band = g.either(4, 2)
	}
	first, next := g.pick(1, 3, 1), g.pick(2, 4, 1)
	for next*perPortion < band {
		next++
	}
	// What rises starts from something: at no subcooling at all the liquid line
	// carries vapor, and no rate can be learned.
	for rises > 0 && target-(first+next)*perPortion < g.either(2, 1) {
		if first > 1 {
			first--
		} else if (next-1)*perPortion >= band {
			next--
		} else {
			target++
		}
	}
	if first == next {
		first--
	}
	after := target - rises*next*perPortion
	before := after - rises*first*perPortion
	dose, moved := next*portion, first*portion
	per := rises * perPortion / portion
	a := numeric(dose, 0.02*dose, 1, unit)
	a.Note = strings.ToLower(
		why[:1],
	) + why[1:] + "; " + todo + " about half of it, wait until it settles, and measure again"
	p := Problem{
		Statement: fmt.Sprintf(
			"A machine with %s settled at %s of %s. After %s %s had been %s it settled at %s. The target is %s.",
			device,
			g.difference(before),
			name,
			number(moved),
			unit,
			did,
			g.difference(after),
			g.difference(target),
		),
		Given: given(
			name+" before",
			g.difference(before),
			did,
			number(moved)+" "+unit,
			name+" after",
			g.difference(after),
			"target",
			g.difference(target),
		),
		Ask: fmt.Sprintf(
			"If the %s went on at this rate, how much more to %s would reach the target? And why %s less at first?",
			name,
			todo,
			todo,
		),
		Steps: []Step{
			step(
				definition,
				"Gain: (%s − %s) / %s = %s %s for each %s %s.",
				number(after),
				number(before),
				number(moved),
				decimals(per, 3),
				g.deltaUnit(),
				unit,
				did,
			),
			step(
				definition,
				"To go: %s − %s = %s.",
				number(target),
				number(after),
				g.difference(target-after),
			),
			step(
				"straight line through the two readings",
				"%s / %s = %s.",
				number(target-after),
				decimals(per, 3),
				a.Text,
			),
			step("common practice, no source", "%s", last),
		},
		Answer:  a,
		Caution: chargingCaution,
		Wrong: []Wrong{
			a.slip(
				dose+moved,
				"counted from the first reading; part of that has been moved already",
			),
			a.slip(moved, "the first dose repeated without looking at what it did"),
			a.slip(
				after*portion/perPortion,
				"the "+name+" itself divided by the gain; only the distance to the target counts",
			),
			a.slip(dose/2, "the half that is moved first, not the amount that the line gives"),
		},
		again: func() (float64, error) {
			// Both readings on one line over the refrigerant moved, solved for the
			// target by similar triangles, less what has been moved.
			return moved*(before-target)/(before-after) - moved, nil
		},
	}
	if g.difficulty >= 2 {
		p.Given = append(
			p.Given,
			given(
				"suction line",
				g.temperature(g.degrees(g.pick(50, 60, 1), g.pick(10, 15, 1))),
				"outdoor air",
				g.temperature(g.degrees(g.pick(78, 95, 1), g.pick(25, 35, 1))),
			)...)
	}
	if g.ip() {
		p.Wrong = append(
			p.Wrong,
			a.slip((target-after)*per, "multiplied by the gain instead of divided"),
		)
	}
	return p, nil
}
