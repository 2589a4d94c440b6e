package helmholtz

// An Evaluator computes with a [Model]. It keeps what depends on temperature and
// composition between calls: set those first, then ask at one density after
// another. It comes from [Model.Evaluator], goes back with Release, and is for
// one goroutine at a time.
type Evaluator struct {
	m *Model

	T   float64
	X   [MaxComponents]float64
	own bool // X is the model's overall composition

	ideal      idealPart
	idealKnown bool

	tr, vr float64 // reducing temperature and molar volume
	tau    float64

	fun, s1, s2      []float64 // functions of τ, their first two θ derivatives over themselves
	c, ct, ctt       []float64 // coefficients and their θ derivatives, by owner
	split            bool
	sum, sumT, sumTT []float64 // coefficients of the whole composition, by function of δ
	summed           bool

	pw     []float64 // powers of δ
	eg, ug []float64 // exp(-g δ^l) and l g δ^l
	b      []float64 // functions of δ
	d1, d2 []float64 // their D and D² derivatives

	// derivatives of the reducing functions with respect to mole fractions
	trx, vrx   [MaxComponents]float64
	trxx, vrxx [MaxComponents][MaxComponents]float64
	order      int // of those that are filled for X
}

// Evaluator takes one from the model's pool.
func (m *Model) Evaluator() *Evaluator {
	if e, ok := m.pool.Get().(*Evaluator); ok {
		e.m = m
		return e
	}
	t := &m.residual
	nt, ns := len(t.tauPowers), len(t.tauShapes)
	nb, nc := len(t.powers)+len(t.bells), len(t.coefs)
	e := &Evaluator{
		m:   m,
		fun: make([]float64, nt+ns), s1: make([]float64, nt+ns), s2: make([]float64, nt+ns),
		c: make([]float64, nc), ct: make([]float64, nc), ctt: make([]float64, nc),
		pw: make([]float64, t.maxPower+1),
		eg: make([]float64, len(t.decays)), ug: make([]float64, len(t.decays)),
		b: make([]float64, nb), d1: make([]float64, nb), d2: make([]float64, nb),
	}
	if e.sum, e.sumT, e.sumTT = e.c, e.ct, e.ctt; len(t.owners) > 1 {
		e.sum, e.sumT, e.sumTT = make([]float64, nb), make([]float64, nb), make([]float64, nb)
	}
	for k, p := range t.tauPowers {
		e.s1[k], e.s2[k] = p, p*p
	}
	return e
}

// Release gives the evaluator back.
func (e *Evaluator) Release() {
	e.T = 0
	e.m.pool.Put(e)
}

// Model is the model computed with.
func (e *Evaluator) Model() *Model { return e.m }

// SetT sets the temperature at the overall composition.
func (e *Evaluator) SetT(t float64) {
	e.X = e.m.x
	e.own = true
	e.prepare(t)
}

// SetTX sets temperature and composition.
func (e *Evaluator) SetTX(t float64, x *[MaxComponents]float64) {
	e.X = *x
	e.own = false
	e.prepare(t)
}

func (e *Evaluator) prepare(temp float64) {
	m := e.m
	e.T = temp
	e.split, e.summed = false, false
	e.idealKnown = false
	e.order = -1
	if e.own {
		e.tr, e.vr = m.tr, m.vr
	} else {
		e.tr, e.vr = m.reducing(&e.X)
	}
	e.tau = e.tr / temp
	e.tauFunctions()
}

// coefficients adds up terms, coefficient by coefficient.
func (e *Evaluator) coefficients(coefs []coef, terms []term, c, ct, ctt []float64) {
	fun := e.fun
	s1, s2 := e.s1[:len(fun)], e.s2[:len(fun)]
	c, ct, ctt = c[:len(coefs)], ct[:len(coefs)], ctt[:len(coefs)]
	for k := range coefs {
		var v0, v1, v2 float64
		for _, tm := range terms[coefs[k].begin:coefs[k].end] {
			f := tm.fun
			v := tm.n * fun[f]
			v0 += v
			v1 += v * s1[f]
			v2 += v * s2[f]
		}
		c[k], ct[k], ctt[k] = v0, v1, v2
	}
}

// splitOwners fills the coefficients by owner.
func (e *Evaluator) splitOwners() {
	if e.split {
		return
	}
	e.split = true
	t := &e.m.residual
	e.coefficients(t.coefs, t.terms, e.c, e.ct, e.ctt)
}

