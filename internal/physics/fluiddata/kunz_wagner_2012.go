package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// kunzWagner2012 is the pairs fitted in the paper that kunzWagner2012Source names. Water
// with R-170, R-600a and R-601a, whose parameters the paper leaves at 1 for want of
// measurements, is not among them.
var kunzWagner2012 = []helmholtz.Pair{
	{First: "R-744", Second: "R-170", BetaT: 1.013871147, GammaT: 0.90094953,
		BetaV: 1.002525718, GammaV: 1.032876701, Source: kunzWagner2012Source},
	{First: "R-744", Second: "R-290", BetaT: 1.033620538, GammaT: 0.908772477,
		BetaV: 0.996898004, GammaV: 1.047596298, Source: kunzWagner2012Source},
	{First: "R-744", Second: "R-600", BetaT: 1.018171004, GammaT: 0.911498231,
		BetaV: 1.174760923, GammaV: 1.222437324, Source: kunzWagner2012Source},
	{First: "R-744", Second: "R-600a", BetaT: 1.023339824, GammaT: 0.929982936,
		BetaV: 1.076551882, GammaV: 1.081909003, Source: kunzWagner2012Source},
	{First: "R-744", Second: "R-601", BetaT: 1.027000795, GammaT: 0.979217302,
		BetaV: 1.024311498, GammaV: 1.068406078, Source: kunzWagner2012Source},
	{First: "R-744", Second: "R-601a", BetaT: 1.019180957, GammaT: 0.961218039,
		BetaV: 1.060793104, GammaV: 1.116793198, Source: kunzWagner2012Source},
	{First: "R-170", Second: "R-290", BetaT: 0.996199694, GammaT: 1.01473019,
		BetaV: 0.997607277, GammaV: 1.00303472,
		F: 0.13042476515, Departure: &departureGeneralizedAlkane, Source: kunzWagner2012Source},
	{First: "R-170", Second: "R-600", BetaT: 0.999130554, GammaT: 1.034832749,
		BetaV: 0.999157205, GammaV: 1.006179146,
		F: 0.281570073085, Departure: &departureGeneralizedAlkane, Source: kunzWagner2012Source},
	{First: "R-170", Second: "R-600a", BetaT: 1, GammaT: 1.033283811,
		BetaV: 1, GammaV: 1.006616886,
		F: 0.260632376098, Departure: &departureGeneralizedAlkane, Source: kunzWagner2012Source},
	{First: "R-170", Second: "R-601", BetaT: 0.998688946, GammaT: 1.066665676,
		BetaV: 0.993851009, GammaV: 1.026085655, Source: kunzWagner2012Source},
	{First: "R-170", Second: "R-601a", BetaT: 1, GammaT: 1.021150247,
		BetaV: 1, GammaV: 1.045439935, Source: kunzWagner2012Source},
	{First: "R-290", Second: "R-600", BetaT: 1.000310289, GammaT: 1.007392782,
		BetaV: 0.999795868, GammaV: 1.003264179,
		F: 0.0312572600489, Departure: &departureGeneralizedAlkane, Source: kunzWagner2012Source},
	{First: "R-290", Second: "R-600a", BetaT: 0.998012298, GammaT: 1.005250774,
		BetaV: 0.999243146, GammaV: 1.001156119,
		F: -0.0551609771024, Departure: &departureGeneralizedAlkane, Source: kunzWagner2012Source},
	{First: "R-290", Second: "R-601", BetaT: 0.996484021, GammaT: 1.008344412,
		BetaV: 1.044919431, GammaV: 1.019921513, Source: kunzWagner2012Source},
	{First: "R-290", Second: "R-601a", BetaT: 0.994364425, GammaT: 1.0032695,
		BetaV: 1.040459289, GammaV: 0.999432118, Source: kunzWagner2012Source},
	{First: "R-290", Second: "R-718", BetaT: 1, GammaT: 0.600340961,
		BetaV: 1, GammaV: 1.011759763, Source: kunzWagner2012Source},
	{First: "R-600", Second: "R-600a", BetaT: 1.000077547, GammaT: 1.001432824,
		BetaV: 1.000880464, GammaV: 1.00041444,
		F: -0.0551240293009, Departure: &departureGeneralizedAlkane, Source: kunzWagner2012Source},
	{First: "R-600", Second: "R-601", BetaT: 1, GammaT: 1.00214364,
		BetaV: 1, GammaV: 1.01815965, Source: kunzWagner2012Source},
	{First: "R-600", Second: "R-601a", BetaT: 1, GammaT: 1.000792201,
		BetaV: 1, GammaV: 1.002728434, Source: kunzWagner2012Source},
	{First: "R-600", Second: "R-718", BetaT: 1, GammaT: 0.615512682,
		BetaV: 1, GammaV: 1.223638763, Source: kunzWagner2012Source},
	{First: "R-600a", Second: "R-601", BetaT: 1, GammaT: 1.002495889,
		BetaV: 1, GammaV: 1.002779804, Source: kunzWagner2012Source},
	{First: "R-600a", Second: "R-601a", BetaT: 1, GammaT: 1.001835788,
		BetaV: 1, GammaV: 1.002284353, Source: kunzWagner2012Source},
	{First: "R-601", Second: "R-601a", BetaT: 1, GammaT: 1.000050537,
		BetaV: 1, GammaV: 1.000024335, Source: kunzWagner2012Source},
	{First: "R-601", Second: "R-718", BetaT: 1, GammaT: 0.447666011,
		BetaV: 1, GammaV: 0.95667731, Source: kunzWagner2012Source},
}

