package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r744 is R-744 (carbon dioxide).
var r744 = helmholtz.Fluid{
	Designation: "R-744",
	Source: `R. Span and W. Wagner, "A New Equation of State for Carbon Dioxide Covering the ` +
		`Fluid Region from the Triple Point Temperature to 1100 K at Pressures up to 800 MPa", ` +
		`J. Phys. Chem. Ref. Data 25, 1996, pp. 1509-1596, doi:10.1063/1.555991`,
	MolarMass:   0.0440098,
	GasConstant: 8.31451,

	TripleT: 216.592,
	MaxT:    2000,
	MaxP:    800e6,

	ReducingT:   304.1282,
	ReducingRho: 10624.9063,

	CriticalT:   304.1282,
	CriticalP:   7377300,
	CriticalRho: 10624.9063,

	Power: []helmholtz.Power{
		{N: 0.388568232032, T: 0, D: 1},
		{N: 2.93854759427, T: 0.75, D: 1},
		{N: -5.5867188535, T: 1, D: 1},
		{N: -0.767531995925, T: 2, D: 1},
		{N: 0.317290055804, T: 0.75, D: 2},
		{N: 0.548033158978, T: 2, D: 2},
		{N: 0.122794112203, T: 0.75, D: 3},
		{N: 2.16589615432, T: 1.5, D: 1, L: 1},
		{N: 1.58417351097, T: 1.5, D: 2, L: 1},
		{N: -0.231327054055, T: 2.5, D: 4, L: 1},
		{N: 0.0581169164314, T: 0, D: 5, L: 1},
		{N: -0.553691372054, T: 1.5, D: 5, L: 1},
		{N: 0.489466159094, T: 2, D: 5, L: 1},
		{N: -0.0242757398435, T: 0, D: 6, L: 1},
		{N: 0.0624947905017, T: 1, D: 6, L: 1},
		{N: -0.121758602252, T: 2, D: 6, L: 1},
		{N: -0.370556852701, T: 3, D: 1, L: 2},
		{N: -0.0167758797004, T: 6, D: 1, L: 2},
		{N: -0.11960736638, T: 3, D: 4, L: 2},
		{N: -0.0456193625088, T: 6, D: 4, L: 2},
		{N: 0.0356127892703, T: 8, D: 4, L: 2},
		{N: -0.00744277271321, T: 6, D: 7, L: 2},
		{N: -0.00173957049024, T: 0, D: 8, L: 2},
		{N: -0.0218101212895, T: 7, D: 2, L: 3},
		{N: 0.0243321665592, T: 12, D: 3, L: 3},
		{N: -0.0374401334235, T: 16, D: 3, L: 3},
		{N: 0.143387157569, T: 22, D: 5, L: 4},
		{N: -0.134919690833, T: 24, D: 5, L: 4},
		{N: -0.0231512250535, T: 16, D: 6, L: 4},
		{N: 0.0123631254929, T: 24, D: 7, L: 4},
		{N: 0.00210583219729, T: 8, D: 8, L: 4},
		{N: -0.000339585190264, T: 2, D: 10, L: 4},
		{N: 0.00559936517716, T: 28, D: 4, L: 5},
		{N: -0.000303351180556, T: 14, D: 8, L: 6},
	},
	Gaussian: []helmholtz.Gaussian{
		{N: -213.654886883, T: 1, D: 2, Eta: 25, Beta: 325, Gamma: 1.16, Epsilon: 1},
		{N: 26641.5691493, T: 0, D: 2, Eta: 25, Beta: 300, Gamma: 1.19, Epsilon: 1},
		{N: -24027.2122046, T: 1, D: 2, Eta: 25, Beta: 300, Gamma: 1.19, Epsilon: 1},
		{N: -283.41603424, T: 3, D: 3, Eta: 15, Beta: 275, Gamma: 1.25, Epsilon: 1},
		{N: 212.472844002, T: 3, D: 3, Eta: 20, Beta: 275, Gamma: 1.22, Epsilon: 1},
	},
	NonAnalytic: []helmholtz.NonAnalytic{
		{N: -0.666422765408, SmallA: 3.5, SmallB: 0.875, Beta: 0.3, A: 0.7, B: 0.3, C: 10, D: 275},
		{N: 0.726086323499, SmallA: 3.5, SmallB: 0.925, Beta: 0.3, A: 0.7, B: 0.3, C: 10, D: 275},
		{N: 0.0550686686128, SmallA: 3, SmallB: 0.875, Beta: 0.3, A: 0.7, B: 1, C: 12.5, D: 275},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 1.99427042, T: 3.15163},
			{N: 0.62105248, T: 6.1119},
			{N: 0.41195293, T: 6.77708},
			{N: 1.04028922, T: 11.32384},
			{N: 0.08327678, T: 27.08792},
		},
		LogTau: 2.5,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          304.1282, Y0: 7377300,
		Terms: []helmholtz.Term{
			{N: -5.867399337600407, T: 0.983},
			{N: -7.10969550015274, T: 1.322},
			{N: 11.022781986239263, T: 1.488},
			{N: 4.8260764050219995, T: 2.807},
			{N: -6.240803382557819, T: 3.571},
			{N: -6.7009642572439, T: 1.941},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 304.1282, Y0: 10624.906299999999,
		Terms: []helmholtz.Term{
			{N: 0.861951794789174, T: 0.264},
			{N: 5.535795098719573, T: 0.672},
			{N: -21.766373764605415, T: 0.986},
			{N: 20.01416999278327, T: 1.092},
			{N: -2.2218647220786862, T: 1.714},
			{N: 888.2387848519858, T: 9.902},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          304.1282, Y0: 10624.906299999999,
		Terms: []helmholtz.Term{
			{N: -1.1635587811569494, T: 0.306},
			{N: -3.64216164754343, T: 0.569},
			{N: 2.7773118075713237, T: 0.677},
			{N: -3.2573848494624533, T: 0.891},
			{N: -1.9739104682508852, T: 3.206},
			{N: -16.057319994659142, T: 6.093},
		},
	},
}
