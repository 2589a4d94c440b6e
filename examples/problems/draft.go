package main

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
)

// A topic is a file of data beside a function for each of its forms.
type topic struct {
	name  string
	forms []form
	// glides says that it takes a refrigerant that glides.
	glides bool
}

// A form is one way to put the question of a topic. Its function draws the
// numbers, gives the facts, and works out the answer and what mistakes lead to.
type form struct {
	name string
	make func(*generator, *draft) error
}

// A draft is a problem in the making.
type draft struct {
	Problem
	g     *generator
	form  *formText
	topic *topicText
	bound map[string]string
	given []givenNumber
	err   error
	// reasoned says that the form gives the reasons of its choices itself.
	reasoned bool
	kept     []Wrong
}

// A givenNumber is a fact with a number, for the mistake of taking one for another.
type givenNumber struct {
	name  string
	value float64
	unit  string
}

// draw makes one problem of a form.
func (g *generator) draw(topicName string, f form) (Problem, error) {
	t := texts[topicName]
	if t == nil || t.forms[f.name] == nil {
		return Problem{}, fmt.Errorf("form %s of topic %s has no text", f.name, topicName)
	}
	d := &draft{g: g, topic: t, form: t.forms[f.name], bound: map[string]string{}}
	d.Topic, d.Form, d.language = topicName, f.name, g.options.Language
	d.Title = t.title.in(d.language)
	if err := f.make(g, d); err != nil {
		return Problem{}, err
	}
	d.bound["answer"] = d.Answer.Text
	for _, s := range d.form.steps {
		text, ok := d.fill(s.words)
		sum, has := d.fill(both{s.sum, s.sum})
		if ok && has {
			source, known := common.words["source-"+s.source]
			if !known {
				return Problem{}, fmt.Errorf("no source %q", s.source)
			}
			d.Steps = append(d.Steps, Step{sentence(text), sum, source.in(d.language)})
		}
	}
	for _, w := range []struct {
		from both
		to   *string
	}{{d.form.say, &d.Statement}, {d.form.ask, &d.Ask}, {d.form.note, &d.Answer.Note}} {
		text, ok := d.fill(w.from)
		if !ok {
			return Problem{}, fmt.Errorf("not every value is bound: %s", text)
		}
		*w.to = text
	}
	if d.form.caution != "" {
		d.Caution = say(d.language, "caution-"+d.form.caution)
	}
	return d.Problem, d.err
}

var placeholder = regexp.MustCompile(`\{([a-z0-9-]+)\}`)

// fill puts the values of the draft for the names in braces.
func (d *draft) fill(words both) (text string, ok bool) {
	ok = true
	text = placeholder.ReplaceAllStringFunc(words.in(d.language), func(s string) string {
		v, is := d.bound[s[1:len(s)-1]]
		if !is {
			ok = false
			return s
		}
		return v
	})
	return text, ok
}

// word is a word of the form, of its topic, or of all.
func (d *draft) word(key string) (string, bool) {
	for _, words := range []map[string]both{d.form.words, d.topic.words, common.words} {
		if w, ok := words[key]; ok {
			return d.fill(w)
		}
	}
	return "", false
}

// phrase binds a name to a word of the file.
func (d *draft) phrase(name, key string) {
	text, ok := d.word(key)
	if !ok {
		d.err = fmt.Errorf("no word %q, or a value of it is missing", key)
	}
	d.bound[name] = text
}

// set binds a name to a value without giving it among the facts.
func (d *draft) set(name string, v float64, u unit) float64 {
	d.bound[name] = u.print(v)
	return rounded(v, u.places)
}

// figure binds a name to a bare number.
func (d *draft) figure(name string, v float64, places int) float64 {
	d.bound[name] = unit{places: places, free: true}.number(v)
	return rounded(v, places)
}

// give binds a name to a value and puts it among the facts. It returns the value
// as it is printed.
func (d *draft) give(name string, v float64, u unit) float64 {
	d.fact(name, d.set(name, v, u), u)
	return rounded(v, u.places)
}

func (d *draft) fact(name string, v float64, u unit) {
	d.giveText(name, d.bound[name])
	d.given = append(d.given, givenNumber{name, v, u.symbol})
}

// giveText puts words among the facts.
func (d *draft) giveText(name, text string) {
	d.bound[name] = text
	label, ok := d.word("name-" + name)
	if !ok {
		d.err = fmt.Errorf("no word name-%s", name)
	}
	d.Given = append(d.Given, Given{label, text})
}

