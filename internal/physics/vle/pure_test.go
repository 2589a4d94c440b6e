package vle_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/vle"
)

// Every fluid has a saturation state from its triple point to within 1e-4 of
// its critical temperature, rising with temperature, and the pressure leads back.
func TestPureSaturationOverWholeRange(t *testing.T) {
	for _, f := range fluiddata.All() {
		s := pureSystem(t, f.Designation)
		temps := []float64{}
		for k := range 60 {
			temps = append(temps, f.TripleT+(0.999*f.CriticalT-f.TripleT)*float64(k)/60)
		}
		for _, below := range []float64{1e-3, 5e-4, 2e-4, 1e-4} {
			temps = append(temps, f.CriticalT*(1-below))
		}
		last := 0.0
		for _, temp := range temps {
			pt, err := s.BubbleT(temp)
			if err != nil {
				t.Errorf("%s at %g of critical: %v", f.Designation, temp/f.CriticalT, err)
				continue
			}
			if !(pt.P > last && pt.RhoLiquid > pt.RhoVapor) {
				t.Errorf("%s at %g K: %+v after %g Pa", f.Designation, temp, pt, last)
			}
			last = pt.P
			back, err := s.DewP(pt.P)
			if err != nil || relative(back.T, temp) > 1e-9 {
				t.Errorf(
					"%s at %g K, %g Pa: leads back to %g K, %v", f.Designation, temp, pt.P, back.T,
					err,
				)
			}
		}
		if _, err := s.BubbleT(f.CriticalT); err != vle.ErrAboveCritical {
			t.Errorf("%s at the critical temperature: %v", f.Designation, err)
		}
		if _, err := s.BubbleT(f.TripleT - 1); err != vle.ErrBelowRange {
			t.Errorf("%s below the triple point: %v", f.Designation, err)
		}
	}
}

// Clapeyron: the slope of the saturation line is Δh/(T Δv). Equal pressure and
// Gibbs energy at each temperature alone do not use it.
func TestClapeyron(t *testing.T) {
	fluids := fluiddata.All()
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(fluids).Draw(t, "fluid")
		s := pureSystemQuiet(f.Designation)
		low := math.Max(f.TripleT, 0.45*f.CriticalT)
		temp := low + (0.98*f.CriticalT-low)*rapid.Float64Range(0.01, 0.99).Draw(t, "at")
		logP := func(temp float64) float64 {
			pt, err := s.BubbleT(temp)
			if err != nil {
				t.Fatalf("%s at %g K: %v", f.Designation, temp, err)
			}
			return math.Log(pt.P)
		}
		h := 1e-3 * temp
		slope := (8*(logP(temp+h)-logP(temp-h)) - (logP(temp+2*h) - logP(temp-2*h))) / (12 * h)
		pt, _ := s.BubbleT(temp)
		l, v := s.Model().At(temp, pt.RhoLiquid), s.Model().At(temp, pt.RhoVapor)
		want := (v.H - l.H) / (temp * (1/v.Rho - 1/l.Rho)) / pt.P
		if relative(slope, want) > 1e-6 {
			t.Fatalf(
				"%s at %g K: d ln p/dT %.10g, Clapeyron %.10g", f.Designation, temp, slope, want,
			)
		}
	})
}

func pureSystemQuiet(designation string) *vle.System {
	m, err := fluiddata.NewModel([]string{designation}, []float64{1})
	if err != nil {
		panic(err)
	}
	return vle.New(m)
}

func TestIIRDatum(t *testing.T) {
	for _, f := range fluiddata.All() {
		s := pureSystem(t, f.Designation)
		m, d, err := vle.IIR(s.Model())
		if err != nil {
			t.Errorf("%s: %v", f.Designation, err)
			continue
		}
		if d.NormalBoilingPoint != (f.CriticalT < 273.15 || f.TripleT > 273.17) {
			t.Errorf("%s: %+v", f.Designation, d)
		}
		pt, err := s.BubbleT(d.T)
		if err != nil {
			t.Errorf("%s: %v", f.Designation, err)
			continue
		}
		l := m.At(d.T, pt.RhoLiquid)
		if math.Abs(l.H/f.MolarMass-d.H) > 1e-6 || math.Abs(l.S/f.MolarMass-d.S) > 1e-9 {
			t.Errorf("%s: h %g, s %g at the datum", f.Designation, l.H/f.MolarMass, l.S/f.MolarMass)
		}
		if _, dew, _ := vle.IIR(m); dew != d {
			t.Errorf("%s: setting the datum twice moves it", f.Designation)
		}
	}
}

