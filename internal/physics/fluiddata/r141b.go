package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r141b is R-141b (1,1-dichloro-1-fluoroethane).
var r141b = helmholtz.Fluid{
	Designation: "R-141b",
	Source: `E.W. Lemmon and R. Span, "Short Fundamental Equations of State for 20 Industrial ` +
		`Fluids", J. Chem. Eng. Data 51, 2006, pp. 785-850, doi:10.1021/je050186n`,
	MolarMass:   0.11694962,
	GasConstant: 8.314472,

	TripleT: 169.68,
	MaxT:    500,
	MaxP:    400e6,

	ReducingT:   477.5,
	ReducingRho: 3921,

	CriticalT:   477.5,
	CriticalP:   4212000,
	CriticalRho: 3921,

	Power: []helmholtz.Power{
		{N: 1.1469, T: 0.25, D: 1},
		{N: -3.6799, T: 1.25, D: 1},
		{N: 1.3469, T: 1.5, D: 1},
		{N: 0.083329, T: 0.25, D: 3},
		{N: 0.00025137, T: 0.875, D: 7},
		{N: 0.3272, T: 2.375, D: 1, L: 1},
		{N: 0.46946, T: 2, D: 2, L: 1},
		{N: -0.029829, T: 2.125, D: 5, L: 1},
		{N: -0.31621, T: 3.5, D: 1, L: 2},
		{N: -0.026219, T: 6.5, D: 1, L: 2},
		{N: -0.078043, T: 4.75, D: 4, L: 2},
		{N: -0.020498, T: 12.5, D: 2, L: 3},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 6.8978, T: 1.05130890052356},
			{N: 7.8157, T: 3.290052356020942},
			{N: 3.2039, T: 9.63979057591623},
		},
		LogTau: 3,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          477.5, Y0: 4212000,
		Terms: []helmholtz.Term{
			{N: -30.1815277612222, T: 1.049},
			{N: 24.413010375904488, T: 1.078},
			{N: -1.1112676337911325, T: 2.184},
			{N: -3.1252752919171236, T: 4.325},
			{N: -1.7371129089761865, T: 9.594},
			{N: -1.7017122235679412, T: 16.104},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 477.5, Y0: 3921.0000000000005,
		Terms: []helmholtz.Term{
			{N: -0.9378377457620258, T: 0.29},
			{N: 3.2148374020900103, T: 0.341},
			{N: 1.0653350522107268, T: 2.503},
			{N: -4378.068628183692, T: 15.166},
			{N: 272955.32986322936, T: 18.069},
			{N: -277906.31972088123, T: 18.242},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          477.5, Y0: 3921.0000000000005,
		Terms: []helmholtz.Term{
			{N: 0.6509988493015847, T: 0.279},
			{N: -3.8560643644234873, T: 0.374},
			{N: -69.71635657603578, T: 1.89},
			{N: 75.36138733740711, T: 1.986},
			{N: -12.174836839230538, T: 3.019},
			{N: -0.9652029917534032, T: 8.269},
		},
	},
}
