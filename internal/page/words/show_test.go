package words

import (
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"golang.org/x/text/language"
)

// The comma is that of a number, and not one for the points of a unit.
func TestShowWithComma(t *testing.T) {
	b := Book{units: quantity.IP, comma: true}
	for _, c := range []struct {
		v    any
		want string
	}{
		{quantity.InchesWater(0.5), "0,50 in. w.c."},
		{quantity.PSIG(68.5).PlusMinus(quantity.PSIG(0.5)), "68,5 psig ± 0,5 psi"},
		{fact.Times(3.1), "3,1:1"},
		{fact.Number(2.9), "2,9"},
	} {
		if got := b.Show(c.v); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Some values are written by what they are of.
func TestReadingByItsName(t *testing.T) {
	b := In(language.AmericanEnglish, quantity.IP)
	for name, c := range map[string]struct {
		v    any
		want string
	}{
		"power":            {quantity.Kilowatts(3), "3.00 kW"},
		"reading.power":    {quantity.Kilowatts(3), "3.00 kW"},
		"capacity":         {quantity.Tons(3), "36000 Btu/h"},
		"cop":              {fact.Number(3.14), "3.1"},
		"compressionRatio": {fact.Times(3.14), "3.1:1"},
	} {
		if got := b.Reading(name, c.v); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	f := fact.New("forecast.heating", fact.Of("cop", fact.Number(3.14)),
		fact.Amount("capacity", quantity.Tons(3)), fact.Amount("supply", quantity.Fahrenheit(90)))
	if said := b.Say(f); strings.Contains(said, ":1") {
		t.Error(said)
	}
}

// A list is joined by the word that its sentence names, else by "and".
func TestListsAreJoined(t *testing.T) {
	b := Book{catalog: catalog{
		"both": parse("{of}"), "either": parse("{of|or}"), "list.and": parse("and"),
	}}
	terms := fact.Of("of", fact.Terms{"a", "b", "c"})
	for code, want := range map[fact.Code]string{"both": "A, b and c", "either": "A, b or c"} {
		if got := b.Say(fact.New(code, terms)); got != want {
			t.Errorf("%s: %q, want %q", code, got, want)
		}
	}
}
