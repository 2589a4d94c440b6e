package refrigerant

import (
	"errors"
	"slices"
	"sync/atomic"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// A Refrigerant is one fluid: a pure one, a designated blend, or a blend of
// your own from NewBlend. Get one from Lookup, All or NewBlend: nil and the zero
// value are no refrigerant, of which nothing is known and every property is
// ErrNoRefrigerant. All methods are safe for concurrent use.
type Refrigerant struct {
	designation string
	group       SafetyGroup
	parts       []Component

	// All are made on first use, so that a program pays only for the
	// refrigerants it asks about.
	saturation atomic.Pointer[table.Saturation]
	dome       atomic.Pointer[table.Dome]
	solver     atomic.Pointer[equation]
	states     atomic.Pointer[StateTable]
	doubt      atomic.Pointer[saturationDoubt]
}

// ErrNoRefrigerant is returned for a nil *Refrigerant and for the zero one.
var ErrNoRefrigerant = errors.New(
	"no refrigerant; get one from refrigerant.Lookup by the designation on the label",
)

// components returns the parts of r, and none where r is no refrigerant.
func (r *Refrigerant) components() []Component {
	if r == nil {
		return nil
	}
	return r.parts
}

// A Component is one pure fluid of a blend and its share of the mass.
type Component struct {
	Designation  string  `json:"designation"`
	MassFraction float64 `json:"massFraction"` // 0 to 1
}

// RangeError is quantity.RangeError: the value asked for, the valid range, and
// what to do instead.
type RangeError = quantity.RangeError

// All returns every refrigerant of the roster in the order of Standard 34's
// numbers: 42 pure fluids and 139 blends.
func All() []*Refrigerant {
	all := make([]*Refrigerant, len(roster))
	for i := range roster {
		all[i] = &roster[i]
	}
	return all
}

// Designation returns the name of r as Standard 34 writes it, "R-454B", or the
// name given to NewBlend.
func (r *Refrigerant) Designation() string {
	if r == nil {
		return ""
	}
	return r.designation
}

// String is Designation.
func (r *Refrigerant) String() string { return r.Designation() }

// MarshalText writes the designation, so that a Refrigerant in a structure shows as
// "R-454B" in JSON. To read one back, take the text to Lookup; a NewBlend is made
// again from its Composition.
func (r *Refrigerant) MarshalText() ([]byte, error) { return []byte(r.Designation()), nil }

// Composition returns the components of r and their mass fractions, which sum
// to 1. A pure fluid has one.
func (r *Refrigerant) Composition() []Component { return slices.Clone(r.components()) }

// Pure reports whether r is a single substance.
func (r *Refrigerant) Pure() bool { return len(r.components()) == 1 }

// Name returns the chemical name of a pure refrigerant, "difluoromethane", and
// for a blend its components: "R-32/R-125 (50/50)", percent by mass.
func (r *Refrigerant) Name() string {
	if r.Pure() {
		return pureFactOf(r.parts[0].Designation).name
	}
	return formulation(r.components())
}

// Formula returns the chemical formula of a pure refrigerant, and "" for
// a blend.
func (r *Refrigerant) Formula() string {
	if r.Pure() {
		return pureFactOf(r.parts[0].Designation).formula
	}
	return ""
}

// MolarMass returns the mass of one mole of r in kilograms, and 0 where r is no
// refrigerant.
func (r *Refrigerant) MolarMass() float64 {
	moles := 0.0
	for _, c := range r.components() {
		moles += c.MassFraction / pureFactOf(c.Designation).molarMass
	}
	if moles == 0 {
		return 0
	}
	return 1 / moles
}

// MoleFractions returns the share of each component of Composition in the
// molecules.
func (r *Refrigerant) MoleFractions() []float64 {
	x := make([]float64, len(r.components()))
	m := r.MolarMass()
	for i, c := range r.components() {
		x[i] = c.MassFraction * m / pureFactOf(c.Designation).molarMass
	}
	return x
}

// pureFactOf returns the facts of a pure designation in its canonical spelling,
// which every Component of a Refrigerant has.
func pureFactOf(designation string) *pureFact {
	for i := range pureFacts {
		if pureFacts[i].designation == designation {
			return &pureFacts[i]
		}
	}
	return nil
}
