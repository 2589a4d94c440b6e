package satline

import (
	"slices"

	"github.com/satline/satline/internal/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A document is a report before it has a format.
type document struct {
	lang   string
	title  string
	lines  []string // under the title
	blocks []block
}

type block struct {
	heading    string
	paragraphs []string
	table      *table
	items      []item
	numbered   bool
	pictures   []Picture
}

type item struct {
	text  string
	below []string
}

type table struct {
	head []string
	rows [][]string
}

// A Picture goes with a report that can hold it.
type Picture struct {
	Caption string
	SVG     []byte
}

// A reporter lays an assessment out for somebody.
type reporter struct {
	a    *Assessment
	book *words.Book
}

func (a Assessment) document(audience Audience, pictures []Picture) document {
	r := reporter{&a, a.Language.book(a.Units)}
	base, _ := r.book.Language().Base()
	d := document{lang: base.String(), title: a.Title}
	if d.title == "" {
		d.title = r.book.Term("report.title")
	}
	switch audience {
	case Owner:
		d.blocks = r.owner()
	case File:
		d.lines = r.head()
		d.blocks = []block{r.answer(), r.dangers(true), r.plan(true), r.charge(true), r.findings(4), r.question(),
			r.readings(), r.derived(), r.airAndIce(), r.cautions()}
	default:
		d.blocks = []block{r.answer(), r.dangers(false), r.plan(false), r.charge(false), r.findings(2),
			r.readings(), r.derived(), r.airAndIce(), r.cautions()}
		d.lines = r.head()
	}
	if a.Notes != "" && audience != Owner {
		d.blocks = append(d.blocks, block{heading: r.book.Term("heading.notes"), paragraphs: []string{a.Notes}})
	}
	if len(pictures) > 0 {
		d.blocks = append(d.blocks, block{heading: r.book.Term("heading.pictures"), pictures: pictures})
	}
	d.blocks = slices.DeleteFunc(d.blocks, block.empty)
	return d
}

func (b block) empty() bool {
	return len(b.paragraphs) == 0 && len(b.items) == 0 && b.table == nil && len(b.pictures) == 0
}

func (r reporter) say(code fact.Code, values ...fact.Value) string {
	return r.book.Say(fact.New(code, values...))
}

// head says in one line what the figures rest on.
func (r reporter) head() []string {
	a := r.a
	out := []string{r.say("report.rests-on", fact.Of("fluid", a.Refrigerant.Designation), fact.Of("group", a.Refrigerant.SafetyGroup),
		fact.Amount("atmosphere", a.Atmosphere.Pressure.Value), fact.Of("source", term("atmosphere", string(a.Atmosphere.Source))))}
	if a.Refrigerant.Estimated {
		out = append(out, r.say("report.estimated"))
	}
	if a.Scope == VerdictOnly {
		out = append(out, r.say("report.verdict-only"))
	}
	return out
}

func (r reporter) answer() block {
	return block{heading: r.book.Term("heading.answer"), paragraphs: []string{r.a.Headline.Text}}
}

func (r reporter) dangers(why bool) block {
	b := block{heading: r.book.Term("heading.dangers")}
	for i, d := range r.a.Dangers {
		it := item{text: d.Says.Text}
		if why || i == 0 {
			it.below = []string{d.Why.Text}
		}
		b.items = append(b.items, it)
	}
	return b
}

// plan lists the steps; a reason that the headline or a danger says already is left out.
func (r reporter) plan(all bool) block {
	b := block{heading: r.book.Term("heading.plan"), numbered: true}
	said := []string{r.a.Headline.Text}
	for _, d := range r.a.Dangers {
		said = append(said, d.Says.Text)
	}
	for _, s := range r.a.Plan {
		it := item{text: s.Do.Text}
		if s.Why != nil && (all || !slices.Contains(said, s.Why.Text)) {
			it.below = []string{s.Why.Text}
			said = append(said, s.Why.Text)
		}
		b.items = append(b.items, it)
	}
	return b
}

func (r reporter) charge(sources bool) block {
	c := &r.a.Charge
	b := block{heading: r.book.Term("heading.charge")}
	if c.Reading != nil {
		b.items = append(b.items, item{text: c.Reading.Says.Text})
		if t := c.Reading; sources && t.Target != nil {
			b.items = append(b.items, item{text: r.say("report.sources", fact.Of("target", t.TargetSource.String()), fact.Of("band", t.ToleranceSource.String()))})
		}
	}
	if c.Outcome != ChargeNotJudged {
		b.items = append(b.items, item{text: r.say("report.chances", fact.Of("low", fact.Share(c.Low)), fact.Of("inBand", fact.Share(c.InBand)), fact.Of("high", fact.Share(c.High)))})
	}
	for _, w := range c.Why {
		if !(c.Outcome == ChargeNotJudged && len(c.Why) == 1) {
			b.items = append(b.items, item{text: w.Text})
		}
	}
	if r.a.Dose != nil && sources {
		b.items = append(b.items, item{text: r.say("report.dose", fact.Of("inBand", fact.Share(r.a.Dose.InBand)), fact.Of("past", fact.Share(r.a.Dose.PastBand)))})
	}
	if s := r.a.Steadiness; s != nil {
		b.items = append(b.items, item{text: s.Says.Text})
	}
	return b
}

// findings lists the causes, those that matter with what speaks for and against them.
func (r reporter) findings(evidence int) block {
	b := block{heading: r.book.Term("heading.findings")}
	if c := r.a.Change; c != nil {
		b.items = append(b.items, item{text: c.Says.Text, below: texts(c.Moved)})
	}
	for i, f := range r.a.Findings {
		it := item{text: f.Says.Text}
		if i == 0 || evidence > 2 && f.Chance > 0.1 {
			for _, s := range f.For[:min(evidence, len(f.For))] {
				it.below = append(it.below, r.say("report.for", fact.Of("sign", s.Text)))
			}
			for _, s := range f.Against[:min(evidence, len(f.Against))] {
				it.below = append(it.below, r.say("report.against", fact.Of("sign", s.Text)))
			}
		}
		if i < 3 || evidence > 2 {
			b.items = append(b.items, it)
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

func (r reporter) question() block {
	q := r.a.Ask
	if q == nil {
		return block{}
	}
	it := item{text: q.Take.Text}
	for _, o := range q.Outcomes {
		it.below = append(it.below, o.Says.Text)
	}
	return block{heading: r.book.Term("heading.question"), items: []item{it}}
}

func (r reporter) readings() block {
	if len(r.a.Readings) == 0 {
		return block{}
	}
	b := block{heading: r.book.Term("heading.readings"), table: &table{head: []string{r.book.Term("column.reading"), r.book.Term("column.value"), r.book.Term("column.judged")}}}
	for _, x := range r.a.Readings {
		note := ""
		if x.Belief != Believed {
			note = r.book.Term("belief." + string(x.Belief))
		}
		b.table.rows = append(b.table.rows, []string{r.book.Term("reading." + x.Field), r.book.Show(x.Value.Of), note})
	}
	for _, d := range r.a.Doubts {
		b.items = append(b.items, item{text: d.Says.Text, below: []string{d.Mend.Text}})
	}
	return b
}

func (r reporter) derived() block {
	var rows [][]string
	for _, v := range r.a.Derived.Values() {
		rows = append(rows, []string{r.book.Term("derived." + v.Name), r.book.Show(v.Of)})
	}
	if len(rows) == 0 {
		return block{}
	}
	return block{
		heading: r.book.Term("heading.derived"), paragraphs: nil,
		table: &table{head: []string{r.book.Term("column.value-name"), r.book.Term("column.value")}, rows: rows},
		items: []item{{text: r.book.Term("report.plus-minus")}},
	}
}

func (r reporter) airAndIce() block {
	b := block{heading: r.book.Term("heading.air")}
	if r.a.Air != nil {
		b.items = append(b.items, item{text: r.a.Air.Says.Text})
	}
	if f := r.a.Freeze; f != nil {
		b.items = append(b.items, item{text: f.Says.Text, below: texts(f.Would)})
		for _, c := range slices.Concat(f.Causes, f.Controls) {
			b.items = append(b.items, item{text: c.Text})
		}
	}
	return b
}

func (r reporter) cautions() block {
	b := block{heading: r.book.Term("heading.cautions")}
	for _, c := range r.a.Cautions {
		b.items = append(b.items, item{text: c.Text})
	}
	return b
}

// Values lists the derived values that are there, in the order a technician works them out,
// each under its JSON name.
func (d Derived) Values() []fact.Value {
	var out []fact.Value
	out = appendValue(out, "evaporatingDew", d.EvaporatingDew)
	out = appendValue(out, "condensingBubble", d.CondensingBubble)
	out = appendValue(out, "superheat", d.Superheat)
	out = appendValue(out, "subcooling", d.Subcooling)
	out = appendValue(out, "condensingOverOutdoor", d.CondensingOverOutdoor)
	out = appendValue(out, "approach", d.Approach)
	if r := d.CompressionRatio; r != nil {
		out = append(out, fact.Of("compressionRatio", fact.Times(r.Value)))
	}
	out = appendValue(out, "temperatureSplit", d.TemperatureSplit)
	if r := d.ReturnHumidity; r != nil {
		out = append(out, fact.Of("returnHumidity", fact.Share(r.Value)))
	}
	out = appendValue(out, "totalCapacity", d.TotalCapacity)
	out = appendValue(out, "sensibleCapacity", d.SensibleCapacity)
	out = appendValue(out, "latentCapacity", d.LatentCapacity)
	if r := d.SensibleHeatRatio; r != nil {
		out = append(out, fact.Of("sensibleHeatRatio", fact.Share(r.Value)))
	}
	out = appendValue(out, "condensate", d.Condensate)
	if e := d.Efficiency; e != nil {
		out = append(out, fact.Of("efficiency", fact.Times(e.COP)))
	}
	return out
}

func appendValue[T quantity.Quantity](out []fact.Value, name string, u *quantity.Uncertain[T]) []fact.Value {
	if u == nil {
		return out
	}
	return append(out, fact.Measured(name, *u))
}
