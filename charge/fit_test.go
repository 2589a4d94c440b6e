package charge

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The coefficients of the smooth target are the least-squares solution over the
// cells of the table, and nothing else.
func TestSmoothCoefficientsAreTheFit(t *testing.T) {
	var rows [][]float64
	var values []float64
	for i := range superheatTable {
		for j, v := range superheatTable[i] {
			if v == no {
				continue
			}
			x := (float64(tableMinWetBulb+j) - wetBulbCenter) / wetBulbHalf
			y := (float64(tableMinOutdoor+i) - outdoorCenter) / outdoorHalf
			var row []float64
			for p := 0; p <= smoothDegree; p++ {
				for q := 0; p+q <= smoothDegree; q++ {
					row = append(row, math.Pow(x, float64(p))*math.Pow(y, float64(q)))
				}
			}
			rows, values = append(rows, row), append(values, v)
		}
	}
	a := mat.NewDense(len(rows), len(rows[0]), nil)
	for i, row := range rows {
		a.SetRow(i, row)
	}
	var fit mat.VecDense
	if err := fit.SolveVec(a, mat.NewVecDense(len(values), values)); err != nil {
		t.Fatal(err)
	}
	k := 0
	for p := 0; p <= smoothDegree; p++ {
		for q := 0; p+q <= smoothDegree; q++ {
			if got, want := smoothCoefficients[p][q], fit.AtVec(k); math.Abs(got-want) > 1e-5 {
				t.Errorf("coefficient [%d][%d] = %v, the fit gives %.6f", p, q, got, want)
			}
			k++
		}
	}
}
