package satline

import (
	"slices"

	"github.com/satline/satline/internal/readcheck"
)

// doubt asks whether the readings can be true together.
func (j *job) doubt() {
	j.rawDoubts = readcheck.Check(j.checkInput(), j.visit.Units)
	for _, c := range j.rawDoubts {
		j.doubts = append(j.doubts, Doubt{Code: c.Code, Fields: c.Fields, Belief: beliefs[c.Weight], Text: c.Text, Mend: c.Mend})
	}
}

// checkInput is what the checks and the diagnosis look at.
func (j *job) checkInput() readcheck.Input {
	d, r := &j.derived, &j.readings
	return readcheck.Input{
		SuctionPressure: r.SuctionPressure, LiquidPressure: r.LiquidPressure,
		EvaporatingDew: d.EvaporatingDew, CondensingBubble: d.CondensingBubble, CondensingDew: j.condensingDew,
		SuctionLine: r.SuctionLine, LiquidLine: r.LiquidLine, DischargeLine: r.DischargeLine,
		OutdoorDryBulb: r.OutdoorDryBulb, CondenserLeaving: r.CondenserLeaving,
		ReturnDryBulb: r.ReturnDryBulb, ReturnWetBulb: r.ReturnWetBulb,
		SupplyDryBulb: r.SupplyDryBulb, SupplyWetBulb: r.SupplyWetBulb,
		Atmosphere: j.atmosphere.Pressure.Value,
		Heating:    j.visit.Conditions.Heating,
	}
}

var beliefs = map[readcheck.Weight]Belief{
	readcheck.Note:       Unusual,
	readcheck.Doubtful:   Doubted,
	readcheck.Impossible: Impossible,
}

// judged lists the readings in the order of readingFields; each takes the
// gravest of the doubts that touch it.
func (j *job) judged() []JudgedReading {
	rank := []Belief{Believed, Unusual, Doubted, Impossible}
	out := []JudgedReading{}
	for _, f := range readingFields {
		value := f.show(&j.readings, j.visit.Units)
		if value == "" {
			continue
		}
		r := JudgedReading{Field: f.name, Name: f.label, Value: value, Belief: Believed, Settled: j.settled[f.name]}
		for _, d := range j.doubts {
			if !slices.Contains(d.Fields, f.name) {
				continue
			}
			r.Why = append(r.Why, d.Code)
			if slices.Index(rank, d.Belief) > slices.Index(rank, r.Belief) {
				r.Belief = d.Belief
			}
		}
		out = append(out, r)
	}
	return out
}

// gravest is the worst belief among the doubts that touch any of the fields.
func gravest(doubts []Doubt, fields ...string) Belief {
	worst := Believed
	for _, d := range doubts {
		for _, f := range d.Fields {
			if !slices.Contains(fields, f) {
				continue
			}
			if d.Belief == Impossible || worst == Believed || worst == Unusual && d.Belief == Doubted {
				worst = d.Belief
			}
		}
	}
	return worst
}
