package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// Imbalance is how far a point is from equilibrium: the largest difference of a
// component's ln f between the phases, or of the vapor's pressure from P
// relative to it, or of the liquid's in density.
func (s *System) Imbalance(pt Point) float64 {
	l, v := s.m.Evaluator(), s.m.Evaluator()
	defer l.Release()
	defer v.Release()
	l.SetTX(pt.T, &pt.X)
	v.SetTX(pt.T, &pt.Y)
	var a, b helmholtz.Potentials
	l.FugacitiesAt(pt.RhoLiquid, &a)
	v.FugacitiesAt(pt.RhoVapor, &b)
	_, slope := l.PressureAt(pt.RhoLiquid)
	worst := math.Max(math.Abs(b.P/pt.P-1), math.Abs((a.P-pt.P)/(slope*pt.RhoLiquid)))
	for i := range s.m.Components() {
		worst = math.Max(worst, math.Abs(a.LnF[i]-b.LnF[i]))
	}
	return worst
}
