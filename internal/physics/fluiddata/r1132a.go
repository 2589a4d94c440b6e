package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1132a is R-1132a (1,1-difluoroethene).
var r1132a = helmholtz.Fluid{
	Designation: "R-1132a",
	Source: `Ryo Akasaka, Robert E. Low and Eric W. Lemmon, "A Fundamental Equation of State for ` +
		`1,1-Difluoroethene (R-1132a)", International Journal of Thermophysics 47, 2026, pp. ` +
		`128, doi:10.1007/s10765-026-03794-8`,
	MolarMass:   0.0640340864,
	GasConstant: 8.314462618,

	TripleT: 111,
	MaxT:    400,
	MaxP:    30e6,

	ReducingT:   302.62,
	ReducingRho: 6510,

	CriticalT:   302.62,
	CriticalP:   4460494.408005374,
	CriticalRho: 6510,

	Power: []helmholtz.Power{
		{N: 0.0313181, T: 1, D: 4},
		{N: 0.7213967, T: 0.143, D: 1},
		{N: 0.1902012, T: 0.336, D: 2},
		{N: 0.0562612, T: 0.13, D: 3},
		{N: -0.46220008385, T: 1, D: 1},
		{N: -0.81782202222, T: 1.06, D: 2},
	},
	Exponential: []helmholtz.Exponential{
		{N: -0.7436092, T: 1.29, D: 1, L: 1, G: 1.147},
		{N: -0.26903, T: 0.95, D: 1, L: 2, G: 0.9776},
		{N: -0.0883704, T: 5.738, D: 1, L: 3, G: 0.6937},
		{N: -0.0486345, T: 3.74, D: 2, L: 3, G: 0.389},
		{N: -0.0173098, T: 3.92, D: 3, L: 3, G: 0.373},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: -0.212, T: 1.17, D: 1, Eta: 0.53, Beta: 0, Gamma: 1, Epsilon: 0.99},
		{N: -0.01, T: 1.2, D: 2, Eta: 0.3, Beta: 0, Gamma: 1, Epsilon: 0.6},
		{N: -0.03, T: 1.1, D: 1, Eta: 0.552, Beta: 0, Gamma: 1, Epsilon: 0.2},
		{N: -0.3435674, T: 1.45, D: 1, Eta: 1.154, Beta: 2.27, Gamma: 1.35, Epsilon: -0.3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 2.38, T: 2.1479082677945938},
			{N: 9.45, T: 5.287158813032846},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          302.62, Y0: 4460490,
		Terms: []helmholtz.Term{
			{N: -7.1905, T: 1},
			{N: 4.2052, T: 1.5},
			{N: -3.7118, T: 1.8},
			{N: -10.196, T: 5.7},
			{N: 8.2891, T: 6.2},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 302.62, Y0: 6510,
		Terms: []helmholtz.Term{
			{N: 13.078, T: 0.56},
			{N: -27.352, T: 0.77},
			{N: 50.703, T: 1.14},
			{N: -58.059, T: 1.41},
			{N: 24.547, T: 1.63},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          302.62, Y0: 6510,
		Terms: []helmholtz.Term{
			{N: -3.7298, T: 0.45},
			{N: -8.6869, T: 1.63},
			{N: -21.676, T: 4},
			{N: -49.333, T: 7.78},
			{N: -214.2, T: 18.3},
		},
	},
}
