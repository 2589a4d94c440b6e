package modes

import (
	"slices"

	"github.com/satline/satline/quantity/fact"
)

// WithLeak adds to the dangers that of a leak of what burns, behind those that are as grave, where
// a plan looks for one or mends it: it is known before the search begins.
func (c *Case) WithLeak(dangers []Danger, steps []Step) []Danger {
	leaks := slices.ContainsFunc(steps, func(s Step) bool {
		return s.Do.Code == FindLeak || s.Do.Code == MendLeak || s.Look == "oil-and-leak"
	})
	if !leaks || !c.Fluid.Flammable() {
		return dangers
	}
	at := slices.IndexFunc(dangers, func(d Danger) bool { return !d.Grave })
	if at < 0 {
		at = len(dangers)
	}
	return slices.Insert(slices.Clone(dangers), at, Danger{
		Code: "leak-burns", Grave: true,
		Says:   fact.New("danger.leak-burns", fact.Of("fluid", c.Fluid.Designation())),
		Source: fact.Source{Standing: fact.CommonPractice},
	})
}
