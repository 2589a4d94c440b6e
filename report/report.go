// Package report writes an assessment for somebody to read: the technician at the machine, the
// file, or the owner; as plain text, Markdown, or a page of HTML that prints on one sheet. It
// stands apart from package satline so that a program which wants values carries no templates.
package report

import (
	"io"
	"slices"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/page/paper"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity/fact"
	"golang.org/x/text/language"
)

// A Picture goes with a report that can hold it.
type Picture struct {
	Caption string
	SVG     []byte
}

// Text writes a plain text report in the language and the units of the assessment. The
// error is the writer's.
func Text(w io.Writer, a satline.Assessment, to Audience) error {
	_, err := io.WriteString(w, document(&a, to, nil).Text())
	return err
}

// Markdown writes the report for an audience as CommonMark with tables.
// Pictures stand in it as data, so that the file is whole by itself; a reader that
// shows no such pictures shows their captions. The error is the writer's.
func Markdown(w io.Writer, a satline.Assessment, to Audience, pictures ...Picture) error {
	_, err := io.WriteString(w, document(&a, to, pictures).Markdown())
	return err
}

// HTML writes the report for an audience as one HTML page that stands by
// itself and prints on one sheet of letter or A4 paper: the more there is to say, the
// smaller its print, down to 5.6 points. Pictures are drawn into it; their
// SVG is taken as it is, so give only drawings of your own making. The error is
// the writer's.
func HTML(w io.Writer, a satline.Assessment, to Audience, pictures ...Picture) error {
	return document(&a, to, pictures).WriteHTML(w)
}

// A reporter lays an assessment out for somebody.
type reporter struct {
	a    *satline.Assessment
	book *words.Book
}

func (r reporter) say(code fact.Code, values ...fact.Value) string {
	return r.book.Say(fact.New(code, values...))
}

func document(a *satline.Assessment, to Audience, pictures []Picture) paper.Document {
	r := reporter{a, words.In(language.Make(string(a.Language)), a.Units)}
	base, _ := r.book.Language().Base()
	d := paper.Document{Lang: base.String(), Title: a.Title}
	if d.Title == "" {
		d.Title = r.book.Term("report.title")
	}
	switch to {
	case Owner:
		d.Blocks = r.owner()
	case File:
		d.Lines = r.head()
		d.Blocks = []paper.Block{
			r.answer(), r.dangers(true), r.plan(true), r.electrical(true), r.charge(true),
			r.findings(4), r.question(), r.readings(), r.derived(), r.airAndIce(), r.cautions(),
		}
	default:
		d.Blocks = []paper.Block{
			r.answer(), r.dangers(false), r.plan(false), r.electrical(false), r.charge(false),
			r.findings(2), r.readings(), r.derived(), r.airAndIce(), r.cautions(),
		}
		d.Lines = r.head()
	}
	if a.Notes != "" && to != Owner {
		d.Blocks = append(
			d.Blocks,
			paper.Block{Heading: r.book.Term("heading.notes"), Paragraphs: []string{a.Notes}},
		)
	}
	if len(pictures) > 0 {
		d.Blocks = append(
			d.Blocks,
			paper.Block{Heading: r.book.Term("heading.pictures"), Pictures: drawings(pictures)},
		)
	}
	d.Blocks = slices.DeleteFunc(d.Blocks, paper.Block.Empty)
	return d
}

// drawings are pictures as the paper takes them.
func drawings(pictures []Picture) []paper.Picture {
	out := make([]paper.Picture, len(pictures))
	for i, p := range pictures {
		out[i] = paper.Picture(p)
	}
	return out
}

// head says in one line what the figures rest on.
func (r reporter) head() []string {
	a := r.a
	out := []string{
		r.say(
			"report.rests-on", fact.Of("fluid", a.Refrigerant.Designation),
			fact.Of("group", a.Refrigerant.SafetyGroup),
			fact.Amount("atmosphere", a.Atmosphere.Pressure.Value),
			fact.Of("source", fact.Term("atmosphere."+a.Atmosphere.Source)),
		),
	}
	if a.Refrigerant.Estimated {
		out = append(out, r.say("report.estimated"))
	}
	if a.Scope == satline.VerdictOnly {
		out = append(out, r.say("report.verdict-only"))
	}
	return out
}

