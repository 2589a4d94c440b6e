package charge

import (
	"math"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
)

// TableSuperheat returns the superheat that a machine with a fixed restrictor
// should show at the suction line, from the wet bulb of the air returning to
// the indoor coil and the dry bulb of the air entering the condenser: Table
// RA3.2-2 of the California Energy Commission's Reference Residential
// Appendix, read between its cells in straight lines. The reading of the
// machine's own chart, where there is one, comes before it.
//
// The target is high when the coil has much to evaporate (a high wet bulb) and
// low when the condenser pushes hard (a high outdoor temperature).
//
// Where the table has no target, the error is a *NotNowError: do not charge by
// superheat now. A temperature that is not a number is a *RangeError.
func TableSuperheat(
	returnWetBulb, outdoorDryBulb quantity.Temperature,
) (quantity.TemperatureDelta, error) {
	target, at := tabulatedSuperheat(returnWetBulb.Fahrenheit(), outdoorDryBulb.Fahrenheit())
	if at != onTable {
		return 0, offTableError(at, returnWetBulb, outdoorDryBulb)
	}
	return quantity.FahrenheitDelta(target), nil
}

// place says where two temperatures fall in the table.
type place int

const (
	onTable place = iota
	notANumber
	outdoorBelowTable
	outdoorAboveTable
	wetBulbBelowTable
	wetBulbAboveTable
	targetBelowFloor
)

// roundoff lets a temperature that was converted from another unit sit on the
// border of the table.
const roundoff = 1e-9

// tabulatedSuperheat works in °F throughout.
func tabulatedSuperheat(wetBulb, outdoor float64) (float64, place) {
	switch {
	case math.IsNaN(wetBulb) || math.IsNaN(outdoor):
		return 0, notANumber
	case outdoor < tableMinOutdoor-roundoff:
		return 0, outdoorBelowTable
	case outdoor > tableMaxOutdoor+roundoff:
		return 0, outdoorAboveTable
	case wetBulb < tableMinWetBulb-roundoff:
		return 0, wetBulbBelowTable
	case wetBulb > tableMaxWetBulb+roundoff:
		return 0, wetBulbAboveTable
	}
	i, u := cell(outdoor-tableMinOutdoor, tableMaxOutdoor-tableMinOutdoor)
	j, v := cell(wetBulb-tableMinWetBulb, tableMaxWetBulb-tableMinWetBulb)
	low := (1-v)*corner(i, j) + v*corner(i, j+1)
	high := (1-v)*corner(i+1, j) + v*corner(i+1, j+1)
	target := (1-u)*low + u*high
	if target < targetFloorF-roundoff {
		return 0, targetBelowFloor
	}
	return target, onTable
}

var targetFloorF = targetFloor.value.Fahrenheit()

// cell returns the step of 1 °F that x falls in and how far into it.
func cell(x float64, last int) (int, float64) {
	i := min(max(int(x), 0), last-1)
	return i, min(max(x-float64(i), 0), 1)
}

// corner returns a cell of the table. Where the table says that there is no
// target it is below 5 °F; the smooth function says how far, so that the limit
// of the method does not jump by whole degrees between cells.
func corner(i, j int) float64 {
	if t := superheatTable[i][j]; t != no {
		return t
	}
	const highestUntabulated = 4.95 // the table is rounded to 0.1 °F
	t, _, _ := smoothSuperheat(float64(tableMinWetBulb+j), float64(tableMinOutdoor+i))
	return min(t, highestUntabulated)
}

func offTableError(at place, wetBulb, outdoor quantity.Temperature) error {
	switch at {
	case outdoorBelowTable:
		return &NotNowError{Superheat, &outdoorCold, outdoor}
	case outdoorAboveTable:
		return &NotNowError{Superheat, &outdoorAbove, outdoor}
	case wetBulbBelowTable:
		return &NotNowError{Superheat, &wetBulbBelow, wetBulb}
	case wetBulbAboveTable:
		return &NotNowError{Superheat, &wetBulbAbove, wetBulb}
	case targetBelowFloor:
		return &NotNowError{Superheat, &targetTooLow, nil}
	}
	bad, what := wetBulb, "return wet bulb"
	if math.IsNaN(float64(outdoor)) {
		bad, what = outdoor, "outdoor dry bulb"
	}
	return &RangeError{
		Quantity: what,
		Value:    bad,
		Min:      quantity.Fahrenheit(tableMinWetBulb),
		Max:      quantity.Fahrenheit(tableMaxOutdoor),
		Advice:   "read it again; this is not a number",
	}
}

// FormulaSuperheat is the well-known line (3·WB − 80 − DB)/2 in °F, a check
// on the table: common practice, no source. It lies within 3.5 °F of the table
// at return wet bulbs from 58 to 72 °F and outdoor temperatures from 65 to
// 105 °F, and drifts off beyond; 0 of what is no number. It is never used as a target.
func FormulaSuperheat(
	returnWetBulb, outdoorDryBulb quantity.Temperature,
) quantity.TemperatureDelta {
	return finite.OrZero(
		quantity.FahrenheitDelta(
			(3*returnWetBulb.Fahrenheit() - 80 - outdoorDryBulb.Fahrenheit()) / 2,
		),
	)
}
