package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

var roster = []string{"R-410A", "R-22", "R-407C", "R-32", "R-454B"}

// long makes the long runs: two thousand sets over all options.
var long = flag.Bool("long", false, "make 2,000 sets over all options")

// styles are the units that a set is written in.
var styles = []Options{{Units: quantity.IP}, {Units: quantity.SI}, {Units: quantity.SI, Bar: true}}

func mustGenerate(t *testing.T, o Options) Set {
	t.Helper()
	if len(o.Refrigerants) == 0 {
		o.Refrigerants = roster
	}
	o.PerTopic, o.Difficulty = max(o.PerTopic, 1), max(o.Difficulty, 1)
	set, err := Generate(o)
	if err != nil {
		t.Fatalf("%+v: %v", o, err)
	}
	return set
}

// eachSet checks sets of all forms at every level, in every unit and language.
func eachSet(t *testing.T, check func(*testing.T, Set)) {
	for _, o := range styles {
		for o.Difficulty = 1; o.Difficulty <= 3; o.Difficulty++ {
			for o.Seed = 1; o.Seed <= 4; o.Seed++ {
				o.PerTopic, o.Language = 4, English
				if o.Seed == 2 {
					o.Language = Spanish
				}
				name := fmt.Sprintf(
					"%v bar %v level %d seed %d", o.Units, o.Bar, o.Difficulty, o.Seed)
				t.Run(name, func(t *testing.T) { check(t, mustGenerate(t, o)) })
			}
		}
	}
}

// Each answer comes out of the library, from the quantities themselves, within
// what the printed tables round.
func TestAnswersByTheLibrary(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			if !p.Answer.Words && !(math.Abs(p.again-p.Answer.Value) <= p.Answer.Within) {
				t.Errorf("%s/%s: the key says %g %s, the library %g (within %g): %s",
					p.Topic, p.Form, p.Answer.Value, p.Answer.Unit, p.again, p.Answer.Within,
					p.Statement)
			}
		}
	})
}

func TestProblemsAreComplete(t *testing.T) {
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			at := p.Topic + "/" + p.Form
			if p.Statement == "" || p.Ask == "" || len(p.Given) == 0 || len(p.Steps) < 1 ||
				len(p.Wrong) < leastWrong || p.Answer.Text == "" {
				t.Errorf("%s is incomplete: %+v", at, p)
			}
			seen := map[string]bool{p.Answer.Text: true}
			for i, w := range p.Wrong {
				for _, other := range p.Wrong[:i] {
					if !p.Answer.Words && p.Answer.near(w.Value, other.Value) {
						t.Errorf("%s: the wrong answers %s and %s are one", at, other.Text, w.Text)
					}
				}
				if seen[w.Text] {
					t.Errorf("%s: the wrong answer %s stands twice", at, w.Text)
				}
				if w.Mistake == "" {
					t.Errorf("%s: no mistake behind %s", at, w.Text)
				}
				seen[w.Text] = true
			}
			names := map[string]bool{}
			for _, given := range p.Given {
				if names[given.Name] {
					t.Errorf("%s: %s is given twice", at, given.Name)
				}
				names[given.Name] = true
			}
		}
		text := s.markdown(true)
		for _, bad := range []string{"%!", "NaN", "Inf", "<nil>", "{", "}"} {
			if i := strings.Index(text, bad); i >= 0 {
				t.Errorf("the set holds %q: %s", bad, text[max(0, i-60):min(len(text), i+60)])
			}
		}
	})
}

// What each simple rule would tick, of the values of four numeric choices or the
// texts of four others.
var rules = map[string]func(p Problem) []int{
	"largest":  func(p Problem) []int { return extremes(p, func(v float64) float64 { return v }) },
	"smallest": func(p Problem) []int { return extremes(p, func(v float64) float64 { return -v }) },
	"middle": func(p Problem) []int {
		if p.Answer.Words {
			return []int{0, 1, 2, 3}
		}
		values := choiceValues(p)
		ranked := slices.Sorted(slices.Values(values))
		return []int{slices.Index(values, ranked[1]), slices.Index(values, ranked[2])}
	},
	"roundest": func(p Problem) []int {
		return extremes(p, func(v float64) float64 { return roundness(v, p.Answer.Places) })
	},
	"longest": func(p Problem) []int {
		return best(p, func(i int) float64 { return float64(len([]rune(p.Choices[i].Text))) })
	},
	"shortest": func(p Problem) []int {
		return best(p, func(i int) float64 { return -float64(len([]rune(p.Choices[i].Text))) })
	},
	"first": func(Problem) []int { return []int{0} },
	"last":  func(Problem) []int { return []int{3} },
	"in the middle of the range": func(p Problem) []int {
		if p.Answer.Words {
			return []int{0, 1, 2, 3}
		}
		values := choiceValues(p)
		middle := (slices.Min(values) + slices.Max(values)) / 2
		return extremes(p, func(v float64) float64 { return -math.Abs(v - middle) })
	},
}

