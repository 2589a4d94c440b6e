package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/charge"
)

// targetProblem finds a target superheat and says what follows for the charge.
// From difficulty 2 on the outdoor temperature lies between two rows; at 3 there
// is sometimes no target at all.
func targetProblem(g *generator) (Problem, error) {
	if g.difficulty >= 3 && g.rng.IntN(3) == 0 {
		return noTargetProblem(g)
	}
	unit := g.degreeUnit()
	var wetBulb, outdoor, target float64
	for {
		wetBulb = g.either(g.pick(58, 72, 2), g.pick(15, 22, 1))
		outdoor = g.either(g.pick(65, 105, 5), g.pick(20, 40, 5))
		above, ok := g.target(wetBulb, outdoor)
		below := above
		if g.difficulty >= 2 && ok {
			below, ok = g.target(wetBulb, outdoor+5)
			outdoor += 2.5
		}
		target = (above + below) / 2
		if ok && target >= g.either(7, 4) && target <= g.either(25, 14) &&
			target == math.Round(2*target)/2 {
			break
		}
	}
	band := g.either(5, 2.8)
	off := g.either(g.pick(-14, 16, 1), g.pick(-8, 9, 1))
	if math.Abs(math.Abs(off)-band) < g.either(2, 1.1) {
		off += g.either(4, 2) * math.Copysign(1, off)
	}
	if measured := target + off; measured < 1 {
		off = math.Ceil(1 - target)
	}
	measured := target + off
	dryBulb := wetBulb + g.either(g.pick(9, 14, 1), g.pick(5, 8, 1))
	reads := func(off float64, outcome string) string {
		where := "above"
		switch {
		case math.Abs(off) < 0.05:
			return "on target: " + outcome
		case off < 0:
			where = "below"
		}
		return fmt.Sprintf(
			"%s %s %s target: %s",
			number(math.Abs(off)),
			g.deltaUnit(),
			where,
			outcome,
		)
	}
	outcome := func(off float64) string {
		switch {
		case off > band:
			return undercharged
		case off < -band:
			return overcharged
		}
		return inBand
	}
	a := Answer{
		Text:   reads(off, outcome(off)),
		Value:  off,
		Within: g.either(1, 0.6),
		Unit:   g.deltaUnit(),
		Places: 1,
	}
	slip := func(target float64, mistake string) Wrong {
		off := measured - target
		return Wrong{Text: reads(off, outcome(off)), Mistake: mistake, Value: off, Number: true}
	}
	p := Problem{
		Statement: fmt.Sprintf(
			"A unit with a fixed restrictor runs steadily. Return air: %s %s dry bulb, %s %s wet bulb. Outdoors: %s %s. The measured superheat is %s. Airflow has been set, and the label has no chart of its own.",
			number(
				dryBulb,
			),
			unit,
			number(wetBulb),
			unit,
			number(outdoor),
			unit,
			g.difference(measured),
		),
		Given: given(
			"return dry bulb",
			number(dryBulb)+" "+unit,
			"return wet bulb",
			number(wetBulb)+" "+unit,
			"outdoor dry bulb",
			number(outdoor)+" "+unit,
			"measured superheat",
			g.difference(measured),
		),
		Ask:    "How far is the superheat from its target, and what follows for the charge?",
		Tables: []Table{g.targetTable(wetBulb, outdoor)},
		Steps: []Step{
			step(
				targetSource,
				"At %s %s wet bulb and %s %s outdoors the target is %s%s. The return dry bulb is not needed.",
				number(wetBulb),
				unit,
				number(outdoor),
				unit,
				g.difference(target),
				halfway(g.difficulty),
			),
			step(
				definition,
				"Deviation: %s − %s = %s.",
				number(measured),
				number(target),
				g.difference(off),
			),
			step(
				toleranceSource,
				"The tolerance is ±%s either way, so: %s.",
				g.difference(band),
				outcome(off),
			),
			step(
				"common practice, no source",
				"High superheat is a coil short of refrigerant, low superheat a coil with too much. Move a little, let it settle, and measure again; the unit's own chart outranks this table.",
			),
		},
		Answer:  a,
		Caution: chargingCaution,
		again: func() (float64, error) {
			s, err := charge.SmoothSuperheat(g.fromScale(wetBulb), g.fromScale(outdoor))
			return measured - g.delta(s.Target), err
		},
	}
	switch outcome(off) {
	case undercharged:
		p.Wrong = append(
			p.Wrong,
			Wrong{
				Text:    reads(off, overcharged),
				Mistake: "high superheat was read as too much refrigerant; it is a coil that runs out of liquid early",
			},
		)
	case overcharged:
		p.Wrong = append(
			p.Wrong,
			Wrong{
				Text:    reads(off, undercharged),
				Mistake: "low superheat was read as too little refrigerant; it is a coil with liquid to its end",
			},
		)
	case inBand:
		if off > 0 {
			p.Wrong = append(
				p.Wrong,
				Wrong{
					Text:    reads(off, undercharged),
					Mistake: "the tolerance was forgotten; instruments and table are no better than that",
				},
			)
		} else if off < 0 {
			p.Wrong = append(p.Wrong, Wrong{Text: reads(off, overcharged), Mistake: "the tolerance was forgotten; instruments and table are no better than that"})
		}
	}
	p.Wrong = append(
		p.Wrong,
		slip(
			g.either(10, 5.5),
			fmt.Sprintf(
				"a fixed target of %s was used; on a fixed restrictor the target moves with the weather",
				g.difference(g.either(10, 5.5)),
			),
		),
	)
	if wrong, ok := g.target(dryBulb, 5*math.Floor(outdoor/5)); ok {
		p.Wrong = append(p.Wrong, slip(wrong, "the return dry bulb was taken for the wet bulb"))
	}
	if off != 0 {
		p.Wrong = append(
			p.Wrong,
			Wrong{
				Text:    reads(-off, outcome(-off)),
				Mistake: "target less measured instead of measured less target",
				Value:   -off,
				Number:  true,
			},
		)
	}
	if wrong, ok := g.target(wetBulb, 5*math.Floor(outdoor/5)+10); ok {
		p.Wrong = append(
			p.Wrong,
			slip(wrong, "the wrong row: read the outdoor temperature down the side"),
		)
	}
	if wrong, ok := g.target(wetBulb-2, 5*math.Floor(outdoor/5)); ok {
		p.Wrong = append(p.Wrong, slip(wrong, "the wrong column: read the wet bulb along the top"))
	}
	return p, nil
}

