package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// akasaka2014 is the pairs fitted in the paper that akasaka2014Source names.
var akasaka2014 = []helmholtz.Pair{
	{First: "R-134a", Second: "R-245fa", BetaT: 1, GammaT: 1.00643,
		BetaV: 0.992025, GammaV: 1,
		F: 0.107754, Departure: &departureMethaneEthane, Source: akasaka2014Source},
}

const akasaka2014Source = `Ryo Akasaka, "A Thermodynamic Property Model for the R-134a/245fa ` +
	`Mixtures", 15th International Refrigeration and Air Conditioning Conference at Purdue, 2014`
