package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1233zdE is R-1233zd(E) (trans-1-chloro-3,3,3-trifluoropropene).
var r1233zdE = helmholtz.Fluid{
	Designation: "R-1233zd(E)",
	Source: `Ryo Akasaka and Eric W. Lemmon, "An International Standard Formulation for ` +
		`trans-1-Chloro-3,3,3-trifluoroprop-1-ene [R1233zd(E)] Covering Temperatures from the ` +
		`Triple-point Temperature to 450 K and Pressures up to 100 MPa", J. Phys. Chem. Ref. ` +
		`Data 51, 2022, pp. 023101, doi:10.1063/5.0083026`,
	MolarMass:   0.1304962,
	GasConstant: 8.314462618,

	TripleT: 165.75,
	MaxT:    450,
	MaxP:    100e6,

	ReducingT:   438.86,
	ReducingRho: 3704,

	CriticalT:   438.86,
	CriticalP:   3582800,
	CriticalRho: 3704,

	Power: []helmholtz.Power{
		{N: 0.04394257, T: 1, D: 4},
		{N: 1.062919, T: 0.182, D: 1},
		{N: -1.2879140374971, T: 0.865, D: 1},
		{N: -0.8088618920845, T: 1.0924, D: 2},
		{N: 0.2372427, T: 0.49, D: 3},
		{N: -1.9403, T: 1.958, D: 1, L: 2},
		{N: -2.831967, T: 2.05, D: 3, L: 2},
		{N: 0.373421, T: 0.658, D: 2, L: 1},
		{N: -1.515798, T: 2.051, D: 2, L: 2},
		{N: -0.02755627, T: 0.862, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 4.24023, T: 1.852, D: 1, Eta: 1.532, Beta: 0.2912, Gamma: 1.7171, Epsilon: 0.8834},
		{N: -0.03152671, T: 1.92, D: 2, Eta: 0.635, Beta: 0.6245, Gamma: 0.63, Epsilon: 1.386},
		{N: -1.366494, T: 1.936, D: 3, Eta: 1.4056, Beta: 0.669, Gamma: 0.7852, Epsilon: 0.5196},
		{N: 2.647143, T: 1.515, D: 1, Eta: 1.451, Beta: 0.5798, Gamma: 2.251, Epsilon: 1.133},
		{N: -2.325463, T: 2.668, D: 1, Eta: 1.395, Beta: 0.4643, Gamma: 1.821, Epsilon: 0.9788},
		{N: -0.2541521, T: 1.755, D: 1, Eta: 2.259, Beta: 2.449, Gamma: 2.074, Epsilon: 1.166},
		{N: 0.1330834, T: 0.526, D: 1, Eta: 24.3, Beta: 1061.4, Gamma: 1.0797, Epsilon: 0.9244},
		{N: -0.1569217, T: 2.98, D: 1, Eta: 23.6, Beta: 917.8, Gamma: 1.084, Epsilon: 0.9372},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 13.7, T: 1.7340381898555348},
			{N: 7.0974, T: 6.539670965683817},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          438.86, Y0: 3582800,
		Terms: []helmholtz.Term{
			{N: -7.4798, T: 1},
			{N: 1.5791, T: 1.5},
			{N: -1.7959, T: 2.39},
			{N: -3.6716, T: 4.53},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 438.86, Y0: 3704,
		Terms: []helmholtz.Term{
			{N: 0.61448, T: 0.22},
			{N: 2.6345, T: 0.55},
			{N: -1.316, T: 0.94},
			{N: 0.86885, T: 1.4},
			{N: 0.34071, T: 6.8},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          438.86, Y0: 3704,
		Terms: []helmholtz.Term{
			{N: -0.80785, T: 0.24},
			{N: -3.2355, T: 0.59},
			{N: -2.7567, T: 1},
			{N: -10.863, T: 2.2},
			{N: -33.456, T: 4.7},
			{N: -69.31, T: 9},
		},
	},
}
