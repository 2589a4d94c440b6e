package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r115 is R-115 (chloropentafluoroethane).
var r115 = helmholtz.Fluid{
	Designation: "R-115",
	Source: `Eric W. Lemmon and Roland Span, "Thermodynamic Properties of R-227ea, R-365mfc, ` +
		`R-115, and R13I1", J. Chem. Eng. Data 60, 2015, pp. 3745-3758, ` +
		`doi:10.1021/acs.jced.5b00684`,
	MolarMass:   0.154466416,
	GasConstant: 8.3144621,

	TripleT: 173.57,
	MaxT:    550,
	MaxP:    60e6,

	ReducingT:   353.1,
	ReducingRho: 3980,

	CriticalT:   353.1,
	CriticalP:   3129036.968278708,
	CriticalRho: 3980,

	Power: []helmholtz.Power{
		{N: 1.20873, T: 0.25, D: 1},
		{N: -3.5446, T: 1.25, D: 1},
		{N: 0.745302, T: 1.5, D: 1},
		{N: 0.114128, T: 0.25, D: 3},
		{N: 0.000436572, T: 0.875, D: 7},
		{N: 0.988385, T: 2.375, D: 1, L: 1},
		{N: 1.13878, T: 2, D: 2, L: 1},
		{N: -0.0215633, T: 2.125, D: 5, L: 1},
		{N: -0.63023, T: 3.5, D: 1, L: 2},
		{N: 0.0167901, T: 6.5, D: 1, L: 2},
		{N: -0.149412, T: 4.75, D: 4, L: 2},
		{N: -0.0271153, T: 12.5, D: 2, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 7.142, T: 0.8184650240725007},
			{N: 10.61, T: 3.6845086377796656},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          353.1, Y0: 3129000,
		Terms: []helmholtz.Term{
			{N: -7.7016, T: 1},
			{N: 4.3462, T: 1.5},
			{N: -4.002, T: 1.9},
			{N: -6.551, T: 5.2},
			{N: 3.9278, T: 6},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 353.1, Y0: 3980,
		Terms: []helmholtz.Term{
			{N: 18.245, T: 0.556},
			{N: -57.373, T: 0.75},
			{N: 78.511, T: 0.95},
			{N: -50.979, T: 1.2},
			{N: 14.361, T: 1.5},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          353.1, Y0: 3980,
		Terms: []helmholtz.Term{
			{N: -10.179, T: 0.53},
			{N: 49.312, T: 0.9},
			{N: -150.13, T: 1.2},
			{N: 219.87, T: 1.5},
			{N: -129.65, T: 1.75},
			{N: -54.218, T: 6},
		},
	},
}