func TestIIRDatumOfBlends(t *testing.T) {
	systems, order := blendSystems(t)
	for _, name := range order {
		m, d, err := vle.IIR(systems[name].Model())
		if err != nil || d.NormalBoilingPoint {
			t.Errorf("%s: %+v, %v", name, d, err)
			continue
		}
		pt, err := vle.New(m).BubbleT(273.15)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		l := m.At(273.15, pt.RhoLiquid)
		if math.Abs(l.H/m.MolarMass()-200e3) > 1e-6 || math.Abs(l.S/m.MolarMass()-1e3) > 1e-9 {
			t.Errorf("%s: h %g, s %g at the datum", name, l.H/m.MolarMass(), l.S/m.MolarMass())
		}
	}
}

func TestDensityLeadsBackToPressure(t *testing.T) {
	fluids := fluiddata.All()
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(fluids).Draw(t, "fluid")
		s := pureSystemQuiet(f.Designation)
		// Below 0.3 of critical only R-124 is left, whose τ^45 makes a pressure
		// of any size out of a vapor there.
		low := math.Max(f.TripleT, 0.3*f.CriticalT)
		temp := low + (f.MaxT-low)*rapid.Float64Range(0, 1).Draw(t, "T")
		p := math.Exp(rapid.Float64Range(math.Log(1e3), math.Log(0.5*f.MaxP)).Draw(t, "ln p"))
		for _, phase := range []vle.Phase{vle.Stable, vle.Vapor, vle.Liquid} {
			rho, err := s.Density(temp, p, phase)
			if err == vle.ErrNoPhase && phase != vle.Stable {
				continue
			}
			if err != nil {
				t.Fatalf("%s at %g K, %g Pa: %v", f.Designation, temp, p, err)
			}
			q, slope := s.Model().Pressure(temp, rho)
			if math.Abs(q-p) > 1e-9*p+1e-11*rho*slope || slope <= 0 {
				t.Fatalf(
					"%s at %g K: density %g for %g Pa has %g Pa, slope %g", f.Designation, temp,
					rho, p, q, slope,
				)
			}
		}
	})
}

func TestPureSinglePhaseAgainstReference(t *testing.T) {
	var density, cp, sound, enthalpy, entropy worst
	compared := 0
	for _, row := range readRows(t, "single-phase.csv") {
		f, ok := fluiddata.Pure(row[0])
		if !ok {
			continue
		}
		s := pureSystem(t, row[0])
		temp, p := number(t, row[2]), number(t, row[3])
		phase, saturated := vle.Vapor, 0.0
		pt, err := s.BubbleT(temp)
		if err != nil {
			t.Error(err)
			continue
		}
		saturated = pt.RhoVapor
		if row[1] == "liquid" {
			phase, saturated = vle.Liquid, pt.RhoLiquid
		}
		rho, err := s.Density(temp, p, phase)
		if err != nil {
			t.Errorf("%s %s at %g K, %g Pa: %v", row[0], row[1], temp, p, err)
			continue
		}
		compared++
		st, sat := s.Model().At(temp, rho), s.Model().At(temp, saturated)
		where := "%s %s, %g K, %g Pa"
		density.see(relative(rho*f.MolarMass, number(t, row[4])), where, row[0], row[1], temp, p)
		cp.see(relative(st.Cp/f.MolarMass, number(t, row[7])), where, row[0], row[1], temp, p)
		sound.see(relative(st.SoundSpeed, number(t, row[8])), where, row[0], row[1], temp, p)
		enthalpy.see(
			math.Abs((st.H-sat.H)/f.MolarMass-number(t, row[5]))/(1+math.Abs(number(t, row[5]))),
			where, row[0], row[1], temp, p,
		)
		entropy.see(
			math.Abs((st.S-sat.S)/f.MolarMass-number(t, row[6])), where, row[0], row[1], temp, p,
		)
	}
	if compared != 815 {
		t.Errorf("%d rows compared", compared)
	}
	density.hold(t, "single-phase density of pure fluids", 1e-8)
	cp.hold(t, "cp of pure fluids", 1e-8)
	sound.hold(t, "speed of sound of pure fluids", 1e-8)
	enthalpy.hold(t, "enthalpy from saturation of pure fluids", 1e-5)
	entropy.hold(t, "entropy from saturation of pure fluids in J/(kg K)", 1e-5)
}
