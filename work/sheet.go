package work

import (
	"io"
	"slices"
	"sort"
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/page/paper"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/report"
)

// WriteText writes the record as plain text in the language and the units of its order. The
// error is the writer's.
func (r Record) WriteText(w io.Writer, audience report.Audience) error {
	_, err := io.WriteString(w, r.document(audience).Text())
	return err
}

// String returns the technician's sheet as plain text.
func (r Record) String() string { return r.document(report.Technician).Text() }

// WriteMarkdown writes the record as CommonMark with tables. The error is the writer's.
func (r Record) WriteMarkdown(w io.Writer, audience report.Audience) error {
	_, err := io.WriteString(w, r.document(audience).Markdown())
	return err
}

// WriteHTML writes the record as one HTML page that stands by itself and prints on one sheet
// of letter or A4 paper where a sheet holds it. The error is the writer's.
func (r Record) WriteHTML(w io.Writer, audience report.Audience) error {
	return r.document(audience).WriteHTML(w)
}

// A sheet lays a record out for somebody.
type sheet struct {
	r    *Record
	book *words.Book
}

func (r *Record) document(audience report.Audience) paper.Document {
	s := sheet{r, words.In(tag(r.Order.Language), r.Order.Units)}
	base, _ := s.book.Language().Base()
	d := paper.Document{Lang: base.String(), Title: r.Order.Title, Lines: s.head()}
	if d.Title == "" {
		d.Title = s.book.Term("record.title")
	}
	switch audience {
	case report.Owner:
		d.Blocks = s.owner()
	case report.File:
		d.Blocks = []paper.Block{
			s.answer(), s.results(true), s.next(), s.assessed(), s.moved(), s.cylinders(), s.done(),
			s.left(), s.notes(), s.cautions(), s.signatures(),
		}
	default:
		d.Blocks = []paper.Block{
			s.answer(), s.next(), s.results(false), s.moved(), s.done(), s.left(), s.notes(),
			s.cautions(),
		}
	}
	d.Blocks = slices.DeleteFunc(d.Blocks, paper.Block.Empty)
	return d
}

func (s sheet) say(code fact.Code, values ...fact.Value) string {
	return s.book.Say(fact.New(code, values...))
}

// with are those of texts that say something, as values of a sentence.
func with(pairs ...string) []fact.Value {
	var out []fact.Value
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i+1] != "" {
			out = append(out, fact.Of(pairs[i], pairs[i+1]))
		}
	}
	return out
}

// clock writes a moment as a clock on the wall shows it: the day alone where no hour is known,
// and the hour alone on the day of another moment.
func clock(at, day time.Time) string {
	hour := at.Hour() != 0 || at.Minute() != 0
	switch {
	case at.IsZero():
		return ""
	case !hour:
		return at.Format(time.DateOnly)
	case at.Format(time.DateOnly) == day.Format(time.DateOnly):
		return at.Format("15:04")
	}
	return at.Format("2006-01-02 15:04")
}

// head says who, where, when and at what.
func (s sheet) head() []string {
	o := &s.r.Order
	m := &o.Machine
	var tasks fact.Terms
	for _, t := range o.Tasks {
		tasks = append(tasks, fact.Term("task."+t.String()))
	}
	out := []string{s.book.Say(fact.New("record.job", with("number", o.Number, "start",
		clock(o.Start, time.Time{}), "end", clock(o.End,
			o.Start))...).With(fact.Of("tasks", tasks)))}
	if v := with("customer", o.Customer, "address", o.Address); len(v) > 0 {
		out = append(out, s.book.Say(fact.New("record.where", v...)))
	}
	if v := with("name", m.Name, "make", m.Make, "model", m.Model, "serial", m.Serial, "fluid",
		m.Equipment.Refrigerant); len(v) > 0 {
		out = append(out, s.book.Say(fact.New("record.machine", v...)))
	}
	if v := with("name", o.Technician.Name, "license", o.Technician.License); len(v) > 0 {
		out = append(out, s.book.Say(fact.New("record.technician", v...)))
	}
	return out
}

func (s sheet) answer() paper.Block {
	return paper.Block{
		Heading:    s.book.Term("heading.answer"),
		Paragraphs: []string{s.r.Headline.Text},
	}
}

func (s sheet) next() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.plan"), Numbered: true}
	for _, f := range s.r.Next {
		b.Items = append(b.Items, paper.Item{Text: f.Text})
	}
	return b
}

