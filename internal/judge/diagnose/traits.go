package diagnose

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Traits are what is known of a signature beside how it reads. A signature is a row of them,
// which stands with its faults.
type traits struct {
	code Code
	// prior is how common it is on a service call, before anything is read: common practice, no
	// source. Priors are relative; that of a pair is the product of the two, as if faults came
	// independently. Instruments in careful hands lie in one visit of ten.
	prior float64
	// cost is what it takes to deal with it, and what it costs to leave it.
	cost cost
	// tabled says that how it reads comes from the table of signatures; further are sizes past
	// the gravest that stands there.
	tabled  bool
	further []further
	// size is its severity as a value named "size", false where it is none; nil where there is
	// no telling.
	size func(severity float64) (fact.Value, bool)
	// opposite is the other end of what is at one of two, and makes no pair with it.
	opposite Code

	number int // among all
}

// traitsOf is every signature of the library by its code.
var traitsOf = func() map[Code]*traits {
	out := map[Code]*traits{clashTraits.code: &clashTraits}
	for _, rows := range [][]traits{
		circuitTraits, airTraits, instrumentTraits, haltedTraits, circumstanceTraits,
	} {
		for i := range rows {
			rows[i].number = len(out)
			out[rows[i].code] = &rows[i]
		}
	}
	return out
}()

// tabled are the signatures that come from the table, instrumentSignatures those of instruments.
var (
	tabled = append(codesOf(circuitTraits, (*traits).isTabled),
		codesOf(airTraits, (*traits).isTabled)...)
	instrumentSignatures = codesOf(instrumentTraits, func(*traits) bool { return true })
)

func (t *traits) isTabled() bool { return t.tabled }

// codesOf are the codes of the rows that have something.
func codesOf(rows []traits, has func(*traits) bool) (out []Code) {
	for i := range rows {
		if has(&rows[i]) {
			out = append(out, rows[i].code)
		}
	}
	return out
}

// furtherOf are the sizes of an entry past the gravest of the table.
func furtherOf(entry Code) []further {
	if t := traitsOf[entry]; t != nil {
		return t.further
	}
	return nil
}

// mostShare is the largest part that is told: a size is an estimate, and "all of it" is none.
const mostShare = 0.95

// asShare is a part of the whole, in twentieths.
func asShare(severity float64) (fact.Value, bool) {
	rounded := min(math.Round(20*severity)/20, mostShare)
	return fact.Of("size", fact.Share(rounded)), rounded > 0
}

func asDelta(severity float64) (fact.Value, bool) {
	return fact.Amount("size", quantity.TemperatureDelta(math.Abs(severity))), true
}

func asPressure(severity float64) (fact.Value, bool) {
	return fact.Amount("size", quantity.GaugePressure(math.Abs(severity))), true
}
