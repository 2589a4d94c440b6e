package charge

import "github.com/satline/satline/quantity"

// A SmoothTarget is the target superheat of a fixed restrictor with its
// derivatives.
type SmoothTarget struct {
	Target quantity.TemperatureDelta `json:"target"`
	// PerWetBulb is degrees of target per degree of return wet bulb, about
	// 1.5: of all readings, the wet bulb counts most.
	PerWetBulb float64 `json:"perWetBulb"`
	// PerOutdoor is degrees of target per degree of outdoor dry bulb, about −0.5.
	PerOutdoor float64 `json:"perOutdoor"`
}

// SmoothSuperheat is TableSuperheat as a smooth function: a polynomial
// of fifth degree in both temperatures, the least-squares fit to the cells of
// Table RA3.2-2, which it meets within 0.5 °F everywhere and 0.1 °F as a rule.
// It has an answer where the table has one, with the same errors.
func SmoothSuperheat(returnWetBulb, outdoorDryBulb quantity.Temperature) (SmoothTarget, error) {
	wb, db := returnWetBulb.Fahrenheit(), outdoorDryBulb.Fahrenheit()
	if _, at := tabulatedSuperheat(wb, db); at != onTable {
		return SmoothTarget{}, offTableError(at, returnWetBulb, outdoorDryBulb)
	}
	t, perWB, perDB := smoothSuperheat(wb, db)
	return SmoothTarget{quantity.FahrenheitDelta(t), perWB, perDB}, nil
}

// The polynomial runs in x and y, both within ±1 over the table.
const (
	smoothDegree               = 5
	wetBulbCenter, wetBulbHalf = 63.0, 13.0
	outdoorCenter, outdoorHalf = 85.0, 30.0
)

// smoothCoefficients[i][j] is the coefficient of xⁱ·yʲ, in °F.
var smoothCoefficients = [smoothDegree + 1][smoothDegree + 1]float64{
	{10.370419, -19.505382, -1.270638, 1.151686, 0.010231, -0.372825},
	{22.822694, 14.034400, 9.002807, -2.221054, -0.156811},
	{-3.711531, -16.942850, -13.311308, 1.524825}, {8.813042, 17.840345, 6.807386},
	{-6.035294, -6.584619}, {0.619918},
}

// smoothSuperheat returns the target in °F and its two derivatives.
func smoothSuperheat(wetBulb, outdoor float64) (target, perWetBulb, perOutdoor float64) {
	x, y := (wetBulb-wetBulbCenter)/wetBulbHalf, (outdoor-outdoorCenter)/outdoorHalf
	for i := smoothDegree; i >= 0; i-- {
		row, rowSlope := 0.0, 0.0
		for j := smoothDegree - i; j >= 0; j-- {
			rowSlope = rowSlope*y + row
			row = row*y + smoothCoefficients[i][j]
		}
		perWetBulb = perWetBulb*x + target
		target = target*x + row
		perOutdoor = perOutdoor*x + rowSlope
	}
	return target, perWetBulb / wetBulbHalf, perOutdoor / outdoorHalf
}
