package main

import "fmt"

// dosingProblem learns the gain from one move and sizes the next. From difficulty
// 2 on other readings stand beside; at 3 the machine is overcharged in turn.
func dosingProblem(g *generator) (Problem, error) {
	// One portion of refrigerant moves the superheat by perPortion.
	portion, unit := g.either(g.pick(2, 4, 2), g.pick(40, 50, 10)), "oz"
	if !g.ip() {
		unit = "g"
	}
	perPortion := g.either(g.pick(2, 4, 1), g.pick(1, 2, 1))
	first, next := g.pick(2, 4, 1), g.pick(2, 4, 1)
	target := g.either(g.pick(10, 18, 1), g.pick(6, 10, 1))
	did, todo, way := "added", "add", 1.0
	over := g.difficulty >= 3 && g.turn(2) == 0
	if over {
		did, todo, way = "recovered", "recover", -1
		perPortion, target = g.either(2, 1), g.either(g.pick(20, 24, 1), g.pick(11, 13, 1))
		first, next = g.pick(1, 4, 1), g.pick(3, 4, 1)
	}
	// Within the tolerance of ±5 °F (2.8 K) nothing would be moved, and who moved
	// the first dose again is not to be right by chance.
	for next*perPortion < g.either(6, 3) {
		next++
	}
	if first == next {
		first--
	}
	after := target + way*next*perPortion
	before := after + way*first*perPortion
	dose, moved := next*portion, first*portion
	per := perPortion / portion
	a := numeric(dose, 0.02*dose, 1, unit)
	a.Note = todo + " about half of it, wait until it settles, and measure again"
	last := "Superheat falls faster as the coil fills, so move about half of it, wait until it settles, and measure again."
	if over {
		last = "Superheat does not rise at one rate as the coil empties, so move about half of it, wait until it settles, and measure again. Until it is in band liquid may reach the compressor: watch it. Recover into a cylinder that has room."
	}
	p := Problem{
		Statement: fmt.Sprintf("A machine with a fixed restrictor settled at %s of superheat. After %s %s had been %s it settled at %s. The target is %s.",
			g.difference(before), number(moved), unit, did, g.difference(after), g.difference(target)),
		Given: given("superheat before", g.difference(before), did, number(moved)+" "+unit, "superheat after", g.difference(after), "target", g.difference(target)),
		Ask:   fmt.Sprintf("If the superheat went on at this rate, how much more to %s would reach the target? And why %s less at first?", todo, todo),
		Steps: []Step{
			step(definition, "Gain: (%s − %s) / %s = %s %s for each %s %s.", number(after), number(before), number(moved), decimals(-way*per, 3), g.deltaUnit(), unit, did),
			step(definition, "To go: %s − %s = %s.", number(target), number(after), g.difference(target-after)),
			step("straight line through the two readings", "%s / %s = %s.", number(target-after), decimals(-way*per, 3), a.Text),
			step("common practice, no source", "%s", last),
		},
		Answer:  a,
		Caution: chargingCaution,
		Wrong: []Wrong{
			a.slip(dose+moved, "counted from the first reading; part of that has been moved already"),
			a.slip(moved, "the first dose repeated without looking at what it did"),
			a.slip(after/per, "the superheat itself divided by the gain; only the distance to the target counts"),
			a.slip(dose/2, "the half that is moved first, not the amount that the line gives"),
		},
		again: func() (float64, error) {
			// Both readings on one line over the refrigerant moved, solved for the
			// target by similar triangles, less what has been moved.
			return moved*(before-target)/(before-after) - moved, nil
		},
	}
	if g.difficulty >= 2 {
		p.Given = append(p.Given, given("suction line", g.temperature(g.degrees(g.pick(50, 60, 1), g.pick(10, 15, 1))), "outdoor air", g.temperature(g.degrees(g.pick(78, 95, 1), g.pick(25, 35, 1))))...)
	}
	if g.ip() {
		p.Wrong = append(p.Wrong, a.slip(way*(after-target)*per, "multiplied by the gain instead of divided"))
	}
	return p, nil
}
