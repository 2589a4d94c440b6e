package satline

import (
	"encoding/json"
	"math"
	"reflect"
	"time"

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
	return language.book(units).Show(v.Of)
}

// Word returns the words of a code that stands inside sentences and tables, as
// "reading.suctionLine" or "cause.undercharge"; the code itself where it has none.
func Word(code string, language Language) string { return language.book(quantity.SI).Term(code) }

// In returns the assessment with its sentences in another language and system of units. It
// shares nothing with a.
func (a Assessment) In(language Language, units quantity.System) Assessment {
	out := a.clone()
	out.Language, out.Units = language, units
	speak(&out, language.book(units))
	return out
}

// Reworded returns the assessment with sentences of your own: say makes that of a fact, and
// returns false where the one that stands is to stay. Show words the values of a fact. It
// shares nothing with a.
func (a Assessment) Reworded(say func(fact.Fact) (string, bool)) Assessment {
	out := a.clone()
	walk(reflect.ValueOf(&out).Elem(), func(f fact.Fact) string {
		if text, ok := say(f); ok {
			return text
		}
		return f.Text
	})
	return out
}

// clone is the zero Assessment where a holds what Assess never makes, as a value that is no
// number.
func (a Assessment) clone() (out Assessment) {
	text, err := json.Marshal(a)
	if err != nil || json.Unmarshal(text, &out) != nil {
		return Assessment{}
	}
	return out
}

// speak rounds every number of v to what no field instrument tells, so that a JSON form is
// short and says what its sentences say, and makes the sentence of every fact.
func speak(v any, book *words.Book) { walk(reflect.ValueOf(v).Elem(), book.Say) }

var factType, durationType = reflect.TypeFor[fact.Fact](), reflect.TypeFor[time.Duration]()

func walk(v reflect.Value, say func(fact.Fact) string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), say)
		}
	case reflect.Interface:
		if !v.IsNil() {
			inside := reflect.New(v.Elem().Type()).Elem()
			inside.Set(v.Elem())
			walk(inside, say)
			v.Set(inside)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), say)
		}
	case reflect.Float64:
		v.SetFloat(shortened(v.Float()))
	case reflect.Int64:
		if v.Type() == durationType {
			v.SetInt(int64(time.Duration(v.Int()).Round(time.Second)))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				walk(v.Field(i), say)
			}
		}
		if v.Type() == factType {
			if f := v.Addr().Interface().(*fact.Fact); !f.IsZero() {
				f.Text = say(*f)
			}
		}
	}
}

// shortened is v in nine digits.
func shortened(v float64) float64 {
	const digits = 9
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return v
	}
	place := digits - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if place < 0 {
		step := math.Pow10(-place)
		return step * math.Round(v/step)
	}
	scale := math.Pow10(place)
	return math.Round(v*scale) / scale
}
