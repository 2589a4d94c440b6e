package airside

import (
	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// FreezeLimits says what would bring the coil of a machine to 32 °F, each change
// by itself. A limit that is not reached within reason is nil.
type FreezeLimits struct {
	// Now is where the machine runs; Freezes says that its coil is below 32 °F
	// there already, and the limits are then where it stops freezing.
	Now     Running `json:"now"`
	Freezes bool    `json:"freezes"`
	// ReturnDryBulb at the same relative humidity: what a lower set-point does.
	ReturnDryBulb *quantity.Temperature `json:"returnDryBulb,omitzero"`
	// ReturnWetBulb at the same dry bulb: drier air.
	ReturnWetBulb *quantity.Temperature `json:"returnWetBulb,omitzero"`
	// Outdoor is the outdoor dry bulb: a cool night.
	Outdoor *quantity.Temperature `json:"outdoor,omitzero"`
	Airflow *quantity.VolumeFlow  `json:"airflow,omitzero"`
}

// FindFreezeLimits returns at which return temperature, return wet bulb, outdoor
// temperature and airflow the coldest surface of a plant is at 32 °F, with all
// else as at the condition given. The error is a *RangeError, or the plant's own.
func FindFreezeLimits(plant Plant, at Conditions) (FreezeLimits, error) {
	if err := checkPlant(plant, at); err != nil {
		return FreezeLimits{}, err
	}
	now, err := plant.Run(at)
	if err != nil {
		return FreezeLimits{}, err
	}
	l := FreezeLimits{Now: now, Freezes: now.Surface < Freezing}
	a, p := at.Return, at.Return.Pressure()
	rh := a.RelativeHumidity()
	over := float64(now.Surface - Freezing)

	warmer := func(x float64) (Conditions, error) {
		c := at
		c.Return, err = a.Model().FromRelativeHumidity(quantity.Temperature(x), rh, p)
		return c, err
	}
	if t, ok := crossing(plant, over, float64(a.DryBulb()), 283.15, 313.15, warmer); ok {
		l.ReturnDryBulb = new(quantity.Temperature(t))
	}
	if dry, err := a.Model().FromHumidityRatio(a.DryBulb(), 0, p); err == nil {
		damper := func(x float64) (Conditions, error) {
			c := at
			c.Return, err = a.Model().FromWetBulb(a.DryBulb(), quantity.Temperature(x), p)
			return c, err
		}
		wet, driest := float64(a.WetBulb()), float64(dry.WetBulb())
		if t, ok := crossing(plant, over, wet, driest, float64(a.DryBulb()), damper); ok {
			l.ReturnWetBulb = new(quantity.Temperature(t))
		}
	}
	hotter := func(x float64) (Conditions, error) {
		c := at
		c.Outdoor = quantity.Temperature(x)
		return c, nil
	}
	const coolest, hottest = 255.15, 318.15
	outdoor := float64(at.Outdoor)
	if line, ok := plant.(CapacityLine); !ok {
		if t, ok := crossing(plant, over, outdoor, coolest, hottest, hotter); ok {
			l.Outdoor = new(quantity.Temperature(t))
		}
	} else if t, ok := line.outdoorAt(at, Freezing); ok &&
		(l.Freezes && t >= outdoor && t <= hottest || !l.Freezes && t <= outdoor && t >= coolest) {
		l.Outdoor = new(quantity.Temperature(t))
	}
	const least, most = 0.15, 2 // of the flow there is
	more := func(x float64) (Conditions, error) {
		c := at
		c.Airflow = quantity.VolumeFlow(x)
		return c, nil
	}
	flow := float64(at.Airflow)
	if v, ok := crossing(plant, over, flow, least*flow, most*flow, more); ok {
		l.Airflow = new(quantity.VolumeFlow(v))
	}
	return l, nil
}

// crossing looks from x, where the coldest surface is so far over 32 °F, down to low, or up to
// high where it freezes already, for the nearest place at which its surface passes 32 °F. Where the
// plant has no answer the search ends.
func crossing(
	plant Plant, now, x, low, high float64, at func(float64) (Conditions, error),
) (float64, bool) {
	freezes := now < 0 // as it is
	end := low
	if freezes {
		end = high
	}
	margin := func(v float64) (float64, bool) {
		c, err := at(v)
		if err != nil {
			return 0, false
		}
		r, err := plant.Run(c)
		return float64(r.Surface - Freezing), err == nil
	}
	const steps, tolerance = 8, 1e-5
	last, lastMargin, ok := x, now, true
	for i := 1; ok && i <= steps; i++ {
		v := x + (end-x)*float64(i)/steps
		var m float64
		if m, ok = margin(v); !ok {
			// The plant gives out before: look half as far, once.
			v = (last + v) / 2
			m, ok = margin(v)
		}
		if ok && m < 0 != freezes {
			broken := false
			at := root.Find(func(v float64) float64 {
				m, ok := margin(v)
				broken = broken || !ok
				return m
			}, last, v, lastMargin, m, 0, tolerance)
			return at, !broken
		}
		last, lastMargin = v, m
	}
	return 0, false
}
