package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r143a is R-143a (1,1,1-trifluoroethane).
var r143a = helmholtz.Fluid{
	Designation: "R-143a",
	Source: `Eric W. Lemmon and Richard T. Jacobsen, "An International Standard Formulation for ` +
		`the Thermodynamic Properties of 1,1,1-Trifluoroethane (HFC-143a) for Temperatures From ` +
		`161 to 450 K and Pressures to 50 MPa", J. Phys. Chem. Ref. Data 29, 2000, pp. 521-552, ` +
		`doi:10.1063/1.1318909`,
	MolarMass:   0.08404099999999999,
	GasConstant: 8.314472,

	TripleT: 161.34,
	MaxT:    650,
	MaxP:    150e6,

	ReducingT:   345.857,
	ReducingRho: 5128.45,

	CriticalT:   345.857,
	CriticalP:   3761000,
	CriticalRho: 5128.45,

	Power: []helmholtz.Power{
		{N: 7.7736443, T: 0.67, D: 1},
		{N: -8.70185, T: 0.833, D: 1},
		{N: -0.27779799, T: 1.7, D: 1},
		{N: 0.1460922, T: 1.82, D: 2},
		{N: 0.0089581616, T: 0.35, D: 5},
		{N: -0.20552116, T: 3.9, D: 1, L: 1},
		{N: 0.10653258, T: 0.95, D: 3, L: 1},
		{N: 0.023270816, T: 0, D: 5, L: 1},
		{N: -0.013247542, T: 1.19, D: 7, L: 1},
		{N: -0.04279387, T: 7.2, D: 1, L: 2},
		{N: 0.36221685, T: 5.9, D: 2, L: 2},
		{N: -0.25671899, T: 7.65, D: 2, L: 2},
		{N: -0.092326113, T: 7.5, D: 3, L: 2},
		{N: 0.083774837, T: 7.45, D: 4, L: 2},
		{N: 0.017128445, T: 15.5, D: 2, L: 3},
		{N: -0.01725611, T: 22, D: 3, L: 3},
		{N: 0.0049080492, T: 19, D: 5, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 4.4402, T: 5.178440800677737},
			{N: 3.7515, T: 2.379596191489546},
		},
		LogTau: -1,
		Cp0: []helmholtz.Term{
			{N: 1.0578, T: 0.33},
		},
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          345.857, Y0: 3761000,
		Terms: []helmholtz.Term{
			{N: 0.002757544974908688, T: 0.286},
			{N: 0.38770586469190393, T: 0.768},
			{N: -6.752272877216631, T: 0.952},
			{N: -0.5997730155885828, T: 2.711},
			{N: -3.2285390578912927, T: 4.226},
			{N: 91.83265252025414, T: 18.933},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 345.857, Y0: 5128.45,
		Terms: []helmholtz.Term{
			{N: 2.664780959919923, T: 0.381},
			{N: -0.254772168947589, T: 0.463},
			{N: 97.84474908938734, T: 3.927},
			{N: -105.1304757408368, T: 4.049},
			{N: 13272.94203979726, T: 16.046},
			{N: -116968.31229953805, T: 19.95},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          345.857, Y0: 5128.45,
		Terms: []helmholtz.Term{
			{N: -6.218069939810391, T: 0.454},
			{N: 4.25938169894919, T: 0.587},
			{N: -4.417810181991655, T: 1.058},
			{N: 23.70234830311772, T: 3.611},
			{N: -50.98632502013336, T: 4.279},
			{N: 29.108143754921628, T: 5.478},
		},
	},
}
