package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// rE170 is R-E170 (dimethyl ether).
var rE170 = helmholtz.Fluid{
	Designation: "R-E170",
	Source: `Jiangtao Wu, Yong Zhou and Eric W. Lemmon, "An Equation of State for the ` +
		`Thermodynamic Properties of Dimethyl Ether", J. Phys. Chem. Ref. Data 40, 2011, pp. ` +
		`023104-1:16, doi:10.1063/1.3582533`,
	MolarMass:   0.04606844,
	GasConstant: 8.314472,

	TripleT: 131.66,
	MaxT:    525,
	MaxP:    50e6,

	ReducingT:   400.378,
	ReducingRho: 5940,

	CriticalT:   400.378,
	CriticalP:   5336800,
	CriticalRho: 5940,

	Power: []helmholtz.Power{
		{N: 0.029814139, T: 1, D: 4},
		{N: 1.43517, T: 0.4366, D: 1},
		{N: -2.64964, T: 1.011, D: 1},
		{N: -0.29515532, T: 1.137, D: 2},
		{N: 0.17035607, T: 0.45, D: 3},
		{N: -0.94642918, T: 2.83, D: 1, L: 2},
		{N: -0.099250514, T: 1.5, D: 3, L: 2},
		{N: 1.1264071, T: 1.235, D: 2, L: 1},
		{N: -0.76936548, T: 2.675, D: 2, L: 2},
		{N: -0.020717696, T: 0.7272, D: 7, L: 1},
		{N: 0.24527037, T: 1.816, D: 1, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 1.1863438, T: 1.783, D: 1,
			Eta: 0.965336, Beta: 1.28719, Gamma: 1.27772, Epsilon: 0.672698},
		{N: -0.49398368, T: 3.779, D: 1,
			Eta: 1.50858, Beta: 0.806235, Gamma: 0.43075, Epsilon: 0.924246},
		{N: -0.16388716, T: 3.282, D: 3,
			Eta: 0.963855, Beta: 0.777942, Gamma: 0.429607, Epsilon: 0.750815},
		{N: -0.027583584, T: 1.059, D: 3,
			Eta: 9.72643, Beta: 197.681, Gamma: 1.13849, Epsilon: 0.800022},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 2.641, T: 0.901647942694154},
			{N: 2.123, T: 2.432701097462898},
			{N: 8.992, T: 4.785477723551244},
			{N: 6.191, T: 10.36520488138709},
		},
		LogTau: 3.039,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          400.378, Y0: 5336800,
		Terms: []helmholtz.Term{
			{N: -9.576458382440794, T: 1.026},
			{N: 3.8237850260211683, T: 1.188},
			{N: 2.3534240536183586, T: 7.78},
			{N: -2.349392868307698, T: 3.09},
			{N: -3.348742284357154, T: 6.356},
			{N: -1.2387250144815742, T: 12.704},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 400.378, Y0: 5940.000000000001,
		Terms: []helmholtz.Term{
			{N: 16.059795192018523, T: 0.572},
			{N: -14.738564267851407, T: 0.658},
			{N: -3.731150693384918, T: 0.713},
			{N: 5.144676895857624, T: 0.916},
			{N: 0.03490664751265221, T: 2.977},
			{N: 8.503244669132489, T: 19.393},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          400.378, Y0: 5940.000000000001,
		Terms: []helmholtz.Term{
			{N: -4.396808750959381, T: 0.499},
			{N: 0.11053731401780381, T: 0.75},
			{N: -2.8034901380765476, T: 2.338},
			{N: -577.5554786721015, T: 11.224},
			{N: 2817.238575530162, T: 12.48},
			{N: -2327.667386669654, T: 12.984},
		},
	},
}
