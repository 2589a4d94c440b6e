package psychro

import (
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// A Psychrometer is two thermometers in one stream of air, one with a wet wick.
// What the wet one shows is not the thermodynamic wet bulb: heat comes to it by
// radiation and along its stem as well as from the air, so it stands a little
// higher, the more so the slower the air. Its reading obeys
//
//	e = es(wet) − Coefficient·p·(dry − wet)
//
// with e the vapor pressure of the air and es that of saturation.
type Psychrometer struct {
	// Coefficient is that of a wick wet with water at 0 °C, and Growth its
	// increase in proportion per kelvin of wet bulb. Both are per kelvin.
	Coefficient, Growth float64
	// Iced is the coefficient of an iced wick, per kelvin.
	Iced float64
	// Spread is the standard uncertainty of the coefficient in proportion to it.
	Spread float64
	// Source says where the coefficient comes from.
	Source string
	// Model computes the air.
	Model Model
}

// Sling returns a sling psychrometer, swung until its readings no longer fall,
// which takes the air past it at 3 to 5 m/s. The spread is half of that between
// the coefficients that are published for it.
func Sling() Psychrometer {
	return Psychrometer{
		Coefficient: 6.60e-4, Growth: 1.15e-3, Iced: 5.82e-4, Spread: 0.03,
		Source: "W. Ferrel, Annual Report of the Chief Signal Officer 1886, appendix 24, " +
			"as in the AMS Glossary of Meteorology, \"psychrometric formula\"",
	}
}

// Aspirated returns a psychrometer whose fan draws the air past shielded
// thermometers at 2.5 m/s or more.
func Aspirated() Psychrometer {
	return Psychrometer{
		Coefficient: 6.53e-4, Growth: 9.44e-4, Iced: 5.75e-4, Spread: 0.02,
		Source: "WMO-No. 8, Guide to Instruments and Methods of Observation, part I, chapter 4, " +
			"annex 4.B (from memory)",
	}
}

// slowestAir is the speed below which the formula for it has no measurements.
const slowestAir = 0.13 // m/s

// InAirSpeed returns a psychrometer held still in air that passes its wick at
// speed, such as a probe with a wet sock in a duct: Coefficient = (65 +
// 6.75/speed)·10⁻⁵ with the speed in m/s. It meets the three coefficients of
// FAO Irrigation and Drainage Paper 56, equation 16 (6.62e-4 at 5 m/s, 8.0e-4 at
// 1 m/s, 12e-4 in still air, taken as 0.13 m/s) within 11 %. Slower than 0.13 m/s
// is a *RangeError.
func InAirSpeed(speed quantity.Velocity) (Psychrometer, error) {
	v := float64(speed)
	if !(v >= slowestAir && v <= 50) {
		return Psychrometer{}, &RangeError{
			Quantity: "air speed at the wick", Value: speed, Min: quantity.Velocity(slowestAir),
			Max:    quantity.Velocity(50),
			Advice: "in still air a wet bulb means nothing; swing it or fan it",
		}
	}
	a := (65 + 6.75/v) * 1e-5
	spread := 0.03
	if v < 3 {
		spread = 0.10
	}
	return Psychrometer{
		Coefficient: a, Iced: a * evaporation0 / sublimation0, Spread: spread,
		Source: "Zworykin's formula for the psychrometer coefficient (from memory)",
	}, nil
}

// A Wick is what wets the bulb below 0 °C, where only a look at it can tell.
type Wick uint8

const (
	// WickUnseen is iced below 0 °C and wet above.
	WickUnseen Wick = iota
	// WickWet is wet with water, which stays liquid on a wick down to −10 °C and
	// lower for many minutes.
	WickWet
	// WickIced is iced. Above 0 °C no wick is.
	WickIced
)

var wickNames = [...]string{WickUnseen: "unseen", WickWet: "wet", WickIced: "iced"}

// String returns "unseen", "wet" or "iced".
func (w Wick) String() string { return nameOf(wickNames[:], w, "unknown wick") }

// MarshalText writes the name of String; what is none of the three is an error.
func (w Wick) MarshalText() ([]byte, error) { return writeName("wick", wickNames[:], w) }

// UnmarshalText reads the names that String returns.
func (w *Wick) UnmarshalText(text []byte) error { return readName("wick", wickNames[:], text, w) }

// A Reading is what the two thermometers show, and the pressure around them,
// each with its standard uncertainty.
type Reading struct {
	DryBulb  quantity.Uncertain[quantity.Temperature] `json:"dryBulb"`
	WetBulb  quantity.Uncertain[quantity.Temperature] `json:"wetBulb"`
	Pressure quantity.Uncertain[quantity.Pressure]    `json:"pressure"`
	Wick     Wick                                     `json:"wick"`
}

// saturatedWithin is the number of standard uncertainties that a wet bulb may
// stand above the dry bulb and still mean saturated air.
const saturatedWithin = 2

// tolerance is what the two thermometers may differ by in the same air.
func (r Reading) tolerance() float64 {
	return saturatedWithin * math.Hypot(r.DryBulb.Std, r.WetBulb.Std)
}

// A MeasuredAir is the air that a psychrometer was read in.
type MeasuredAir struct {
	Air Air `json:"air"`
	// Correction is the reading of the wet thermometer less the thermodynamic
	// wet bulb of the air.
	Correction quantity.TemperatureDelta `json:"correction"`
	// Saturated says that the wet thermometer stood above the dry one, by no more
	// than the two can err, and that the air is taken as saturated.
	Saturated bool `json:"saturated"`

	// Each property with the standard uncertainty that the two thermometers, the
	// pressure and the coefficient give it together (JCGM 100:2008, 5.1.2).
	WetBulb          quantity.Uncertain[quantity.Temperature]      `json:"wetBulb"`
	DewPoint         quantity.Uncertain[quantity.Temperature]      `json:"dewPoint"`
	RelativeHumidity quantity.UncertainNumber                      `json:"relativeHumidity"`
	HumidityRatio    quantity.UncertainNumber                      `json:"humidityRatio"`
	Enthalpy         quantity.Uncertain[quantity.SpecificEnthalpy] `json:"enthalpy"`
	SpecificVolume   quantity.Uncertain[quantity.SpecificVolume]   `json:"specificVolume"`
}

// Measure returns the air of a reading.
//
// A wet bulb above the dry bulb is taken as saturated air while the excess is no
// more than two standard uncertainties of the difference, which is what two
// honest thermometers may differ by; beyond, it is a *RangeError. Without stated
// uncertainties there is no such allowance. A wet bulb lower than dry air could
// bring it is a *RangeError.
func (ps Psychrometer) Measure(r Reading) (MeasuredAir, error) {
	if err := ps.check(); err != nil {
		return MeasuredAir{}, err
	}
	for _, std := range []float64{r.DryBulb.Std, r.WetBulb.Std, r.Pressure.Std} {
		if !(std >= 0 && std < 1e6) {
			return MeasuredAir{}, &RangeError{
				Quantity: "standard uncertainty of a reading",
				Value:    quantity.Number(std),
				Min:      quantity.Number(0),
				Advice:   "it is 0 where none is stated, and never negative",
			}
		}
	}
	if err := ps.Model.checkReadings("dry bulb", r.DryBulb.Value, r.Pressure.Value); err != nil {
		return MeasuredAir{}, err
	}
	m := MeasuredAir{}
	if excess := float64(r.WetBulb.Value - r.DryBulb.Value); excess > 0 {
		if excess > r.tolerance()+roundingK {
			return MeasuredAir{}, aboveDryBulb(
				"wet bulb", float64(r.WetBulb.Value), float64(r.DryBulb.Value),
				"that is more than the two thermometers can err: are the readings swapped?",
			)
		}
		m.Saturated = true
		middle := r.DryBulb.Value + quantity.Temperature(0.5*excess)
		r.DryBulb.Value, r.WetBulb.Value = middle, middle
	}
	a, err := ps.air(r, 1)
	if err != nil {
		return MeasuredAir{}, err
	}
	m.Air = a
	m.Correction = r.WetBulb.Value.Sub(a.WetBulb())
	ps.propagate(r, &m)
	return m, nil
}

// check refuses an instrument that is none.
func (ps Psychrometer) check() error {
	for _, c := range []struct {
		name            string
		value, low, top float64
	}{
		{"psychrometer coefficient", ps.Coefficient, 1e-5, 0.1},
		{"psychrometer coefficient of an iced wick", ps.Iced, 1e-5, 0.1},
		{"growth of the psychrometer coefficient", ps.Growth, 0, 0.01},
		{"spread of the psychrometer coefficient", ps.Spread, 0, 0.5},
	} {
		if !(c.value >= c.low && c.value <= c.top) {
			return &RangeError{
				Quantity: c.name,
				Value:    quantity.Number(c.value),
				Min:      quantity.Number(c.low),
				Max:      quantity.Number(c.top),
				Advice:   "start from Sling, Aspirated or InAirSpeed",
			}
		}
	}
	return nil
}

// air solves the psychrometer's equation with its coefficient scaled.
func (ps Psychrometer) air(r Reading, scale float64) (Air, error) {
	t, b, p := float64(r.DryBulb.Value), float64(r.WetBulb.Value), float64(r.Pressure.Value)
	if err := ps.Model.checkReadings("dry bulb", r.DryBulb.Value, r.Pressure.Value); err != nil {
		return Air{}, err
	}
	if err := checkTemperature("wet bulb", b); err != nil {
		return Air{}, err
	}
	es, a, err := ps.wick(b, p, r.Wick)
	if err != nil {
		return Air{}, err
	}
	e := es - scale*a*p*(t-b)
	if !(e >= 0) {
		return Air{}, &RangeError{
			Quantity: "wet bulb", Value: r.WetBulb.Value, Min: ps.driest(r, scale),
			Max: r.DryBulb.Value,
			Advice: "lower than perfectly dry air would bring it: " +
				"check the thermometers against each other in the same air",
		}
	}
	if e >= p {
		return Air{}, ps.Model.boils("wet bulb", b, p)
	}
	w := ps.Model.humidityRatio(e, p)
	if ws, ok := ps.Model.saturationHumidityRatio(t, p); ok && w > ws {
		// Supercooled water on the wick can stand in air that has more vapor than ice
		// allows: up to 2 % more counts as saturated. On any other wick it is a rounding.
		if w > 1.02*ws && r.Wick == WickWet {
			return Air{}, supersaturated("dry bulb", w, ws)
		}
		w = ws
	}
	return ps.Model.at(t, w, p)
}

// wick is the saturation pressure at the wick and the coefficient there.
func (ps Psychrometer) wick(b, p float64, wick Wick) (es, a float64, err error) {
	bc := b - zeroCelsius
	iced := bc < 0 && wick != WickWet
	switch {
	case wick == WickIced && bc > 0:
		return 0, 0, &RangeError{
			Quantity: "wet bulb of an iced wick",
			Value:    quantity.Temperature(b),
			Max:      quantity.Celsius(0),
			Advice:   "ice has melted there",
		}
	case wick == WickWet && bc < -20:
		return 0, 0, &RangeError{
			Quantity: "wet bulb of a wick wet with water",
			Value:    quantity.Temperature(b),
			Min:      quantity.Celsius(-20),
			Advice:   "a wick so cold is iced",
		}
	case wick == WickWet && bc < 0:
		return supercooled(b), ps.Coefficient * (1 + ps.Growth*bc), nil
	}
	ws, ok := ps.Model.saturationHumidityRatio(b, p)
	if !ok {
		return 0, 0, ps.Model.boils("wet bulb", b, p)
	}
	if iced {
		return ps.Model.vaporPressure(ws, p), ps.Iced, nil
	}
	return ps.Model.vaporPressure(ws, p), ps.Coefficient * (1 + ps.Growth*bc), nil
}

// WetBulbIn returns what the wet thermometer shows in a. Around 0 °C an
// Air without a wick of its own is read with a wet one where that can be. The
// error is a *RangeError.
func (ps Psychrometer) WetBulbIn(a Air) (quantity.Temperature, error) {
	ps.Model = a.model
	if err := a.check("air"); err != nil {
		return 0, err
	}
	if err := ps.check(); err != nil {
		return 0, err
	}
	e := a.model.vaporPressure(a.w, a.p)
	excess := func(b float64) float64 {
		es, c, err := ps.wick(b, a.p, WickUnseen)
		if err != nil {
			return 1e9
		}
		return es - c*a.p*(a.t-b) - e
	}
	low, high := minTemperature-1, a.t
	if high > zeroCelsius {
		if !a.iced && excess(zeroCelsius) <= 0 {
			low = zeroCelsius
		} else {
			high = math.Nextafter(zeroCelsius, 0)
		}
	}
	return quantity.Temperature(root.Rising(excess, low, high)), nil
}

// driest is what the wet thermometer would show in dry air.
func (ps Psychrometer) driest(r Reading, scale float64) quantity.Temperature {
	t, p := float64(r.DryBulb.Value), float64(r.Pressure.Value)
	return quantity.Temperature(root.Rising(func(b float64) float64 {
		es, a, err := ps.wick(b, p, r.Wick)
		if err != nil {
			return math.Copysign(1, b-zeroCelsius)
		}
		return es - scale*a*p*(t-b)
	}, minTemperature, t))
}

// supercooled is the saturation pressure over water below 0 °C: equation 6 of
// ASHRAE Fundamentals, chapter 1, continued below its range. At −10 °C it is
// within 0.1 % of the 286.27 Pa of the Smithsonian Meteorological Tables (6th
// edition, table 94, from memory).
func supercooled(t float64) float64 {
	ln, _ := hylandWexlerWater(t)
	return math.Exp(ln)
}

// propagate fills the properties and their uncertainties. The slopes are taken
// from differences one standard uncertainty wide, on the side of the range where
// there is air.
func (ps Psychrometer) propagate(r Reading, m *MeasuredAir) {
	properties := func(a Air) [6]float64 {
		return [6]float64{
			float64(a.WetBulb()), float64(a.DewPoint()), a.RelativeHumidity(), a.HumidityRatio(),
			float64(a.Enthalpy()), float64(a.SpecificVolume()),
		}
	}
	at := properties(m.Air)
	var variance [6]float64
	add := func(step func(sign float64) (Air, bool)) {
		up, upOK := step(1)
		down, downOK := step(-1)
		high, low, width := at, at, 0.0
		if upOK {
			high = properties(up)
			width++
		}
		if downOK {
			low = properties(down)
			width++
		}
		if width == 0 {
			return
		}
		for i := range variance {
			d := (high[i] - low[i]) / width
			variance[i] += d * d
		}
	}
	// A step that would put the wet bulb above the dry bulb has no air.
	step := func(q Reading, scale float64) (Air, bool) {
		if q.WetBulb.Value > q.DryBulb.Value {
			return Air{}, false
		}
		a, err := ps.air(q, scale)
		return a, err == nil
	}
	if r.DryBulb.Std > 0 {
		add(func(sign float64) (Air, bool) {
			q := r
			q.DryBulb.Value += quantity.Temperature(sign * r.DryBulb.Std)
			return step(q, 1)
		})
	}
	if r.WetBulb.Std > 0 {
		add(func(sign float64) (Air, bool) {
			q := r
			q.WetBulb.Value += quantity.Temperature(sign * r.WetBulb.Std)
			return step(q, 1)
		})
	}
	if r.Pressure.Std > 0 {
		add(func(sign float64) (Air, bool) {
			q := r
			q.Pressure.Value += quantity.Pressure(sign * r.Pressure.Std)
			return step(q, 1)
		})
	}
	if ps.Spread > 0 {
		add(func(sign float64) (Air, bool) { return step(r, 1+sign*ps.Spread) })
	}
	var std [6]float64
	for i := range std {
		std[i] = math.Sqrt(variance[i])
	}
	m.WetBulb = quantity.Uncertain[quantity.Temperature]{
		Value: quantity.Temperature(at[0]),
		Std:   std[0],
	}
	m.DewPoint = quantity.Uncertain[quantity.Temperature]{
		Value: quantity.Temperature(at[1]),
		Std:   std[1],
	}
	m.RelativeHumidity = quantity.UncertainNumber{Value: at[2], Std: std[2]}
	m.HumidityRatio = quantity.UncertainNumber{Value: at[3], Std: std[3]}
	m.Enthalpy = quantity.Uncertain[quantity.SpecificEnthalpy]{
		Value: quantity.SpecificEnthalpy(at[4]),
		Std:   std[4],
	}
	m.SpecificVolume = quantity.Uncertain[quantity.SpecificVolume]{
		Value: quantity.SpecificVolume(at[5]),
		Std:   std[5],
	}
}
