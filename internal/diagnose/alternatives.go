package diagnose

import "github.com/satline/satline/refrigerant"

// confused lists which refrigerants a technician may have selected, or
// somebody charged, in place of another: those of the same machines, and those
// that were sold to replace it. Common practice, no source.
var confused = map[string][]string{
	"R-22":     {"R-410A", "R-407C", "R-422D", "R-438A", "R-421A"},
	"R-410A":   {"R-22", "R-32", "R-454B"},
	"R-32":     {"R-410A", "R-454B"},
	"R-454B":   {"R-410A", "R-32"},
	"R-407C":   {"R-22", "R-410A"},
	"R-134a":   {"R-22", "R-1234yf", "R-12"},
	"R-1234yf": {"R-134a"},
	"R-12":     {"R-134a", "R-22"},
	"R-404A":   {"R-22", "R-448A", "R-507A"},
	"R-290":    {"R-22", "R-134a"},
}

// Alternatives returns the refrigerants that one could be taken for.
func Alternatives(r *refrigerant.Refrigerant) []Fluid {
	var out []Fluid
	for _, name := range confused[r.Designation()] {
		if other, err := refrigerant.Lookup(name); err == nil {
			out = append(out, other)
		}
	}
	return out
}
