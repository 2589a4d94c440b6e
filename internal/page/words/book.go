package words

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"golang.org/x/text/language"
)

// A Book makes sentences in one language and one system of units.
type Book struct {
	tag     language.Tag
	units   quantity.System
	catalog catalog
	comma   bool
}

// In returns the book of the language that is nearest to tag.
func In(tag language.Tag, units quantity.System) *Book {
	spoken, index, _ := matcher.Match(tag)
	return &Book{tag: spoken, units: units, catalog: catalogs[index](), comma: DecimalComma(tag)}
}

// Language is the one that the book is in.
func (b *Book) Language() language.Tag { return b.tag }

// Say returns the sentence of a fact; the code and the values where there is none.
func (b *Book) Say(f fact.Fact) string { return string(b.say(nil, &f)) }

// Fill is the function of that name, with the sentences of the book.
func (b *Book) Fill(v any) { Fill(v, b.say) }

func (b *Book) say(room []byte, f *fact.Fact) []byte {
	t, ok := b.catalog[string(f.Code)]
	if !ok {
		return append(room, f.String()...)
	}
	out, ok := b.append(room, t, f)
	if !ok {
		return append(room, f.String()...)
	}
	if t[0].name != "" || t[0].text == "" {
		start := len(room)
		out = append(out[:start], capital(out[start:])...)
	}
	return out
}

// Term returns the words of a code that stands inside sentences; the code itself where
// there are none.
func (b *Book) Term(code string) string { return string(b.term(nil, code)) }

func (b *Book) term(out []byte, code string) []byte {
	t, ok := b.catalog[code]
	if !ok {
		return append(out, code...)
	}
	out, _ = b.append(out, t, &fact.Fact{})
	return out
}

// Show writes a value as it stands inside a sentence.
func (b *Book) Show(v any) string { return string(b.show(nil, v)) }

// append words a fact, and a term in it with the values of the fact. It reports false, and
// appends nothing, where a value is missing.
func (b *Book) append(out []byte, t template, f *fact.Fact) ([]byte, bool) {
	start := len(out)
	for i := range t {
		p := &t[i]
		switch {
		case p.optional != nil:
			out, _ = b.append(out, p.optional, f)
		case p.name == "":
			out = append(out, p.text...)
		default:
			v, ok := f.Value(p.name)
			if !ok {
				return out[:start], false
			}
			n, counts := v.Of.(int)
			term, nested := v.Of.(fact.Term)
			terms, _ := v.Of.(fact.Terms)
			switch {
			case len(terms) > 0 && len(p.forms) > 0:
				out = b.list(out, terms, p.forms[0])
			case counts && len(p.forms) > 0:
				out = append(out, p.forms[min(form(n), len(p.forms)-1)]...)
			case nested:
				if said, ok := b.catalog[string(term)]; ok {
					out, _ = b.append(out, said, f)
					break
				}
				fallthrough
			default:
				name := p.name
				if of, ok := f.Value("feature"); ok {
					term, _ := of.Of.(fact.Term)
					name = string(term)
				}
				out = b.reading(out, name, v.Of)
			}
		}
	}
	return out, true
}

// form is 0 for the singular, 1 for the plural, which both languages have for all but one.
func form(n int) int {
	if n == 1 {
		return 0
	}
	return 1
}

func capital(text []byte) []byte {
	first, size := utf8.DecodeRune(text)
	if !unicode.IsLower(first) {
		return text
	}
	upper := unicode.ToUpper(first)
	if utf8.RuneLen(upper) == size {
		utf8.EncodeRune(text, upper)
		return text
	}
	return append(utf8.AppendRune(nil, upper), text[size:]...)
}

// Decimal writes the number of a text, with a decimal point and commas between thousands, as the
// language does.
func (b *Book) Decimal(s string) string {
	if !b.comma {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch r {
		case '.':
			return ','
		case ',':
			return '.'
		}
		return r
	}, s)
}
