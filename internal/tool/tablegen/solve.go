package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/refrigerant"
)

// A fluid is one refrigerant's equation as the generator needs it: saturation at
// a temperature or a pressure, with the properties that are tabulated.
type fluid struct {
	model  *helmholtz.Model
	system *vle.System
	// What the datum adds to enthalpy and entropy, by mass.
	enthalpyOffset, entropyOffset float64
}

func newFluid(r *refrigerant.Refrigerant) (*fluid, error) {
	var names []string
	for _, c := range r.Composition() {
		names = append(names, c.Designation)
	}
	m, err := fluiddata.NewModel(names, r.MoleFractions())
	if err != nil {
		return nil, err
	}
	onDatum, datum, err := vle.IIR(m)
	if err != nil {
		return nil, err
	}
	const dilute = 1 // mol/m³: any state will do
	before, after := m.At(datum.T, dilute), onDatum.At(datum.T, dilute)
	return &fluid{
		model:          onDatum,
		system:         vle.New(onDatum),
		enthalpyOffset: (after.H - before.H) / m.MolarMass(),
		entropyOffset:  (after.S - before.S) / m.MolarMass(),
	}, nil
}

// A saturated is one edge of the two-phase region, by mass in SI units.
type saturated struct{ temperature, pressure, density, enthalpy, entropy float64 }

func (f *fluid) atTemperature(e table.Edge, t float64) (saturated, error) {
	solve := f.system.BubbleT
	if e == table.Dew {
		solve = f.system.DewT
	}
	p, err := solve(t)
	return f.properties(e, p), err
}

func (f *fluid) properties(e table.Edge, p vle.Point) saturated {
	rho := p.RhoLiquid
	if e == table.Dew {
		rho = p.RhoVapor
	}
	s, m := f.model.At(p.T, rho), f.model.MolarMass()
	return saturated{p.T, p.P, rho * m, s.H / m, s.S / m}
}

// cells are the numbers of cells against temperature that are tried, the fewest
// first, until the error of the worst curve stays well below what the tables
// promise. A blend gets the fewest: what it may lack is not cells but a curve
// that a cubic can follow near its critical point.
var cells = [...]int{64, 80, 96, 128}

// nearest lists how close to the critical temperature tables may go, as shares of
// it. Some blends' equations wind close to their critical point as no cubic can
// follow; their tables end lower.
var nearest = [...]float64{0.003, 0.005, 0.008, 0.012, 0.02, 0.03}

// allowed is the largest relative error of a curve between its nodes. The vapor
// pressure of a pure fluid is known better than anything else here; that of one
// that boils hot rises so steeply at its cold end that it takes more cells.
func allowed(c table.Curve, pure bool) float64 {
	if pure && c == table.BubblePressure {
		return 1e-6
	}
	return 1e-5
}

func solve(r *refrigerant.Refrigerant) (table.Source, error) {
	f, err := newFluid(r)
	if err != nil {
		return table.Source{}, err
	}
	// The limits of the untabulated fluid: the tables of the roster are being made.
	untabulated, err := refrigerant.NewBlend(r.Designation(), r.Composition())
	if err != nil {
		return table.Source{}, err
	}
	c := untabulated.Critical()
	tried := cells[:]
	if !r.Pure() {
		tried = cells[:1]
	}
	for _, share := range nearest {
		for _, n := range tried {
			s := table.Source{
				Name:                r.Designation(),
				CriticalTemperature: float64(c.Temperature),
				CriticalPressure:    float64(c.Pressure),
				CriticalDensity:     float64(c.Density),
				EnthalpyOffset:      f.enthalpyOffset,
				EntropyOffset:       f.entropyOffset,
				Low:                 float64(untabulated.Limits().MinTemperature),
				High:                float64(c.Temperature) * (1 - share),
			}
			if err = f.fill(&s, n); err != nil {
				break
			}
			if err = f.check(&s, n); err == nil {
				return s, nil
			}
		}
	}
	return table.Source{}, err
}

