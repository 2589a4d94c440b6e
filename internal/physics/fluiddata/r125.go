package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r125 is R-125 (pentafluoroethane).
var r125 = helmholtz.Fluid{
	Designation: "R-125",
	Source: `Eric W. Lemmon and Richard T Jacobsen, "A New Functional Form and New Fitting ` +
		`Techniques for Equations of State with Application to Pentafluoroethane (HFC-125)", J. ` +
		`Phys. Chem. Ref. Data 34, 2005, pp. 69-108, doi:10.1063/1.1797813`,
	MolarMass:   0.1200214,
	GasConstant: 8.314472,

	TripleT: 172.52,
	MaxT:    500,
	MaxP:    60e6,

	ReducingT:   339.173,
	ReducingRho: 4779,

	CriticalT:   339.173,
	CriticalP:   3617700,
	CriticalRho: 4779,

	Damped: []helmholtz.Damped{
		{N: 5.28076, T: 0.669, D: 1},
		{N: -8.67658, T: 1.05, D: 1},
		{N: 0.7501127, T: 2.75, D: 1},
		{N: 0.7590023, T: 0.956, D: 2},
		{N: 0.01451899, T: 1, D: 4},
		{N: 4.777189, T: 2, D: 1, L: 1},
		{N: -3.330988, T: 2.75, D: 1, L: 1},
		{N: 3.775673, T: 2.38, D: 2, L: 1},
		{N: -2.290919, T: 3.37, D: 2, L: 1},
		{N: 0.8888268, T: 3.47, D: 3, L: 1},
		{N: -0.6234864, T: 2.63, D: 4, L: 1},
		{N: -0.04127263, T: 3.45, D: 5, L: 1},
		{N: -0.08455389, T: 0.72, D: 1, L: 2},
		{N: -0.1308752, T: 4.23, D: 5, L: 2},
		{N: 0.008344962, T: 0.2, D: 1, L: 3},
		{N: -1.532005, T: 4.5, D: 2, L: 2, M: 1.7},
		{N: -0.05883649, T: 29, D: 3, L: 3, M: 7},
		{N: 0.02296658, T: 24, D: 5, L: 3, M: 6},
	},

	Ideal: helmholtz.Ideal{
		Power: []helmholtz.Term{
			{N: -49.8651, T: -0.1},
		},
		Planck: []helmholtz.Term{
			{N: 2.303, T: 0.92578},
			{N: 5.086, T: 2.22895},
			{N: 7.3, T: 5.03283},
		},
		LogTau: -1,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          339.173, Y0: 3617700,
		Terms: []helmholtz.Term{
			{N: 6.579940225415354, T: 0.885},
			{N: -13.12524401279829, T: 0.925},
			{N: -10.469172276861269, T: 3.474},
			{N: 13.618968108873503, T: 3.812},
			{N: -8.0692357647322, T: 4.411},
			{N: 55.965891794172045, T: 15.538},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 339.173, Y0: 4779,
		Terms: []helmholtz.Term{
			{N: 2.2016016101218163, T: 0.356},
			{N: 9.66884730895765, T: 2.347},
			{N: -38.74092529625786, T: 3.224},
			{N: 45.90185095955414, T: 4.03},
			{N: -68.77471029167359, T: 7.525},
			{N: 3782.012676140688, T: 16.03},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          339.173, Y0: 4779,
		Terms: []helmholtz.Term{
			{N: -2.0301408267555248, T: 0.352},
			{N: -1.7694859385413004, T: 0.604},
			{N: -2.66520428063493, T: 1.327},
			{N: -2012.3802928260302, T: 9.866},
			{N: 4435.166819598504, T: 10.986},
			{N: -67300.56720486972, T: 18.158},
		},
	},
}
