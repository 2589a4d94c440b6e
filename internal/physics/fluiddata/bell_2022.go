package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// bell2022 is the pairs fitted in the paper that bell2022Source names.
var bell2022 = []helmholtz.Pair{
	{First: "R-1234yf", Second: "R-134a", BetaT: 1.000026, GammaT: 0.987057,
		BetaV: 1.000272, GammaV: 1.003747,
		F: 1, Departure: &departureR1234yfR134a, Source: bell2022Source},
	{First: "R-1234yf", Second: "R-1234ze(E)", BetaT: 0.998886, GammaT: 0.999309,
		BetaV: 0.999302, GammaV: 0.99859,
		F: 1, Departure: &departureR1234yfR1234zeE, Source: bell2022Source},
	{First: "R-134a", Second: "R-1234ze(E)", BetaT: 0.998593, GammaT: 0.992009,
		BetaV: 0.998995, GammaV: 0.998621,
		F: 1, Departure: &departureR134aR1234zeE, Source: bell2022Source},
}

const bell2022Source = `Ian H. Bell, "Mixture Models for Refrigerants R-1234yf/134a, ` +
	`R-1234yf/1234ze(E), and R-134a/1234ze(E) and Interim Models for R-125/1234yf, ` +
	`R-1234ze(E)/227ea, and R-1234yf/152a", J. Phys. Chem. Ref. Data 51, 2022, pp. 013103, ` +
	`doi:10.1063/5.0086060`

// departureR1234yfR134a is the departure function R1234yf-R134a.
var departureR1234yfR134a = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.0519, T: 2.477314, D: 1, L: 1},
		{N: -0.011472, T: 0.070541, D: 2, L: 2},
	},
}

// departureR1234yfR1234zeE is the departure function R1234yf-R1234ze(E).
var departureR1234yfR1234zeE = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.07264, T: 0.012645, D: 1, L: 1},
		{N: -0.024746, T: 3.992829, D: 2, L: 2},
	},
}

// departureR134aR1234zeE is the departure function R134a-R1234ze(E).
var departureR134aR1234zeE = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 0.068889, T: 3.184446, D: 1, L: 1},
		{N: -0.004831, T: 2.034344, D: 2, L: 2},
	},
}
