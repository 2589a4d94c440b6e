package cycle

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/gonum/mat"
)

// An Unknown is one of the few things by which a machine differs from the ordinary one of
// its Spec, as a fit found it.
type Unknown struct {
	// Name is "charge", "evaporator", "condenser", "metering", "compressor flow", "compressor
	// work", "indoor airflow", "valve setting", "outdoor dry bulb", "return dry bulb" or
	// "return wet bulb". Settings and temperatures are in kelvins, the rest relative.
	Name string `json:"name"`
	// Value is the change from the ordinary machine, and from the reading for a
	// temperature; Std its standard uncertainty after the fit, and Prior before it.
	Value float64 `json:"value"`
	Std   float64 `json:"std"`
	Prior float64 `json:"prior"`
}

// Learned reports whether the readings said more of u than was assumed before.
func (u Unknown) Learned() bool { return u.Std < 0.7*u.Prior }

// Fitted is a System moved until it reads as a visit did, with how sure that is. It is
// immutable and safe for concurrent use.
type Fitted struct {
	system   *System
	at       Conditions
	unknowns []Unknown
	cov      *mat.SymDense
	misfit   float64
	now      Operating
}

// Unknowns returns what the fit found.
func (f *Fitted) Unknowns() []Unknown { return append([]Unknown(nil), f.orZero().unknowns...) }

// Misfit is the root mean square of how far the fitted machine is off the readings, in
// their standard uncertainties. Well above 2, no machine of this kind reads so: an
// instrument is wrong, or a fault is there that the fit does not know; Fit refuses
// readings from 10 on.
func (f *Fitted) Misfit() float64 { return f.orZero().misfit }

// Operating returns the fitted machine at the visit.
func (f *Fitted) Operating() Operating { return f.orZero().now }

// parameter is an unknown of the fit: how far it may be off before anything is read, and
// how it enters the question.
type parameter struct {
	name  string
	prior float64
	low   float64 // bounds
	high  float64
	apply func(x float64, t *Tuning, c *Conditions, f *Faults)
}

// parametersFor lists the unknowns of a machine in a visit. The priors are the spread of
// machines of one capacity in the field (common practice, no source).
func parametersFor(s *System, v *Readings) []parameter {
	or := func(u quantity.TemperatureDelta) float64 {
		if u > 0 {
			return float64(u)
		}
		return 0.4
	}
	airflow := 0.15
	if v.Conditions.Airflow > 0 {
		if airflow = v.AirflowStd; airflow <= 0 {
			airflow = 0.08
		}
	}
	all := []parameter{
		{
			"charge", 0.15, -0.55, 0.9,
			func(x float64, _ *Tuning, _ *Conditions, f *Faults) { f.Charge = x },
		},
		{
			"evaporator", 0.15, -0.7, 1.5,
			func(x float64, t *Tuning, _ *Conditions, _ *Faults) { t.EvaporatorUA = x },
		},
		{
			"condenser", 0.20, -0.7, 1.5,
			func(x float64, t *Tuning, _ *Conditions, _ *Faults) { t.CondenserUA = x },
		},
		{
			"metering", 0.10, -0.7, 1.5,
			func(x float64, t *Tuning, _ *Conditions, _ *Faults) { t.MeteringSize = x },
		},
		{
			"compressor flow", 0.07, -0.6, 0.6,
			func(x float64, t *Tuning, _ *Conditions, _ *Faults) { t.CompressorFlow = x },
		},
		{
			"compressor work", 0.08, -0.5, 1,
			func(x float64, t *Tuning, _ *Conditions, _ *Faults) { t.CompressorWork = x },
		},
		{
			"indoor airflow", airflow, -0.8, 0.8,
			func(x float64, _ *Tuning, _ *Conditions, f *Faults) { f.IndoorAirflow = x },
		},
		{
			"outdoor dry bulb", or(v.OutdoorStd), -3, 3,
			func(x float64, _ *Tuning, c *Conditions, _ *Faults) {
				c.OutdoorDryBulb += quantity.Temperature(x)
			},
		},
		{
			"return dry bulb", or(v.DryBulbStd), -3, 3,
			func(x float64, _ *Tuning, c *Conditions, _ *Faults) {
				c.ReturnDryBulb += quantity.Temperature(x)
			},
		},
		{
			"return wet bulb", or(v.WetBulbStd), -3, 3,
			func(x float64, _ *Tuning, c *Conditions, _ *Faults) {
				c.ReturnWetBulb += quantity.Temperature(x)
			},
		},
	}
	if k := s.spec.Metering; k == refrigerant.TXV || k == refrigerant.EXV {
		all = append(
			all,
			parameter{
				"valve setting",
				2,
				-8,
				15,
				func(x float64, _ *Tuning, _ *Conditions, f *Faults) {
					f.ValveSetting = quantity.TemperatureDelta(x)
				},
			},
		)
	}
	return all
}

