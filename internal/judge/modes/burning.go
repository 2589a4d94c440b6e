package modes

import (
	"slices"

	"github.com/satline/satline/quantity/fact"
)

// TellLeak adds to the dangers that of a leak of what burns, behind those that are as grave, where
// the plan looks for one or mends it, for it is known before the search begins, and where charge is
// likelier missing than not, whatever is looked at first: it may be in the room.
func (c *Case) TellLeak(j *Judgement) {
	const likely = 0.5
	leaks := slices.ContainsFunc(j.Steps, func(s Step) bool {
		return s.Do.Code == FindLeak || s.Do.Code == MendLeak || s.Look == "oil-and-leak"
	})
	if !leaks && j.Charge.Low < likely || !c.Fluid.Flammable() {
		return
	}
	at := slices.IndexFunc(j.Dangers, func(d Danger) bool { return !d.Grave })
	if at < 0 {
		at = len(j.Dangers)
	}
	j.Dangers = slices.Insert(slices.Clone(j.Dangers), at, Danger{
		Code: "leak-burns", Grave: true,
		Says:   fact.New("danger.leak-burns", fact.Of("fluid", c.Fluid.Designation())),
		Source: fact.Source{Standing: fact.CommonPractice},
	})
}
