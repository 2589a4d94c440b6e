package charge

import (
	"math"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
)

// A Measurement is the measured value of a method with its uncertainty budget.
// MeasureSuperheat, MeasureSubcooling and MeasureApproach make one from
// readings, NewMeasurement makes one from a value known otherwise.
type Measurement struct {
	Method Method `json:"method"`
	// Value is as measured; a negative one is not clipped.
	Value quantity.Uncertain[quantity.TemperatureDelta] `json:"value"`
	// Saturation is the temperature that a superheat (dew) or a subcooling
	// (bubble) is counted from, and the outdoor air for an approach.
	Saturation quantity.Uncertain[quantity.Temperature]   `json:"saturation,omitzero"`
	Budget     quantity.Budget[quantity.TemperatureDelta] `json:"budget"`
}

// NewMeasurement makes a Measurement from a value that was worked out elsewhere, such as
// a superheat read off an instrument. The error is a *RangeError.
func NewMeasurement(
	method Method, value quantity.Uncertain[quantity.TemperatureDelta],
) (Measurement, error) {
	m := Measurement{Method: method, Value: value}
	if err := checkMethod(method); err != nil {
		return Measurement{}, err
	}
	if err := m.check(); err != nil {
		return Measurement{}, err
	}
	take(&m.Budget, clampOf(method), value.Std, 1)
	return m, nil
}

// At returns m with the value that it settled at, and the scatter over time as
// one more term of the budget; m itself where that is no value.
func (m Measurement) At(settled quantity.Uncertain[quantity.TemperatureDelta]) Measurement {
	later := m
	later.Value.Value = settled.Value
	take(&later.Budget, fromUnsteadiness, settled.Std, 1)
	later.Value.Std = float64(later.Budget.Std())
	if !finite.Is(later.Value.Value) || !finite.Is(later.Value.Std) {
		return m
	}
	return later
}

// LiquidReturning reports whether a superheat is so small that the suction line
// may carry liquid: not above twice its standard uncertainty (95 %), which counts
// as 2 °F at least, however good the instruments, and as 5 °F at most. A wet suction
// line reads within a degree of saturation, above it as often as below.
func (m Measurement) LiquidReturning() bool {
	doubt := min(quantity.TemperatureDelta(coverage*m.Value.Std), leastSuperheat)
	return m.Method == Superheat && m.Value.Value <= max(doubt, wetLine.value)
}

func clampOf(m Method) string {
	if m == Superheat {
		return fromSuctionLine
	}
	return fromLiquidLine
}

func checkMethod(m Method) error {
	if m == Superheat || m == Subcooling || m == Approach {
		return nil
	}
	return &RangeError{
		Quantity: "charging method",
		Value:    m,
		Advice:   "a temperature difference is measured for superheat, subcooling or approach",
	}
}

// Temperature differences that a pipe can show: beyond these the reading is of
// something else.
const minDelta, maxDelta = quantity.TemperatureDelta(-60), quantity.TemperatureDelta(100)

// Between these any refrigerant boils, and any machine stands.
const minSaturation, maxSaturation = quantity.Temperature(50), quantity.Temperature(700)

func (m Measurement) check() error {
	if v := m.Value.Value; !(v >= minDelta && v <= maxDelta) || math.IsNaN(float64(v)) {
		return &RangeError{
			Quantity: m.Method.String(),
			Value:    v,
			Min:      minDelta,
			Max:      maxDelta,
			Advice:   "check the readings it comes from, and their units",
		}
	}
	if s := m.Saturation; s != (temperature{}) {
		const countedFrom = "temperature that the measured value is counted from"
		if !(s.Value >= minSaturation && s.Value <= maxSaturation) {
			return &RangeError{
				Quantity: countedFrom,
				Value:    s.Value,
				Min:      minSaturation,
				Max:      maxSaturation,
				Advice:   "check the readings it comes from, and their units",
			}
		}
		if err := checkStd(countedFrom, s.Std); err != nil {
			return err
		}
	}
	return checkStd(m.Method.String(), m.Value.Std)
}
