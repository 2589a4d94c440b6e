package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// lemmonJacobsen2004 is the pairs fitted in the paper that lemmonJacobsen2004Source names.
var lemmonJacobsen2004 = []helmholtz.Pair{
	{First: "R-32", Second: "R-125", Form: helmholtz.Lemmon, Xi: 28.95, Zeta: -6.008e-06,
		F: 1, Departure: &departureR32R125, Source: lemmonJacobsen2004Source},
	{First: "R-32", Second: "R-134a", Form: helmholtz.Lemmon, Xi: 7.909, Zeta: -2.039e-06,
		F: 1, Departure: &departureR32R134a, Source: lemmonJacobsen2004Source},
	{First: "R-125", Second: "R-134a", Form: helmholtz.Lemmon, Xi: -0.4326, Zeta: -3.453e-07,
		F: 1, Departure: &departureGeneralizedHFC, Source: lemmonJacobsen2004Source},
	{First: "R-125", Second: "R-143a", Form: helmholtz.Lemmon, Xi: 5.551, Zeta: -4.452e-07,
		F: 1.1697, Departure: &departureGeneralizedHFC, Source: lemmonJacobsen2004Source},
	{First: "R-134a", Second: "R-143a", Form: helmholtz.Lemmon, Xi: 2.324, Zeta: 6.182e-07,
		F: 0.5557, Departure: &departureGeneralizedHFC, Source: lemmonJacobsen2004Source},
	{First: "R-134a", Second: "R-152a", Form: helmholtz.Lemmon, Xi: 4.202, Zeta: 4.223e-06,
		F: 2, Departure: &departureGeneralizedHFC, Source: lemmonJacobsen2004Source},
}

const lemmonJacobsen2004Source = `Eric W. Lemmon and Richard T. Jacobsen, "Equations of State ` +
	`for Mixtures of R-32, R-125, R-134a, R-143a, and R-152a", J. Phys. Chem. Ref. Data 33, ` +
	`2004, pp. 593-620, doi:10.1063/1.1649997`

// departureR32R125 is the departure function R32-R125.
var departureR32R125 = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: -0.0072955, T: 4.5, D: 2, L: 1},
		{N: 0.078035, T: 0.57, D: 5, L: 1},
		{N: 0.61007, T: 1.9, D: 1, L: 2},
		{N: 0.64246, T: 1.2, D: 3, L: 2},
		{N: 0.014965, T: 0.5, D: 9, L: 2},
		{N: -0.34049, T: 2.6, D: 2, L: 3},
		{N: 0.085658, T: 11.4, D: 3, L: 3},
		{N: -0.064429, T: 4.5, D: 6, L: 3},
	},
}

// departureR32R134a is the departure function R32-R134a.
var departureR32R134a = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.22909, T: 1.9, D: 1, L: 1},
		{N: 0.094074, T: 0.25, D: 3, L: 1},
		{N: 0.00039876, T: 0.07, D: 8, L: 1},
		{N: 0.021113, T: 2, D: 1, L: 2},
	},
}

// departureGeneralizedHFC is the departure function GeneralizedHFC.
var departureGeneralizedHFC = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: -0.013073, T: 7.4, D: 1, L: 1},
		{N: 0.018259, T: 0.35, D: 3, L: 1},
		{N: 8.1299e-06, T: 10, D: 11, L: 2},
		{N: 0.0078496, T: 5.3, D: 2, L: 3},
	},
}
