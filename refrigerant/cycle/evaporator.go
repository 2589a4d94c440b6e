package cycle

import (
	"math"

	"github.com/satline/satline/internal/physics/coil"
)

// The evaporator is a coil in two zones side by side in the air: two phases, on which
// the air also leaves water, and superheated vapor, dry. The first is the wet coil of
// package airside's kernel at the mean of the evaporating temperatures, so a blend's
// glide is in it; the second is as in the condenser. The share of the first follows
// from what there is to evaporate. Where the coil is too small for that, all of it is
// wet with refrigerant and liquid leaves.

// evaporated is what leaves the evaporator, refrigerant and air.
type evaporated struct {
	h, t, v  float64
	x        float64 // quality at the outlet; above 1 superheated
	twoPhase float64 // share of the coil
	heat     float64 // W from the air

	air         coil.Result // of the two-phase zone, as if it were the whole coil
	superheated float64     // W taken by the superheated zone
}

func (t *trial) evaporate(m, h, refUA float64) {
	b := &t.evap
	latent := b.Dew.H - b.Bubble.H
	x := min(max((h-b.Bubble.H)/latent, 0), 1)
	mid := (x + 1) / 2
	te := b.Bubble.T + mid*(b.Dew.T-b.Bubble.T)
	// Half of the coil's pressure drop is above its mean, by Clausius and Clapeyron.
	te += t.evaporator.drop / 2 * m * m * t.gas.V * b.Dew.T * (b.Dew.V - b.Bubble.V) / latent

	e := evaporated{air: t.air.Through(t.dryAir, te, t.airUA, refUA)}
	need := m * (b.Dew.H - h)
	if e.air.Heat <= need {
		e.twoPhase = 1
		e.heat = e.air.Heat
		out := b.AtEnthalpy(h + e.heat/m)
		e.h, e.t, e.v, e.x = out.H, out.T, out.V, out.X
		t.evaporated = e
		return
	}
	start, startT := b.Dew.H, b.Dew.T
	if need > 0 {
		e.twoPhase = need / e.air.Heat
	} else if h > b.Dew.H {
		s := b.AtEnthalpy(h)
		start, startT = h, s.T
	}
	airC := t.dryAir * t.air.HeatCapacity()
	ua := 1 / (1/t.airUA + 1/(refUA*vaporInEvaporator))
	q := airC * -math.Expm1(-ua/airC) * (1 - e.twoPhase)
	out := b.VaporAt(t.returnT - (t.returnT-startT)*math.Exp(-q/(m*b.DewHeatCapacity())))
	e.h, e.t, e.v, e.x = out.H, out.T, out.V, out.X
	e.superheated = m * (out.H - start)
	e.heat = max(need, 0) + e.superheated
	t.evaporated = e
}
