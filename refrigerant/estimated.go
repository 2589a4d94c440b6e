package refrigerant

import (
	"fmt"
	"strings"

	"github.com/satline/satline/internal/physics/fluiddata"
)

// Estimated reports whether the properties of r rest on an estimate, and why, in English as the
// Sources are: for some pairs of components no fit to measurements is published. Where designated
// blends have such a pair, one parameter was found that brings their bubble and dew points at one
// atmosphere to what the ASHRAE Handbook prints: most are then within 0.3 K of it, R-424A and
// R-408A within 1 K. Print of R-403A, R-403B and R-413A, 3 to 4 K warmer at the bubble point, does
// not agree with what the same table says of R-509A, and is not followed. Of any other pair nothing
// is known, and the linear rule stands in. Where the maker's chart says otherwise the chart is
// right. SaturationUncertainty says how much is left open.
//
// Ammonia and water mix poorly with most refrigerants, which the rule knows nothing of: where
// ammonia has a published fit the rule is up to 20 K from it.
//
// A published fit is no promise either: at one atmosphere R-417A, R-431A, R-432A, R-443A,
// R-451A and R-451B lie 1 to 3 K from what the Handbook prints, and the bubble point of
// R-445A 9 K below, for its figures come from older models.
func (r *Refrigerant) Estimated() (bool, string) {
	var pairs []string
	off := ""
	r.unfitted(func(first, second string) {
		pairs = append(pairs, first+" with "+second)
		if mixesPoorly(first) || mixesPoorly(second) {
			off = "saturation temperatures may be off by 20 K and more"
		}
	})
	if len(pairs) == 0 {
		return false, ""
	}
	if off == "" {
		bubble, dew := r.SaturationUncertainty()
		off = fmt.Sprintf("the standard uncertainty of saturation is %.1f K at the bubble point "+
			"and %.1f K at the dew point", bubble.Kelvin(), dew.Kelvin())
	}
	return true, "no published fit for " + strings.Join(pairs, ", ") +
		"; an estimate stands in, and " + off
}

// mixesPoorly reports whether a liquid parts from most refrigerants.
func mixesPoorly(designation string) bool {
	return designation == "R-717" || designation == "R-718"
}

// Sources returns what the properties of r come from: the paper of the equation of each
// component, then the fit of each pair. A pair of which nothing is known has none.
func (r *Refrigerant) Sources() []string {
	var list []string
	for i, a := range r.components() {
		if f, ok := fluiddata.Pure(a.Designation); ok {
			list = append(list, a.Designation+": "+f.Source)
		}
		for _, b := range r.parts[:i] {
			p := fluiddata.PairOf(b.Designation, a.Designation)
			if p == nil {
				p = fluiddata.EstimateOf(b.Designation, a.Designation).Pair
			}
			if p != nil {
				list = append(list, b.Designation+" with "+a.Designation+": "+p.Source)
			}
		}
	}
	return list
}
