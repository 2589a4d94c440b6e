package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1336mzzE is R-1336mzz(E) (trans-1,1,1,4,4,4-hexafluoro-2-butene).
var r1336mzzE = helmholtz.Fluid{
	Designation: "R-1336mzz(E)",
	Source: `Ryo Akasaka, Marcia L. Huber, Luke Simoni and Eric W. Lemmon, "A Helmholtz Energy ` +
		`Equation of State for trans-1,1,1,4,4,4-Hexafluoro-2-butene [R-1336mzz(E)]", ` +
		`International Journal of Thermophysics 44, 2023, pp. 1003-1013, ` +
		`doi:10.1007/s10765-022-03143-5`,
	MolarMass:   0.1640491,
	GasConstant: 8.314462618,

	TripleT: 200.15,
	MaxT:    410,
	MaxP:    5700000,

	ReducingT:   403.53,
	ReducingRho: 3129,

	CriticalT:   403.53,
	CriticalP:   2779002.2154927077,
	CriticalRho: 3129,

	Power: []helmholtz.Power{
		{N: 0.08297005, T: 1, D: 4},
		{N: 1.1213658, T: 0.117, D: 1},
		{N: -2.0279038680756, T: 1, D: 1},
		{N: -0.3486706213113, T: 1, D: 2},
		{N: 0.13227952, T: 0.413, D: 3},
		{N: -1.3751844, T: 2.44, D: 1, L: 2},
		{N: -1.3939029, T: 2.51, D: 3, L: 2},
		{N: 0.11190839, T: 0.535, D: 2, L: 1},
		{N: -0.90635088, T: 1.927, D: 2, L: 2},
		{N: -0.050014594, T: 1.186, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 1.7953748, T: 0.876, D: 1, Eta: 1.234, Beta: 1.237, Gamma: 1.21, Epsilon: 1.23},
		{N: 2.0579712, T: 1.23, D: 1, Eta: 1.34, Beta: 0.384, Gamma: 2, Epsilon: 0.751},
		{N: -1.0433081, T: 0.875, D: 3, Eta: 1.13, Beta: 1.24, Gamma: 1.216, Epsilon: 0.522},
		{N: -1.2459808, T: 0.5181, D: 2, Eta: 1.15, Beta: 0.46, Gamma: 2.27, Epsilon: 0.32},
		{N: -0.49712249, T: 0.86, D: 2, Eta: 1.3, Beta: 1.326, Gamma: 1.26, Epsilon: 1.22},
	},

	Ideal: helmholtz.Ideal{
		Power: []helmholtz.Term{
			{N: -17.583859885194016, T: 0},
			{N: 11.524417012948918, T: 1},
		},
		Planck: []helmholtz.Term{
			{N: 15.891, T: 1.3629717740936238},
			{N: 14.143, T: 8.609025351275},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          403.53, Y0: 2779000,
		Terms: []helmholtz.Term{
			{N: -8.2611, T: 1},
			{N: 3.9076, T: 1.5},
			{N: -3.9675, T: 1.88},
			{N: -6.1565, T: 4.47},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 403.53, Y0: 3129,
		Terms: []helmholtz.Term{
			{N: 2.1958, T: 0.347},
			{N: 6.4706, T: 1.42},
			{N: -13.191, T: 1.82},
			{N: 7.7906, T: 2.232},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          403.53, Y0: 3129,
		Terms: []helmholtz.Term{
			{N: -3.1511, T: 0.387},
			{N: -9.2173, T: 1.34},
			{N: -32.976, T: 3.77},
			{N: -86.791, T: 7.85},
		},
	},
}
