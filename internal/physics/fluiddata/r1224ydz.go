package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1224ydZ is R-1224yd(Z) (cis-1-chloro-2,3,3,3-tetrafluoropropene).
var r1224ydZ = helmholtz.Fluid{
	Designation: "R-1224yd(Z)",
	Source: `Ryo Akasaka and Eric W. Lemmon, "A Helmholtz Energy Equation of State for ` +
		`cis-1-Chloro-2,3,3,3-tetrafluoro-1-propene [R-1224yd(Z)]", International Journal of ` +
		`Thermophysics 44, 2023, doi:10.1007/s10765-023-03266-3`,
	MolarMass:   0.14848670000000003,
	GasConstant: 8.314462618,

	TripleT: 157.8,
	MaxT:    473.15,
	MaxP:    35200000,

	ReducingT:   428.69,
	ReducingRho: 3632,

	CriticalT:   428.69,
	CriticalP:   3334000,
	CriticalRho: 3632,

	Power: []helmholtz.Power{
		{N: 0.05515868, T: 1, D: 4},
		{N: 1.9416962, T: 0.226, D: 1},
		{N: -2.2385064629867, T: 0.661, D: 1},
		{N: -0.8414463720438, T: 1.128, D: 2},
		{N: 0.22459576, T: 0.51, D: 3},
		{N: -1.6513724, T: 1.98, D: 1, L: 2},
		{N: -0.022916841, T: 8.5, D: 1, L: 3},
		{N: -1.588437, T: 2.27, D: 3, L: 2},
		{N: 0.56220803, T: 0.89, D: 2, L: 1},
		{N: -0.67885338, T: 2.78, D: 2, L: 2},
		{N: -0.027421084, T: 1, D: 7, L: 1},
		{N: -0.021429988, T: 6.36, D: 2, L: 3},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.26924542, T: 4.5, D: 2, Eta: 23.96, Beta: 1028, Gamma: 1.06, Epsilon: 0.9578},
		{N: -0.33022951, T: 2.84, D: 2, Eta: 23.81, Beta: 1014, Gamma: 1.062, Epsilon: 0.9577},
		{N: 2.2799188, T: 1.15, D: 1, Eta: 1.327, Beta: 1.23, Gamma: 1.296, Epsilon: 0.8713},
		{N: -0.42644754, T: 1.25, D: 1, Eta: 1.941, Beta: 1.146, Gamma: 1.245, Epsilon: 1.183},
		{N: -0.38611218, T: 2.32, D: 1, Eta: 1.516, Beta: 0.803, Gamma: 1, Epsilon: 1.25},
		{N: 0.13232403, T: 3.5, D: 1, Eta: 1.7, Beta: 0.83, Gamma: 1.45, Epsilon: 1.19},
		{N: -0.33124629, T: 1.06, D: 1, Eta: 2.23, Beta: 1.21, Gamma: 1.215, Epsilon: 0.842},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 9.057, T: 1.1920035456856937},
			{N: 11.91, T: 3.324080337773216},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          428.69, Y0: 3334000,
		Terms: []helmholtz.Term{
			{N: -7.5763, T: 1},
			{N: 1.5053, T: 1.5},
			{N: -3.7306, T: 2.95},
			{N: -2.7425, T: 5.8},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 428.69, Y0: 3632,
		Terms: []helmholtz.Term{
			{N: 3.7298, T: 0.293},
			{N: -2.6186, T: 0.332},
			{N: 5.9922, T: 1.09},
			{N: -10.25, T: 1.55},
			{N: 6.1004, T: 1.9},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          428.69, Y0: 3632,
		Terms: []helmholtz.Term{
			{N: -1.1894, T: 0.23},
			{N: -6.3255, T: 0.824},
			{N: -18.408, T: 2.72},
			{N: -53.621, T: 6},
			{N: -135.5, T: 13},
		},
	},
}