func choiceValues(p Problem) []float64 {
	var out []float64
	for _, c := range p.Choices {
		out = append(out, figure(c.Text))
	}
	return out
}

func best(p Problem, score func(i int) float64) []int {
	most, out := math.Inf(-1), []int(nil)
	for i := range p.Choices {
		switch s := score(i); {
		case s > most+1e-9:
			most, out = s, []int{i}
		case s > most-1e-9:
			out = append(out, i)
		}
	}
	return out
}

func extremes(p Problem, score func(v float64) float64) []int {
	if p.Answer.Words {
		return []int{0, 1, 2, 3}
	}
	values := choiceValues(p)
	return best(p, func(i int) float64 { return score(values[i]) })
}

// roundness counts how many fives and tens a number is divisible by.
func roundness(v float64, places int) float64 {
	n := math.Round(math.Abs(v) * math.Pow10(places))
	out := 0.0
	for n != 0 && math.Mod(n, 5) == 0 && out < 12 {
		if math.Mod(n, 10) == 0 {
			n, out = n/10, out+2
			continue
		}
		n, out = n/5, out+1
	}
	return out
}

// No simple rule finds the right one of four better than chance, 25 %, and five
// points more over all topics, twenty in any one topic, or thirty in any one form.
func TestNoRuleFindsTheAnswer(t *testing.T) {
	const overAll, ofOne, ofForm = 0.05, 0.20, 0.30
	hits, asked := map[string]map[string]float64{}, map[string]float64{}
	seeds := uint64(12)
	if testing.Short() {
		seeds = 6
	}
	for _, o := range styles[:2] {
		for o.Difficulty = 1; o.Difficulty <= 3; o.Difficulty++ {
			for o.Seed = 100; o.Seed < 100+seeds; o.Seed++ {
				o.Choices, o.PerTopic = true, 8
				for _, p := range mustGenerate(t, o).Problems {
					right := slices.IndexFunc(p.Choices, func(c Choice) bool { return c.Right })
					for _, topic := range []string{"all", p.Topic, p.Topic + "/" + p.Form} {
						asked[topic]++
						for rule, pick := range rules {
							if hits[topic] == nil {
								hits[topic] = map[string]float64{}
							}
							if picked := pick(p); slices.Contains(picked, right) {
								hits[topic][rule] += 1 / float64(len(picked))
							}
						}
					}
				}
			}
		}
	}
	for topic, n := range asked {
		limit := 0.25 + ofOne
		switch {
		case topic == "all":
			limit = 0.25 + overAll
		case strings.Contains(topic, "/"):
			if testing.Short() {
				continue // too few to tell by
			}
			limit = 0.25 + ofForm
		}
		for rule, hit := range hits[topic] {
			if hit/n > limit {
				t.Errorf("%s: the %s choice is right in %.0f %% of %.0f problems", topic, rule,
					100*hit/n, n)
			}
		}
	}
	worst, where := 0.0, ""
	for topic, n := range asked {
		for rule, hit := range hits[topic] {
			if topic != "all" && !strings.Contains(topic, "/") && hit/n > worst {
				worst, where = hit/n, topic+", the "+rule
			}
		}
	}
	t.Logf("the most in one topic is %.1f %%: %s", 100*worst, where)
	for rule, hit := range hits["all"] {
		t.Logf("%-28s %.1f %%", rule, 100*hit/asked["all"])
	}
}

