package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// BubblePressure returns the pressure at which liquid r at t starts to boil.
// For a pure fluid it is the vapor pressure.
//
// t lies within Limits().MinTemperature and the critical temperature; the error
// is a *RangeError, or of a NewBlend ErrUnsolved where its liquid is not stable.
func (r *Refrigerant) BubblePressure(t quantity.Temperature) (quantity.Pressure, error) {
	if p, ok := r.table().At(table.BubblePressure, float64(t)); ok {
		return quantity.Pressure(p), nil
	}
	s, err := r.solveSaturation(table.Bubble, t)
	return quantity.Pressure(s.pressure), err
}

// DewPressure returns the pressure at which vapor r at t starts to condense.
// For a pure fluid it is the vapor pressure. The range is that of
// BubblePressure.
func (r *Refrigerant) DewPressure(t quantity.Temperature) (quantity.Pressure, error) {
	if p, ok := r.table().At(table.DewPressure, float64(t)); ok {
		return quantity.Pressure(p), nil
	}
	s, err := r.solveSaturation(table.Dew, t)
	return quantity.Pressure(s.pressure), err
}

// BubbleTemperature returns the temperature at which liquid r at p starts to
// boil: the one that subcooling is counted from.
//
// p lies below the critical pressure and above that of Limits().MinTemperature;
// the errors are those of BubblePressure. Some blends boil up to 0.6 % above the critical
// pressure, and a little below it a second time: their bubble line turns back. The colder
// bubble point is meant. Above there is no boiling and no subcooling: a gas cooler, as of
// R-744 on a hot day, is judged by its outlet temperature.
func (r *Refrigerant) BubbleTemperature(p quantity.Pressure) (quantity.Temperature, error) {
	if t, ok := r.table().Temperature(table.Bubble, float64(p)); ok {
		return quantity.Temperature(t), nil
	}
	s, err := r.solveSaturationAt(table.Bubble, p)
	return quantity.Temperature(s.temperature), err
}

// DewTemperature returns the temperature at which vapor r at p starts to
// condense: the one that superheat is counted from. The range is that of
// BubbleTemperature, but ends at the critical pressure.
func (r *Refrigerant) DewTemperature(p quantity.Pressure) (quantity.Temperature, error) {
	if t, ok := r.table().Temperature(table.Dew, float64(p)); ok {
		return quantity.Temperature(t), nil
	}
	s, err := r.solveSaturationAt(table.Dew, p)
	return quantity.Temperature(s.temperature), err
}

// Glide returns how far the dew point lies above the bubble point at p: zero for
// a pure fluid, next to nothing for an azeotrope near its pressure. The range and
// errors are those of BubbleTemperature.
func (r *Refrigerant) Glide(p quantity.Pressure) (quantity.TemperatureDelta, error) {
	bubble, err := r.BubbleTemperature(p)
	if err != nil {
		return 0, err
	}
	dew, err := r.DewTemperature(p)
	if err != nil {
		return 0, err
	}
	return dew.Sub(bubble), nil
}

// Superheat returns how far the line temperature is above the dew point at p,
// both taken at the same place. A negative superheat is returned as measured.
// It cannot exist in equilibrium: either liquid is coming back, or clamp, gauge
// or refrigerant is wrong. The range of p and the errors are those of
// DewTemperature.
func (r *Refrigerant) Superheat(
	p quantity.Pressure, line quantity.Temperature,
) (quantity.TemperatureDelta, error) {
	dew, err := r.DewTemperature(p)
	if err != nil {
		return 0, err
	}
	if err := r.checkLine(line); err != nil {
		return 0, err
	}
	return line.Sub(dew), nil
}

// Subcooling returns how far the line temperature is below the bubble point at
// p, both taken at the same place. A negative subcooling is returned as
// measured: there is vapor in the liquid line, or clamp, gauge or refrigerant is
// wrong. The range of p and the errors are those of BubbleTemperature.
func (r *Refrigerant) Subcooling(
	p quantity.Pressure, line quantity.Temperature,
) (quantity.TemperatureDelta, error) {
	bubble, err := r.BubbleTemperature(p)
	if err != nil {
		return 0, err
	}
	if err := r.checkLine(line); err != nil {
		return 0, err
	}
	return bubble.Sub(line), nil
}

