package main

import (
	"fmt"
	"html"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

var roster = []string{"R-410A", "R-22", "R-407C", "R-32", "R-454B"}

func eachSet(t *testing.T, check func(*testing.T, Set)) {
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		for difficulty := 1; difficulty <= 3; difficulty++ {
			for seed := uint64(1); seed <= 5; seed++ {
				t.Run(
					fmt.Sprintf("%v difficulty %d seed %d", sys, difficulty, seed),
					func(t *testing.T) {
						set, err := Generate(
							Options{
								Seed:         seed,
								PerTopic:     3,
								Refrigerants: roster,
								Units:        sys,
								Difficulty:   difficulty,
							},
						)
						if err != nil {
							t.Fatal(err)
						}
						check(t, set)
					},
				)
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
				t.Errorf(
					"%d %s: the key says %g %s, the second way %g (within %g): %s",
					p.Number,
					p.Topic,
					p.Answer.Value,
					p.Answer.Unit,
					again,
					p.Answer.Within,
					p.Statement,
				)
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
			if p.Statement == "" || p.Ask == "" || len(p.Given) == 0 || len(p.Steps) < 2 ||
				len(p.Wrong) < leastWrong ||
				p.Answer.Text == "" {
				t.Errorf("%d %s is incomplete: %+v", p.Number, p.Topic, p)
			}
			for _, st := range p.Steps {
				if st.Source == "" {
					t.Errorf("%d %s: a step has no source: %s", p.Number, p.Topic, st.Text)
				}
			}
			seen := map[string]bool{p.Answer.Text: true}
			for i, w := range p.Wrong {
				for _, other := range p.Wrong[:i] {
					if w.Number && other.Number && p.Answer.near(w.Value, other.Value) {
						t.Errorf(
							"%d %s: the wrong answers %s and %s are one",
							p.Number,
							p.Topic,
							other.Text,
							w.Text,
						)
					}
				}
				if seen[w.Text] ||
					w.Number && math.Abs(w.Value-p.Answer.Value) <= 2*p.Answer.Within {
					t.Errorf(
						"%d %s: the wrong answer %s cannot be told from another or from %s",
						p.Number,
						p.Topic,
						w.Text,
						p.Answer.Text,
					)
				}
				if w.Mistake == "" {
					t.Errorf("%d %s: no mistake behind %s", p.Number, p.Topic, w.Text)
				}
				seen[w.Text] = true
			}
		}
		texts := []string{s.markdown(true)}
		if s.Options.Seed == 1 { // the charts of a page take their time
			texts = append(texts, mustHTML(t, s))
		}
		for _, text := range texts {
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
		{"-units", "cgs"}, {"-format", "pdf"}, {"-refrigerants", "R-718"}, {"-nonsense"}, {"-seed", "one"}, {"-seed", "-1"}, {"superheat"},
		{"-topics", "glide", "-refrigerants", "R-22"},
	} {
		var out, problems strings.Builder
		if status := run(args, &out, &problems); status != 2 || out.Len() != 0 ||
			strings.Count(problems.String(), "\n") != 1 {
			t.Errorf(
				"%v: status %d, %d bytes out, problem %q",
				args,
				status,
				out.Len(),
				problems.String(),
			)
		}
	}
}

func TestHelpAndList(t *testing.T) {
	for _, args := range [][]string{{"-help"}, {"-list"}} {
		var out, problems strings.Builder
		if status := run(args, &out, &problems); status != 0 || problems.Len() != 0 {
			t.Errorf("%v: status %d, problem %q", args, status, problems.String())
		}
		for _, topic := range topics {
			if !strings.Contains(out.String(), topic.name) ||
				!strings.Contains(out.String(), topic.about) {
				t.Errorf("%v does not tell of %s", args, topic.name)
			}
		}
	}
}

// With choices each problem has four, one of them right, and they do not change
// the problems.
func TestChoices(t *testing.T) {
	o := Options{Seed: 5, PerTopic: 4, Refrigerants: roster, Difficulty: 2}
	plain, err := Generate(o)
	if err != nil {
		t.Fatal(err)
	}
	o.Choices = true
	ticked, err := Generate(o)
	if err != nil {
		t.Fatal(err)
	}
	letters := map[string]int{}
	for i, p := range ticked.Problems {
		if p.Statement != plain.Problems[i].Statement || p.Answer != plain.Problems[i].Answer {
			t.Errorf("%d %s: choices changed the problem", p.Number, p.Topic)
		}
		right := 0
		for _, c := range p.Choices {
			if c.Right {
				right++
				letters[c.Letter]++
				if c.Text != p.Answer.Text {
					t.Errorf(
						"%d %s: the key says %s where the answer is %s",
						p.Number,
						p.Topic,
						c.Text,
						p.Answer.Text,
					)
				}
			} else if !slices.ContainsFunc(p.Wrong, func(w Wrong) bool { return w.Letter == c.Letter && w.Text == c.Text }) {
				t.Errorf("%d %s: the key has no mistake behind choice %s", p.Number, p.Topic, c.Letter)
			}
		}
		if len(p.Choices) != 4 || right != 1 {
			t.Errorf("%d %s: %d choices, %d right", p.Number, p.Topic, len(p.Choices), right)
		}
	}
	if len(letters) != 4 {
		t.Errorf("the right answers have only these letters: %v", letters)
	}
}

// The margin of the key covers what its own print rounds away, is never nothing,
// and lets no wrong answer pass.
func TestMarginsCoverThePrint(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			if p.Answer.Unit == "" {
				continue
			}
			printed := figure(strings.Fields(p.Answer.Text)[0])
			if p.Topic == "target" { // says above or below in words
				printed = p.Answer.Value
			}
			margin := figure(strings.Fields(strings.TrimPrefix(p.Accept(), "±"))[0])
			if !(margin > 0) ||
				!(math.Abs(printed-p.Answer.Value)+p.Answer.Within <= margin*(1+1e-9)) {
				t.Errorf(
					"%d %s: %s, exactly %g within %g, is to be accepted within %s",
					p.Number,
					p.Topic,
					p.Answer.Text,
					p.Answer.Value,
					p.Answer.Within,
					p.Accept(),
				)
			}
			for _, w := range p.Wrong {
				if wrong := figure(strings.Fields(w.Text)[0]); w.Number && p.Topic != "target" &&
					math.Abs(wrong-printed) <= margin {
					t.Errorf(
						"%d %s: the wrong answer %s is accepted: %s %s",
						p.Number,
						p.Topic,
						w.Text,
						p.Answer.Text,
						p.Accept(),
					)
				}
			}
		}
	})
}

