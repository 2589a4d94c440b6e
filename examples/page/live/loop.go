package live

import (
	"github.com/satline/satline"
	"github.com/satline/satline/quantity/fact"
)

// A Loop is what stands on one screen while charging.
type Loop struct {
	Outcome  satline.ChargeOutcome `json:"outcome"`
	Headline string                `json:"headline"`
	// Said says that the headline says itself that nothing is decided, or judged.
	Said    bool         `json:"said,omitempty"`
	Dangers []LoopDanger `json:"dangers,omitempty"`
	// Figures are the derived values that a technician watches.
	Figures []Shown `json:"figures,omitempty"`
	// Doubts are readings that are not believed, by path, with why.
	Doubts map[string]string `json:"doubts,omitempty"`
	// Steps of the plan that the page shows or links, the one to take now first; none in the
	// scope of a verdict.
	Steps []LoopStep `json:"steps,omitempty"`
	Count int        `json:"count,omitempty"`
}

// A LoopDanger is a danger in one line.
type LoopDanger struct {
	Text  string `json:"text"`
	Grave bool   `json:"grave,omitempty"`
}

// A LoopStep is a step with what the page opens for it.
type LoopStep struct {
	Text string `json:"text"`
	Why  string `json:"why,omitempty"`
	Look string `json:"look,omitempty"`
	// Fields are the paths of what it asks for, Task is where it is done.
	Fields []string `json:"fields,omitempty"`
	Task   string   `json:"task,omitempty"`
}

// figures are watched in the loop, in this order.
var figures = []string{"superheat", "subcooling", "evaporatingDew", "condensingBubble"}

// asks are the fields of a visit that a step asks for beside readings.
var asks = map[fact.Code][]string{
	satline.StepAskMode:   {"conditions.mode"},
	satline.StepAskDevice: {"equipment.metering"},
	satline.StepRunOn:     {"conditions.running"},
	satline.StepMeasureLine: {
		"equipment.lineSet.length", "equipment.lineSet.liquidDiameter",
		"equipment.label.factoryLineSet",
	},
	satline.StepReadLabel: {
		"equipment.label.charge", "equipment.label.subcooling", "equipment.label.superheat",
	},
	"mend.altitude-not-set": {"site.elevation"},
	"mend.restrictor-small": {"equipment.restrictor", "equipment.label.restrictor"},
	"mend.restrictor-large": {"equipment.restrictor", "equipment.label.restrictor"},
}

// tasksOf are where steps are done.
var tasksOf = map[fact.Code]string{
	satline.StepWeighIn:      "weighin",
	satline.StepWeighInLabel: "weighin",
	satline.StepMeasureLine:  "weighin",
	satline.StepNitrogen:     "nitrogen",
	satline.StepEvacuate:     "vacuum",
	satline.StepRecoverRest:  "recovery",
	satline.StepRecover:      "cylinder",
	satline.StepWhyFroze:     "frozen",
}

func loopOf(v satline.Visit, a *satline.Assessment) *Loop {
	out := &Loop{
		Outcome: a.Charge.Outcome, Headline: a.Headline.Text, Doubts: map[string]string{},
	}
	if out.Outcome == satline.ChargeOpen || out.Outcome == satline.ChargeNotJudged {
		switch a.Headline.Code {
		case "headline.open", "headline.not-judged", "headline.cold-early":
			out.Said = true
		}
	}
	for _, d := range a.Dangers {
		out.Dangers = append(out.Dangers, LoopDanger{d.Says.Text, d.Grave})
	}
	values := map[string]fact.Value{}
	for _, x := range a.Derived.Values() {
		values[x.Name] = x
	}
	b := book{v.Language}
	for _, name := range figures {
		if x, ok := values[name]; ok {
			out.Figures = append(out.Figures, Shown{b.word("figure." + name), plain(x, v)})
		}
	}
	for _, d := range a.Doubts {
		path := "readings." + d.Fields[0]
		if d.Belief == satline.Doubted || d.Belief == satline.Impossible {
			if out.Doubts[path] == "" {
				out.Doubts[path] = d.Says.Text + "?"
			}
		}
	}
	if v.Scope == satline.VerdictOnly {
		return out
	}
	out.Count = len(a.Plan)
	for _, s := range a.Plan {
		step := LoopStep{Text: s.Do.Text, Look: s.Look, Task: tasksOf[s.Do.Code],
			Fields: asks[s.Do.Code]}
		if s.Why != nil {
			step.Why = s.Why.Text
		}
		if s.Field != "" {
			step.Fields = append([]string{"readings." + s.Field}, step.Fields...)
		}
		out.Steps = append(out.Steps, step)
	}
	return out
}

// plain is a value without its uncertainty: the loop has no room for it, and the band shows
// that of the value which the charge is judged by.
func plain(x fact.Value, v satline.Visit) string {
	text := satline.Show(x, v.Language, v.Units)
	for i, r := range text {
		if r == '±' {
			return text[:i-1]
		}
	}
	return text
}
