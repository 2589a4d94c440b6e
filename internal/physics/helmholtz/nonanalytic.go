package helmholtz

import "math"

// at is the term with its derivatives, after table 6.5 of the paper. On the
// critical isochore the term's second derivatives have no limit; it is computed
// a hair's breadth off it.
func (t *NonAnalytic) at(delta, tau float64) derivatives {
	x := delta - 1
	if math.Abs(x) < 1e-9 {
		x = 1e-9
		delta = 1 + x
	}
	y := tau - 1
	x2 := x * x
	psi := exp(-t.C*x2 - t.D*y*y)
	if psi == 0 {
		return derivatives{}
	}
	k := 1 / (2 * t.Beta)
	pk := math.Pow(x2, k)
	pa := math.Pow(x2, t.SmallA)
	theta := -y + t.A*pk
	dl := theta*theta + t.B*pa // Δ

	// Δ's derivatives with respect to δ, and θ's.
	th1 := 2 * k * t.A * pk / x
	th2 := th1 * (2*k - 1) / x
	dl1 := 2*theta*th1 + 2*t.SmallA*t.B*pa/x
	dl2 := 2*(th1*th1+theta*th2) + 2*t.SmallA*(2*t.SmallA-1)*t.B*pa/x2

	// F = Δ^b.
	b := t.SmallB
	f := math.Pow(dl, b)
	g := b * f / dl // ∂F/∂Δ
	h := (b - 1) * g / dl
	fd, ft := g*dl1, -2*theta*g
	fdd := g*dl2 + h*dl1*dl1
	ftt := 2*g + 4*theta*theta*h
	fdt := -2*th1*g - 2*theta*h*dl1

	// ψ's logarithmic derivatives.
	pd, pt := -2*t.C*x, -2*t.D*y
	pdd, ptt := pd*pd-2*t.C, pt*pt-2*t.D

	w := t.N * psi * delta
	// δ∂/∂δ of δ F ψ over δψ, and so on.
	g1 := fd + f*pd
	g2 := fdd + 2*fd*pd + f*pdd
	return derivatives{
		a00: w * f,
		a10: w * (f + delta*g1),
		a20: w * delta * (2*g1 + delta*g2),
		a01: w * tau * (ft + f*pt),
		a11: w * tau * (ft + f*pt + delta*(fdt+fd*pt+pd*(ft+f*pt))),
		a02: w * tau * tau * (ftt + 2*ft*pt + f*ptt),
	}
}
