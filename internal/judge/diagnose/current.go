package diagnose

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// The current of a compressor says of its load what the power of the machine does, less
// sharply. A compressor at rated conditions draws about 0.78 of the rated load current of its
// label, which is set by what it may draw without end; common practice, no source.
const (
	usualLoad    = 0.78
	usualLoadStd = 20 // percent, between makes
	// leastLoad stands for no current.
	leastLoad = 0.03
)

// takeCurrent takes the current in where the power was not read.
func (r *readings) takeCurrent(e *Evidence, sound *signature.Sound) {
	if e.Current == nil || e.RatedLoadCurrent <= 0 || r.have[rPower] || e.Current.Value < 0 {
		return
	}
	load := max(leastLoad, float64(e.Current.Value/e.RatedLoadCurrent))
	r.ratedPower = sound.Mean(sound.At(signature.Rated, r.fluid))[signature.Power]
	r.value[rPower] = r.ratedPower + 100*math.Log(load/usualLoad)
	r.std[rPower] = math.Hypot(usualLoadStd, 100*e.Current.Std/float64(e.RatedLoadCurrent)/load)
	r.have[rPower], r.byCurrent = true, true
}

// ampere turns the power that a current stands for into the current.
func (r *readings) ampere(e *Evidence, power float64) float64 {
	return float64(e.RatedLoadCurrent) * usualLoad * math.Exp((power-r.ratedPower)/100)
}
