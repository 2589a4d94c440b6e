package fluiddata

import (
	"strings"
	"testing"
)

func TestEveryFluidIsComplete(t *testing.T) {
	all := All()
	if len(all) != 42 {
		t.Errorf("%d fluids", len(all))
	}
	seen := map[string]bool{}
	for _, f := range all {
		if seen[f.Designation] {
			t.Errorf("%s twice", f.Designation)
		}
		seen[f.Designation] = true
		if got, ok := Pure(f.Designation); !ok || got != f {
			t.Errorf("%s is not found", f.Designation)
		}
		terms := len(f.Power) + len(f.Exponential) + len(f.Damped) + len(f.Gaussian) + len(f.GaoB) +
			len(f.NonAnalytic)
		switch {
		case !strings.HasPrefix(f.Designation, "R-") || f.Source == "" || terms < 10:
			t.Errorf("%s: source %q, %d terms", f.Designation, f.Source, terms)
		case !(f.MolarMass > 0.01 && f.MolarMass < 0.2 && f.GasConstant > 8.3143 &&
			f.GasConstant < 8.3146):
			t.Errorf("%s: %g kg/mol, %g J/(mol K)", f.Designation, f.MolarMass, f.GasConstant)
		case !(f.TripleT < f.CriticalT && f.CriticalT < f.MaxT && 0.9*f.CriticalP < f.MaxP):
			t.Errorf("%s: limits %g, %g, %g K, %g, %g Pa", f.Designation, f.TripleT, f.CriticalT,
				f.MaxT, f.CriticalP, f.MaxP)
		case !(f.ReducingT/f.CriticalT > 0.9999 && f.ReducingT/f.CriticalT < 1.0002 &&
			f.ReducingRho/f.CriticalRho > 0.97 && f.ReducingRho/f.CriticalRho < 1.01):
			t.Errorf("%s: reducing point %g K, %g mol/m³", f.Designation, f.ReducingT,
				f.ReducingRho)
		}
	}
	if _, ok := Pure("R-9999"); ok {
		t.Error("R-9999 is known")
	}
}

func TestEveryPairIsFittedOnce(t *testing.T) {
	seen := map[[2]string]bool{}
	count := 0
	for _, paper := range papers {
		for _, p := range paper {
			count++
			key := [2]string{min(p.First, p.Second), max(p.First, p.Second)}
			if seen[key] {
				t.Errorf("%v twice", key)
			}
			seen[key] = true
			if p.BetaT == 1 && p.GammaT == 1 && p.BetaV == 1 && p.GammaV == 1 && p.F == 0 {
				t.Errorf("%v has parameters that nobody fitted", key)
			}
			if p.Source == "" || p.First == p.Second || (p.F != 0) != (p.Departure != nil) {
				t.Errorf("%+v", p)
			}
			for _, name := range key {
				if _, ok := Pure(name); !ok {
					t.Errorf("%v: no equation for %s", key, name)
				}
			}
			if a, b := PairOf(p.First, p.Second), PairOf(p.Second, p.First); a == nil || a != b ||
				a.Source != p.Source {
				t.Errorf("%v is not found", key)
			}
		}
	}
	if count != 254 {
		t.Errorf("%d pairs", count)
	}
	if PairOf("R-22", "R-124") != nil {
		t.Error("R-22 with R-124 has a fit that nobody has published")
	}
}

func TestModelsOfUnknownFluids(t *testing.T) {
	if _, err := NewModel([]string{"R-32", "R-9999"}, []float64{1, 1}); err == nil ||
		!strings.Contains(err.Error(), "R-9999") {
		t.Errorf("%v", err)
	}
	for _, bad := range [][]float64{{1}, {1, 0}, {1, -1}, nil} {
		if _, err := NewModel([]string{"R-32", "R-125"}, bad); err == nil {
			t.Errorf("%v makes a model", bad)
		}
	}
	if _, err := NewModel([]string{"R-32", "R-32"}, []float64{1, 1}); err == nil {
		t.Error("the same fluid twice makes a model")
	}
}
