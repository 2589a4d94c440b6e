package helmholtz

import (
	"math"
	"sort"
)

// An idealTable is the ideal-gas part of all components, as functions of T.
type idealTable struct {
	planck []idealTerm // n ln(1 - exp(-v/T))
	power  []idealTerm // n T^t
	cp0    []idealTerm // cp0/R = n T^t
	logT   [MaxComponents]float64

	// logTMean is the overall composition's coefficient of ln T.
	logTMean float64
}

type idealTerm struct {
	component int
	n, t      float64
	w         float64 // n times the component's overall mole fraction
	last      bool    // of those that share n and take one logarithm
}

func (t *idealTable) add(i int, f *Fluid) {
	for _, p := range f.Ideal.Planck {
		t.planck = append(t.planck, idealTerm{component: i, n: p.N, t: p.T * f.ReducingT})
	}
	for _, p := range f.Ideal.Kelvins {
		t.planck = append(t.planck, idealTerm{component: i, n: p.N, t: p.T})
	}
	for _, p := range f.Ideal.Power {
		t.power = append(
			t.power, idealTerm{component: i, n: p.N * math.Pow(f.ReducingT, p.T), t: -p.T},
		)
	}
	for _, p := range f.Ideal.Cp0 {
		t.cp0 = append(t.cp0, idealTerm{component: i, n: p.N, t: p.T})
	}
	t.logT[i] = -f.Ideal.LogTau
}

func (t *idealTable) finish(x *[MaxComponents]float64) {
	for _, list := range [][]idealTerm{t.planck, t.power, t.cp0} {
		for k := range list {
			list[k].w = list[k].n * x[list[k].component]
		}
	}
	sort.SliceStable(t.planck, func(i, j int) bool {
		a, b := &t.planck[i], &t.planck[j]
		return a.component < b.component || a.component == b.component && a.n < b.n
	})
	for k := range t.planck {
		next := k + 1
		t.planck[k].last = next == len(t.planck) ||
			t.planck[next].component != t.planck[k].component || t.planck[next].n != t.planck[k].n
	}
	for i, c := range t.logT {
		t.logTMean += c * x[i]
	}
}

// idealPart is α0 without ln ρ and the mixing term, its θ derivative and
// τ² ∂²/∂τ².
type idealPart struct{ a, a1, a2 float64 }

// at weighs the components by x, or by the overall composition where x is nil.
func (t *idealTable) at(temp float64, x *[MaxComponents]float64) (p idealPart) {
	c := t.logTMean
	if x != nil {
		c = 0
		for i, l := range t.logT {
			c += l * x[i]
		}
	}
	logT := Log(temp)
	p.a, p.a1, p.a2 = c*logT, -c, c
	inv := 1 / temp
	product := 1.0
	for k := range t.planck {
		e := &t.planck[k]
		w := e.w
		if x != nil {
			w = e.n * x[e.component]
		}
		u := e.t * inv
		q := exp(-u)
		r := 1 / (1 - q)
		product *= 1 - q
		if e.last {
			p.a += w * Log(product)
			product = 1
		}
		d := w * u * q * r
		p.a1 += d
		p.a2 -= d * u * r
	}
	for k := range t.power {
		e := &t.power[k]
		w := e.w
		if x != nil {
			w = e.n * x[e.component]
		}
		v := w * exp(e.t*logT)
		p.a += v
		p.a1 -= e.t * v
		p.a2 += e.t * (e.t + 1) * v
	}
	// (∫cp0 dT)/(RT) - ∫cp0/(RT) dT, the enthalpy less the entropy of the ideal gas.
	// No equation here has a term in 1/T, whose integrals are logarithms.
	for k := range t.cp0 {
		e := &t.cp0[k]
		w := e.w
		if x != nil {
			w = e.n * x[e.component]
		}
		cp := w
		switch e.t {
		case 0:
			p.a += cp * (1 - logT)
			p.a1 += cp
		case 1:
			cp *= temp
			p.a += cp * (0.5 - 1)
			p.a1 += cp * 0.5
		default:
			cp *= exp(e.t * logT)
			p.a += cp * (1/(e.t+1) - 1/e.t)
			p.a1 += cp / (e.t + 1)
		}
		p.a2 -= cp
	}
	return p
}
