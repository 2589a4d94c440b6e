package diagnose

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/refrigerant"
)

// A thermostatic valve closes before the superheat is gone: of some 3,600 machines that were drawn
// with a valve that feeds as it should, by either generator of the trial and whatever else was
// wrong with them, none read below 5 °F, but for a suction gauge off zero, another refrigerant and
// hoses that were swapped. The likelihood of the readings has wide tails there, for causes that let
// the superheat rise far above the setting; so a superheat under this floor is weighed once more,
// as something seen.
const valveFloor = 4 / 1.8 // K

// An electronic valve has no spring: it keeps what its controller aims at, and one that aims at a
// temperature of discharge lets the superheat at the clamp fall to little or nothing (common
// practice, no source). Liquid there is a sign all the same, of less weight.
const controlledFloor, controlledUsual = 0, 0.1

// floorPassed is the clue of a superheat below the floor of a valve. Its chances are common
// practice, no source.
var floorPassed = clue{
	code: "sight.below-valve-floor", usual: 0.03,
	of: map[Code]float64{
		Overfeed: 0.7, "iced-coil": 0.4, LowIndoorAir: 0.05, LowLoad: 0.08, LowAmbient: 0.08,
		Overcharge: 0.05, OtherRefrigerant: 0.3, NotPumping: 0.2, NextToEmpty: 0.1,
		compressorStopped: 0.5, SuctionGauge: 0.2, SuctionHose: 0.5, Altitude: 0.08, HosesSwapped: 0.9,
		ClampsSwapped: 0.2, Heating: 0.5, readingsClash: 0.4,
	},
}

// passedFloor is the clue where the superheat says so, as surely as it does.
func passedFloor(e *Evidence, r *readings) (k clue, yes bool) {
	if !r.have[rEvaporating] || !r.have[rSuctionLine] {
		return clue{}, false
	}
	k = floorPassed
	floor := valveFloor
	switch e.Metering {
	case refrigerant.TXV:
	case refrigerant.EXV:
		floor, k.usual = controlledFloor, controlledUsual
	default:
		return clue{}, false
	}
	superheat := r.value[rSuctionLine] - r.value[rEvaporating] - r.evapGlide
	std := math.Hypot(r.std[rSuctionLine], r.std[rEvaporating])
	k.doubt = normal.Below((superheat - floor) / std)
	return k, k.doubt < 0.999
}
