package diagnose

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
)

// No liquid is warmer than it boils at, and where gas leaves the condenser with it the line reads
// just that: of 7,707 machines drawn by the generators of the trial, 5,346 of them with a fault but
// none with a wrong gauge, clamp, hose or refrigerant, nine read more than two and a half standard
// uncertainties above it. A clamp in the sun or beside a hot pipe does, and a gauge that reads too
// low.
const mostOverLiquid = 1 // K

// overLiquidSeen is the clue of a liquid line that is warmer. Its chances are common practice, no
// source.
var overLiquidSeen = clue{
	code: "sight.liquid-over-saturation", usual: 0.02,
	of: map[Code]float64{
		LiquidClamp: 0.6, LiquidGauge: 0.5, LiquidHose: 0.6, Altitude: 0.1, OtherRefrigerant: 0.3,
		HosesSwapped: 0.9, ClampsSwapped: 0.2, NextToEmpty: 0.4, NotPumping: 0.2,
		compressorStopped: 0.5, Heating: 0.3, readingsClash: 0.4,
	},
}

// overLiquid is the clue where the readings say so, as surely as they do.
func overLiquid(_ *Evidence, r *readings) (k clue, yes bool) {
	if !r.have[rCondensing] || !r.have[rLiquidLine] {
		return clue{}, false
	}
	over := r.value[rLiquidLine] - r.value[rCondensing] + r.condGlide
	std := math.Hypot(r.std[rLiquidLine], r.std[rCondensing])
	k = overLiquidSeen
	k.doubt = normal.Below((mostOverLiquid - over) / std)
	return k, k.doubt < 0.999
}
