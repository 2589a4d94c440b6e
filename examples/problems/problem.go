package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

// A Problem is one exercise with everything a teacher needs to set and mark it.
type Problem struct {
	// Topic and Form name it in the program; Title is the topic in words.
	Topic, Form, Title string
	Number             int
	Statement          string
	Given              []Given
	Ask                string
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
	// Choices are the right answer and three wrong ones, shuffled; only in
	// a set with choices.
	Choices []Choice
	// again is the answer as the library works it out from the quantities
	// themselves, by another way than the print; the tests compare the two.
	again float64
	// rightCode names an answer in words.
	rightCode string
	// most is what a share cannot be more than; zero where nothing bounds it.
	most     float64
	language Language
}

// Given is a reading or fact of the statement.
type Given struct{ Name, Value string }

// A Step of the worked solution: words, the calculation, and the source of the
// relation it uses.
type Step struct{ Text, Sum, Source string }

// An Answer is a number with its unit, or words where Words is set.
type Answer struct {
	Text  string
	Words bool
	Value float64
	// Within is how far a correct answer may be off, from the rounding of the
	// printed tables and of the answer itself. ByChart is the same for an answer
	// that was read off the chart, zero where there is none.
	Within, ByChart float64
	Unit            string
	Places          int
	// Note is what a full answer says beside the number.
	Note string
}

// Wrong is an answer that a known mistake leads to. Value is in the unit of the
// right answer. Letter is set where it is among the choices.
type Wrong struct {
	Code          string
	Text, Mistake string
	Letter        string
	Value         float64
}

// A Choice is an answer to tick, with what to say to who ticks it.
type Choice struct {
	Letter, Text, Feedback string
	Right                  bool
}

// A Table is an excerpt. The first cell of a row heads it.
type Table struct {
	Caption string
	Head    []string
	Rows    [][]string
}

func (p *Problem) same() string {
	if p.Answer.Words && len(p.Wrong) > 0 { // the same case with other figures is the same problem
		return fmt.Sprint(p.Form, p.Ask, p.rightCode)
	}
	return fmt.Sprint(p.Statement, p.Given, p.Answer.Text)
}

// Margin is how far an answer may be from the one that is printed: what Within
// allows and the print rounds away, to the last place of the print.
func (a Answer) Margin() float64 { return a.margin(a.Within) }

// ChartMargin is the same for one who read the chart.
func (a Answer) ChartMargin() float64 { return a.margin(a.ByChart) }

func (a Answer) margin(within float64) float64 {
	if within == 0 {
		return 0
	}
	place := math.Pow10(-a.Places)
	return math.Ceil((within+math.Abs(rounded(a.Value, a.Places)-a.Value))/place-1e-6) * place
}

// near reports whether two numbers are within the margin of each other in print.
func (a Answer) near(v, w float64) bool {
	margin := max(a.Margin(), a.ChartMargin())
	return math.Abs(rounded(v, a.Places)-rounded(w, a.Places)) <= margin*(1+1e-9)
}

// print is a number in the form of the answer.
func (a Answer) print(v float64) string {
	return unit{symbol: a.Unit}.join(fixed(v, a.Places))
}

// alike is the most that a wrong choice is larger or smaller than the right
// answer, as a factor.
const alike = 4

// plausible reports whether a wrong answer stands beside the right one without
// giving itself away: of its sign and like size, and further off than the margin.
func (p *Problem) plausible(w Wrong) bool {
	a := p.Answer
	if a.Words {
		return w.Text != a.Text
	}
	v, right := rounded(w.Value, a.Places), rounded(a.Value, a.Places)
	if p.most > 0 && v > p.most {
		return false
	}
	return v*right > 0 && v/right < alike && right/v < alike && !a.near(v, right) &&
		math.Abs(v-right) > 2*a.Within
}

