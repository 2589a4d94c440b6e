package helmholtz

// Potentials is what phase equilibrium needs of one phase: the fugacities and
// their derivatives with respect to temperature and to the molar concentrations
// ρi = xi ρ, each concentration changed alone.
//
// With the residual Helmholtz energy of a unit volume, Ψ = ρ RT αr, as a
// function of T and of all ρi,
//
//	ln fi = ln(ρi RT) + Φi,  Φ = Ψ/(RT),  Φi = ∂Φ/∂ρi
//	p/(RT) = Σ ρi (1 + Φi) - Φ
//
// so that its second derivatives give all others, and no density has to be
// solved for on the way (I. H. Bell and U. K. Deiters, AIChE J. 64, 2018, pp.
// 2745-2757).
type Potentials struct {
	Rho  float64
	P    float64 // Pa
	DPDT float64 // Pa/K at constant concentrations
	LnF  [MaxComponents]float64
	LnFT [MaxComponents]float64 // ∂ln fi/∂T, 1/K

	// LnFLnRho[i][j] is ∂ln fi/∂ln ρj.
	LnFLnRho [MaxComponents][MaxComponents]float64
	// PLnRho[j] is ∂p/∂ln ρj, Pa.
	PLnRho [MaxComponents]float64
}

// FugacitiesAt fills the pressure and LnF only.
func (e *Evaluator) FugacitiesAt(rho float64, out *Potentials) { e.potentials(rho, out, false) }

// PotentialsAt fills all of out for a molar density at the temperature and
// composition that are set. A component that is absent has ln f = -Inf.
func (e *Evaluator) PotentialsAt(rho float64, out *Potentials) { e.potentials(rho, out, true) }

func (e *Evaluator) potentials(rho float64, out *Potentials, second bool) {
	m := e.m
	n := len(m.fluids)
	t := &m.residual
	delta := rho * e.vr
	e.splitOwners()
	e.basis(delta)

	var d derivatives
	// Derivatives of αr, δ∂αr/∂δ and τ∂αr/∂τ with respect to mole fractions,
	// those of αr twice.
	var x0, xd, xt [MaxComponents]float64
	var xx [MaxComponents][MaxComponents]float64
	for k := range t.owners {
		o := &t.owners[k]
		part := e.ownerDerivatives(o, delta)
		d.add(e.weight(o), part)
		if o.j < 0 {
			x0[o.i] += part.a00
			xd[o.i] += part.a10
			xt[o.i] += part.a01
			continue
		}
		wi, wj := o.weight*e.X[o.j], o.weight*e.X[o.i]
		x0[o.i] += wi * part.a00
		xd[o.i] += wi * part.a10
		xt[o.i] += wi * part.a01
		x0[o.j] += wj * part.a00
		xd[o.j] += wj * part.a10
		xt[o.j] += wj * part.a01
		xx[o.i][o.j] += o.weight * part.a00
		xx[o.j][o.i] += o.weight * part.a00
	}
	dd := d.a20 + d.a10 // D²αr
	tt := d.a02 + d.a01 // θ²αr

	// ρ ∂/∂ρi of a function g of composition is gi - Σ xk gk, here of ln δ and
	// ln τ: a and b.
	e.reducingDerivatives(second)
	x := &e.X
	var a, b [MaxComponents]float64
	var meanT, meanV, mean0, meanD, meanTau float64
	for k := range n {
		meanT += x[k] * e.trx[k]
		meanV += x[k] * e.vrx[k]
		mean0 += x[k] * x0[k]
		meanD += x[k] * xd[k]
		meanTau += x[k] * xt[k]
	}
	rt := m.r * e.T
	out.Rho = rho
	out.P = rho * rt * (1 + d.a10)
	var first [MaxComponents]float64 // ρ ∂αr/∂ρi
	for i := range n {
		a[i] = 1 + (e.vrx[i]-meanV)/e.vr
		b[i] = (e.trx[i] - meanT) / e.tr
		first[i] = d.a10*a[i] + d.a01*b[i] + x0[i] - mean0
		out.LnF[i] = Log(x[i]*rho*rt) + d.a00 + first[i]
	}
	if !second {
		return
	}

	out.DPDT = rho * m.r * (1 + d.a10 - d.a11)
	// Σk xk g_kj for the reducing functions and for αr, and their means.
	var rowT, rowV, row0 [MaxComponents]float64
	var allT, allV, all0 float64
	for j := range n {
		for k := range n {
			rowT[j] += x[k] * e.trxx[k][j]
			rowV[j] += x[k] * e.vrxx[k][j]
			row0[j] += x[k] * xx[k][j]
		}
		allT += x[j] * rowT[j]
		allV += x[j] * rowV[j]
		all0 += x[j] * row0[j]
	}
	for i := range n {
		out.LnFT[i] = (1 - d.a01 - (d.a11*a[i] + tt*b[i] + xt[i] - meanTau)) / e.T
	}
	for j := range n {
		for i := range n {
			// ρ ∂/∂ρj of Gi = gi - Σ xk gk, for the reducing functions over themselves.
			gv := (e.vrxx[i][j]-rowV[i]-rowV[j]+allV-(e.vrx[j]-meanV))/e.vr - (a[i]-1)*(a[j]-1)
			gt := (e.trxx[i][j]-rowT[i]-rowT[j]+allT-(e.trx[j]-meanT))/e.tr - b[i]*b[j]
			s := first[j] +
				a[i]*(dd*a[j]+d.a11*b[j]+xd[j]-meanD) + d.a10*gv +
				b[i]*(d.a11*a[j]+tt*b[j]+xt[j]-meanTau) + d.a01*gt +
				(xd[i]-meanD)*a[j] + (xt[i]-meanTau)*b[j] +
				xx[i][j] - row0[i] - row0[j] + all0 - (x0[j] - mean0)
			out.LnFLnRho[i][j] = x[j] * s
			if i == j {
				out.LnFLnRho[i][j]++
			}
		}
	}
	for j := range n {
		sum := 0.0
		for i := range n {
			sum += x[i] * out.LnFLnRho[i][j]
		}
		out.PLnRho[j] = rho * rt * sum
	}
}

