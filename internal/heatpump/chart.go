package heatpump

import (
	"math"

	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/heatpump/signature"
	"github.com/satline/satline/quantity"
)

// chartReach is how far a row of the maker's chart may be from the weather of the visit, and
// warmest the outdoor air from which a row is one of cooling.
const (
	chartReach = quantity.TemperatureDelta(7 / 1.8)
	warmest    = quantity.Temperature((65 + 459.67) / 1.8)
)

// chartRow is the row of the maker's heating chart nearest to the weather; nil where none is
// near.
func (b *belief) chartRow() *diagnose.NormalReading {
	if b.c.OutdoorDryBulb == nil {
		return nil
	}
	var best *diagnose.NormalReading
	least := float64(chartReach)
	for i := range b.c.Normal {
		n := &b.c.Normal[i]
		off := math.Abs(float64(n.Outdoor.Sub(b.c.OutdoorDryBulb.Value)))
		if n.Outdoor > 0 && n.Outdoor < warmest && off <= least {
			best, least = n, off
		}
	}
	return best
}

// ofChart is how far this machine, sound, is from those of its kind, by its maker's chart.
func (b *belief) ofChart(by [signature.Devices]float64) (shift [signature.Features]float64) {
	row := b.chartRow()
	if row == nil {
		return shift
	}
	w := signature.Weather{Outdoor: float64(row.Outdoor), Return: b.seen.weather.Return}
	if row.ReturnDryBulb > 0 {
		w.Return = float64(row.ReturnDryBulb)
	}
	var mean [signature.Features]float64
	for d, share := range by {
		m := signature.Of(0, 0, signature.Device(d)).Mean(w)
		for f := range m {
			mean[f] += share * m[f]
		}
	}
	if row.Suction > 0 {
		if t, err := b.c.Fluid.DewTemperature(row.Suction.Absolute(b.c.Evidence.Atmosphere)); err == nil {
			shift[signature.EvaporatingUnder] = float64(row.Outdoor.Sub(t)) - mean[signature.EvaporatingUnder]
			b.chart = true
		}
	}
	if row.Liquid > 0 {
		if t, err := b.c.Fluid.BubbleTemperature(row.Liquid.Absolute(b.c.Evidence.Atmosphere)); err == nil {
			shift[signature.CondensingOver] = float64(t) - w.Return - mean[signature.CondensingOver]
			b.chart = true
		}
	}
	return shift
}
