package coil

import (
	"fmt"
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func air(t testing.TB, celsius, rh, p float64) psychro.Air {
	a, err := psychro.FromRelativeHumidity(quantity.Celsius(celsius), rh, quantity.Pressure(p))
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestEnthalpyIsPsychros(t *testing.T) {
	for _, tc := range []float64{-20, 0, 10, 35, 80} {
		for _, w := range []float64{0, 0.0005} {
			a, err := psychro.FromHumidityRatio(
				quantity.Celsius(tc), w, quantity.StandardAtmosphere,
			)
			if err != nil {
				t.Fatal(err)
			}
			if d := enthalpy(tc+zeroCelsius, w, 0) - float64(a.Enthalpy()); math.Abs(d) > 1e-8 {
				t.Errorf("%v °C, %v kg/kg: %v J/kg apart", tc, w, d)
			}
			if back := humidityRatioAt(tc+zeroCelsius, enthalpy(tc+zeroCelsius, w, 4e4),
				4e4); math.Abs(
				back-w,
			) > 1e-15 {
				t.Errorf("%v °C, %v kg/kg: back to %v", tc, w, back)
			}
		}
	}
}

// integrate solves the equations of the package comment by steps of equal area,
// with psychro's own saturation at every step: the same physics, no polynomial
// and no closed form.
func integrate(a Air, m, tr, airUA, refUA float64, steps int) (t, w, surface float64) {
	hw := cpWater * max(0, (a.dew+tr)/2-zeroCelsius)
	h := enthalpy(a.t, a.w, hw)
	t, w = a.t, a.w
	ua, ur := airUA/float64(steps), refUA/float64(steps)
	flux := func(t, h, w float64) (dt, dh, ts float64) {
		ts = (ua*t + ur*tr) / (ua + ur)
		if ts >= a.dew {
			return ua * (t - ts) / (m * a.cp), ua * (t - ts) / m, ts
		}
		low, high := tr, a.dew
		for range 60 {
			ts = (low + high) / 2
			ws, _ := saturatedAt(ts, a.p)
			if ua/a.cp*(h-enthalpy(ts, ws, hw)) > ur*(ts-tr) {
				low = ts
			} else {
				high = ts
			}
		}
		return ua * (t - ts) / (m * a.cp), ur * (ts - tr) / m, ts
	}
	for range steps {
		dt, dh, _ := flux(t, h, w)
		dt2, dh2, ts := flux(t-dt/2, h-dh/2, w)
		t, h, surface = t-dt2, h-dh2, ts
	}
	return t, humidityRatioAt(t, h, hw), surface
}

func TestThroughAgainstStepwiseIntegration(t *testing.T) {
	computed := verify.Source{
		Cite: "the same differential equations, integrated in 2000 steps",
		Kind: verify.Computed,
	}
	for _, c := range []struct {
		name                     string
		celsius, rh, p           float64
		m, tr, airUA, refUA, wet float64
	}{
		{"wet coil, 80/67 °F", 26.7, 0.51, 101325, 0.68, 7.5, 1200, 1800, 1},
		{"partly wet", 26.7, 0.40, 101325, 0.68, 8, 1200, 1800, -1},
		{"dry", 26.7, 0.15, 101325, 0.68, 8, 1200, 1800, 0},
		{"at 6,000 ft, partly wet", 24, 0.38, 81200, 0.5, 5, 900, 1500, -1},
		{"deep coil, 15 transfer units of air", 26.7, 0.51, 101325, 0.1, 5, 1500, 2500, 1},
		{"poor refrigerant side, 40 transfer units of air", 26.7, 0.6, 101325, 0.1, 2, 4000, 200,
			-1},
		{"humid, deep coil", 29, 0.65, 101325, 0.5, 2, 1000, 2500, 1},
	} {
		a := NewAir(air(t, c.celsius, c.rh, c.p))
		r := a.Through(c.m, c.tr+zeroCelsius, c.airUA, c.refUA)
		wantT, wantW, wantS := integrate(a, c.m, c.tr+zeroCelsius, c.airUA, c.refUA, 2000)
		if c.wet >= 0 && math.Abs(r.Wet-c.wet) > 1e-9 ||
			c.wet < 0 && !(r.Wet > 0.05 && r.Wet < 0.95) {
			t.Errorf("%s: %.2f of the coil is wet", c.name, r.Wet)
		}
		verify.Value(
			t, computed, c.name+": leaving air", "°C", wantT-zeroCelsius, r.T-zeroCelsius, 0.005,
		)
		verify.Value(
			t, computed, c.name+": leaving humidity ratio", "g/kg", 1e3*wantW, 1e3*r.W, 0.003,
		)
		verify.Value(
			t, computed, c.name+": coldest surface", "°C", wantS-zeroCelsius, r.Surface-zeroCelsius,
			0.02,
		)
	}
}

// With a straight saturation enthalpy the integrated equation is the
// effectiveness of Braun, Klein and Mitchell for a coil of constant refrigerant
// temperature, 1 − exp(−NTU*).
func TestStraightSaturationIsBraunsEffectiveness(t *testing.T) {
	const cs, cp, airUA, refUA, m, span = 2900.0, 1025.0, 1200.0, 1800.0, 0.68, 9.0
	ntu := airUA / (m * cp) / (1 + cs/cp*airUA/refUA)
	q := quartic{30e3, cs * span}
	ry := cp * refUA / airUA * span
	const z1 = 0.8
	s := q.decay(z1, refUA*span/m, ry)
	h1, h2 := q.at(z1)+ry*z1, q.at(z1*math.Exp(-s))+ry*z1*math.Exp(-s)
	verify.Value(
		t,
		verify.Source{
			Cite: "Braun, Klein and Mitchell, ASHRAE Transactions 95(2), 1989, wet-coil " +
				"effectiveness with a capacity ratio of zero",
			Kind: verify.FromMemory,
		},
		"effectiveness of a wet coil with a mean saturation specific heat",
		"1",
		1-math.Exp(-ntu),
		(h1-h2)/(h1-q[0]),
		1e-12,
	)
}

func TestQuarticMeetsSaturation(t *testing.T) {
	q := saturation(275, 14, 101325, 0)
	for i := range 29 {
		z := float64(i) / 28
		w, _ := saturatedAt(275+14*z, 101325)
		if d := q.at(z) - enthalpy(275+14*z, w, 0); math.Abs(d) > 3 {
			t.Errorf("at z = %.2f the polynomial is %.2f J/kg off", z, d)
		}
	}
}

type draw struct {
	in                  psychro.Air
	m, tr, airUA, refUA float64
	celsius, rh, p      float64
}

func drawCoil(t *rapid.T) (d draw) {
	d.celsius = rapid.Float64Range(-15, 50).Draw(t, "entering °C")
	d.rh = rapid.Float64Range(0, 1).Draw(t, "humidity")
	d.p = rapid.Float64Range(60e3, 110e3).Draw(t, "pressure")
	d.m = math.Exp(rapid.Float64Range(-7, 3).Draw(t, "ln flow"))
	d.tr = rapid.Float64Range(-50, 70).Draw(t, "refrigerant °C") + zeroCelsius
	d.airUA = math.Exp(rapid.Float64Range(0, 10).Draw(t, "ln UAa"))
	d.refUA = math.Exp(rapid.Float64Range(0, 10).Draw(t, "ln UAr"))
	d.in, _ = psychro.FromRelativeHumidity(
		quantity.Celsius(d.celsius), d.rh, quantity.Pressure(d.p),
	)
	return d
}

// Energy and water balance to 1e-9, and leaving air between the entering air
// and the refrigerant, for every coil.
func TestThroughConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawCoil(t)
		a := NewAir(d.in)
		r := a.Through(d.m, d.tr, d.airUA, d.refUA)
		for _, v := range []float64{r.T, r.W, r.Heat, r.Sensible, r.Condensate, r.Surface,
			r.SurfaceEntering, r.Wet} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", r)
			}
		}
		out, err := psychro.FromHumidityRatio(
			quantity.Temperature(r.T), max(0, r.W), quantity.Pressure(d.p),
		)
		if err != nil {
			t.Fatalf("leaving air is no air: %v, %+v", err, r)
		}
		heat := d.m*float64(d.in.Enthalpy()-out.Enthalpy()) -
			r.Condensate*cpWater*max(0, r.T-zeroCelsius)
		if math.Abs(heat-r.Heat) > 1e-9*d.m*1e5 {
			t.Fatalf("energy: %v against %v", r.Heat, heat)
		}
		if water := d.m * (d.in.HumidityRatio() - r.W); math.Abs(water-r.Condensate) > 1e-9*d.m {
			t.Fatalf("water: %v against %v", r.Condensate, water)
		}
		low, high := min(a.t, d.tr), max(a.t, d.tr)
		if r.T < low-1e-6 || r.T > high+1e-6 || r.W > a.w+1e-12 || r.W < 0 || r.Wet < 0 ||
			r.Wet > 1 {
			t.Fatalf("out of bounds: %+v", r)
		}
		if r.Surface < low-1e-9 || r.Surface > high+1e-9 || r.SurfaceEntering < low-1e-9 ||
			r.SurfaceEntering > high+1e-9 {
			t.Fatalf("surface out of bounds: %+v", r)
		}
	})
}

