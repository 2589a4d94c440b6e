package helmholtz

import (
	"errors"
	"math"
	"slices"
	"sort"
	"sync"
)

// MaxComponents is the largest number of components of a [Model].
const MaxComponents = 8

// UniversalGasConstant is R of the 2019 SI in J/(mol K), which a blend uses for
// every component. A pure fluid keeps the constant of its own paper.
const UniversalGasConstant = 8.314462618

// ErrComposition says that mole fractions do not describe a mixture.
var ErrComposition = errors.New(
	"helmholtz: a composition needs 1 to 8 different components with positive mole fractions",
)

// A Model is a pure fluid or a blend of fixed overall composition, ready to
// compute with. It does not change after it is made and is safe for concurrent
// use; what an evaluation needs in working memory comes from a pool.
type Model struct {
	fluids    []*Fluid
	x         [MaxComponents]float64
	r         float64
	molarMass float64
	h0, s0    float64 // added to enthalpy and entropy

	reducers []reducer
	tr, vr   float64 // reducing temperature and molar volume at x
	mixing   float64 // Σ x ln x
	residual residualTable
	ideal    idealTable
	pool     *sync.Pool
}

// NewModel joins fluids at mole fractions, which it scales to a sum of 1. pair
// gives the interaction of two of them; nil, or a nil result, stands for the
// linear rule.
func NewModel(
	fluids []*Fluid, moleFractions []float64, pair func(a, b *Fluid) *Pair,
) (*Model, error) {
	n := len(fluids)
	if n == 0 || n > MaxComponents || n != len(moleFractions) {
		return nil, ErrComposition
	}
	m := &Model{fluids: append([]*Fluid(nil), fluids...), pool: new(sync.Pool)}
	if !m.compose(moleFractions) {
		return nil, ErrComposition
	}
	m.r = UniversalGasConstant
	if n == 1 {
		m.r = fluids[0].GasConstant
	}
	b := newTableBuilder()
	for i, f := range fluids {
		b.addFluid(f)
		m.ideal.add(i, f)
	}
	for i := range fluids {
		for j := i + 1; j < n; j++ {
			var p *Pair
			if pair != nil {
				p = pair(fluids[i], fluids[j])
			}
			if p == nil {
				p = linearPair(fluids[i].Designation, fluids[j].Designation)
			}
			m.reducers = append(m.reducers, newReducer(i, j, fluids[i], fluids[j], p))
			if p.F != 0 && p.Departure != nil {
				b.addDeparture(i, j, p.F, p.Departure)
			}
		}
	}
	m.residual = b.build()
	m.residual.weigh(&m.x)
	m.ideal.finish(&m.x)
	m.tr, m.vr = m.reducing(&m.x)
	m.mixing = mixing(m.x[:n])
	return m, nil
}

// compose takes the shares of the fluids in the whole, and reports whether they are ones: above
// zero, of fluids that each stand there once.
func (m *Model) compose(moleFractions []float64) bool {
	sum := 0.0
	for i, x := range moleFractions {
		f := m.fluids[i]
		if !(x > 0) || math.IsInf(x, 0) || f == nil || slices.Contains(m.fluids[:i], f) {
			return false
		}
		sum += x
	}
	for i, x := range moleFractions {
		m.x[i] = x / sum
		m.molarMass += m.x[i] * m.fluids[i].MolarMass
		if !(m.x[i] > 0) {
			return false
		}
	}
	return true
}

// WithDatum is the same model with h in J/mol and s in J/(mol K) added to its
// enthalpy and entropy.
func (m *Model) WithDatum(h, s float64) *Model {
	c := *m
	c.h0 += h
	c.s0 += s
	return &c
}

// Components is the number of components.
func (m *Model) Components() int { return len(m.fluids) }

// Fluid is the i-th component.
func (m *Model) Fluid(i int) *Fluid { return m.fluids[i] }

// MoleFraction is the overall mole fraction of the i-th component.
func (m *Model) MoleFraction(i int) float64 { return m.x[i] }

// MoleFractions is the overall composition; entries past the number of
// components are 0.
func (m *Model) MoleFractions() [MaxComponents]float64 { return m.x }

// MolarMass is that of the overall composition, kg/mol.
func (m *Model) MolarMass() float64 { return m.molarMass }

// MolarMassOf is the molar mass of another composition, kg/mol.
func (m *Model) MolarMassOf(x *[MaxComponents]float64) float64 {
	sum := 0.0
	for i, f := range m.fluids {
		sum += x[i] * f.MolarMass
	}
	return sum
}

// GasConstant is R in J/(mol K).
func (m *Model) GasConstant() float64 { return m.r }