// reducingDerivatives fills the derivatives of the reducing temperature and
// volume with respect to mole fractions, taken as independent.
func (e *Evaluator) reducingDerivatives(second bool) {
	m := e.m
	n := len(m.fluids)
	order := 1
	if second {
		order = 2
	}
	if e.order >= order {
		return
	}
	e.order = order
	if n == 1 {
		f := m.fluids[0]
		e.trx[0], e.vrx[0] = 2*f.ReducingT, 2/f.ReducingRho
		e.trxx[0][0], e.vrxx[0][0] = 2*f.ReducingT, 2/f.ReducingRho
		return
	}
	for i, f := range m.fluids {
		t, v := 2*f.ReducingT, 2/f.ReducingRho
		e.trx[i], e.vrx[i] = t*e.X[i], v*e.X[i]
		e.trxx[i][i], e.vrxx[i][i] = t, v
	}
	for k := range m.reducers {
		r := &m.reducers[k]
		i, j := r.i, r.j
		fi, fj, fii, fjj, fij := share(r.qT, e.X[i], e.X[j])
		e.trx[i] += r.cT * fi
		e.trx[j] += r.cT * fj
		e.trxx[i][i] += r.cT * fii
		e.trxx[j][j] += r.cT * fjj
		e.trxx[i][j] = r.cT * fij
		e.trxx[j][i] = e.trxx[i][j]
		fi, fj, fii, fjj, fij = share(r.qV, e.X[i], e.X[j])
		e.vrx[i] += r.cV * fi
		e.vrx[j] += r.cV * fj
		e.vrxx[i][i] += r.cV * fii
		e.vrxx[j][j] += r.cV * fjj
		e.vrxx[i][j] = r.cV * fij
		e.vrxx[j][i] = e.vrxx[i][j]
	}
}