// chargingCaution stands where a charge is to be moved.
const chargingCaution = "adding in haste sends liquid to the compressor, and a cylinder filled too far bursts. Weigh what is moved, wear eye protection and gloves, and recover, never vent."

// What follows for the charge.
const (
	inBand       = "in band, leave the charge"
	undercharged = "undercharged, add a little"
	overcharged  = "overcharged, recover a little"
)

// noTargetProblem draws a day on which the table has no figure.
func noTargetProblem(g *generator) (Problem, error) {
	unit := g.degreeUnit()
	var wetBulb, outdoor float64
	for {
		wetBulb = g.either(g.pick(52, 60, 1), g.pick(11, 15, 1))
		outdoor = g.either(g.pick(95, 110, 5), g.pick(35, 40, 5))
		_, here := g.target(wetBulb, outdoor)
		_, near := g.target(wetBulb+g.either(4, 2), outdoor-5)
		if !here && near {
			break
		}
	}
	measured := g.either(g.pick(6, 16, 1), g.pick(3, 9, 1))
	const none = "no target: do not charge by superheat now"
	charged := func(target float64) string {
		return fmt.Sprintf("a target of %s: charge to it", g.difference(target))
	}
	return Problem{
		Statement: fmt.Sprintf(
			"A unit with a fixed restrictor runs steadily on a hot, dry day. The return wet bulb is %s %s, outdoors it is %s %s, and the superheat is %s. Airflow has been set, and the label has no chart of its own.",
			number(wetBulb),
			unit,
			number(outdoor),
			unit,
			g.difference(measured),
		),
		Given: given(
			"return wet bulb",
			number(wetBulb)+" "+unit,
			"outdoor dry bulb",
			number(outdoor)+" "+unit,
			"measured superheat",
			g.difference(measured),
		),
		Ask:     "What is the target superheat, and what follows?",
		Tables:  []Table{g.targetTableDown(wetBulb+2, outdoor-20)},
		Caution: chargingCaution,
		Steps: []Step{
			step(
				targetSource,
				"The table has a dash at %s %s wet bulb and %s %s outdoors: below %s there is no target, because liquid could reach the compressor before the charge shows.",
				number(wetBulb),
				unit,
				number(outdoor),
				unit,
				g.difference(g.either(5, 2.8)),
			),
			step(
				"common practice, no source",
				"Come back under other weather, raise the load until the table has a figure, or recover the charge and weigh in what the label states.",
			),
		},
		Answer: Answer{
			Text:  none,
			Value: 1,
			Note:  "weigh in the charge of the label, or wait for other weather",
		},
		Wrong: []Wrong{
			{
				Text:    charged(g.either(5, 2.8)),
				Mistake: "the smallest figure of the table was carried into the dashes",
			},
			{
				Text:    charged(g.either(10, 5.5)),
				Mistake: "a fixed target; on a fixed restrictor the target moves with the weather",
			},
			{
				Text:    charged(0),
				Mistake: "no target was read as a target of nothing; that is liquid at the compressor",
			},
			{Text: charged(measured), Mistake: "what is measured was taken for what should be"},
		},
		again: func() (float64, error) {
			// The polynomial behind the table falls below its floor here.
			if charge.FormulaSuperheat(g.fromScale(wetBulb), g.fromScale(outdoor)).
				FahrenheitDelta() <
				5.5 {
				return 1, nil
			}
			return 0, nil
		},
	}, nil
}

func halfway(difficulty int) string {
	if difficulty >= 2 {
		return ", halfway between two rows"
	}
	return ""
}
