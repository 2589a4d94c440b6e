package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

const (
	isobars = 56 // of a StateTable
	places  = 56 // along each, from the edge of the two-phase region to the end of the phase

	lastIsobar = 0.97 // of the critical pressure
	endOfTable = 0.9  // of the critical pressure: beyond it the error grows

	coldestDew  = 215.0 // K, of the first isobar
	coldDewPart = 0.64  // of the critical temperature, where that is colder

	// The hottest vapor is at hottestGas, but no more than far above the critical
	// temperature and no less than clearOfDome.
	hottestGas  = 480.0 // K
	far         = 130.0 // K
	clearOfDome = 40.0  // K
)

// StateTable returns the table of r, which is made from the equation of state on first use:
// that takes 3 to 20 ms, and up to 100 ms of a blend with much R-744. It is kept with r and
// takes 160 kB. The error is ErrNoRefrigerant, or that of the equation where it gives no answer
// within the range of the table.
func (r *Refrigerant) StateTable() (*StateTable, error) {
	if len(r.components()) == 0 {
		return nil, ErrNoRefrigerant
	}
	if t := r.states.Load(); t != nil {
		return t, nil
	}
	t, err := r.makeStateTable()
	if err != nil {
		return nil, err
	}
	r.states.CompareAndSwap(nil, t)
	return r.states.Load(), nil
}

func (r *Refrigerant) makeStateTable() (*StateTable, error) {
	q, err := r.equation()
	if err != nil {
		return nil, err
	}
	low, err := r.firstIsobar(q)
	if err != nil {
		return nil, err
	}
	t := &StateTable{
		of:       r,
		low:      low,
		high:     endOfTable * q.critical.Pressure,
		critical: float64(q.critical.Pressure),
	}
	t.logLow = t.place(float64(low))
	t.perStep = (isobars - 1) / (t.place(lastIsobar*t.critical) - t.logLow)

	critical := float64(q.critical.Temperature)
	limits := [table.Edges]float64{
		table.Bubble: float64(q.limits.MinTemperature),
		table.Dew: min(max(min(hottestGas, critical+far), critical+clearOfDome),
			float64(q.limits.MaxTemperature)),
	}
	for e, end := range limits {
		edge := make([]float64, isobars)
		sheet := make([][][table.Columns]float64, isobars)
		for i := range isobars {
			p := t.pressure(float64(i))
			var point vle.Point
			start, err := r.edge(table.Edge(e), p, &point)
			if err != nil {
				return nil, err
			}
			edge[i] = start.temperature
			if sheet[i], err = r.sampleIsobar(q, table.Edge(e), p, &start, end); err != nil {
				return nil, err
			}
		}
		t.sides[e] = side{
			phaseBeyond(table.Edge(e)), end, table.NewLine(edge), table.NewSheet(sheet),
		}
	}
	return t, r.endWhereEdgesBend(t)
}

// endWhereEdgesBend ends the table below the first pressure, halfway between two isobars, at
// which an edge is not followed. The dew line of a blend with much carbon dioxide turns back
// close to the critical point.
func (r *Refrigerant) endWhereEdgesBend(t *StateTable) error {
	const closely = 3e-4 // K; 1e-3 makes about 1e-5 of density
	for i := range isobars - 1 {
		p := t.pressure(float64(i) + 0.5)
		if p >= t.high {
			break
		}
		var b Isobar
		b.set(t, float64(p))
		for e := range table.Edges {
			var point vle.Point
			edge, err := r.edge(e, p, &point)
			if err != nil {
				return err
			}
			if math.Abs(edge.temperature-b.edges[e]) > closely {
				t.high = t.pressure(float64(i))
				return nil
			}
		}
	}
	return nil
}

func (t *StateTable) pressure(isobar float64) quantity.Pressure {
	ratio := math.Exp(t.logLow + isobar/t.perStep)
	return quantity.Pressure(t.critical * ratio / (1 + ratio))
}

func phaseBeyond(e table.Edge) Phase {
	if e == table.Dew {
		return Vapor
	}
	return Liquid
}

// firstIsobar is the dew pressure at the coldest temperature, or where the range of r begins;
// of a blend that has no liquid there, the bubble pressure where the range begins.
func (r *Refrigerant) firstIsobar(q *equation) (quantity.Pressure, error) {
	const clear = 0.1 // K above the end of the range
	least := q.limits.MinTemperature + clear
	dew, err := r.DewPressure(max(least, min(coldestDew, coldDewPart*q.critical.Temperature)))
	if err != nil {
		return 0, err
	}
	if bubble, err := r.BubbleTemperature(dew); err == nil && bubble >= least {
		return dew, nil
	}
	return r.BubblePressure(least)
}

// sampleIsobar solves the states of one phase along p, from the edge of the two-phase region
// to end. Their distance from the edge grows as the square of their number, for close to the
// critical point they change fastest there.
func (r *Refrigerant) sampleIsobar(
	q *equation, e table.Edge, p quantity.Pressure, start *saturated, end float64,
) ([][table.Columns]float64, error) {
	phase, per := vle.Liquid, quantity.Pressure(1)
	if e == table.Dew {
		phase, per = vle.Vapor, p
	}
	row := make([][table.Columns]float64, places)
	rho, before := start.density*q.perMass, start.temperature
	for k := range row {
		share := float64(k) / (places - 1)
		at := start.temperature + share*share*(end-start.temperature)
		if e == table.Dew {
			rho *= before / at
		}
		s, err := r.single(q, p, quantity.Temperature(at), rho, phase)
		if err != nil {
			return nil, err
		}
		rho, before = float64(s.Density)*q.perMass, at
		row[k] = [table.Columns]float64{
			densityColumn:  float64(s.Density) / float64(per),
			enthalpyColumn: float64(s.Enthalpy),
			entropyColumn:  float64(s.Entropy),
		}
	}
	return row, nil
}
