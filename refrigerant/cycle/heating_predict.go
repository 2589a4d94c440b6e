package cycle

import (
	"math"

	"github.com/satline/satline/quantity"
)

// A HeatingPrediction is what a machine will do, with the standard uncertainty of each figure.
type HeatingPrediction struct {
	// Heating is the best guess, in full.
	Heating Heating `json:"heating"`

	Evaporating   quantity.Uncertain[quantity.Temperature]      `json:"evaporating"`
	Condensing    quantity.Uncertain[quantity.Temperature]      `json:"condensing"`
	CoilSurface   quantity.Uncertain[quantity.Temperature]      `json:"coilSurface"`
	Superheat     quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat"`
	Subcooling    quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling"`
	Supply        quantity.Uncertain[quantity.Temperature]      `json:"supply"`
	DischargeLine quantity.Uncertain[quantity.Temperature]      `json:"dischargeLine"`
	Capacity      quantity.Uncertain[quantity.Power]            `json:"capacity"`
	Power         quantity.Uncertain[quantity.Power]            `json:"power"`
	// COPStd is the standard uncertainty of Heating.COP.
	COPStd float64 `json:"copStd"`
}

// Predict returns what the machine will do under conditions c, with changed from what it was
// found as. The uncertainties are what Fit left open, or, of a machine that was not fitted,
// how much machines of a kind differ; what no model of one kind tells is not in them. The
// error is a *RangeError or ErrNoSystem.
func (h *Reversed) Predict(c HeatingConditions, changed Faults) (HeatingPrediction, error) {
	best, err := h.Solve(c, changed)
	if err != nil {
		return HeatingPrediction{}, err
	}
	machines := h.others
	if machines == nil {
		for i, spread := range heatingSpreads {
			by := make([]float64, len(heatingSpreads))
			by[i] = spread
			machines = append(machines, h.differing(by))
		}
	}
	var others []Heating
	for _, m := range machines {
		o, err := m.Solve(c, changed)
		if err != nil {
			return HeatingPrediction{}, err
		}
		others = append(others, o)
	}
	type (
		at   = quantity.Temperature
		by   = quantity.TemperatureDelta
		heat = quantity.Power
	)
	return HeatingPrediction{
		Heating:       best,
		Evaporating:   told(others, &best, func(o *Heating) at { return o.Evaporating }),
		Condensing:    told(others, &best, func(o *Heating) at { return o.Condensing }),
		CoilSurface:   told(others, &best, func(o *Heating) at { return o.CoilSurface }),
		Supply:        told(others, &best, func(o *Heating) at { return o.Supply }),
		DischargeLine: told(others, &best, func(o *Heating) at { return o.DischargeLine }),
		Superheat:     told(others, &best, func(o *Heating) by { return o.Superheat }),
		Subcooling:    told(others, &best, func(o *Heating) by { return o.Subcooling }),
		Capacity:      told(others, &best, func(o *Heating) heat { return o.Capacity }),
		Power:         told(others, &best, func(o *Heating) heat { return o.Power }),
		COPStd:        apart(others, &best, func(o *Heating) float64 { return o.COP }),
	}, nil
}

// told is a figure of the best machine with its uncertainty.
func told[T quantity.Quantity](
	others []Heating, best *Heating, of func(*Heating) T,
) quantity.Uncertain[T] {
	return quantity.Uncertain[T]{Value: of(best), Std: apart(others, best, of)}
}

// apart is how far the others are from the best machine, each of them one standard deviation.
func apart[T ~float64](others []Heating, best *Heating, of func(*Heating) T) float64 {
	sum := 0.0
	for i := range others {
		d := float64(of(&others[i]) - of(best))
		sum += d * d
	}
	return math.Sqrt(sum)
}
