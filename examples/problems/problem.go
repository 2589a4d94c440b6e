package main

import (
	"math"
	"slices"

	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

// A Problem is one exercise with everything a teacher needs to set and mark it.
type Problem struct {
	Topic     string
	Number    int
	Statement string
	Given     []Given
	Ask       string
	// Among is what the question lists to choose from, where the set has no
	// choices to tick.
	Among []string
	// Tables are the excerpts of printed tables that a student needs; with them
	// the answer comes out by hand.
	Tables []Table
	// Air asks for a psychrometric chart, of air at the elevation.
	Air       bool
	Elevation quantity.Length
	// Cycle asks for a pressure-enthalpy diagram of the refrigerant, and marks are
	// the states of the solution on it.
	Cycle *refrigerant.Refrigerant
	marks []diagram.Mark
	// plot marks the solution on that chart, for the key.
	plot   func(*chart.Chart) error
	Steps  []Step
	Answer Answer
	// Caution stands under a problem whose work can hurt.
	Caution string
	Wrong   []Wrong
	// Choices are the right answer and up to three wrong ones, shuffled; only in
	// a set with choices.
	Choices []Choice
	// again works the answer out a second way, by other functions or another
	// direction than the solution took; the tests compare the two.
	again func() (float64, error)
}

// Given is a reading or fact of the statement.
type Given struct{ Name, Value string }

// A Step of the worked solution, and the source of the relation it uses.
type Step struct{ Text, Source string }

// An Answer is a number with its unit, or words where Unit is empty.
type Answer struct {
	Text  string
	Value float64
	// Within is how far a correct answer may be off, from the rounding of the
	// printed tables and of the answer itself.
	Within float64
	Unit   string
	Places int
	// Note is what a full answer says beside the number.
	Note string
}

// Wrong is an answer that a known mistake leads to. Where Number is set, Value
// is in the unit of the right answer. Letter is set where it is among the choices.
type Wrong struct {
	Text, Mistake string
	Letter        string
	Value         float64
	Number        bool
}

// A Choice is an answer to tick.
type Choice struct {
	Letter, Text string
	Right        bool
}

// A Table is an excerpt.
type Table struct {
	Caption string
	Head    []string
	Rows    [][]string
}

// numeric is an answer printed to the given number of decimals. Its margin has
// two figures, and never less than the print rounds away.
func numeric(v, within float64, places int, unit string) Answer {
	within = max(within, 0.5*math.Pow10(-places))
	figures := math.Pow10(1 - int(math.Floor(math.Log10(within))))
	return Answer{
		Text:   decimals(v, places) + " " + unit,
		Value:  v,
		Within: math.Ceil(within*figures-1e-9) / figures,
		Unit:   unit,
		Places: places,
	}
}

// slip is the number that a mistake leads to, printed as the answer is.
func (a Answer) slip(v float64, mistake string) Wrong {
	return Wrong{
		Text:    decimals(v, a.Places) + " " + a.Unit,
		Mistake: mistake,
		Value:   v,
		Number:  true,
	}
}

// Margin is how far an answer may be from the one that is printed: what Within
// allows and the print rounds away, to the last place of the print.
func (a Answer) Margin() float64 {
	place := math.Pow10(-a.Places)
	return math.Ceil((a.Within+math.Abs(a.printed(a.Value)-a.Value))/place-1e-6) * place
}

// printed is a number as its print has it.
func (a Answer) printed(v float64) float64 {
	place := math.Pow10(-a.Places)
	return math.Round(v/place) * place
}

// mistakable reports whether a wrong answer would pass for the right one: a
// mistake that happens to hit it teaches nothing and is left out.
func (a Answer) mistakable(w Wrong) bool {
	if !w.Number {
		return w.Text == a.Text
	}
	return w.Text == a.Text || a.near(w.Value, a.Value) || !(math.Abs(w.Value-a.Value) > 2*a.Within)
}

// near reports whether two numbers are within the margin of each other in print.
func (a Answer) near(v, w float64) bool {
	return math.Abs(a.printed(v)-a.printed(w)) < a.Margin()*(1+1e-9)
}

// distinct leaves out wrong answers that cannot be told from the right one or
// from one before them.
func (p *Problem) distinct() {
	var kept []Wrong
	for _, w := range p.Wrong {
		same := func(k Wrong) bool {
			return k.Text == w.Text || k.Number && w.Number && p.Answer.near(k.Value, w.Value)
		}
		if !slices.ContainsFunc(kept, same) && !p.Answer.mistakable(w) {
			kept = append(kept, w)
		}
	}
	p.Wrong = kept
}

// Lettered is the wrong answer, after its letter where it is among the choices.
func (w Wrong) Lettered() string {
	if w.Letter != "" {
		return w.Letter + ", " + w.Text
	}
	return w.Text
}

// Letter is that of the right choice.
func (p Problem) Letter() string {
	for _, c := range p.Choices {
		if c.Right {
			return c.Letter
		}
	}
	return ""
}