// What is said to be half or twice of the answer is that.
func TestHalfAndTwice(t *testing.T) {
	share := map[string]float64{"half": 0.5, "twice": 2}
	told := 0
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			for _, w := range p.Wrong {
				want := share[w.Code] * p.Answer.Value
				if want == 0 || p.Answer.Words {
					continue
				}
				told++
				if math.Abs(w.Value-want) > 0.003*math.Abs(want) {
					t.Errorf("%s/%s: %s beside %s: %s",
						p.Topic, p.Form, w.Text, p.Answer.Text, w.Mistake)
				}
			}
		}
	})
	if told < 100 {
		t.Errorf("only %d of them", told)
	}
}

// Choices are of like size and sign, and none but the right one is within its
// margin.
func TestChoicesAreAlike(t *testing.T) {
	for _, o := range styles {
		for o.Difficulty = 1; o.Difficulty <= 3; o.Difficulty++ {
			o.Choices, o.PerTopic, o.Seed = true, 4, 11
			for _, p := range mustGenerate(t, o).Problems {
				right := 0
				for _, c := range p.Choices {
					if c.Feedback == "" {
						t.Errorf("%s/%s: no feedback for %s", p.Topic, p.Form, c.Text)
					}
					if c.Right {
						right++
						continue
					}
					if p.Answer.Words {
						continue
					}
					if f := figure(c.Text) / p.Answer.Value; !(f > 0.9/alike && f < 1.1*alike) {
						t.Errorf("%s/%s: %s beside %s", p.Topic, p.Form, c.Text, p.Answer.Text)
					}
					off := math.Abs(figure(c.Text) - figure(p.Answer.Text))
					if off <= p.Answer.Margin() {
						t.Errorf("%s/%s: %s passes for %s", p.Topic, p.Form, c.Text, p.Answer.Text)
					}
				}
				if len(p.Choices) != 4 || right != 1 {
					t.Errorf("%s/%s: %d choices, %d right", p.Topic, p.Form, len(p.Choices), right)
				}
			}
		}
	}
}

// Every topic has four forms at least, each in both languages with the same
// values, and its function.
func TestFormsAndTheirTexts(t *testing.T) {
	for _, topic := range topics {
		text := texts[topic.name]
		if len(topic.forms) < 4 || len(topic.forms) != len(text.forms) {
			t.Errorf("%s has %d forms and texts for %d",
				topic.name, len(topic.forms), len(text.forms))
		}
		check := func(at string, words both) {
			en := slices.Sorted(slices.Values(placeholder.FindAllString(words[0], -1)))
			es := slices.Sorted(slices.Values(placeholder.FindAllString(words[1], -1)))
			if !slices.Equal(slices.Compact(en), slices.Compact(es)) {
				t.Errorf("%s %s: %v in English and %v in Spanish", topic.name, at, en, es)
			}
		}
		for name, words := range text.words {
			check(name, words)
		}
		for name, form := range text.forms {
			check(name, form.say)
			check(name, form.ask)
			check(name, form.note)
			for _, s := range form.steps {
				check(name, s.words)
			}
			for word, words := range form.words {
				check(name+" "+word, words)
			}
			if form.say[0] == form.say[1] || form.ask[0] == form.ask[1] {
				t.Errorf("%s/%s is not in Spanish", topic.name, name)
			}
		}
	}
}

// The words of a topic with words for its answer agree with what the library says
// of the readings.
func TestDiagnosesByTheModel(t *testing.T) {
	for seed := uint64(1); seed <= 3; seed++ {
		set := mustGenerate(t, Options{Seed: seed, PerTopic: 8, Topics: []string{"diagnosis"},
			Difficulty: 2, Choices: true})
		for _, p := range set.Problems {
			switch p.Form {
			case "restrictor", "valve":
				var moved [5]float64
				for i, row := range p.Tables[0].Rows {
					moved[i] = figure(row[2]) - figure(row[1])
				}
				cause, err := nearestFault(p.Form == "valve", moved)
				if cause == "restriction" {
					cause = "liquid-line"
					if p.Form == "valve" {
						cause = "before-coil"
					}
				}
				if err != nil || !strings.Contains(p.rightCode, cause) {
					t.Errorf("the model says %q of %s (%v)", cause, p.rightCode, err)
				}
			case "instrument":
				cause, err := doubted(p)
				if err != nil || cause != p.rightCode {
					t.Errorf("the assessment names %q, not %q (%v)", cause, p.rightCode, err)
				}
			}
		}
	}
}

