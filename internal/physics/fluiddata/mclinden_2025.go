package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// mcLinden2025 is the pairs fitted in the paper that mcLinden2025Source names.
var mcLinden2025 = []helmholtz.Pair{
	{First: "R-1132(E)", Second: "R-32", BetaT: 0.9509, GammaT: 1.0281,
		BetaV: 1.0336, GammaV: 1.004, Source: mcLinden2025Source},
	{First: "R-1132(E)", Second: "R-1234yf", BetaT: 0.9835, GammaT: 0.9999,
		BetaV: 0.9972, GammaV: 1.0197, Source: mcLinden2025Source},
}

const mcLinden2025Source = `Mark O. McLinden, Katrina N. Avery, Ala Bazyleva, Ian H. Bell, Tara ` +
	`J. Fortin, Marcia L. Huber, Andrei F. Kazakov, Eric W. Lemmon, Stephanie L. Outcalt, ` +
	`Richard A. Perkins, Elizabeth G. Rasmussen, Demian Riccardi and Aaron J. Rowane, ` +
	`"Refrigerant Properties Development R&D - Final Report to U.S. Department of Energy on ` +
	`Interagency Agreements 892434-19-S-EE000031 and 892434-23-S-EE000120", National Institute ` +
	`of Standards and Technology, Gaithersburg, MD, 2025, doi:10.6028/NIST.IR.8570`
