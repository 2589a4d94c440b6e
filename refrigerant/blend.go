package refrigerant

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/quantity"
)

// ErrEmptyBlend is returned by NewBlend when no component has any mass.
var ErrEmptyBlend = errors.New("a blend needs at least one component with a mass fraction above 0")

// unweighable is the mass fraction below which a component is not there. Even one that
// changed a pressure by a million times its own share would change it by less than the
// solver is exact to.
const unweighable = 1e-15

// NewBlend returns a blend of any composition: one that has leaked, one topped
// off with something else, or one of your own. Each component names a pure
// fluid or a blend of the roster, spelled as for Lookup; blends are taken apart
// and equal components merged. Mass fractions must sum to 1 within 0.001 and
// are scaled to sum to 1 exactly. Of what is there in less than 1e-15 of the mass, less
// than the rounding of the other shares, nothing is kept.
//
// The safety group is Unclassified whatever the composition, because Standard 34
// classes formulations and not mixtures found in a cylinder.
//
// At most eight pure components are taken. The state that enthalpy and entropy
// count from, liquid at 0 °C or else at one atmosphere, and the critical point are
// found at once, so that a mixture without one of them is refused here: its liquid
// parts in two. That is water with ethane, propane, butane, pentane, R-744 or R-1132a
// in most proportions, 1 to 15 % of it with, and 15 to 70 % of
// ammonia with propane, propene, butane or pentane. Where no fit says how two
// components mix, none is refused on their account; see [Refrigerant.Estimated].
//
// The error is a *UnknownError, a *RangeError, ErrEmptyBlend or ErrUnsolved.
func NewBlend(name string, parts []Component) (*Refrigerant, error) {
	sum := 0.0
	var merged []Component
	for _, part := range parts {
		w := part.MassFraction
		if !(w >= 0 && w <= 1) {
			return nil, fractionError(
				"mass fraction of "+cut(part.Designation, 40)+" in "+cut(name, 40), w, 0, 1,
				"give a fraction of the mass from 0 to 1, not percent",
			)
		}
		r, err := Lookup(part.Designation)
		if err != nil {
			return nil, fmt.Errorf("component of %s: %w", cut(name, 40), err)
		}
		sum += w
		if w == 0 {
			continue
		}
		for _, c := range r.parts {
			merged = addMass(merged, c.Designation, w*c.MassFraction)
		}
	}
	if len(merged) == 0 {
		return nil, ErrEmptyBlend
	}
	if math.Abs(sum-1) > 1e-3 {
		return nil, fractionError("sum of the mass fractions of "+cut(name, 40), sum, 0.999, 1.001,
			"the fractions of all components together make 1")
	}
	merged = slices.DeleteFunc(
		merged, func(c Component) bool { return c.MassFraction < unweighable },
	)
	if len(merged) > helmholtz.MaxComponents {
		return nil, &RangeError{
			Quantity: "number of components of " + cut(name, 40),
			Value:    quantity.Number(len(merged)),
			Max:      quantity.Number(helmholtz.MaxComponents),
			Advice:   "leave out what is there in traces",
		}
	}
	return newMixture(name, merged)
}

// newMixture scales masses to sum to 1 and makes a refrigerant of them, finding
// its critical point.
func newMixture(name string, masses []Component) (*Refrigerant, error) {
	sum := 0.0
	for _, c := range masses {
		sum += c.MassFraction
	}
	for i := range masses {
		masses[i].MassFraction /= sum
	}
	r := &Refrigerant{designation: name, group: Unclassified, parts: masses}
	r.saturation.Store(&noTable)
	if _, err := r.equation(); errors.Is(err, ErrUnsolved) {
		return nil, fmt.Errorf(
			"%s: %w; where components hardly mix, the liquid parts in two and has no boiling "+
				"range of its own: leave out what is there in traces, water first",
			r.Name(), err,
		)
	} else if err != nil {
		return nil, err
	}
	return r, nil
}

func addMass(parts []Component, designation string, mass float64) []Component {
	for i := range parts {
		if parts[i].Designation == designation {
			parts[i].MassFraction += mass
			return parts
		}
	}
	return append(parts, Component{designation, mass})
}

func fractionError(what string, value, low, high float64, advice string) error {
	return &RangeError{
		Quantity: what,
		Value:    quantity.Number(value),
		Min:      quantity.Number(low),
		Max:      quantity.Number(high),
		Advice:   advice,
	}
}
