package satline

import (
	"github.com/satline/satline/internal/base/apart"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Say returns the sentence of a fact in the language nearest to it.
func Say(f fact.Fact, language Language, units quantity.System) string {
	return language.book(units).Say(f)
}

// Show returns a value in the language nearest to it.
func Show(v fact.Value, language Language, units quantity.System) string {
	return language.book(units).Reading(v.Name, v.Of)
}

// Word returns the words of a code that stands inside sentences and tables, of a field as
// "reading.suctionLine" or "derived.superheat", of a name as "cause.undercharge",
// "method.superheat", "mode.heating" or "belief.doubted"; the code itself where it has none.
func Word(code string, language Language) string { return language.book(quantity.SI).Term(code) }

// In returns the assessment with its sentences in another language and system of units. It
// shares nothing with a.
func (a Assessment) In(language Language, units quantity.System) Assessment {
	out := apart.From(a)
	out.Language, out.Units = language, units
	language.book(units).Fill(&out)
	return out
}

// Reworded returns the assessment with sentences of your own: say makes that of a fact, and
// returns false where the one that stands is to stay. Show words the values of a fact. It
// shares nothing with a.
func (a Assessment) Reworded(say func(fact.Fact) (string, bool)) Assessment {
	out := apart.From(a)
	words.Fill(&out, func(b []byte, f *fact.Fact) []byte {
		if text, ok := say(*f); ok {
			return append(b, text...)
		}
		return append(b, f.Text...)
	})
	return out
}
