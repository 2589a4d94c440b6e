package helmholtz_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/helmholtz"
)

// slope is a derivative by Richardson's extrapolation of central differences.
func slope(f func(float64) float64, x float64) float64 {
	h := 3e-4 * math.Abs(x)
	central := func(h float64) float64 { return (f(x+h) - f(x-h)) / (2 * h) }
	a, b, c := central(h), central(h/2), central(h/4)
	ab, bc := (4*b-a)/3, (4*c-b)/3
	return (16*bc - ab) / 15
}

func near(t interface{ Fatalf(string, ...any) }, what string, got, want, scale float64) {
	if !(math.Abs(got-want) <= 1e-7*math.Max(math.Abs(want), scale)) {
		t.Fatalf("%s: %.12g, by differences %.12g", what, got, want)
	}
}

func model(t interface{ Fatal(...any) }, parts []string, x []float64) *helmholtz.Model {
	m, err := fluiddata.NewModel(parts, x)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// drawModel is any pure fluid, or a blend of any 2 to 5 fluids: every pair's
// reducing function and departure is met.
func drawModel(t *rapid.T) *helmholtz.Model {
	fluids := fluiddata.All()
	n := rapid.IntRange(1, 5).Draw(t, "components")
	var parts []string
	var x []float64
	for _, i := range rapid.Permutation(indices(len(fluids))).Draw(t, "which")[:n] {
		parts = append(parts, fluids[i].Designation)
		x = append(x, rapid.Float64Range(0.02, 1).Draw(t, "x"))
	}
	return model(t, parts, x)
}

func indices(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

// drawState stays off the reducing point, where the terms for the critical
// region of water and carbon dioxide are too sharp for differences, and out of
// the cold dome, where some equations rise like τ^50.
func drawState(t *rapid.T, m *helmholtz.Model) (temp, rho float64) {
	e := m.Evaluator()
	e.SetT(300)
	reduced := rapid.Float64Range(0.85, 1.5).Draw(t, "T/Tr")
	delta := math.Exp(rapid.Float64Range(-6, 1).Draw(t, "ln ρ/ρr"))
	if math.Abs(reduced-1) < 0.15 && math.Abs(delta-1) < 0.6 {
		reduced += 0.3
	}
	temp, rho = reduced*e.ReducingT(), delta*e.ReducingRho()
	e.Release()
	return temp, rho
}

// The state's properties are the derivatives of its own Helmholtz energy.
func TestStateIsConsistent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		temp, rho := drawState(t, m)
		s := m.At(temp, rho)
		rt := m.GasConstant() * temp
		helmholtzEnergy := func(temp, rho float64) float64 {
			s := m.At(temp, rho)
			return s.G - s.P/s.Rho
		}
		near(
			t, "S", s.S, -slope(func(x float64) float64 { return helmholtzEnergy(x, rho) }, temp),
			m.GasConstant(),
		)
		near(
			t, "P", s.P,
			rho*rho*slope(func(x float64) float64 { return helmholtzEnergy(temp, x) }, rho), rho*rt,
		)
		near(
			t, "Cv", s.Cv, temp*slope(func(x float64) float64 { return m.At(x, rho).S }, temp),
			m.GasConstant(),
		)
		near(
			t, "DpDT", s.DpDT, slope(func(x float64) float64 { return m.At(x, rho).P }, temp),
			rho*m.GasConstant(),
		)
		near(
			t, "DpDrho", s.DpDrho, slope(func(x float64) float64 { return m.At(temp, x).P }, rho),
			rt,
		)
		near(
			t, "DhDT", s.DhDT, slope(func(x float64) float64 { return m.At(x, rho).H }, temp),
			m.GasConstant(),
		)
		near(
			t, "DhDrho", s.DhDrho, slope(func(x float64) float64 { return m.At(temp, x).H }, rho),
			rt/rho,
		)
		near(t, "Cp", s.Cp*s.DpDrho, (s.DhDT*s.DpDrho - s.DhDrho*s.DpDT), m.GasConstant()*rt)
		if w2 := s.Cp / s.Cv * s.DpDrho / m.MolarMass(); w2 > 0 {
			near(t, "SoundSpeed", s.SoundSpeed*s.SoundSpeed, w2, rt/m.MolarMass())
		}
		p, dpdrho := m.Pressure(temp, rho)
		near(t, "Pressure", p, s.P, 0)
		near(t, "its slope", dpdrho, s.DpDrho, 0)
	})
}

