package helmholtz

import "math"

// A State is the properties of one homogeneous phase.
type State struct {
	T, Rho, P float64 // K, mol/m³, Pa

	H, S, G    float64 // J/mol, J/(mol K), J/mol, on the model's datum
	Cv, Cp     float64 // J/(mol K)
	SoundSpeed float64 // m/s; 0 where the state is mechanically unstable

	DpDrho float64 // Pa/(mol/m³) at constant T
	DpDT   float64 // Pa/K at constant density
	DhDT   float64 // J/(mol K) at constant density
	DhDrho float64 // J/mol/(mol/m³) at constant T
}

// At is the state at a temperature and molar density, at the overall
// composition.
func (m *Model) At(t, rho float64) State {
	e := m.Evaluator()
	e.SetT(t)
	s := e.StateAt(rho)
	e.Release()
	return s
}

// Pressure is the pressure and its density derivative at the overall
// composition.
func (m *Model) Pressure(t, rho float64) (p, dpdrho float64) {
	e := m.Evaluator()
	e.SetT(t)
	p, dpdrho = e.PressureAt(rho)
	e.Release()
	return p, dpdrho
}

// StateAt is the state at a molar density (Span 2000, table 3.9).
func (e *Evaluator) StateAt(rho float64) State {
	m := e.m
	d := e.total(rho)
	molarMass, mix := m.molarMass, m.mixing
	if !e.own {
		molarMass, mix = m.MolarMassOf(&e.X), mixing(e.X[:len(m.fluids)])
	}
	id := e.idealGas()
	r, t := m.r, e.T
	logs := Log(rho) + mix
	rt := r * t
	z := 1 + d.a10
	zt := 1 + d.a10 - d.a11
	zr := 1 + 2*d.a10 + d.a20
	cv := -(id.a2 + d.a02)
	s := State{T: t, Rho: rho, P: rho * rt * z}
	s.H = rt*(z+id.a1+d.a01) + m.h0
	s.S = r*(id.a1+d.a01-id.a-d.a00-logs) + m.s0
	s.G = s.H - t*s.S
	s.Cv = r * cv
	s.DpDrho = rt * zr
	s.DpDT = rho * r * zt
	s.Cp = r * (cv + zt*zt/zr)
	if w2 := rt / molarMass * (zr + zt*zt/cv); w2 > 0 {
		s.SoundSpeed = math.Sqrt(w2)
	}
	s.DhDT = r * (cv + zt)
	s.DhDrho = rt / rho * (d.a10 + d.a20 + d.a11)
	return s
}

// mixing is Σ x ln x, the entropy of mixing over −R.
func mixing(x []float64) (sum float64) {
	if len(x) == 1 {
		return 0
	}
	for _, xi := range x {
		if xi > 0 {
			sum += xi * Log(xi)
		}
	}
	return sum
}

// idealGas is the ideal-gas part at the temperature and composition that are set.
func (e *Evaluator) idealGas() *idealPart {
	if !e.idealKnown {
		x := &e.X
		if e.own {
			x = nil
		}
		e.ideal, e.idealKnown = e.m.ideal.at(e.T, x), true
	}
	return &e.ideal
}

// Residual is what equilibrium between two densities of one isotherm needs:
// Z = p/(ρRT), αr, and Dαr, D²αr.
type Residual struct{ Alpha, D1, D2 float64 }

// ResidualAt is the residual energy of the whole composition at a molar density.
func (e *Evaluator) ResidualAt(rho float64) Residual {
	t := &e.m.residual
	delta := rho * e.vr
	e.sumOwners()
	c := e.sum
	e.deltaPowers(delta)
	var r Residual
	for k := range t.powers {
		p := &t.powers[k]
		u := e.ug[p.decay]
		v := c[k] * e.pw[p.d] * e.eg[p.decay]
		s := float64(p.d) - u
		r.Alpha += v
		r.D1 += v * s
		r.D2 += v * (s*s - float64(t.decays[p.decay].l)*u)
	}
	n := len(t.powers)
	for i := range t.bells {
		bell := &t.bells[i]
		v := c[n+i] * e.pw[bell.d] * exp(bell.exponent(delta))
		s, ds := bell.slopes(delta)
		r.Alpha += v
		r.D1 += v * s
		r.D2 += v * (s*s + ds)
	}
	for i := range t.owners {
		o := &t.owners[i]
		for j := range o.nonAnalytic {
			w := e.weight(o)
			d := o.nonAnalytic[j].at(delta, e.tau)
			r.Alpha += w * d.a00
			r.D1 += w * d.a10
			r.D2 += w * (d.a20 + d.a10)
		}
	}
	return r
}

// Virial is the second and third virial coefficient of the whole composition at
// the temperature that is set, in m³/mol and m⁶/mol². The terms for the critical
// region of water and carbon dioxide have no part in it; they are nothing at low
// density.
func (e *Evaluator) Virial() (b, c float64) {
	t := &e.m.residual
	e.sumOwners()
	for k := range t.low {
		s := &t.low[k]
		b += e.sum[s.basis] * s.b
		c += e.sum[s.basis] * s.c
	}
	return b * e.vr, c * e.vr * e.vr
}
