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
// Say appends a sentence.
func Fill(v any, say func([]byte, *fact.Fact) []byte) {
	to := reflect.ValueOf(v).Elem()
	f := fillers.Get().(*filler)
	f.say = say
	f.walk(to, shapeOf(to.Type()))
	f.place()
	fillers.Put(f)
}

// fillers keep the room that sentences have grown into for the next.
var fillers = sync.Pool{New: func() any { return new(filler) }}

// A filler makes all sentences one behind the other, in one text that the facts share.
type filler struct {
	say  func([]byte, *fact.Fact) []byte
	text []byte
	said []sentence
}

// A sentence of a fact, up to where it ends in the text.
type sentence struct {
	of *fact.Fact
	to int
}

// place gives the facts their sentences.
func (f *filler) place() {
	text, from := string(f.text), 0
	for _, s := range f.said {
		s.of.Text, from = text[from:s.to], s.to
	}
	clear(f.said)
	f.text, f.said = f.text[:0], f.said[:0]
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

func (f *filler) walk(v reflect.Value, s *shape) {
	if s == nil {
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			f.walk(v.Elem(), s.inside)
		}
	case reflect.Interface:
		if !v.IsNil() {
			v.Set(reflect.ValueOf(filled(v.Interface())))
		}
	case reflect.Slice:
		for i := range v.Len() {
			f.walk(v.Index(i), s.inside)
		}
	case reflect.Float64:
		v.SetFloat(shortened(v.Float()))
	case reflect.Int64:
		v.SetInt(int64(time.Duration(v.Int()).Round(time.Second)))
	case reflect.Struct:
		if s.fact {
			f.fact(v.Addr().Interface().(*fact.Fact))
			return
		}
		for _, x := range s.fields {
			f.walk(v.Field(x.index), x.shape)
		}
	}
}

func (f *filler) fact(of *fact.Fact) {
	for i := range of.Values {
		of.Values[i].Of = filled(of.Values[i].Of)
	}
	if f.say != nil && !of.IsZero() {
		f.text = f.say(f.text, of)
		f.said = append(f.said, sentence{of, len(f.text)})
	}
}

// filled is what an interface holds, filled: what facts hold most, without reflection.
func filled(of any) any {
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
	new(filler).walk(inside, shapeOf(inside.Type()))
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
