package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1234yf is R-1234yf (2,3,3,3-tetrafluoropropene).
var r1234yf = helmholtz.Fluid{
	Designation: "R-1234yf",
	Source: `Eric W. Lemmon and Ryo Akasaka, "Equation of State for the Thermodynamic Properties ` +
		`of 2,3,3,3-Tetrafluoroprop-1-ene (R1234yf)", Int. J. Thermophys. 43, 2022, pp. 119, ` +
		`doi:10.1007/s10765-022-03015-y`,
	MolarMass:   0.1140416,
	GasConstant: 8.314462618,

	TripleT: 121.6,
	MaxT:    410,
	MaxP:    100e6,

	ReducingT:   367.85,
	ReducingRho: 4180,

	CriticalT:   367.85,
	CriticalP:   3384400,
	CriticalRho: 4180,

	Power: []helmholtz.Power{
		{N: 0.0340387, T: 1, D: 4},
		{N: 1.912859, T: 0.222, D: 1},
		{N: -2.1984719881617, T: 0.61, D: 1},
		{N: -0.8147645305033, T: 1.122, D: 2},
		{N: 0.2288282, T: 0.5, D: 3},
		{N: -1.65436, T: 2.14, D: 1, L: 2},
		{N: -1.446628, T: 2.284, D: 3, L: 2},
		{N: 0.5961722, T: 1.05, D: 2, L: 1},
		{N: -0.6148209, T: 2.33, D: 2, L: 2},
		{N: -0.0180069, T: 0.778, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.2845275, T: 1, D: 1, Eta: 28.1, Beta: 1016, Gamma: 1.061, Epsilon: 0.96},
		{N: -0.3050809, T: 2, D: 1, Eta: 28, Beta: 1000, Gamma: 1.062, Epsilon: 0.96},
		{N: 2.198935, T: 1.236, D: 1, Eta: 1.307, Beta: 1.16, Gamma: 1.3, Epsilon: 0.853},
		{N: -0.4270329, T: 1.6, D: 1, Eta: 1.96, Beta: 1.2, Gamma: 1.04, Epsilon: 1.15},
		{N: -0.4015581, T: 1.85, D: 1, Eta: 1.25, Beta: 1.26, Gamma: 1, Epsilon: 1.3},
		{N: 0.1179587, T: 0.7, D: 1, Eta: 1, Beta: 1.6, Gamma: 1.14, Epsilon: 1.5},
		{N: -0.3141002, T: 1.75, D: 1, Eta: 2.2, Beta: 0.87, Gamma: 1.1, Epsilon: 0.762},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 8.65, T: 1.3918716868288703},
			{N: 9.75, T: 4.268044039690091},
			{N: 2.11, T: 12.233247247519369},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          367.85, Y0: 3384400,
		Terms: []helmholtz.Term{
			{N: -7.4507, T: 1},
			{N: 2.164, T: 1.5},
			{N: -1.674, T: 3},
			{N: -3.318, T: 4},
			{N: -1.617, T: 9},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 367.85, Y0: 4180,
		Terms: []helmholtz.Term{
			{N: 3.392, T: 0.4},
			{N: -4.119, T: 0.7},
			{N: 8.932, T: 1.1},
			{N: -8.525, T: 1.5},
			{N: 3.384, T: 2.1},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		Tr:          367.85, Y0: 4180,
		Terms: []helmholtz.Term{
			{N: -3.616, T: 0.426},
			{N: -74.91, T: 2},
			{N: 197.7, T: 2.4},
			{N: -152.76, T: 2.7},
			{N: -61.062, T: 7.5},
			{N: -115.53, T: 15},
		},
	},
}
