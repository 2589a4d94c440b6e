package heatpump

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/heatpump/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
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
		m := signature.Mean(0, 0, signature.Device(d), w)
		for f := range m {
			mean[f] += share * m[f]
		}
	}
	if row.Suction > 0 {
		low := row.Suction.Absolute(b.c.Evidence.Atmosphere)
		if t, err := b.c.Fluid.DewTemperature(low); err == nil {
			under := float64(row.Outdoor.Sub(t))
			shift[signature.EvaporatingUnder] = under - mean[signature.EvaporatingUnder]
			b.chart = true
		}
	}
	if row.Liquid > 0 {
		head := row.Liquid.Absolute(b.c.Evidence.Atmosphere)
		if t, err := b.c.Fluid.BubbleTemperature(head); err == nil {
			shift[signature.CondensingOver] = float64(t) - w.Return - mean[signature.CondensingOver]
			b.chart = true
		}
	}
	return shift
}

// What the maker's chart says.
const (
	noChart = iota
	chartHolds
	chartFails
)

// chartBand is how far a saturation temperature may be from that of the chart: common practice,
// no source.
const chartBand = quantity.TemperatureDelta(4 / 1.8)

// byChart holds the gauges against the maker's chart, and says so.
func (p *planner) byChart() (int, fact.Fact) {
	c, row := p.c, p.b.chartRow()
	if row == nil || row.Suction == 0 || row.Liquid == 0 ||
		c.EvaporatingDew == nil || c.CondensingBubble == nil {
		return noChart, fact.Fact{}
	}
	atmosphere := c.Evidence.Atmosphere
	te, err := c.Fluid.DewTemperature(row.Suction.Absolute(atmosphere))
	if err != nil {
		return noChart, fact.Fact{}
	}
	tc, err := c.Fluid.BubbleTemperature(row.Liquid.Absolute(atmosphere))
	if err != nil {
		return noChart, fact.Fact{}
	}
	says := fact.New("charge.heating-chart-holds", fact.Amount("outdoor", row.Outdoor),
		fact.Amount("suction", row.Suction), fact.Amount("liquid", row.Liquid))
	within := func(a, b quantity.Temperature) bool { return max(a.Sub(b), b.Sub(a)) <= chartBand }
	// The row is for its own weather: what the outdoor air is off it moves the suction about as
	// much.
	warmer := quantity.TemperatureDelta(0)
	if c.OutdoorDryBulb != nil {
		warmer = c.OutdoorDryBulb.Value.Sub(row.Outdoor)
	}
	if within(c.EvaporatingDew.Value, te.Add(warmer)) &&
		within(c.CondensingBubble.Value, tc.Add(warmer/3)) {
		return chartHolds, says
	}
	says.Code = "charge.heating-chart-fails"
	return chartFails, says
}
