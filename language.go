package satline

import (
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"golang.org/x/text/language"
)

// Language is a BCP 47 tag: "en", "es-MX". Sentences come in the nearest language there is;
// the region decides how numbers are written.
type Language string

// The languages that sentences can be made in. Spanish is that of technicians in the
// Americas; it has not been reviewed by one yet.
const (
	English Language = "en"
	Spanish Language = "es"
)

// Languages lists those that sentences can be made in.
func Languages() []Language { return []Language{English, Spanish} }

// tag of a language that was not checked is that of no language.
func (l Language) tag() language.Tag {
	tag, err := language.Parse(string(l))
	if err != nil {
		return language.Und
	}
	return tag
}

// known reports whether it is a language tag, or none.
func (l Language) known() bool {
	_, err := language.Parse(string(l))
	return l == "" || err == nil && len(l) <= 35
}

// book words facts in a language.
func (l Language) book(units quantity.System) *words.Book { return words.In(l.tag(), units) }
