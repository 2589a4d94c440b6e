package helmholtz

import "math"

// A Form is the shape of a pair's reducing functions.
type Form uint8

const (
	// KunzWagner is the form of GERG-2008 with βT, γT, βV and γV.
	KunzWagner Form = iota
	// Lemmon adds ξ xi xj to the mole-fraction mean of the reducing
	// temperatures and ζ xi xj to that of the reducing volumes.
	Lemmon
)

// A Pair is what a mixing paper fits for two components. β is for First and
// Second in this order; β of the swapped pair is its reciprocal.
type Pair struct {
	First, Second string
	Form          Form
	BetaT, GammaT float64 // KunzWagner
	BetaV, GammaV float64
	Xi            float64 // K, Lemmon
	Zeta          float64 // m³/mol
	F             float64 // weight of the departure function
	Departure     *Departure
	Source        string
}

// A Departure is the part αij of a mixture's residual energy that the pure
// equations do not give.
type Departure struct {
	Power []Power
	Bell  []DepartureBell
}

// DepartureBell is n δ^d τ^t exp(-η(δ-ε)² - β(δ-γ)), GERG-2008 eq. 12: both
// parts of the exponent are in δ.
type DepartureBell struct {
	N, T                      float64
	D                         int
	Eta, Beta, Gamma, Epsilon float64
}

// linearPair is the rule for a pair that nobody has fitted: the reducing
// temperature and volume are mole-fraction means.
func linearPair(a, b string) *Pair { return &Pair{First: a, Second: b, Form: Lemmon} }

// A reducer is one pair's share c xi xj (xi+xj)/(q xi + xj) of a reducing
// function, q = β². The Lemmon form is the case q = 1.
type reducer struct {
	i, j   int
	qT, cT float64
	qV, cV float64
}

func newReducer(i, j int, a, b *Fluid, p *Pair) reducer {
	ta, tb, va, vb := a.ReducingT, b.ReducingT, 1/a.ReducingRho, 1/b.ReducingRho
	if p.Form == Lemmon {
		return reducer{i, j, 1, ta + tb + p.Xi, 1, va + vb + p.Zeta}
	}
	betaT, betaV := p.BetaT, p.BetaV
	if p.First != a.Designation {
		betaT, betaV = 1/betaT, 1/betaV
	}
	root := math.Cbrt(va) + math.Cbrt(vb)
	return reducer{
		i, j, betaT * betaT, 2 * betaT * p.GammaT * math.Sqrt(ta*tb), betaV * betaV,
		2 * betaV * p.GammaV * root * root * root / 8,
	}
}

// share is the first and second derivatives of xi xj (xi+xj)/(q xi + xj).
func share(q, xi, xj float64) (fi, fj, fii, fjj, fij float64) {
	if q == 1 {
		return xj, xi, 0, 0, 1
	}
	d := q*xi + xj
	if d == 0 {
		return 0, 0, 0, 0, 0
	}
	g := (xi + xj) / d
	gi, gj := (1-q*g)/d, (1-g)/d
	gii, gjj, gij := -2*q*gi/d, -2*gj/d, -(q*gj+gi)/d
	xx := xi * xj
	return xj*g + xx*gi, xi*g + xx*gj,
		2*xj*gi + xx*gii, 2*xi*gj + xx*gjj, g + xj*gj + xi*gi + xx*gij
}
