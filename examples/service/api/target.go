package api

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// A TargetQuestion asks what a charging method should read.
type TargetQuestion struct {
	// Method is "superheat", "subcooling" or "approach".
	Method charge.Method `json:"method"`
	// Label is what the unit's own label or chart says; it outranks any general
	// figure. An approach has no general one.
	Label *quantity.Uncertain[quantity.TemperatureDelta] `json:"label,omitempty"`
	// ReturnWetBulb and OutdoorDryBulb are what a target superheat depends on.
	ReturnWetBulb  *quantity.Uncertain[quantity.Temperature] `json:"returnWetBulb,omitempty"`
	OutdoorDryBulb *quantity.Uncertain[quantity.Temperature] `json:"outdoorDryBulb,omitempty"`
}

// Target answers a TargetQuestion. The error is a *QuestionError or that of package
// charge.
func Target(q TargetQuestion) (charge.Target, error) {
	switch q.Method {
	case charge.Subcooling:
		return charge.SubcoolingTarget(q.Label)
	case charge.Approach:
		return charge.ApproachTarget(q.Label)
	case charge.Superheat:
		if q.Label != nil {
			return charge.SuperheatTarget(q.Label, quantity.Uncertain[quantity.Temperature]{},
				quantity.Uncertain[quantity.Temperature]{})
		}
		if q.ReturnWetBulb == nil || q.OutdoorDryBulb == nil {
			return charge.Target{}, &QuestionError{"returnWetBulb",
				"a target superheat needs returnWetBulb and outdoorDryBulb, or the figure of the " +
					"label"}
		}
		return charge.SuperheatTarget(nil, *q.ReturnWetBulb, *q.OutdoorDryBulb)
	}
	return charge.Target{}, &QuestionError{"method", `say "superheat", "subcooling" or "approach"`}
}
