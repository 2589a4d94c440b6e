package work

import (
	"fmt"

	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity/fact"
)

// electric judges what the meter showed. What was wrong before the last readings was found, and
// is no fault of the work.
func (j *judge) electric() error {
	const need = "next.electrical"
	for i, r := range j.o.Electrical {
		part := fmt.Sprintf("electrical[%d]", i)
		report, err := electrical.Judge(r)
		if err != nil {
			return &Problem{Field: part, Kind: outOfRange, Problem: err.Error(), Err: err}
		}
		if j.cause == nil && !report.Finding.IsZero() {
			j.cause = &report.Finding
		}
		last := i == len(j.o.Electrical)-1
		if last {
			j.electrical = &report
			j.has[need] = Good
		}
		dangers := map[string]bool{}
		for _, d := range report.Dangers {
			dangers[d.Code] = true
		}
		for _, c := range report.Checks {
			s := map[fact.Outcome]Standing{
				fact.Sound: Good, fact.Wrong: Bad,
				fact.Watch: Open, fact.CannotTell: Open,
			}[c.Outcome]
			switch wrong := c.Outcome == fact.Wrong; {
			case wrong && !last:
				s = Found
			case wrong && dangers[string(c.Says.Code)]:
				s = Dangerous
			}
			if s == Good && !last {
				continue
			}
			j.result(part, "", s, c.Says, c.Source)
			if last && c.Outcome == fact.Wrong {
				j.has[need] = Bad
			}
		}
	}
	return nil
}

// broken reports whether the machine cannot run as it should by what the meter showed.
func (j *judge) broken() bool {
	return j.electrical != nil && !j.electrical.Finding.IsZero()
}

// meterPlan is what the electrical readings ask for: to mend what is wrong, or the next reading
// of a machine that does not run.
func (j *judge) meterPlan() []fact.Fact {
	if j.electrical == nil {
		return nil
	}
	var out []fact.Fact
	for _, s := range j.electrical.Plan {
		if s.Do.Code != "electrical.do.go-on" {
			out = append(out, j.says(s.Do.Code, s.Do.Values...))
		}
	}
	return out
}
