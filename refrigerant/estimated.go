package refrigerant

import (
	"strings"

	"github.com/satline/satline/internal/fluiddata"
)

// Estimated reports whether the properties of r rest on an estimate, and why:
// for some pairs of components no fit to measurements is published, and the
// linear rule stands in for one. Bubble and dew points of such blends were found
// 1 to 4 K off those that Standard 34 prints at one atmosphere; where the maker's
// chart says otherwise the chart is right. Ammonia and water mix poorly with most
// refrigerants, which the rule knows nothing of: where ammonia has a published fit
// the rule is up to 20 K from it.
//
// A published fit is no promise either: at one atmosphere R-431A, R-432A and
// R-451A lie 1 to 3 K from what Standard 34 prints (from memory), and the bubble
// point of R-445A 9 K below, for its figures come from older models.
func (r *Refrigerant) Estimated() (bool, string) {
	var pairs []string
	off := "1 to 4 K"
	for i, a := range r.components() {
		for _, b := range r.parts[:i] {
			if fluiddata.PairOf(b.Designation, a.Designation) != nil {
				continue
			}
			pairs = append(pairs, b.Designation+" with "+a.Designation)
			if mixesPoorly(a.Designation) || mixesPoorly(b.Designation) {
				off = "20 K and more"
			}
		}
	}
	if len(pairs) == 0 {
		return false, ""
	}
	return true, "no published fit for " + strings.Join(pairs, ", ") + "; the linear combining rule is used, and saturation temperatures may be off by " + off
}

// mixesPoorly reports whether a liquid parts from most refrigerants.
func mixesPoorly(designation string) bool { return designation == "R-717" || designation == "R-718" }

// Sources returns the papers that the properties of r come from: the equation of
// each component, then the fit of each pair.
func (r *Refrigerant) Sources() []string {
	var list []string
	for i, a := range r.components() {
		if f, ok := fluiddata.Pure(a.Designation); ok {
			list = append(list, a.Designation+": "+f.Source)
		}
		for _, b := range r.parts[:i] {
			if p := fluiddata.PairOf(b.Designation, a.Designation); p != nil {
				list = append(list, b.Designation+" with "+a.Designation+": "+p.Source)
			}
		}
	}
	return list
}
