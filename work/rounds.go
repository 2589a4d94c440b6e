package work

import (
	"fmt"
	"slices"

	"github.com/satline/satline/quantity/fact"
)

// checklist tells what was found not to be right on the round.
func (j *judge) checklist() {
	for i, c := range j.o.Checklist {
		if c.NotHere || c.Good && c.Note == "" {
			continue
		}
		if c.Good {
			j.result(fmt.Sprintf("checklist[%d]", i), "", Found, fact.New("result.check-note",
				fact.Of("check", fact.Term("check."+c.Check)), fact.Of("note",
					c.Note)), fact.Source{})
			continue
		}
		f := fact.New("result.check-bad", fact.Of("check", fact.Term("check."+c.Check)))
		if c.Note != "" {
			f = f.With(fact.Of("note", c.Note))
		}
		j.result(fmt.Sprintf("checklist[%d]", i), "", Bad, f, practice)
	}
	if len(j.unchecked()) == 0 {
		j.has["next.checklist"] = Good
	}
	m := &j.o.Machine
	if m.Make != "" && m.Model != "" && m.Serial != "" {
		j.has["next.name-machine"] = Good
	}
}

// said reports whether the checklist has an answer to a check.
func (j *judge) said(c Item) bool {
	return slices.ContainsFunc(j.o.Checklist, func(k Checked) bool { return k.Check == c })
}

// unchecked are the lines of the lists of the tasks that nothing is said of.
func (j *judge) unchecked() fact.Terms {
	var out fact.Terms
	for _, t := range j.o.Tasks {
		for _, c := range checklists[t] {
			asks := c != FlammableMarked || j.fluid.Flammable()
			if term := fact.Term("check." + c); !j.said(c) && asks && !slices.Contains(out, term) {
				out = append(out, term)
			}
		}
	}
	return out
}
