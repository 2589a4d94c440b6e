package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// A FreezeForecast says how near the evaporator is to frost.
type FreezeForecast struct {
	// Surface is the coldest surface of the coil, and Margin how far that is above 32 °F. It
	// is the mean over fins and tubes; the tubes are between it and the refrigerant, whose
	// dew point at the suction port is Evaporating.
	Surface quantity.Uncertain[quantity.Temperature]      `json:"surface"`
	Margin  quantity.Uncertain[quantity.TemperatureDelta] `json:"margin"`
	// Evaporating below 32 °F with Surface above is a coil that may frost at its tubes.
	Evaporating quantity.Uncertain[quantity.Temperature] `json:"evaporating"`
	// Probability that the surface is below 32 °F and the coil grows ice.
	Probability float64 `json:"probability"`
	// What would bring the surface to 32 °F, each with all else as it is; nil where it does
	// not within the range of the model, or where the surface is below already.
	Outdoor *quantity.Temperature `json:"outdoor,omitzero"` // at this outdoor dry bulb and colder
	WetBulb *quantity.Temperature `json:"wetBulb,omitzero"` // at this return wet bulb and drier
	Airflow *float64              `json:"airflow,omitzero"` // at this share of the airflow and less
	// Extrapolating as in Prediction.
	Extrapolating []Departure `json:"extrapolating,omitempty"`
}

const freezing = 273.15 // K

// Freeze returns how near the fitted machine is to frost under conditions c, with the
// changes and the errors of Predict.
func (f *Fitted) Freeze(c Conditions, changed Faults) (FreezeForecast, error) {
	p, err := f.Predict(c, changed)
	if err != nil {
		return FreezeForecast{}, err
	}
	margin := float64(p.CoilSurface.Value) - freezing
	out := FreezeForecast{
		Surface:     p.CoilSurface,
		Evaporating: p.Evaporating,
		Margin: quantity.Uncertain[quantity.TemperatureDelta]{
			Value: quantity.TemperatureDelta(margin),
			Std:   p.CoilSurface.Std,
		},
		Probability:   normal.Below(-margin / p.CoilSurface.Std),
		Extrapolating: p.Extrapolating,
	}
	if margin <= 0 {
		return out, nil
	}
	outdoor := func(x float64) (Conditions, Faults) {
		k := c
		k.OutdoorDryBulb = quantity.Temperature(x)
		return k, changed
	}
	from, to := float64(c.OutdoorDryBulb), float64(quantity.Fahrenheit(36))
	if t, ok := f.freezesAt(from, to, outdoor); ok {
		v := quantity.Temperature(t)
		out.Outdoor = &v
	}
	wetBulb := func(x float64) (Conditions, Faults) {
		k := c
		k.ReturnWetBulb = quantity.Temperature(x)
		return k, changed
	}
	from, to = float64(c.ReturnWetBulb), float64(quantity.Fahrenheit(40))
	if t, ok := f.freezesAt(from, to, wetBulb); ok {
		v := quantity.Temperature(t)
		out.WetBulb = &v
	}
	if a, ok := f.freezesAt(1, 0.2, func(x float64) (Conditions, Faults) {
		g := changed
		g.IndoorAirflow = (1+changed.IndoorAirflow)*x - 1
		return c, g
	}); ok {
		out.Airflow = &a
	}
	return out, nil
}

// freezesAt looks from a point where the surface is above freezing towards end for where it
// no longer is.
func (f *Fitted) freezesAt(
	from, end float64, at func(float64) (Conditions, Faults),
) (float64, bool) {
	ps := f.parameters()
	x := make([]float64, len(ps))
	for i, u := range f.unknowns {
		x[i] = u.Value
	}
	above := func(v float64) float64 {
		c, g := at(v)
		if c.Airflow == 0 {
			c.Airflow = f.at.Airflow
		}
		o, err := f.solveAt(ps, x, c, g)
		if err != nil {
			return math.NaN()
		}
		return float64(o.CoilSurface) - freezing
	}
	const steps = 12
	a, fa := from, above(from)
	for i := 1; i <= steps; i++ {
		b := from + (end-from)*float64(i)/steps
		fb := above(b)
		if math.IsNaN(fb) {
			return 0, false
		}
		if fb <= 0 {
			return root.Find(above, a, b, fa, fb, 1e-4, 0), true
		}
		a, fa = b, fb
	}
	return 0, false
}
