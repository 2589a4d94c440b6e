package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r161 is R-161 (fluoroethane).
var r161 = helmholtz.Fluid{
	Designation: "R-161",
	Source: `Jiangtao Wu and Yong Zhou, "An Equation of State for Fluoroethane (R161)", Int. J. ` +
		`Thermophys. 33, 2012, pp. 220-234, doi:10.1007/s10765-011-1151-3`,
	MolarMass:   0.0480595,
	GasConstant: 8.314472,

	TripleT: 130,
	MaxT:    450,
	MaxP:    5e6,

	ReducingT:   375.25,
	ReducingRho: 6280,

	CriticalT:   375.25,
	CriticalP:   5010000,
	CriticalRho: 6280,

	Power: []helmholtz.Power{
		{N: 1.511, T: 0.37, D: 1},
		{N: -2.3, T: 0.97, D: 1},
		{N: -0.457, T: 1.14, D: 2},
		{N: 0.1683, T: 0.744, D: 3},
		{N: 0.04133, T: 1, D: 4},
		{N: 0.62187, T: 1.26, D: 2, L: 1},
		{N: -0.0265, T: 1, D: 7, L: 1},
		{N: -1.03, T: 1.8, D: 1, L: 2},
		{N: -0.285, T: 3, D: 2, L: 2},
		{N: -0.476, T: 2.25, D: 3, L: 2},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.82, T: 1, D: 1, Eta: 0.96, Beta: 2.7, Gamma: 0.9, Epsilon: 0.683},
		{N: -0.3532, T: 1.2, D: 1, Eta: 1.35, Beta: 5.2, Gamma: 0.69, Epsilon: 0.892},
		{N: -0.116, T: 5.3, D: 3, Eta: 1.26, Beta: 3.9, Gamma: 0.67, Epsilon: 0.785},
		{N: -0.0220583, T: 1, D: 3, Eta: 1.23, Beta: 4.7, Gamma: 0.67, Epsilon: 1.33},
		{N: -1.63148, T: 4, D: 3, Eta: 16.8, Beta: 413, Gamma: 1.15, Epsilon: 0.86},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 2.059, T: 1.11925383077948},
			{N: 9.253, T: 4.125249833444371},
			{N: 6.088, T: 10.34510326449034},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          375.25, Y0: 5010000,
		Terms: []helmholtz.Term{
			{N: 0.004114007295473757, T: 0.358},
			{N: -6.483344699665786, T: 0.979},
			{N: 4.717832719212871, T: 2.041},
			{N: -6.0036159561286375, T: 2.312},
			{N: -8.92774506978172, T: 7.268},
			{N: 6.727500969566306, T: 8.389},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 375.25, Y0: 6280,
		Terms: []helmholtz.Term{
			{N: 7.345119166859648, T: 0.331},
			{N: -11.515617231318577, T: 0.379},
			{N: 6.89480557431733, T: 0.459},
			{N: -1.9186452820369757, T: 3.341},
			{N: 183.43884409350315, T: 6.576},
			{N: -184.35734585122438, T: 6.669},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          375.25, Y0: 6280,
		Terms: []helmholtz.Term{
			{N: -0.3089763166551767, T: 0.148},
			{N: -2.9925531954627664, T: 0.482},
			{N: -1.8199815337621044, T: 0.891},
			{N: -1.0253004294209247, T: 2.774},
			{N: -2.9173025831139583, T: 4.26},
			{N: -1.6688506440273063, T: 6.784},
		},
	},
}