// reducing returns the reducing temperature and molar volume of a composition.
func (m *Model) reducing(x *[MaxComponents]float64) (tr, vr float64) {
	if len(m.fluids) == 1 {
		return m.fluids[0].ReducingT, 1 / m.fluids[0].ReducingRho
	}
	for i, f := range m.fluids {
		xx := x[i] * x[i]
		tr += xx * f.ReducingT
		vr += xx / f.ReducingRho
	}
	for k := range m.reducers {
		r := &m.reducers[k]
		xi, xj := x[r.i], x[r.j]
		xx := xi * xj
		if xx == 0 {
			continue
		}
		if r.qT == 1 {
			tr += r.cT * xx
		} else {
			tr += r.cT * xx * (xi + xj) / (r.qT*xi + xj)
		}
		if r.qV == 1 {
			vr += r.cV * xx
		} else {
			vr += r.cV * xx * (xi + xj) / (r.qV*xi + xj)
		}
	}
	return tr, vr
}

func (e *Evaluator) tauFunctions() {
	t := &e.m.residual
	tau := e.tau
	lt := Log(tau)
	expProducts(e.fun, t.tauPowers, lt)
	k := len(t.tauPowers)
	for i := range t.tauShapes {
		s := &t.tauShapes[i]
		var ex, s1, ds float64 // exponent, its θ derivative, and once more
		switch s.kind {
		case shapeGaussian:
			d := tau - s.gamma
			ex = -s.beta * d * d
			s1 = -2 * s.beta * tau * d
			ds = -2 * s.beta * tau * (d + tau)
		case shapeGao:
			d := tau - s.gamma
			q := 1 / (s.beta*d*d + s.b)
			ex = q
			s1 = -2 * s.beta * tau * d * q * q
			ds = -2 * s.beta * tau * q * q * (d + tau - 4*s.beta*tau*d*d*q)
		case shapeDamped:
			p := exp(s.b * lt)
			ex = -p
			s1 = -s.b * p
			ds = s.b * s1
		}
		s1 += s.t
		e.fun[k] = exp(s.t*lt + ex)
		e.s1[k] = s1
		e.s2[k] = s1*s1 + ds
		k++
	}
}

// weightIn is what the owner's energy counts with in a composition.
func (o *owner) weightIn(x *[MaxComponents]float64) float64 {
	if o.j < 0 {
		return x[o.i]
	}
	return x[o.i] * x[o.j] * o.weight
}

func (e *Evaluator) weight(o *owner) float64 { return o.weightIn(&e.X) }

// sumOwners adds up the owners' coefficients for the whole composition. For that
// of the model the terms were weighed when it was made.
func (e *Evaluator) sumOwners() {
	if e.summed {
		return
	}
	e.summed = true
	t := &e.m.residual
	if len(t.owners) == 1 {
		e.splitOwners() // the same coefficients
		return
	}
	if e.own {
		e.coefficients(t.mean, t.meanTerms, e.sum, e.sumT, e.sumTT)
		return
	}
	e.splitOwners()
	clear(e.sum)
	clear(e.sumT)
	clear(e.sumTT)
	for i := range t.owners {
		o := &t.owners[i]
		w := e.weight(o)
		for k := o.coefs[0]; k < o.coefs[1]; k++ {
			b := t.coefs[k].basis
			e.sum[b] += w * e.c[k]
			e.sumT[b] += w * e.ct[k]
			e.sumTT[b] += w * e.ctt[k]
		}
	}
}

// deltaPowers fills the powers of δ and the decays.
func (e *Evaluator) deltaPowers(delta float64) {
	pw := e.pw
	pw[0] = 1
	if len(pw) > 1 {
		pw[1] = delta
	}
	for k := 2; k < len(pw); k++ {
		pw[k] = pw[k>>1] * pw[k-k>>1]
	}
	t := &e.m.residual
	e.eg[0], e.ug[0] = 1, 0
	for k := 1; k < len(t.decays); k++ {
		d := &t.decays[k]
		u := d.g * pw[d.l]
		e.eg[k] = exp(-u)
		e.ug[k] = float64(d.l) * u
	}
}

// basis fills the functions of δ and their derivatives.
func (e *Evaluator) basis(delta float64) {
	e.deltaPowers(delta)
	t := &e.m.residual
	for k := range t.powers {
		p := &t.powers[k]
		u := e.ug[p.decay]
		v := e.pw[p.d] * e.eg[p.decay]
		s := float64(p.d) - u
		e.b[k], e.d1[k], e.d2[k] = v, v*s, v*(s*s-float64(t.decays[p.decay].l)*u)
	}
	k := len(t.powers)
	for i := range t.bells {
		bell := &t.bells[i]
		v := e.pw[bell.d] * exp(bell.exponent(delta))
		s, ds := bell.slopes(delta)
		e.b[k], e.d1[k], e.d2[k] = v, v*s, v*(s*s+ds)
		k++
	}
}

