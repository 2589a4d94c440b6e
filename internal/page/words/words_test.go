package words_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"golang.org/x/text/language"
)

// Every code has a sentence in every language, of the same values.
func TestLanguagesSayTheSame(t *testing.T) {
	if diff := cmp.Diff(words.Shapes(language.English), words.Shapes(language.Spanish)); diff != "" {
		t.Errorf("English and Spanish differ in codes or values (-en +es):\n%s", diff)
	}
}

func TestDecimalComma(t *testing.T) {
	for tag, want := range map[string]bool{"en": false, "en-US": false, "es-MX": false, "es-US": false, "es-419": false, "es-CO": true, "es-AR": true, "es-ES": true} {
		if got := words.DecimalComma(language.MustParse(tag)); got != want {
			t.Errorf("%s writes a decimal comma: %v, want %v", tag, got, want)
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
