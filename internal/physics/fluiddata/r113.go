package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r113 is R-113 (1,1,2-trichloro-1,2,2-trifluoroethane).
var r113 = helmholtz.Fluid{
	Designation: "R-113",
	Source: `Volker Marx, Andreas Pruß and Wolfgang Wagner, "Neue Zustandsgleichung für R 12, R ` +
		`22, R 11 und R 113 - Beschreibung des thermodynamischen Zustandsverhaltens bei ` +
		`Temperaturen bis 525 K und Drücken bis 200 MPa", VDI Verlag 19, 1992`,
	MolarMass:   0.187375,
	GasConstant: 8.314471,

	TripleT: 236.93,
	MaxT:    525,
	MaxP:    200e6,

	ReducingT:   487.21,
	ReducingRho: 2988.659106070714,

	CriticalT:   487.21,
	CriticalP:   3392200,
	CriticalRho: 2988.6591060707137,

	Power: []helmholtz.Power{
		{N: 0.8432092286, T: 0.5, D: 1},
		{N: -2.019185967, T: 1.5, D: 1},
		{N: 0.2920612996, T: 1.5, D: 2},
		{N: 0.05323107661, T: -0.5, D: 3},
		{N: 0.003214971931, T: 2, D: 4},
		{N: 4.667858574e-05, T: 0, D: 8},
		{N: -1.227522799e-06, T: 3, D: 8},
		{N: 0.8167288718, T: -0.5, D: 3, L: 1},
		{N: -1.340790803, T: 0, D: 3, L: 1},
		{N: 0.4065752705, T: 2, D: 3, L: 1},
		{N: -0.1534754634, T: 1.5, D: 5, L: 1},
		{N: -0.02414435149, T: 6, D: 1, L: 2},
		{N: -0.02113056197, T: 2, D: 2, L: 2},
		{N: -0.03565436205, T: 10, D: 2, L: 2},
		{N: 0.001364654968, T: 6, D: 9, L: 2},
		{N: -0.01251838755, T: 18, D: 3, L: 3},
		{N: -0.001385761351, T: 15, D: 7, L: 3},
		{N: 0.0007206335486, T: 33, D: 8, L: 4},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 12.4464495, T: 1.04971737},
			{N: 2.72181845, T: 3.29788641},
			{N: 0.692712415, T: 8.62650812},
			{N: 3.32248298, T: 3.29670446},
		},
		LogTau: 2.9999966,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          487.21, Y0: 3392200,
		Terms: []helmholtz.Term{
			{N: -7.513797278929454, T: 1},
			{N: 1.5095312092676123, T: 1.296},
			{N: -1.9699733346499353, T: 2.592},
			{N: 1.7578730760232852, T: 3.34},
			{N: -4.592035089583662, T: 4.285},
			{N: -0.41772646096774985, T: 10.465},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 487.21, Y0: 2988.6591060707137,
		Terms: []helmholtz.Term{
			{N: 2.1209299719499692, T: 0.344},
			{N: 0.306929802490948, T: 0.621},
			{N: 107.2647341968565, T: 4.847},
			{N: -840.5575578947821, T: 6.255},
			{N: 1870.9104273285336, T: 7.527},
			{N: -1779.2226056266804, T: 9.355},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          487.21, Y0: 2988.6591060707137,
		Terms: []helmholtz.Term{
			{N: -53.51591930070364, T: 0.547},
			{N: 1179.0791709251655, T: 0.639},
			{N: -1132.4832595523026, T: 0.644},
			{N: 1.7901473308750928, T: 1.238},
			{N: -6.764890888618531, T: 3.962},
			{N: 2.256439191313591, T: 5.593},
		},
	},
}
