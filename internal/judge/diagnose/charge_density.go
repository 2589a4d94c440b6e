package diagnose

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
)

// A chargeDensity is the chance of each cell.
type chargeDensity [chargeCells]float64

// The cells of a belief: even steps of the relative error from empty to far too much. The
// edges of the band are edges of cells.
const (
	chargeStep  = 0.01
	chargeLeast = -1.0
	chargeMost  = 0.7
	chargeCells = 170
)

// middle of a cell.
func chargeAt(cell int) float64 { return chargeLeast + (float64(cell)+0.5)*chargeStep }

func chargeCell(x float64) int {
	return min(max(int((x-chargeLeast)/chargeStep), 0), chargeCells-1)
}

// bandCells are the first cell of the band, and the first past it.
func bandCells() (low, high int) {
	return chargeCell(-ChargeBand + chargeStep/2), chargeCell(ChargeBand + chargeStep/2)
}

// ownCharge is the standard deviation of the charge of machines that are charged right:
// a scale, the line set estimated, what was lost at the hoses. Common practice.
const ownCharge = 0.02

var rightly = func() (w chargeDensity) {
	for i := range w {
		edge := chargeLeast + float64(i)*chargeStep
		w[i] = normal.Below((edge+chargeStep)/ownCharge) - normal.Below(edge/ownCharge)
	}
	return w
}()

// spreadAbout adds a triangle about a charge.
func (d *chargeDensity) spreadAbout(charge, within, weight float64) {
	sum := 0.0
	from, to := chargeCell(charge-within), chargeCell(charge+within)
	for i := from; i <= to; i++ {
		sum += max(0, within-math.Abs(chargeAt(i)-charge))
	}
	for i := from; i <= to && sum > 0; i++ {
		d[i] += weight * max(0, within-math.Abs(chargeAt(i)-charge)) / sum
	}
}

// moments of weighted values.
type moments struct{ weight, sum, square float64 }

func (m *moments) take(weight, x float64) {
	m.weight += weight
	m.sum += weight * x
	m.square += weight * x * x
}

func (m *moments) spread() Spread {
	if m.weight <= 0 {
		return Spread{}
	}
	mean := m.sum / m.weight
	return Spread{mean, math.Sqrt(max(0, m.square/m.weight-mean*mean))}
}