func TestBadOptions(t *testing.T) {
	for _, args := range [][]string{
		{"-topics", "astrology"}, {"-refrigerants", "R-999"}, {"-refrigerants", ""}, {"-each", "0"},
		{"-difficulty", "9"}, {"-units", "cgs"}, {"-format", "pdf"}, {"-refrigerants", "R-718"},
		{"-nonsense"}, {"-seed", "one"}, {"-seed", "-1"}, {"superheat"}, {"-language", "fr"},
		{"-pressure", "bar"}, {"-pressure", "torr", "-units", "SI"},
		{"-topics", "glide", "-refrigerants", "R-22"}, {"-topics", "target/charge"},
		{"-each", "51"}, {"-topics", "target/"},
	} {
		var out, problems strings.Builder
		if status := run(args, &out, &problems); status != 2 || out.Len() != 0 ||
			strings.Count(problems.String(), "\n") != 1 {
			t.Errorf("%v: status %d, %d bytes out, problem %q", args, status, out.Len(),
				problems.String())
		}
	}
}

func TestHelpAndList(t *testing.T) {
	for _, args := range [][]string{{"-help"}, {"-list"}, {"-list", "-language", "es"}} {
		told := English
		if len(args) == 3 {
			told = Spanish
		}
		var out, problems strings.Builder
		if status := run(args, &out, &problems); status != 0 || problems.Len() != 0 {
			t.Errorf("%v: status %d, problem %q", args, status, problems.String())
		}
		for _, topic := range topics {
			if !strings.Contains(out.String(), topic.name) ||
				!strings.Contains(out.String(), texts[topic.name].about.in(told)) {
				t.Errorf("%v does not tell of %s", args, topic.name)
			}
		}
	}
}

// Choices and the language do not change the problems.
func TestSameProblems(t *testing.T) {
	o := Options{Seed: 5, PerTopic: 4, Difficulty: 2}
	plain := mustGenerate(t, o)
	o.Choices = true
	ticked := mustGenerate(t, o)
	o.Language = Spanish
	spanish := mustGenerate(t, o)
	letters := map[string]int{}
	for i, p := range ticked.Problems {
		if p.Statement != plain.Problems[i].Statement || p.Answer != plain.Problems[i].Answer {
			t.Errorf("%s/%s: choices changed the problem", p.Topic, p.Form)
		}
		other := spanish.Problems[i]
		if p.Answer.Value != other.Answer.Value || p.Letter() != other.Letter() ||
			p.rightCode != other.rightCode {
			t.Errorf("%s/%s: the language changed the problem", p.Topic, p.Form)
		}
		letters[p.Letter()]++
	}
	if len(letters) != 4 {
		t.Errorf("the right answers have only these letters: %v", letters)
	}
	// A topic draws the same numbers whichever other topics are in the set.
	o = Options{Seed: 5, PerTopic: 4, Difficulty: 2, Topics: []string{"superheat"}}
	alone := mustGenerate(t, o)
	if !strings.Contains(plain.markdown(false), alone.Problems[0].Statement) {
		t.Error("choosing a topic changed its problems")
	}
}

// A set's own line makes it again, and a form asked for comes alone.
func TestTheLineOfASet(t *testing.T) {
	for _, o := range append(slices.Clone(kept), Options{Seed: 3, Difficulty: 2, PerTopic: 5,
		Topics: []string{"standing/judge", "target/apart", "standing/partial", "glide"}}) {
		set := mustGenerate(t, o)
		var out, problems strings.Builder
		if status := run(strings.Fields(set.Options.Command()), &out, &problems); status != 0 ||
			out.String() != set.markdown(false) {
			t.Errorf("%s: status %d, another set, %s",
				set.Options.Command(), status, problems.String())
		}
		for _, p := range set.Problems {
			if len(o.Topics) > 0 && !slices.Contains(o.Topics, p.Topic+"/"+p.Form) &&
				p.Topic != "glide" {
				t.Errorf("%s/%s was not asked for", p.Topic, p.Form)
			}
		}
	}
}

