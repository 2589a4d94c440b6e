package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r601 is R-601 (pentane).
var r601 = helmholtz.Fluid{
	Designation: "R-601",
	Source: `M. Thol, T. Uhde, E.W. Lemmon and R. Span, "Fundamental Equations of State for ` +
		`Hydrocarbons. Part I. n-Pentane", Fluid Phase Equilib., 2019`,
	MolarMass:   0.07214878,
	GasConstant: 8.3144598,

	TripleT: 143.47,
	MaxT:    650,
	MaxP:    780e6,

	ReducingT:   469.7,
	ReducingRho: 3210,

	CriticalT:   469.7,
	CriticalP:   3367518.9947363394,
	CriticalRho: 3215.5775884221466,

	Power: []helmholtz.Power{
		{N: 0.042952795, T: 1, D: 4},
		{N: 2.4923999, T: 0.367, D: 1},
		{N: -2.603872, T: 0.704, D: 1},
		{N: -0.83829913, T: 1.04, D: 2},
		{N: 0.19223378, T: 0.494, D: 3},
		{N: -3.0778196, T: 1.34, D: 1, L: 2},
		{N: -0.000324816, T: 0.688, D: 1, L: 3},
		{N: -1.6781976, T: 1.688, D: 3, L: 2},
		{N: 0.6416425, T: 0.88, D: 2, L: 1},
		{N: -1.7300934, T: 1.357, D: 2, L: 2},
		{N: -0.017585046, T: 1.021, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 4.5708883, T: 0.979, D: 1, Eta: 1.01, Beta: 0.583, Gamma: 1.06, Epsilon: 0.927},
		{N: -0.0758188, T: 2.966, D: 1, Eta: 4.77, Beta: 31.6, Gamma: 1.37, Epsilon: 0.968},
		{N: -0.62122633, T: 1.35, D: 3, Eta: 1.13, Beta: 0.52, Gamma: 1.09, Epsilon: 0.735},
		{N: -0.42413043, T: 0.664, D: 2, Eta: 1.08, Beta: 0.654, Gamma: 1.19, Epsilon: 1.196},
		{N: -2.0418443, T: 0.937, D: 2, Eta: 1.12, Beta: 0.75, Gamma: 0.83, Epsilon: 0.617},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 6.618, T: 0.3278688524590164},
			{N: 15.97, T: 2.8188205237385566},
			{N: 15.29, T: 5.607834788162657},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          469.7, Y0: 3367500,
		Terms: []helmholtz.Term{
			{N: -7.3342, T: 1},
			{N: 2.043, T: 1.5},
			{N: -2.196, T: 2.26},
			{N: -6.3246, T: 5.5},
			{N: 5.429, T: 7.1},
			{N: -2.821, T: 11},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 469.7, Y0: 3210,
		Terms: []helmholtz.Term{
			{N: 3.5771, T: 0.43},
			{N: -4.653, T: 0.83},
			{N: 8.517, T: 1.25},
			{N: -7.831, T: 1.72},
			{N: 3.3029, T: 2.24},
			{N: 0.5782, T: 17.5},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          469.7, Y0: 3210,
		Terms: []helmholtz.Term{
			{N: -3.5333, T: 0.428},
			{N: -8.4246, T: 1.484},
			{N: -25.474, T: 3.87},
			{N: -57.24, T: 7.86},
			{N: -34.6, T: 15.98},
			{N: -111.9, T: 17.33},
		},
	},
}