// A student who has nothing but the print finds the answer of the key: the
// excerpt holds the rows that are needed.
func TestThePrintIsEnough(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			found, ok := fromPrint(p)
			if ok && !(math.Abs(found-p.Answer.Value) <= p.Answer.Within) {
				t.Errorf(
					"%d %s: the print gives %g where the key has %s: %s",
					p.Number,
					p.Topic,
					found,
					p.Answer.Text,
					p.Statement,
				)
			}
		}
	})
}

// fromPrint solves a problem that reads a table of saturation or of enthalpies;
// what is not in the print is NaN.
func fromPrint(p Problem) (found float64, ok bool) {
	get := func(name string) float64 {
		for _, g := range p.Given {
			if g.Name == name {
				return figure(strings.Fields(g.Value)[0])
			}
		}
		return math.NaN()
	}
	has := func(name string) bool { return !math.IsNaN(get(name)) }
	between := func(rows [][]string, from, to int, at float64) float64 {
		for i := range rows {
			x, y := figure(rows[i][from]), figure(rows[i][to])
			if x == at {
				return y
			}
			if i > 0 && x > at && figure(rows[i-1][from]) < at {
				before, below := figure(rows[i-1][from]), figure(rows[i-1][to])
				return below + (at-before)/(x-before)*(y-below)
			}
		}
		return math.NaN()
	}
	if len(p.Tables) == 0 {
		return 0, false
	}
	rows := p.Tables[0].Rows
	// less is what a reading has too much before the table, or too little.
	less := 0.0
	if strings.Contains(p.Tables[0].Caption, "absolute pressure") {
		less = -get("atmosphere")
	}
	if p.Topic == "altitude" {
		if len(p.Tables) > 1 {
			less = between(p.Tables[1].Rows, 0, 2, get("elevation"))
		} else {
			_, after, _ := strings.Cut(p.Statement, "The atmosphere here is ")
			less = figure(strings.Fields(after)[0])
		}
	}
	listed := func(name string) float64 { return math.Round(10*(get(name)-less)) / 10 }
	dew := func() float64 { return between(rows, dewColumn, 0, listed("suction pressure")) }
	bubble := func() float64 { return between(rows, bubbleColumn, 0, listed("liquid pressure")) }
	switch {
	case p.Topic == "saturation" && has("room"):
		return between(rows, 0, bubbleColumn, get("room")) + less, true
	case p.Topic == "saturation" && has("liquid pressure"):
		return bubble(), true
	case p.Topic == "saturation":
		return dew(), true
	case p.Topic == "glide":
		at := listed("pressure in the evaporator")
		if !has("pressure in the evaporator") {
			at = listed("pressure in the condenser")
		}
		return between(rows, dewColumn, 0, at) - between(rows, bubbleColumn, 0, at), true
	case has("superheat wanted"):
		return dew() + get("superheat wanted"), true
	case has("subcooling wanted"):
		return bubble() - get("subcooling wanted"), true
	case strings.Contains(p.Ask, "subcooling"):
		return bubble() - get("liquid line"), true
	case strings.Contains(p.Ask, "superheat") && p.Topic != "target" && p.Topic != "dosing":
		return get("suction line") - dew(), true
	case p.Topic == "capacity":
		// Entering and leaving name a dry and a wet bulb.
		enthalpy := func(name string) float64 {
			for _, g := range p.Given {
				if g.Name == name {
					f := strings.Fields(g.Value)
					return between(rows, 0, slices.Index(p.Tables[0].Head, f[0]), figure(f[4]))
				}
			}
			return math.NaN()
		}
		fall := enthalpy("entering") - enthalpy("leaving")
		dryAir := 4.5 * get("airflow")
		if p.Answer.Unit == "kW" {
			dryAir = 1.2 * get("airflow") / 1000
		}
		if _, after, thin := strings.Cut(p.Statement, "which takes "); thin {
			dryAir = 60 / figure(strings.Fields(after)[0]) * get("airflow")
			if p.Answer.Unit == "kW" {
				dryAir /= 60 * 1000
			}
		}
		return dryAir * fall, true
	}
	return 0, false
}

