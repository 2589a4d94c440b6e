package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// targetProblem finds a target superheat and says what to do about the charge.
// The table is printed in °F, so the problem is too, in either unit system.
func targetProblem(g *generator) (Problem, error) {
	var wetBulb, outdoor, target float64
	for {
		wetBulb, outdoor = g.pick(58, 72, 2), g.pick(65, 105, 5)
		if g.difficulty >= 2 {
			outdoor += 2.5
		}
		t, err := charge.TargetSuperheat(quantity.Fahrenheit(wetBulb), quantity.Fahrenheit(math.Floor(outdoor/5)*5))
		next, err2 := charge.TargetSuperheat(quantity.Fahrenheit(wetBulb), quantity.Fahrenheit(math.Ceil(outdoor/5)*5))
		if err != nil || err2 != nil {
			continue
		}
		target = math.Round(t.FahrenheitDelta()+next.FahrenheitDelta()) / 2
		if target >= 7 {
			break
		}
	}
	off := g.pick(-14, 14, 1)
	if math.Abs(math.Abs(off)-5) < 1.6 {
		off += 3 * math.Copysign(1, off)
	}
	measured := math.Max(1, target+off)
	off = measured - target
	verdict := "in band: leave the charge"
	switch {
	case off > 5:
		verdict = "undercharged: add refrigerant, a few ounces at a time"
	case off < -5:
		verdict = "overcharged: recover refrigerant, a few ounces at a time"
	}
	dryBulb := wetBulb + g.pick(9, 14, 1)
	p := Problem{
		Statement: fmt.Sprintf("A unit with a fixed restrictor runs steadily. Return air: %s °F dry bulb, %s °F wet bulb. Outdoors: %s °F. The measured superheat is %s °F. Airflow has been set, and the label has no chart of its own.",
			number(dryBulb), number(wetBulb), number(outdoor), number(measured)),
		Given:  given("return dry bulb", number(dryBulb)+" °F", "return wet bulb", number(wetBulb)+" °F", "outdoor dry bulb", number(outdoor)+" °F", "measured superheat", number(measured)+" °F"),
		Ask:    "By how much is the superheat off its target, and what follows for the charge?",
		Tables: []Table{targetTable(wetBulb, outdoor)},
		Steps: []Step{
			step(targetSource, "At %s °F wet bulb and %s °F outdoors the target is %s °F%s.", number(wetBulb), number(outdoor), number(target), halfway(g.difficulty)),
			step(definition, "Deviation: %s − %s = %s °F.", number(measured), number(target), number(off)),
			step(toleranceSource, "The tolerance is ±5 °F: the charge is %s.", verdict),
		},
		Answer: Answer{Text: fmt.Sprintf("%s °F off; %s", number(off), verdict), Value: off, Within: 1.1, Unit: "°F"},
		Wrong: []Wrong{
			{Text: fmt.Sprintf("%s °F off", number(measured-10)), Mistake: "a fixed target of 10 °F was used; on a fixed restrictor the target moves with the weather"},
		},
		again: func() (float64, error) {
			s, err := charge.SmoothTargetSuperheat(quantity.Fahrenheit(wetBulb), quantity.Fahrenheit(outdoor))
			return measured - s.Target.FahrenheitDelta(), err
		},
	}
	if wrong, err := charge.TargetSuperheat(quantity.Fahrenheit(dryBulb), quantity.Fahrenheit(math.Floor(outdoor/5)*5)); err == nil {
		p.Wrong = append(p.Wrong, Wrong{Text: fmt.Sprintf("about %s °F off", decimals(measured-wrong.FahrenheitDelta(), 0)), Mistake: "the return dry bulb was taken for the wet bulb"})
	}
	return p, nil
}

func halfway(difficulty int) string {
	if difficulty >= 2 {
		return ", halfway between two rows"
	}
	return ""
}

// dosingProblem learns the gain from one move and sizes the next.
func dosingProblem(g *generator) (Problem, error) {
	gain := -g.pick(0.6, 2, 0.2) // °F of superheat an ounce
	first := g.pick(4, 8, 1)     // ounces added
	target := g.pick(10, 16, 1)
	after := target + math.Round(-gain*g.pick(4, 10, 1))
	before := after - gain*first
	before = math.Round(before)
	gain = (after - before) / first
	dose := (target - after) / gain
	return Problem{
		Statement: fmt.Sprintf("A machine with a fixed restrictor settled at %s °F of superheat. After %s oz had been added it settled at %s °F. The target is %s °F.",
			number(before), number(first), number(after), number(target)),
		Given: given("superheat before", number(before)+" °F", "added", number(first)+" oz", "superheat after", number(after)+" °F", "target", number(target)+" °F"),
		Ask:   "If the superheat kept falling at this rate, how many ounces would reach the target, and why add less at first?",
		Steps: []Step{
			step("common practice, no source", "Gain: (%s − %s) / %s = %s °F an ounce.", number(after), number(before), number(first), decimals(gain, 2)),
			step("common practice, no source", "Ounces to the target: (%s − %s) / %s = %s oz.", number(target), number(after), decimals(gain, 2), decimals(dose, 1)),
			step("common practice, no source", "Superheat falls faster near the flooded side, so add about half of it, wait until it settles, and measure again."),
		},
		Answer: Answer{Text: decimals(dose, 1) + " oz; add about half, wait, and measure again", Value: dose, Within: 0.11, Unit: "oz"},
		Wrong: []Wrong{
			{Text: decimals((before-target)/-gain, 1) + " oz", Mistake: "counted from the first reading; part of it has been added already"},
			{Text: decimals(first, 1) + " oz", Mistake: "the first dose repeated without looking at what it did"},
		},
		again: func() (float64, error) {
			// The line through the two readings, solved for the target, less what
			// is in already.
			slope := first / (after - before)
			return slope*(target-before) - first, nil
		},
	}, nil
}
