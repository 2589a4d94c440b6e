// Package heatpump judges a heat pump that heats: what is wrong with it, what endangers it,
// what can be told of its charge, what to do, and what it gives now and in colder weather. Its
// Judge is the one of package modes.
//
// The belief is a mixture over causes, their sizes and the metering device outdoors, by the
// signatures that package signature has learnt; looks and sights weigh in by their chances.
// Of two causes at once those are weighed that a technician meets; of others the likelier is
// found first, and the other by the readings after it was mended.
package heatpump

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
)

// least is how many features a belief needs.
const least = 3

// Judge says what is found of a heat pump that heats.
func Judge(c *modes.Case) modes.Judgement {
	if at := slices.Index(c.Answers, diagnose.Answer{Code: "outdoor-ice", Yes: true}); at >= 0 {
		iced := *c // whoever looked has seen it
		iced.Seen.CoilIced, iced.Answers = true, slices.Delete(slices.Clone(c.Answers), at, at+1)
		c = &iced
	}
	c = c.Measured()
	b := believe(c)
	j := modes.Judgement{Dangers: b.dangers()}
	p := planner{c: c, b: b, j: &j, ranked: b.standings()}
	p.plan()
	if !p.blind {
		j.Findings = b.findings(p.ranked)
		j.Performance = b.performance()
	}
	j.Charge = p.charge()
	c.TellLeak(&j)
	j.Headline = p.headline()
	return j
}
