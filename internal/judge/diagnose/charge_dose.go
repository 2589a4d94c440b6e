package diagnose

import (
	"math"
)

// A dose is at most a tenth of the charge, in steps, and at least what a scale can show.
const leastDose, mostDose = 3, 10

// Dose is the part of the charge to add, or to recover, next: the one with the least expected
// loss.
func (b *ChargeBelief) Dose(add bool) float64 {
	sign := 1
	if !add {
		sign = -1
	}
	share, _ := b.dose(sign)
	return share
}

// perRound is how much of the charge beyond the band costs another round.
const perRound = 0.04

// dose weighs what every dose leads to: what is left costs further rounds, too much has to be
// undone.
func (b *ChargeBelief) dose(sign int) (share, loss float64) {
	undone := float64(addToEnough)
	if sign < 0 {
		undone = recoverFromEnough
	}
	// Weights and moments of the cells before each.
	var weight, moment [chargeCells + 1]float64
	for i, w := range b.density {
		weight[i+1], moment[i+1] = weight[i]+w, moment[i]+w*chargeAt(i)
	}
	low, high := bandCells()
	share, loss = 0, math.Inf(1)
	for k := leastDose; k <= mostDose; k++ {
		left, past := 0.0, 0.0
		for _, w := range b.ways {
			n := int(math.Round(w.mass * float64(k)))
			short := ChargeBand + float64(n)*chargeStep
			if sign > 0 {
				left -= w.chance * (weight[low-n]*short + moment[low-n])
				past += w.chance * (weight[chargeCells] - weight[high-n])
				continue
			}
			left += w.chance *
				(moment[chargeCells] - moment[high+n] - (weight[chargeCells]-weight[high+n])*short)
			past += w.chance * weight[low+n]
		}
		if l := anotherRound*(1+left/perRound) + undone*past; l < loss {
			share, loss = float64(k)*chargeStep, l
		}
	}
	return share, loss
}