// tidy leaves out wrong answers that cannot be told from the right one or from
// one before them.
func (p *Problem) tidy() {
	var kept []Wrong
	for _, w := range p.Wrong {
		same := func(k Wrong) bool {
			return k.Text == w.Text || !p.Answer.Words && p.Answer.near(k.Value, w.Value)
		}
		if p.Answer.Words && w.Text == p.Answer.Text || !p.Answer.Words &&
			(p.Answer.near(w.Value, p.Answer.Value) || math.IsNaN(w.Value) ||
				math.IsInf(w.Value, 0)) || slices.ContainsFunc(kept, same) {
			continue
		}
		kept = append(kept, w)
	}
	p.Wrong = kept
}

// right is the place of the right answer among the wrong ones.
const right = -1

// choose puts the right answer among three wrong ones, of which below are
// smaller than it, or as near to that as the wrong answers allow where easy is
// set. Between others it is the nearest to the middle of them where central is
// set, as far as they allow. It reports whether it could.
func (p *Problem) choose(rng *rand.Rand, below int, central, easy bool) bool {
	p.tidy()
	var less, more []int
	for i, w := range p.Wrong {
		switch {
		case !p.plausible(w):
		case !p.Answer.Words && w.Value < p.Answer.Value:
			less = append(less, i)
		default:
			more = append(more, i)
		}
	}
	if p.Answer.Words {
		below = 0
	}
	if easy {
		below = min(max(below, leastWrong-len(more)), len(less))
	}
	if below > len(less) || leastWrong-below > len(more) {
		return false
	}
	var order []int
	fits := false
	for range 40 {
		order = []int{right}
		for _, i := range rng.Perm(len(less))[:below] {
			order = append(order, less[i])
		}
		for _, i := range rng.Perm(len(more))[:leastWrong-below] {
			order = append(order, more[i])
		}
		fits = p.Answer.Words || below == 0 || below == leastWrong || p.isCentral(order) == central
		if fits {
			break
		}
	}
	if !fits && !easy {
		return false
	}
	rng.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
	for i, n := range order {
		letter := string(rune('A' + i))
		if n == right {
			p.Choices = append(p.Choices,
				Choice{letter, p.Answer.Text, say(p.language, "right"), true})
			continue
		}
		p.Wrong[n].Letter = letter
		p.Choices = append(p.Choices,
			Choice{letter, p.Wrong[n].Text, sentence(p.Wrong[n].Mistake) + ".", false})
	}
	return true
}

// isCentral reports whether the right answer is nearest to the middle between the
// largest and the smallest of the choices.
func (p *Problem) isCentral(order []int) bool {
	values := []float64{p.Answer.Value}
	for _, i := range order {
		if i != right {
			values = append(values, p.Wrong[i].Value)
		}
	}
	middle := (slices.Min(values) + slices.Max(values)) / 2
	for _, v := range values[1:] {
		if math.Abs(v-middle) < math.Abs(p.Answer.Value-middle) {
			return false
		}
	}
	return true
}

// unlettered takes the choices away again, for a set to be answered freely.
func (p *Problem) unlettered() {
	if p.Answer.Words {
		for _, c := range p.Choices {
			p.Among = append(p.Among, c.Text)
		}
	}
	p.Choices = nil
	for i := range p.Wrong {
		p.Wrong[i].Letter = ""
	}
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

// Lettered is the answer, after its letter where there are choices.
func (p Problem) Lettered() string {
	if l := p.Letter(); l != "" {
		return l + ": " + p.Answer.Text
	}
	return p.Answer.Text
}

// Lettered is the wrong answer, after its letter where it is among the choices.
func (w Wrong) Lettered() string {
	if w.Letter != "" {
		return w.Letter + ", " + w.Text
	}
	return w.Text
}

// Accept is how far from the answer a student may be, as it is printed.
func (p Problem) Accept() string {
	a := p.Answer
	if a.Words {
		return ""
	}
	out := "±" + a.print(a.Margin())
	if a.ByChart > 0 {
		out += " " + say(p.language, "by-chart", "margin", "±"+a.print(a.ChartMargin()))
	}
	return out
}

func sentence(s string) string {
	for i, r := range s {
		if i > 0 {
			return strings.ToUpper(s[:i]) + s[i:]
		}
		_ = r
	}
	return strings.ToUpper(s)
}
