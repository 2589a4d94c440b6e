package diagnose

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
)

// A NormalReading is what the maker says a sound machine reads in some weather: a row of
// a table of normal operating pressures, or the rated figures of a label. Zero fields are
// not stated; the weather is then that of the rating.
type NormalReading struct {
	Outdoor, ReturnDryBulb, ReturnWetBulb quantity.Temperature
	// Suction and Liquid are at the service ports.
	Suction, Liquid quantity.GaugePressure
}

// known is what is known of how it is built.
func (e *Evidence) known() *population.Known {
	known := e.Known
	known.Valve = deviceOf(e.Metering) == signature.Valve
	known.Electronic = isElectronic(e)
	if e.Fluid != nil {
		known.Refrigerant = e.Fluid.Designation()
	}
	return &known
}

// Makers let a sound machine read 5 psi from their suction pressure, and 10 psi from their
// liquid pressure: twice the standard uncertainty. asPrinted is how far a machine as it
// is installed and kept is from the row, in kelvin (judgement).
const (
	suctionStd = 2.5 * 6894.757 // Pa
	liquidStd  = 5 * 6894.757
	asPrinted  = 0.8
)

// normal makes expectations of the rows of the maker's table that are nearest to the
// weather.
func (e *Evidence) normal(w signature.Weather) []Expectation {
	if e.Fluid == nil {
		return nil
	}
	row := func(
		stated func(*NormalReading) quantity.GaugePressure,
	) (at signature.Weather, p quantity.Pressure, ok bool) {
		at, gauge, ok := nearestRows(e.Normal, w, stated)
		return at, gauge.Absolute(quantity.StandardAtmosphere), ok
	}
	var out []Expectation
	add := func(f signature.Feature, at signature.Weather, value, above float64) {
		std := math.Hypot(above-value, asPrinted)
		out = append(out, Expectation{Feature: f, Value: value, Std: std, Weather: &at})
	}
	if at, p, ok := row(func(r *NormalReading) quantity.GaugePressure { return r.Suction }); ok {
		value, err1 := e.evaporating(p)
		above, err2 := e.evaporating(p + suctionStd)
		if err1 == nil && err2 == nil {
			add(signature.Evaporating, at, value, above)
		}
	}
	if at, p, ok := row(func(r *NormalReading) quantity.GaugePressure { return r.Liquid }); ok {
		value, err1 := e.condensing(p)
		above, err2 := e.condensing(p + liquidStd)
		if err1 == nil && err2 == nil {
			add(signature.CondensingOver, at, value-at.Outdoor, above-at.Outdoor)
		}
	}
	return out
}

// evaporating is the mean evaporating temperature at a suction pressure, as in
// signature.Evaporating.
func (e *Evidence) evaporating(p quantity.Pressure) (float64, error) {
	dew, err := e.Fluid.DewTemperature(p)
	if err != nil {
		return 0, err
	}
	bubble, err := e.Fluid.BubbleTemperature(p)
	return float64(dew) - 0.4*float64(dew-bubble), err
}

// condensing is the middle of bubble and dew point.
func (e *Evidence) condensing(p quantity.Pressure) (float64, error) {
	dew, err := e.Fluid.DewTemperature(p)
	if err != nil {
		return 0, err
	}
	bubble, err := e.Fluid.BubbleTemperature(p)
	return float64(dew+bubble) / 2, err
}

// nearestRows finds what rows state for a weather: of those at the nearest wet bulb, the
// value between the two rows around the outdoor temperature, or that of the end row.
func nearestRows(
	rows []NormalReading, w signature.Weather, stated func(*NormalReading) quantity.GaugePressure,
) (at signature.Weather, p quantity.GaugePressure, ok bool) {
	type point struct {
		signature.Weather
		p quantity.GaugePressure
	}
	var all []point
	for i := range rows {
		x := point{signature.Rated, stated(&rows[i])}
		if x.p == 0 {
			continue
		}
		for _, s := range [...]struct {
			to    *float64
			value quantity.Temperature
		}{
			{&x.Outdoor, rows[i].Outdoor}, {&x.ReturnDryBulb, rows[i].ReturnDryBulb},
			{&x.ReturnWetBulb, rows[i].ReturnWetBulb},
		} {
			if s.value > 0 {
				*s.to = float64(s.value)
			}
		}
		all = append(all, x)
	}
	if len(all) == 0 {
		return at, 0, false
	}
	far := func(x point) float64 { return math.Abs(x.ReturnWetBulb - w.ReturnWetBulb) }
	nearest := slices.MinFunc(
		all, func(a, b point) int { return cmp.Compare(far(a), far(b)) },
	).ReturnWetBulb
	all = slices.DeleteFunc(all, func(x point) bool { return x.ReturnWetBulb != nearest })
	sort.Slice(all, func(i, j int) bool { return all[i].Outdoor < all[j].Outdoor })
	for i, high := range all {
		if high.Outdoor < w.Outdoor {
			continue
		}
		if i == 0 {
			return high.Weather, high.p, true
		}
		low := all[i-1]
		t := (w.Outdoor - low.Outdoor) / (high.Outdoor - low.Outdoor)
		at = low.Weather
		at.Outdoor = w.Outdoor
		return at, low.p + quantity.GaugePressure(t)*(high.p-low.p), true
	}
	last := all[len(all)-1]
	return last.Weather, last.p, true
}
