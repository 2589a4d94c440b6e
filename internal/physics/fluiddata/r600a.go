package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r600a is R-600a (isobutane).
var r600a = helmholtz.Fluid{
	Designation: "R-600a",
	Source: `D. Buecker and W. Wagner, "Reference Equations of State for the Thermodynamic ` +
		`Properties of Fluid Phase n-Butane and Isobutane", J. Phys. Chem. Ref. Data 35, 2006, ` +
		`pp. 929-1019, doi:10.1063/1.1901687`,
	MolarMass:   0.0581222,
	GasConstant: 8.314472,

	TripleT: 113.73,
	MaxT:    575,
	MaxP:    35e6,

	ReducingT:   407.81,
	ReducingRho: 3879.756788283995,

	CriticalT:   407.817,
	CriticalP:   3629000,
	CriticalRho: 3879.756788283995,

	Power: []helmholtz.Power{
		{N: 2.0686820727966, T: 0.5, D: 1},
		{N: -3.6400098615204, T: 1, D: 1},
		{N: 0.51968754427244, T: 1.5, D: 1},
		{N: 0.17745845870123, T: 0, D: 2},
		{N: -0.12361807851599, T: 0.5, D: 3},
		{N: 0.045145314010528, T: 0.5, D: 4},
		{N: 0.03047647996598, T: 0.75, D: 4},
		{N: 0.75508387706302, T: 2, D: 1, L: 1},
		{N: -0.85885381015629, T: 2.5, D: 1, L: 1},
		{N: 0.036324009830684, T: 2.5, D: 2, L: 1},
		{N: -0.01954879945055, T: 1.5, D: 7, L: 1},
		{N: -0.004445239290496, T: 1, D: 8, L: 1},
		{N: 0.004641076366646, T: 1.5, D: 8, L: 1},
		{N: -0.071444097992825, T: 4, D: 1, L: 2},
		{N: -0.080765060030713, T: 7, D: 2, L: 2},
		{N: 0.15560460945053, T: 3, D: 3, L: 2},
		{N: 0.0020318752160332, T: 7, D: 3, L: 2},
		{N: -0.10624883571689, T: 3, D: 4, L: 2},
		{N: 0.039807690546305, T: 1, D: 5, L: 2},
		{N: 0.016371431292386, T: 6, D: 5, L: 2},
		{N: 0.00053212200682628, T: 0, D: 10, L: 2},
		{N: -0.0078681561156387, T: 6, D: 2, L: 3},
		{N: -0.0030981191888963, T: 13, D: 6, L: 3},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: -0.042276036810382, T: 2, D: 1, Eta: 10, Beta: 150, Gamma: 1.16, Epsilon: 0.85},
		{N: -0.0053001044558079, T: 0, D: 2, Eta: 10, Beta: 200, Gamma: 1.13, Epsilon: 1},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 4.94641014, T: 0.951277902},
			{N: 4.09475197, T: 2.387895885},
			{N: 15.6632824, T: 4.346904269},
			{N: 9.73918122, T: 10.36885864},
		},
		LogTau: 3.05956619,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          407.817, Y0: 3629000,
		Terms: []helmholtz.Term{
			{N: -48.02915589537987, T: 1.082},
			{N: 43.34653680580028, T: 1.108},
			{N: -1.4421317283854331, T: 1.463},
			{N: -3.1322275225078413, T: 4.045},
			{N: 5.203481182010376, T: 13.157},
			{N: -6.173022897817098, T: 14.042},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 407.817, Y0: 3879.756788283995,
		Terms: []helmholtz.Term{
			{N: 2.0418147224188545, T: 0.356},
			{N: 0.4363922893974425, T: 0.824},
			{N: 1.915261424521202, T: 3.142},
			{N: -2.1807762762122045, T: 3.696},
			{N: 1.068664850362356, T: 6.863},
			{N: -6.816247938174933, T: 18.441},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          407.817, Y0: 3879.756788283995,
		Terms: []helmholtz.Term{
			{N: -2.8656855559386294, T: 0.37},
			{N: 0.7330458189287201, T: 0.502},
			{N: -4.254613288675131, T: 1.021},
			{N: 2.9956235180226516, T: 2.003},
			{N: -5.671641417558254, T: 3.403},
			{N: 0.14361022568133902, T: 10.717},
		},
	},
}
