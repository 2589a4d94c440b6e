package satline

import (
	"testing"

	"github.com/satline/satline/quantity/fact"
)

const drainLook = "condensate-drain"

// A complaint of water asks for the drain first where nothing points to freezing.
func TestWater(t *testing.T) {
	for _, c := range []struct {
		name  string
		visit func() Visit
		first fact.Code
	}{
		{"nothing read", func() Visit { return load(t, "water-nothing-read") },
			"look." + drainLook},
		{"nothing read, drain clogged", func() Visit {
			v := load(t, "water-nothing-read")
			v.Checks = []Check{{Look: drainLook, Found: true}}
			return v
		}, StepClearDrain},
		{"nothing read, drain clear", func() Visit {
			v := load(t, "water-nothing-read")
			v.Checks = []Check{{Look: drainLook}}
			return v
		}, StepRunOn},
		{"read sound", func() Visit { return load(t, "water-leak") }, "look." + drainLook},
		{"read sound, drain clear", func() Visit {
			v := load(t, "water-leak")
			v.Checks = []Check{{Look: drainLook}}
			return v
		}, StepOtherWater},
		{"iced", func() Visit {
			v := load(t, "water-leak")
			v.Conditions.CoilIced = true
			return v
		}, StepThaw},
	} {
		if a := assess(t, c.visit()); a.Plan[0].Do.Code != c.first {
			t.Errorf("%s: %v, want %v", c.name, a.Plan[0].Do, c.first)
		}
	}
}
