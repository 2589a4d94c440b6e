// Package apart copies values with all that they point to.
package apart

import "reflect"

// From returns a copy of v that shares no pointer and no slice with it, in all exported fields. A
// slice in an interface is copied, and what its elements point to is not.
func From[T any](v T) T {
	part(reflect.ValueOf(&v).Elem())
	return v
}

// part sets v, which is a copy, apart from what it was copied from.
func part(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			to := reflect.New(v.Type().Elem())
			to.Elem().Set(v.Elem())
			part(to.Elem())
			v.Set(to)
		}
	case reflect.Slice:
		if !v.IsNil() {
			to := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
			reflect.Copy(to, v)
			for i := range to.Len() {
				part(to.Index(i))
			}
			v.Set(to)
		}
	case reflect.Interface:
		if of := v.Elem(); of.Kind() == reflect.Slice && !of.IsNil() {
			to := reflect.MakeSlice(of.Type(), of.Len(), of.Len())
			reflect.Copy(to, of)
			v.Set(to)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.CanSet() {
				part(f)
			}
		}
	}
}
