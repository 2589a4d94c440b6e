package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r124 is R-124 (2-chloro-1,1,1,2-tetrafluoroethane).
var r124 = helmholtz.Fluid{
	Designation: "R-124",
	Source: `B. de Vries, R. Tillner-Roth and H.D. Baehr, "Thermodynamic Properties of HCFC ` +
		`124", 19th International Congress of Refrigeration, The Hague, The Netherlands, 1995, ` +
		`pp. 582-589`,
	MolarMass:   0.1364762,
	GasConstant: 8.314471,

	TripleT: 75,
	MaxT:    470,
	MaxP:    40e6,

	ReducingT:   395.425,
	ReducingRho: 4103.279546177282,

	CriticalT:   395.425,
	CriticalP:   3624295,
	CriticalRho: 4103.279546177282,

	Power: []helmholtz.Power{
		{N: -0.01262962, T: 2, D: 1},
		{N: 2.168373, T: 0.5, D: 1},
		{N: -3.330033, T: 1, D: 1},
		{N: 0.1610361, T: 0.5, D: 2},
		{N: -9.666145e-05, T: 2.5, D: 2},
		{N: 0.0119131, T: -1, D: 3},
		{N: -0.002880217, T: 1, D: 5},
		{N: 0.001681346, T: 0, D: 6},
		{N: 1.594968e-05, T: -0.5, D: 8},
		{N: 0.1289674, T: 1.5, D: 2, L: 1},
		{N: 1.182213e-05, T: 1, D: 12, L: 1},
		{N: -0.4713997, T: 2.5, D: 1, L: 2},
		{N: -0.2412873, T: -0.25, D: 1, L: 2},
		{N: 0.6868066, T: 1, D: 1, L: 2},
		{N: -0.08621095, T: 5, D: 1, L: 2},
		{N: 4.728645e-06, T: 2, D: 15, L: 2},
		{N: 0.01487933, T: 15, D: 3, L: 3},
		{N: -0.03001338, T: 20, D: 3, L: 3},
		{N: 0.001849606, T: 15, D: 4, L: 4},
		{N: 0.0004126073, T: 45, D: 9, L: 4},
	},

	Ideal: helmholtz.Ideal{
		Power: []helmholtz.Term{
			{N: -7.389735, T: -1},
			{N: 0.8736831, T: -2},
			{N: -0.1115133, T: -3},
		},
		LogTau: 2.175638,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          395.425, Y0: 3624295,
		Terms: []helmholtz.Term{
			{N: -5.532034162429256, T: 1.003},
			{N: -4.742002285997961, T: 1.051},
			{N: 4.083301102214, T: 1.163},
			{N: -0.8556260869752595, T: 2.188},
			{N: -3.759805971191399, T: 4.015},
			{N: -5.094637151194883, T: 19.693},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 395.425, Y0: 4103.279546177282,
		Terms: []helmholtz.Term{
			{N: 9.076759200951095, T: 0.482},
			{N: -17.685013904231155, T: 0.651},
			{N: 59.69226551115479, T: 0.881},
			{N: -48.46415018361892, T: 0.914},
			{N: 0.6023234565910854, T: 5.001},
			{N: -1.0939055527121821, T: 10.577},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          395.425, Y0: 4103.279546177282,
		Terms: []helmholtz.Term{
			{N: -3.6411060779677857, T: 0.415},
			{N: 0.3822304251070335, T: 0.5},
			{N: -19.603560148262865, T: 1.704},
			{N: 181.0410898999192, T: 2.307},
			{N: -168.52216602298836, T: 2.394},
			{N: -2.5180916684231893, T: 13.161},
		},
	},
}
