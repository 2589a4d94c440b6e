package words_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
)

// Every code has a sentence in every language, of the same values.
func TestLanguagesSayTheSame(t *testing.T) {
	if diff := cmp.Diff(words.Shapes(language.English),
		words.Shapes(language.Spanish)); diff != "" {
		t.Errorf("English and Spanish differ in codes or values (-en +es):\n%s", diff)
	}
}

func TestDecimalComma(t *testing.T) {
	for tag, want := range map[string]bool{"en": false, "en-US": false, "es-MX": false,
		"es-US": false, "es-419": false, "es-CO": true, "es-AR": true, "es-ES": true} {
		if got := words.DecimalComma(language.MustParse(tag)); got != want {
			t.Errorf("%s writes a decimal comma: %v, want %v", tag, got, want)
		}
	}
}

// The Unicode CLDR says the same of every language that this library has a word on, in every
// region, and of every other language.
func TestDecimalCommaIsThatOfCLDR(t *testing.T) {
	check := func(tag language.Tag) {
		want := message.NewPrinter(tag).Sprintf("%.1f", 1.5) == "1,5"
		if got := words.DecimalComma(tag); got != want {
			t.Errorf("%v writes a decimal comma: %v, want %v", tag, got, want)
		}
	}
	for _, base := range language.Supported.BaseLanguages() {
		tag, err := language.Compose(base)
		if err != nil {
			t.Fatal(err)
		}
		check(tag)
		if len(base.String()) > 2 {
			continue
		}
		for _, region := range language.Supported.Regions() {
			if tag, err := language.Compose(base, region); err == nil {
				check(tag)
			}
		}
	}
}

// The plural rules of the Unicode CLDR have two forms for whole numbers in both languages,
// but for millions in Spanish, where the second serves.
func TestPluralIsThatOfCLDR(t *testing.T) {
	says := func(tag language.Tag, n int) string {
		text := words.In(tag, quantity.IP).Say(fact.New("record.open", fact.Of("count", n)))
		return strings.Replace(text, strconv.Itoa(n), "", 1)
	}
	for _, tag := range []language.Tag{language.English, language.Spanish} {
		for n := range 200 {
			one := plural.Cardinal.MatchPlural(tag, n, 0, 0, 0, 0) == plural.One
			if got := says(tag, n) == says(tag, 1); got != one {
				t.Errorf("%v: %d is said as one is: %v, want %v", tag, n, got, one)
			}
		}
	}
}

func TestNearestLanguage(t *testing.T) {
	for tag, want := range map[string]string{"en-GB": "en", "es-CO": "es", "fr": "en", "": "en"} {
		parsed := language.Und
		if tag != "" {
			parsed = language.MustParse(tag)
		}
		base, _ := words.In(parsed, quantity.IP).Language().Base()
		if base.String() != want {
			t.Errorf("%q is spoken to in %v, want %s", tag, base, want)
		}
	}
}