// A residualTable holds the terms of all components and departures of a model,
// sorted so that what they share is computed once.
type residualTable struct {
	tauPowers []float64 // exponents t of the plain functions τ^t
	tauShapes []tauShape

	maxPower int // largest power of δ that is needed
	decays   []decay
	powers   []basisPower
	bells    []basisBell

	owners []owner
	coefs  []coef
	terms  []term

	// mean and meanTerms are the coefficients of the overall composition, one for
	// each function of δ; empty for a pure fluid, whose they are already.
	mean      []coef
	meanTerms []term

	low []virialShare
}

// A virialShare is what a function of δ begins with: Dα = b δ + c δ² + ...
type virialShare struct {
	basis uint16
	b, c  float64
}

// A tauShape is a function of τ other than a power: τ^t exp(e(τ)).
type tauShape struct {
	kind           uint8
	t, beta, gamma float64
	b              float64 // Gao: b; damped: the exponent m
}

const (
	shapeGaussian uint8 = iota
	shapeGao
	shapeDamped
)

// A decay is the factor exp(-g δ^l); the first one of a table is 1.
type decay struct {
	l int
	g float64
}

type basisPower struct {
	d     uint8
	decay uint8
}

// A basisBell is δ^d exp(-η(δ-ε)² - κ(δ-κ0)).
type basisBell struct {
	d                       uint8
	eta, eps, kappa, kappa0 float64
}

// An owner is a component (j < 0) or the departure of the pair i, j.
type owner struct {
	i, j        int
	weight      float64 // F of a departure
	coefs       [2]int
	nonAnalytic []NonAnalytic
}

// A coef is the coefficient of one function of δ, a sum over terms.
type coef struct {
	basis      uint16
	begin, end uint16 // terms
}

type term struct {
	n   float64
	fun uint16 // function of τ
}

// A tableBuilder collects terms before functions of δ and τ have their final
// numbers.
type tableBuilder struct {
	t      residualTable
	tau    map[float64]int
	shapes map[tauShape]int
	decays map[decay]int
	powers map[basisPower]int
	bells  map[basisBell]int
	raw    []rawTerm
}

type rawTerm struct {
	owner  int
	bell   bool
	basis  int // among powers or bells
	shaped bool
	fun    int // among tauPowers or tauShapes
	n      float64
}

func newTableBuilder() *tableBuilder {
	b := &tableBuilder{
		tau: map[float64]int{}, shapes: map[tauShape]int{}, decays: map[decay]int{},
		powers: map[basisPower]int{}, bells: map[basisBell]int{},
	}
	b.decay(0, 0)
	return b
}

func number[K comparable](seen map[K]int, list *[]K, k K) int {
	i, ok := seen[k]
	if !ok {
		i = len(*list)
		seen[k] = i
		*list = append(*list, k)
	}
	return i
}

func (b *tableBuilder) needPower(d int) {
	b.t.maxPower = max(b.t.maxPower, d)
}

func (b *tableBuilder) decay(l int, g float64) uint8 {
	b.needPower(l)
	return uint8(number(b.decays, &b.t.decays, decay{l, g}))
}

func (b *tableBuilder) power(d, l int, g float64) rawTerm {
	b.needPower(d)
	if l == 0 {
		g = 0
	}
	p := basisPower{uint8(d), b.decay(l, g)}
	return rawTerm{basis: number(b.powers, &b.t.powers, p)}
}

func (b *tableBuilder) bell(d int, eta, eps, kappa, kappa0 float64) rawTerm {
	b.needPower(d)
	p := basisBell{uint8(d), eta, eps, kappa, kappa0}
	return rawTerm{bell: true, basis: number(b.bells, &b.t.bells, p)}
}

func (b *tableBuilder) add(r rawTerm, n, t float64) {
	r.owner, r.n = len(b.t.owners)-1, n
	r.fun = number(b.tau, &b.t.tauPowers, t)
	b.raw = append(b.raw, r)
}

func (b *tableBuilder) addShaped(r rawTerm, n float64, s tauShape) {
	r.owner, r.n, r.shaped = len(b.t.owners)-1, n, true
	r.fun = number(b.shapes, &b.t.tauShapes, s)
	b.raw = append(b.raw, r)
}