// Each level asks for more than the one below, in every topic.
func TestLevelsDiffer(t *testing.T) {
	for _, topic := range topicNames() {
		var print [4]string
		for level := 1; level <= 3; level++ {
			set, err := Generate(
				Options{
					Seed:         3,
					PerTopic:     6,
					Topics:       []string{topic},
					Refrigerants: roster,
					Difficulty:   level,
				},
			)
			if err != nil {
				t.Fatal(err)
			}
			_, print[level], _ = strings.Cut(set.markdown(false), "\n")
		}
		for level := 2; level <= 3; level++ {
			if print[level] == print[level-1] {
				t.Errorf("%s: level %d asks what level %d does", topic, level, level-1)
			}
		}
	}
}

// The questions of one topic are not all put in the same words, and the same
// fault does not come again while there are others.
func TestFormsTakeTurns(t *testing.T) {
	set, err := Generate(Options{Seed: 4, PerTopic: 4, Refrigerants: roster, Difficulty: 2})
	if err != nil {
		t.Fatal(err)
	}
	words := strings.NewReplacer(
		"0",
		"",
		"1",
		"",
		"2",
		"",
		"3",
		"",
		"4",
		"",
		"5",
		"",
		"6",
		"",
		"7",
		"",
		"8",
		"",
		"9",
		"",
		".",
		"",
	)
	forms := map[string]map[string]bool{}
	faults := map[string]bool{}
	for _, p := range set.Problems {
		if forms[p.Topic] == nil {
			forms[p.Topic] = map[string]bool{}
		}
		forms[p.Topic][words.Replace(p.Statement+p.Ask)] = true
		if p.Topic == "diagnosis" && faults[p.Ask+p.Answer.Text] {
			t.Errorf("the same fault twice: %s", p.Answer.Text)
		}
		faults[p.Ask+p.Answer.Text] = true
	}
	for _, topic := range []string{"saturation", "glide", "superheat", "subcooling", "altitude", "cycle", "air", "airflow", "dosing", "diagnosis"} {
		if len(forms[topic]) < 2 {
			t.Errorf("%s is always put in the same words", topic)
		}
	}
}

// The first dose is never the answer, the excerpt of the target table always has
// figures, and both topics carry their caution.
func TestMovingTheCharge(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			if p.Topic != "dosing" && p.Topic != "target" {
				continue
			}
			if p.Caution == "" || !strings.Contains(s.markdown(false), p.Caution) {
				t.Errorf("%d %s: no caution", p.Number, p.Topic)
			}
			if p.Topic == "dosing" && p.Given[1].Value == p.Answer.Text {
				t.Errorf("%d: who repeats the first dose is right", p.Number)
			}
			if p.Topic == "target" &&
				!slices.ContainsFunc(
					p.Tables[0].Rows,
					func(row []string) bool { return !math.IsNaN(figure(row[len(row)-1])) },
				) {
				t.Errorf("%d: the excerpt has no figure", p.Number)
			}
		}
	})
}

// No problem is asked twice where there are others to ask.
func TestNoProblemTwice(t *testing.T) {
	set, err := Generate(Options{Seed: 1, PerTopic: 12, Refrigerants: roster, Difficulty: 2})
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for _, p := range set.Problems {
		same := fmt.Sprint(p.Statement, p.Given, p.Tables)
		if n := seen[same]; n != 0 {
			t.Errorf("%d %s is problem %d again", p.Number, p.Topic, n)
		}
		seen[same] = p.Number
	}
}

