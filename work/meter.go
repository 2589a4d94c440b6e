package work

import (
	"slices"

	"github.com/satline/satline"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity/fact"
)

// meter lists what the meter showed before and after the work. What was wrong before and was
// read again was found, and is no fault of the work.
func (j *judge) meter() error {
	for _, v := range []struct {
		name string
		of   *satline.Assessment
		last bool
	}{
		{"before", j.r.Before, j.r.After == nil || j.r.After.Electrical == nil},
		{"after", j.r.After, true},
	} {
		if v.of == nil || v.of.Electrical == nil {
			continue
		}
		report := v.of.Electrical
		if j.cause == nil && !report.Finding.IsZero() {
			j.cause = &report.Finding
		}
		if v.last {
			j.has["next.electrical"] = Good
		}
		for _, c := range report.Checks {
			s := map[fact.Outcome]Standing{
				fact.Sound: Good, fact.Wrong: Bad,
				fact.Watch: Open, fact.CannotTell: Open,
			}[c.Outcome]
			danger := slices.ContainsFunc(report.Dangers, func(d electrical.Danger) bool {
				return d.Code == string(c.Says.Code)
			})
			switch {
			case s == Good && !v.last:
				continue
			case s == Bad && !v.last:
				s = Found
			case s == Bad:
				j.has["next.electrical"] = Bad
				if danger {
					s = Dangerous
				}
			}
			j.result(v.name+".electrical", "", s, c.Says, c.Source)
		}
	}
	return nil
}

// broken reports whether the machine cannot run as it should by what the meter showed last.
func (j *judge) broken() bool { return j.has["next.electrical"] == Bad }
