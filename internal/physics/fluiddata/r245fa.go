package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r245fa is R-245fa (1,1,1,3,3-pentafluoropropane).
var r245fa = helmholtz.Fluid{
	Designation: "R-245fa",
	Source: `Ryo Akasaka, Yong Zhou and Eric W. Lemmon, "A Fundamental Equation of State for ` +
		`1,1,1,3,3-Pentafluoropropane (R-245fa)", J. Phys. Chem. Ref. Data 44, 2015, pp. 013104, ` +
		`doi:10.1063/1.4913493`,
	MolarMass:   0.13404794,
	GasConstant: 8.3144621,

	TripleT: 171.05,
	MaxT:    440,
	MaxP:    200e6,

	ReducingT:   427.01,
	ReducingRho: 3875,

	CriticalT:   427.01,
	CriticalP:   3651000,
	CriticalRho: 3875,

	Power: []helmholtz.Power{
		{N: 0.057506623, T: 1, D: 4},
		{N: 1.5615975, T: 0.27, D: 1},
		{N: -2.3614485, T: 0.9, D: 1},
		{N: -0.51773521, T: 1.09, D: 2},
		{N: 0.18509788, T: 0.4, D: 3},
		{N: -0.87405626, T: 2.9, D: 1, L: 2},
		{N: -0.27530955, T: 1.7, D: 3, L: 2},
		{N: 0.57971151, T: 0.8, D: 2, L: 1},
		{N: -0.39934306, T: 3.6, D: 2, L: 2},
		{N: -0.033230277, T: 1.05, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.83210508, T: 1.8, D: 1, Eta: 1.011, Beta: 1.879, Gamma: 1.081, Epsilon: 0.709},
		{N: -0.335443, T: 4, D: 1, Eta: 1.447, Beta: 2.454, Gamma: 0.651, Epsilon: 0.939},
		{N: -0.10117801, T: 4.5, D: 3, Eta: 1.079, Beta: 1.256, Gamma: 0.468, Epsilon: 0.703},
		{N: -0.0091495867, T: 2, D: 3, Eta: 7.86, Beta: 21.1, Gamma: 1.293, Epsilon: 0.777},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 5.5728, T: 0.5197115834815994},
			{N: 10.385, T: 2.364453600524394},
			{N: 12.554, T: 5.735555763648281},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          427.01, Y0: 3651000,
		Terms: []helmholtz.Term{
			{N: -0.9670903356725931, T: 7.194},
			{N: -11.756404923945222, T: 1.03},
			{N: 5.087651519671258, T: 1.145},
			{N: -2.835805078027625, T: 2.84},
			{N: -2.217939014066299, T: 4.613},
			{N: 28.8905424182831, T: 18.798},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 427.01, Y0: 3875,
		Terms: []helmholtz.Term{
			{N: -0.645916749226158, T: 0.144},
			{N: 1.2435143264412414, T: 0.165},
			{N: 2.1374254146018647, T: 0.53},
			{N: -1.4105539340976712, T: 1.993},
			{N: 2.697825229930464, T: 2.646},
			{N: -1.236775453941409, T: 3.593},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          427.01, Y0: 3875,
		Terms: []helmholtz.Term{
			{N: -0.12316786769188867, T: 0.075},
			{N: -3.5467162730203325, T: 0.466},
			{N: -2.100626576983384, T: 1.018},
			{N: -3.02259697521286, T: 2.817},
			{N: -10.604906302496444, T: 6.14},
			{N: 12.900898794193413, T: 8.5},
		},
	},
}
