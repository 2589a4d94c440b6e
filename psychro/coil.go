package psychro

import (
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// CoolAndDehumidify passes a over a coil whose wet surface acts like one
// temperature, the apparatus dew point. Of the air a share, the bypass factor,
// leaves as it came; the rest leaves saturated at the apparatus dew point (ASHRAE
// Handbook HVAC Systems and Equipment, chapter "Air-Cooling and Dehumidifying
// Coils"). The condensate leaves at the apparatus dew point, as frost below 0 °C.
//
// Where the apparatus dew point is above the dew point of the air nothing
// condenses and the coil only cools. Above the dry bulb it is a *RangeError.
func CoolAndDehumidify(
	a Air, apparatusDewPoint quantity.Temperature, bypass float64,
) (Process, error) {
	if err := a.check("entering air"); err != nil {
		return Process{}, err
	}
	s := float64(apparatusDewPoint)
	if err := checkTemperature("apparatus dew point", s); err != nil {
		return Process{}, err
	}
	if s > a.t {
		return Process{}, aboveDryBulb(
			"apparatus dew point", s, a.t, "a coil warmer than the air does not cool it",
		)
	}
	if !(bypass >= 0 && bypass <= 1) {
		return Process{}, &RangeError{
			Quantity: "bypass factor",
			Value:    quantity.Number(bypass),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "it is the share of the air that the coil does not touch",
		}
	}
	m, p := a.model, a.p
	ws, ok := m.saturationHumidityRatio(s, p)
	if !ok || ws >= a.w {
		h := bypass*float64(a.Enthalpy()) + (1-bypass)*m.enthalpy(s, a.w, p)
		end := Air{t: m.temperatureAtEnthalpy(h, a.w, p), p: p, w: a.w, model: m}
		return finish(a, end, 0), nil
	}
	h := bypass*float64(a.Enthalpy()) + (1-bypass)*m.enthalpy(s, ws, p)
	w := bypass*a.w + (1-bypass)*ws
	end, _, err := m.settle(h, w, p)
	if err != nil {
		return Process{}, err
	}
	return finish(a, end, m.waterEnthalpy(s, p, s < m.freezing(p))), nil
}

// ApparatusDewPoint returns the apparatus dew point and the bypass factor of a
// coil from the states of the air before and after it: where the line through
// the two meets the saturation curve. It is a *RangeError where the coil took no
// water out, for a dry coil has no one apparatus dew point, and where the line
// passes the curve by: then the air was warmed again after the coil, or a
// reading is wrong.
func ApparatusDewPoint(
	entering, leaving Air,
) (apparatusDewPoint quantity.Temperature, bypass float64, err error) {
	if err := sameStream(entering, leaving); err != nil {
		return 0, 0, err
	}
	if !(leaving.w < entering.w*(1-roundingW)) {
		return 0, 0, &RangeError{
			Quantity: "humidity ratio of the leaving air",
			Value:    quantity.Number(leaving.w),
			Max:      quantity.Number(entering.w),
			Advice:   "the coil took no water out; a dry coil has no one apparatus dew point",
		}
	}
	m, p := entering.model, entering.p
	h1, h2 := float64(entering.Enthalpy()), float64(leaving.Enthalpy())
	slope := (h1 - h2) / (entering.w - leaving.w)
	// How far saturated air at t lies on the warm side of the line. From the dew
	// point of the leaving air down it rises, where at all, to a summit and falls
	// again, and once more below the kink at the triple point. Its first zero on
	// the way down is the apparatus dew point.
	beyond := func(t float64) float64 {
		ws, _ := m.saturationHumidityRatio(t, p)
		return m.enthalpy(t, ws, p) - h2 - slope*(ws-leaving.w)
	}
	high := float64(leaving.DewPoint())
	if leaving.RelativeHumidity() >= 1-roundingW {
		return quantity.Temperature(high), 0, nil
	}
	if high <= minTemperature {
		return 0, 0, &RangeError{
			Quantity: "dew point of the leaving air", Value: leaving.DewPoint(),
			Min:    quantity.Temperature(minTemperature),
			Advice: "no coil dries air so far: read it again",
		}
	}
	nearest := math.Inf(-1)
	for _, low := range [...]float64{m.boundary().join, minTemperature} {
		if high <= low {
			continue
		}
		top := summit(beyond, low, high)
		if beyond(top) >= -roundingH {
			s := root.Rising(func(x float64) float64 { return -beyond(x) }, top, high)
			ws, _ := m.saturationHumidityRatio(s, p)
			return quantity.Temperature(s), max(0, (leaving.w-ws)/(entering.w-ws)), nil
		}
		nearest = max(nearest, beyond(top))
		high = low
	}
	return 0, 0, &RangeError{
		Quantity: "enthalpy of the leaving air", Value: leaving.Enthalpy(),
		Max: quantity.SpecificEnthalpy(h2 + nearest),
		Advice: "the line from the entering air misses the saturation curve: " +
			"the air was warmed again after the coil, or a reading is wrong",
	}
}

// roundingH is the enthalpy in J/kg that two computations of one state may differ
// by.
const roundingH = 1e-4

// summit returns where f, with one maximum between low and high, has it.
func summit(f func(float64) float64, low, high float64) float64 {
	for range 80 {
		a, b := low+(high-low)/3, high-(high-low)/3
		if f(a) < f(b) {
			low = a
		} else {
			high = b
		}
	}
	return 0.5 * (low + high)
}

// sameStream refuses two states that cannot be of one stream.
func sameStream(a, b Air) error {
	if err := a.check("entering air"); err != nil {
		return err
	}
	if err := b.check("leaving air"); err != nil {
		return err
	}
	return samePlace(a, b)
}

// samePlace refuses to combine air of different pressures or models.
func samePlace(a, b Air) error {
	if math.Abs(a.p-b.p) > 1e-6*a.p {
		return &RangeError{
			Quantity: "pressure of the second air",
			Value:    b.Pressure(),
			Min:      a.Pressure(),
			Max:      a.Pressure(),
			Advice:   "both are to be at the pressure of the first",
		}
	}
	if a.model != b.model {
		return &RangeError{
			Quantity: "model of the second air",
			Value:    b.model,
			Min:      a.model,
			Max:      a.model,
			Advice:   "both are to be computed with the model of the first",
		}
	}
	return nil
}
