package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r32 is R-32 (difluoromethane).
var r32 = helmholtz.Fluid{
	Designation: "R-32",
	Source: `R. Tillner-Roth and A. Yokozeki, "An international standard equation of state for ` +
		`difluoromethane (R-32) for temperatures from the triple point at 136.34 K to 435 K and ` +
		`pressures up to 70 MPa", J. Phys. Chem. Ref. Data 26, 1997, pp. 1273-1328, ` +
		`doi:10.1063/1.556002`,
	MolarMass:   0.052024,
	GasConstant: 8.314471,

	TripleT: 136.34,
	MaxT:    435,
	MaxP:    70e6,

	ReducingT:   351.255,
	ReducingRho: 8150.0846,

	CriticalT:   351.255,
	CriticalP:   5782000,
	CriticalRho: 8150.0846,

	Power: []helmholtz.Power{
		{N: 1.046634, T: 0.25, D: 1},
		{N: -0.5451165, T: 1, D: 2},
		{N: -0.002448595, T: -0.25, D: 5},
		{N: -0.04877002, T: -1, D: 1},
		{N: 0.03520158, T: 2, D: 1},
		{N: 0.00162275, T: 2, D: 3},
		{N: 2.377225e-05, T: 0.75, D: 8},
		{N: 0.029149, T: 0.25, D: 4},
		{N: 0.003386203, T: 18, D: 4, L: 4},
		{N: -0.004202444, T: 26, D: 4, L: 3},
		{N: 0.0004782025, T: -1, D: 8, L: 1},
		{N: -0.005504323, T: 25, D: 3, L: 4},
		{N: -0.02418396, T: 1.75, D: 5, L: 1},
		{N: 0.4209034, T: 4, D: 1, L: 2},
		{N: -0.4616537, T: 5, D: 1, L: 2},
		{N: -1.200513, T: 1, D: 3, L: 1},
		{N: -2.59155, T: 1.5, D: 1, L: 1},
		{N: -1.400145, T: 1, D: 2, L: 1},
		{N: 0.8263017, T: 0.5, D: 3, L: 1},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 1.160761, T: 2.2718538},
			{N: 2.645151, T: 11.914421},
			{N: 5.794987, T: 5.1415638},
			{N: 1.129475, T: 32.768217},
		},
		LogTau: 3.004486,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          351.255, Y0: 5782000,
		Terms: []helmholtz.Term{
			{N: 0.019194334673139708, T: 0.531},
			{N: -6.794802163795212, T: 0.979},
			{N: 9.276391392786632, T: 2.203},
			{N: -12.327153852761946, T: 2.382},
			{N: 28.46579606476374, T: 3.421},
			{N: -28.570870718190093, T: 3.558},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 351.255, Y0: 8150.084599999999,
		Terms: []helmholtz.Term{
			{N: 3.0283368557227064, T: 0.358},
			{N: -13.30754793568124, T: 0.676},
			{N: 53.97035773548243, T: 0.831},
			{N: -41.10515088784585, T: 0.88},
			{N: 0.6410010855629815, T: 2.592},
			{N: -18.757652443918627, T: 16.556},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          351.255, Y0: 8150.084599999999,
		Terms: []helmholtz.Term{
			{N: -0.06522522852577171, T: 0.069},
			{N: -3.3577643698607456, T: 0.425},
			{N: -2.746299718061842, T: 1.18},
			{N: -64.77289013657663, T: 8.115},
			{N: 511.3349286855849, T: 12.06},
			{N: -1525.315265366156, T: 16.085},
		},
	},
}
