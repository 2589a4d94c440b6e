package hostile

import (
	"fmt"
	"hash/fnv"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// What is answered, an error too, can be written over without changing what is answered next.
func TestAnswersShareNothing(t *testing.T) {
	c := caller{t: t, pool: map[reflect.Type][]reflect.Value{}, reported: map[string]int{}}
	c.seed()
	for _, name := range slices.Sorted(maps.Keys(functions)) {
		c.shares(name, reflect.ValueOf(functions[name]))
	}
	for _, typ := range types {
		for _, typ := range []reflect.Type{typ, reflect.PointerTo(typ)} {
			for i := range typ.NumMethod() {
				if m := typ.Method(i); typ.Kind() != reflect.Interface && !declaredByValue(typ, m.Name) {
					c.shares(typ.String()+"."+m.Name, m.Func)
				}
			}
		}
	}
}

// shares calls three times with the same, drawn anew for each call, and writes over the first
// answer before the last call.
func (c *caller) shares(name string, f reflect.Value) {
	typ := f.Type()
	if slow[name] > 0 || typ.NumOut() == 0 {
		return
	}
	h := fnv.New64()
	h.Write([]byte(name))
	for round := range uint64(6) {
		call := func() []reflect.Value {
			c.rand = rand.New(rand.NewPCG(h.Sum64(), round))
			var in []reflect.Value
			for i := range typ.NumIn() {
				if typ.IsVariadic() && i == typ.NumIn()-1 {
					break
				}
				in = append(in, c.value(typ.In(i), 0))
			}
			if len(in) > 0 && in[0].Kind() == reflect.Pointer && in[0].IsNil() {
				return nil
			}
			out, _ := c.try(name, f, in, "")
			return out
		}
		first := call()
		was := seen(call())
		for _, v := range first {
			scribble(v, 0)
		}
		if is := seen(call()); is != was {
			c.report(name, fmt.Sprintf("%.200s, and once that was written over %.200s", was, is))
		}
	}
}

const deep = 8

// seen is what others can see in values.
func seen(all []reflect.Value) string {
	var b strings.Builder
	var see func(v reflect.Value, depth int)
	see = func(v reflect.Value, depth int) {
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() && depth < deep {
				see(v.Elem(), depth+1)
			}
		case reflect.Slice:
			for i := range v.Len() {
				see(v.Index(i), depth+1)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					see(v.Field(i), depth+1)
				}
			}
		case reflect.Bool, reflect.Int, reflect.Int64, reflect.Uint8, reflect.Float64, reflect.String:
			fmt.Fprint(&b, v, " ")
		}
	}
	for _, v := range all {
		see(v, 0)
	}
	return b.String()
}

// scribble writes zeros over what others can reach in v.
func scribble(v reflect.Value, depth int) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() && depth < deep {
			scribble(v.Elem(), depth+1)
		}
	case reflect.Slice:
		for i := range v.Len() {
			scribble(v.Index(i), depth+1)
			v.Index(i).SetZero()
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				scribble(v.Field(i), depth+1)
			}
		}
	}
}
