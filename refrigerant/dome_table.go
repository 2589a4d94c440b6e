package refrigerant

import (
	_ "embed" // dome.bin

	"github.com/satline/satline/internal/physics/table"
)

// storedDomes holds the two-phase regions of the blends of the roster, made by
// internal/tool/tablegen from the equations of state.
//
//go:embed dome.bin
var storedDomes string

// noDome is the two-phase region of what is not in the roster, and of a pure
// fluid, which needs none.
var noDome table.Dome

// insideDome returns the table of the two-phase region of r, making it ready on
// first use.
func (r *Refrigerant) insideDome() *table.Dome {
	if d := r.dome.Load(); d != nil {
		return d
	}
	d := &noDome
	if r.table() != &noTable {
		// A test decodes every table, so that here none is damaged.
		if t, err := table.DecodeDome(storedDomes, r.designation); err == nil && t != nil {
			d = t
		}
	}
	r.dome.CompareAndSwap(nil, d)
	return r.dome.Load()
}
