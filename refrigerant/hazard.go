package refrigerant

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A HazardCode names a danger of handling a refrigerant. The names are stable.
type HazardCode string

// The dangers, in the order in which Hazards tells them.
const (
	// UnknownFluid: nobody knows what it is.
	UnknownFluid HazardCode = "unknown-refrigerant"
	// BurnsSlowly: group 2L. BurnsReadily: groups 2 and 3, and what has no group
	// and may burn.
	BurnsSlowly  HazardCode = "burns-slowly"
	BurnsReadily HazardCode = "burns-readily"
	// Toxic: class B of Standard 34.
	Toxic HazardCode = "toxic"
	// PoisonsBreath: carbon dioxide. Standard 34 classes it A1, and air with a few
	// percent of it still overcomes a person before the lack of oxygen would.
	PoisonsBreath HazardCode = "poisons-breath"
	// HighAtRest: Pressure is that at 70 °F. Above its critical temperature, which a
	// summer day reaches, there is no liquid and only the filling bounds the pressure.
	HighAtRest HazardCode = "high-pressure-at-rest"
	// TrappedLiquid: liquid shut in between two valves bursts the pipe as it warms.
	TrappedLiquid HazardCode = "trapped-liquid"
	// DryIce: below Pressure, that of the triple point, liquid turns to solid and
	// plugs hoses and relief lines, to let go without warning.
	DryIce HazardCode = "dry-ice"
	// PressureAndCold: it is under pressure, and its liquid freezes skin.
	PressureAndCold HazardCode = "pressure-and-cold"
	// CollectsLow: the vapor is heavier than air. RisesHigh: it is lighter.
	CollectsLow HazardCode = "vapor-collects-low"
	RisesHigh   HazardCode = "vapor-rises"
	// NoVenting: to vent it is forbidden. VentingInNamedUses: forbidden but for uses that
	// the rule names.
	NoVenting          HazardCode = "no-venting"
	VentingInNamedUses HazardCode = "venting-in-named-uses"
)

// A Hazard is one danger of handling a refrigerant.
type Hazard struct {
	Code HazardCode `json:"code"`
	// Designation of the refrigerant, and its Group where that is the danger.
	Designation string      `json:"designation,omitzero"`
	Group       SafetyGroup `json:"group,omitzero"`
	// Pressure that the danger speaks of, absolute; zero where it speaks of none.
	Pressure quantity.Pressure `json:"pressure,omitzero"`
	// Source of the rule; empty for what physics and the safety group say.
	Source string `json:"source,omitzero"`
}

// Fact is the caution as a fact: "caution.toxic", with what it speaks of.
func (h Hazard) Fact() fact.Fact {
	values := append(make([]fact.Value, 0, 3), fact.Of("fluid", h.Designation))
	if h.Group != "" {
		values = append(values, fact.Of("group", string(h.Group)))
	}
	if h.Pressure != 0 {
		values = append(values, fact.Amount("pressure", h.Pressure))
	}
	return fact.New(fact.Code("caution."+string(h.Code)), values...)
}

const (
	ventingRule = "40 CFR 82.154(a)"
	// restTemperature is that at which a cylinder is said to be at rest.
	restTemperature quantity.Temperature = (70 + 459.67) / 1.8
	// tripleCO2 is the triple point of carbon dioxide, 517.95 kPa: Span and Wagner,
	// J. Phys. Chem. Ref. Data 25 (1996) 1509, from memory.
	tripleCO2 quantity.Pressure = 517950
	// airMolarMass of dry air in kg/mol.
	airMolarMass = 0.0289655
	// mostlyCO2 is the share of the mass from which the dangers of carbon dioxide are
	// told of a blend; this package's own.
	mostlyCO2 = 0.5
)

// Hazards returns the dangers of handling r, most urgent first. They are reminders
// and not a procedure: the unit's label, local codes and licensed practice come before
// them. Law is that of the United States.
func (r *Refrigerant) Hazards() []Hazard {
	var list []Hazard
	add := func(h Hazard) {
		h.Designation = r.Designation()
		list = append(list, h)
	}
	known, group := len(r.components()) > 0, r.SafetyGroup()
	switch {
	case !known:
		add(Hazard{Code: UnknownFluid})
	case group == A2L || group == B2L:
		add(Hazard{Code: BurnsSlowly, Group: group, Source: hotWorkSource})
	case r.Flammable():
		add(Hazard{Code: BurnsReadily, Group: group, Source: hotWorkSource})
	}
	if group.HigherToxicity() {
		add(Hazard{Code: Toxic, Group: group})
	}
	carbonic := r.massOf("R-744") >= mostlyCO2
	if carbonic {
		add(Hazard{Code: PoisonsBreath})
	}
	if r.supercriticalInSummer() {
		p, _ := r.BubblePressure(restTemperature) // zero where it is a gas even then
		add(Hazard{Code: HighAtRest, Pressure: p})
		add(Hazard{Code: TrappedLiquid})
	}
	if carbonic {
		add(Hazard{Code: DryIce, Pressure: tripleCO2})
	}
	if !known || r.boilsOnSkin() {
		add(Hazard{Code: PressureAndCold})
	}
	if known && r.MolarMass() < airMolarMass {
		add(Hazard{Code: RisesHigh})
	} else {
		add(Hazard{Code: CollectsLow})
	}
	if code, told := r.venting(); told {
		add(Hazard{Code: code, Source: ventingRule})
	}
	return list
}

// supercriticalInSummer reports whether r is past its critical temperature where
// a cylinder is 130 °F warm.
func (r *Refrigerant) supercriticalInSummer() bool {
	return len(r.components()) > 0 && r.Critical().Temperature <= fillTemperature
}

// boilsOnSkin reports whether the liquid of r boils below the temperature of a body.
func (r *Refrigerant) boilsOnSkin() bool {
	const body = quantity.Temperature(273.15 + 37)
	p, err := r.BubblePressure(min(body, r.Critical().Temperature))
	return err != nil || p > quantity.StandardAtmosphere
}

// massOf returns the mass fraction of a pure refrigerant in r.
func (r *Refrigerant) massOf(designation string) float64 {
	share := 0.0
	for _, c := range r.components() {
		if c.Designation == designation {
			share += c.MassFraction
		}
	}
	return share
}

// venting says what 40 CFR 82.154(a) holds of letting r go. Carbon dioxide and water are
// exempt in every use; ammonia, ethane, propane, isobutane and R-441A in uses that the
// rule names, none of which is a split air conditioner; nothing else is.
func (r *Refrigerant) venting() (HazardCode, bool) {
	exemptInSome := map[string]bool{
		"R-717":  true,
		"R-170":  true,
		"R-290":  true,
		"R-600a": true,
		"R-441A": true,
	}
	exempt := len(r.components()) > 0
	for _, c := range r.components() {
		exempt = exempt && (c.Designation == "R-744" || c.Designation == "R-718")
	}
	switch {
	case exempt:
		return "", false
	case exemptInSome[r.Designation()]:
		return VentingInNamedUses, true
	}
	return NoVenting, true
}
