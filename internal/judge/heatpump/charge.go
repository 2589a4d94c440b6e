package heatpump

import (
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/heatpump/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// surely is the chance from which a charge is called.
const surely = 0.8

// charge says what can be told of the charge: a gross error by the readings, the rest by the
// maker's heating chart or by weight.
func (p *planner) charge() modes.Charge {
	b := p.b
	out := modes.Charge{Outcome: modes.NotJudged, Missing: p.j.Charge.Missing}
	wrong := b.of(otherFluid, "liquid-clamp", "liquid-gauge-zero") >= likely
	if m := p.c.Subcooling; m != nil && !p.blind && !wrong {
		out.Reading = &modes.Reading{
			Method: charge.Subcooling, Measured: *m,
			Says: fact.New("reading.heating-subcooling", fact.Measured("measured", *m)),
		}
	}
	stop := p.j.Dangers.Stop()
	switch {
	case !p.why.IsZero():
		out.Why = []fact.Fact{p.why}
		return out
	case stop != nil:
		out.Why = []fact.Fact{stop.Says}
	}
	low, high := b.of(undercharge, nextToEmpty), b.of(overcharge)
	by, chart := p.byChart()
	switch {
	case stop != nil && low < surely:
		return out
	case low >= surely:
		out.Outcome = modes.ChargeLow
	case high >= surely:
		out.Outcome = modes.ChargeHigh
	case by == chartHolds && p.ranked[0].code == sound:
		out.Outcome = modes.ChargeInBand
	}
	if !chart.IsZero() {
		out.Why = append(out.Why, chart)
	}
	if out.Outcome != modes.NotJudged {
		out.Low, out.High = low, high
		out.InBand = math.Max(0, 1-low-high)
		return out
	}
	why := fact.New("charge.heating-by-weight")
	if o := p.c.OutdoorDryBulb; o != nil && o.Value >= warmest {
		why = fact.New("charge.heating-warm", fact.Amount("outdoor", o.Value))
	} else if share := b.detectable(); share > 0 {
		why = why.With(fact.Of("share", fact.Share(share)))
	}
	if by == noChart {
		out.Why = append(out.Why, why)
	}
	return out
}

// detectable is the smallest shortage that the readings taken would show in this weather,
// by how far its mean is from that of a sound machine; zero where none would.
func (b *belief) detectable() float64 {
	const apart = 2.2 // standard deviations between two means
	place := 0
	for i := range causes {
		if causes[i].code == undercharge {
			place = i
		}
	}
	k := &causes[place]
	by := devices(b.c.Metering)
	for s := range signature.Sizes {
		distance := 0.0
		o := *b.seen
		o.value = [signature.Features]float64{}
		for d, share := range by {
			for f, m := range signature.Mean(k.signature, s, signature.Device(d), o.weather) {
				o.value[f] += share * m
			}
		}
		add := func(r *signature.Row, _ signature.Device, share float64) {
			distance += share * o.distance(r.Mean(o.weather), &r.Covariance)
		}
		eachRow(0, 0, by, o.weather, add)
		if distance >= apart {
			return math.Round(20*(k.low+(k.high-k.low)*(float64(s)+0.5)/signature.Sizes)) / 20
		}
	}
	return 0
}
