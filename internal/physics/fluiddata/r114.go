package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r114 is R-114 (1,2-dichloro-1,1,2,2-tetrafluoroethane).
var r114 = helmholtz.Fluid{
	Designation: "R-114",
	Source: `B. Platzer, A. Polt and G. Maurer, "Thermophysical Properties of Refrigerants", ` +
		`Springer-Verlag, 1990, doi:10.1007/978-3-662-02608-3`,
	MolarMass:   0.170921,
	GasConstant: 8.31451,

	TripleT: 180.63,
	MaxT:    507,
	MaxP:    21e6,

	ReducingT:   418.83,
	ReducingRho: 3393.2,

	CriticalT:   418.83,
	CriticalP:   3257000,
	CriticalRho: 3393.2,

	Power: []helmholtz.Power{
		{N: 1.07938940032879, T: 0, D: 1},
		{N: -1.99243731009857, T: 1, D: 1},
		{N: -0.155135220175231, T: 2, D: 1},
		{N: -0.121465858429101, T: 3, D: 1},
		{N: -0.0165038674558161, T: 4, D: 1},
		{N: -0.186916017480622, T: 0, D: 2},
		{N: 0.308074956770949, T: 1, D: 2},
		{N: 0.115861545567346, T: 2, D: 2},
		{N: 0.027635877981389, T: 0, D: 3},
		{N: 0.108043424159349, T: 1, D: 3},
		{N: 0.0460684822539207, T: 0, D: 4},
		{N: -0.174822007470687, T: 1, D: 4},
		{N: 0.0317531741331376, T: 1, D: 5},
		{N: -0.340776521025164, T: 3, D: 0},
		{N: 0.323001398918284, T: 4, D: 0},
		{N: -0.0424950543505197, T: 5, D: 0},
	},
	Exponential: []helmholtz.Exponential{
		{N: -1.66940287525002, T: 3, D: 2, L: 2, G: 1.21104},
		{N: 4.08693538568874, T: 4, D: 2, L: 2, G: 1.21104},
		{N: -2.4173923391137, T: 5, D: 2, L: 2, G: 1.21104},
		{N: 0.340776521025164, T: 3, D: 0, L: 2, G: 1.21104},
		{N: -0.323001398918284, T: 4, D: 0, L: 2, G: 1.21104},
		{N: 0.0424950543505197, T: 5, D: 0, L: 2, G: 1.21104},
	},

	Ideal: helmholtz.Ideal{
		LogTau: -1,
		Cp0: []helmholtz.Term{
			{N: 2.007414931364566, T: 0},
			{N: 0.06662223065231744, T: 1},
			{N: -0.0001211907268430731, T: 2},
			{N: 1.385112968303604e-07, T: 3},
			{N: -7.290244178478347e-11, T: 4},
		},
	},

	// The guesses of this fluid are fitted to its own equation below 0.985 of the
	// critical temperature.
	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          418.83, Y0: 3257000,
		Terms: []helmholtz.Term{
			{N: -7.13742, T: 1},
			{N: 1.22748, T: 1.5},
			{N: -1.339747, T: 2.5},
			{N: -5.273707, T: 5},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 418.83, Y0: 3393.2,
		Terms: []helmholtz.Term{
			{N: 1.924015, T: 0.35},
			{N: 0.6820454, T: 0.7},
			{N: -0.2039269, T: 1.2},
			{N: 0.5203569, T: 2.5},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          418.83, Y0: 3393.2,
		Terms: []helmholtz.Term{
			{N: -2.271415, T: 0.36},
			{N: -3.635256, T: 0.9},
			{N: 0.9209673, T: 1.5},
			{N: -2.635218, T: 3},
			{N: -7.040941, T: 6},
		},
	},
}
