package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// r12 is R-12 (dichlorodifluoromethane).
var r12 = helmholtz.Fluid{
	Designation: "R-12",
	Source: `Volker Marx, Andreas Pruß and Wolfgang Wagner, "Neue Zustandsgleichung für R 12, R ` +
		`22, R 11 und R 113 - Beschreibung des thermodynamischen Zustandsverhaltens bei ` +
		`Temperaturen bis 525 K und Drücken bis 200 MPa", VDI Verlag 19, 1992`,
	MolarMass:   0.120913,
	GasConstant: 8.314471,

	TripleT: 116.099,
	MaxT:    525,
	MaxP:    200e6,

	ReducingT:   385.12,
	ReducingRho: 4672.781255944357,

	CriticalT:   385.12,
	CriticalP:   4136100,
	CriticalRho: 4672.781255944357,

	Power: []helmholtz.Power{
		{N: 2.075343402, T: 0.5, D: 1},
		{N: -2.962525996, T: 1, D: 1},
		{N: 0.01001589616, T: 2, D: 1},
		{N: 0.01781347612, T: 2.5, D: 2},
		{N: 0.02556929157, T: -0.5, D: 4},
		{N: 0.002352142637, T: 0, D: 6},
		{N: -8.495553314e-05, T: 0, D: 8},
		{N: -0.01535945599, T: -0.5, D: 1, L: 1},
		{N: -0.2108816776, T: 1.5, D: 1, L: 1},
		{N: -0.01654228806, T: 2.5, D: 5, L: 1},
		{N: -0.0118131613, T: -0.5, D: 7, L: 1},
		{N: -4.16029583e-05, T: 0, D: 12, L: 1},
		{N: 2.784861664e-05, T: 0.5, D: 12, L: 1},
		{N: 1.618686433e-06, T: -0.5, D: 14, L: 1},
		{N: -0.1064614686, T: 4, D: 1, L: 2},
		{N: 0.0009369665207, T: 4, D: 9, L: 2},
		{N: 0.02590095447, T: 2, D: 1, L: 3},
		{N: -0.04347025025, T: 4, D: 1, L: 3},
		{N: 0.1012308449, T: 12, D: 3, L: 3},
		{N: -0.1100003438, T: 14, D: 3, L: 3},
		{N: -0.003361012009, T: 0, D: 5, L: 3},
		{N: 0.0003789190008, T: 14, D: 9, L: 4},
	},

	Ideal: helmholtz.Ideal{
		Planck: []helmholtz.Term{
			{N: 3.16062357, T: 3.72204562},
			{N: 0.371258136, T: 6.30985083},
			{N: 3.56226039, T: 1.78037889},
			{N: 2.12152336, T: 1.07087607},
		},
		LogTau: 3.00361975,
	},

	VaporPressure: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          385.12, Y0: 4136100.0000000005,
		Terms: []helmholtz.Term{
			{N: -0.4180899251614923, T: 0.894},
			{N: -6.821426208906223, T: 1.009},
			{N: 1.4450198472690974, T: 1.274},
			{N: -1.4837613030063526, T: 3},
			{N: -2.1731387101462754, T: 4.927},
			{N: -5.72739817030707, T: 19.696},
		},
	},
	LiquidDensity: helmholtz.Ancillary{
		Tr: 385.12, Y0: 4672.781255944357,
		Terms: []helmholtz.Term{
			{N: 2.6029953147390845, T: 0.391},
			{N: -1.289157172326326, T: 0.803},
			{N: 1.8650658616334526, T: 1.301},
			{N: -0.7403291941448226, T: 2.566},
			{N: 24.389351468278143, T: 12.555},
			{N: -67.79326638866661, T: 16.134},
		},
	},
	VaporDensity: helmholtz.Ancillary{
		Exponential: true,
		TauFactor:   true,
		Tr:          385.12, Y0: 4672.781255944357,
		Terms: []helmholtz.Term{
			{N: -7.9660647155295505, T: 0.499},
			{N: 23.959910083444367, T: 0.743},
			{N: -23.82796401904973, T: 0.857},
			{N: 3.215927599962643, T: 1.368},
			{N: -4.437766797843962, T: 3.716},
			{N: -3.5598094489847374, T: 14.833},
		},
	},
}
