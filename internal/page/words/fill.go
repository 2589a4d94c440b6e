package words

import (
	"math"
	"reflect"
	"time"

	"github.com/satline/satline/quantity/fact"
)

// Fill makes the sentence of every fact in what v points to, and rounds every number there to
// what no field instrument tells, so that a JSON form is short and says what its sentences say.
func Fill(v any, say func(fact.Fact) string) { walk(reflect.ValueOf(v).Elem(), say) }

var factType, durationType = reflect.TypeFor[fact.Fact](), reflect.TypeFor[time.Duration]()

func walk(v reflect.Value, say func(fact.Fact) string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), say)
		}
	case reflect.Interface:
		if !v.IsNil() {
			inside := reflect.New(v.Elem().Type()).Elem()
			inside.Set(v.Elem())
			walk(inside, say)
			v.Set(inside)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), say)
		}
	case reflect.Float64:
		v.SetFloat(shortened(v.Float()))
	case reflect.Int64:
		if v.Type() == durationType {
			v.SetInt(int64(time.Duration(v.Int()).Round(time.Second)))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				walk(v.Field(i), say)
			}
		}
		if v.Type() == factType {
			if f := v.Addr().Interface().(*fact.Fact); !f.IsZero() {
				f.Text = say(*f)
			}
		}
	}
}

// shortened is v in nine digits.
func shortened(v float64) float64 {
	const digits = 9
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return v
	}
	place := digits - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if place < 0 {
		step := math.Pow10(-place)
		return step * math.Round(v/step)
	}
	scale := math.Pow10(place)
	return math.Round(v*scale) / scale
}
