package words

import (
	"math"
	"reflect"
	"sync"
	"time"

	"github.com/satline/satline/quantity"
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
		if t == factType {
			return &shape{fact: true}
		}
		s := &shape{}
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() {
				if inside := shapeOf(f.Type); inside != nil {
					s.fields = append(s.fields, field{i, inside})
				}
			}
		}
		if len(s.fields) > 0 {
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
		if !v.IsNil() {
			v.Set(reflect.ValueOf(filled(v.Interface(), say)))
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
		if s.fact {
			fillFact(v.Addr().Interface().(*fact.Fact), say)
			return
		}
		for _, f := range s.fields {
			walk(v.Field(f.index), f.shape, say)
		}
	}
}

func fillFact(f *fact.Fact, say func(fact.Fact) string) {
	for i := range f.Values {
		f.Values[i].Of = filled(f.Values[i].Of, say)
	}
	if !f.IsZero() {
		f.Text = say(*f)
	}
}

// filled is what an interface holds, filled: what facts hold most, without reflection.
func filled(of any, say func(fact.Fact) string) any {
	switch of := of.(type) {
	case fact.Share:
		return fact.Share(shortened(float64(of)))
	case quantity.Temperature:
		return quantity.Temperature(shortened(float64(of)))
	case quantity.TemperatureDelta:
		return quantity.TemperatureDelta(shortened(float64(of)))
	case quantity.GaugePressure:
		return quantity.GaugePressure(shortened(float64(of)))
	case quantity.Uncertain[quantity.Temperature]:
		return measured(of)
	case quantity.Uncertain[quantity.TemperatureDelta]:
		return measured(of)
	case quantity.Uncertain[quantity.GaugePressure]:
		return measured(of)
	case nil, string, int, fact.Term, fact.Terms:
		return of
	}
	inside := reflect.New(reflect.TypeOf(of)).Elem()
	inside.Set(reflect.ValueOf(of))
	walk(inside, shapeOf(inside.Type()), say)
	return inside.Interface()
}

func measured[T quantity.Quantity](u quantity.Uncertain[T]) any {
	return quantity.Uncertain[T]{Value: T(shortened(float64(u.Value))), Std: shortened(u.Std)}
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

// magnitude is the power of ten that a normal v > 0 has reached.
func magnitude(v float64) int {
	n := (int(math.Float64bits(v)>>52) - 1023) * 78913 >> 18 // by log10(2), from below
	if v >= math.Pow10(n+1) {
		n++
	}
	return n
}
