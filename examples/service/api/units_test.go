package api

import (
	"bytes"
	"encoding"
	"encoding/json"
	"io"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

// Every quantity that the description has units of is shown in those asked for.
func TestEveryQuantityIsShown(t *testing.T) {
	var description struct {
		Components struct {
			Schemas map[string]struct {
				Units []string `json:"x-units"`
			}
		}
	}
	if err := json.Unmarshal(Description, &description); err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for of := range shown {
		name, ofUncertain, uncertain := strings.Cut(of.String(), "[")
		if uncertain {
			name += ofUncertain[strings.LastIndexByte(ofUncertain, '.')+1 : len(ofUncertain)-1]
		}
		known[name] = true
	}
	for name, s := range description.Components.Schemas {
		if len(s.Units) > 0 && !known[name] {
			t.Errorf("%s is not among %v", name, known)
		}
	}
	if len(shown) != 2*25 {
		t.Errorf("%d types, want 25 quantities, each alone and with its uncertainty", len(shown))
	}
}

func assessment(t testing.TB, visit []byte) *satline.Assessment {
	t.Helper()
	v, err := satline.DecodeVisit(visit)
	if err != nil {
		t.Fatal(err)
	}
	a, err := satline.Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	return &a
}

// An assessment in other units is one still, and in both systems the same but for them.
func TestAnAssessmentReadsBack(t *testing.T) {
	for _, system := range []quantity.System{quantity.IP, quantity.SI} {
		text, err := AppendInUnits(nil, assessment(t, []byte(ExampleVisit)), system)
		if err != nil {
			t.Fatal(err)
		}
		var a satline.Assessment
		if err := json.Unmarshal(text, &a); err != nil {
			t.Fatalf("%v: %v", system, err)
		}
		if again, err := AppendInUnits(nil, &a, system); string(again) != string(text) {
			t.Errorf("%v twice is not the same: %v", system, err)
		}
	}
}

// What is written is what json.Marshal writes, but for the quantities, of every answer with
// anything in its fields.
func TestAllButQuantitiesIsAsMarshalHasIt(t *testing.T) {
	for _, o := range Operations {
		if o.Gives == nil {
			continue
		}
		t.Run(o.ID, rapid.MakeCheck(func(t *rapid.T) {
			answer := reflect.New(o.Gives)
			filler{t, rapid.IntRange(0, 9).Draw(t, "bad") == 0}.fill(answer.Elem())
			sameButQuantities(t, answer.Interface())
		}))
	}
}

func sameButQuantities(t rapid.TB, answer any) {
	t.Helper()
	exact, wrong := json.Marshal(answer)
	for _, system := range []quantity.System{quantity.IP, quantity.SI} {
		text, err := AppendInUnits(nil, answer, system)
		if err != nil || wrong != nil {
			if (err == nil) != (wrong == nil) {
				t.Fatalf("%v, but json.Marshal %v", err, wrong)
			}
			return
		}
		a, b := json.NewDecoder(bytes.NewReader(exact)), json.NewDecoder(bytes.NewReader(text))
		a.UseNumber()
		b.UseNumber()
		for {
			want, end := a.Token()
			got, err := b.Token()
			if end == io.EOF && err == io.EOF {
				break
			}
			if err != nil || want != got && !(isQuantity(want) && isQuantity(got)) {
				t.Fatalf("%q, %v; want %q\nin %s\nof %s", got, err, want, text, exact)
			}
			if system == quantity.IP && isMetricDifference(got) {
				t.Fatalf("%q in inch-pound units\nin %s", got, text)
			}
		}
	}
}

var symbols = quantity.Symbols()

func isQuantity(t json.Token) bool {
	s, _ := t.(string)
	return slices.ContainsFunc(symbols, func(symbol string) bool {
		return strings.HasSuffix(s, " "+symbol)
	})
}

// isMetricDifference tells the quantity that most answers have, deep inside or not.
func isMetricDifference(t json.Token) bool {
	s, _ := t.(string)
	var d quantity.Uncertain[quantity.TemperatureDelta]
	return d.UnmarshalText([]byte(s)) == nil &&
		(strings.HasSuffix(s, " K") || strings.HasSuffix(s, "°C"))
}

// A filler draws what stands in the fields of an answer.
type filler struct {
	t *rapid.T
	// bad says that there may be what cannot be written, too.
	bad bool
}

func pick[T any](f filler, good []T, bad ...T) T {
	if f.bad {
		good = append(good, bad...)
	}
	return rapid.SampledFrom(good).Draw(f.t, reflect.TypeFor[T]().Name())
}

// special fills what has values of its own, and says whether it was that.
func (f filler) special(v reflect.Value) bool {
	switch of := v.Addr().Interface().(type) {
	case *fact.Value:
		*of = pick(f, []fact.Value{
			fact.Of("share", fact.Share(0.3)), fact.Of("times", fact.Times(1e-9)),
			fact.Of("n", 7), fact.Of("for", 90*time.Millisecond), fact.Of("fluid", "R-410A <&>"),
			fact.Of("cause", fact.Term("a.b")), fact.Of("looks", fact.Terms{"a", "b"}),
			fact.Amount("mass", quantity.Ounces(6.1)),
			fact.Measured("p", quantity.PSIA(21).PlusMinus(quantity.PSIA(0.13))),
		}, fact.Value{Name: "nothing"})
		return true
	case *quantity.Budget[quantity.TemperatureDelta]:
		for range rapid.IntRange(0, 2).Draw(f.t, "terms") {
			of.Add("returnWetBulb", quantity.CelsiusDelta(0.3))
		}
		return true
	case encoding.TextMarshaler:
		if v.Kind() == reflect.Int {
			var known []int64
			for i := range int64(20) {
				if v.SetInt(i); isText(of) {
					known = append(known, i)
				}
			}
			v.SetInt(pick(f, known, -1))
			return true
		}
	}
	if _, ok := shown[v.Type()]; ok && v.Kind() == reflect.Struct { // with its uncertainty
		f.fill(v.Field(0))
		v.Field(1).SetFloat(pick(f, []float64{0, 0.04, 0.25, 30}, -1, math.NaN()))
		return true
	}
	return false
}

func (f filler) fill(v reflect.Value) {
	if f.special(v) {
		return
	}
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(pick(f, []float64{
			0, 0.5, 1, 1e-7, 3.25e-19, 300, 123456.789, 1e21, 2e300, math.Copysign(0, -1), -4,
		}, math.NaN(), math.Inf(1)))
		if _, ok := shown[v.Type()]; ok && !f.bad {
			v.SetFloat(math.Abs(v.Float()))
		}
	case reflect.Int, reflect.Int64:
		v.SetInt(rapid.Int64().Draw(f.t, "count"))
	case reflect.Bool:
		v.SetBool(rapid.Bool().Draw(f.t, "is"))
	case reflect.String:
		v.SetString(rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{
			"", "plain", "9 °F ± 1", "a\u2028b", "<&>", "\"\\\n\x7f", "\xff", "…",
		})).Draw(f.t, "text"))
	case reflect.Pointer:
		if rapid.Bool().Draw(f.t, "there") {
			v.Set(reflect.New(v.Type().Elem()))
			f.fill(v.Elem())
		}
	case reflect.Slice:
		if n := rapid.IntRange(-1, 2).Draw(f.t, "items"); n >= 0 {
			v.Set(reflect.MakeSlice(v.Type(), n, n))
		}
		for i := range v.Len() {
			f.fill(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f.fill(v.Field(i))
		}
	}
}

func isText(of encoding.TextMarshaler) bool {
	_, err := of.MarshalText()
	return err == nil
}

func BenchmarkAppendInUnits(b *testing.B) {
	a := assessment(b, []byte(ExampleVisit))
	var room []byte
	b.ReportAllocs()
	for b.Loop() {
		room, _ = AppendInUnits(room[:0], a, quantity.IP)
	}
}
