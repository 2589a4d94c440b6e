package words

import "github.com/satline/satline/quantity/fact"

// Source returns where a figure comes from, with the mark of its standing; empty where that is
// not said.
func (b *Book) Source(s fact.Source) string {
	mark := ""
	switch s.Standing {
	case fact.Label:
		return b.Term("mark.label")
	case fact.FromMemory:
		mark = b.Term("mark.memory")
	case fact.CommonPractice:
		mark = b.Term("mark.practice")
	}
	switch {
	case s.Title == "":
		return mark
	case mark == "":
		return s.Title
	}
	return s.Title + " (" + mark + ")"
}
