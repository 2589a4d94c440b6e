package psychro

import (
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// A Stream is air on the move, counted by the dry air in it; see
// [Air.DryAirFlow].
type Stream struct {
	Air    Air               `json:"air"`
	DryAir quantity.MassFlow `json:"dryAir"`
}

// A Mixture is what streams become together.
type Mixture struct {
	// Air is the mixed air and DryAir its flow.
	Stream
	// Fog is the water that the mixed air cannot hold, in kilograms per kilogram
	// of dry air, and FogEnthalpy that of the fog per kilogram of it. Two
	// saturated streams of different temperature always make some.
	Fog         float64                   `json:"fog"`
	FogEnthalpy quantity.SpecificEnthalpy `json:"fogEnthalpy"`
}

// Mix returns what the streams are together: their dry air, their water and
// their enthalpy added up. At least one must carry air; all are to be at one
// pressure. The error is a *RangeError.
func Mix(streams ...Stream) (Mixture, error) {
	var first Air
	var total, water, energy float64
	for _, s := range streams {
		if err := s.Air.check("air to mix"); err != nil {
			return Mixture{}, err
		}
		if !(s.DryAir >= 0 && s.DryAir <= 1e9) {
			return Mixture{}, &RangeError{
				Quantity: "flow of dry air",
				Value:    s.DryAir,
				Min:      quantity.MassFlow(0),
				Max:      quantity.MassFlow(1e9),
				Advice:   "see Air.DryAirFlow",
			}
		}
		if !first.IsValid() {
			first = s.Air
		} else if err := samePlace(first, s.Air); err != nil {
			return Mixture{}, err
		}
		m := float64(s.DryAir)
		total += m
		water += m * s.Air.w
		energy += m * float64(s.Air.Enthalpy())
	}
	if total == 0 {
		return Mixture{}, &RangeError{
			Quantity: "flow of dry air in all",
			Value:    quantity.MassFlow(0),
			Advice:   "there is nothing to mix",
		}
	}
	h, w := energy/total, water/total
	end, fogEnthalpy, err := first.model.settle(h, w, first.p)
	if err != nil {
		return Mixture{}, err
	}
	return Mixture{
		Stream:      Stream{Air: end, DryAir: quantity.MassFlow(total)},
		Fog:         max(0, w-end.w),
		FogEnthalpy: quantity.SpecificEnthalpy(fogEnthalpy),
	}, nil
}

// settle returns the air of enthalpy h and water w per kilogram of dry air. What
// it cannot hold has settled as fog of the same temperature, water or ice, with
// the enthalpy fogEnthalpy; at 0 °C it is some of each.
func (m Model) settle(h, w, p float64) (end Air, fogEnthalpy float64, err error) {
	t := m.temperatureAtEnthalpy(h, w, p)
	if err := checkTemperature("dry bulb", t); err != nil {
		return Air{}, 0, err
	}
	ws, ok := m.saturationHumidityRatio(t, p)
	if !ok || w <= ws {
		return Air{t: t, p: p, w: w, model: m}, 0, nil
	}
	// Fog gives its heat of condensation to the air, which is warmer for it.
	excess := func(t float64) float64 {
		ws, ok := m.saturationHumidityRatio(t, p)
		if !ok {
			return 1
		}
		return m.wetBulbBalance(t, w, ws, p) - h
	}
	high := t + 1
	for excess(high) < 0 && high < maxTemperature {
		high += high - t
	}
	s := root.Rising(excess, t, high)
	ws, _ = m.saturationHumidityRatio(s, p)
	if !(ws < w) {
		return Air{t: s, p: p, w: w, model: m}, 0, nil
	}
	freezing := m.freezing(p)
	water, ice := m.waterEnthalpy(s, p, false), m.waterEnthalpy(s, p, true)
	switch {
	case math.Abs(s-freezing) < 1e-9:
		fogEnthalpy = max(ice, min(water, (h-m.enthalpy(s, ws, p))/(w-ws)))
	case s < freezing:
		fogEnthalpy = ice
	default:
		fogEnthalpy = water
	}
	return Air{t: s, p: p, w: ws, model: m}, fogEnthalpy, nil
}
