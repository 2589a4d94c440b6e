package psychro

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// dryAir is the equation of state of dry air as one substance: E. W. Lemmon, R. T
// Jacobsen, S. G. Penoncello and D. G. Friend, "Thermodynamic Properties of Air
// and Mixtures of Nitrogen, Argon, and Oxygen From 60 to 2000 K at Pressures to
// 2000 MPa", J. Phys. Chem. Ref. Data 29, 2000, pp. 331-385, equations 24 and 25.
var dryAir = helmholtz.Fluid{
	GasConstant: 8.31451,  // J/(mol K)
	ReducingT:   132.6312, // K
	ReducingRho: 10447.7,  // mol/m³
	Power: []helmholtz.Power{
		{N: 0.118160747229, D: 1, T: 0}, {N: 0.713116392079, D: 1, T: 0.33},
		{N: -1.61824192067, D: 1, T: 1.01}, {N: 0.0714140178971, D: 2, T: 0},
		{N: -0.0865421396646, D: 3, T: 0}, {N: 0.134211176704, D: 3, T: 0.15},
		{N: 0.0112626704218, D: 4, T: 0}, {N: -0.0420533228842, D: 4, T: 0.2},
		{N: 0.0349008431982, D: 4, T: 0.35}, {N: 0.000164957183186, D: 6, T: 1.35},
		{N: -0.101365037912, D: 1, T: 1.6, L: 1}, {N: -0.17381369097, D: 3, T: 0.8, L: 1},
		{N: -0.0472103183731, D: 5, T: 0.95, L: 1}, {N: -0.0122523554253, D: 6, T: 1.25, L: 1},
		{N: -0.146629609713, D: 1, T: 3.6, L: 2}, {N: -0.0316055879821, D: 3, T: 6, L: 2},
		{N: 0.000233594806142, D: 11, T: 3.25, L: 2}, {N: 0.0148287891978, D: 1, T: 3.5, L: 3},
		{N: -0.00938782884667, D: 3, T: 15, L: 3},
	},
}

// dryAirIdealEnthalpy is that of dry air as a perfect gas in J/mol: RT(1 + τ
// ∂α0/∂τ) of the equation's ideal part, up to a constant.
func dryAirIdealEnthalpy(t float64) float64 {
	tau := dryAir.ReducingT / t
	slope := 2.490888032 // τ ∂/∂τ of 2.490888032 ln τ
	for _, term := range [...]struct{ n, t float64 }{
		{6.057194e-08, -3}, {-2.10274769e-05, -2}, {-0.000158860716, -1}, {17.275266575, 1},
		{-0.00019536342, 1.5},
	} {
		slope += term.n * term.t * math.Pow(tau, term.t)
	}
	for _, term := range [...]struct{ n, v float64 }{
		{0.791309509, 25.36365}, {0.212236768, 16.90741},
	} {
		slope += term.n * term.v * tau / math.Expm1(term.v*tau)
	}
	const n, v = -0.197938904, 87.31279 // n ln(2/3 + exp(vτ))
	slope += n * v * tau / (1 + 2.0/3*math.Exp(-v*tau))
	return dryAir.GasConstant * t * (1 + slope)
}

// virialOf returns a function for the second and third virial coefficients of an
// equation of state at t kelvin, in m³/mol and m⁶/mol². The terms of water's that are
// not powers act near the critical density alone, with exp(−28) and less left of them
// here.
func virialOf(f *helmholtz.Fluid) func(t float64) (b, c float64) {
	m, err := helmholtz.NewModel([]*helmholtz.Fluid{f}, []float64{1}, nil)
	if err != nil {
		panic("psychro: virial coefficients: " + err.Error())
	}
	return func(t float64) (b, c float64) {
		e := m.Evaluator()
		defer e.Release()
		e.SetT(t)
		return e.Virial()
	}
}
