package modes_test

import (
	"testing"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/refrigerant"
)

// A leak of what burns is told where one is looked for, and where charge is likelier missing than
// not, behind what is as grave.
func TestTellLeak(t *testing.T) {
	search := []modes.Step{modes.Do(modes.FindLeak)}
	for name, c := range map[string]struct {
		fluid string
		steps []modes.Step
		low   float64
		told  bool
	}{
		"searched":         {fluid: "R-32", steps: search, told: true},
		"missing":          {fluid: "R-290", low: 0.72, told: true},
		"hardly missing":   {fluid: "R-290", low: 0.3},
		"does not burn":    {fluid: "R-410A", steps: search, low: 0.9},
		"nothing searched": {fluid: "R-290"},
	} {
		fluid, err := refrigerant.Lookup(c.fluid)
		if err != nil {
			t.Fatal(err)
		}
		j := modes.Judgement{
			Dangers: []modes.Danger{{Code: "grave", Grave: true}, {Code: "less"}},
			Steps:   c.steps, Charge: modes.Charge{Low: c.low},
		}
		(&modes.Case{Fluid: fluid}).TellLeak(&j)
		if told := len(j.Dangers) == 3; told != c.told {
			t.Errorf("%s: %v", name, j.Dangers)
		} else if told && j.Dangers[1].Code != "leak-burns" {
			t.Errorf("%s: it stands elsewhere: %v", name, j.Dangers)
		}
	}
}