// answer is a number in a unit, right within a margin. The margin has two
// figures, and is never less than the print rounds away.
func (d *draft) answer(v, within float64, u unit) {
	if !(math.Abs(v) < 1e9) {
		d.err = errAgain
		return
	}
	within = max(within, 0.5*math.Pow10(-u.places))
	figures := math.Pow10(1 - int(math.Floor(math.Log10(within))))
	d.Answer = Answer{
		Value: v, Within: math.Ceil(within*figures-1e-9) / figures,
		Unit: u.symbol, Places: u.places,
	}
	d.Answer.Text = d.Answer.print(v)
	d.bound["answer"] = d.Answer.Text
}

// wrong is the number that a mistake leads to, printed as the answer is.
func (d *draft) wrong(key string, v float64) {
	text, ok := d.word(key)
	if !ok {
		d.err = fmt.Errorf("form %s: no word %q, or a value of it is missing", d.Form, key)
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return
	}
	d.Wrong = append(d.Wrong, Wrong{
		Code: key, Text: d.Answer.print(v), Mistake: text, Value: v})
}

// taken adds, for a formula of facts, the mistakes of taking one fact for another
// of the same unit. work is the formula.
func (d *draft) taken(work func(of map[string]float64) float64, used ...string) {
	values := map[string]float64{}
	for _, f := range d.given {
		values[f.name] = f.value
	}
	right := work(values)
	if math.Abs(right-d.Answer.Value) > max(d.Answer.Within, 1e-6) {
		d.err = fmt.Errorf("form %s: the formula gives %g and the answer is %g",
			d.Form, right, d.Answer.Value)
	}
	add := func(key string, pairs []string, changed map[string]float64) {
		if v := work(changed); !math.IsNaN(v) && !math.IsInf(v, 0) {
			d.Wrong = append(d.Wrong, Wrong{Code: key, Text: d.Answer.print(v),
				Mistake: say(d.language, key, pairs...), Value: v})
		}
	}
	for _, a := range d.given {
		if !slices.Contains(used, a.name) {
			continue
		}
		for _, b := range d.given {
			if a.name == b.name || a.unit != b.unit {
				continue
			}
			nameA, _ := d.word("name-" + a.name)
			nameB, _ := d.word("name-" + b.name)
			changed := map[string]float64{}
			for k, v := range values {
				changed[k] = v
			}
			changed[a.name] = b.value
			add("taken", []string{"a", nameA, "b", nameB}, changed)
			if slices.Contains(used, b.name) && a.name < b.name {
				changed[b.name] = a.value
				add("swapped", []string{"a", nameA, "b", nameB}, changed)
			}
		}
	}
}

// choice makes the answer one of some named words; the others are wrong for the
// reason that stands beside their name as why-NAME, or for this answer as
// why-NAME-ANSWER.
func (d *draft) choice(right string, all ...string) {
	text, ok := d.word(right)
	if !ok {
		d.err = fmt.Errorf("form %s: no choice %q", d.Form, right)
	}
	d.rightCode = right
	d.Answer = Answer{Text: text, Words: true}
	for _, other := range all {
		if other == right {
			continue
		}
		text, ok := d.word(other)
		why, reason := d.word("why-" + other + "-" + right)
		if !reason {
			why, reason = d.word("why-" + other)
		}
		if !ok || !reason && !d.reasoned {
			d.err = fmt.Errorf("form %s: choice %q has no words or no reason", d.Form, other)
		}
		d.Wrong = append(d.Wrong, Wrong{Code: other, Text: text, Mistake: why})
	}
	// The pool is shuffled by its words, so that no order of the file shows.
	slices.SortFunc(d.Wrong, func(a, b Wrong) int { return strings.Compare(a.Code, b.Code) })
}

// table adds an excerpt.
func (d *draft) table(t Table) { d.Tables = append(d.Tables, t) }

// wrongLater keeps a mistake until the answer is known whose form it is printed
// in; later adds those kept.
func (d *draft) wrongLater(key string, v float64) {
	d.kept = append(d.kept, Wrong{Code: key, Value: v})
}

func (d *draft) later() {
	slices.SortStableFunc(d.kept, func(a, b Wrong) int { return strings.Compare(a.Code, b.Code) })
	for _, w := range d.kept {
		d.wrong(w.Code, w.Value)
	}
	d.kept = nil
}

// must is a word that the file has to have.
func (d *draft) must(key string) string {
	text, ok := d.word(key)
	if !ok {
		d.err = fmt.Errorf("form %s: no word %q", d.Form, key)
	}
	return text
}
