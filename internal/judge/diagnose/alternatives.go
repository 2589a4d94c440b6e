package diagnose

import (
	"slices"
	"sync"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/refrigerant"
)

// comfort lists the refrigerants of most machines that a technician meets, and
// common is the share of those machines; that of any other is rare. Common
// practice, no source.
var (
	comfort = []string{"R-410A", "R-22", "R-454B", "R-32", "R-407C", "R-134a"}
	common  = map[string]float64{
		"R-410A": 0.5,
		"R-22":   0.2,
		"R-454B": 0.08,
		"R-32":   0.06,
		"R-407C": 0.05,
		"R-134a": 0.05,
	}
)

const rare = 0.02

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

// shareOf is how many of the machines hold a refrigerant.
func shareOf(f Fluid) float64 {
	if share, ok := common[f.Designation()]; ok {
		return share
	}
	return rare
}

// Alternatives returns the refrigerants that one could be taken for. They are not to be
// changed.
func Alternatives(r *refrigerant.Refrigerant) []Fluid {
	if known, ok := alternatives()[r]; ok {
		return known
	}
	return alternativesTo(r.Designation())
}

// alternatives are those of all refrigerants, worked out once.
var alternatives = sync.OnceValue(func() map[*refrigerant.Refrigerant][]Fluid {
	out := map[*refrigerant.Refrigerant][]Fluid{}
	for _, r := range refrigerant.All() {
		out[r] = slices.Clip(alternativesTo(r.Designation()))
	}
	return out
})

func alternativesTo(designation string) []Fluid {
	var out []Fluid
	names := confused[designation]
	for _, name := range comfort {
		if name != designation && !slices.Contains(names, name) {
			names = append(slices.Clip(names), name)
		}
	}
	for _, name := range names {
		if other, err := refrigerant.Lookup(name); err == nil {
			out = append(out, other)
		}
	}
	return out
}

// superheatOf is the isentropic superheat of a refrigerant, that of R-410A where
// it is not known; false where the table does not reach to it.
func superheatOf(f Fluid) (superheat float64, reached bool) {
	superheat = signature.UsualFluid.Superheat
	if r, ok := f.(*refrigerant.Refrigerant); ok {
		q, known := superheats()[r]
		var err error
		if !known {
			q, err = signature.IsentropicSuperheat(r)
		}
		if err == nil {
			superheat = q
		}
	}
	within := min(max(superheat, signature.LeastLearnt), signature.MostLearnt)
	return within, within == superheat
}

// superheats are those of the refrigerants that others are taken for, worked out once.
var superheats = sync.OnceValue(func() map[*refrigerant.Refrigerant]float64 {
	out := map[*refrigerant.Refrigerant]float64{}
	add := func(name string) {
		if r, err := refrigerant.Lookup(name); err == nil {
			if q, err := signature.IsentropicSuperheat(r); err == nil {
				out[r] = q
			}
		}
	}
	for _, name := range comfort {
		add(name)
	}
	for name, others := range confused {
		add(name)
		for _, other := range others {
			add(other)
		}
	}
	return out
})
