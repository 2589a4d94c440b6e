package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r23 is R-23 (trifluoromethane).
var r23 = helmholtz.Fluid{
	Designation: "R-23",
	Source: `Steven G. Penoncello, Eric W. Lemmon, Richard T Jacobsen and Zhengjun Shan, "A ` +
		`Fundamental Equation for Trifluoromethane (R-23)", J. Phys. Chem. Ref. Data 32, 2003, ` +
		`pp. 1473-1499, doi:10.1063/1.1559671`,
	MolarMass:   0.07001385,
	GasConstant: 8.314472,

	TripleT: 118.02,
	MaxT:    475,
	MaxP:    120e6,

	ReducingT:   299.293,
	ReducingRho: 7520,

	CriticalT:   299.293,
	CriticalP:   4832000,
	CriticalRho: 7520,

	Power: []helmholtz.Power{
		{N: 7.041529, T: 0.744, D: 1},
		{N: -8.259512, T: 0.94, D: 1},
		{N: 0.00805304, T: 4.3, D: 1},
		{N: -0.08617615, T: 1.46, D: 2},
		{N: 0.00633341, T: 0.68, D: 5},
		{N: -0.1863285, T: 4.8, D: 1, L: 1},
		{N: 0.328051, T: 1.5, D: 2, L: 1},
		{N: 0.5191023, T: 2.07, D: 3, L: 1},
		{N: 0.06916144, T: 0.09, D: 5, L: 1},
		{N: -0.005045875, T: 9.6, D: 1, L: 2},
		{N: -0.01744221, T: 0.19, D: 2, L: 2},
		{N: -0.05003972, T: 11.2, D: 2, L: 2},
		{N: 0.04729813, T: 0.27, D: 4, L: 2},
		{N: -0.06164031, T: 1.6, D: 4, L: 2},
		{N: 0.01583585, T: 10.3, D: 4, L: 2},
		{N: -0.00179579, T: 14, D: 2, L: 3},
		{N: -0.001099007, T: 15, D: 2, L: 4},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 2.371, T: 2.485858339486724},
			{N: 3.237, T: 4.874821663052594},
			{N: 2.61, T: 7.133477896242144},
			{N: 0.8274, T: 16.4086697650797},
		},
		LogTau: 2.999,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          299.293, Y0: 4832000,
		Terms: []helmholtz.Term{
			{N: -9.122332373664854, T: 1.014},
			{N: 3.016924110443656, T: 1.178},
			{N: -0.5967906858271617, T: 2.077},
			{N: 9.579184584147457, T: 3.82},
			{N: -12.877039154975156, T: 3.866},
			{N: 0.4375260704699433, T: 12.722},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 299.293, Y0: 7519.999999999999,
		Terms: []helmholtz.Term{
			{N: -3.3533086837494186, T: 0.212},
			{N: 5.426490146945459, T: 0.25},
			{N: -0.27772667131392875, T: 0.358},
			{N: 1.022401312663457, T: 0.841},
			{N: 8.263580367250993, T: 9.921},
			{N: -245.19616208727248, T: 17.541},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          299.293, Y0: 7519.999999999999,
		Terms: []helmholtz.Term{
			{N: -5.0704437393717505, T: 0.475},
			{N: 4.7882747149545795, T: 0.852},
			{N: -23.58027456800221, T: 1.451},
			{N: 23.333602102883393, T: 1.751},
			{N: -9.217295829606783, T: 2.978},
			{N: 4.050830873748802, T: 14.67},
		},
	},
}
