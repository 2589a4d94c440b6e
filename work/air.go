package work

import (
	"cmp"
	"slices"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity/fact"
)

// survey is what was read of the air, with what the label and the site say.
func (o *Order) survey() airside.Survey {
	s, e := *o.Air, &o.Machine.Equipment
	s.MaxExternal = cmp.Or(s.MaxExternal, e.Label.MaxExternalStatic)
	s.RatedAirflow = cmp.Or(s.RatedAirflow, e.Label.RatedAirflow)
	s.Capacity = cmp.Or(s.Capacity, e.NominalCapacity)
	s.Elevation = cmp.Or(s.Elevation, o.Machine.Site.Elevation)
	return s
}

// air judges static pressure, airflow and heat.
func (j *judge) air() {
	if j.o.Air == nil {
		return
	}
	got, err := airside.JudgeSurvey(j.o.survey())
	if err != nil {
		j.problems.because(outOfRange, "air", err)
		return
	}
	j.checks(
		"air", "next.air", true, got.Finding, got.Checks, func(fact.Code) bool { return false },
	)
	if j.has["next.air"] == Bad {
		j.airs = got.Plan
		j.minds = append(j.minds, got.Cautions...)
	}
}

// inOrder puts what the air asks for after what the readings ask for, and one reading at the
// end.
func (j *judge) inOrder(rest []fact.Fact) []fact.Fact {
	var out []fact.Fact
	n := len(rest)
	again := n > 0 && rest[n-1].Code == satline.StepReadAgain
	if again {
		n--
	}
	out = append(out, rest[:n]...)
	filtered := slices.ContainsFunc(rest, func(f fact.Fact) bool {
		return f.Code == satline.StepCleanFilter || f.Code == "mend.filter"
	})
	for _, f := range j.airs {
		if f.Code == "air.do.read-again" && again || f.Code == "air.do.filter" && filtered {
			continue
		}
		out = append(out, j.says(f.Code, f.Values...))
	}
	return append(out, rest[n:]...)
}
