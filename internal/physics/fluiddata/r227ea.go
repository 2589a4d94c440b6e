package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r227ea is R-227ea (1,1,1,2,3,3,3-heptafluoropropane).
var r227ea = helmholtz.Fluid{
	Designation: "R-227ea",
	Source: `Eric W. Lemmon and Roland Span, "Thermodynamic Properties of R-227ea, R-365mfc, ` +
		`R-115, and R13I1", J. Chem. Eng. Data 60, 2015, pp. 3745-3758, ` +
		`doi:10.1021/acs.jced.5b00684`,
	MolarMass:   0.17002886,
	GasConstant: 8.3144621,

	TripleT: 146.35,
	MaxT:    475,
	MaxP:    60e6,

	ReducingT:   374.9,
	ReducingRho: 3495,

	CriticalT:   374.9,
	CriticalP:   2925242.2339447653,
	CriticalRho: 3495,

	Power: []helmholtz.Power{
		{N: 2.024341, T: 0.34, D: 1},
		{N: -2.60593, T: 0.77, D: 1},
		{N: 0.4957216, T: 0.36, D: 2},
		{N: -0.824082, T: 0.9, D: 2},
		{N: 0.06543703, T: 1, D: 4},
		{N: -1.02461, T: 2.82, D: 1, L: 1},
		{N: 0.6247065, T: 2.1, D: 3, L: 1},
		{N: 0.2997521, T: 0.9, D: 6, L: 1},
		{N: -0.353917, T: 1.13, D: 6, L: 1},
		{N: -1.232043, T: 3.8, D: 2, L: 2},
		{N: -0.8824483, T: 2.75, D: 3, L: 2},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.1349661, T: 1.5, D: 1, Eta: 0.83, Beta: 1.72, Gamma: 0.414, Epsilon: 1.13},
		{N: -0.2662928, T: 2.5, D: 2, Eta: 2.19, Beta: 5.2, Gamma: 1.051, Epsilon: 0.71},
		{N: 0.1764733, T: 2.5, D: 1, Eta: 2.44, Beta: 2.31, Gamma: 1.226, Epsilon: 1.2},
		{N: 0.01536163, T: 5.4, D: 1, Eta: 3.65, Beta: 1.02, Gamma: 1.7, Epsilon: 1.7},
		{N: -0.004667185, T: 4, D: 4, Eta: 8.88, Beta: 5.63, Gamma: 0.904, Epsilon: 0.546},
		{N: -11.70854, T: 1, D: 2, Eta: 8.23, Beta: 50.9, Gamma: 1.42, Epsilon: 0.896},
		{N: 0.9114512, T: 3.5, D: 1, Eta: 2.01, Beta: 1.56, Gamma: 0.926, Epsilon: 0.747},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 11.43, T: 1.07495332088557},
			{N: 12.83, T: 3.809015737530008},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          374.9, Y0: 2925000,
		Terms: []helmholtz.Term{
			{N: -7.109161477135856, T: 0.987},
			{N: -0.43619976868074284, T: 1.312},
			{N: 5.934481777381213, T: 1.927},
			{N: 39.44778344273422, T: 3.476},
			{N: -41.38716737709299, T: 3.578},
			{N: -8.362365023243223, T: 2.248},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 374.9, Y0: 3495,
		Terms: []helmholtz.Term{
			{N: -0.037180636267061765, T: 0.12},
			{N: 2.2565260411325867, T: 0.35},
			{N: 16.777771835065064, T: 2.248},
			{N: -22.313716095609287, T: 2.467},
			{N: 6.793310681390873, T: 3.208},
			{N: -10.89306852102585, T: 12.192},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          374.9, Y0: 3495,
		Terms: []helmholtz.Term{
			{N: -6.947050225285722, T: 0.434},
			{N: 123.4065348806111, T: 0.676},
			{N: -122.5651518640378, T: 0.691},
			{N: -9.994885618440552, T: 4.287},
			{N: 3.478879029818986, T: 4.613},
			{N: 245.61726193605475, T: 19.251},
		},
	},
}
