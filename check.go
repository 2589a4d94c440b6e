package satline

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Check is the answer to a look or test: the gauges were held open to the air
// and stand at zero. It is about the machine as the readings of the visit show it,
// and about the instruments that they were taken with. Where a check finds an
// instrument off, put it right, take its readings again, and give the check with
// those as one that found nothing.
type Check struct {
	// Look is the code of the look or test: Look.Code, Measurement.Look.
	Look string `json:"look" strict:"required"`
	// Found says whether it found what it was after: Look.Found against
	// Look.NotFound.
	Found bool `json:"found" strict:"required"`
}

// A Look is what a Check may answer: a look at the machine or a test of it.
type Look struct {
	// Code names it in a Check.
	Code string `json:"code"`
	// Name says in short what is looked at, Take what to do.
	Name fact.Fact `json:"name"`
	Take fact.Fact `json:"take"`
	// Found and NotFound are the two answers: off zero, at zero.
	Found    fact.Fact `json:"found"`
	NotFound fact.Fact `json:"notFound"`
	// Running says that the machine has to run for it.
	Running bool `json:"running,omitzero"`
}

// Looks lists every look there is, with its words in a language.
func Looks(language Language, sys quantity.System) []Look {
	book := language.book(sys)
	spoken := func(code string) fact.Fact {
		f := fact.New(fact.Code("look." + code))
		f.Text = book.Say(f)
		return f
	}
	var out []Look
	for _, l := range everyLook() {
		out = append(out, Look{
			Code: l.Code, Name: spoken(l.Code + ".name"), Take: spoken(l.Code),
			Found: spoken(l.Code + ".yes"), NotFound: spoken(l.Code + ".no"), Running: l.Running,
		})
	}
	return out
}
