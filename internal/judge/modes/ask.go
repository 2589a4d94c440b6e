package modes

import "github.com/satline/satline/quantity/fact"

// Ask is the judge of a machine whose mode is in doubt: it asks for it, and no advice of any
// mode is given.
func Ask(c *Case) Judgement {
	j := Judgement{
		Headline: fact.New("headline.mode-in-doubt"), Dangers: Distinct(c.Dangers, nil),
		Charge: Charge{Outcome: NotJudged, Why: []fact.Fact{c.Says}},
	}
	for _, x := range j.Dangers {
		if x.Stops {
			j.Steps = append(j.Steps, Do(Stop).Because(x.Says))
			break
		}
	}
	j.Steps = append(j.Steps, Do(AskMode).Because(c.Says))
	return j
}

// Distinct leaves out the dangers that are only apparent, and those that say what another
// does.
func Distinct(all []Danger, apparent func(code string) bool) []Danger {
	var out []Danger
	flooded := false
	for _, x := range all {
		seems := apparent != nil && apparent(x.Code)
		flooded = flooded || x.Code == "floodback" && !seems
		if !seems && !(x.Code == "discharge-cool" && flooded) {
			out = append(out, x)
		}
	}
	return out
}
