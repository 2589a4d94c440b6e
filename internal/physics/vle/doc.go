// Package vle solves phase equilibrium and states of a [helmholtz.Model]:
// saturation of pure fluids, bubble and dew points of blends, critical points,
// densities and flashes.
//
// Kelvin, pascal, mol/m³, J/mol, J/(mol K). Everything is safe for concurrent
// use and allocates nothing once its pools are warm. No input makes it panic or
// return NaN: what cannot be computed is one of the package's error values.
package vle
