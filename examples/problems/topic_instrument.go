package main

import (
	"fmt"
	"math"
	"slices"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// readings are a set of temperatures on the student's scale; those of the gauges
// are as the manifold shows them, for R-22.
type readings struct {
	returnDry, returnWet, supply, outdoor, evaporating, suctionLine, condensing, liquidLine float64
}

// A mishap is a mistake with an instrument, and the law that it makes the
// readings break.
type mishap struct {
	cause, law string
	spoil      func(*generator, *readings) error
	// doubt is the code by which an assessment of the readings names it.
	doubt string
}

var mishaps = []mishap{
	{
		"the wick of the return wet bulb is dry", "a wet bulb that reads the dry bulb would mean saturated air, which no room returns",
		func(g *generator, r *readings) error { r.returnWet = r.returnDry; return nil },
		"return-saturated",
	},
	{
		"the wet and dry bulb probes of the return are swapped", "water that evaporates cools: a wet bulb is never above its dry bulb",
		func(g *generator, r *readings) error { r.returnDry, r.returnWet = r.returnWet, r.returnDry; return nil },
		"return-wet-bulb-above-dry-bulb",
	},
	{
		"the outdoor thermometer hangs in the sun", "outdoor air cannot cool the liquid below its own temperature",
		func(g *generator, r *readings) error { r.outdoor = r.liquidLine + g.either(6, 4); return nil },
		"liquid-line-below-outdoor",
	},
	{
		"the manifold is set to R-22 and the machine holds R-410A", "air cannot leave a coil colder than the refrigerant boils in it, and so little superheat with so much subcooling fits no machine",
		func(g *generator, r *readings) error {
			in, err := refrigerant.Lookup("R-410A")
			if err != nil {
				return err
			}
			set, err := refrigerant.Lookup("R-22")
			if err != nil {
				return err
			}
			low, err := in.DewPressure(g.fromScale(r.evaporating))
			if err != nil {
				return err
			}
			high, err := in.BubblePressure(g.fromScale(r.condensing))
			if err != nil {
				return err
			}
			e, err := set.DewTemperature(low)
			if err != nil {
				return err
			}
			c, err := set.BubbleTemperature(high)
			if err != nil {
				return err
			}
			r.evaporating, r.condensing = math.Round(g.scale(e)), math.Round(g.scale(c))
			return nil
		},
		"evaporating-above-supply",
	},
	{
		"the suction line clamp sits on the liquid line", "the suction line comes from a coil colder than the room; it is not warmer than the room and the outdoor air both",
		func(g *generator, r *readings) error { r.suctionLine = r.liquidLine; return nil },
		"suction-line-above-outdoor-and-return",
	},
}

// instrumentProblem gives the readings of a sound machine with one mistake among
// them.
func (g *generator) instrumentProblem() (Problem, error) {
	r := readings{
		returnDry: g.either(
			g.pick(74, 78, 1),
			g.pick(23, 26, 1),
		), outdoor: g.either(g.pick(85, 97, 1), g.pick(29, 36, 1)),
		evaporating: g.either(g.pick(38, 42, 1), g.pick(4, 6, 1)),
	}
	r.returnWet = r.returnDry - g.either(g.pick(11, 14, 1), g.pick(6, 8, 1))
	r.supply = r.returnDry - g.either(19, 10.5)
	r.suctionLine = r.evaporating + g.either(g.pick(10, 13, 1), g.pick(6, 7, 1))
	r.condensing = r.outdoor + g.either(g.pick(18, 22, 1), g.pick(10, 12, 1))
	r.liquidLine = r.condensing - g.either(g.pick(8, 12, 1), g.pick(5, 7, 1))
	names := make([]string, len(mishaps))
	for i, m := range mishaps {
		names[i] = m.cause
	}
	slices.Sort(names)
	truth := mishaps[g.rng.IntN(len(mishaps))]
	if err := truth.spoil(g, &r); err != nil {
		return Problem{}, err
	}
	show := func(v float64) string { return g.temperature(g.fromScale(v)) }
	p := Problem{
		Statement: "A machine with a thermostatic expansion valve (TXV) cools well and runs steadily. Its readings do not fit together, because of one mistake in taking them. The manifold is set to R-22, and the temperatures of boiling and condensing are those it shows.",
		Given: given(
			"return dry bulb",
			show(r.returnDry),
			"return wet bulb",
			show(r.returnWet),
			"supply dry bulb",
			show(r.supply),
			"boiling (suction gauge)",
			show(r.evaporating),
			"suction line",
			show(r.suctionLine),
			"outdoor dry bulb",
			show(r.outdoor),
			"condensing (liquid gauge)",
			show(r.condensing),
			"liquid line",
			show(r.liquidLine),
		),
		Ask:   "Which one of these mistakes was made?",
		Among: names,
		Steps: []Step{
			step(
				definition,
				"Work out what follows from the readings: superheat %s, subcooling %s, temperature split %s, liquid line over outdoor air %s, wet bulb under dry bulb %s.",
				g.difference(
					r.suctionLine-r.evaporating,
				),
				g.difference(r.condensing-r.liquidLine),
				g.difference(r.returnDry-r.supply),
				g.difference(r.liquidLine-r.outdoor),
				g.difference(r.returnDry-r.returnWet),
			),
			step("elementary physics", "The readings break a law: %s.", truth.law),
			step(
				"by elimination",
				"So %s. Once that is put right, the readings agree with a sound machine; take them again before anything is adjusted.",
				truth.cause,
			),
		},
		Answer: Answer{
			Text:  truth.cause,
			Value: float64(slices.Index(names, truth.cause)),
			Note:  "take the reading again before anything is adjusted",
		},
	}
	for _, other := range mishaps {
		if other.cause != truth.cause {
			p.Wrong = append(
				p.Wrong,
				Wrong{
					Text:    other.cause,
					Mistake: "the readings keep the law that it would break; " + other.law,
				},
			)
		}
	}
	p.again = func() (float64, error) {
		cause, err := g.doubted(r)
		return float64(slices.Index(names, cause)), err
	}
	return p, nil
}

// doubted has the readings assessed and returns the mishap that the doubts name.
func (g *generator) doubted(r readings) (string, error) {
	at := g.fromScale
	r22, err := refrigerant.Lookup("R-22")
	if err != nil {
		return "", err
	}
	low, err := r22.DewPressure(at(r.evaporating))
	if err != nil {
		return "", err
	}
	high, err := r22.BubblePressure(at(r.condensing))
	if err != nil {
		return "", err
	}
	a, err := satline.Assess(satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-22", Metering: satline.TXV},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(
				low.Gauge(quantity.StandardAtmosphere),
			), LiquidPressure: satline.Measured(high.Gauge(quantity.StandardAtmosphere)),
			SuctionLine: satline.Measured(
				at(r.suctionLine),
			), LiquidLine: satline.Measured(at(r.liquidLine)),
			OutdoorDryBulb: satline.Measured(
				at(r.outdoor),
			), SupplyDryBulb: satline.Measured(at(r.supply)),
			ReturnDryBulb: satline.Measured(
				at(r.returnDry),
			), ReturnWetBulb: satline.Measured(at(r.returnWet)),
		},
		Scope: satline.VerdictOnly,
	})
	if err != nil {
		return "", err
	}
	cause := ""
	for _, m := range mishaps {
		for _, d := range a.Doubts {
			if d.Says.Code != fact.Code("doubt."+m.doubt) {
				continue
			}
			if cause != "" && cause != m.cause {
				return "", fmt.Errorf("the doubts name %q and %q", cause, m.cause)
			}
			cause = m.cause
		}
	}
	return cause, nil
}
