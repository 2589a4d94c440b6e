package cyclefluid

import (
	"sync"

	"github.com/satline/satline/refrigerant"
)

// roster holds the Fluids of the refrigerants of the roster, which live as long as
// the program. Like the tables of package refrigerant they are made on first use.
var roster sync.Map // of *refrigerant.Refrigerant to *Fluid

// Of returns the Fluid of r, sampled once for a refrigerant of the roster and anew for
// a blend made at run time.
func Of(r *refrigerant.Refrigerant) (*Fluid, error) {
	if f, ok := roster.Load(r); ok {
		return f.(*Fluid), nil
	}
	f, err := New(r)
	if err != nil {
		return nil, err
	}
	if known, err := refrigerant.Lookup(r.Designation()); err == nil && known == r {
		kept, _ := roster.LoadOrStore(r, f)
		return kept.(*Fluid), nil
	}
	return f, nil
}
