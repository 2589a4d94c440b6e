package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r134a is R-134a (1,1,1,2-tetrafluoroethane).
var r134a = helmholtz.Fluid{
	Designation: "R-134a",
	Source: `Reiner Tillner-Roth and Hans Dieter Baehr, "An International Standard Formulation ` +
		`for the Thermodynamic Properties of 1,1,1,2-Tetrafluoroethane (HFC-134a) for ` +
		`Temperatures from 170 K to 455 K and Pressures up to 70 MPa", J. Phys. Chem. Ref. Data ` +
		`23, 1994, pp. 657-729, doi:10.1063/1.555958`,
	MolarMass:   0.102032,
	GasConstant: 8.314471,

	TripleT: 169.85,
	MaxT:    455,
	MaxP:    70e6,

	ReducingT:   374.18,
	ReducingRho: 4978.830171,

	CriticalT:   374.21,
	CriticalP:   4059280,
	CriticalRho: 5017.053,

	Power: []helmholtz.Power{
		{N: 0.05586817, T: -0.5, D: 2},
		{N: 0.498223, T: 0, D: 1},
		{N: 0.02458698, T: 0, D: 3},
		{N: 0.0008570145, T: 0, D: 6},
		{N: 0.0004788584, T: 1.5, D: 6},
		{N: -1.800808, T: 1.5, D: 1},
		{N: 0.2671641, T: 2, D: 1},
		{N: -0.04781652, T: 2, D: 2},
		{N: 0.01423987, T: 1, D: 5, L: 1},
		{N: 0.3324062, T: 3, D: 2, L: 1},
		{N: -0.007485907, T: 5, D: 2, L: 1},
		{N: 0.0001017263, T: 1, D: 4, L: 2},
		{N: -0.5184567, T: 5, D: 1, L: 2},
		{N: -0.08692288, T: 5, D: 4, L: 2},
		{N: 0.2057144, T: 6, D: 1, L: 2},
		{N: -0.005000457, T: 10, D: 2, L: 2},
		{N: 0.0004603262, T: 10, D: 4, L: 2},
		{N: -0.003497836, T: 10, D: 1, L: 3},
		{N: 0.006995038, T: 18, D: 5, L: 3},
		{N: -0.01452184, T: 22, D: 3, L: 3},
		{N: -0.0001285458, T: 50, D: 10, L: 4},
	},

	Ideal: helmholtz.Ideal{
		Power: []helmholtz.Term{
			{N: -9.723916, T: -0.5},
			{N: -3.92717, T: -0.75},
		},
		LogTau: -1.629789,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          374.21, Y0: 4059280,
		Terms: []helmholtz.Term{
			{N: 0.4331478287291047, T: 0.845},
			{N: -9.090302559074352, T: 0.99},
			{N: 2.1476074125217703, T: 1.14},
			{N: -1.557687007603464, T: 2.651},
			{N: -3.5020328972698604, T: 4.507},
			{N: 14.958442337201044, T: 17.235},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 374.21, Y0: 5017.053,
		Terms: []helmholtz.Term{
			{N: 18.772731940930015, T: 0.673},
			{N: -51.49939472178225, T: 0.994},
			{N: 40.793536440596085, T: 1.257},
			{N: -1481.6500471538966, T: 5.783},
			{N: 1600.534434298925, T: 5.943},
			{N: -67338.52423732559, T: 19.94},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          374.21, Y0: 5017.053,
		Terms: []helmholtz.Term{
			{N: -5.147386240766544, T: 0.476},
			{N: 5.34618043286371, T: 0.966},
			{N: -7.611015272838434, T: 1.321},
			{N: -28.85436432788653, T: 8.491},
			{N: -9.079306067130748, T: 13.463},
			{N: 64, T: 13.463},
		},
	},
}
