package work

import (
	"fmt"
	"slices"

	"github.com/satline/satline"
	"github.com/satline/satline/airside/drain"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity/fact"
)

// meter lists what the meter showed before and after the work.
func (j *judge) meter() {
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
		j.checks(v.name+".electrical", "next.electrical", v.last, report.Finding, report.Checks,
			func(code fact.Code) bool {
				return slices.ContainsFunc(report.Dangers, func(d electrical.Danger) bool {
					return d.Code == string(code)
				})
			})
	}
}

// water judges the looks at pan and drain.
func (j *judge) water() {
	for i, r := range j.o.Water {
		part := fmt.Sprintf("water[%d]", i)
		report, err := drain.Judge(r)
		if err != nil {
			j.problems.because(outOfRange, part, err)
			continue
		}
		last := i == len(j.o.Water)-1
		if last {
			j.drain = &report
		}
		j.checks(part, "next.water", last, report.Finding, report.Checks,
			func(fact.Code) bool { return false })
	}
}

// checks lists what a judge found. What was wrong and was looked at again was found, and is no
// fault of the work.
func (j *judge) checks(
	part string, need fact.Code, last bool, finding fact.Fact, checks []fact.Check,
	danger func(fact.Code) bool,
) {
	if !finding.IsZero() {
		if j.cause == nil {
			j.cause = &finding
		}
		if last && j.wrong == nil {
			j.wrong = &finding
		}
	}
	if last {
		j.has[need] = Good
	}
	for _, c := range checks {
		s := map[fact.Outcome]Progress{
			0: Good, fact.Sound: Good, fact.Wrong: Bad, fact.Watch: Watch, fact.CannotTell: Open,
		}[c.Outcome]
		switch {
		case s == Good && !last:
			continue
		case s == Bad && !last:
			s = Found
		case s == Bad:
			j.has[need] = Bad
			if danger(c.Says.Code) {
				s = Dangerous
			}
		}
		j.result(part, "", s, c.Says, c.Source)
	}
}

// waterPlan is what the looks at pan and drain ask for: to put right what was found, or the next
// look where water is the complaint.
func (j *judge) waterPlan() []fact.Fact {
	if j.drain == nil ||
		j.drain.Finding.IsZero() && j.o.Complaint != satline.WaterLeak && j.cause == nil {
		return nil
	}
	var out []fact.Fact
	for _, f := range j.drain.Plan {
		if f.Code != "drain.do.watch" {
			out = append(out, j.says(f.Code, f.Values...))
		}
	}
	return out
}
