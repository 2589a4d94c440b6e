package work

import (
	"fmt"
	"io"
	"slices"
	"time"

	"github.com/satline/satline/internal/page/paper"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/report"
)

// WriteText writes the history as plain text in the language and the units of its last order.
// The error is the writer's.
func (h History) WriteText(w io.Writer, audience report.Audience) error {
	_, err := io.WriteString(w, h.document(audience).Text())
	return err
}

// WriteMarkdown writes the history as CommonMark with tables. The error is the writer's.
func (h History) WriteMarkdown(w io.Writer, audience report.Audience) error {
	_, err := io.WriteString(w, h.document(audience).Markdown())
	return err
}

// WriteHTML writes the history as one HTML page that stands by itself. The error is the
// writer's.
func (h History) WriteHTML(w io.Writer, audience report.Audience) error {
	return h.document(audience).WriteHTML(w)
}

func (h History) document(audience report.Audience) paper.Document {
	book := words.In(tag(h.Language), h.Units)
	base, _ := book.Language().Base()
	d := paper.Document{Lang: base.String(), Title: book.Term("history.title")}
	m := h.Machine
	if v := with("name", m.Name, "make", m.Make, "model", m.Model, "serial", m.Serial, "fluid",
		m.Equipment.Refrigerant); len(v) > 0 {
		d.Lines = []string{book.Say(fact.New("record.machine", v...))}
	}
	answer := paper.Block{Heading: book.Term("heading.answer"),
		Paragraphs: []string{h.Headline.Text}}
	for _, j := range h.Jobs[max(len(h.Jobs)-1, 0):] {
		if j.Reads != nil && j.Reads.Text != h.Headline.Text {
			answer.Paragraphs = append(answer.Paragraphs, j.Reads.Text)
		}
	}
	plan := paper.Block{Heading: book.Term("heading.plan"), Numbered: true}
	for _, f := range h.Next {
		plan.Items = append(plan.Items, paper.Item{Text: f.Text})
	}
	if audience == report.Owner {
		d.Blocks = []paper.Block{h.plain(book), h.jobs(book, false), h.years(book),
			cautions(book, h.Cautions[:min(1, len(h.Cautions))])}
	} else {
		d.Blocks = []paper.Block{
			answer, plan, h.moved(book,
				audience == report.File), h.years(book), h.leaks(book), h.jobs(book, true),
			h.trend(book), cautions(book, h.Cautions),
		}
	}
	d.Blocks = slices.DeleteFunc(d.Blocks, paper.Block.Empty)
	return d
}

func cautions(book *words.Book, list []fact.Fact) paper.Block {
	b := paper.Block{Heading: book.Term("heading.cautions")}
	for _, c := range list {
		b.Items = append(b.Items, paper.Item{Text: c.Text})
	}
	return b
}

// plain tells the owner whether the machine has changed.
func (h *History) plain(book *words.Book) paper.Block {
	code := fact.Code("owner.history-same")
	switch {
	case slices.ContainsFunc(h.Drifts, func(d Drift) bool { return d.Moved }):
		code = "owner.history-moved"
	case h.Why != nil:
		code = "owner.history-open"
	}
	b := paper.Block{Heading: book.Term("heading.owner-found"),
		Paragraphs: []string{book.Say(fact.New(code))}}
	for _, f := range h.Plain {
		b.Paragraphs = append(b.Paragraphs, f.Text)
	}
	if slices.ContainsFunc(h.Leaks, func(v LeakVerdict) bool { return v.Rate > 0 }) {
		b.Paragraphs = append(b.Paragraphs, book.Say(fact.New("owner.history-leak")))
	}
	return b
}

func (h *History) moved(book *words.Book, all bool) paper.Block {
	b := paper.Block{Heading: book.Term("heading.drift")}
	if h.Why != nil {
		b.Items = []paper.Item{{Text: h.Why.Text}}
	}
	t := &paper.Table{Head: []string{book.Term("column.value-name"), book.Term("column.expected"),
		book.Term("column.now"), book.Term("column.judged")}}
	for _, d := range h.Drifts {
		note := ""
		if d.Moved {
			note = book.Term("drift.moved")
		}
		t.Rows = append(t.Rows, []string{book.Term(d.Name), book.Reading(d.Name, d.Expected.Of),
			book.Reading(d.Name, d.Now.Of), note})
	}
	if len(t.Rows) > 0 {
		b.Table = t
		b.Paragraphs = []string{book.Say(fact.New("history.how",
			fact.Of("since", h.Since.Format(time.DateOnly))))}
	}
	return b
}

func (h *History) years(book *words.Book) paper.Block {
	b := paper.Block{Heading: book.Term("heading.years")}
	for _, y := range h.Years {
		b.Items = append(b.Items, paper.Item{Text: book.Say(fact.New("history.year",
			fact.Of("year", fmt.Sprint(y.Year)), fact.Amount("mass", y.Added)))})
	}
	return b
}

func (h *History) leaks(book *words.Book) paper.Block {
	b := paper.Block{Heading: book.Term("heading.leaks")}
	for _, v := range h.Leaks {
		it := paper.Item{Text: book.Say(v.Says)}
		if title := book.Source(v.Source); title != "" {
			it.Below = []string{book.Say(fact.New("record.source", fact.Of("source", title)))}
		}
		b.Items = append(b.Items, it)
	}
	if len(b.Items) > 0 {
		b.Items = append(b.Items, paper.Item{Text: book.Term("leak.law")})
	}
	return b
}

func (h *History) jobs(book *words.Book, headline bool) paper.Block {
	b := paper.Block{Heading: book.Term("heading.jobs")}
	for _, j := range h.Jobs {
		var tasks fact.Terms
		for _, t := range j.Tasks {
			tasks = append(tasks, fact.Term("task."+t.String()))
		}
		it := paper.Item{Text: book.Say(fact.New("history.job",
			fact.Of("date", j.Start.Format(time.DateOnly)), fact.Of("tasks", tasks)))}
		if headline && j.Reads != nil {
			it.Below = append(it.Below, j.Reads.Text)
		}
		if headline && j.Net > 0 {
			it.Below = append(it.Below, book.Say(fact.New("history.added",
				fact.Amount("mass", j.Net))))
		}
		b.Items = append(b.Items, it)
	}
	return b
}

// trended are the values that a trend shows, oldest first.
var trended = []string{"superheat", "subcooling", "condensingOverOutdoor", "temperatureSplit"}

// trend is a table of the readings as found, job by job.
func (h *History) trend(book *words.Book) paper.Block {
	b := paper.Block{Heading: book.Term("heading.trend")}
	t := &paper.Table{Head: []string{book.Term("column.date")}}
	for _, n := range trended {
		t.Head = append(t.Head, book.Term("derived."+n))
	}
	for _, j := range h.Jobs {
		values := j.Found
		if len(values) == 0 {
			values = j.Left
		}
		if len(values) == 0 {
			continue
		}
		row := []string{j.Start.Format(time.DateOnly)}
		for _, n := range trended {
			cell := ""
			for _, v := range values {
				if v.Name == n {
					cell = book.Reading(n, v.Of)
				}
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) > 1 {
		b.Table = t
	}
	return b
}
