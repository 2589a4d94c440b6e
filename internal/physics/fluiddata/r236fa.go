package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r236fa is R-236fa (1,1,1,3,3,3-hexafluoropropane).
var r236fa = helmholtz.Fluid{
	Designation: "R-236fa",
	Source: `Jiang Pan, Xinfang Rui, Xiaodong Zhao and Liming Qiu, "An equation of state for the ` +
		`thermodynamic properties of 1,1,1,3,3,3-hexafluoropropane (HFC-236fa)", Fluid Phase ` +
		`Equilib. 321, 2012, pp. 10-16, doi:10.1016/j.fluid.2012.02.012`,
	MolarMass:   0.1520384,
	GasConstant: 8.314472,

	TripleT: 179.6,
	MaxT:    400,
	MaxP:    70e6,

	ReducingT:   398.07,
	ReducingRho: 3626,

	CriticalT:   398.07,
	CriticalP:   3200000,
	CriticalRho: 3626,

	Power: []helmholtz.Power{
		{N: 0.04453255, T: 1.07, D: 4},
		{N: 1.777017, T: 0.222, D: 1},
		{N: -2.230519, T: 0.66, D: 1},
		{N: -0.6708606, T: 1.33, D: 2},
		{N: 0.1587907, T: 0.227, D: 3},
		{N: -1.425119, T: 2.33, D: 1, L: 2},
		{N: -0.6461628, T: 1.94, D: 3, L: 2},
		{N: 0.8469985, T: 1.53, D: 2, L: 1},
		{N: -0.5635356, T: 2.65, D: 2, L: 2},
		{N: -0.01535611, T: 0.722, D: 7, L: 1},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: 1.156362, T: 1.11, D: 1, Eta: 1.02, Beta: 1.42, Gamma: 1.13, Epsilon: 0.712},
		{N: -0.407031, T: 2.31, D: 1, Eta: 1.336, Beta: 2.31, Gamma: 0.67, Epsilon: 0.91},
		{N: -0.2172753, T: 3.68, D: 3, Eta: 1.055, Beta: 0.89, Gamma: 0.46, Epsilon: 0.677},
		{N: -1.007176, T: 4.23, D: 3, Eta: 5.84, Beta: 80, Gamma: 1.28, Epsilon: 0.718},
		{N: -6.902909e-05, T: 0.614, D: 2, Eta: 16.2, Beta: 108, Gamma: 1.2, Epsilon: 1.64},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 9.8782, T: 2.416660386364208},
			{N: 18.236, T: 6.014017635089306},
			{N: 49.934, T: 13.03288366367724},
		},
		LogTau: 9.175,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          398.07, Y0: 3200000,
		Terms: []helmholtz.Term{
			{N: -0.0049249850273236865, T: 0.017},
			{N: 0.012816148225752128, T: 0.253},
			{N: -6.97674339296593, T: 0.971},
			{N: 0.34709652116366274, T: 2.069},
			{N: -3.3890300356223824, T: 3.12},
			{N: -3.905418212194194, T: 5.366},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 398.07, Y0: 3626,
		Terms: []helmholtz.Term{
			{N: -0.6129462210275856, T: 0.177},
			{N: 2.32975618477472, T: 0.276},
			{N: 0.44026610528146576, T: 0.561},
			{N: 0.18569408128843393, T: 0.741},
			{N: 0.41600763700797233, T: 1.15},
			{N: 0.3257761223988926, T: 3.764},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          398.07, Y0: 3626,
		Terms: []helmholtz.Term{
			{N: -3.799841638369613, T: 0.436},
			{N: -7.207160418715132, T: 1.661},
			{N: 47.73949958715277, T: 2.91},
			{N: -59.040754885379386, T: 3.307},
			{N: 33.03413077298916, T: 5.447},
			{N: -27.228555278145553, T: 6.392},
		},
	},
}
