package picture

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"golang.org/x/text/language"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// Book has the words of a picture in the language of a BCP 47 tag, English where it is none.
func Book(tag string, sys quantity.System) *words.Book {
	parsed, err := language.Parse(tag)
	if err != nil {
		parsed = language.English
	}
	return words.In(parsed, sys)
}

// OneLine takes out of a text what does not belong in a line of a picture.
func OneLine(s string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, " "))), " ")
}

// Number writes a label as the language of a book has it, with a true minus sign, and none
// before zero.
func Number(b *words.Book, v float64, digits int) string {
	s := b.Decimal(strconv.FormatFloat(math.Abs(v), 'f', digits, 64))
	if v < 0 && strings.Trim(s, "0.,") != "" {
		return "−" + s
	}
	return s
}

// fit shortens a word to a width.
func fit(style text.Style, word string, width vg.Length) string {
	if style.Width(word) <= width {
		return word
	}
	letters := []rune(word)
	for len(letters) > 1 && style.Width(string(letters)+"…") > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

// Each calls visit for every multiple of step from low to high.
func Each(low, high, step float64, visit func(float64)) {
	const slack = 1e-9
	for i := math.Ceil(low/step - slack); i <= math.Floor(high/step+slack); i++ {
		visit(i * step)
	}
}

// Multiple reports whether v is a multiple of step.
func Multiple(v, step float64) bool {
	return math.Abs(v/step-math.Round(v/step)) < 1e-6
}