// checkLine refuses what no clamp can read.
func (r *Refrigerant) checkLine(line quantity.Temperature) error {
	if line > 0 && float64(line) < math.Inf(1) {
		return nil
	}
	return &RangeError{
		Quantity: "line temperature",
		Value:    line,
		Min:      quantity.Kelvin(0),
		Advice:   "read the clamp again",
	}
}

// BubbleDensity returns the density of saturated liquid r at t. The range and errors
// are those of BubblePressure.
func (r *Refrigerant) BubbleDensity(t quantity.Temperature) (quantity.Density, error) {
	if v, ok := r.table().At(table.BubbleDensity, float64(t)); ok {
		return quantity.Density(v), nil
	}
	s, err := r.solveSaturation(table.Bubble, t)
	return quantity.Density(s.density), err
}

// DewDensity returns the density of saturated vapor r at t. The range and errors
// are those of DewPressure.
func (r *Refrigerant) DewDensity(t quantity.Temperature) (quantity.Density, error) {
	if v, ok := r.table().At(table.DewDensity, float64(t)); ok {
		return quantity.Density(v), nil
	}
	s, err := r.solveSaturation(table.Dew, t)
	return quantity.Density(s.density), err
}

// BubbleEnthalpy returns the enthalpy of saturated liquid r at t. The range and errors
// are those of BubblePressure.
func (r *Refrigerant) BubbleEnthalpy(t quantity.Temperature) (quantity.SpecificEnthalpy, error) {
	if v, ok := r.table().At(table.BubbleEnthalpy, float64(t)); ok {
		return quantity.SpecificEnthalpy(v), nil
	}
	s, err := r.solveSaturation(table.Bubble, t)
	return quantity.SpecificEnthalpy(s.enthalpy), err
}

// DewEnthalpy returns the enthalpy of saturated vapor r at t. The range and errors
// are those of DewPressure.
func (r *Refrigerant) DewEnthalpy(t quantity.Temperature) (quantity.SpecificEnthalpy, error) {
	if v, ok := r.table().At(table.DewEnthalpy, float64(t)); ok {
		return quantity.SpecificEnthalpy(v), nil
	}
	s, err := r.solveSaturation(table.Dew, t)
	return quantity.SpecificEnthalpy(s.enthalpy), err
}

// BubbleEntropy returns the entropy of saturated liquid r at t. The range and errors
// are those of BubblePressure.
func (r *Refrigerant) BubbleEntropy(t quantity.Temperature) (quantity.SpecificEntropy, error) {
	if v, ok := r.table().At(table.BubbleEntropy, float64(t)); ok {
		return quantity.SpecificEntropy(v), nil
	}
	s, err := r.solveSaturation(table.Bubble, t)
	return quantity.SpecificEntropy(s.entropy), err
}

// DewEntropy returns the entropy of saturated vapor r at t. The range and errors
// are those of DewPressure.
func (r *Refrigerant) DewEntropy(t quantity.Temperature) (quantity.SpecificEntropy, error) {
	if v, ok := r.table().At(table.DewEntropy, float64(t)); ok {
		return quantity.SpecificEntropy(v), nil
	}
	s, err := r.solveSaturation(table.Dew, t)
	return quantity.SpecificEntropy(s.entropy), err
}

// NormalBoilingPoint returns the bubble temperature at 101.325 kPa. Blends with
// R-744, R-1132(E) or R-1132a may boil there colder than Limits allows; for them
// the equations are extrapolated. R-744 alone has no normal boiling point, being
// solid there, and the equation of R-1132(E) alone ends above it; both give
// a *RangeError.
func (r *Refrigerant) NormalBoilingPoint() (quantity.Temperature, error) {
	t, err := r.BubbleTemperature(quantity.StandardAtmosphere)
	if err == nil || r.Pure() {
		return t, err
	}
	q, broken := r.equation()
	if broken != nil {
		return 0, broken
	}
	point, unsolved := q.system.BubbleP(float64(quantity.StandardAtmosphere))
	if unsolved != nil {
		return 0, err
	}
	return quantity.Temperature(point.T), nil
}
