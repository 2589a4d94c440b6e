package fluiddata

import (
	"fmt"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// All is every equation of state, in the order of Standard 34's numbers.
func All() []*helmholtz.Fluid { return append([]*helmholtz.Fluid(nil), fluids[:]...) }

// Pure is the equation of state of a designation spelled as in Standard 34.
func Pure(designation string) (*helmholtz.Fluid, bool) {
	for _, f := range fluids {
		if f.Designation == designation {
			return f, true
		}
	}
	return nil, false
}

// papers lists the pairs, a more recent or more specific paper first.
var papers = [...][]helmholtz.Pair{
	bell2025, bell2023, bell2022, mcLinden2025, bellMcLinden2020, akasaka2014,
	gernert2013, lemmonJacobsen2004, kunzWagner2012, bellLemmon2016,
}

// PairOf is the published interaction of two components, in either order. Where
// nobody has fitted the pair it is nil: a model then takes what EstimateOf has, and
// what it computes is an estimate.
func PairOf(a, b string) *helmholtz.Pair {
	for _, paper := range papers {
		for i := range paper {
			p := &paper[i]
			if p.First == a && p.Second == b || p.First == b && p.Second == a {
				return p
			}
		}
	}
	return nil
}

// NewModel makes the model of a pure fluid or of a blend with the published
// interactions of its pairs, and with estimates of those that no paper has.
func NewModel(designations []string, moleFractions []float64) (*helmholtz.Model, error) {
	return NewModelShifted(designations, moleFractions, "", "", 0)
}

// NewModelShifted is NewModel with γT of the pair of first and second greater by so much.
func NewModelShifted(
	designations []string, moleFractions []float64, first, second string, by float64,
) (*helmholtz.Model, error) {
	parts := make([]*helmholtz.Fluid, len(designations))
	for i, d := range designations {
		f, ok := Pure(d)
		if !ok {
			return nil, fmt.Errorf("fluiddata: no equation of state for %q", d)
		}
		parts[i] = f
	}
	return helmholtz.NewModel(parts, moleFractions, func(a, b *helmholtz.Fluid) *helmholtz.Pair {
		p := PairOf(a.Designation, b.Designation)
		if p == nil {
			p = EstimateOf(a.Designation, b.Designation).Pair
		}
		if a.Designation == first && b.Designation == second ||
			a.Designation == second && b.Designation == first {
			return shifted(p, a, b, by)
		}
		return p
	})
}
