package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r218 is R-218 (octafluoropropane).
var r218 = helmholtz.Fluid{
	Designation: "R-218",
	Source: `E.W. Lemmon and R. Span, "Short Fundamental Equations of State for 20 Industrial ` +
		`Fluids", J. Chem. Eng. Data 51, 2006, pp. 785-850, doi:10.1021/je050186n`,
	MolarMass:   0.18801933,
	GasConstant: 8.314472,

	TripleT: 125.45,
	MaxT:    440,
	MaxP:    20e6,

	ReducingT:   345.02,
	ReducingRho: 3340,

	CriticalT:   345.02,
	CriticalP:   2640000,
	CriticalRho: 3340,

	Power: []helmholtz.Power{
		{N: 1.327, T: 0.25, D: 1},
		{N: -3.8433, T: 1.25, D: 1},
		{N: 0.922, T: 1.5, D: 1},
		{N: 0.1136, T: 0.25, D: 3},
		{N: 0.00036195, T: 0.875, D: 7},
		{N: 1.1001, T: 2.375, D: 1, L: 1},
		{N: 1.1896, T: 2, D: 2, L: 1},
		{N: -0.025147, T: 2.125, D: 5, L: 1},
		{N: -0.65923, T: 3.5, D: 1, L: 2},
		{N: -0.027969, T: 6.5, D: 1, L: 2},
		{N: -0.1833, T: 4.75, D: 4, L: 2},
		{N: -0.02163, T: 12.5, D: 2, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 7.2198, T: 0.9448727609993625},
			{N: 7.2692, T: 1.724537707958959},
			{N: 11.599, T: 4.315691843951075},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          345.02, Y0: 2640000,
		Terms: []helmholtz.Term{
			{N: -8.242713023595973, T: 1.008},
			{N: 19.087798455338692, T: 1.599},
			{N: -17.233089915234846, T: 1.665},
			{N: -1.422792519033736, T: 2.07},
			{N: -3.3648176664863447, T: 4.314},
			{N: -10.213938754091759, T: 17.759},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 345.02, Y0: 3340.0000000000005,
		Terms: []helmholtz.Term{
			{N: 7.303753750603384, T: 0.517},
			{N: -7.730626041358162, T: 0.714},
			{N: 3.674253188196436, T: 1.159},
			{N: -3.58395389631866, T: 3.98},
			{N: 5.552496612344577, T: 5.488},
			{N: -211.54319300173208, T: 19.277},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          345.02, Y0: 3340.0000000000005,
		Terms: []helmholtz.Term{
			{N: 3.329585797093735, T: 0.372},
			{N: -6.844734619770494, T: 0.41},
			{N: -1.1111833788437069, T: 0.775},
			{N: -2.0711985469576675, T: 1.882},
			{N: -4.658013576000995, T: 4.237},
			{N: 0.29142793495095165, T: 8.879},
		},
	},
}