// Each level asks for more than the one below, in every form.
func TestLevelsDiffer(t *testing.T) {
	forms := func(level int) map[string]string {
		out := map[string]string{}
		set := mustGenerate(t, Options{Seed: 3, PerTopic: 4, Difficulty: level})
		for _, p := range set.Problems {
			var names []string
			for _, g := range p.Given {
				names = append(names, g.Name)
			}
			between := strings.Contains(fmt.Sprint(p.Steps), "between")
			commas := 0
			if p.Answer.Words {
				commas = strings.Count(p.Answer.Text, ",")
			}
			out[p.Topic+"/"+p.Form] = fmt.Sprint(
				names, len(p.Tables), len(p.Steps), between, commas)
		}
		return out
	}
	low, middle, high := forms(1), forms(2), forms(3)
	for name := range low {
		if low[name] == middle[name] || middle[name] == high[name] {
			t.Errorf("%s: two levels ask the same: %s, %s, %s", name, low[name], middle[name],
				high[name])
		}
	}
}

// The forms of a topic take turns, and no problem is asked twice where there are
// others to ask.
func TestNoProblemTwice(t *testing.T) {
	set := mustGenerate(t, Options{Seed: 1, PerTopic: 12, Difficulty: 2})
	seen, forms := map[string]int{}, map[string]bool{}
	for _, p := range set.Problems {
		same := fmt.Sprint(p.Statement, p.Given, p.Tables)
		if n := seen[same]; n != 0 {
			t.Errorf("%d %s/%s is problem %d again", p.Number, p.Topic, p.Form, n)
		}
		seen[same] = p.Number
		forms[p.Topic+"/"+p.Form] = true
	}
	for _, topic := range topics {
		for _, f := range topic.forms {
			if !forms[topic.name+"/"+f.name] {
				t.Errorf("%s/%s was never asked", topic.name, f.name)
			}
		}
	}
}

// The margin of the key covers what its own print rounds away, is never nothing,
// and lets no wrong answer pass. That of the chart is the wider.
func TestMarginsCoverThePrint(t *testing.T) {
	charted := 0
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			if p.Answer.Words {
				continue
			}
			a, printed := p.Answer, figure(p.Answer.Text)
			if !(a.Margin() > 0) ||
				!(math.Abs(printed-a.Value)+a.Within <= a.Margin()*(1+1e-9)) {
				t.Errorf("%s/%s: %s, exactly %g within %g, is to be accepted within %s", p.Topic,
					p.Form, a.Text, a.Value, a.Within, p.Accept())
			}
			for _, w := range p.Wrong {
				if math.Abs(figure(w.Text)-printed) <= max(a.Margin(), a.ChartMargin()) {
					t.Errorf("%s/%s: the wrong answer %s is accepted: %s %s",
						p.Topic, p.Form, w.Text, a.Text, p.Accept())
				}
			}
			if p.charted() != (a.ByChart > 0) || p.charted() && a.ByChart < a.Within {
				t.Errorf("%s/%s: within %g by the table and %g by the chart", p.Topic, p.Form,
					a.Within, a.ByChart)
			}
			if p.charted() {
				charted++
			}
			if !strings.Contains(s.markdown(false), p.tolerance()) || p.tolerance() == "" {
				t.Errorf("%s/%s: the sheet does not state its tolerance", p.Topic, p.Form)
			}
		}
	})
	if charted == 0 {
		t.Error("no problem goes by a chart")
	}
}

// The page needs nothing from elsewhere, has each chart that a problem needs
// once, and keeps the answers of a set without key to itself.
func TestPage(t *testing.T) {
	for _, language := range []Language{English, Spanish} {
		set := mustGenerate(t, Options{Seed: 2, PerTopic: 3, Difficulty: 3, Language: language})
		plain, err := set.html(false)
		if err != nil {
			t.Fatal(err)
		}
		whole, err := set.html(true)
		if err != nil {
			t.Fatal(err)
		}
		needed := map[chartKey]bool{}
		for _, p := range set.Problems {
			if p.charted() {
				needed[p.chartKey()] = true
			}
			for _, w := range p.Wrong {
				if len(w.Mistake) > 30 && strings.Contains(plain, escaped(w.Mistake)) {
					t.Errorf("the page without key tells a mistake: %s", w.Mistake)
				}
			}
		}
		if n := strings.Count(plain, "<figure>"); n != len(needed) || n == 0 {
			t.Errorf("%d charts where %d are needed", n, len(needed))
		}
		for _, text := range []string{plain, whole} {
			for _, bad := range []string{
				"src=", "href=\"http", "@import", "url(", "<?xml", "ZgotmplZ", "{{", "NaN",
			} {
				if strings.Contains(text, bad) {
					t.Errorf("the page holds %q", bad)
				}
			}
			for _, part := range []string{"<main>", `<th scope="row">`, "<math>", set.Name(),
				`<html lang="` + string(language) + `"`} {
				if !strings.Contains(text, part) {
					t.Errorf("the page has no %s", part)
				}
			}
		}
		if strings.Contains(plain, "<section class=\"key\">") {
			t.Error("the page without key has one")
		}
	}
}

