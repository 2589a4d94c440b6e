package diagnose

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// The small factorization against gonum's.
func TestTriangleAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for n := 1; n <= features; n += 3 {
		root := mat.NewDense(n, n, nil)
		for i := range n {
			for j := range n {
				root.Set(i, j, rng.NormFloat64())
			}
		}
		var full mat.Dense
		full.Mul(root, root.T())
		sym := mat.NewSymDense(n, nil)
		var own triangle
		for i := range n {
			for j := range i + 1 {
				x := full.At(i, j)
				if i == j {
					x += 0.1
				}
				sym.SetSym(i, j, x)
				own.l[i][j] = x
			}
		}
		var chol mat.Cholesky
		if !chol.Factorize(sym) || !own.factor(n) {
			t.Fatalf("n = %d: not positive definite", n)
		}
		x := make([]float64, n)
		w := workspace{n: n}
		var cov [packed]float64
		for i := range x {
			x[i] = rng.NormFloat64()
			w.x[i] = x[i]
			for j := range i + 1 { // half of it noise
				cov[place(i, j)], w.noise[place(i, j)] = sym.At(i, j)/2, sym.At(i, j)/2
			}
		}
		before := w.x
		if _, _, ok := w.whiten(&cov); !ok ||
			math.Abs(w.logDet-chol.LogDet()) > 1e-9*(1+math.Abs(w.logDet)) {
			t.Errorf("n = %d: log det %v, gonum %v", n, w.logDet, chol.LogDet())
		}
		var solved mat.VecDense
		if err := chol.SolveVecTo(&solved, mat.NewVecDense(n,
			append([]float64(nil), x...))); err != nil {
			t.Fatal(err)
		}
		want := mat.Dot(&solved, mat.NewVecDense(n, append([]float64(nil), x...)))
		own.whiten(x)
		got := 0.0
		for _, v := range x {
			got += v * v
		}
		step := w.step(n, &before, nil)
		for _, got := range []float64{
			got, w.squared, w.dot(n, &step, &w.x), w.distance(n, &[features]float64{}, nil),
		} {
			if math.Abs(got-want) > 1e-8*want {
				t.Errorf("n = %d: distance %v, gonum %v", n, got, want)
			}
		}
	}
}

func TestTriangleRefusesIndefinite(t *testing.T) {
	var own triangle
	own.l[0][0], own.l[1][0], own.l[1][1] = 1, 2, 1
	if own.factor(2) {
		t.Error("an indefinite matrix was factored")
	}
}

// In one dimension, up to a constant, gonum's Student t of the same variance.
func TestStudentAgainstGonum(t *testing.T) {
	const variance = 2.3
	ref := distuv.StudentsT{Mu: 0, Sigma: math.Sqrt(variance * (tails - 2) / tails), Nu: tails}
	at := func(x float64) float64 {
		return logStudent(1, math.Log(variance), x*x/variance) - ref.LogProb(x)
	}
	for _, x := range []float64{0.3, 1, 4, 20} {
		if d := at(x) - at(0); math.Abs(d) > 1e-12 {
			t.Errorf("at %v off by %v", x, d)
		}
	}
}
