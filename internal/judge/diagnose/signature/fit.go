package signature

import (
	"errors"

	"gonum.org/v1/gonum/mat"
)

// A Sample is one machine in one weather: what it reads, and what the same
// machine reads when sound.
type Sample struct {
	Weather              Weather
	Fluid                Fluid
	Kind                 int // of package population
	Severity             float64
	Sound, Faulty        Vector
	Capacity, Efficiency float64 // fractions lost by the fault
}

var errFew = errors.New("signature: too few samples for a fit")

// FitSound fits the mean of sound machines by least squares, and how each kind departs from
// it and scatters; fleet is how common each is.
func FitSound(samples []Sample, fleet []float64) (Sound, error) {
	var s Sound
	if len(samples) < 4*meanTerms {
		return s, errFew
	}
	s.Low, s.High = samples[0].Weather, samples[0].Weather
	for _, x := range samples {
		s.Low.Outdoor, s.High.Outdoor = min(s.Low.Outdoor, x.Weather.Outdoor),
			max(s.High.Outdoor, x.Weather.Outdoor)
		s.Low.ReturnWetBulb, s.High.ReturnWetBulb =
			min(s.Low.ReturnWetBulb, x.Weather.ReturnWetBulb),
			max(s.High.ReturnWetBulb, x.Weather.ReturnWetBulb)
		s.Low.ReturnDryBulb, s.High.ReturnDryBulb =
			min(s.Low.ReturnDryBulb, x.Weather.ReturnDryBulb),
			max(s.High.ReturnDryBulb, x.Weather.ReturnDryBulb)
		s.Low.Thin, s.High.Thin = min(s.Low.Thin, x.Weather.Thin), max(s.High.Thin, x.Weather.Thin)
	}
	coefficients, residual, err := regress(
		samples, meanTerms, func(x *Sample) Vector { return x.Sound },
	)
	if err != nil {
		return s, err
	}
	for f := range s.mean {
		copy(s.mean[f][:], coefficients[f])
	}
	s.Kinds = make([]Kind, len(fleet))
	ordinary := make([][]Vector, len(fleet))
	for i := range samples {
		if samples[i].Weather.extreme() == 0 {
			ordinary[samples[i].Kind] = append(ordinary[samples[i].Kind], residual[i])
		}
	}
	for k, of := range ordinary {
		s.Kinds[k].Share = fleet[k]
		if len(of) < leastOfKind {
			// Hardly any are drawn with this device: they count as all do.
			of = nil
			for _, other := range ordinary {
				of = append(of, other...)
			}
		}
		s.Kinds[k].Offset = average(of)
		s.Kinds[k].scatter = covariance(apart(of, s.Kinds[k].Offset), 1)
	}
	// In extreme weather machines of all kinds scatter alike, and more.
	var outer []Vector
	for i := range samples {
		if samples[i].Weather.extreme() == 1 {
			outer = append(outer, minus(residual[i], s.Kinds[samples[i].Kind].Offset))
		}
	}
	if len(outer) < 4*meanTerms {
		return s, errFew
	}
	s.extreme = covariance(outer, meanTerms)
	return s, nil
}

// leastOfKind is how many machines describe a kind.
const leastOfKind = 30

func average(of []Vector) (mean Vector) {
	for _, v := range of {
		for f := range v {
			mean[f] += v[f] / float64(len(of))
		}
	}
	return mean
}

func minus(a, b Vector) Vector {
	for f := range a {
		a[f] -= b[f]
	}
	return a
}

func apart(of []Vector, from Vector) []Vector {
	out := make([]Vector, len(of))
	for i := range of {
		out[i] = minus(of[i], from)
	}
	return out
}

