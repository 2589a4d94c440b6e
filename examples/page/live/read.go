package live

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// A Typed is the text of one field as it is being typed.
type Typed struct {
	Path     string           `json:"path"`
	Kind     string           `json:"kind"`
	Text     string           `json:"text"` // with its unit
	Unit     string           `json:"unit"` // that the field shows
	Language satline.Language `json:"language"`
	// Typing says that more may follow: what is too small may only be half of a number.
	Typing bool `json:"typing"`
}

// A Reading is what the text says, or what is wrong with it in one line.
type Reading struct {
	// Unit is the one that was typed, Number what stands before it.
	Unit    string `json:"unit,omitempty"`
	Number  string `json:"number,omitempty"`
	Problem string `json:"problem,omitempty"`
}

// Read reads one field by itself, as the library would read it in a visit.
func Read(in Typed) Reading {
	b := book{in.Language}
	m, ok := measureOf(in.Kind)
	if !ok {
		return Reading{}
	}
	text := strings.TrimSpace(in.Text)
	value, err := m.parse(text)
	if err != nil && in.Kind == "GaugePressure" {
		// A gauge shows bar above the air around it, written or not.
		text += "g"
		value, err = m.parse(text)
	}
	if err != nil {
		return Reading{Problem: b.sentence("problem.number", "unit", in.Unit)}
	}
	out := Reading{}
	afterNumber := func(r rune) bool { return !strings.ContainsRune("+-−.0123456789", r) }
	if n := strings.IndexFunc(text, afterNumber); n > 0 {
		number := strings.ReplaceAll(text[:n], "−", "-")
		if v, err := strconv.ParseFloat(number, 64); err == nil {
			for _, u := range m.units(quantity.IP) {
				if near(u.Zero+u.Scale*v, value) && like(text[n:], u.Symbol) {
					out.Unit, out.Number = u.Symbol, number
				}
			}
		}
	}
	var far *quantity.RangeError
	if errors.As(problemAt(in.Path, text), &far) {
		low, lowOK := si(far.Min)
		high, highOK := si(far.Max)
		if in.Typing && lowOK && math.Abs(value) <= max(math.Abs(low), math.Abs(high)) {
			return out
		}
		if lowOK && highOK {
			out.Problem = b.sentence("problem.range",
				"low", b.figures(m.show(low, in.Unit)),
				"high", b.figures(m.show(high, in.Unit)))
		} else {
			out.Problem = b.word("problem.far")
		}
	}
	return out
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b), 1e-6) }

// like reports whether a unit was meant, of several that the number would fit.
func like(typed, symbol string) bool {
	first := func(s string) string {
		s = strings.ToLower(strings.TrimLeft(s, " °º"))
		return s[:min(1, len(s))]
	}
	return first(typed) == first(symbol)
}

// si is a value of an error in units of SI.
func si(v fmt.Stringer) (float64, bool) {
	r := reflect.ValueOf(v)
	if !r.IsValid() || r.Kind() != reflect.Float64 {
		return 0, false
	}
	return r.Float(), true
}

// show writes a value of SI in a unit, to three figures at least.
func (m measure) show(v float64, symbol string) string {
	units := m.units(quantity.IP)
	u := units[0]
	for _, x := range units {
		if x.Symbol == symbol {
			u = x
		}
	}
	n := (v - u.Zero) / u.Scale
	decimals := 0
	if a := math.Abs(n); a > 0 && a < 100 {
		decimals = min(3, 2-int(math.Floor(math.Log10(a))))
	}
	text := strconv.FormatFloat(n, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text + " " + u.Symbol
}

// problemAt is what a visit with nothing else in it has against a text at a path.
func problemAt(path, text string) error {
	doc := map[string]any{}
	put(doc, "equipment.refrigerant", "R-410A")
	put(doc, "equipment.metering", "TXV")
	put(doc, path, text)
	written, err := json.Marshal(doc)
	if err != nil {
		return err
	}
	v, err := satline.DecodeVisit(written)
	if err != nil {
		return err
	}
	for _, e := range v.Validate() {
		if e.Field == path {
			return e
		}
	}
	return nil
}

func put(doc map[string]any, path string, value string) {
	name, rest, more := strings.Cut(path, ".")
	if !more {
		doc[name] = value
		return
	}
	inner, ok := doc[name].(map[string]any)
	if !ok {
		inner = map[string]any{}
		doc[name] = inner
	}
	put(inner, rest, value)
}

// refused are the fields of a visit that the library refuses below zero, all asked at once.
var refused = sync.OnceValue(func() map[string]bool {
	out, doc := map[string]bool{}, map[string]any{}
	put(doc, "equipment.refrigerant", "R-410A")
	put(doc, "equipment.metering", "TXV")
	for _, l := range leaves(reflect.TypeFor[satline.Visit](), "") {
		m, ok := measureOf(kindOf(l.of))
		if !ok || l.of.Kind() == reflect.Slice {
			continue
		}
		below := "-1 " + m.units(quantity.SI)[0].Symbol
		if _, err := m.parse(below); err != nil {
			out[l.path] = true
			continue
		}
		put(doc, l.path, below)
	}
	text, err := json.Marshal(doc)
	if err != nil {
		return out
	}
	v, err := reading(text)
	if err != nil {
		return out
	}
	for _, e := range v.Validate() {
		out[e.Field] = true
	}
	return out
})

// belowZero tells whether a field may be below zero.
func belowZero(f Field) bool {
	if f.Path == "task.forecast.added" {
		return true // what is recovered
	}
	if strings.HasPrefix(f.Path, "task.") || strings.Contains(f.Path, "*") || f.Path == "move" {
		return f.Kind == "Temperature" || f.Kind == "GaugePressure"
	}
	return !refused()[f.Path]
}
