package satline

import (
	"github.com/satline/satline/internal/words"
	"github.com/satline/satline/quantity/fact"
)

// A reporter lays an assessment out for somebody.
type reporter struct {
	a    *Assessment
	book *words.Book
}

func (r reporter) say(code fact.Code, values ...fact.Value) string {
	return r.book.Say(fact.New(code, values...))
}