// at solves the machine with parameter values x. Wet bulb never passes dry bulb.
// It tells in how many rounds of the circuit.
func (s *System) at(ps []parameter, x []float64, c Conditions, f Faults) (Operating, int, error) {
	var t Tuning
	for i, p := range ps {
		p.apply(x[i], &t, &c, &f)
	}
	c.ReturnWetBulb = min(c.ReturnWetBulb, c.ReturnDryBulb)
	tuned := *s
	tuned.plant.tune(&t)
	return tuned.solve(c, f)
}

// leastReadings is how many readings of the machine a fit needs.
const leastReadings = 4

// Fit moves the unknowns of s until it reads as v did. What the readings do not tell stays
// near the ordinary machine, with the uncertainty of that: the maximum of the posterior of
// normal priors and normal readings, by the method of Levenberg and Marquardt, with its
// covariance (Tarantola, "Inverse problem theory", 2005, chapter 3).
//
// At least four readings of the machine are needed besides the Conditions: both pressures
// and both line temperatures tell most. The error is a *RangeError for fewer, for a
// reading that cannot be and for conditions outside the model; a *MisfitError where no
// machine reads so; ErrUnsettled; or ErrNoSystem.
//
// A good fit takes some ten milliseconds. The search ends after two hundred or so with the
// best machine that it met, of which Misfit says how good it is.
func Fit(s *System, v Readings) (*Fitted, error) {
	if !s.made() {
		return nil, ErrNoSystem
	}
	if err := v.check(); err != nil {
		return nil, err
	}
	readings := v.readings()
	if n := len(readings); n < leastReadings {
		return nil, &RangeError{
			Quantity: "number of readings of the machine",
			Value:    quantity.Number(n),
			Min:      quantity.Number(leastReadings),
			Advice:   "both pressures and both line temperatures tell most",
		}
	}
	if _, err := s.Solve(v.Conditions, Faults{}); err != nil {
		return nil, err
	}
	l := leastSquares{s: s, v: &v, readings: readings, parameters: parametersFor(s, &v)}
	return l.run()
}

type leastSquares struct {
	s          *System
	v          *Readings
	readings   []reading
	parameters []parameter
	work       int // rounds of the circuit so far
}

// mostWork is the rounds of the circuit after which the search ends with what it has. It
// takes two thousand for most machines, and less for 19 in 20 with several faults at once.
const mostWork = 40_000

func (l *leastSquares) spent() bool { return l.work > mostWork }

// residuals returns how far x is off, readings first and then priors, each in its
// standard uncertainty.
func (l *leastSquares) residuals(x []float64) ([]float64, Operating, error) {
	o, work, err := l.s.at(l.parameters, x, l.v.Conditions, Faults{})
	if err != nil {
		return nil, o, err
	}
	l.work += work
	r := make([]float64, 0, len(l.readings)+len(x))
	for _, m := range l.readings {
		r = append(r, (m.of(&o)-m.measured)/m.std)
	}
	for i, p := range l.parameters {
		r = append(r, x[i]/p.prior)
	}
	return r, o, nil
}

// start returns the best of a few charges and airflows. With liquid in the suction gas the
// readings hardly move with either, so that a search from there may not find its way out.
func (l *leastSquares) start() (x, r []float64, now Operating, err error) {
	best := math.Inf(1)
	for _, charge := range [...]float64{0, -0.12, -0.24, -0.36, 0.15} {
		for _, airflow := range [...]float64{0, -0.25} {
			try := make([]float64, len(l.parameters))
			for i, p := range l.parameters {
				switch p.name {
				case "charge":
					try[i] = charge
				case "indoor airflow":
					try[i] = airflow * min(p.prior/0.15, 1)
				}
			}
			rt, o, errTry := l.residuals(try)
			if errTry != nil {
				err = errTry
				continue
			}
			if s := sumOfSquares(rt); s < best {
				best, x, r, now = s, try, rt, o
			}
		}
	}
	if x == nil {
		return nil, nil, now, err
	}
	return x, r, now, nil
}

func sumOfSquares(r []float64) float64 {
	s := 0.0
	for _, v := range r {
		s += v * v
	}
	return s
}

// normal returns JᵀJ and Jᵀr at x.
func (l *leastSquares) normal(x, r []float64) (*mat.SymDense, *mat.VecDense, error) {
	n := len(x)
	j := mat.NewDense(len(r), n, nil)
	moved := append([]float64(nil), x...)
	for c, p := range l.parameters {
		step := 0.02 * p.prior
		if x[c]+step > p.high {
			step = -step
		}
		moved[c] = x[c] + step
		rd, _, err := l.residuals(moved)
		if err != nil {
			return nil, nil, err
		}
		moved[c] = x[c]
		for k := range r {
			j.Set(k, c, (rd[k]-r[k])/step)
		}
	}
	var a mat.SymDense
	a.SymOuterK(1, j.T())
	var b mat.VecDense
	b.MulVec(j.T(), mat.NewVecDense(len(r), r))
	return &a, &b, nil
}

