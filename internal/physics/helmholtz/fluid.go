package helmholtz

// A Fluid is the equation of state of one pure fluid as its paper prints it.
// It is data only; [NewModel] makes it computable.
type Fluid struct {
	Designation string  // as in ANSI/ASHRAE Standard 34: "R-32"
	Source      string  // paper of the residual part
	IdealSource string  // paper of the ideal-gas part where it is another
	MolarMass   float64 // kg/mol
	GasConstant float64 // J/(mol K), the one the equation was fitted with

	TripleT float64 // K, lower limit of the equation
	MaxT    float64 // K
	MaxP    float64 // Pa

	ReducingT   float64 // K
	ReducingRho float64 // mol/m³

	CriticalT   float64 // K
	CriticalP   float64 // Pa
	CriticalRho float64 // mol/m³

	Power       []Power
	Exponential []Exponential
	Damped      []Damped
	Gaussian    []Gaussian
	GaoB        []GaoB
	NonAnalytic []NonAnalytic

	Ideal Ideal

	VaporPressure Ancillary // starting guesses of a saturation solver only
	LiquidDensity Ancillary
	VaporDensity  Ancillary
}

// Power is n δ^d τ^t exp(-δ^l), without the exponential where l is 0.
type Power struct {
	N, T float64
	D, L int
}

// Exponential is n δ^d τ^t exp(-g δ^l).
type Exponential struct {
	N, T float64
	D, L int
	G    float64
}

// Damped is n δ^d τ^t exp(-δ^l) exp(-τ^m), each exponential absent where its
// exponent is 0.
type Damped struct {
	N, T float64
	D, L int
	M    float64
}

// Gaussian is n δ^d τ^t exp(-η(δ-ε)² - β(τ-γ)²).
type Gaussian struct {
	N, T                      float64
	D                         int
	Eta, Beta, Gamma, Epsilon float64
}

// GaoB is n δ^d τ^t exp(η(δ-ε)² + 1/(β(τ-γ)²+b)).
type GaoB struct {
	N, T                         float64
	D                            int
	Eta, Beta, Gamma, Epsilon, B float64
}

// NonAnalytic is the critical-region term of W. Wagner and A. Pruß, J. Phys.
// Chem. Ref. Data 31, 2002, eq. 6.6:
//
//	n Δ^b δ exp(-C(δ-1)² - D(τ-1)²)
//	Δ = θ² + B((δ-1)²)^a,  θ = (1-τ) + A((δ-1)²)^(1/(2β))
type NonAnalytic struct {
	N, SmallA, SmallB, Beta float64 // a, b, β
	A, B, C, D              float64
}

// Ideal is the ideal-gas part. The two constants of integration are left out:
// they only set the datum of enthalpy and entropy, which a [Model] is given.
type Ideal struct {
	LogTau  float64 // a ln τ
	Power   []Term  // n τ^t
	Planck  []Term  // n ln(1 - exp(-t τ))
	Kelvins []Term  // n ln(1 - exp(-t/T)), t in K
	Cp0     []Term  // cp0/R = n T^t beside LogTau's share; t is 0 for a constant
}

// Term is a coefficient and its exponent.
type Term struct{ N, T float64 }

// An Ancillary is a correlation along the saturation line in θ = 1 - T/Tr.
type Ancillary struct {
	Exponential bool    // y = y0 exp(k Σ n θ^t), else y = y0 (1 + Σ n θ^t)
	TauFactor   bool    // k = Tr/T, else k = 1
	Tr, Y0      float64 // reducing temperature in K and value
	Terms       []Term
}

// At is the correlation's value at a temperature up to Tr.
func (a *Ancillary) At(t float64) float64 {
	theta := 1 - t/a.Tr
	if theta <= 0 {
		return a.Y0
	}
	sum := 0.0
	logTheta := Log(theta)
	for _, term := range a.Terms {
		sum += term.N * exp(term.T*logTheta)
	}
	if !a.Exponential {
		return a.Y0 * (1 + sum)
	}
	if a.TauFactor {
		sum *= a.Tr / t
	}
	return a.Y0 * exp(sum)
}