// The page needs nothing from elsewhere, has each chart that a problem needs
// once, and keeps the answers of a set without key to itself.
func TestPage(t *testing.T) {
	set, err := Generate(Options{Seed: 2, PerTopic: 3, Refrigerants: roster, Difficulty: 3})
	if err != nil {
		t.Fatal(err)
	}
	plain, err := set.html(false)
	if err != nil {
		t.Fatal(err)
	}
	needed := map[chartKey]bool{}
	for _, p := range set.Problems {
		if p.charted() {
			needed[p.chartKey()] = true
		}
		for _, w := range p.Wrong {
			if strings.Contains(plain, w.Mistake) {
				t.Errorf("the page without key tells a mistake: %s", w.Mistake)
			}
		}
	}
	if n := strings.Count(plain, "<figure>"); n != len(needed) || n == 0 {
		t.Errorf("%d charts where %d are needed", n, len(needed))
	}
	for _, bad := range []string{"src=", "href=\"http", "@import", "url(", "<?xml"} {
		if strings.Contains(plain, bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
	if strings.Contains(plain, "Answer key") {
		t.Error("the page without key has one")
	}
}

// A set has the formulas that its topics need, once each, in its own units.
func TestFormulas(t *testing.T) {
	for _, c := range []struct {
		topics []string
		units  quantity.System
		has    int
		holds  string
	}{
		{[]string{"glide", "superheat"}, quantity.IP, 0, ""},
		{[]string{"cycle", "airflow"}, quantity.IP, 2, "1.08 × CFM"},
		{[]string{"air", "capacity", "airflow"}, quantity.SI, 4, "1.21 × L/s"},
	} {
		set, err := Generate(
			Options{
				Seed:         1,
				PerTopic:     2,
				Topics:       c.topics,
				Refrigerants: roster,
				Units:        c.units,
				Difficulty:   2,
			},
		)
		if err != nil {
			t.Fatal(err)
		}
		formulas := set.formulas()
		if len(formulas) != c.has || !strings.Contains(strings.Join(formulas, "\n"), c.holds) {
			t.Errorf("%v: %q", c.topics, formulas)
		}
		for _, text := range []string{set.markdown(false), html.UnescapeString(mustHTML(t, set))} {
			for _, f := range formulas {
				if !strings.Contains(text, f) {
					t.Errorf("%v: the set does not print %s", c.topics, f)
				}
			}
		}
	}
}

// The cautions of a set name what burns and what poisons.
func TestCautions(t *testing.T) {
	for _, c := range []struct{ fluid, says string }{{"R-32", "R-32: flammable"}, {"R-454B", "R-454B: flammable"}, {"R-717", "R-717: toxic"}, {"R-717", "R-717: flammable"}} {
		set, err := Generate(
			Options{
				Seed:         1,
				PerTopic:     1,
				Topics:       []string{"superheat"},
				Refrigerants: []string{c.fluid},
				Difficulty:   1,
			},
		)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{set.markdown(false), mustHTML(t, set)} {
			if !strings.Contains(text, c.says) {
				t.Errorf("a set on %s does not say %q", c.fluid, c.says)
			}
		}
	}
	set, err := Generate(
		Options{
			Seed:         1,
			PerTopic:     1,
			Topics:       []string{"superheat"},
			Refrigerants: []string{"R-410A"},
			Difficulty:   1,
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	if text := set.markdown(false); strings.Contains(text, "flammable") ||
		strings.Contains(text, "toxic") {
		t.Error("a set on R-410A warns of fire or poison")
	}
}

// Whatever the options, there is a set on standard output or one line on standard
// error.
func FuzzOptions(f *testing.F) {
	f.Add("superheat,target", "R-22, R-407C", "SI", "html", 1, 2)
	f.Add("", "r410a", "ip", "markdown", 1, 3)
	f.Add("glide", "R-22", "IP", "markdown", 1, 1)
	f.Add("\n", "R-\n", "", "\n", 0, -1)
	f.Fuzz(func(t *testing.T, topics, fluids, units, format string, each, difficulty int) {
		each = min(each, 2) // for the sake of time
		var out, problems strings.Builder
		status := run(
			[]string{
				"-topics",
				topics,
				"-refrigerants",
				fluids,
				"-units",
				units,
				"-format",
				format,
				"-each",
				fmt.Sprint(each),
				"-difficulty",
				fmt.Sprint(difficulty),
				"-key",
			},
			&out,
			&problems,
		)
		switch {
		case status == 0 && out.Len() > 0 && problems.Len() == 0:
		case status == 2 && out.Len() == 0 && strings.Count(problems.String(), "\n") == 1 && strings.HasSuffix(problems.String(), "\n"):
		default:
			t.Errorf("status %d, %d bytes out, problem %q", status, out.Len(), problems.String())
		}
	})
}
