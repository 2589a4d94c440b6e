package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1336mzzZ is R-1336mzz(Z) (cis-1,1,1,4,4,4-hexafluoro-2-butene).
var r1336mzzZ = helmholtz.Fluid{
	Designation: "R-1336mzz(Z)",
	Source: `Mark O. McLinden and Ryo Akasaka, "Thermodynamic Properties of ` +
		`cis-1,1,1,4,4,4-Hexafluorobutene [R-1336mzz(Z)]: Vapor Pressure, (p, ρ, T) Behavior, ` +
		`and Speed of Sound Measurements and Equation of State", J. Chem. Eng. Data 65, 2020, ` +
		`pp. 4201-4214, doi:10.1021/acs.jced.9b01198`,
	MolarMass:   0.164056,
	GasConstant: 8.314462618,

	TripleT: 182.65,
	MaxT:    500,
	MaxP:    46e6,

	ReducingT:   444.5,
	ReducingRho: 3044,

	CriticalT:   444.5,
	CriticalP:   2903000,
	CriticalRho: 3044,

	Power: []helmholtz.Power{
		{N: 0.036673095, T: 1, D: 4},
		{N: 1.1956619, T: 0.26, D: 1},
		{N: -1.8462376, T: 1, D: 1},
		{N: -0.60599297, T: 1, D: 2},
		{N: 0.24973833, T: 0.515, D: 3},
		{N: -1.2548278, T: 2.6, D: 1, L: 2},
		{N: -1.4389612, T: 3, D: 3, L: 2},
		{N: 0.35168887, T: 0.74, D: 2, L: 1},
		{N: -0.82104051, T: 2.68, D: 2, L: 2},
		{N: -0.031747538, T: 0.96, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 1.0281388, T: 1.06, D: 1, Eta: 0.746, Beta: 1.118, Gamma: 0.962, Epsilon: 1.225},
		{N: 0.21094074, T: 3.4, D: 1, Eta: 2.406, Beta: 3.065, Gamma: 1.111, Epsilon: 0.161},
		{N: 0.701701, T: 1.617, D: 3, Eta: 0.7804, Beta: 0.7274, Gamma: 1.135, Epsilon: 1.231},
		{N: 0.24638528, T: 1.865, D: 2, Eta: 1.25, Beta: 0.8435, Gamma: 1.163, Epsilon: 1.395},
		{N: -1.5295034, T: 1.737, D: 3, Eta: 0.6826, Beta: 0.6754, Gamma: 0.969, Epsilon: 0.9072},
		{N: 0.33424978, T: 3.29, D: 2, Eta: 1.677, Beta: 0.436, Gamma: 1.286, Epsilon: 0.958},
		{N: 1.011324, T: 1.242, D: 2, Eta: 1.762, Beta: 3.808, Gamma: 1.274, Epsilon: 0.412},
		{N: -0.023457179, T: 2, D: 1, Eta: 21, Beta: 1888, Gamma: 1.056, Epsilon: 0.944},
	},

	Ideal: helmholtz.Ideal{
		Kelvins: []helmholtz.Term{
			{N: 20.2, T: 736},
			{N: 5.275, T: 2299},
		},
		LogTau: -1,
		Cp0: []helmholtz.Term{
			{N: 4, T: 0},
		},
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          444.5, Y0: 2903000,
		Terms: []helmholtz.Term{
			{N: -7.958, T: 1},
			{N: 1.9584, T: 1.5},
			{N: -2.5856, T: 2.37},
			{N: -4.0215, T: 4.43},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 444.5, Y0: 3044,
		Terms: []helmholtz.Term{
			{N: 2.1782, T: 0.35},
			{N: 0.68072, T: 0.878},
			{N: -0.17224, T: 1.58},
			{N: 0.39416, T: 2.34},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          444.5, Y0: 3044,
		Terms: []helmholtz.Term{
			{N: -2.0679, T: 0.334},
			{N: -4.8241, T: 0.85},
			{N: -12.118, T: 2.18},
			{N: -38.146, T: 4.7},
			{N: -75.603, T: 9},
		},
	},
}
