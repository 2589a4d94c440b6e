package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1270 is R-1270 (propene).
var r1270 = helmholtz.Fluid{
	Designation: "R-1270",
	Source: `E.W. Lemmon, U. Overhoff, M.O. McLinden and W. Wagner, "Equation of state for ` +
		`propylene", unpublished, 2010`,
	MolarMass:   0.04207974,
	GasConstant: 8.314472,

	TripleT: 87.953,
	MaxT:    575,
	MaxP:    1000e6,

	ReducingT:   364.211,
	ReducingRho: 5457,

	CriticalT:   364.211,
	CriticalP:   4555000,
	CriticalRho: 5457,

	Power: []helmholtz.Power{
		{N: 0.04341002, T: 1, D: 4},
		{N: 1.136592, T: 0.205, D: 1},
		{N: -0.8528611, T: 0.56, D: 1},
		{N: 0.5216669, T: 0.676, D: 2},
		{N: -1.382953, T: 1, D: 2},
		{N: 0.1214347, T: 0.5, D: 3},
		{N: -0.5984662, T: 1, D: 1, L: 1},
		{N: -1.391883, T: 1.94, D: 1, L: 2},
		{N: -1.008434, T: 2, D: 3, L: 2},
		{N: 0.1961249, T: 1, D: 2, L: 1},
		{N: -0.360693, T: 2.66, D: 2, L: 2},
		{N: -0.002407175, T: 0.83, D: 8, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.7432121, T: 1.6, D: 1, Eta: 1.07, Beta: 0.77, Gamma: 1.21, Epsilon: 0.78},
		{N: 0.1475162, T: 2.5, D: 1, Eta: 0.66, Beta: 0.83, Gamma: 1.08, Epsilon: 0.82},
		{N: -0.02503391, T: 3, D: 2, Eta: 1.2, Beta: 0.607, Gamma: 0.83, Epsilon: 1.94},
		{N: -0.2734409, T: 2.5, D: 3, Eta: 1.12, Beta: 0.4, Gamma: 0.56, Epsilon: 0.69},
		{N: 0.006378889, T: 2.72, D: 3, Eta: 1.47, Beta: 0.66, Gamma: 1.22, Epsilon: 1.96},
		{N: 0.0150294, T: 4, D: 2, Eta: 1.93, Beta: 0.07, Gamma: 1.81, Epsilon: 1.3},
		{N: -0.03162971, T: 4, D: 1, Eta: 3.3, Beta: 3.1, Gamma: 1.54, Epsilon: 0.38},
		{N: -0.04107194, T: 1, D: 2, Eta: 15.4, Beta: 387, Gamma: 1.12, Epsilon: 0.91},
		{N: -1.190241, T: 4, D: 3, Eta: 6, Beta: 41, Gamma: 1.4, Epsilon: 0.7},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 1.544, T: 0.8895942187358427},
			{N: 4.013, T: 2.671528317376466},
			{N: 8.923, T: 5.304617378387802},
			{N: 6.02, T: 11.85301926630442},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          364.211, Y0: 4555000,
		Terms: []helmholtz.Term{
			{N: -6.15754746767542, T: 0.985},
			{N: 0.8043847738472081, T: 1.914},
			{N: -2.629218877933464, T: 3.354},
			{N: -20.055797246021456, T: 8.871},
			{N: 23.93889034404838, T: 9.472},
			{N: -5.927221357425409, T: 12.201},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 364.211, Y0: 5457,
		Terms: []helmholtz.Term{
			{N: 1.1500616940414559, T: 0.286},
			{N: 0.7037673936905474, T: 0.521},
			{N: 0.6950815609799416, T: 0.701},
			{N: 1.8850870474961088, T: 5.657},
			{N: -2.1702211585216302, T: 6.864},
			{N: 2.21238242151199, T: 15.279},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          364.211, Y0: 5457,
		Terms: []helmholtz.Term{
			{N: -5.13562614673855, T: 0.42},
			{N: 4.2053374767917395, T: 0.56},
			{N: -8.021462611933476, T: 1.051},
			{N: 4.971018368148577, T: 1.479},
			{N: -4.664302402572978, T: 3.598},
			{N: -1.7964631156271889, T: 16.862},
		},
	},
}