func (b *tableBuilder) addFluid(f *Fluid) {
	b.t.owners = append(b.t.owners, owner{i: len(b.t.owners), j: -1, nonAnalytic: f.NonAnalytic})
	for _, p := range f.Power {
		b.add(b.power(p.D, p.L, 1), p.N, p.T)
	}
	for _, p := range f.Exponential {
		b.add(b.power(p.D, p.L, p.G), p.N, p.T)
	}
	for _, p := range f.Damped {
		if p.M == 0 {
			b.add(b.power(p.D, p.L, 1), p.N, p.T)
			continue
		}
		b.addShaped(b.power(p.D, p.L, 1), p.N, tauShape{kind: shapeDamped, t: p.T, b: p.M})
	}
	for _, p := range f.Gaussian {
		b.addShaped(b.bell(p.D, p.Eta, p.Epsilon, 0, 0), p.N,
			tauShape{kind: shapeGaussian, t: p.T, beta: p.Beta, gamma: p.Gamma})
	}
	for _, p := range f.GaoB {
		b.addShaped(b.bell(p.D, -p.Eta, p.Epsilon, 0, 0), p.N,
			tauShape{kind: shapeGao, t: p.T, beta: p.Beta, gamma: p.Gamma, b: p.B})
	}
}

func (b *tableBuilder) addDeparture(i, j int, f float64, d *Departure) {
	b.t.owners = append(b.t.owners, owner{i: i, j: j, weight: f})
	for _, p := range d.Power {
		b.add(b.power(p.D, p.L, 1), p.N, p.T)
	}
	for _, p := range d.Bell {
		b.add(b.bell(p.D, p.Eta, p.Epsilon, p.Beta, p.Gamma), p.N, p.T)
	}
}

func (b *tableBuilder) build() residualTable {
	t := &b.t
	for i := range b.raw {
		r := &b.raw[i]
		if r.bell {
			r.basis += len(t.powers)
		}
		if r.shaped {
			r.fun += len(t.tauPowers)
		}
	}
	sort.SliceStable(b.raw, func(i, j int) bool {
		if b.raw[i].owner != b.raw[j].owner {
			return b.raw[i].owner < b.raw[j].owner
		}
		return b.raw[i].basis < b.raw[j].basis
	})
	for i, r := range b.raw {
		if i == 0 || r.owner != b.raw[i-1].owner || r.basis != b.raw[i-1].basis {
			t.coefs = append(t.coefs, coef{basis: uint16(r.basis), begin: uint16(i)})
		}
		t.coefs[len(t.coefs)-1].end = uint16(i + 1)
		o := &t.owners[r.owner]
		if o.coefs[1] == 0 {
			o.coefs[0] = len(t.coefs) - 1
		}
		o.coefs[1] = len(t.coefs)
		t.terms = append(t.terms, term{r.n, uint16(r.fun)})
	}
	t.findVirialShares()
	return *t
}

// weigh joins the terms of all owners, weighed by the overall composition.
func (t *residualTable) weigh(x *[MaxComponents]float64) {
	if len(t.owners) == 1 {
		return
	}
	lists := make([][]term, len(t.powers)+len(t.bells))
	for i := range t.owners {
		o := &t.owners[i]
		w := o.weightIn(x)
		for _, c := range t.coefs[o.coefs[0]:o.coefs[1]] {
			for _, tm := range t.terms[c.begin:c.end] {
				list := &lists[c.basis]
				k := slices.IndexFunc(*list, func(have term) bool { return have.fun == tm.fun })
				if k < 0 {
					k = len(*list)
					*list = append(*list, term{fun: tm.fun})
				}
				(*list)[k].n += w * tm.n
			}
		}
	}
	for basis, list := range lists {
		begin := len(t.meanTerms)
		t.meanTerms = append(t.meanTerms, list...)
		t.mean = append(
			t.mean, coef{basis: uint16(basis), begin: uint16(begin), end: uint16(len(t.meanTerms))},
		)
	}
}

func (t *residualTable) findVirialShares() {
	for k, p := range t.powers {
		// δ^d (1 - g δ^l + g² δ^2l/2), and D multiplies each power by its exponent.
		g, l := t.decays[p.decay].g, t.decays[p.decay].l
		var share virialShare
		add := func(power int, v float64) {
			switch power {
			case 1:
				share.b += v
			case 2:
				share.c += 2 * v
			}
		}
		add(int(p.d), 1)
		if l > 0 {
			add(int(p.d)+l, -g)
			add(int(p.d)+2*l, g*g/2)
		}
		if share != (virialShare{}) {
			share.basis = uint16(k)
			t.low = append(t.low, share)
		}
	}
	for k, p := range t.bells {
		at0 := exp(-p.eta*p.eps*p.eps + p.kappa*p.kappa0)
		share := virialShare{basis: uint16(len(t.powers) + k)}
		switch p.d {
		case 1:
			share.b, share.c = at0, 2*at0*(2*p.eta*p.eps-p.kappa)
		case 2:
			share.c = 2 * at0
		default:
			continue
		}
		t.low = append(t.low, share)
	}
}
