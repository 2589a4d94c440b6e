package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// gernert2013 is the pairs fitted in the paper that gernert2013Source names.
var gernert2013 = []helmholtz.Pair{
	{First: "R-744", Second: "R-718", BetaT: 1.030538, GammaT: 0.828472,
		BetaV: 1.021392, GammaV: 0.895156,
		F: 1, Departure: &departureCarbonDioxideWater, Source: gernert2013Source},
}

const gernert2013Source = `Georg Johannes Gernert, "A New Helmholtz Energy Model for Humid Gases ` +
	`and CCS Mixtures", dissertation, Ruhr-Universität Bochum, 2013`

// departureCarbonDioxideWater is the departure function CarbonDioxide-Water.
var departureCarbonDioxideWater = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.39440467, T: 0.88, D: 1},
		{N: -1.7634732, T: 2.932, D: 1},
		{N: 0.14620755, T: 2.433, D: 3},
		{N: 0.008752232, T: 1.33, D: 0, L: 1},
		{N: 2.0349398, T: 4.416, D: 2, L: 1},
		{N: -0.09035025, T: 5.514, D: 3, L: 1},
		{N: -0.21638854, T: 5.203, D: 1, L: 2},
		{N: 0.03961217, T: 1, D: 5, L: 2},
	},
}
