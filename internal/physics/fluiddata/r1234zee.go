package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1234zeE is R-1234ze(E) (trans-1,3,3,3-tetrafluoropropene).
var r1234zeE = helmholtz.Fluid{
	Designation: "R-1234ze(E)",
	Source: `Monika Thol and Eric W. Lemmon, "Equation of State for the Thermodynamic Properties ` +
		`of trans-1,3,3,3-Tetrafluoropropene [R-1234ze(E)]", Int. J. Thermophys 37, 2016, pp. ` +
		`1-16, doi:10.1007/s10765-016-2040-6`,
	MolarMass:   0.1140415928,
	GasConstant: 8.314472,

	TripleT: 168.62,
	MaxT:    420,
	MaxP:    15e6,

	ReducingT:   382.513,
	ReducingRho: 4290,

	CriticalT:   382.52,
	CriticalP:   3635376.3491348797,
	CriticalRho: 4290,

	Power: []helmholtz.Power{
		{N: 0.03982797, T: 1, D: 4},
		{N: 1.812227, T: 0.223, D: 1},
		{N: -2.537512, T: 0.755, D: 1},
		{N: -0.5333254, T: 1.24, D: 2},
		{N: 0.1677031, T: 0.44, D: 3},
		{N: -1.323801, T: 2, D: 1, L: 2},
		{N: -0.6694654, T: 2.2, D: 3, L: 2},
		{N: 0.8072718, T: 1.2, D: 2, L: 1},
		{N: -0.7740229, T: 1.5, D: 2, L: 2},
		{N: -0.01843846, T: 0.9, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 1.407916, T: 1.33, D: 1, Eta: 1, Beta: 1.21, Gamma: 0.943, Epsilon: 0.728},
		{N: -0.4237082, T: 1.75, D: 1, Eta: 1.61, Beta: 1.37, Gamma: 0.642, Epsilon: 0.87},
		{N: -0.2270068, T: 2.11, D: 3, Eta: 1.24, Beta: 0.98, Gamma: 0.59, Epsilon: 0.855},
		{N: -0.805213, T: 1, D: 3, Eta: 9.34, Beta: 171, Gamma: 1.2, Epsilon: 0.79},
		{N: 0.00994318, T: 1.5, D: 2, Eta: 5.78, Beta: 47.4, Gamma: 1.33, Epsilon: 1.3},
		{N: -0.008798793, T: 1, D: 1, Eta: 3.08, Beta: 15.4, Gamma: 0.64, Epsilon: 0.71},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 9.3575, T: 1.34113088966911},
			{N: 10.717, T: 5.15538034001459},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          382.52, Y0: 3636250,
		Terms: []helmholtz.Term{
			{N: -0.0007362365256237661, T: 0.052000000000000005},
			{N: -7.554649594027046, T: 1},
			{N: 1.7584756226770677, T: 1.5},
			{N: -2.0617331468344315, T: 2.3333333333333335},
			{N: -0.9980943477495106, T: 4.333333333333333},
			{N: -3.038350758700181, T: 4.833333333333333},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 382.52, Y0: 4290,
		Terms: []helmholtz.Term{
			{N: -8.42282936179494, T: 0.07},
			{N: 35.592169315198404, T: 0.096},
			{N: -27.748444759203856, T: 0.10800000000000001},
			{N: 3.0869391194586315, T: 0.383},
			{N: 0.49297732386262993, T: 2.6666666666666665},
			{N: 2436.2254360953007, T: 25},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          382.52, Y0: 4290,
		Terms: []helmholtz.Term{
			{N: 1.9861295422409955, T: 0.10500000000000001},
			{N: -3.601910664347684, T: 0.139},
			{N: 110.97544193749978, T: 0.38749999999999996},
			{N: -113.63727224413014, T: 0.39449999999999996},
			{N: -1.7016720393939881, T: 1.3333333333333333},
			{N: -5.765500312051858, T: 4.166666666666667},
		},
	},
}