// FitLevel fits a cause at about one severity: mean shift, how it follows the
// machine's own offset (ridge regression), and what is left.
func FitLevel(s *Sound, samples []Sample) (Level, error) {
	var l Level
	if len(samples) < 4*(shiftTerms+Features) {
		return l, errFew
	}
	coefficients, residual, err := regress(samples, shiftTerms, func(x *Sample) Vector {
		var d Vector
		for f := range d {
			d[f] = x.Faulty[f] - x.Sound[f]
		}
		return d
	})
	if err != nil {
		return l, err
	}
	for f := range l.shift {
		copy(l.shift[f][:], coefficients[f])
	}
	n := len(samples)
	for i := range samples {
		l.Severity += samples[i].Severity / float64(n)
		l.Capacity += samples[i].Capacity / float64(n)
		l.Efficiency += samples[i].Efficiency / float64(n)
	}
	offsets := s.offsets(samples)
	if l.Gain, err = gainOf(offsets, residual); err != nil {
		return l, err
	}
	for i := range residual {
		for f := range Features {
			for a := range Features {
				residual[i][f] -= l.Gain[f][a] * offsets[i][a]
			}
		}
	}
	l.Rest = covariance(residual, shiftTerms+Features)
	return l, nil
}

// offsets are the samples' own, when sound.
func (s *Sound) offsets(samples []Sample) []Vector {
	out := make([]Vector, len(samples))
	for i := range samples {
		out[i] = minus(samples[i].Sound, s.Mean(s.At(samples[i].Weather, samples[i].Fluid)))
	}
	return out
}

// gainOf fits residual = Gain u + rest in the offsets u, with a ridge that shrinks Gain where
// u says little: a tenth of the variance of u.
func gainOf(offsets, residual []Vector) (gain Matrix, err error) {
	var normal mat.SymDense
	normal.ReuseAsSym(Features)
	for a := range Features {
		for b := a; b < Features; b++ {
			sum := product(offsets, a, offsets, b)
			if a == b {
				sum *= 1.1
			}
			normal.SetSym(a, b, sum)
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(&normal) {
		return gain, errors.New("signature: sound machines do not scatter in every feature")
	}
	for f := range Features {
		right := mat.NewVecDense(Features, nil)
		for a := range Features {
			right.SetVec(a, product(offsets, a, residual, f))
		}
		var row mat.VecDense
		if err := chol.SolveVecTo(&row, right); err != nil {
			return gain, err
		}
		for a := range Features {
			gain[f][a] = row.AtVec(a)
		}
	}
	return gain, nil
}

// product sums feature f of x times feature g of y over samples.
func product(x []Vector, f int, y []Vector, g int) (sum float64) {
	for i := range x {
		sum += x[i][f] * y[i][g]
	}
	return sum
}

// regress fits every feature on the first terms of the basis and returns the
// coefficients and the residuals.
func regress(
	samples []Sample, terms int, value func(*Sample) Vector,
) (coefficients [Features][]float64, residual []Vector, err error) {
	design := mat.NewDense(len(samples), terms, nil)
	right := mat.NewDense(len(samples), Features, nil)
	for i := range samples {
		b := basis(samples[i].Weather, samples[i].Fluid)
		design.SetRow(i, b[:terms])
		v := value(&samples[i])
		right.SetRow(i, v[:])
	}
	var qr mat.QR
	qr.Factorize(design)
	var solution mat.Dense
	if err := qr.SolveTo(&solution, false, right); err != nil {
		return coefficients, nil, err
	}
	var fitted mat.Dense
	fitted.Mul(design, &solution)
	residual = make([]Vector, len(samples))
	for i := range residual {
		for f := range Features {
			residual[i][f] = right.At(i, f) - fitted.At(i, f)
		}
	}
	for f := range coefficients {
		coefficients[f] = mat.Col(nil, f, &solution)
	}
	return coefficients, residual, nil
}

// covariance of residuals that took away so many degrees of freedom, with
// a floor on the variances so that no feature is ever certain.
func covariance(residual []Vector, taken int) Matrix {
	var m Matrix
	n := float64(max(1, len(residual)-taken))
	for _, r := range residual {
		for a := range r {
			for b := range r {
				m[a][b] += r[a] * r[b] / n
			}
		}
	}
	const floor = 0.01 // K² or %²
	for a := range m {
		m[a][a] += floor
	}
	return m
}
