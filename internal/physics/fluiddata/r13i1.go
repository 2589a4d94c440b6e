package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r13I1 is R-13I1 (trifluoroiodomethane).
var r13I1 = helmholtz.Fluid{
	Designation: "R-13I1",
	Source: `Eric W. Lemmon and Roland Span, "Thermodynamic Properties of R-227ea, R-365mfc, ` +
		`R-115, and R13I1", J. Chem. Eng. Data 60, 2015, pp. 3745-3758, ` +
		`doi:10.1021/acs.jced.5b00684`,
	MolarMass:   0.1959104,
	GasConstant: 8.3144621,

	TripleT: 120,
	MaxT:    420,
	MaxP:    50e6,

	ReducingT:   396.44,
	ReducingRho: 4430.6,

	CriticalT:   396.44,
	CriticalP:   3952566.071718672,
	CriticalRho: 4430.6,

	Power: []helmholtz.Power{
		{N: 1.12191, T: 0.25, D: 1},
		{N: -3.08087, T: 1.125, D: 1},
		{N: 1.11307, T: 1.5, D: 1},
		{N: -0.184885, T: 1.375, D: 2},
		{N: 0.110971, T: 0.25, D: 3},
		{N: 0.000325, T: 0.875, D: 7},
		{N: 0.333357, T: 0.625, D: 2, L: 1},
		{N: -0.0288288, T: 1.75, D: 5, L: 1},
		{N: -0.371554, T: 3.625, D: 1, L: 2},
		{N: -0.0997985, T: 3.625, D: 4, L: 2},
		{N: -0.0333205, T: 14.5, D: 3, L: 3},
		{N: 0.0207882, T: 12, D: 4, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 6.2641, T: 1.7505801634547473},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          396.44, Y0: 3953000,
		Terms: []helmholtz.Term{
			{N: -6.8642, T: 1},
			{N: 1.7877, T: 1.5},
			{N: -1.0619, T: 1.9},
			{N: -2.1677, T: 3.8},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 396.44, Y0: 4430.6,
		Terms: []helmholtz.Term{
			{N: 18.776, T: 0.58},
			{N: -78.705, T: 0.8},
			{N: 149.49, T: 1},
			{N: -130.69, T: 1.2},
			{N: 43.856, T: 1.4},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          396.44, Y0: 4430.6,
		Terms: []helmholtz.Term{
			{N: -47.722, T: 0.65},
			{N: 108.57, T: 0.8},
			{N: -169, T: 1.1},
			{N: 171.54, T: 1.4},
			{N: -82.244, T: 1.75},
			{N: -40.758, T: 5.8},
			{N: -83.584, T: 13},
		},
	},
}
