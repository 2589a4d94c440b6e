package simulate

import (
	"math/rand/v2"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
)

// An extra is a reading that is taken on a share of the visits.
type extra struct {
	code  string // of the measurement that asks for it
	share float64
	take  func(*rand.Rand, *diagnose.Evidence, *written)
}

var extras = []extra{
	{"discharge-line", 0.8, func(rng *rand.Rand, e *diagnose.Evidence, w *written) {
		e.DischargeLine = thermometer(rng, w.discharge, hotStd)
	}},
	{"supply-wet-bulb", 0.75, func(rng *rand.Rand, e *diagnose.Evidence, w *written) {
		e.SupplyWetBulb = thermometer(rng, w.supplyWet, wetStd)
	}},
	{"condenser-leaving", 0.5, func(rng *rand.Rand, e *diagnose.Evidence, w *written) {
		e.CondenserLeaving = thermometer(rng, w.leaving, leaveStd)
	}},
	{"airflow", 0.3, func(rng *rand.Rand, e *diagnose.Evidence, w *written) {
		e.Airflow = &quantity.Uncertain[quantity.VolumeFlow]{
			Value: quantity.VolumeFlow(w.flow * (1 + flowStd*rng.NormFloat64())),
			Std:   flowStd * w.flow,
		}
	}},
	{"power", 0.4, func(rng *rand.Rand, e *diagnose.Evidence, w *written) {
		e.Power = &quantity.Uncertain[quantity.Power]{
			Value: quantity.Power(w.power * (1 + powerStd*rng.NormFloat64())),
			Std:   powerStd * w.power,
		}
	}},
}

func thermometer(rng *rand.Rand, x, std float64) readcheck.Temp {
	u := quantity.Temperature(x + std*rng.NormFloat64()).PlusMinus(quantity.KelvinDelta(std))
	return &u
}

// Read returns the evidence with one more reading, named by the code of the
// measurement that asks for it; false where it is no reading but a look or
// a test.
func (v *Visit) Read(rng *rand.Rand, code string) (diagnose.Evidence, bool) {
	e := v.Evidence
	i := slices.IndexFunc(extras, func(x extra) bool { return x.code == code })
	if i < 0 {
		return e, false
	}
	extras[i].take(rng, &e, v.ports)
	return e, true
}

// found is how often a look or test says yes where there is something to find,
// and where there is not. Common practice.
type found struct{ present, absent float64 }

var usuallyFound = found{0.93, 0.04}

// Leaks hide; a blower that is slow looks as one that is not; a coil may be
// dirty and still do.
var otherwiseFound = map[string]found{
	"elevation": {1, 0}, "refrigerant-label": {0.98, 0.01},
	"oil-and-leak": {0.6, 0.05}, "pressures-at-stop": {0.8, 0.07},
	"indoor-air-path": {0.8, 0.1}, "static-pressure": {0.65, 0.12}, "outdoor-coil": {0.9, 0.1},
}

// Look returns what a look or test says: yes or no.
func (v *Visit) Look(rng *rand.Rand, code string) bool {
	f, ok := otherwiseFound[code]
	if !ok {
		f = usuallyFound
	}
	if slices.Contains(v.shows, code) {
		return rng.Float64() < f.present
	}
	return rng.Float64() < f.absent
}
