// Package helmholtz evaluates equations of state written as a reduced
// Helmholtz energy: those of single refrigerants and the multi-fluid model that
// joins them into blends.
//
// # The form
//
// A pure fluid's equation is
//
//	a/(RT) = α0(T, ρ) + αr(δ, τ),   δ = ρ/ρr,  τ = Tr/T
//
// with an ideal-gas part that is exact in density and a residual part that is a
// sum of a few dozen terms, each a function of δ times a function of τ. Every
// thermodynamic property is a combination of derivatives of a, so one evaluation
// gives them all (R. Span, Multiparameter Equations of State, Springer, 2000).
//
// A blend uses the same residual functions at the blend's own reducing point:
//
//	αr = Σ xi αri(δ, τ) + Σ xi xj Fij αij(δ, τ),   δ = ρ/ρr(x),  τ = Tr(x)/T
//
// (O. Kunz and W. Wagner, J. Chem. Eng. Data 57, 2012, pp. 3032-3091; E. W.
// Lemmon and R. T. Jacobsen, J. Phys. Chem. Ref. Data 33, 2004, pp. 593-620).
//
// # How it is computed
//
// A [Model] sorts the terms of all its fluids once: functions of δ that several
// terms share (δ^d exp(-δ^l)) become one entry, and so do functions of τ. An
// [Evaluator] then works in two steps. Setting the temperature raises τ to its
// powers and sums them into one coefficient for each function of δ; after that a
// density costs one short sum, which is what a density solver repeats.
//
// Derivatives are kept in the multiplied form of the logarithmic operators
// D = δ ∂/∂δ and θ = τ ∂/∂τ, for which a power is its own derivative times its
// exponent.
//
// # Units
//
// Kelvin, pascal, mol/m³, J/mol, J/(mol K), m/s, kg/mol.
package helmholtz