// More refrigerant-side conductance, a colder refrigerant or more air never
// give less cooling.
func TestThroughIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawCoil(t)
		a := NewAir(d.in)
		base := a.Through(d.m, d.tr, d.airUA, d.refUA)
		slack := 1e-3*math.Abs(base.Heat) + 1e-6
		if a.t <= d.tr {
			return
		}
		for name, r := range map[string]Result{
			"refUA":       a.Through(d.m, d.tr, d.airUA, 1.05*d.refUA),
			"airUA":       a.Through(d.m, d.tr, 1.05*d.airUA, d.refUA),
			"refrigerant": a.Through(d.m, d.tr-0.5, d.airUA, d.refUA),
			"flow":        a.Through(1.05*d.m, d.tr, d.airUA, d.refUA),
		} {
			if r.Heat < base.Heat-slack {
				t.Fatalf("more %s, less heat: %v after %v", name, r.Heat, base.Heat)
			}
		}
	})
}

// From dry through partly wet to wet there is no jump and no kink: neighbouring
// slopes stay near each other as the humidity rises in small steps.
func TestDryToWetIsSmooth(t *testing.T) {
	const n = 4000
	at := func(i int) Result {
		rh := 0.20 + 0.35*float64(i)/n
		a := NewAir(air(t, 26.7, rh, 101325))
		return a.Through(0.68, 281, 1200, 1800)
	}
	if at(0).Wet != 0 || at(n).Wet != 1 {
		t.Fatalf("the sweep runs from %.2f to %.2f wet", at(0).Wet, at(n).Wet)
	}
	span := at(n).Heat - at(0).Heat
	before, last := at(0), 0.0
	for i := 1; i <= n; i++ {
		r := at(i)
		slope := (r.Heat - before.Heat) / span * n
		if math.Abs(r.Heat-before.Heat) > 5e-3*span {
			t.Errorf("heat jumps at step %d", i)
		}
		if i > 1 && math.Abs(slope-last) > 0.02 {
			t.Errorf(
				"the slope of the heat jumps from %.4f to %.4f at step %d, %.3f wet", last, slope,
				i, r.Wet,
			)
		}
		before, last = r, slope
	}
}

