// Package cooling judges a machine that cools the air of rooms: what is believed of it, of its
// charge and of the instruments, what to do and what it may come to. Its Judge is the one of
// package modes.
//
// The belief is that of package diagnose. The charge, the findings, the headline and the plan
// follow from it and overrule each other nowhere.
package cooling

import (
	"github.com/satline/satline/internal/judge/modes"
)

// Judge says what is found of a machine that cools rooms.
func Judge(c *modes.Case) modes.Judgement {
	if c.Other != nil {
		return either(c)
	}
	j, _ := judge(c)
	return j
}

func judge(c *modes.Case) (modes.Judgement, *belief) {
	c = c.Measured()
	b := believe(c)
	j := modes.Judgement{
		Dangers: modes.Distinct(c.Dangers, b.apparent), Findings: b.findings(), Ask: b.ask(),
		Lies: b.lies(), Air: splitOf(c), Change: b.change(),
	}
	j.Charge = b.charge(j.Dangers)
	k := planner{c: c, b: b, j: &j}
	k.plan()
	j.Charge.Why = append(j.Charge.Why, k.hold...)
	j.Headline = k.headline()
	k.spare(j.Headline)
	j.Steps = k.Steps
	c.TellLeak(&j)
	if !c.NoPairs {
		j.Freeze = b.freeze()
	}
	return j, b
}
