package hostile

import (
	"errors"
	"flag"
	"fmt"
	"hash/fnv"
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

var draws = flag.Int("draws", 60, "how often each function and method is called")

// No exported function or method panics on what it is given, and none answers NaN or
// infinity, be it beside a nil error or without one. What one call answers is given to the
// next, so that what takes an Air or a System gets a good one too.
func TestNothingAnswersNaN(t *testing.T) {
	if testing.Short() {
		*draws = min(*draws, 10)
	}
	c := caller{t: t, pool: map[reflect.Type][]reflect.Value{}, reported: map[string]int{}}
	c.seed()
	// Twice, for what the first round has made.
	for range 2 {
		for _, name := range slices.Sorted(maps.Keys(functions)) {
			c.repeat(name, reflect.ValueOf(functions[name]), nil)
		}
		for _, typ := range types {
			for _, typ := range []reflect.Type{typ, reflect.PointerTo(typ)} {
				for i := range typ.NumMethod() {
					m := typ.Method(i)
					if typ.Kind() == reflect.Interface || declaredByValue(typ, m.Name) {
						continue
					}
					c.repeat(typ.String()+"."+m.Name, m.Func, typ)
				}
			}
		}
	}
}

// declaredByValue reports whether a method of a pointer is one of the value it points to.
func declaredByValue(typ reflect.Type, name string) bool {
	if typ.Kind() != reflect.Pointer {
		return false
	}
	_, ok := typ.Elem().MethodByName(name)
	return ok
}

// takesNoNil reports whether a method has a receiver that is there: an error is none where
// it is nil, and what is decoded into is given by the decoder.
func takesNoNil(receiver reflect.Type, name string) bool {
	return receiver.Kind() == reflect.Pointer &&
		(receiver.Implements(reflect.TypeFor[error]()) || strings.Contains(name, ".Unmarshal"))
}

// tellsOfItself reports whether a result is the receiver with something changed in it, or the
// receiver put into facts: there a number that is none is what it was given.
func tellsOfItself(result, receiver reflect.Type) bool {
	for result.Kind() == reflect.Slice {
		result = result.Elem()
	}
	return result == receiver || result.PkgPath() == module+"/quantity/fact"
}

// A caller calls and keeps what it was answered.
type caller struct {
	t        *testing.T
	rand     *rand.Rand
	pool     map[reflect.Type][]reflect.Value
	reported map[string]int
}

// slow is by how much less often a function is called that takes long.
var slow = map[string]int{
	"cycle.Fit": 4, "charge.Rules": 10,
	"*chart.Chart.SVG": 50, "*chart.Chart.PNG": 20, "*diagram.Diagram.SVG": 50,
	"*diagram.Diagram.PNG": 20,
}

func (c *caller) repeat(name string, f reflect.Value, receiver reflect.Type) {
	h := fnv.New64()
	h.Write([]byte(name))
	c.rand = rand.New(rand.NewPCG(h.Sum64(), 1))
	for range max(1, *draws/max(1, slow[name])) {
		c.call(name, f, receiver)
	}
}

func (c *caller) call(name string, f reflect.Value, receiver reflect.Type) {
	typ := f.Type()
	var in []reflect.Value
	for i := range typ.NumIn() {
		at := typ.In(i)
		if typ.IsVariadic() && i == typ.NumIn()-1 {
			for range c.rand.IntN(4) {
				in = append(in, c.value(at.Elem(), 0))
			}
			break
		}
		in = append(in, c.value(at, 0))
	}
	if n := len(in); n > 0 && receiver != nil && takesNoNil(receiver, name) && in[0].IsNil() {
		return
	}
	asked := show(in)
	out, ok := c.try(name, f, in, asked)
	if !ok {
		return
	}
	if n := len(out); n > 0 {
		if err, ok := out[n-1].Interface().(error); ok && err != nil {
			c.checkError(name, asked, err)
			return
		}
	}
	for _, v := range out {
		if receiver != nil && tellsOfItself(v.Type(), receiver) && notFinite(in[0], 0) != "" {
			continue
		}
		if at := notFinite(v, 0); at != "" {
			c.report(name, fmt.Sprintf("%s%s from %s", v.Type(), at, asked))
		}
	}
	for _, v := range out {
		c.keep(v)
	}
}

// try calls, and reports a panic.
func (c *caller) try(
	name string, f reflect.Value, in []reflect.Value, asked string,
) (out []reflect.Value, ok bool) {
	defer func() {
		if p := recover(); p != nil {
			c.report(name, fmt.Sprintf("panic %v from %s", p, asked))
		}
	}()
	return f.Call(in), true
}

func (c *caller) report(name, what string) {
	if c.reported[name]++; c.reported[name] <= 2 {
		c.t.Errorf("%s: %.600s", name, what)
	}
}

// checkError holds that an error says a range that is one.
func (c *caller) checkError(name, asked string, err error) {
	var out *quantity.RangeError
	if !errors.As(err, &out) {
		return
	}
	for _, limit := range []fmt.Stringer{out.Min, out.Max} {
		if limit != nil && notFinite(reflect.ValueOf(limit), 0) != "" {
			c.report(name, fmt.Sprintf("%v from %s", err, asked))
		}
	}
}

// most is how many values of a type are kept.
const most = 12

// keep puts an answer into the pool, in place of an older one where that is full.
func (c *caller) keep(v reflect.Value) {
	for v.Kind() == reflect.Interface || v.Kind() == reflect.Slice {
		if v.IsNil() || v.Kind() == reflect.Slice && v.Len() == 0 {
			return
		}
		if v.Kind() == reflect.Interface {
			v = v.Elem()
		} else {
			v = v.Index(c.rand.IntN(v.Len()))
		}
	}
	typ := v.Type()
	if k := v.Kind(); k != reflect.Struct && k != reflect.Pointer ||
		!strings.HasPrefix(elem(typ).PkgPath(), module) {
		return
	}
	if k := v.Kind(); k == reflect.Pointer && v.IsNil() {
		return
	}
	if p := c.pool[typ]; len(p) < most {
		c.pool[typ] = append(p, v)
	} else {
		p[c.rand.IntN(most)] = v
	}
}

const module = "github.com/satline/satline"

func elem(t reflect.Type) reflect.Type {
	if t.Kind() == reflect.Pointer {
		return t.Elem()
	}
	return t
}

// show writes arguments as they were before the call.
func show(in []reflect.Value) string {
	var all []string
	for _, v := range in {
		all = append(all, fmt.Sprintf("%#v", v))
	}
	return strings.Join(all, ", ")
}

// notFinite returns where in a value, as far as others can see it, a number is none or
// infinite.
func notFinite(v reflect.Value, depth int) string {
	if depth > 6 {
		return ""
	}
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return fmt.Sprintf(" is %v", f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && !repeatsInput(v.Type(), f.Name) {
				if at := notFinite(v.Field(i), depth+1); at != "" {
					return "." + f.Name + at
				}
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return notFinite(v.Elem(), depth+1)
		}
	case reflect.Slice, reflect.Array:
		for i := range min(v.Len(), 50) {
			if at := notFinite(v.Index(i), depth+1); at != "" {
				return fmt.Sprintf("[%d]%s", i, at)
			}
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			if at := notFinite(v.MapIndex(k), depth+1); at != "" {
				return fmt.Sprintf("[%v]%s", k, at)
			}
		}
	}
	return ""
}

// repeatsInput is true of the value that an error was made for.
func repeatsInput(of reflect.Type, field string) bool {
	return of == reflect.TypeFor[quantity.RangeError]() && field == "Value"
}
