package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// A Vessel is what stands in a closed volume: liquid and vapor in equilibrium, or
// vapor alone.
type Vessel struct {
	P float64 // Pa
	// LiquidShare is the liquid's part of the volume, 0 where there is none.
	LiquidShare float64
	// Liquid and Vapor are molar concentrations of each component in the phase,
	// mol/m³.
	Liquid, Vapor Composition
}

// dry is the share of the volume below which there is no liquid.
const dry = 1e-7

// FillVessel is the vessel whose contents have the overall composition and
// whose liquid fills the given share of the volume, above 0 and below 1.
func (s *System) FillVessel(t, liquidShare float64) (Vessel, error) {
	pt, err := s.BubbleT(t)
	if err != nil {
		return Vessel{}, err
	}
	v := Vessel{P: pt.P, LiquidShare: liquidShare}
	total := liquidShare*pt.RhoLiquid + (1-liquidShare)*pt.RhoVapor
	for i := range s.m.Components() {
		v.Liquid[i], v.Vapor[i] = pt.RhoLiquid*pt.X[i], pt.RhoVapor*pt.Y[i]
	}
	z := s.m.MoleFractions()
	if !s.solveVessel(&v, t, &z, total, true) {
		return Vessel{}, ErrNotConverged
	}
	return v, nil
}

// SettleVessel is the vessel that holds contents, in moles of each component per
// volume of the vessel, near a known vessel. Only the components of the model
// count, not its composition.
func (s *System) SettleVessel(t float64, contents Composition, near Vessel) (Vessel, error) {
	v := near
	total := 0.0
	var z Composition
	for i := range s.m.Components() {
		total += contents[i]
	}
	for i := range s.m.Components() {
		z[i] = contents[i] / total
	}
	if !(total > 0) || !valid(total) {
		return Vessel{}, ErrInput
	}
	if v.LiquidShare > 0 {
		if !s.solveVessel(&v, t, &z, total, false) {
			return Vessel{}, ErrNotConverged
		}
		if v.LiquidShare > 0 {
			return v, nil
		}
	}
	// The last drop is gone.
	e := s.m.Evaluator()
	defer e.Release()
	e.SetTX(t, &z)
	v = Vessel{Vapor: contents}
	v.P, _ = e.PressureAt(total)
	return v, nil
}

// solveVessel is Newton's method in the logarithms of both phases' concentrations
// and in one more unknown: the liquid's share of the volume where the contents are
// given, or the logarithm of the total contents where the share is. The equations
// are equal fugacities, equal pressure, and that both phases in their shares of the
// volume add up to the contents z·total.
//
// A share that keeps falling to nothing ends the search: it is left at 0.
func (s *System) solveVessel(
	v *Vessel, t float64, z *Composition, total float64, shareGiven bool,
) bool {
	n := s.m.Components()
	size := 2*n + 1
	liquid, vapor := s.m.Evaluator(), s.m.Evaluator()
	defer liquid.Release()
	defer vapor.Release()
	var a matrix
	var pl, pv helmholtz.Potentials
	for range 40 {
		rhoL, x := phase(&v.Liquid, n)
		rhoV, y := phase(&v.Vapor, n)
		liquid.SetTX(t, &x)
		vapor.SetTX(t, &y)
		liquid.PotentialsAt(rhoL, &pl)
		vapor.PotentialsAt(rhoV, &pv)
		a.equilibrium(n, &pl, &pv, 1/(rhoV*s.m.GasConstant()*t))
		a.balance(n, v, z, total, shareGiven)
		var step vector
		if !a.solve(size, &step) {
			return false
		}
		// The share, too, goes only as far as the equations are straight.
		big, denser := 0.0, 0.0
		for i := range n {
			big = math.Max(
				big, math.Max(math.Abs(step[i]), math.Abs(step[n+i]))/longestInConcentration,
			)
			denser += x[i] * step[i]
		}
		last := big
		big = math.Max(big, math.Max(math.Abs(denser)/longestInLiquid, math.Abs(step[2*n])/0.3))
		last = math.Max(last, math.Abs(step[2*n]))
		if !(big < 1e6) {
			return false
		}
		cut := math.Min(1, 1/big)
		for i := range n {
			v.Liquid[i] *= math.Exp(cut * step[i])
			v.Vapor[i] *= math.Exp(cut * step[n+i])
		}
		if shareGiven {
			total *= math.Exp(cut * step[2*n])
		} else {
			v.LiquidShare = math.Max(v.LiquidShare+cut*step[2*n], v.LiquidShare/2)
			if v.LiquidShare < dry {
				v.LiquidShare = 0
				return true
			}
		}
		if last < 1e-10 {
			v.P = pv.P
			return v.LiquidShare < 1 && rhoL > rhoV
		}
	}
	return false
}

// equilibrium sets the rows of equal fugacities and of equal pressure, the latter times scale.
func (a *matrix) equilibrium(n int, pl, pv *helmholtz.Potentials, scale float64) {
	size := 2*n + 1
	for i := range n {
		for j := range n {
			a[i][j] = pl.LnFLnRho[i][j]
			a[i][n+j] = -pv.LnFLnRho[i][j]
		}
		a[i][2*n] = 0
		a[i][size] = pv.LnF[i] - pl.LnF[i]
		a[n][i] = scale * pl.PLnRho[i]
		a[n][n+i] = -scale * pv.PLnRho[i]
	}
	a[n][2*n] = 0
	a[n][size] = scale * (pv.P - pl.P)
}

// balance sets the rows of what the vessel holds of each component, where the share of liquid
// or the total is the unknown.
func (a *matrix) balance(n int, v *Vessel, z *Composition, total float64, shareGiven bool) {
	size := 2*n + 1
	for i := range n {
		row := &a[n+1+i]
		clear(row[:])
		w := 1 / (z[i] * total)
		row[i] = w * v.LiquidShare * v.Liquid[i]
		row[n+i] = w * (1 - v.LiquidShare) * v.Vapor[i]
		row[size] = 1 - row[i] - row[n+i]
		if shareGiven {
			row[2*n] = -1
		} else {
			row[2*n] = w * (v.Liquid[i] - v.Vapor[i])
		}
	}
}

// phase is the density and the mole fractions of concentrations.
func phase(c *Composition, n int) (rho float64, x Composition) {
	for i := range n {
		rho += c[i]
	}
	for i := range n {
		x[i] = c[i] / rho
	}
	return rho, x
}