// results lists the parts of the work; with its source each, for the file.
func (s sheet) results(sources bool) paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.results")}
	list := slices.Clone(s.r.Results)
	if !sources { // what is not as it should be comes first
		sort.SliceStable(list, func(i, j int) bool { return place(list[i]) < place(list[j]) })
	}
	meter, said := 0, map[string]bool{}
	for _, x := range list {
		if !sources && x.Standing == Good && strings.HasSuffix(x.Part, ".electrical") {
			meter++
			continue
		}
		if text := string(x.Standing) + x.Says.Text; said[text] {
			continue
		} else {
			said[text] = true
		}
		if x.Says.Text == s.r.Headline.Text && len(s.r.Results) > 1 && !sources {
			continue
		}
		it := paper.Item{Text: s.book.Term("standing."+string(x.Standing)) + " " + x.Says.Text}
		if title := s.book.Source(x.Source); sources && title != "" {
			it.Below = []string{s.say("record.source", fact.Of("source", title))}
		}
		b.Items = append(b.Items, it)
	}
	if meter > 0 {
		b.Items = append(b.Items,
			paper.Item{Text: s.book.Term("standing.good") + " " + s.say("result.meter-good",
				fact.Of("count", meter))})
	}
	return b
}

// place sorts results by how much they matter.
func place(r Result) int {
	return slices.Index([]Progress{Dangerous, Bad, Open, Watch, Found, Good}, r.Standing)
}

// assessed is what the readings before and after were held to mean.
func (s sheet) assessed() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.readings")}
	for _, v := range []struct {
		name string
		of   *satline.Assessment
	}{{"record.before", s.r.Before}, {"record.after", s.r.After}} {
		if v.of == nil {
			continue
		}
		it := paper.Item{Text: s.say(fact.Code(v.name), fact.Of("reads", v.of.Headline.Text))}
		for _, d := range v.of.Dangers {
			it.Below = append(it.Below, d.Says.Text)
		}
		if c := v.of.Charge.Reading; c != nil {
			it.Below = append(it.Below, c.Says.Text)
		}
		b.Items = append(b.Items, it)
	}
	return b
}

// moved is the table of what was read before and after the work, or once.
func (s sheet) moved() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.moved")}
	t := &paper.Table{Head: []string{
		s.book.Term("column.value-name"), s.book.Term("column.before"), s.book.Term("column.after"),
	}}
	values := func(a *satline.Assessment) []fact.Value {
		if a == nil {
			return nil
		}
		var out []fact.Value
		for _, r := range a.Readings {
			out = append(out, fact.Value{Name: "reading." + r.Field, Of: r.Value.Of})
		}
		for _, v := range a.Derived.Values() {
			out = append(out, fact.Value{Name: "derived." + v.Name, Of: v.Of})
		}
		return out
	}
	before, after := values(s.r.Before), values(s.r.After)
	show := func(list []fact.Value, name string) string {
		for _, v := range list {
			if v.Name == name {
				return s.book.Reading(name, v.Of)
			}
		}
		return ""
	}
	var names []string
	for _, v := range slices.Concat(before, after) {
		if !slices.Contains(names, v.Name) {
			names = append(names, v.Name)
		}
	}
	for _, n := range names {
		t.Rows = append(t.Rows, []string{s.book.Term(n), show(before, n), show(after, n)})
	}
	if len(t.Rows) > 0 {
		b.Table = t
	}
	return b
}

// cylinders is the log of what the scale showed.
func (s sheet) cylinders() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.cylinders")}
	t := &paper.Table{Head: []string{
		s.book.Term("column.cylinder"), s.book.Term("column.refrigerant"),
		s.book.Term("column.before"), s.book.Term("column.after"), s.book.Term("column.moved"),
	}}
	for _, c := range s.r.Order.Cylinders {
		row := []string{c.Name, c.Refrigerant, "", "", ""}
		if c.Before > 0 {
			row[2] = s.book.Show(c.Before)
		}
		if c.After > 0 {
			row[3] = s.book.Show(c.After)
		}
		switch moved := c.moved(); {
		case moved > 0:
			row[4] = s.say("cylinder.moved-out", fact.Amount("mass", moved))
		case moved < 0:
			row[4] = s.say("cylinder.moved-in", fact.Amount("mass", -moved))
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) > 0 {
		b.Table = t
	}
	return b
}

// done lists parts, refrigerant and what else was done.
func (s sheet) done() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.done")}
	add := func(text string) { b.Items = append(b.Items, paper.Item{Text: text}) }
	for _, f := range s.work() {
		add(s.book.Say(f))
	}
	for _, text := range s.r.Order.Done {
		add(text)
	}
	return b
}

// work is what was done, as facts: parts fitted and refrigerant moved.
func (s sheet) work() []fact.Fact {
	var out []fact.Fact
	for _, p := range s.r.Order.Parts {
		out = append(out, fact.New("done.part", with("name", p.Name, "number", p.Number)...))
	}
	fluid := fact.Of("fluid", s.r.Order.Machine.Equipment.Refrigerant)
	if m := s.r.Recovered; m > 0 {
		out = append(out, fact.New("done.recovered", fact.Amount("mass", m), fluid))
	}
	if m := s.r.Added; m > 0 {
		out = append(out, fact.New("done.added", fact.Amount("mass", m), fluid))
	}
	return out
}

