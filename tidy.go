package satline

import (
	"math"
	"time"

	"github.com/satline/satline/quantity"
)

// tidy rounds what an assessment states to steps far below what any field
// instrument can tell, so that its JSON form is short, and below what a sentence
// shows, so that both say the same. Nothing is computed from the rounded values.
func (a *Assessment) tidy() {
	const kelvin, watt, pascal, ratio = 1e-6, 0.1, 1, 1e-6
	d, c := &a.Derived, &a.Charge
	for _, u := range []derivedTemperature{d.EvaporatingDew, d.CondensingBubble} {
		tidy(u, kelvin)
	}
	deltas := []derivedDelta{
		d.Superheat, d.Subcooling, d.CondensingOverOutdoor, d.Approach, d.TemperatureSplit,
		c.Target, c.Measured, c.Deviation,
	}
	if a.Air != nil {
		deltas = append(deltas, a.Air.TargetSplit, a.Air.Deviation)
		a.Air.Tolerance = quantity.TemperatureDelta(to(float64(a.Air.Tolerance), kelvin))
	}
	if a.Freeze != nil {
		tidy(a.Freeze.Surface, kelvin)
		a.Freeze.Chance = to(a.Freeze.Chance, ratio)
		deltas = append(deltas, a.Freeze.Margin)
	}
	if a.Dose != nil {
		deltas = append(deltas, &a.Dose.After, &a.Dose.PerOunce)
	}
	for _, u := range deltas {
		tidy(u, kelvin)
	}
	for _, u := range []derivedPower{d.TotalCapacity, d.SensibleCapacity, d.LatentCapacity} {
		tidy(u, watt)
	}
	tidy(&a.Atmosphere.Pressure, pascal)
	c.Tolerance = quantity.TemperatureDelta(to(float64(c.Tolerance), kelvin))
	c.Low, c.High = to(c.Low, ratio), to(c.High, ratio)
	if c.InBand > 0 {
		c.InBand = to(1-c.Low-c.High, ratio)
	}
	for _, p := range []*float64{d.CompressionRatio, &d.CompressionRatioStd, d.ReturnHumidity, &d.ReturnHumidityStd, d.SensibleHeatRatio, &d.SensibleHeatRatioStd} {
		if p != nil {
			*p = to(*p, ratio)
		}
	}
	tidy(d.Condensate, 1e-8)
	if e := d.Efficiency; e != nil {
		e.COP, e.COPStd, e.EER, e.EERStd = to(e.COP, ratio), to(e.COPStd, ratio), to(e.EER, ratio), to(e.EERStd, ratio)
	}
	if w := a.WeighIn; w != nil {
		const milligram = 1e-6
		tidy(&w.Total, milligram)
		for _, m := range []*quantity.Mass{&w.Label, &w.Line, &w.Accessories} {
			*m = quantity.Mass(to(float64(*m), milligram))
		}
		w.PerFoot = quantity.Mass(to(float64(w.PerFoot), milligram/100))
	}
	for _, s := range []*SteadinessVerdict{a.Steadiness, a.Valve} {
		if s != nil {
			for _, d := range []*time.Duration{&s.Course.From, &s.Course.To, &s.Course.TimeConstant, &s.Course.Wait, &s.Course.Period} {
				*d = d.Round(time.Second)
			}
		}
	}
	for i := range a.Findings {
		a.Findings[i].Probability = to(a.Findings[i].Probability, ratio)
	}
}

func tidy[T quantity.Quantity](u *quantity.Uncertain[T], step float64) {
	if u != nil {
		u.Value, u.Std = T(to(float64(u.Value), step)), to(u.Std, step)
	}
}

// to rounds v to a decimal step.
func to(v, step float64) float64 {
	if step >= 1 {
		return step * math.Round(v/step)
	}
	perUnit := math.Round(1 / step)
	return math.Round(v*perUnit) / perUnit
}