// A calculation becomes MathML with fractions where it divides.
func TestMathML(t *testing.T) {
	for sum, want := range map[string]string{
		"": "", "62 °F − 40 °F = 22 °F": "<math><mn>62</mn><mtext>\u00a0°F</mtext><mo>−</mo>" +
			"<mn>40</mn><mtext>\u00a0°F</mtext><mo>=</mo><mn>22</mn><mtext>\u00a0°F</mtext></math>",
		"(a + b) / c": "<math><mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mrow><mi>c</mi>" +
			"</mrow></mfrac></math>",
		"2 × (a − b)²": "<math><mn>2</mn><mo>×</mo><msup><mrow><mo>(</mo><mi>a</mi><mo>−</mo>" +
			"<mi>b</mi><mo>)</mo></mrow><mn>2</mn></msup></math>",
	} {
		if want != "" {
			want = `<span class="sum">` + want + "</span>"
		}
		if got := string(mathML(sum)); got != want {
			t.Errorf("%s: %s", sum, got)
		}
	}
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			for _, step := range p.Steps {
				m := string(mathML(step.Sum))
				wellFormed(t, "<div>"+m+"</div>")
				if strings.Contains(m, "<mtext>(") || strings.Contains(m, "<mtext>)") {
					t.Errorf("%s/%s: %s", p.Topic, p.Form, m)
				}
			}
		}
	})
}

// The cautions of a set name what burns and what poisons.
func TestCautions(t *testing.T) {
	for _, c := range []struct{ fluid, says string }{
		{"R-32", "R-32: flammable"}, {"R-717", "R-717: toxic"}, {"R-717", "R-717: flammable"},
	} {
		set := mustGenerate(t, Options{Seed: 1, Topics: []string{"superheat"},
			Refrigerants: []string{c.fluid}})
		if !strings.Contains(set.markdown(false), c.says) {
			t.Errorf("a set on %s does not say %q", c.fluid, c.says)
		}
	}
	set := mustGenerate(t, Options{Seed: 1, Topics: []string{"superheat"},
		Refrigerants: []string{"R-410A"}})
	text := strings.Split(set.markdown(false), "\n---\n")[1]
	if strings.Contains(text, "flammable") {
		t.Error("a set on R-410A warns of fire")
	}
	for _, topic := range topics {
		set := mustGenerate(t, Options{Seed: 1, PerTopic: 4, Topics: []string{topic.name}})
		for _, p := range set.Problems {
			switch p.Topic {
			case "target", "dosing", "recovery", "cylinder", "evacuation", "nitrogen", "weighin",
				"blend-leak", "safety", "capacitor", "wire", "phases", "standing":
				if p.Caution == "" {
					t.Errorf("%s/%s has no caution", p.Topic, p.Form)
				}
			}
		}
	}
}

