package refrigerant

import "github.com/satline/satline/quantity/fact"

// A WorkCode names a step of opening a circuit that holds a flammable refrigerant. The
// names are stable.
type WorkCode string

// The steps, in their order.
const (
	// NoIgnition: keep flames, sparks and hot surfaces away, ventilate, and have
	// a dry-powder or CO2 extinguisher at hand.
	NoIgnition WorkCode = "no-ignition"
	// Detector: watch the air with a detector for flammable gas before and during the
	// work, set to at most a quarter of the lower flammability limit.
	Detector WorkCode = "detector"
	// RemoveAll: recover all of the refrigerant, or shut it off with valves in a part of
	// the circuit away from the work.
	RemoveAll WorkCode = "remove-all"
	// Evacuate: pull a vacuum, with the outlet of the pump away from any flame or spark.
	Evacuate WorkCode = "evacuate"
	// Sweep: fill with oxygen-free nitrogen and let it out; never compressed air or oxygen.
	Sweep WorkCode = "sweep"
	// NitrogenFlowing: keep nitrogen flowing through for as long as a flame is used.
	NitrogenFlowing WorkCode = "nitrogen-flowing"
	// Open: open the circuit and do the work.
	Open WorkCode = "open"
	// PressureTest: test with nitrogen, and every joint made on site for tightness.
	PressureTest WorkCode = "pressure-test"
	// EvacuateAndHold: evacuate, and watch the vacuum with the pump shut off.
	EvacuateAndHold WorkCode = "evacuate-and-hold"
	// ChargeAndLabel: weigh the charge in, search for leaks again, and label the unit.
	ChargeAndLabel WorkCode = "charge-and-label"
)

// A WorkStep is one step.
type WorkStep struct {
	Code WorkCode `json:"code"`
	// Optional says that the standard leaves the step to choice for group 2L. With
	// a flame it is better not left out.
	Optional bool   `json:"optional,omitzero"`
	Source   string `json:"source"`
}

const hotWorkSource = "IEC 60335-2-40:2018, Annex DD, as manufacturers' instructions reprint it"

// OpeningSteps returns the steps of opening a circuit that holds r, in their order, with
// or without a flame. They are those of the safety standard for appliances with flammable
// refrigerants: removal comes before evacuation, evacuation before nitrogen, and no flame
// meets a circuit that has not had all three. None for a refrigerant that does not burn.
// The unit's instructions, local codes and licensed practice come before them.
//
// Some makers allow no brazing at all on a circuit that has held r; their word stands.
func (r *Refrigerant) OpeningSteps(flame bool) []WorkStep {
	if !r.Flammable() {
		return nil
	}
	g := r.SafetyGroup()
	lower := g == A2L || g == B2L
	var list []WorkStep
	for _, s := range [...]struct {
		code WorkCode
		told bool
		free bool
	}{
		{NoIgnition, true, false}, {Detector, true, false}, {RemoveAll, true, false},
		{Evacuate, true, false}, {Sweep, true, lower}, {Evacuate, true, lower},
		{NitrogenFlowing, flame, false}, {Open, true, false}, {PressureTest, true, false},
		{EvacuateAndHold, true, false}, {ChargeAndLabel, true, false},
	} {
		if s.told {
			list = append(list, WorkStep{s.code, s.free, hotWorkSource})
		}
	}
	return list
}

// Fact is the step as a fact: "opening.detector".
func (s WorkStep) Fact() fact.Fact {
	f := fact.New(fact.Code("opening." + string(s.Code)))
	if s.Optional {
		f = f.With(fact.Of("choice", fact.Term("opening.choice")))
	}
	return f
}
