package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r142b is R-142b (1-chloro-1,1-difluoroethane).
var r142b = helmholtz.Fluid{
	Designation: "R-142b",
	Source: `E.W. Lemmon and R. Span, "Short Fundamental Equations of State for 20 Industrial ` +
		`Fluids", J. Chem. Eng. Data 51, 2006, pp. 785-850, doi:10.1021/je050186n`,
	MolarMass:   0.10049503,
	GasConstant: 8.314472,

	TripleT: 142.72,
	MaxT:    470,
	MaxP:    60e6,

	ReducingT:   410.26,
	ReducingRho: 4438,

	CriticalT:   410.26,
	CriticalP:   4055000,
	CriticalRho: 4438,

	Power: []helmholtz.Power{
		{N: 1.0038, T: 0.25, D: 1},
		{N: -2.7662, T: 1.25, D: 1},
		{N: 0.42921, T: 1.5, D: 1},
		{N: 0.081363, T: 0.25, D: 3},
		{N: 0.00024174, T: 0.875, D: 7},
		{N: 0.48246, T: 2.375, D: 1, L: 1},
		{N: 0.75542, T: 2, D: 2, L: 1},
		{N: -0.00743, T: 2.125, D: 5, L: 1},
		{N: -0.4146, T: 3.5, D: 1, L: 2},
		{N: -0.016558, T: 6.5, D: 1, L: 2},
		{N: -0.10644, T: 4.75, D: 4, L: 2},
		{N: -0.021704, T: 12.5, D: 2, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 5.0385, T: 1.152927411885146},
			{N: 6.8356, T: 3.061473212109394},
			{N: 4.0591, T: 6.086384244137864},
			{N: 2.8136, T: 16.67235411690148},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          410.26, Y0: 4055000,
		Terms: []helmholtz.Term{
			{N: -7.053583364113904, T: 0.993},
			{N: 1.620065366585568, T: 1.485},
			{N: -3.5992302698185896, T: 2.56},
			{N: 30.256775801825796, T: 3.61},
			{N: -31.3125464775288, T: 3.733},
			{N: -0.7436150349113302, T: 14.147},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 410.26, Y0: 4438,
		Terms: []helmholtz.Term{
			{N: -9.714230485565954, T: 0.247},
			{N: 11.7638029884687, T: 0.26},
			{N: 2.4153342114392036, T: 1.896},
			{N: -3.0195139591161673, T: 3.015},
			{N: 8.696072645236315, T: 7.62},
			{N: -74.7964429355484, T: 15.172},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          410.26, Y0: 4438,
		Terms: []helmholtz.Term{
			{N: 0.07060973078462121, T: 0.092},
			{N: -0.1101282083100916, T: 0.165},
			{N: -2.9297126160159235, T: 0.398},
			{N: -2.550579057791659, T: 1.037},
			{N: 0.8675055868776257, T: 3.911},
			{N: -5.524200468568231, T: 4.103},
		},
	},
}
