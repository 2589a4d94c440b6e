package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r1132E is R-1132(E) (trans-1,2-difluoroethene).
var r1132E = helmholtz.Fluid{
	Designation: "R-1132(E)",
	Source: `Ryo Akasaka and Eric W. Lemmon, "A Helmholtz Energy Equation of State for ` +
		`Calculations of Thermodynamic Properties of trans-1,2-Difluoroethene [R-1132(E)]", ` +
		`International Journal of Thermophysics 45, 2024, doi:10.1007/s10765-024-03447-8`,
	MolarMass:   0.064035,
	GasConstant: 8.314462618,

	TripleT: 240,
	MaxT:    400,
	MaxP:    6500000,

	ReducingT:   348.82,
	ReducingRho: 6793,

	CriticalT:   348.82,
	CriticalP:   5173700,
	CriticalRho: 6793,

	Power: []helmholtz.Power{
		{N: 0.033144696, T: 1, D: 4},
		{N: 1.8996205, T: 0.32, D: 1},
		{N: -2.19051728813, T: 0.71, D: 1},
		{N: -0.8165909562367, T: 1.2, D: 2},
		{N: 0.22857476, T: 0.7, D: 3},
		{N: -1.650708, T: 2.09, D: 1, L: 2},
		{N: -1.4409077, T: 2.24, D: 3, L: 2},
		{N: 0.60536471, T: 1.17, D: 2, L: 1},
		{N: -0.66134087, T: 2.2, D: 2, L: 2},
		{N: -0.016787895, T: 0.823, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 0.31476822, T: 3.14, D: 1, Eta: 34.4, Beta: 1017, Gamma: 1.0617, Epsilon: 0.9637},
		{N: -0.31991607, T: 4, D: 1, Eta: 34.28, Beta: 1009, Gamma: 1.062, Epsilon: 0.9636},
		{N: 2.2172762, T: 1.25, D: 1, Eta: 1.303, Beta: 1.011, Gamma: 1.327, Epsilon: 0.8535},
		{N: -0.42786753, T: 1.476, D: 1, Eta: 1.855, Beta: 1.05, Gamma: 1.05, Epsilon: 1.15},
		{N: -0.41335541, T: 1.5, D: 1, Eta: 1.29, Beta: 1.33, Gamma: 1.157, Epsilon: 1.302},
		{N: 0.13023087, T: 0.73, D: 1, Eta: 1.17, Beta: 1.61, Gamma: 1.183, Epsilon: 1.54},
		{N: -0.30592804, T: 1.535, D: 1, Eta: 2.165, Beta: 0.8, Gamma: 1.2, Epsilon: 0.786},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 4.896, T: 2.0927699099822257},
			{N: 7.111, T: 6.4761194885614355},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          348.82, Y0: 5173700,
		Terms: []helmholtz.Term{
			{N: -7.180377823189687, T: 1},
			{N: 1.472354100239817, T: 1.5},
			{N: -3.3983617890948747, T: 2.95},
			{N: 3.034633433716785, T: 5.8},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 348.82, Y0: 6793,
		Terms: []helmholtz.Term{
			{N: 1.131854476313553, T: 0.293},
			{N: 0.4168932831368899, T: 0.332},
			{N: 4.13792874950683, T: 1.09},
			{N: -7.635583694878722, T: 1.55},
			{N: 4.784010457127493, T: 1.9},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          348.82, Y0: 6793,
		Terms: []helmholtz.Term{
			{N: -1.2334086828131732, T: 0.23},
			{N: -4.901403856265639, T: 0.824},
			{N: 7.063613652530113, T: 2.72},
			{N: -291.7778908501901, T: 6},
			{N: 343663.88153325015, T: 13},
		},
	},
}
