package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"

	"github.com/satline/satline/quantity"
)

// InUnits rewrites an answer, compact JSON by the schema of that name in the
// description, so that its quantities stand in the units of a system, rounded to what is
// known of them: two digits of an uncertainty, and its value to the same place; of the
// rest, what the library shows people. It reads back as the answer does. An answer whose
// schema has no quantities, or that there is not, stays as it is.
func InUnits(schema string, answer []byte, system quantity.System) []byte {
	at := schemas[schema]
	if at == nil {
		return answer
	}
	w := rewriter{in: answer, out: make([]byte, 0, len(answer)+1), system: system}
	w.value(at)
	return append(w.out, w.in[w.copied:]...)
}

// A shape is what the description says of a value, as far as quantities go.
type shape struct {
	fields map[string]*shape
	items  *shape
	show   func(out, text []byte, system quantity.System) []byte
	// isFact has the kind of its value beside it.
	isFact bool
}

var (
	byKind  = map[string]*shape{} // of facts: "temperature difference"
	schemas = shapes()
)

// shapes reads the description.
func shapes() map[string]*shape {
	type node struct {
		Ref        string `json:"$ref"`
		Properties map[string]*node
		Items      *node
	}
	var d struct {
		Components struct{ Schemas map[string]*node }
	}
	if err := json.Unmarshal(Description, &d); err != nil {
		return nil
	}
	out := map[string]*shape{}
	quantities(out)
	for name := range d.Components.Schemas {
		if out[name] == nil {
			out[name] = &shape{isFact: name == "fact.Value"}
		}
	}
	var of func(n *node) *shape
	fill := func(s *shape, n *node) {
		if n.Properties != nil {
			s.fields = map[string]*shape{}
			for name, p := range n.Properties {
				s.fields[name] = of(p)
			}
		}
		if n.Items != nil {
			s.items = of(n.Items)
		}
	}
	of = func(n *node) *shape {
		if n.Ref != "" {
			return out[n.Ref[strings.LastIndexByte(n.Ref, '/')+1:]]
		}
		s := new(shape)
		fill(s, n)
		return s
	}
	for name, n := range d.Components.Schemas {
		fill(out[name], n)
	}
	return out
}

// quantities are the shapes of all quantities, by the names of their schemas.
func quantities(out map[string]*shape) {
	add[quantity.Temperature](out)
	add[quantity.TemperatureDelta](out)
	add[quantity.Pressure](out)
	add[quantity.GaugePressure](out)
	add[quantity.StaticPressure](out)
	add[quantity.Mass](out)
	add[quantity.MassFlow](out)
	add[quantity.Volume](out)
	add[quantity.VolumeFlow](out)
	add[quantity.Power](out)
	add[quantity.SpecificEnthalpy](out)
	add[quantity.SpecificEntropy](out)
	add[quantity.Density](out)
	add[quantity.SpecificVolume](out)
	add[quantity.Velocity](out)
	add[quantity.Area](out)
	add[quantity.Length](out)
	add[quantity.Current](out)
	add[quantity.Frequency](out)
	add[quantity.Voltage](out)
	add[quantity.Resistance](out)
	add[quantity.Capacitance](out)
	add[quantity.Conductance](out)
	add[quantity.HeatingValue](out)
	add[quantity.Ratio](out)
}

func add[T quantity.Quantity](out map[string]*shape) {
	s := &shape{show: show[T]}
	name := reflect.TypeFor[T]().Name()
	out["quantity."+name], out["quantity.Uncertain"+name] = s, s
	var of quantity.Uncertain[T]
	if e, ok := errors.AsType[*quantity.ParseError](of.UnmarshalText([]byte("?"))); ok {
		byKind[e.Quantity], byKind[e.Quantity+" ±"] = s, s
	}
}

// show appends a text of a quantity in the units of a system.
func show[T quantity.Quantity](out, text []byte, system quantity.System) []byte {
	var v quantity.Uncertain[T]
	if v.UnmarshalText(text) != nil {
		return append(out, text...)
	}
	style := quantity.Style{System: system}
	if v.Stated() {
		unit := quantity.UnitOf[T](system)
		size := v.Std * math.Abs(unit.Number(1)-unit.Number(0))
		style = style.In(unit.Symbol(), int(min(6, max(0, 1-math.Floor(math.Log10(size))))))
	}
	return v.AppendStyled(out, style)
}

// A rewriter goes over compact JSON that the library has written.
type rewriter struct {
	in, out    []byte
	at, copied int // of in
	system     quantity.System
}

// plain is the shape of what holds no quantities.
var plain = new(shape)

// value goes past a value, whose shape is nil where it holds no quantities.
func (w *rewriter) value(s *shape) {
	if s == nil {
		s = plain
	}
	switch w.in[w.at] {
	case '{':
		w.object(s)
	case '[':
		for w.in[w.at] != ']' {
			w.at++ // the bracket, or a comma
			if w.in[w.at] == ']' {
				break
			}
			w.value(s.items)
		}
		w.at++
	case '"':
		text := w.text()
		if s.show != nil {
			w.out = append(w.out, w.in[w.copied:w.at-len(text)-1]...)
			w.out = s.show(w.out, text, w.system)
			w.copied = w.at - 1
		}
	default:
		for w.at < len(w.in) && !isEnd(w.in[w.at]) {
			w.at++
		}
	}
}

// object goes past one; the kind of a fact says what its value is.
func (w *rewriter) object(s *shape) {
	var kind []byte
	for w.in[w.at] != '}' {
		w.at++ // the brace, or a comma
		if w.in[w.at] == '}' {
			break
		}
		name := w.text()
		w.at++ // the colon
		field := s.fields[string(name)]
		if s.isFact && string(name) == "value" {
			field = byKind[string(kind)]
		}
		from := w.at
		w.value(field)
		if s.isFact && string(name) == "kind" {
			kind = bytes.Trim(w.in[from:w.at], `"`)
		}
	}
	w.at++
}

// isEnd says that a number or a word ends before c.
func isEnd(c byte) bool { return c == ',' || c == ']' || c == '}' }

// text goes past a string, and returns what stands between its quotes.
func (w *rewriter) text() []byte {
	from := w.at + 1
	to := from
	for {
		to += bytes.IndexByte(w.in[to:], '"')
		back := 0 // slashes before the quote, each of which escapes what follows it
		for w.in[to-1-back] == '\\' {
			back++
		}
		if back%2 == 0 {
			break
		}
		to++
	}
	w.at = to + 1
	return w.in[from:to]
}