func TestLimits(t *testing.T) {
	a := NewAir(air(t, 26.7, 0.5, 101325))
	for name, r := range map[string]Result{
		"no flow":             a.Through(0, 280, 1200, 1800),
		"negative flow":       a.Through(-1, 280, 1200, 1800),
		"flow not a number":   a.Through(math.NaN(), 280, 1200, 1800),
		"no air side":         a.Through(0.6, 280, 0, 1800),
		"no refrigerant side": a.Through(0.6, 280, 1200, 0),
		"no refrigerant":      a.Through(0.6, math.NaN(), 1200, 1800),
		"infinite flow":       a.Through(math.Inf(1), 280, 1200, 1800),
		"zero Air":            (&Air{}).Through(0.6, 280, 1200, 1800),
	} {
		if r.Heat != 0 || r.Condensate != 0 || math.IsNaN(r.T) || math.IsNaN(r.Surface) {
			t.Errorf("%s: %+v", name, r)
		}
	}
	if r := a.Through(0, 280, 1200, 1800); math.Abs(r.T-280) > 1e-6 {
		t.Errorf("air that stands still leaves at %v K", r.T)
	}
	// A coil without bound on either side brings air to the refrigerant.
	r := a.Through(0.6, 280, math.Inf(1), math.Inf(1))
	ws, _ := saturatedAt(280, 101325)
	if math.Abs(r.T-280) > 1e-6 || math.Abs(r.W-ws) > 1e-8 {
		t.Errorf("an unbounded coil leaves %+v", r)
	}
	// Little transfer: nearly all bypasses.
	r = a.Through(1e6, 280, 1200, 1800)
	if math.Abs(r.T-a.t) > 1e-3 {
		t.Errorf("a flood of air leaves at %v K", r.T)
	}
}

