package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r600 is R-600 (butane).
var r600 = helmholtz.Fluid{
	Designation: "R-600",
	Source: `D. Buecker and W. Wagner, "Reference Equations of State for the Thermodynamic ` +
		`Properties of Fluid Phase n-Butane and Isobutane", J. Phys. Chem. Ref. Data 35, 2006, ` +
		`pp. 929-1019, doi:10.1063/1.1901687`,
	MolarMass:   0.0581222,
	GasConstant: 8.314472,

	TripleT: 134.895,
	MaxT:    575,
	MaxP:    12e6,

	ReducingT:   425.125,
	ReducingRho: 3922.769612987809,

	CriticalT:   425.125,
	CriticalP:   3796000,
	CriticalRho: 3922.769612987809,

	Power: []helmholtz.Power{
		{N: 2.5536998241635, T: 0.5, D: 1},
		{N: -4.4585951806696, T: 1, D: 1},
		{N: 0.82425886369063, T: 1.5, D: 1},
		{N: 0.11215007011442, T: 0, D: 2},
		{N: -0.035910933680333, T: 0.5, D: 3},
		{N: 0.016790508518103, T: 0.5, D: 4},
		{N: 0.032734072508724, T: 0.75, D: 4},
		{N: 0.95571232982005, T: 2, D: 1, L: 1},
		{N: -1.0003385753419, T: 2.5, D: 1, L: 1},
		{N: 0.085581548803855, T: 2.5, D: 2, L: 1},
		{N: -0.025147918369616, T: 1.5, D: 7, L: 1},
		{N: -0.0015202958578918, T: 1, D: 8, L: 1},
		{N: 0.004706068232642, T: 1.5, D: 8, L: 1},
		{N: -0.097845414174006, T: 4, D: 1, L: 2},
		{N: -0.04831790415876, T: 7, D: 2, L: 2},
		{N: 0.17841271865468, T: 3, D: 3, L: 2},
		{N: 0.018173836739334, T: 7, D: 3, L: 2},
		{N: -0.11399068074953, T: 3, D: 4, L: 2},
		{N: 0.019329896666669, T: 1, D: 5, L: 2},
		{N: 0.001157587740101, T: 6, D: 5, L: 2},
		{N: 0.00015253808698116, T: 0, D: 10, L: 2},
		{N: -0.043688558458471, T: 6, D: 2, L: 3},
		{N: -0.0082403190629989, T: 13, D: 6, L: 3},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: -0.028390056949441, T: 2, D: 1, Eta: 10, Beta: 150, Gamma: 1.16, Epsilon: 0.85},
		{N: 0.0014904666224681, T: 0, D: 2, Eta: 10, Beta: 200, Gamma: 1.13, Epsilon: 1},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 5.54913289, T: 0.774840445},
			{N: 11.4648996, T: 3.340602552},
			{N: 7.59987584, T: 4.970513096},
			{N: 9.66033239, T: 9.975553778},
		},
		LogTau: 3.24680487,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          425.125, Y0: 3796000,
		Terms: []helmholtz.Term{
			{N: 0.06986482880463143, T: 0.743},
			{N: -6.689091326409199, T: 0.984},
			{N: 4.774874567188075, T: 1.886},
			{N: -5.7054710938841655, T: 2.16},
			{N: 1.8437119133933968, T: 3.286},
			{N: -3.735372218319482, T: 4.231},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 425.125, Y0: 3922.7696129878086,
		Terms: []helmholtz.Term{
			{N: 7.6544950329552, T: 0.501},
			{N: -16.928503641708495, T: 0.742},
			{N: 14.176327512939299, T: 0.917},
			{N: -2.3511736019127136, T: 1.387},
			{N: 5.431931351600508, T: 9.328},
			{N: -13.286388570143172, T: 12.623},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          425.125, Y0: 3922.7696129878086,
		Terms: []helmholtz.Term{
			{N: -3.756767939636941, T: 0.448},
			{N: -2.819084986331516, T: 1.717},
			{N: 2.3817493893256763, T: 4.443},
			{N: -27.835034497609627, T: 7.472},
			{N: 409.95394459399324, T: 13.095},
			{N: -539.2138907428523, T: 14.725},
		},
	},
}
