package main

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A set as values, for a quiz system of one's own.
func ExampleGenerate() {
	set, err := Generate(Options{
		Seed: 7, Topics: []string{"superheat"}, PerTopic: 1,
		Refrigerants: []string{"R-454B"}, Units: quantity.IP, Difficulty: 1,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range set.Problems {
		fmt.Println(p.Statement)
		fmt.Println(p.Ask)
		fmt.Println("right:", p.Answer.Text)
		for _, w := range p.Wrong {
			fmt.Printf("wrong: %s: %s\n", w.Text, w.Mistake)
		}
	}
	// Output:
	// An R-454B machine at sea level shows 103.3 psig at the suction port. It is to run at 14 °F of superheat.
	// What does a clamp on the suction line show when the superheat is 14 °F?
	// right: 52 °F
	// wrong: 49.3 °F: the bubble column was read for vapor
	// wrong: 24 °F: the superheat was taken off; that is how the liquid line is found from a subcooling
	// wrong: 38 °F: the dew temperature itself; a line at it has no superheat
	// wrong: 44.4 °F: the gauge reading was looked up as an absolute pressure
}

// ratioProblem is a topic of one's own: the numbers are drawn, the steps name
// their sources, each wrong answer follows from a mistake, and again works the
// answer out a second way.
func ratioProblem(g *generator) (Problem, error) {
	atm, unit := g.atmosphere(quantity.StandardAtmosphere)
	low := g.either(g.pick(60, 130, 5), g.pick(400, 900, 50))
	high := g.either(g.pick(200, 400, 10), g.pick(1400, 2800, 100))
	a := numeric((high+atm)/(low+atm), 0.02, 2, "to 1")
	return Problem{
		Statement: fmt.Sprintf("At sea level, where the atmosphere is %s %s, a compressor draws in at %s and discharges at %s.",
			decimals(atm, 1), unit, g.pressure(low), g.pressure(high)),
		Given: given("suction", g.pressure(low), "discharge", g.pressure(high)),
		Ask:   "What is the compression ratio?",
		Steps: []Step{
			step(definition, "Absolute pressures: %s + %s = %s and %s + %s = %s.",
				g.cell(low), decimals(atm, 1), g.cell(low+atm), g.cell(high), decimals(atm, 1), g.cell(high+atm)),
			step(definition, "The ratio is of those: %s / %s = %s.", g.cell(high+atm), g.cell(low+atm), a.Text),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(high/low, "gauge pressures were divided; the atmosphere belongs to both"),
			a.slip((low+atm)/(high+atm), "the ratio was turned over"),
			a.slip((high+atm)/low, "the atmosphere was added to one of the two only"),
		},
		again: func() (float64, error) {
			exact := func(v float64) quantity.Uncertain[quantity.Pressure] {
				return g.gaugePressure(v).Absolute(quantity.StandardAtmosphere).PlusMinus(0)
			}
			ratio, _, err := charge.CompressionRatio(exact(low), exact(high))
			return ratio, err
		},
	}, nil
}

// A topic is a function; what draws its numbers is seeded, so it gives the same
// problem again.
func Example_topicOfYourOwn() {
	g := newGenerator("ratio", Options{Seed: 3, Units: quantity.IP, Difficulty: 1}, nil)
	p, err := g.draw(ratioProblem, map[string]bool{})
	if err != nil {
		fmt.Println(err)
		return
	}
	again, err := p.again()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Statement)
	fmt.Printf("%s %s (a second way: %.2f)\n", p.Ask, p.Answer.Text, again)
	for _, w := range p.Wrong {
		fmt.Printf("not %s: %s\n", w.Text, w.Mistake)
	}
	// Output:
	// At sea level, where the atmosphere is 14.7 psia, a compressor draws in at 130.0 psig and discharges at 240.0 psig.
	// What is the compression ratio? 1.76 to 1 (a second way: 1.76)
	// not 1.85 to 1: gauge pressures were divided; the atmosphere belongs to both
	// not 0.57 to 1: the ratio was turned over
	// not 1.96 to 1: the atmosphere was added to one of the two only
}

// Figures for a worksheet of one's own come from the library directly.
func Example_pressureTable() {
	r, err := refrigerant.Lookup("R-454B")
	if err != nil {
		fmt.Println(err)
		return
	}
	for f := 40.0; f <= 46; f += 2 {
		bubble, err := r.BubblePressure(quantity.Fahrenheit(f))
		if err != nil {
			fmt.Println(err)
			return
		}
		dew, err := r.DewPressure(quantity.Fahrenheit(f))
		if err != nil {
			fmt.Println(err)
			return
		}
		sea := quantity.StandardAtmosphere
		fmt.Printf("%g °F  %.1f psig  %.1f psig\n", f, bubble.Gauge(sea).PSIG(), dew.Gauge(sea).PSIG())
	}
	// Output:
	// 40 °F  113.2 psig  107.5 psig
	// 42 °F  117.6 psig  111.7 psig
	// 44 °F  122.1 psig  116.1 psig
	// 46 °F  126.8 psig  120.6 psig
}
