package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r116 is R-116 (hexafluoroethane).
var r116 = helmholtz.Fluid{
	Designation: "R-116",
	Source: `E.W. Lemmon and R. Span, "Short Fundamental Equations of State for 20 Industrial ` +
		`Fluids", J. Chem. Eng. Data 51, 2006, pp. 785-850, doi:10.1021/je050186n`,
	MolarMass:   0.13801182,
	GasConstant: 8.314472,

	TripleT: 173.1,
	MaxT:    425,
	MaxP:    50e6,

	ReducingT:   293.03,
	ReducingRho: 4444,

	CriticalT:   293.03,
	CriticalP:   3048000,
	CriticalRho: 4444,

	Power: []helmholtz.Power{
		{N: 1.1632, T: 0.25, D: 1},
		{N: -2.8123, T: 1.125, D: 1},
		{N: 0.77202, T: 1.5, D: 1},
		{N: -0.14331, T: 1.375, D: 2},
		{N: 0.10227, T: 0.25, D: 3},
		{N: 0.00024629, T: 0.875, D: 7},
		{N: 0.30893, T: 0.625, D: 2, L: 1},
		{N: -0.028499, T: 1.75, D: 5, L: 1},
		{N: -0.30343, T: 3.625, D: 1, L: 2},
		{N: -0.068793, T: 3.625, D: 4, L: 2},
		{N: -0.027218, T: 14.5, D: 3, L: 3},
		{N: 0.010665, T: 12, D: 4, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 2.4818, T: 0.6483977749718459},
			{N: 7.0622, T: 2.122649558065727},
			{N: 7.9951, T: 5.016551206361124},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          293.03, Y0: 3048000,
		Terms: []helmholtz.Term{
			{N: -7.187037699453901, T: 0.994},
			{N: 1.1679020933888262, T: 1.389},
			{N: -6.070415204530583, T: 3.286},
			{N: 4.623641136795351, T: 3.827},
			{N: -8.973143537957382, T: 6.643},
			{N: 135.12331037950565, T: 12.512},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 293.03, Y0: 4444,
		Terms: []helmholtz.Term{
			{N: 9.032000509756, T: 0.481},
			{N: -9.139042989359975, T: 0.603},
			{N: 4.35812391046927, T: 1.19},
			{N: -10.172985836578453, T: 3.414},
			{N: 3844.9059901716128, T: 9.072},
			{N: -8268.03247405404, T: 10.136},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          293.03, Y0: 4444,
		Terms: []helmholtz.Term{
			{N: -3.2238759240828108, T: 0.42},
			{N: -2.882263657854913, T: 1.175},
			{N: 8.52221952834173, T: 2.321},
			{N: -9.783624985988958, T: 2.482},
			{N: -19811843.680679295, T: 19.211},
			{N: 33374328.47668358, T: 19.828},
		},
	},
}
