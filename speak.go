package satline

import (
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Say returns the sentence of a fact in the language nearest to it.
func Say(f fact.Fact, language Language, units quantity.System) string {
	return language.book(units).Say(f)
}

// Show returns a value in the language nearest to it.
func Show(v fact.Value, language Language, units quantity.System) string {
	return language.book(units).Show(v.Of)
}

// Word returns the words of a code that stands inside sentences and tables, as
// "reading.suctionLine" or "cause.undercharge"; the code itself where it has none.
func Word(code string, language Language) string { return language.book(quantity.SI).Term(code) }

// In returns the assessment with its sentences in another language and system of units.
func (a Assessment) In(language Language, units quantity.System) Assessment {
	a = a.cloned()
	a.Language, a.Units = language, units
	a.speak()
	return a
}

// speak makes the sentence of every fact.
func (a *Assessment) speak() {
	book := a.Language.book(a.Units)
	for f := range a.facts {
		if !f.IsZero() {
			f.Text = book.Say(*f)
		}
	}
}

// facts yields every fact of the assessment in place.
func (a *Assessment) facts(yield func(*fact.Fact) bool) {
	one := []*fact.Fact{&a.Headline, &a.Mode.Says}
	lists := [][]fact.Fact{a.Charge.Why, a.Cautions}
	if r := a.Charge.Reading; r != nil {
		one = append(one, &r.Says)
	}
	for _, s := range []*SteadinessVerdict{a.Steadiness, a.Valve} {
		if s != nil {
			one = append(one, &s.Says)
		}
	}
	if a.Air != nil {
		one = append(one, &a.Air.Says)
	}
	if f := a.Freeze; f != nil {
		one = append(one, &f.Says)
		lists = append(lists, f.Would, f.Causes, f.Controls)
	}
	if c := a.Change; c != nil {
		one = append(one, &c.Says)
		lists = append(lists, c.Moved)
	}
	for i := range a.Dangers {
		one = append(one, &a.Dangers[i].Says, &a.Dangers[i].Why)
	}
	for i := range a.Plan {
		one = append(one, &a.Plan[i].Do)
		if a.Plan[i].Why != nil {
			one = append(one, a.Plan[i].Why)
		}
	}
	for i := range a.Doubts {
		one = append(one, &a.Doubts[i].Says, &a.Doubts[i].Mend)
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		one = append(one, &f.Says)
		lists = append(lists, f.For, f.Against)
	}
	if q := a.Ask; q != nil {
		one = append(one, &q.Take)
		for i := range q.Outcomes {
			one = append(one, &q.Outcomes[i].Says)
		}
	}
	for _, f := range one {
		if !yield(f) {
			return
		}
	}
	for _, list := range lists {
		for i := range list {
			if !yield(&list[i]) {
				return
			}
		}
	}
}

// cloned shares no fact with a.
func (a Assessment) cloned() Assessment {
	a.Dangers, a.Doubts = slices.Clone(a.Dangers), slices.Clone(a.Doubts)
	a.Plan, a.Findings = slices.Clone(a.Plan), slices.Clone(a.Findings)
	for i := range a.Plan {
		a.Plan[i].Why = clone(a.Plan[i].Why)
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		f.For, f.Against = slices.Clone(f.For), slices.Clone(f.Against)
	}
	a.Charge.Why, a.Charge.Reading = slices.Clone(a.Charge.Why), clone(a.Charge.Reading)
	a.Steadiness, a.Valve, a.Air = clone(a.Steadiness), clone(a.Valve), clone(a.Air)
	if a.Freeze = clone(a.Freeze); a.Freeze != nil {
		f := a.Freeze
		f.Would, f.Causes, f.Controls = slices.Clone(f.Would), slices.Clone(f.Causes), slices.Clone(f.Controls)
	}
	if a.Change = clone(a.Change); a.Change != nil {
		a.Change.Moved = slices.Clone(a.Change.Moved)
	}
	if a.Ask = clone(a.Ask); a.Ask != nil {
		a.Ask.Outcomes = slices.Clone(a.Ask.Outcomes)
	}
	a.Cautions = slices.Clone(a.Cautions)
	return a
}

func clone[T any](p *T) *T {
	if p == nil {
		return nil
	}
	return new(*p)
}