// A seed stays its set within a major version: the sums of the sets are kept with
// the version that made them, and only another first number may change them.
func TestASeedStaysItsSet(t *testing.T) {
	const file = "testdata/sets.json"
	type sums struct {
		Major string            `json:"major"`
		Sets  map[string]string `json:"sets"`
	}
	now := sums{Major: strings.Split(Version, ".")[0], Sets: map[string]string{}}
	for _, o := range kept {
		set := mustGenerate(t, o)
		for _, p := range set.Problems {
			// What a set is: the problems and their answers, not how they are worded.
			var facts []string
			for _, g := range p.Given {
				facts = append(facts, g.Value)
			}
			now.Sets[set.Options.Command()] += fmt.Sprintf("%08x", uint32(hash(fmt.Sprint(
				p.Topic, p.Form, facts, p.Answer.Value, p.rightCode, p.Letter(),
			))))
		}
		command := set.Options.Command()
		now.Sets[command] = fmt.Sprintf("%016x", hash(now.Sets[command]))
	}
	text, err := json.MarshalIndent(now, "", "\t")
	if err != nil {
		t.Fatal(err)
	}
	var then sums
	if old, err := os.ReadFile(file); err == nil {
		if err := json.Unmarshal(old, &then); err != nil {
			t.Fatal(err)
		}
	}
	if *update {
		if then.Major == now.Major && fmt.Sprint(then.Sets) != fmt.Sprint(now.Sets) &&
			then.Major != "" && !*unreleased {
			t.Fatalf("the sets of version %s.x changed: raise the first number of Version",
				now.Major)
		}
		if err := os.WriteFile(file, append(text, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if now.Major != then.Major {
		t.Fatalf("the sets are kept of version %s; go test -run ASeed -update", then.Major)
	}
	for name, sum := range now.Sets {
		if then.Sets[name] != sum {
			t.Errorf("%s is another set than it was in this major version", name)
		}
	}
}

var unreleased = flag.Bool("unreleased", false,
	"with -update: write the sets of a major version anew that nobody has yet")

// Sets come out over all options: two thousand with -long.
func TestManySets(t *testing.T) {
	n := uint64(30)
	if *long {
		n = 2000
	}
	fluids := [][]string{{"R-410A", "R-22", "R-407C"}, {"R-32"}, {"R-454B"}, {"R-22"}, {"R-134a"},
		{"R-290"}, roster, {"R-407C", "R-404A"}, {"R-1234yf"}, {"R-717"}}
	problems, made := 0, 0
	for i := range n {
		o := styles[i%3]
		o.Seed, o.Difficulty, o.PerTopic = 1000+i*7919, 1+int(i/3%3), 1+int(i%4)
		o.Choices, o.Refrigerants = i%2 == 0, fluids[i%uint64(len(fluids))]
		o.Language = [...]Language{English, Spanish}[i/2%2]
		set, err := Generate(o)
		if err != nil {
			t.Errorf("%s: %v", o.Command(), err)
			continue
		}
		made++
		problems += len(set.Problems)
		f := formats[i%uint64(len(formats))]
		if f.name == "html" && i%7 != 0 { // the charts of a page take their time
			f = formats[0]
		}
		if f.quiz && !o.Choices {
			f = formats[0]
		}
		text, err := f.write(set, true)
		if err != nil || text == "" ||
			strings.Contains(text, "%!") && !strings.HasPrefix(f.name, "qti") {
			t.Errorf("%s as %s: %v", o.Command(), f.name, err)
		}
	}
	t.Logf("%d sets of %d, %d problems", made, n, problems)
}

// Whatever the options, there is a set on standard output or one line on standard
// error.
func FuzzOptions(f *testing.F) {
	f.Add("superheat,target", "R-22, R-407C", "SI", "html", "bar", 1, 2)
	f.Add("", "r410a", "ip", "gift", "", 1, 3)
	f.Add("glide", "R-22", "IP", "markdown", "kPa", 1, 1)
	f.Add("\n", "R-\n", "", "\n", "\n", 0, -1)
	f.Fuzz(func(
		t *testing.T, topics, fluids, units, format, pressure string, each, difficulty int,
	) {
		each = min(each, 2) // for the sake of time
		var out, problems strings.Builder
		status := run([]string{
			"-topics", topics, "-refrigerants", fluids, "-units", units, "-format", format,
			"-pressure", pressure, "-each", fmt.Sprint(each), "-difficulty",
			fmt.Sprint(difficulty), "-key",
		}, &out, &problems)
		switch {
		case status == 0 && out.Len() > 0 && problems.Len() == 0:
		case status == 2 && out.Len() == 0 && strings.Count(problems.String(), "\n") == 1 &&
			strings.HasSuffix(problems.String(), "\n"):
		default:
			t.Errorf("status %d, %d bytes out, problem %q", status, out.Len(), problems.String())
		}
	})
}
