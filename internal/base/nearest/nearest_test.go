package nearest

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// A straight line through two readings, held towards nought: the normal equations by hand.
func TestLine(t *testing.T) {
	misses := func(by []float64) ([]float64, error) {
		sum, less := (by[0]+by[1]-3)/0.1, (by[0]-by[1]-1)/0.1
		return []float64{sum, less, by[0] / 10, by[1] / 10}, nil
	}
	by, err := Find(misses, []float64{10, 10})
	if err != nil || math.Abs(by[0]-2) > 0.001 || math.Abs(by[1]-1) > 0.001 {
		t.Errorf("%v, %v", by, err)
	}
	others, err := Around(misses, by)
	if err != nil || len(others) != 2 {
		t.Fatal(others, err)
	}
	for k := range by {
		sum := 0.0
		for _, o := range others {
			sum += (o[k] - by[k]) * (o[k] - by[k])
		}
		if std := math.Sqrt(sum); math.Abs(std-0.1/math.Sqrt2) > 0.001 {
			t.Errorf("difference %d: ±%.4f", k, std)
		}
	}
	if by, _ = Find(misses, []float64{1, 10}); by[0] != 1 {
		t.Errorf("beyond the most: %v", by)
	}
}

// Where readings hang on the differences a thousand times as steeply as what is usual, and all
// but alike, the differences are those of a factorization that squares nothing.
func TestSteepAndAlike(t *testing.T) {
	slopes := mat.NewDense(6, 3, []float64{
		1000, 990, -300, 400, 401, 20, -250, -240, 900, 1, 0, 0, 0, 1, 0, 0, 0, 1,
	})
	read := mat.NewVecDense(6, []float64{150, 40, -70, 0, 0, 0})
	misses := func(by []float64) ([]float64, error) {
		var m mat.VecDense
		m.MulVec(slopes, mat.NewVecDense(3, by))
		m.SubVec(&m, read)
		return m.RawVector().Data, nil
	}
	var want mat.VecDense
	if err := want.SolveVec(slopes, read); err != nil {
		t.Fatal(err)
	}
	by, err := Find(misses, []float64{100, 100, 100})
	if err != nil {
		t.Fatal(err)
	}
	for i, got := range by {
		if math.Abs(got-want.AtVec(i)) > 1e-6 {
			t.Errorf("difference %d is %v, want %v", i, got, want.AtVec(i))
		}
	}
}

func TestMissesFail(t *testing.T) {
	failed := errors.New("no")
	misses := func([]float64) ([]float64, error) { return nil, failed }
	if _, err := Find(misses, []float64{1}); err != failed {
		t.Error(err)
	}
	if _, err := Around(misses, []float64{1}); err != failed {
		t.Error(err)
	}
}
