package satline

import (
	"math"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

const kelvin, watt, pascal, ratio = 1e-6, 0.1, 1, 1e-6

// tidy rounds what an assessment states to steps far below what any field
// instrument can tell, so that its JSON form is short. Nothing is computed from the rounded values.
func (a *Assessment) tidy() {
	a.Derived.tidy()
	a.tidyJudged()
	a.tidyChances()
}

func (d *Derived) tidy() {
	for _, u := range []*temperatureReading{d.EvaporatingDew, d.CondensingBubble, d.CondensingDew} {
		tidy(u, kelvin)
	}
	for _, u := range []*deltaReading{
		d.Superheat, d.Subcooling, d.CondensingOverOutdoor, d.Approach, d.TemperatureSplit,
	} {
		tidy(u, kelvin)
	}
	for _, u := range []*quantity.Uncertain[quantity.Power]{
		d.TotalCapacity, d.SensibleCapacity, d.LatentCapacity,
	} {
		tidy(u, watt)
	}
	for _, p := range []*Ratio{d.CompressionRatio, d.ReturnHumidity, d.SensibleHeatRatio} {
		p.tidy()
	}
	tidy(d.Condensate, 1e-8)
	if e := d.Efficiency; e != nil {
		for _, p := range []*float64{&e.COP, &e.COPStd, &e.EER, &e.EERStd} {
			*p = to(*p, ratio)
		}
	}
}

func (a *Assessment) tidyJudged() {
	var deltas []*deltaReading
	if r := a.Charge.Reading; r != nil {
		deltas = append(deltas, &r.Measured, r.Target, r.Deviation)
		r.Tolerance = quantity.TemperatureDelta(to(float64(r.Tolerance), kelvin))
	}
	if a.Air != nil {
		deltas = append(deltas, &a.Air.Measured, &a.Air.Target, &a.Air.Deviation)
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
	tidy(&a.Atmosphere.Pressure, pascal)
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
			c := &s.Course
			for _, d := range []*time.Duration{&c.From, &c.To, &c.TimeConstant, &c.Wait, &c.Period} {
				*d = d.Round(time.Second)
			}
		}
	}
}

func (a *Assessment) tidyChances() {
	c := &a.Charge
	for _, p := range []*float64{&c.Low, &c.High, &c.InBand} {
		*p = to(*p, ratio)
	}
	c.Error.tidy()
	for f := range a.facts {
		for i, v := range f.Values {
			if share, ok := v.Of.(fact.Share); ok {
				f.Values[i].Of = fact.Share(to(float64(share), 1e-4))
			}
		}
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		f.Chance = to(f.Chance, ratio)
		for j := range f.Faults {
			f.Faults[j].Chance = to(f.Faults[j].Chance, ratio)
		}
	}
}

func (r *Ratio) tidy() {
	if r != nil {
		r.Value, r.Std = to(r.Value, ratio), to(r.Std, ratio)
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