// exponent and slopes are apart so that both are inlined where they are summed.
func (b *basisBell) exponent(delta float64) float64 {
	x := delta - b.eps
	return -b.eta*x*x - b.kappa*(delta-b.kappa0)
}

// slopes is the logarithmic derivative s and D s.
func (b *basisBell) slopes(delta float64) (s, ds float64) {
	x := delta - b.eps
	return float64(b.d) - delta*(2*b.eta*x+b.kappa), -delta * (2*b.eta*(x+delta) + b.kappa)
}

// PressureAt is the pressure and its derivative with respect to density at a
// molar density.
func (e *Evaluator) PressureAt(rho float64) (p, dpdrho float64) {
	r := e.ResidualAt(rho)
	rt := e.m.r * e.T
	return rho * rt * (1 + r.D1), rt * (1 + r.D1 + r.D2)
}

// Derivatives of a residual energy in the multiplied form of Kunz and Wagner:
// akl is δ^k τ^l ∂^(k+l)αr/∂δ^k∂τ^l.
type derivatives struct{ a00, a10, a20, a01, a11, a02 float64 }

func (d *derivatives) add(w float64, r derivatives) {
	d.a00 += w * r.a00
	d.a10 += w * r.a10
	d.a20 += w * r.a20
	d.a01 += w * r.a01
	d.a11 += w * r.a11
	d.a02 += w * r.a02
}

// ownerDerivatives is one component's or departure's share at δ, for which
// basis must have been filled.
func (e *Evaluator) ownerDerivatives(o *owner, delta float64) (d derivatives) {
	t := &e.m.residual
	var dd, tt float64
	for k := o.coefs[0]; k < o.coefs[1]; k++ {
		i := t.coefs[k].basis
		b, b1 := e.b[i], e.d1[i]
		c, ct := e.c[k], e.ct[k]
		d.a00 += c * b
		d.a10 += c * b1
		dd += c * e.d2[i]
		d.a01 += ct * b
		d.a11 += ct * b1
		tt += e.ctt[k] * b
	}
	d.a20 = dd - d.a10
	d.a02 = tt - d.a01
	for j := range o.nonAnalytic {
		d.add(1, o.nonAnalytic[j].at(delta, e.tau))
	}
	return d
}

// total is the whole composition's residual energy at a molar density.
func (e *Evaluator) total(rho float64) (d derivatives) {
	t := &e.m.residual
	delta := rho * e.vr
	e.sumOwners()
	e.deltaPowers(delta)
	c, ct, ctt := e.sum, e.sumT, e.sumTT
	var dd, tt float64
	for k := range t.powers {
		p := &t.powers[k]
		u := e.ug[p.decay]
		v := e.pw[p.d] * e.eg[p.decay]
		s := float64(p.d) - u
		cv, ctv := c[k]*v, ct[k]*v
		d.a00 += cv
		d.a10 += cv * s
		dd += cv * (s*s - float64(t.decays[p.decay].l)*u)
		d.a01 += ctv
		d.a11 += ctv * s
		tt += ctt[k] * v
	}
	n := len(t.powers)
	for i := range t.bells {
		bell := &t.bells[i]
		v := e.pw[bell.d] * exp(bell.exponent(delta))
		s, ds := bell.slopes(delta)
		cv, ctv := c[n+i]*v, ct[n+i]*v
		d.a00 += cv
		d.a10 += cv * s
		dd += cv * (s*s + ds)
		d.a01 += ctv
		d.a11 += ctv * s
		tt += ctt[n+i] * v
	}
	d.a20 = dd - d.a10
	d.a02 = tt - d.a01
	for i := range t.owners {
		o := &t.owners[i]
		for j := range o.nonAnalytic {
			d.add(e.weight(o), o.nonAnalytic[j].at(delta, e.tau))
		}
	}
	return d
}

// ReducingT is the reducing temperature of the composition that is set, K.
func (e *Evaluator) ReducingT() float64 { return e.tr }

// ReducingRho is the reducing density of the composition that is set, mol/m³.
func (e *Evaluator) ReducingRho() float64 { return 1 / e.vr }