func (s sheet) left() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.left")}
	for _, text := range s.r.Order.Left {
		b.Items = append(b.Items, paper.Item{Text: text})
	}
	return b
}

func (s sheet) notes() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.notes")}
	if s.r.Order.Notes != "" {
		b.Paragraphs = []string{s.r.Order.Notes}
	}
	return b
}

func (s sheet) cautions() paper.Block {
	b := paper.Block{Heading: s.book.Term("heading.cautions")}
	for _, c := range s.r.Cautions {
		b.Items = append(b.Items, paper.Item{Text: c.Text})
	}
	return b
}

// signatures leaves room to sign.
func (s sheet) signatures() paper.Block {
	const line = " ______________________________"
	return paper.Block{Heading: s.book.Term("heading.signatures"), Paragraphs: []string{
		s.book.Term("signature.technician") + line, s.book.Term("signature.customer") + line,
		s.book.Term("signature.date") + line,
	}}
}

// owner tells the person who pays, in plain words: what the complaint came to, what was found
// and done, what is left. No chance, and nobody's fault.
func (s sheet) owner() []paper.Block {
	r := s.r
	block := func(heading string, facts []fact.Fact) paper.Block {
		b := paper.Block{Heading: s.book.Term(heading)}
		for _, f := range facts {
			if text := s.book.Say(f); !slices.Contains(b.Paragraphs, text) {
				b.Paragraphs = append(b.Paragraphs, text)
			}
		}
		return b
	}
	var found, danger, next []fact.Fact
	if r.Before != nil {
		found, danger, next = report.OwnerFacts(*r.Before)
	}
	if more := seen(&r.Order); len(more) > 0 { // which ends what the readings left open
		open := func(f fact.Fact) bool { return f.Code == "owner.open" }
		found = append(slices.DeleteFunc(found, open), more...)
	}
	now := []fact.Fact{}
	switch {
	case r.Complete:
		danger, next = nil, []fact.Fact{fact.New("owner.next.nothing")}
		now = append(now, fact.New("owner.now-done"))
	case r.After != nil:
		now, danger, next = report.OwnerFacts(*r.After)
		if len(next) == 1 && next[0].Code == "owner.next.nothing" {
			next = []fact.Fact{fact.New("owner.next.rest")}
		}
	case r.is(RepairLeak, OpenCircuit, WeighIn, Commission):
		danger, next = nil, []fact.Fact{fact.New("owner.next.unfinished")}
	}
	if slices.ContainsFunc(r.Results, func(x Result) bool {
		return x.Standing == Dangerous &&
			x.Part != "before"
	}) {
		danger = append(danger, fact.New("owner.danger.work"))
	}
	var asked, done []fact.Fact
	if c := r.Order.Complaint; c != 0 {
		asked = []fact.Fact{fact.New(fact.Code("owner.asked." + c.String()))}
		if r.Complete && r.After != nil {
			now = append(now, fact.New(fact.Code("owner.answer."+c.String())))
		}
	}
	for _, t := range r.Order.Tasks {
		code := fact.Code("owner.task.")
		if !r.Complete {
			code = "owner.began."
		}
		done = append(done, fact.New(code+fact.Code(t.String())))
	}
	work := block("heading.done", append(done, s.work()...))
	work.Paragraphs = append(work.Paragraphs, r.Order.Done...)
	left := block("heading.owner-next", next)
	left.Paragraphs = append(left.Paragraphs, r.Order.Left...)
	return []paper.Block{
		block("heading.owner-asked", asked), block("heading.owner-found", found), work,
		block("heading.owner-now", now), block("heading.owner-danger", danger), left,
		block("heading.cautions", ownerCautions(r)), s.signatures(),
	}
}

// seen is what was found on the round, besides what the readings show.
func seen(o *Order) (found []fact.Fact) {
	for _, l := range o.Leaks {
		found = append(found, fact.New("owner.leak-found", fact.Of("where", l.Where)))
	}
	for _, c := range o.Checklist {
		switch check := fact.Of("check", fact.Term("check."+c.Check)); {
		case !c.Good && !c.NotHere:
			found = append(found, fact.New("owner.check", check))
		case c.Note != "":
			found = append(found, fact.New("result.check-note", check, fact.Of("note", c.Note)))
		}
	}
	return found
}

func ownerCautions(r *Record) []fact.Fact {
	cautions := []fact.Fact{fact.New("owner.licensed")}
	for _, a := range []*satline.Assessment{r.After, r.Before} {
		if a != nil && a.Refrigerant.Flammable {
			return append(cautions, fact.New("owner.flammable",
				fact.Of("fluid", a.Refrigerant.Designation)))
		}
	}
	return cautions
}

// is reports whether the order of the record has any of the tasks.
func (r *Record) is(tasks ...Task) bool {
	return slices.ContainsFunc(tasks, func(t Task) bool {
		return slices.Contains(r.Order.Tasks,
			t)
	})
}
