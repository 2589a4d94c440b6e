package satline

import (
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// cautionsOf are what to be careful of: first what holds of every visit and of the
// refrigerant, then what this plan needs.
func cautionsOf(fluid *refrigerant.Refrigerant, steps []Step, w *charge.Weighing) []fact.Fact {
	hazards := fluid.Hazards()
	out := append(make([]fact.Fact, 0, len(hazards)+4), fact.New("caution.label-first"))
	for _, h := range hazards {
		out = append(out, h.Fact())
	}
	does := func(of func(Step) bool) bool { return slices.ContainsFunc(steps, of) }
	if does(func(s Step) bool { return s.Moves || s.Opens }) {
		out = append(out, fact.New("caution.cylinder"))
	}
	if does(func(s Step) bool { return s.Adds }) {
		out = append(out, fact.New("caution.throttle"))
		if !fluid.Pure() {
			out = append(out, fact.New("caution.blend-as-liquid"))
		}
	}
	switch {
	case w == nil || !w.AskDevice:
	case w.Line < 0:
		out = append(out, fact.New("caution.device-place-short"))
	default:
		out = append(out, fact.New("caution.device-place"))
	}
	if does(func(s Step) bool { return s.Do.Code == StepNitrogen }) {
		out = append(out, fact.New("caution.nitrogen"))
	}
	return append(out, fact.New("caution.electricity"))
}