const kunzWagner2012Source = `O. Kunz and W. Wagner, "The GERG-2008 Wide-Range Equation of State ` +
	`for Natural Gases and Other Mixtures: An Expansion of GERG-2004", J. Chem. Eng. Data 57, ` +
	`2012, pp. 3032-3091, doi:10.1021/je300655b`

// departureGeneralizedAlkane is the departure function GeneralizedAlkane.
var departureGeneralizedAlkane = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: 2.5574776844118, T: 1, D: 1},
		{N: -7.9846357136353, T: 1.55, D: 1},
		{N: 4.7859131465806, T: 1.7, D: 1},
		{N: -0.73265392369587, T: 0.25, D: 2},
		{N: 1.3805471345312, T: 1.35, D: 2},
		{N: 0.28349603476365, T: 0, D: 3},
		{N: -0.49087385940425, T: 1.25, D: 3},
		{N: -0.10291888921447, T: 0, D: 4},
		{N: 0.11836314681968, T: 0.7, D: 4},
		{N: 5.5527385721943e-05, T: 5.4, D: 4},
	},
}

// departureMethaneEthane is the departure function Methane-Ethane.
var departureMethaneEthane = helmholtz.Departure{
	Power: []helmholtz.Power{
		{N: -0.00080926050298746, T: 0.65, D: 3},
		{N: -0.00075381925080059, T: 1.55, D: 4},
	},
	Bell: []helmholtz.DepartureBell{
		{N: -0.041618768891219, T: 3.1, D: 1, Eta: 1, Beta: 1, Gamma: 0.5, Epsilon: 0.5},
		{N: -0.23452173681569, T: 5.9, D: 2, Eta: 1, Beta: 1, Gamma: 0.5, Epsilon: 0.5},
		{N: 0.14003840584586, T: 7.05, D: 2, Eta: 1, Beta: 1, Gamma: 0.5, Epsilon: 0.5},
		{N: 0.063281744807738, T: 3.35, D: 2, Eta: 0.875, Beta: 1.25, Gamma: 0.5, Epsilon: 0.5},
		{N: -0.034660425848809, T: 1.2, D: 2, Eta: 0.75, Beta: 1.5, Gamma: 0.5, Epsilon: 0.5},
		{N: -0.23918747334251, T: 5.8, D: 2, Eta: 0.5, Beta: 2, Gamma: 0.5, Epsilon: 0.5},
		{N: 0.0019855255066891, T: 2.7, D: 2, Eta: 0, Beta: 3, Gamma: 0.5, Epsilon: 0.5},
		{N: 6.1777746171555, T: 0.45, D: 3, Eta: 0, Beta: 3, Gamma: 0.5, Epsilon: 0.5},
		{N: -6.9575358271105, T: 0.55, D: 3, Eta: 0, Beta: 3, Gamma: 0.5, Epsilon: 0.5},
		{N: 1.0630185306388, T: 1.95, D: 3, Eta: 0, Beta: 3, Gamma: 0.5, Epsilon: 0.5},
	},
}