func (r reporter) answer() paper.Block {
	return paper.Block{
		Heading:    r.book.Term("heading.answer"),
		Paragraphs: []string{r.a.Headline.Text},
	}
}

func (r reporter) dangers(why bool) paper.Block {
	b := paper.Block{Heading: r.book.Term("heading.dangers")}
	for i, d := range r.a.Dangers {
		it := paper.Item{Text: d.Says.Text}
		if why || i == 0 {
			it.Below = []string{d.Why.Text}
		}
		b.Items = append(b.Items, it)
	}
	return b
}

// headlines reports whether the headline is about a cause.
func (r reporter) headlines(cause string) bool {
	v, ok := r.a.Headline.Value("cause")
	return ok && cause != "" && v.Of == fact.Term("cause."+cause)
}

// plan lists the steps; a reason that the headline or a danger says already is left out.
func (r reporter) plan(all bool) paper.Block {
	b := paper.Block{Heading: r.book.Term("heading.plan"), Numbered: true}
	said := []string{r.a.Headline.Text}
	for _, d := range r.a.Dangers {
		said = append(said, d.Says.Text)
	}
	for _, s := range r.a.Plan {
		it := paper.Item{Text: s.Do.Text}
		if s.Why != nil && (all || !slices.Contains(said, s.Why.Text) && !r.headlines(s.Cause)) {
			it.Below = []string{s.Why.Text}
			said = append(said, s.Why.Text)
		}
		b.Items = append(b.Items, it)
	}
	return b
}

// electrical lists the checks: all for the file, else those that are not sound.
func (r reporter) electrical(all bool) paper.Block {
	b := paper.Block{Heading: r.book.Term("heading.electrical")}
	if r.a.Electrical == nil {
		return b
	}
	said := []string{r.a.Headline.Text}
	for _, d := range r.a.Dangers {
		said = append(said, d.Says.Text)
	}
	for _, c := range r.a.Electrical.Checks {
		if all || c.Outcome != fact.Sound && !slices.Contains(said, c.Says.Text) {
			it := paper.Item{Text: c.Says.Text}
			if all {
				it.Below = []string{r.book.Source(c.Source)}
			}
			b.Items = append(b.Items, it)
		}
	}
	return b
}

func (r reporter) charge(sources bool) paper.Block {
	c := &r.a.Charge
	b := paper.Block{Heading: r.book.Term("heading.charge")}
	if c.Reading != nil {
		b.Items = append(b.Items, paper.Item{Text: c.Reading.Says.Text})
		if t := c.Reading; sources && t.Target != nil {
			b.Items = append(
				b.Items,
				paper.Item{
					Text: r.say(
						"report.sources", fact.Of("target", r.book.Source(t.TargetSource)),
						fact.Of("band", r.book.Source(t.ToleranceSource)),
					),
				},
			)
		}
	}
	if c.Outcome != satline.ChargeNotJudged {
		b.Items = append(
			b.Items,
			paper.Item{
				Text: r.say(
					"report.chances", fact.Of("low", fact.Share(c.Low)),
					fact.Of("inBand", fact.Share(c.InBand)), fact.Of("high", fact.Share(c.High)),
				),
			},
		)
	}
	said := r.a.Mode.Mode == satline.Cooling || r.a.Headline.Code == "headline.not-judged"
	for _, w := range c.Why {
		if !(c.Outcome == satline.ChargeNotJudged && len(c.Why) == 1 && said) {
			b.Items = append(b.Items, paper.Item{Text: w.Text})
		}
	}
	if r.a.Dose != nil && sources {
		b.Items = append(
			b.Items,
			paper.Item{
				Text: r.say(
					"report.dose", fact.Of("inBand", fact.Share(r.a.Dose.InBand)),
					fact.Of("past", fact.Share(r.a.Dose.PastBand)),
				),
			},
		)
	}
	if s := r.a.Steadiness; s != nil {
		b.Items = append(b.Items, paper.Item{Text: s.Says.Text})
	}
	return b
}

