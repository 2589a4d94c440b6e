package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r290 is R-290 (propane).
var r290 = helmholtz.Fluid{
	Designation: "R-290",
	Source: `Eric W. Lemmon, Mark O. McLinden and Wolfgang Wagner, "Thermodynamic Properties of ` +
		`Propane. III. A Reference Equation of State for Temperatures from the Melting Line to ` +
		`650 K and Pressures up to 1000 MPa", J. Chem. Eng. Data 54, 2009, pp. 3141-3180, ` +
		`doi:10.1021/je900217v`,
	MolarMass:   0.04409562,
	GasConstant: 8.314472,

	TripleT: 85.525,
	MaxT:    650,
	MaxP:    1000e6,

	ReducingT:   369.89,
	ReducingRho: 5000,

	CriticalT:   369.89,
	CriticalP:   4251200,
	CriticalRho: 5000,

	Power: []helmholtz.Power{
		{N: 0.042910051, T: 1, D: 4},
		{N: 1.7313671, T: 0.33, D: 1},
		{N: -2.4516524, T: 0.8, D: 1},
		{N: 0.34157466, T: 0.43, D: 2},
		{N: -0.46047898, T: 0.9, D: 2},
		{N: -0.66847295, T: 2.46, D: 1, L: 1},
		{N: 0.20889705, T: 2.09, D: 3, L: 1},
		{N: 0.19421381, T: 0.88, D: 6, L: 1},
		{N: -0.22917851, T: 1.09, D: 6, L: 1},
		{N: -0.60405866, T: 3.25, D: 2, L: 2},
		{N: 0.066680654, T: 4.62, D: 3, L: 2},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.017534618, T: 0.76, D: 1, Eta: 0.963, Beta: 2.33, Gamma: 0.684, Epsilon: 1.283},
		{N: 0.33874242, T: 2.5, D: 1, Eta: 1.977, Beta: 3.47, Gamma: 0.829, Epsilon: 0.6936},
		{N: 0.22228777, T: 2.75, D: 1, Eta: 1.917, Beta: 3.15, Gamma: 1.419, Epsilon: 0.788},
		{N: -0.23219062, T: 3.05, D: 2, Eta: 2.307, Beta: 3.19, Gamma: 0.817, Epsilon: 0.473},
		{N: -0.09220694, T: 2.55, D: 2, Eta: 2.546, Beta: 0.92, Gamma: 1.5, Epsilon: 0.8577},
		{N: -0.47575718, T: 8.4, D: 4, Eta: 3.28, Beta: 18.8, Gamma: 1.426, Epsilon: 0.271},
		{N: -0.017486824, T: 6.75, D: 1, Eta: 14.6, Beta: 547.8, Gamma: 1.093, Epsilon: 0.948},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 3.043, T: 1.062478},
			{N: 5.874, T: 3.344237},
			{N: 9.337, T: 5.363757},
			{N: 7.922, T: 11.762957},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          369.89, Y0: 4251200,
		Terms: []helmholtz.Term{
			{N: -23.998635747391152, T: 1.05},
			{N: 18.313017605233238, T: 1.084},
			{N: -0.42240851966839504, T: 2.259},
			{N: -2.7378298813798962, T: 4.287},
			{N: 0.257888414168987, T: 7.66},
			{N: -1.3113462226130785, T: 18.584},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 369.89, Y0: 5000.000000000001,
		Terms: []helmholtz.Term{
			{N: 2.104068052280433, T: 0.368},
			{N: 0.3371892411622086, T: 0.875},
			{N: 0.4401223810964251, T: 3.009},
			{N: -3.5679018989260567, T: 9.51},
			{N: 59.93889697061387, T: 15.381},
			{N: -70.9402469085883, T: 17.001},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          369.89, Y0: 5000.000000000001,
		Terms: []helmholtz.Term{
			{N: -3.401360845132903, T: 0.431},
			{N: -1.9443653795380451, T: 1.339},
			{N: -0.4101211459709529, T: 2.091},
			{N: -15.598374206544214, T: 6.822},
			{N: 15.844867806184942, T: 8.214},
			{N: -15.298907422332046, T: 19.706},
		},
	},
}
