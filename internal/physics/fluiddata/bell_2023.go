package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// bell2023 is the pairs fitted in the paper that bell2023Source names.
var bell2023 = []helmholtz.Pair{
	{First: "R-32", Second: "R-1234yf", BetaT: 1.011011, GammaT: 0.966965,
		BetaV: 1.007852, GammaV: 1.037663,
		F: 1, Departure: &departureR32R1234yf, Source: bell2023Source},
	{First: "R-32", Second: "R-1234ze(E)", BetaT: 1.005148, GammaT: 0.946105,
		BetaV: 0.999032, GammaV: 1.029821,
		F: 1, Departure: &departureR32R1234zeE, Source: bell2023Source},
	{First: "R-125", Second: "R-1234yf", BetaT: 0.999969, GammaT: 0.998028,
		BetaV: 0.998226, GammaV: 1.006068,
		F: 1, Departure: &departureR125R1234yf, Source: bell2023Source},
	{First: "R-1234yf", Second: "R-152a", BetaT: 0.995987, GammaT: 0.978058,
		BetaV: 0.99971, GammaV: 1.008608,
		F: 1, Departure: &departureR1234yfR152a, Source: bell2023Source},
	{First: "R-1234ze(E)", Second: "R-227ea", BetaT: 1.001247, GammaT: 0.98918,
		BetaV: 0.99929, GammaV: 1.001581,
		F: 1, Departure: &departureR1234zeER227ea, Source: bell2023Source},
}

const bell2023Source = `Ian H. Bell, "Mixture Model for Refrigerant Pairs R-32/1234yf, ` +
	`R-32/1234ze(E), R-1234ze(E)/227ea, R-1234yf/152a, and R-125/1234yf", J. Phys. Chem. Ref. ` +
	`Data 52, 2023, pp. 013101, doi:10.1063/5.0135368`

// departureR32R1234yf is the departure function R32-R1234yf.
var departureR32R1234yf = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.449487, T: 2.538296, D: 1, L: 1},
		{N: -0.099708, T: 3.208604, D: 2, L: 1},
		{N: 0.098897, T: 0.456509, D: 3, L: 1},
	},
}

// departureR32R1234zeE is the departure function R32-R1234ze(E).
var departureR32R1234zeE = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.295192, T: 0.500457, D: 1, L: 1},
		{N: -0.737904, T: 3.104735, D: 2, L: 1},
		{N: 0.542962, T: 3.20172, D: 3, L: 1},
		{N: -0.201951, T: 2.567118, D: 4, L: 1},
	},
}

// departureR125R1234yf is the departure function R125-R1234yf.
var departureR125R1234yf = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: -0.032013, T: 0.00803, D: 1, L: 1},
	},
}

// departureR1234yfR152a is the departure function R1234yf-R152a.
var departureR1234yfR152a = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.009165, T: 3.221227, D: 1, L: 1},
		{N: 0.014392, T: 1.007082, D: 2, L: 1},
		{N: -0.014246, T: 3.790953, D: 3, L: 1},
	},
}

// departureR1234zeER227ea is the departure function R1234ze(E)-R227ea.
var departureR1234zeER227ea = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: -0.057178, T: 1.290298, D: 1, L: 1},
		{N: 0.031318, T: 0.038796, D: 2, L: 1},
		{N: -0.027496, T: 2.640532, D: 3, L: 1},
	},
}
