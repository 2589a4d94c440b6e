package satline

import (
	"slices"
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/base/visible"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// House holds the rules of the firm that a technician works for. They stand between the
// label, which outranks them, and the general figures of the trade, which they outrank;
// records name them by Name. A target of the house holds for machines of any make: readings are
// shown against it, and what is believed of the charge leans towards it, less than towards a label.
type House struct {
	// Name of the rules, as in "Example Cooling, field manual 3". No text here is over 80 bytes.
	Name string `json:"name" strict:"required"`
	// Superheat, Subcooling and Approach are the targets of the house where the label has none.
	Superheat  *quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat,omitzero"`
	Subcooling *quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling,omitzero"`
	Approach   *quantity.Uncertain[quantity.TemperatureDelta] `json:"approach,omitzero"`
	// Tolerance is how far off its target a reading may be, where the label does not say.
	Tolerance quantity.TemperatureDelta `json:"tolerance,omitzero"`
	// Holds are rules that forbid to judge the charge of this machine now.
	Holds []HouseHold `json:"holds,omitempty"`
	// Faults are those that the firm has met beside the ones that are known.
	Faults []HouseFault `json:"faults,omitempty"`
}

// A HouseHold is a rule of the house that holds now and forbids to judge the charge.
type HouseHold struct {
	// Rule says in the words of the house what to do first: "Two persons above 10 ft."
	Rule string `json:"rule" strict:"required"`
	// Methods that it forbids; none means all.
	Methods []charge.Method `json:"methods,omitempty"`
}

// A HouseFault is a fault with the readings and the looks of one that is known, under a name
// and with a frequency of its own.
type HouseFault struct {
	// Name of the fault: "kinked flare behind the wall unit". It is its code in findings.
	Name string `json:"name" strict:"required"`
	// Like is the code of the known fault, as in FaultChance: "liquid-line-restriction".
	Like string `json:"like" strict:"required"`
	// Share is how often it is met beside the fault that it is like: 1 is as often. Above 0,
	// up to 100.
	Share float64 `json:"share" strict:"required"`
}

func (h *House) source() fact.Source {
	return fact.Source{Title: visible.Line(h.Name), Standing: fact.House}
}

// target is that of the house for a method; nil where it has none.
func (h *House) target(m charge.Method) *deltaReading {
	if h == nil {
		return nil
	}
	return ofMethod(m, h.Superheat, h.Subcooling, h.Approach)
}

func ofMethod(m charge.Method, superheat, subcooling, approach *deltaReading) *deltaReading {
	switch m {
	case charge.Superheat:
		return superheat
	case charge.Subcooling:
		return subcooling
	}
	return approach
}

// holds are the rules of the house that forbid a method now.
func (h *House) holds(m charge.Method) []charge.Obstacle {
	var out []charge.Obstacle
	if h == nil {
		return nil
	}
	for _, x := range h.Holds {
		if len(x.Methods) > 0 && !slices.Contains(x.Methods, m) {
			continue
		}
		out = append(out, charge.Obstacle{
			Code: "house", Method: m, Forbids: true, MendFirst: true, Spoils: true,
			Says: fact.New(
				// the sentences that it stands in have full stops of their own
				"condition.house", fact.Of("rule", strings.TrimRight(visible.Line(x.Rule), ".")),
				fact.Of("house", h.source().Title),
			),
			Source: h.source(),
		})
	}
	return out
}

func (h *House) faults() []diagnose.HouseFault {
	var out []diagnose.HouseFault
	if h == nil {
		return nil
	}
	for _, f := range h.Faults {
		out = append(out, diagnose.HouseFault{
			Code: diagnose.Code(visible.Line(f.Name)), Like: diagnose.Code(f.Like), Share: f.Share,
			Source: h.source(),
		})
	}
	return out
}
