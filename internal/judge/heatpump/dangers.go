package heatpump

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Condensing temperatures in heating: a sound machine at a room of 70 °F condenses at 90 to
// 125 °F, and high-pressure switches open near 145 to 155 °F. A discharge line within
// coolDischarge of condensing carries liquid. Common practice, no source.
const (
	highestCondensing = quantity.Temperature((140 + 459.67) / 1.8)
	highCondensing    = quantity.Temperature((130 + 459.67) / 1.8)
	coolDischarge     = quantity.TemperatureDelta(30 / 1.8)
)

var practice = fact.Source{Standing: fact.CommonPractice}

// dangers are those of the compressor's limits that mean the same in heating, the head by
// limits of its own. A suction line without superheat is usual in cold weather behind a fixed
// device, and the accumulator is there for it: it is a danger where the discharge is cool too.
func (b *belief) dangers() modes.Dangers {
	c := b.c
	if b.of(otherFluid) >= likely || b.of(suctionPort) >= likely {
		return nil // what the gauges say is of another fluid, or of another pipe
	}
	var out modes.Dangers
	cool := c.DischargeLine != nil && c.CondensingBubble != nil &&
		c.DischargeLine.Value.Sub(c.CondensingBubble.Value) < coolDischarge
	wet := cool || b.of("overfeed") >= likely
	for _, d := range modes.Distinct(c.Dangers, nil) {
		if b.apparent(d.Code) {
			continue
		}
		switch d.Code {
		case "condensing-highest", "condensing-high":
			continue
		case "discharge-hot": // it is a colder day that brings it further
			d.Code = "heating-discharge-hot"
			d.Says.Code = "danger.heating-discharge-hot"
		case "floodback", "slugging", "superheat-low":
			if !wet {
				continue
			}
		}
		out = append(out, d)
	}
	if t := c.CondensingDew; t != nil && t.Value > highCondensing && !b.apparent("condensing-high") {
		d := modes.Danger{Code: "condensing-high", Source: practice}
		if t.Value > highestCondensing {
			d.Code, d.Grave, d.Stops = "condensing-highest", true, true
		}
		d.Says = fact.New(fact.Code("danger."+d.Code), fact.Amount("figure", t.Value))
		at := slices.IndexFunc(out, func(x modes.Danger) bool { return d.Grave || !x.Grave })
		if at < 0 {
			at = len(out)
		}
		out = slices.Insert(out, at, d)
	}
	return out
}

// apparent says that a wrong instrument is likely to be all there is to a danger.
func (b *belief) apparent(danger string) bool {
	sum := 0.0
	for _, c := range diagnose.SeemsTo(danger) {
		sum += b.of(string(c))
	}
	return sum >= likely
}
