package main

import (
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A set as values, for a quiz system of one's own.
func ExampleGenerate() {
	set, err := Generate(Options{
		Seed: 7, Topics: []string{"superheat"}, PerTopic: 1,
		Refrigerants: []string{"R-454B"}, Units: quantity.IP, Difficulty: 1, Choices: true,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range set.Problems {
		fmt.Println(p.Statement)
		fmt.Println(p.Ask)
		for _, c := range p.Choices {
			fmt.Printf("%s: %s (%s)\n", c.Letter, c.Text, c.Feedback)
		}
	}
	fmt.Println(set.Name())
	// Output:
	// An R-454B machine at sea level shows 99.3 psig at the compressor. The suction line loses 4.0 psi on the way from the coil, and a clamp at the coil outlet reads 63.4 °F.
	// What is the superheat at the coil outlet?
	// A: 33.4 °F (A whole atmosphere was taken off the reading.)
	// B: 21.4 °F (The reading slipped down by two rows.)
	// C: 25.4 °F (Right.)
	// D: 23.4 °F (The reading slipped down by a row; lay a ruler under it.)
	// problems 2.0.0: -seed 7 -topics superheat -each 1 -refrigerants R-454B -units IP -difficulty 1 -language en -choices
}

// A topic is a file of words beside a function for each form: the function draws
// the numbers and gives them, and works out the answer and what mistakes lead to.
func Example_topicOfYourOwn() {
	text, err := readText(`
topic Ice || Hielo | the ice that melts || el hielo que se funde
word name-ice | ice || hielo
word name-heat | heat to melt it || calor para fundirlo
word half | half of it || la mitad
word twice | counted twice || se contó dos veces
word divided | divided instead of multiplied || se dividió en vez de multiplicar
form melt
say A coil holds {ice}. || Un serpentín tiene {ice}.
ask How much heat melts it? || ¿Cuánto calor lo funde?
step definition | Weight times heat: || Peso por calor: | {ice} × {heat} = {answer}
`)
	if err != nil {
		fmt.Println(err)
		return
	}
	texts["ice"] = text
	melt := form{"melt", func(g *generator, d *draft) error {
		ice := d.give("ice", g.among(2, 9, 0.5, 1, 4, 0.1), g.u.mass)
		heat := d.give("heat", g.either(144, 334), unit{g.pairSymbol("Btu/lb", "kJ/kg"), 0, true})
		d.answer(ice*heat, 0.01*ice*heat, unit{g.pairSymbol("Btu", "kJ"), 0, true})
		d.wrong("half", ice*heat/2)
		d.wrong("twice", 2*ice*heat)
		d.wrong("divided", heat/ice)
		return nil
	}}
	p, err := newGenerator("ice", Options{Seed: 3, Language: English}, nil).draw("ice", melt)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Statement, p.Ask, p.Answer.Text)
	for _, s := range p.Steps {
		fmt.Println(s.Text, s.Sum)
	}
	for _, w := range p.Wrong {
		fmt.Printf("not %s: %s\n", w.Text, w.Mistake)
	}
	// Output:
	// A coil holds 2.5 lb. How much heat melts it? 360 Btu
	// Weight times heat: 2.5 lb × 144 Btu/lb = 360 Btu
	// not 180 Btu: half of it
	// not 720 Btu: counted twice
	// not 58 Btu: divided instead of multiplied
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
		fmt.Printf("%g °F  %.1f psig  %.1f psig\n", f, bubble.Gauge(sea).PSIG(),
			dew.Gauge(sea).PSIG())
	}
	// Output:
	// 40 °F  113.2 psig  107.5 psig
	// 42 °F  117.6 psig  111.7 psig
	// 44 °F  122.1 psig  116.1 psig
	// 46 °F  126.8 psig  120.6 psig
}
