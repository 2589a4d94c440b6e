package api

import (
	"cmp"
	"encoding"
	"encoding/json"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A writer appends values as JSON. It goes over the fields as json.Marshal does, to which
// it leaves whatever is not common in an answer; that alone has no way to tell a quantity
// which units to be written in.
type writer struct {
	out    []byte
	system quantity.System
	err    error // the last
}

// A form appends a value of one type.
type form func(w *writer, v reflect.Value)

var forms sync.Map // form by reflect.Type

func formOf(t reflect.Type) form {
	if f, ok := forms.Load(t); ok {
		return f.(form)
	}
	f := newForm(t)
	forms.Store(t, f)
	return f
}

// A stand-in is a type that is written as another value.
type standIn interface{ JSONForm() any }

func newForm(t reflect.Type) form {
	if f := shown[t]; f != nil {
		return f
	}
	switch {
	case t.Kind() == reflect.Pointer:
		return pointer(formOf(t.Elem()))
	case t == reflect.TypeFor[fact.Value]():
		return (*writer).value
	case t.Implements(reflect.TypeFor[standIn]()):
		return (*writer).standIn
	case t.Implements(reflect.TypeFor[json.Marshaler]()):
		return (*writer).other
	case t.Implements(reflect.TypeFor[encoding.TextMarshaler]()):
		return (*writer).name
	}
	switch t.Kind() {
	case reflect.Struct:
		return object(t)
	case reflect.Slice:
		return list(formOf(t.Elem()))
	case reflect.String:
		return (*writer).text
	case reflect.Float64:
		return (*writer).number
	case reflect.Bool:
		return (*writer).bool
	}
	return (*writer).other
}

// other leaves a value to json.Marshal.
func (w *writer) other(v reflect.Value) {
	text, err := json.Marshal(v.Interface())
	if err != nil {
		w.err = err
	}
	w.out = append(w.out, text...)
}

func (w *writer) standIn(v reflect.Value) {
	inner := reflect.ValueOf(v.Interface().(standIn).JSONForm())
	formOf(inner.Type())(w, inner)
}

func (w *writer) name(v reflect.Value) {
	text, err := v.Interface().(encoding.TextMarshaler).MarshalText()
	if err != nil {
		w.err = err
	}
	w.string(string(text))
}

func (w *writer) text(v reflect.Value) { w.string(v.String()) }

func (w *writer) string(s string) {
	if !isPlain(s) {
		w.other(reflect.ValueOf(s))
		return
	}
	w.out = append(append(append(w.out, '"'), s...), '"')
}

// isPlain says that a text stands in JSON as it is; of a few that do it says no.
func isPlain(s string) bool {
	var all byte
	for i := range len(s) {
		if special[s[i]] {
			return false
		}
		all |= s[i]
	}
	return all < utf8.RuneSelf || utf8.ValidString(s)
}

// special are the bytes of what encoding/json escapes: 0xe2 begins U+2028 and U+2029, and
// other marks.
var special = func() (is [256]bool) {
	for c := range byte(' ') {
		is[c] = true
	}
	for _, c := range []byte("\"\\<>&\xe2") {
		is[c] = true
	}
	return is
}()

// number writes what ECMAScript does, as encoding/json has it.
func (w *writer) number(v reflect.Value) {
	f := v.Float()
	switch size := math.Abs(f); {
	case !(size <= math.MaxFloat64):
		w.other(v) // has the error
	case size == 0 || 1e-6 <= size && size < 1e21:
		w.out = strconv.AppendFloat(w.out, f, 'f', -1, 64)
	default:
		w.out = strconv.AppendFloat(w.out, f, 'e', -1, 64)
		if n := len(w.out); w.out[n-4] == 'e' && w.out[n-2] == '0' { // e-09 is e-9
			w.out[n-2] = w.out[n-1]
			w.out = w.out[:n-1]
		}
	}
}

func (w *writer) bool(v reflect.Value) { w.out = strconv.AppendBool(w.out, v.Bool()) }

// value appends a value of a fact.
func (w *writer) value(v reflect.Value) {
	value := fact.Value{Name: v.Field(0).String(), Of: v.Field(1).Interface()}
	kind := value.Kind()
	if kind == "" {
		w.other(v) // has the error
		return
	}
	w.out = append(w.out, `{"name":`...)
	w.string(value.Name)
	w.out = append(append(append(w.out, `,"kind":"`...), kind...), `","value":`...)
	if d, ok := value.Of.(time.Duration); ok {
		w.string(d.String())
	} else {
		of := reflect.ValueOf(value.Of)
		formOf(of.Type())(w, of)
	}
	w.out = append(w.out, '}')
}

func pointer(to form) form {
	return func(w *writer, v reflect.Value) {
		if v.IsNil() {
			w.out = append(w.out, "null"...)
			return
		}
		to(w, v.Elem())
	}
}

func list(of form) form {
	return func(w *writer, v reflect.Value) {
		if v.IsNil() {
			w.out = append(w.out, "null"...)
			return
		}
		w.out = append(w.out, '[')
		for i := range v.Len() {
			if i > 0 {
				w.out = append(w.out, ',')
			}
			of(w, v.Index(i))
		}
		w.out = append(w.out, ']')
	}
}

func object(t reflect.Type) form {
	type field struct {
		index []int
		label string // its name and the colon
		form  form
		omits func(reflect.Value) bool // nil where it is always written
	}
	var fields []field
	for _, f := range reflect.VisibleFields(t) {
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || !f.IsExported() || name == "-" {
			continue
		}
		label := strconv.Quote(cmp.Or(name, f.Name)) + ":"
		fields = append(fields, field{f.Index, label, formOf(f.Type), omission(f.Type, options)})
	}
	return func(w *writer, v reflect.Value) {
		before := byte('{')
		for i := range fields {
			f := &fields[i]
			at := v.Field(f.index[0])
			for _, inner := range f.index[1:] {
				at = at.Field(inner)
			}
			if f.omits != nil && f.omits(at) {
				continue
			}
			w.out = append(append(w.out, before), f.label...)
			f.form(w, at)
			before = ','
		}
		if before == '{' {
			w.out = append(w.out, '{')
		}
		w.out = append(w.out, '}')
	}
}

type zeroer interface{ IsZero() bool }

// omission says by the options of a tag which values of a type are left out; nil is none.
func omission(t reflect.Type, options string) func(reflect.Value) bool {
	switch {
	case options == "omitempty":
		return func(v reflect.Value) bool {
			return v.IsZero() || v.Kind() == reflect.Slice && v.Len() == 0
		}
	case options != "omitzero":
		return nil
	case !t.Implements(reflect.TypeFor[zeroer]()):
		return reflect.Value.IsZero
	}
	return func(v reflect.Value) bool {
		return v.Kind() == reflect.Pointer && v.IsNil() || v.Interface().(zeroer).IsZero()
	}
}
