package main

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

var roster = []string{"R-410A", "R-22", "R-407C", "R-32", "R-454B"}

func eachSet(t *testing.T, check func(*testing.T, Set)) {
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		for difficulty := 1; difficulty <= 3; difficulty++ {
			for seed := uint64(1); seed <= 5; seed++ {
				t.Run(fmt.Sprintf("%v difficulty %d seed %d", sys, difficulty, seed), func(t *testing.T) {
					set, err := Generate(Options{Seed: seed, PerTopic: 3, Refrigerants: roster, Units: sys, Difficulty: difficulty})
					if err != nil {
						t.Fatal(err)
					}
					check(t, set)
				})
			}
		}
	}
}

// Each answer comes out a second way, within what the printed tables round.
func TestAnswersASecondWay(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			again, err := p.again()
			if err != nil {
				t.Errorf("%d %s: %v", p.Number, p.Topic, err)
				continue
			}
			if !(math.Abs(again-p.Answer.Value) <= p.Answer.Within) {
				t.Errorf("%d %s: the key says %g %s, the second way %g (within %g): %s", p.Number, p.Topic, p.Answer.Value, p.Answer.Unit, again, p.Answer.Within, p.Statement)
			}
		}
	})
}

func TestProblemsAreComplete(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		if len(s.Problems) != 3*len(topics) {
			t.Errorf("%d problems, want %d", len(s.Problems), 3*len(topics))
		}
		for _, p := range s.Problems {
			if p.Statement == "" || p.Ask == "" || len(p.Given) == 0 || len(p.Steps) < 2 || len(p.Wrong) == 0 || p.Answer.Text == "" {
				t.Errorf("%d %s is incomplete: %+v", p.Number, p.Topic, p)
			}
			for _, st := range p.Steps {
				if st.Source == "" {
					t.Errorf("%d %s: a step has no source: %s", p.Number, p.Topic, st.Text)
				}
			}
			for _, w := range p.Wrong {
				if w.Text == p.Answer.Text {
					t.Errorf("%d %s: a wrong answer is the right one: %s", p.Number, p.Topic, w.Text)
				}
			}
		}
		for _, text := range []string{s.markdown(true), mustHTML(t, s)} {
			for _, bad := range []string{"%!", "NaN", "Inf", "<nil>"} {
				if strings.Contains(text, bad) {
					t.Errorf("the set holds %q", bad)
				}
			}
		}
	})
}

func mustHTML(t *testing.T, s Set) string {
	text, err := s.html(true)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestSameSeedSameSet(t *testing.T) {
	o := Options{Seed: 42, PerTopic: 2, Refrigerants: roster, Difficulty: 2}
	a, err := Generate(o)
	if err != nil {
		t.Fatal(err)
	}
	b, err := Generate(o)
	if err != nil {
		t.Fatal(err)
	}
	if a.markdown(true) != b.markdown(true) {
		t.Error("the same seed gave another set")
	}
	o.Seed++
	c, err := Generate(o)
	if err != nil {
		t.Fatal(err)
	}
	if a.markdown(false) == c.markdown(false) {
		t.Error("another seed gave the same set")
	}
	// A topic draws the same numbers whichever other topics are in the set.
	o.Seed, o.Topics = 42, []string{"superheat"}
	d, err := Generate(o)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(a.markdown(false), d.Problems[0].Statement) {
		t.Error("choosing a topic changed its problems")
	}
}

func TestBadOptions(t *testing.T) {
	for _, args := range [][]string{
		{"-topics", "astrology"}, {"-refrigerants", "R-999"}, {"-refrigerants", ""}, {"-each", "0"}, {"-difficulty", "9"},
		{"-units", "cgs"}, {"-format", "pdf"}, {"-refrigerants", "R-718"}, {"-nonsense"},
		{"-topics", "glide", "-refrigerants", "R-22"},
	} {
		var out, problems strings.Builder
		if status := run(args, &out, &problems); status != 2 || out.Len() != 0 || problems.Len() == 0 {
			t.Errorf("%v: status %d, %d bytes out, problem %q", args, status, out.Len(), problems.String())
		}
	}
}