func TestHeatingIsTheDryExchanger(t *testing.T) {
	a := NewAir(air(t, 20, 0.4, 101325))
	r := a.Through(0.6, 315, 1500, 3000)
	ua := 1500.0 * 3000 / 4500
	want := -0.6 * a.cp * (315 - a.t) * (1 - math.Exp(-ua/(0.6*a.cp)))
	if math.Abs(r.Heat-want) > 1e-6 || r.Wet != 0 || r.Sensible != r.Heat {
		t.Errorf("%+v, want %v W", r, want)
	}
}

// A coil of common practice, no source: 400 CFM per ton at 80/67 °F with
// refrigerant at 45 °F gives a sensible heat ratio of 0.70 to 0.80.
func TestSensibleHeatRatioOfPractice(t *testing.T) {
	in, err := psychro.FromWetBulb(
		quantity.Fahrenheit(80), quantity.Fahrenheit(67), quantity.StandardAtmosphere,
	)
	if err != nil {
		t.Fatal(err)
	}
	a := NewAir(in)
	m := float64(in.DryAirFlow(quantity.CFM(1200)))
	tr := float64(quantity.Fahrenheit(45))
	low, high := 100.0, 5000.0
	for range 50 { // a coil of 3 ton with a refrigerant side twice as good
		mid := (low + high) / 2
		if a.Through(m, tr, mid, 2*mid).Heat > quantity.Tons(3).Watts() {
			high = mid
		} else {
			low = mid
		}
	}
	r := a.Through(m, tr, low, 2*low)
	verify.Value(
		t,
		verify.Source{
			Cite: "400 CFM per ton at 80/67 °F has a sensible heat ratio of 0.70 to 0.80",
			Kind: verify.CommonPractice,
		},
		"sensible heat ratio of a 3 ton coil",
		"1",
		0.75,
		r.Sensible/r.Heat,
		0.05,
	)
}

func TestAirUA(t *testing.T) {
	if got := AirUA(1000, 0.5, 0.5); got != 1000 {
		t.Errorf("at the rated flow: %v", got)
	}
	if got, want := AirUA(1000, 1, 0.5), 1000*math.Pow(2, 0.672); math.Abs(got-want) > 1e-9 {
		t.Errorf("at twice the flow: %v, want %v", got, want)
	}
	for _, m := range []float64{0, -1, math.NaN()} {
		if AirUA(1000, m, 0.5) != 0 || AirUA(1000, 0.5, m) != 0 {
			t.Errorf("flow %v has a conductance", m)
		}
	}
}

func BenchmarkThrough(b *testing.B) {
	for _, c := range []struct {
		name string
		rh   float64
	}{{"dry", 0.15}, {"partly wet", 0.40}, {"wet", 0.51}} {
		b.Run(fmt.Sprint(c.name), func(b *testing.B) {
			b.ReportAllocs()
			a := NewAir(air(b, 26.7, c.rh, 101325))
			tr := 280.0
			for i := 0; b.Loop(); i++ {
				sink += a.Through(0.68, tr+float64(i&7)/10, 1200, 1800).Heat
			}
		})
	}
}

func BenchmarkNewAir(b *testing.B) {
	b.ReportAllocs()
	in := air(b, 26.7, 0.5, 101325)
	for b.Loop() {
		a := NewAir(in)
		sink += a.dew
	}
}

var sink float64
