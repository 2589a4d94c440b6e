package diagnose

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
)

// Limits of ordinary weather for cooling. Below a return wet bulb of 57 °F the
// usual target superheat is near its end, and below 55 °F outdoors the table has
// none (California Energy Commission RA3.2, table RA3.2-2); a room below 68 °F is
// colder than most are kept (common practice).
const (
	lowWetBulb = 287.04
	lowDryBulb = 293.15
	lowOutdoor = 285.93
)

// unusual is the share of visits in unusual weather on which the weather is
// all that is the matter, of those on which nothing is.
const unusual = 0.9

// addCircumstances makes suspects of what is not ordinary in the weather or
// the use. They shift nothing: the mean of a sound machine already follows the
// weather. What they take from is the prior of 'nothing wrong'.
func (c *caseFile) addCircumstances() {
	w, std := c.seen.raw.air()
	below := func(limit, value, std float64) float64 {
		return normal.Below((limit - value) / math.Max(std, 0.1))
	}
	load, ambient := 0.0, 0.0
	if c.seen.raw.have[rReturnWetBulb] {
		load = below(lowWetBulb, w.ReturnWetBulb, std[1])
	}
	if c.seen.raw.have[rReturnDryBulb] {
		load = max(load, below(lowDryBulb, w.ReturnDryBulb, std[2]))
	}
	if c.seen.raw.have[rOutdoor] {
		ambient = below(lowOutdoor, w.Outdoor, std[0])
	}
	both := load + ambient
	scale := unusual * priorSound
	if both > 1 {
		scale /= both
	}
	suspect := func(code Code, prior float64) {
		c.try().weight = 1
		c.add(code, prior)
	}
	suspect(LowLoad, scale*load)
	suspect(LowAmbient, scale*ambient)
	c.ordinary = 1 - unusual*min(1, both)
	if c.evidence.Seen.EconomizerOpen {
		suspect(Economizer, 0.1)
	}
	if c.evidence.Seen.WaterComplaint {
		suspect(Drain, 0.06)
	}
}
