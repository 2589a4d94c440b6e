package modes

import "github.com/satline/satline/quantity/fact"

// Ask is the judge of a machine whose mode is in doubt: it asks for it, and no advice of any
// mode is given.
func Ask(c *Case) Judgement {
	j := Judgement{
		Headline: fact.New("headline.mode-in-doubt"), Dangers: Distinct(c.Dangers, nil),
		Charge: Charge{Outcome: NotJudged, Why: []fact.Fact{c.Says}},
	}
	if x := j.Dangers.Stop(); x != nil {
		j.Steps = append(j.Steps, Do(Stop).Because(x.Says))
	}
	j.Steps = append(j.Steps, Do(AskMode).Because(c.Says))
	return j
}
