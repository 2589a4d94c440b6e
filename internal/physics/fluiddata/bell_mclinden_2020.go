package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// bellMcLinden2020 is the pairs fitted in the paper that bellMcLinden2020Source names.
var bellMcLinden2020 = []helmholtz.Pair{
	{First: "R-744", Second: "R-13I1", BetaT: 1.01377, GammaT: 0.963166,
		BetaV: 1, GammaV: 1, Source: bellMcLinden2020Source},
}

const bellMcLinden2020Source = `Ian H. Bell and Mark O. McLinden, "The Status of Thermodynamic ` +
	`Data and Models for CF3I and its Mixtures", Int. J. Thermophys. 41, 2020, pp. 125, ` +
	`doi:10.1007/s10765-020-02700-4`
