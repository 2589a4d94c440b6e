package fact

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"time"

	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/quantity"
)

// A kind is a type that a value may have, by its name in JSON.
type kind struct {
	name string
	of   reflect.Type
}

func of[T any](name string) kind { return kind{name, reflect.TypeFor[T]()} }

// measured is the kind of a quantity, and that of one with its uncertainty.
func measured[T quantity.Quantity](name string) []kind {
	return []kind{of[T](name), of[quantity.Uncertain[T]](name + " ±")}
}

var kinds = func() []kind {
	out := []kind{
		of[Share]("share"), of[Times]("times"), of[Number]("number"), of[int]("count"),
		of[time.Duration]("time"), of[Term]("term"), of[Terms]("terms"), of[string]("text"),
	}
	for _, more := range quantities {
		out = append(out, more...)
	}
	return out
}()

// Kinds lists the kinds of value there are, by their names in JSON.
func Kinds() []string {
	out := make([]string, len(kinds))
	for i, k := range kinds {
		out[i] = k.name
	}
	return out
}

// Kind returns the name that JSON gives the type of v; empty for a type that a value
// cannot have.
func (v Value) Kind() string {
	for _, k := range kinds {
		if reflect.TypeOf(v.Of) == k.of {
			return k.name
		}
	}
	return ""
}

type valueJSON struct {
	Name  string          `json:"name"`
	Kind  string          `json:"kind"`
	Value json.RawMessage `json:"value"`
}

// MarshalJSON writes {"name": "superheat", "kind": "temperature difference", "value": "5 K"}.
// Quantities are text with their unit; shares and counts are numbers.
func (v Value) MarshalJSON() ([]byte, error) {
	kind := v.Kind()
	if kind == "" {
		return nil, fmt.Errorf("fact: value %q has type %T, which no value may have", v.Name, v.Of)
	}
	content := v.Of
	if d, ok := content.(time.Duration); ok {
		content = span.Span(d)
	}
	out := append(make([]byte, 0, 128), `{"name":`...)
	out, err := appendName(out, v.Name)
	if err != nil {
		return nil, err
	}
	out = append(append(append(out, `,"kind":"`...), kind...), `","value":`...)
	if t, ok := content.(encoding.TextMarshaler); ok {
		text, err := t.MarshalText() // digits and a unit, nothing that is escaped
		out = append(append(append(out, '"'), text...), `"}`...)
		return out, err
	}
	value, err := json.Marshal(content)
	return append(append(out, value...), '}'), err
}

// appendName writes letters as they are, and all else as JSON has it.
func appendName(b []byte, name string) ([]byte, error) {
	for _, c := range []byte(name) {
		if !('a' <= c && c <= 'z' || 'A' <= c && c <= 'Z') {
			text, err := json.Marshal(name)
			return append(b, text...), err
		}
	}
	return append(append(append(b, '"'), name...), '"'), nil
}

// UnmarshalJSON reads what MarshalJSON writes.
func (v *Value) UnmarshalJSON(text []byte) error {
	var in valueJSON
	if err := json.Unmarshal(text, &in); err != nil {
		return err
	}
	for _, k := range kinds {
		if k.name != in.Kind {
			continue
		}
		to := reflect.New(k.of)
		content := to.Interface()
		if d, ok := content.(*time.Duration); ok {
			content = (*span.Span)(d)
		}
		if _, isText := content.(encoding.TextUnmarshaler); isText && len(in.Value) > 0 &&
			in.Value[0] != '"' {
			return fmt.Errorf(
				"fact: value %q of kind %q is not text; write it with its unit", in.Name, in.Kind,
			)
		}
		if err := json.Unmarshal(in.Value, content); err != nil {
			return fmt.Errorf("fact: value %q: %w", in.Name, err)
		}
		*v = Value{in.Name, to.Elem().Interface()}
		return nil
	}
	return fmt.Errorf("fact: kind %.40q of value %.40q is not known; see Kinds", in.Kind, in.Name)
}