// poor is the root mean square of the residuals, readings and priors together, from
// which a fit is tried from elsewhere.
const poor = 1.2

// elsewhere are starts for fits that end badly: a metering device that is closed or open
// too far, a condenser better than usual. A search that began with little charge stays at a
// condenser without liquid, where the readings do not move with what would bring it back.
var elsewhere = []map[string]float64{
	{"metering": -0.3}, {"metering": -0.5}, {"metering": 0.3}, {"condenser": 0.6, "charge": -0.08},
}

// run fits from the best start, and where that ends badly from elsewhere.
func (l *leastSquares) run() (*Fitted, error) {
	x, r, now, err := l.start()
	if err != nil {
		return nil, err
	}
	if x, r, now, err = l.descend(x, r, now); err != nil {
		return nil, err
	}
	if best := sumOfSquares(r); best > poor*poor*float64(len(r)) {
		for _, start := range elsewhere {
			if l.spent() {
				break
			}
			try := make([]float64, len(l.parameters))
			for i, p := range l.parameters {
				try[i] = start[p.name]
			}
			rt, o, err := l.residuals(try)
			if err != nil {
				continue
			}
			if xt, rt, o, err := l.descend(try, rt, o); err == nil && sumOfSquares(rt) < best {
				best, x, r, now = sumOfSquares(rt), xt, rt, o
			}
		}
	}
	return l.fitted(x, r, now)
}

// descend goes down from x, by the method of Levenberg and Marquardt.
func (l *leastSquares) descend(
	x, r []float64, now Operating,
) ([]float64, []float64, Operating, error) {
	const rounds = 25
	damping := 1e-3
	for range rounds {
		if l.spent() {
			break
		}
		a, b, err := l.normal(x, r)
		if err != nil {
			return nil, nil, now, err
		}
		before := sumOfSquares(r)
		improved := false
		for range 8 {
			if next := l.stepFrom(x, a, b, damping); next != nil {
				if rn, o, err := l.residuals(next); err == nil && sumOfSquares(rn) < before {
					x, r, now, improved = next, rn, o, true
					damping = max(damping/5, 1e-9)
					break
				}
			}
			damping *= 8
		}
		if !improved || before-sumOfSquares(r) < 1e-6*(1+before) {
			break
		}
	}
	return x, r, now, nil
}

// stepFrom is where the damped step of the normal equations leads from x, within the bounds; nil
// where they have no solution.
func (l *leastSquares) stepFrom(
	x []float64, a *mat.SymDense, b *mat.VecDense, damping float64,
) []float64 {
	n := len(l.parameters)
	damped := mat.NewSymDense(n, nil)
	damped.CopySym(a)
	for i := range n {
		damped.SetSym(i, i, a.At(i, i)*(1+damping))
	}
	var chol mat.Cholesky
	var step mat.VecDense
	if !chol.Factorize(damped) || chol.SolveVecTo(&step, b) != nil {
		return nil
	}
	next := make([]float64, n)
	for i, p := range l.parameters {
		next[i] = min(max(x[i]-step.AtVec(i), p.low), p.high)
	}
	return next
}

// fitted is the machine at x, with the covariance there.
func (l *leastSquares) fitted(x, r []float64, now Operating) (*Fitted, error) {
	off := misfit(r[:len(l.readings)])
	if off > impossible {
		return nil, &MisfitError{off, l.misses(&now)}
	}
	a, _, err := l.normal(x, r)
	if err != nil {
		return nil, err
	}
	cov, err := inverse(a)
	if err != nil {
		return nil, err
	}
	f := &Fitted{system: l.s, at: l.v.Conditions, cov: cov, misfit: off, now: now}
	// Readings that fit badly widen everything that rests on them.
	if off > 1 {
		cov.ScaleSym(off*off, cov)
	}
	for i, p := range l.parameters {
		f.unknowns = append(f.unknowns, Unknown{p.name, x[i], math.Sqrt(cov.At(i, i)), p.prior})
	}
	return f, nil
}

// inverse returns the covariance of the unknowns from the normal matrix.
func inverse(a *mat.SymDense) (*mat.SymDense, error) {
	var chol mat.Cholesky
	cov := new(mat.SymDense)
	if !chol.Factorize(a) || chol.InverseTo(cov) != nil {
		return nil, ErrUnsettled
	}
	return cov, nil
}

func (f *Fitted) made() bool { return f != nil && f.system.made() }

// orZero lets a nil Fitted answer as the zero one does.
func (f *Fitted) orZero() *Fitted {
	if f == nil {
		return new(Fitted)
	}
	return f
}
