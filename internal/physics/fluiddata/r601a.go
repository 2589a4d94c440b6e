package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r601a is R-601a (isopentane).
var r601a = helmholtz.Fluid{
	Designation: "R-601a",
	Source: `E.W. Lemmon and R. Span, "Short Fundamental Equations of State for 20 Industrial ` +
		`Fluids", J. Chem. Eng. Data 51, 2006, pp. 785-850, doi:10.1021/je050186n`,
	MolarMass:   0.07214878,
	GasConstant: 8.314472,

	TripleT: 112.65,
	MaxT:    500,
	MaxP:    1000e6,

	ReducingT:   460.35,
	ReducingRho: 3271,

	CriticalT:   460.35,
	CriticalP:   3378000,
	CriticalRho: 3271,

	Power: []helmholtz.Power{
		{N: 1.0963, T: 0.25, D: 1},
		{N: -3.0402, T: 1.125, D: 1},
		{N: 1.0317, T: 1.5, D: 1},
		{N: -0.1541, T: 1.375, D: 2},
		{N: 0.11535, T: 0.25, D: 3},
		{N: 0.00029809, T: 0.875, D: 7},
		{N: 0.39571, T: 0.625, D: 2, L: 1},
		{N: -0.045881, T: 1.75, D: 5, L: 1},
		{N: -0.35804, T: 3.625, D: 1, L: 2},
		{N: -0.10107, T: 3.625, D: 4, L: 2},
		{N: -0.035484, T: 14.5, D: 3, L: 3},
		{N: 0.018156, T: 12, D: 4, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 7.4056, T: 0.9601390246551537},
			{N: 9.5772, T: 2.409036602584989},
			{N: 15.765, T: 4.494406429890301},
			{N: 12.119, T: 9.108287172803301},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          460.35, Y0: 3378000,
		Terms: []helmholtz.Term{
			{N: -8.6020554503746, T: 1.02},
			{N: 4.597427498957886, T: 1.348},
			{N: -2.60028502453596, T: 1.678},
			{N: -3.205323615957216, T: 4.158},
			{N: 0.893056340939176, T: 11.692},
			{N: -3.317655495530999, T: 14.291},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 460.35, Y0: 3271,
		Terms: []helmholtz.Term{
			{N: 1.90090139367392, T: 0.335},
			{N: 0.5608577220827222, T: 0.852},
			{N: 0.291792033747788, T: 2.009},
			{N: -0.22951340206902662, T: 4.806},
			{N: 50.602054710991816, T: 14.584},
			{N: -59.20907806248923, T: 15.417},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          460.35, Y0: 3271,
		Terms: []helmholtz.Term{
			{N: -0.293842156388657, T: 0.192},
			{N: -3.3757748736495574, T: 0.477},
			{N: -2.160437982604624, T: 1.313},
			{N: -8.713491274417024, T: 5.085},
			{N: 4.916720756118398, T: 6.047},
			{N: -0.9275607204099507, T: 14.238},
		},
	},
}
