package helmholtz_test

import (
	"testing"

	"github.com/satline/satline/internal/tool/verify"
)

// The terms for the critical region and all others of water, against the values
// that the release prints for the check of a program: table 6 gives the
// derivatives of the residual part, from which p and cv of the residual part
// follow.
func TestWaterResidualDerivatives(t *testing.T) {
	source := verify.Source{
		Cite: "IAPWS R6-95(2018), table 6, as tests of public libraries reprint it",
		Kind: verify.Published,
	}
	m := model(t, []string{"R-718"}, []float64{1})
	for _, want := range []struct{ t, rho, a, ad, add float64 }{
		{500, 838.025, -3.42693206, -0.364366650, 0.856063701},
		{647, 358, -1.21202657, -0.714012024, 0.475730696},
	} {
		e := m.Evaluator()
		e.SetT(want.t)
		r := e.ResidualAt(want.rho / m.MolarMass())
		e.Release()
		delta := want.rho / 322
		verify.Relative(t, source, "φr of water", "1", want.a, r.Alpha, 5e-9)
		verify.Relative(t, source, "∂φr/∂δ of water", "1", want.ad, r.D1/delta, 5e-9)
		verify.Relative(
			t, source, "∂²φr/∂δ² of water", "1", want.add, (r.D2-r.D1)/(delta*delta), 5e-9,
		)
	}
}

func BenchmarkState(b *testing.B) {
	for _, c := range []struct {
		name  string
		parts []string
		x     []float64
	}{
		{"R-32", []string{"R-32"}, []float64{1}}, {"R-1234yf", []string{"R-1234yf"}, []float64{1}},
		{"five", []string{"R-32", "R-125", "R-134a", "R-600", "R-601a"},
			[]float64{0.16, 0.37, 0.43, 0.03, 0.01}},
	} {
		m := model(b, c.parts, c.x)
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				m.At(295, 200)
			}
		})
	}
}