// findings lists the causes, those that matter with what speaks for and against them.
func (r reporter) findings(evidence int) paper.Block {
	b := paper.Block{Heading: r.book.Term("heading.findings")}
	if c := r.a.Change; c != nil {
		b.Items = append(b.Items, paper.Item{Text: c.Says.Text, Below: texts(c.Moved)})
	}
	for i, f := range r.a.Findings {
		it := paper.Item{Text: f.Says.Text}
		if i == 0 || evidence > 2 && f.Chance > 0.1 {
			for _, s := range f.For[:min(evidence, len(f.For))] {
				it.Below = append(it.Below, r.say("report.for", fact.Of("sign", s.Text)))
			}
			for _, s := range f.Against[:min(evidence, len(f.Against))] {
				it.Below = append(it.Below, r.say("report.against", fact.Of("sign", s.Text)))
			}
		}
		if i < 3 || evidence > 2 {
			b.Items = append(b.Items, it)
		}
	}
	return b
}

func texts(facts []fact.Fact) []string {
	out := make([]string, len(facts))
	for i, f := range facts {
		out[i] = f.Text
	}
	return out
}

func (r reporter) question() paper.Block {
	q := r.a.Ask
	if q == nil {
		return paper.Block{}
	}
	it := paper.Item{Text: q.Take.Text}
	for _, o := range q.Outcomes {
		it.Below = append(it.Below, o.Says.Text)
	}
	return paper.Block{Heading: r.book.Term("heading.question"), Items: []paper.Item{it}}
}

func (r reporter) readings() paper.Block {
	if len(r.a.Readings) == 0 {
		return paper.Block{}
	}
	b := paper.Block{
		Heading: r.book.Term("heading.readings"),
		Table: &paper.Table{
			Head: []string{
				r.book.Term("column.reading"), r.book.Term("column.value"),
				r.book.Term("column.judged"),
			},
		},
	}
	for _, x := range r.a.Readings {
		note := ""
		if x.Belief != satline.Believed {
			note = r.book.Term("belief." + string(x.Belief))
		}
		b.Table.Rows = append(
			b.Table.Rows,
			[]string{r.book.Term("reading." + x.Field), r.book.Reading(x.Field, x.Value.Of), note},
		)
	}
	for _, d := range r.a.Doubts {
		b.Items = append(b.Items, paper.Item{Text: d.Says.Text, Below: []string{d.Mend.Text}})
	}
	return b
}

func (r reporter) derived() paper.Block {
	var rows [][]string
	for _, v := range r.a.Derived.Values() {
		rows = append(rows, []string{r.book.Term("derived." + v.Name), r.book.Reading(v.Name, v.Of)})
	}
	if len(rows) == 0 {
		return paper.Block{}
	}
	return paper.Block{
		Heading: r.book.Term("heading.derived"), Paragraphs: nil,
		Table: &paper.Table{
			Head: []string{r.book.Term("column.value-name"), r.book.Term("column.value")},
			Rows: rows,
		},
		Items: []paper.Item{{Text: r.book.Term("report.plus-minus")}},
	}
}

func (r reporter) airAndIce() paper.Block {
	b := paper.Block{Heading: r.book.Term("heading.air")}
	if len(r.a.Performance) > 0 {
		b.Heading = r.book.Term("heading.performance")
	}
	for _, f := range r.a.Performance {
		b.Items = append(b.Items, paper.Item{Text: f.Text})
	}
	if r.a.Air != nil {
		b.Items = append(b.Items, paper.Item{Text: r.a.Air.Says.Text})
	}
	if f := r.a.Freeze; f != nil {
		b.Items = append(b.Items, paper.Item{Text: f.Says.Text, Below: texts(f.Would)})
		for _, c := range slices.Concat(f.Causes, f.Controls) {
			b.Items = append(b.Items, paper.Item{Text: c.Text})
		}
	}
	return b
}

func (r reporter) cautions() paper.Block {
	b := paper.Block{Heading: r.book.Term("heading.cautions")}
	for _, c := range r.a.Cautions {
		b.Items = append(b.Items, paper.Item{Text: c.Text})
	}
	return b
}
