package main

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A capacitor is made for the voltage across it, and a machine that is off takes no current.
func TestNoiseIsNoContradiction(t *testing.T) {
	rated := 0
	eachSet(t, func(t *testing.T, s Set) {
		if s.Options.Language != English {
			return
		}
		for _, p := range s.Problems {
			s := sheetOfPaper{t, p}
			if made := s.v("voltage on its case"); made > 0 {
				rated++
				if made < s.v("voltage across it") {
					t.Errorf("%s/%s: %v", p.Topic, p.Form, p.Given)
				}
			}
			off := p.Topic == "standing" || p.Topic == "blend-leak"
			if off && s.v("current") > 0 {
				t.Errorf("%s/%s: %v", p.Topic, p.Form, p.Given)
			}
			charges := s.or("whole charge", 0) + s.or("charge of the circuit", 0) +
				s.or("charge to be recovered", 0)
			if charges > 0 && s.v("charge on the label") > 0 {
				t.Errorf("%s/%s: two charges: %v", p.Topic, p.Form, p.Given)
			}
		}
	})
	if rated == 0 {
		t.Error("no capacitor says what it is made for")
	}
}

// What a question does not need fits its machine all the same: the liquid line is warmer than
// the outdoor air and colder than the refrigerant condenses, and the suction line is warmer than
// it boils.
func TestNoiseFitsTheMachine(t *testing.T) {
	given := func(v float64) bool { return !math.IsNaN(v) }
	checked := 0
	for _, o := range styles {
		for o.Difficulty = 2; o.Difficulty <= 3; o.Difficulty++ {
			o.Seed, o.PerTopic = 80, 8
			o.Topics = []string{"saturation", "superheat", "subcooling", "refrigeration"}
			u, degree := unitsOf(o), quantity.UnitOf[quantity.Temperature](o.Units)
			for _, p := range mustGenerate(t, o).Problems {
				s := sheetOfPaper{t, p}
				f, err := refrigerant.Lookup(s.text("refrigerant"))
				if err != nil {
					t.Fatal(err)
				}
				g := generator{options: o, u: u}
				sea := quantity.StandardAtmosphere
				less := func(what string, low, high quantity.Temperature) {
					checked++
					if low >= high {
						t.Errorf("%s/%s: %s: %.1f not under %.1f: %v",
							p.Topic, p.Form, what, degree.Number(low), degree.Number(high), p.Given)
					}
				}
				liquid, outdoor := s.v("liquid line"), s.v("outdoor air")
				if given(liquid) && given(outdoor) {
					less("outdoor air and liquid", g.temperature(outdoor), g.temperature(liquid))
				}
				if v := s.v("liquid pressure"); given(v) && given(liquid) {
					at, err := f.BubbleTemperature(g.pascals(v) + sea)
					if err != nil {
						t.Fatal(err)
					}
					less("liquid and condensing", g.temperature(liquid), at)
				}
				v, line := s.v("suction pressure"), s.v("suction line")
				if given(v) && given(line) {
					at, err := f.DewTemperature(g.pascals(v) + sea - 0.2*sea)
					if err != nil {
						t.Fatal(err)
					}
					less("boiling and suction", at, g.temperature(line))
				}
			}
		}
	}
	t.Logf("%d pairs", checked)
	if checked < 100 {
		t.Error("too few pairs to tell")
	}
}
