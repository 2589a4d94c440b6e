package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r717 is R-717 (ammonia).
var r717 = helmholtz.Fluid{
	Designation: "R-717",
	Source: `K. Gao, J. Wu, I. H. Bell and E. W. Lemmon, "Thermodynamic Properties of Ammonia ` +
		`for Temperatures from the Melting Line to 725 K and Pressures to 1000 MPa", J. Phys. ` +
		`Chem. Ref. Data, 2020`,
	MolarMass:   0.01703052,
	GasConstant: 8.3144598,

	TripleT: 195.49,
	MaxT:    725,
	MaxP:    1000e6,

	ReducingT:   405.56,
	ReducingRho: 13696,

	CriticalT:   405.56,
	CriticalP:   11363391.162815327,
	CriticalRho: 13696,

	Power: []helmholtz.Power{
		{N: 0.006132232, T: 1, D: 4},
		{N: 1.7395866, T: 0.382, D: 1},
		{N: -2.2261792, T: 1, D: 1},
		{N: -0.30127553, T: 1, D: 2},
		{N: 0.08967023, T: 0.677, D: 3},
		{N: -0.076387037, T: 2.915, D: 3, L: 2},
		{N: -0.84063963, T: 3.51, D: 2, L: 2},
		{N: -0.27026327, T: 1.063, D: 3, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 6.212578, T: 0.655, D: 1, Eta: 0.42776, Beta: 1.708, Gamma: 1.036, Epsilon: -0.0726},
		{N: -5.7844357, T: 1.3, D: 1, Eta: 0.6424, Beta: 1.4865, Gamma: 1.2777, Epsilon: -0.1274},
		{N: 2.4817542, T: 3.1, D: 1, Eta: 0.8175, Beta: 2.0915, Gamma: 1.083, Epsilon: 0.7527},
		{N: -2.3739168, T: 1.4395, D: 2, Eta: 0.7995, Beta: 2.43, Gamma: 1.2906, Epsilon: 0.57},
		{N: 0.01493697, T: 1.623, D: 2, Eta: 0.91, Beta: 0.488, Gamma: 0.928, Epsilon: 2.2},
		{N: -3.7749264, T: 0.643, D: 1, Eta: 0.3574, Beta: 1.1, Gamma: 0.934, Epsilon: -0.243},
		{N: 0.0006254348, T: 1.13, D: 3, Eta: 1.21, Beta: 0.85, Gamma: 0.919, Epsilon: 2.96},
		{N: -1.7359e-05, T: 4.5, D: 3, Eta: 4.14, Beta: 1.14, Gamma: 1.852, Epsilon: 3.02},
		{N: -0.13462033, T: 1, D: 1, Eta: 22.56, Beta: 945.64, Gamma: 1.05897, Epsilon: 0.9574},
		{N: 0.07749072839, T: 4, D: 1, Eta: 22.68, Beta: 993.85, Gamma: 1.05277, Epsilon: 0.9576},
	},
	GaoB: []helmholtz.GaoB{
		{N: -1.6909858, T: 4.3315, D: 1,
			Eta: -2.8452, Beta: 0.3696, Gamma: 1.108, Epsilon: 0.4478, B: 1.244},
		{N: 0.93739074, T: 4.015, D: 1,
			Eta: -2.8342, Beta: 0.2962, Gamma: 1.313, Epsilon: 0.44689, B: 0.6826},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 2.224, T: 4.0585856593352405},
			{N: 3.148, T: 9.776605187888352},
			{N: 0.9579, T: 17.829667620080876},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          405.56, Y0: 11365000,
		Terms: []helmholtz.Term{
			{N: -7.2257, T: 1},
			{N: 1.4263, T: 1.5},
			{N: -0.59642, T: 2},
			{N: -2.798, T: 3.6},
			{N: -3.7869, T: 15.5},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 405.56, Y0: 13696,
		Terms: []helmholtz.Term{
			{N: 2.447, T: 0.384},
			{N: 5.8341, T: 1.65},
			{N: -25.944, T: 2.2},
			{N: 53.383, T: 2.75},
			{N: -54.411, T: 3.35},
			{N: 22.771, T: 4},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          405.56, Y0: 13696,
		Terms: []helmholtz.Term{
			{N: -0.053296, T: 0.14},
			{N: -3.4589, T: 0.44},
			{N: -6.7572, T: 1.314},
			{N: -17.26, T: 3.225},
			{N: -43.12, T: 6.4},
			{N: -115.18, T: 14},
		},
	},
}
