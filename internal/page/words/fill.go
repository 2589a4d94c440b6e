package words

import (
	"math"
	"reflect"
	"sync"
	"time"

	"github.com/satline/satline/quantity/fact"
)

// Fill makes the sentence of every fact in what v points to, and rounds every number there to
// what no field instrument tells, so that a JSON form is short and says what its sentences say.
func Fill(v any, say func(fact.Fact) string) {
	to := reflect.ValueOf(v).Elem()
	walk(to, shapeOf(to.Type()), say)
}

var factType, durationType = reflect.TypeFor[fact.Fact](), reflect.TypeFor[time.Duration]()

// A shape is what there is to fill in a type; nil is nothing.
type shape struct {
	inside *shape // of a pointer or a slice
	fields []field
	fact   bool
}

// A field is one of a struct that there is something to fill in.
type field struct {
	index int
	shape *shape
}

var shapes sync.Map // by reflect.Type

func shapeOf(t reflect.Type) *shape {
	if s, ok := shapes.Load(t); ok {
		return s.(*shape)
	}
	s := newShape(t)
	shapes.Store(t, s)
	return s
}

func newShape(t reflect.Type) *shape {
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice:
		if inside := shapeOf(t.Elem()); inside != nil {
			return &shape{inside: inside}
		}
	case reflect.Interface, reflect.Float64:
		return &shape{}
	case reflect.Int64:
		if t == durationType {
			return &shape{}
		}
	case reflect.Struct:
		s := &shape{fact: t == factType}
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() {
				if inside := shapeOf(f.Type); inside != nil {
					s.fields = append(s.fields, field{i, inside})
				}
			}
		}
		if s.fact || len(s.fields) > 0 {
			return s
		}
	}
	return nil
}

func walk(v reflect.Value, s *shape, say func(fact.Fact) string) {
	if s == nil {
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), s.inside, say)
		}
	case reflect.Interface:
		if v.IsNil() {
			return
		}
		if s := shapeOf(v.Elem().Type()); s != nil {
			inside := reflect.New(v.Elem().Type()).Elem()
			inside.Set(v.Elem())
			walk(inside, s, say)
			v.Set(inside)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), s.inside, say)
		}
	case reflect.Float64:
		v.SetFloat(shortened(v.Float()))
	case reflect.Int64:
		v.SetInt(int64(time.Duration(v.Int()).Round(time.Second)))
	case reflect.Struct:
		for _, f := range s.fields {
			walk(v.Field(f.index), f.shape, say)
		}
		if s.fact {
			if f := v.Addr().Interface().(*fact.Fact); !f.IsZero() {
				f.Text = say(*f)
			}
		}
	}
}

// shortened is v in nine digits; what is too small for that stays as it is.
func shortened(v float64) float64 {
	const digits, least = 9, 1e-290
	size := math.Abs(v)
	if !(size >= least && size <= math.MaxFloat64) {
		return v
	}
	place := digits - 1 - magnitude(size)
	if place < 0 {
		step := math.Pow10(-place)
		return step * math.Round(v/step)
	}
	scale := math.Pow10(place)
	return math.Round(v*scale) / scale
}

// magnitude is the power of ten that v has reached.
func magnitude(v float64) int {
	_, bits := math.Frexp(v)
	n := int(math.Floor(float64(bits-1) * math.Log10E * math.Ln2))
	if v >= math.Pow10(n+1) {
		n++
	}
	return n
}
