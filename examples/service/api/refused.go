package api

import (
	"errors"
	"reflect"
	"strings"

	"github.com/satline/satline/quantity"
)

// RefusedField is the JSON name of the field of a question whose value an error of the library
// refuses; empty where it refuses none that was given as it is.
func RefusedField(question any, err error) string {
	refused, ok := errors.AsType[*quantity.RangeError](err)
	if !ok || refused.Value == nil {
		return ""
	}
	q := reflect.ValueOf(question)
	for _, f := range reflect.VisibleFields(q.Type()) {
		v := q.FieldByIndex(f.Index)
		if v.Kind() == reflect.Pointer {
			v = v.Elem() // of nil it is no value
		}
		if !v.IsValid() || f.Anonymous || !f.IsExported() {
			continue
		}
		given := v.Interface()
		if number, ok := given.(float64); ok {
			given = quantity.Number(number)
		}
		if given == refused.Value {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			return name
		}
	}
	return ""
}
