package api

import (
	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A RefrigerantName is a refrigerant in a list.
type RefrigerantName struct {
	// Designation of ASHRAE 34.
	Designation string `json:"designation"`
	// SafetyGroup of ASHRAE 34.
	SafetyGroup refrigerant.SafetyGroup `json:"safetyGroup"`
	Flammable   bool                    `json:"flammable"`
}

// A RefrigerantSheet is what is known of a refrigerant.
type RefrigerantSheet struct {
	RefrigerantName
	Name string `json:"name,omitempty"`
	// Composition by mass.
	Composition []RefrigerantPart `json:"composition"`
	// GlideClass says how much care bubble and dew need.
	GlideClass refrigerant.GlideClass `json:"glideClass,omitempty"`
	// GWP over 100 years, by the Fifth Assessment Report.
	GWP float64 `json:"gwp"`
	// GWPSource is where it is from.
	GWPSource           string                `json:"gwpSource"`
	CriticalTemperature quantity.Temperature  `json:"criticalTemperature"`
	CriticalPressure    quantity.Pressure     `json:"criticalPressure"`
	NormalBoilingPoint  *quantity.Temperature `json:"normalBoilingPoint,omitempty"`
	// Estimated says why its properties are an estimate; absent where they are
	// not.
	Estimated string   `json:"estimated,omitempty"`
	Cautions  []string `json:"cautions"`
}

// A RefrigerantPart is one component of a blend.
type RefrigerantPart struct {
	Designation string `json:"designation"`
	// MassFraction from 0 to 1.
	MassFraction float64 `json:"massFraction"`
}

// Refrigerants lists every refrigerant, by designation.
func Refrigerants() []RefrigerantName {
	names := []RefrigerantName{}
	for _, r := range refrigerant.All() {
		names = append(names, nameOf(r))
	}
	return names
}

func nameOf(r *refrigerant.Refrigerant) RefrigerantName {
	return RefrigerantName{r.Designation(), r.SafetyGroup(), r.Flammable()}
}

// Sheet says what is known of a refrigerant.
func Sheet(r *refrigerant.Refrigerant) RefrigerantSheet {
	out := RefrigerantSheet{
		RefrigerantName: nameOf(r), Name: r.Name(),
		GWP: r.GWP().AR5.Value, GWPSource: r.GWP().AR5.Source,
		CriticalTemperature: r.Critical().Temperature, CriticalPressure: r.Critical().Pressure,
	}
	for _, h := range r.Hazards() {
		out.Cautions = append(out.Cautions, satline.Say(h.Fact(), satline.English, quantity.SI))
	}
	for _, c := range r.Composition() {
		out.Composition = append(out.Composition, RefrigerantPart(c))
	}
	if class, err := r.GlideClass(); err == nil {
		out.GlideClass = class
	}
	if t, err := r.NormalBoilingPoint(); err == nil {
		out.NormalBoilingPoint = &t
	}
	if estimated, why := r.Estimated(); estimated {
		out.Estimated = why
	}
	return out
}