// Fugacities are derivatives of the Helmholtz energy of a volume, and their own
// derivatives are right.
func TestPotentials(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		temp, rho := drawState(t, m)
		n := m.Components()
		e := m.Evaluator()
		defer e.Release()
		x := m.MoleFractions()
		if n > 1 && rapid.Bool().Draw(t, "another composition") {
			sum := 0.0
			for i := range n {
				x[i] = rapid.Float64Range(0.02, 1).Draw(t, "x")
				sum += x[i]
			}
			for i := range n {
				x[i] /= sum
			}
		}
		var conc [helmholtz.MaxComponents]float64
		for i := range n {
			conc[i] = x[i] * rho
		}
		at := func(temp float64, c [helmholtz.MaxComponents]float64) (p helmholtz.Potentials,
			r helmholtz.Residual, total float64) {
			for i := range n {
				total += c[i]
			}
			for i := range n {
				c[i] /= total
			}
			e.SetTX(temp, &c)
			e.PotentialsAt(total, &p)
			return p, e.ResidualAt(total), total
		}
		base, _, _ := at(temp, conc)
		rt := m.GasConstant() * temp
		gibbsDuhem := 0.0
		for j := range n {
			along := func(f func(helmholtz.Potentials, helmholtz.Residual,
				float64) float64) float64 {
				return slope(func(v float64) float64 {
					c := conc
					c[j] = v
					return f(at(temp, c))
				}, conc[j])
			}
			phi := along(
				func(_ helmholtz.Potentials, r helmholtz.Residual, rho float64) float64 {
					return rho * r.Alpha
				},
			)
			near(t, "ln f", base.LnF[j], math.Log(conc[j]*rt)+phi, 1)
			for i := range n {
				d := along(
					func(p helmholtz.Potentials, _ helmholtz.Residual, _ float64) float64 {
						return p.LnF[i]
					},
				)
				near(t, "∂ln f/∂ln ρ", base.LnFLnRho[i][j], conc[j]*d, 1)
			}
			d := along(
				func(p helmholtz.Potentials, _ helmholtz.Residual, _ float64) float64 {
					return p.P
				},
			)
			near(t, "∂p/∂ln ρ", base.PLnRho[j], conc[j]*d, rho*rt)
			dT := slope(
				func(temp float64) float64 { p, _, _ := at(temp, conc); return p.LnF[j] }, temp,
			)
			near(t, "∂ln f/∂T", base.LnFT[j], dT, 1/temp)
			gibbsDuhem += x[j] * base.LnFLnRho[j][0]
		}
		near(
			t, "∂p/∂T", base.DPDT,
			slope(func(temp float64) float64 { p, _, _ := at(temp, conc); return p.P }, temp),
			rho*m.GasConstant(),
		)
		near(t, "Gibbs-Duhem", base.PLnRho[0], rho*rt*gibbsDuhem, 0)
	})
}

func TestVirialCoefficients(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		e := m.Evaluator()
		defer e.Release()
		e.SetT(300)
		e.SetT(e.ReducingT() * rapid.Float64Range(0.7, 1.5).Draw(t, "T/Tr"))
		b, c := e.Virial()
		// Dα = Bρ + Cρ² + Eρ³ + ...
		h := 1e-3 * e.ReducingRho()
		d1, d2, d3 := e.ResidualAt(h).D1/h, e.ResidualAt(2*h).D1/(2*h), e.ResidualAt(3*h).D1/(3*h)
		if want := 3*d1 - 3*d2 + d3; math.Abs(b-want) > 1e-4*math.Abs(want) {
			t.Fatalf("B = %g, from the pressure %g", b, want)
		}
		scale := math.Max(math.Abs(c), 1/(e.ReducingRho()*e.ReducingRho()))
		if want := (-5*d1 + 8*d2 - 3*d3) / (2 * h); math.Abs(c-want) > 0.02*scale {
			t.Fatalf("C = %g, from the pressure %g", c, want)
		}
	})
}

// The terms weighed beforehand for the model's own composition give what the
// owners' shares give when the same composition is set.
func TestOwnCompositionIsSetTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		temp, rho := drawState(t, m)
		e := m.Evaluator()
		defer e.Release()
		e.SetT(temp)
		own := e.StateAt(rho)
		pOwn, _ := e.PressureAt(rho)
		x := m.MoleFractions()
		e.SetTX(temp, &x)
		set := e.StateAt(rho)
		pSet, _ := e.PressureAt(rho)
		r := m.GasConstant()
		for _, c := range []struct {
			name            string
			got, want, size float64
		}{
			{"pressure", pOwn, pSet, rho * r * temp},
			{"pressure of the state", own.P, set.P, rho * r * temp},
			{"enthalpy", own.H, set.H, r * temp}, {"entropy", own.S, set.S, r},
			{"heat capacity", own.Cv, set.Cv, r},
		} {
			if !(math.Abs(c.got-c.want) <= 1e-10*math.Max(c.size, math.Abs(c.want))) {
				t.Errorf("%s: %v and %v", c.name, c.got, c.want)
			}
		}
	})
}
