package api

import (
	"math"
	"reflect"

	"github.com/satline/satline/quantity"
)

// AppendInUnits appends an answer as json.Marshal writes it, but for its quantities: those
// stand in the units of a system, rounded to what is known of them: two digits of an
// uncertainty, and its value to the same place; of the rest, what the library shows people. It
// reads back as the answer does. The error is that of json.Marshal.
func AppendInUnits(to []byte, answer any, system quantity.System) ([]byte, error) {
	w := writer{out: to, system: system}
	v := reflect.ValueOf(answer)
	formOf(v.Type())(&w, v)
	return w.out, w.err
}

// shown are the forms of all quantities.
var shown = map[reflect.Type]form{}

func init() {
	show[quantity.Temperature]()
	show[quantity.TemperatureDelta]()
	show[quantity.Pressure]()
	show[quantity.GaugePressure]()
	show[quantity.StaticPressure]()
	show[quantity.Mass]()
	show[quantity.MassFlow]()
	show[quantity.Volume]()
	show[quantity.VolumeFlow]()
	show[quantity.Power]()
	show[quantity.SpecificEnthalpy]()
	show[quantity.SpecificEntropy]()
	show[quantity.Density]()
	show[quantity.SpecificVolume]()
	show[quantity.Velocity]()
	show[quantity.Area]()
	show[quantity.Length]()
	show[quantity.Current]()
	show[quantity.Frequency]()
	show[quantity.Voltage]()
	show[quantity.Resistance]()
	show[quantity.Capacitance]()
	show[quantity.Conductance]()
	show[quantity.HeatingValue]()
	show[quantity.Ratio]()
}

func show[T quantity.Quantity]() {
	shown[reflect.TypeFor[T]()] = func(w *writer, v reflect.Value) {
		appendShown(w, quantity.Uncertain[T]{Value: T(v.Float())})
	}
	shown[reflect.TypeFor[quantity.Uncertain[T]]()] = func(w *writer, v reflect.Value) {
		appendShown(w, quantity.Uncertain[T]{Value: T(v.Field(0).Float()), Std: v.Field(1).Float()})
	}
}

// appendShown appends a quantity in the units of the system.
func appendShown[T quantity.Quantity](w *writer, v quantity.Uncertain[T]) {
	if !isUsual(float64(v.Value)) || !isUsual(v.Std) {
		if _, err := v.MarshalText(); err != nil { // below absolute zero, no number
			w.err = err
			return
		}
	}
	style := quantity.Style{System: w.system}
	if v.Stated() {
		unit := quantity.UnitOf[T](w.system)
		size := v.Std * math.Abs(unit.Number(1)-unit.Number(0))
		style = style.In(unit.Symbol(), decimals(size))
	}
	w.out = append(v.AppendStyled(append(w.out, '"'), style), '"')
}

// decimals are those with which a size shows two digits, at most six.
func decimals(size float64) int {
	for n, least := range [...]float64{10, 1, 0.1, 0.01, 0.001, 0.0001} {
		if size >= least {
			return n
		}
	}
	return 6
}

// isUsual says of a number that every quantity may have it.
func isUsual(v float64) bool { return 0 <= v && v <= math.MaxFloat64 }
