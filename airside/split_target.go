package airside

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

var (
	splitTargetSource = fact.Source{
		Title:    "California Energy Commission, Reference Appendices, Table RA3.2-3",
		Standing: fact.FromMemory,
	}
	splitToleranceSource = fact.Source{
		Title:    "California Energy Commission, Reference Appendices 2008, RA3.2.2.7: ±3 °F",
		Standing: fact.Published,
	}
)

// SplitTolerance is how far a measured split may be off its target, either way:
// 3 °F. California Energy Commission, Reference Appendices 2008 (CEC-400-2008-004-CMF),
// RA3.2.2.7. A split farther below its target passes there after the temperatures were
// measured again, and means a low capacity more likely than much air.
const SplitTolerance = quantity.TemperatureDelta(3 / 1.8)

// TargetSplit returns the temperature split, return less supply dry bulb, that a
// cooling coil with about 400 CFM per ton and the right capacity shows once it
// runs steadily, from the dry and wet bulb of the air entering it.
//
// It is Table RA3.2-3 of the California Energy Commission's Reference
// Residential Appendix as a smooth function. The table falls off with the wet
// bulb as a parabola and rises with the dry bulb as a straight line, rounded to
// 0.1 °F: the four coefficients here, the least-squares fit to its cells, meet
// each within 0.06 °F, and the residuals are those of the rounding. The more
// moisture there is to condense, the less of the coil is left to cool.
//
// The answer holds where the table has one: return dry bulb 70 to 84 °F and wet
// bulb 50 to 76 °F, without the driest corner from 77 °F dry bulb on. Elsewhere
// the error is a *RangeError. The table was made for sea level; at the same CFM
// thinner air shows a larger split, see [SplitAltitude].
func TargetSplit(
	returnDryBulb, returnWetBulb quantity.Temperature,
) (quantity.TemperatureDelta, error) {
	target, _, _, err := splitTarget(returnDryBulb, returnWetBulb)
	return target, err
}

// splitTarget returns the target and its derivatives by dry and wet bulb.
func splitTarget(
	dryBulb, wetBulb quantity.Temperature,
) (target quantity.TemperatureDelta, perDryBulb, perWetBulb float64, err error) {
	const roundoff = 1e-9 // °F, of a conversion
	db, wb := dryBulb.Fahrenheit(), wetBulb.Fahrenheit()
	switch {
	case !(db >= splitMinDryBulb-roundoff && db <= splitMaxDryBulb+roundoff):
		return 0, 0, 0, limit.Within(
			"return dry bulb for a target split", dryBulb, quantity.Fahrenheit(splitMinDryBulb),
			quantity.Fahrenheit(splitMaxDryBulb),
			"the table of target splits ends there: "+
				"bring the building toward its usual temperature, or measure the airflow itself",
		)
	case !(wb <= db+roundoff):
		return 0, 0, 0, &RangeError{
			Quantity: "return wet bulb for a target split",
			Value:    wetBulb,
			Max:      dryBulb,
			Advice:   "a wet bulb is never above the dry bulb: are the two readings swapped?",
		}
	case !(wb >= driestSplit(db)-roundoff && wb <= splitMaxWetBulb+roundoff):
		return 0, 0, 0, limit.Within(
			"return wet bulb for a target split", wetBulb, quantity.Fahrenheit(driestSplit(db)),
			quantity.Fahrenheit(splitMaxWetBulb),
			"the table of target splits ends there at this dry bulb: "+
				"is the wick wet and in moving air? If it is, measure the airflow itself",
		)
	}
	x, y := db-splitCenterDryBulb, wb-splitCenterWetBulb
	perDryBulb = splitPerDryBulb
	perWetBulb = splitPerWetBulb + 2*splitPerWetBulb2*y
	fahrenheit := splitAtCenter + splitPerDryBulb*x + y*(splitPerWetBulb+splitPerWetBulb2*y)
	return quantity.FahrenheitDelta(fahrenheit), perDryBulb, perWetBulb, nil
}

// Coefficients and borders, in °F.
const (
	splitCenterDryBulb, splitCenterWetBulb = 77, 63

	splitAtCenter    = 19.699503
	splitPerDryBulb  = 0.5443331
	splitPerWetBulb  = -0.6784408
	splitPerWetBulb2 = -0.02281919

	splitMinDryBulb, splitMaxDryBulb = 70, 84
	splitMinWetBulb, splitMaxWetBulb = 50, 76
)

// driestWetBulbs are the lowest wet bulbs that the table has from a dry bulb of
// 76 °F on, where it narrows.
var driestWetBulbs = [...]float64{50, 51, 53, 55, 56, 57, 58, 59, 59}

// driestSplit is the lowest wet bulb that the table has at a dry bulb, in
// straight lines between its rows.
func driestSplit(dryBulb float64) float64 {
	x := min(
		max(dryBulb-(splitMaxDryBulb-float64(len(driestWetBulbs)-1)), 0),
		float64(len(driestWetBulbs)-1),
	)
	i := min(int(x), len(driestWetBulbs)-2)
	return driestWetBulbs[i] + (x-float64(i))*(driestWetBulbs[i+1]-driestWetBulbs[i])
}