// check compares the table of so many cells with the equation amid each.
func (f *fluid) check(s *table.Source, cells int) error {
	made, err := table.Decode(string(table.Encode([]table.Source{*s})), s.Name)
	if err != nil {
		return err
	}
	g := table.NewRoot(s.CriticalTemperature, s.Low, s.High, cells)
	for i := range cells {
		t := g.At(float64(i) + 0.5)
		want, err := f.curves(t)
		if err != nil {
			return err
		}
		for c := range table.Curves {
			got, _ := made.At(c, t)
			exact := c.Expand(want[c])
			if e := math.Abs(got-exact) / max(math.Abs(exact), floor(c)); e > allowed(
				c, f.system.Model().Components() == 1,
			) {
				return fmt.Errorf("curve %d is off by %.1e at %.3f K", c, e, t)
			}
		}
	}
	return nil
}

// floor is the size below which an error is not relative: enthalpy and entropy
// pass through zero, which is at an arbitrary datum.
func floor(c table.Curve) float64 {
	switch c {
	case table.BubbleEnthalpy, table.DewEnthalpy:
		return 200e3
	case table.BubbleEntropy, table.DewEntropy:
		return 1e3
	}
	return 0
}

// spread is the step of numerical derivatives in cell widths. The formulas are
// exact for quartics, so the truncation error is far below the solver's noise.
const spread = 0.05

// fill computes the nodes of so many cells.
func (f *fluid) fill(s *table.Source, cells int) error {
	g := table.NewRoot(s.CriticalTemperature, s.Low, s.High, cells)
	for i := range cells + 1 {
		difference := central
		if i == 0 {
			difference = forward // the equation may end here
		}
		var value, slope [table.Curves]float64
		for k, place := range difference.places {
			v, err := f.curves(g.At(float64(i) + spread*place))
			if err != nil {
				return fmt.Errorf("at node %d of %d, %.3f K: %w", i, cells, g.Node(i), err)
			}
			for c := range v {
				slope[c] += v[c] * difference.weights[k] / spread
				if place == 0 {
					value[c] = v[c]
				}
			}
		}
		for c := range table.Curves {
			s.Curves[c].Values = append(s.Curves[c].Values, value[c])
			s.Curves[c].Slopes = append(s.Curves[c].Slopes, slope[c])
		}
	}
	return nil
}

// curves returns every curve at t, compressed for interpolation.
func (f *fluid) curves(t float64) (v [table.Curves]float64, err error) {
	b, err := f.atTemperature(table.Bubble, t)
	if err != nil {
		return v, fmt.Errorf("bubble: %w", err)
	}
	d, err := f.atTemperature(table.Dew, t)
	if err != nil {
		return v, fmt.Errorf("dew: %w", err)
	}
	v = [table.Curves]float64{
		table.BubblePressure: b.pressure, table.DewPressure: d.pressure,
		table.BubbleDensity: b.density, table.DewDensity: d.density,
		table.BubbleEnthalpy: b.enthalpy, table.DewEnthalpy: d.enthalpy,
		table.BubbleEntropy: b.entropy, table.DewEntropy: d.entropy,
	}
	for c := range v {
		v[c] = table.Curve(c).Compress(v[c])
	}
	return v, nil
}

// A difference is a formula for a first derivative: the sum of weights times
// values at places, over the step.
type difference struct{ places, weights [5]float64 }

// The five-point formulas of Abramowitz and Stegun, table 25.2.
var (
	central = difference{
		[5]float64{-2, -1, 0, 1, 2}, [5]float64{1. / 12, -8. / 12, 0, 8. / 12, -1. / 12},
	}
	forward = difference{
		[5]float64{0, 1, 2, 3, 4}, [5]float64{-25. / 12, 48. / 12, -36. / 12, 16. / 12, -3. / 12},
	}
)
