package satline

import (
	"slices"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity/fact"
)

// judged lists the readings in the order of readingFields; each takes the gravest of the
// doubts that touch it, and the chance that its instrument is wrong.
func judged(s *settled, c *modes.Case, lies map[string]float64) []JudgedReading {
	out := make([]JudgedReading, 0, len(c.Given))
	for i := range readingFields {
		f := &readingFields[i]
		value, ok := f.value(&s.readings)
		if !ok {
			continue
		}
		r := JudgedReading{
			Field: f.name, Value: value, Belief: Believed, Settled: s.fromLog.has(i),
			Lies: lies[f.name],
		}
		gravest := readcheck.Weight(-1)
		for _, d := range c.Doubts {
			if slices.Contains(d.Fields, f.name) {
				r.Why = append(r.Why, fact.Code("doubt."+d.Code))
				gravest = max(gravest, d.Weight)
			}
		}
		if r.Lies >= 0.5 {
			gravest = max(gravest, readcheck.Doubtful)
		}
		if gravest >= 0 {
			r.Belief = beliefs[gravest]
		}
		out = append(out, r)
	}
	return out
}

var beliefs = [...]Belief{
	readcheck.Note: Unusual, readcheck.Doubtful: Doubted, readcheck.Impossible: Impossible,
}

// doubtsOf words the checks that the readings fail.
func doubtsOf(doubts []readcheck.Doubt) []Doubt {
	var out []Doubt
	for _, d := range doubts {
		code := fact.Code("doubt." + d.Code)
		out = append(out, Doubt{
			Says: fact.New(code, d.Values...), Fields: d.Fields, Belief: beliefs[d.Weight],
			Mend: fact.New(code + ".mend"),
		})
	}
	return out
}
