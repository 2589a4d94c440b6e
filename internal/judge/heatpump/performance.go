package heatpump

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// cold is the low-temperature rating point of AHRI 210/240, test H3, and colder what is told
// where it is about that cold already.
var (
	cold   = quantity.Fahrenheit(17)
	colder = quantity.Fahrenheit(5)
)

// heatingCurve is the capacity of a heat pump of one speed over that at 47 °F outdoors and
// 70 °F indoors: the fit to makers' data in NREL/TP-5500-56354 (Cutler, Winkler, Kruis,
// Christensen and Brandemuehl 2013), as the source of OpenStudio-HPXML has it, in °F. Defrost
// is not in it.
func heatingCurve(outdoor, room quantity.Temperature) float64 {
	in := min(max(room.Fahrenheit(), 55), 85)
	out := min(max(outdoor.Fahrenheit(), -10), 65)
	return 0.566333415 - 0.000744164*in - 0.0000103*in*in +
		0.009414634*out + 0.0000506*out*out - 0.00000675*in*out
}

// performance is what the machine gives now, by the air, and what it will give in cold
// weather.
func (b *belief) performance() []fact.Fact {
	c := b.c
	var out []fact.Fact
	if f, ok := defrostFigure(c); ok {
		out = append(out, f)
	}
	if c.OutdoorDryBulb == nil || c.NominalCapacity <= 0 {
		return out
	}
	room := quantity.Fahrenheit(70)
	if c.ReturnDryBulb != nil {
		room = c.ReturnDryBulb.Value
	}
	now := c.OutdoorDryBulb.Value
	// A heat pump is rated about the same in heating at 47 °F as in cooling at 95 °F: common
	// practice.
	at47 := float64(c.NominalCapacity)
	usual := rounded(at47 * heatingCurve(now, room))
	cold, code := cold, fact.Code("performance.heating-sound-cold")
	if now < cold+5 {
		cold = colder
	}
	if q, ok := b.capacity(); ok && b.of(strips) >= worth {
		out = append(out, fact.New("performance.heating-with-strips",
			fact.Measured("capacity", q), fact.Amount("usual", usual)))
	} else if ok {
		f := fact.New("performance.heating-now",
			fact.Measured("capacity", q), fact.Amount("usual", usual))
		if b.modulates() {
			f = fact.New("performance.heating-part", fact.Measured("capacity", q))
		}
		if p := c.Power; p != nil && p.Value > 0 {
			f = f.With(fact.Of("cop", fact.Number(q.Value/p.Value)))
		}
		out = append(out, f)
		if !b.modulates() {
			at47, code = float64(q.Value)/heatingCurve(now, room), "performance.heating-cold"
		}
	}
	if now > cold+3 {
		out = append(out, fact.New(code, fact.Amount("outdoor", cold),
			fact.Amount("capacity", rounded(at47*heatingCurve(cold, room)))))
	}
	if now < warmestFrost && !b.modulates() {
		out = append(out, fact.New("performance.heating-balance", fact.Amount("outdoor", now)))
	}
	return out
}

// rounded to 500 Btu/h, more than which nobody knows; no capacity is without a doubt.
func rounded(watts float64) quantity.Power {
	return quantity.BtuPerHour(500 * math.Round(quantity.Watts(watts).BtuPerHour()/500))
}

// capacity is what the room gets, by airflow and rise.
func (b *belief) capacity() (q quantity.Uncertain[quantity.Power], ok bool) {
	c := b.c
	if c.Airflow == nil || c.ReturnDryBulb == nil || c.SupplyDryBulb == nil {
		return q, false
	}
	const indoors = 0.4 // relative humidity of a heated room, about; it hardly counts
	air, err := psychro.FromRelativeHumidity(c.ReturnDryBulb.Value, indoors, c.Evidence.Atmosphere)
	rise := float64(c.SupplyDryBulb.Value.Sub(c.ReturnDryBulb.Value))
	if err != nil || rise <= 0 {
		return q, false
	}
	cp := 1006 + 1860*air.HumidityRatio() // J/(kg K) of dry air with its water
	q.Value = quantity.Power(float64(air.DryAirFlow(c.Airflow.Value)) * cp * rise)
	q.Std = float64(q.Value) * math.Hypot(
		c.Airflow.Std/float64(c.Airflow.Value),
		math.Hypot(c.SupplyDryBulb.Std, c.ReturnDryBulb.Std)/rise,
	)
	return told(q), true
}
