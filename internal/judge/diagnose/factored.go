package diagnose

import (
	"github.com/satline/satline/internal/physics/helmholtz"
)

// factored is a covariance as L·D·Lᵀ, and L⁻¹ times the residual.
type factored struct {
	l               [features][features]float64 // below its diagonal of ones
	inverse         [features]float64           // of D
	x               [features]float64
	logDet, squared float64
}

// step is L⁻¹ times the difference of two vectors; nil is none.
func (f *factored) step(n int, v, less *[features]float64) (y [features]float64) {
	for i := range n {
		x := v[i]
		if less != nil {
			x -= less[i]
		}
		li := f.l[i][:i]
		for k, l := range li {
			x -= l * y[k]
		}
		y[i] = x
	}
	return y
}

// distance is the squared distance that the residual would have, were the mean shifted.
func (f *factored) distance(n int, v, less *[features]float64) (squared float64) {
	y := f.step(n, v, less)
	for i := range n {
		x := f.x[i] - y[i]
		squared += x * x * f.inverse[i]
	}
	return squared
}

// dot is the product of two vectors that L⁻¹ was applied to, by the inverse covariance.
func (f *factored) dot(n int, a, b *[features]float64) (sum float64) {
	for i := range n {
		sum += a[i] * b[i] * f.inverse[i]
	}
	return sum
}

// whiten factors a covariance with the noise of the instruments, and the residual with it.
func (w *workspace) whiten(cov *[packed]float64) (logDet, squared float64, ok bool) {
	det := 1.0
	var whole [features]float64 // a row of the factor times the variances
	for i := range w.x[:w.n] {
		from, to := place(i, 0), place(i, i)
		row, noise, li := cov[from:to+1], w.noise[from:to+1], w.l[i][:i+1]
		x, own := w.x[i], row[i]+noise[i]
		for j := range i {
			sum := row[j] + noise[j]
			lj := w.l[j][:j]
			for k, y := range whole[:len(lj)] {
				sum -= y * lj[k]
			}
			whole[j] = sum
			l := sum * w.inverse[j]
			li[j] = l
			x -= l * w.x[j]
			own -= l * sum
		}
		if !(own > 0) {
			return 0, 0, false
		}
		det *= own
		w.inverse[i] = 1 / own
		w.x[i] = x
		squared += x * x * w.inverse[i]
	}
	w.logDet, w.squared = helmholtz.Log(det), squared
	return w.logDet, squared, true
}
