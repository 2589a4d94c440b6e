package refrigerant

import (
	_ "embed" // saturation.bin

	"github.com/satline/satline/internal/physics/table"
)

//go:generate go run ../internal/tool/tablegen -o saturation.bin -dome dome.bin

// stored holds the saturation tables of the roster, made by internal/tool/tablegen
// from the equations of state.
//
//go:embed saturation.bin
var stored string

// noTable is the table of what is not in the roster: it answers nothing, and
// every question goes to the equation.
var noTable table.Saturation

// table returns the saturation table of r, making it ready on first use.
func (r *Refrigerant) table() *table.Saturation {
	if r != nil {
		if s := r.saturation.Load(); s != nil {
			return s
		}
	}
	return r.loadTable()
}

func (r *Refrigerant) loadTable() *table.Saturation {
	s := &noTable
	if len(r.components()) == 0 {
		return s
	}
	// A test decodes every table, so that here none is damaged.
	if t, err := table.Decode(stored, r.designation); err == nil && t != nil {
		s = t
	}
	r.saturation.CompareAndSwap(nil, s)
	return r.saturation.Load()
}
