package charge

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

func fluid(t testing.TB, designation string) *refrigerant.Refrigerant {
	t.Helper()
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func psig(v, std float64) gauge { return quantity.PSIG(v).PlusMinus(quantity.PSIG(std)) }

var seaLevel = quantity.StandardAtmosphere.PlusMinus(0)

// R-22 saturates at 5 °C at 583.6 kPa and at 40 °C at 1,533.3 kPa.
func TestMeasureR22(t *testing.T) {
	r22 := fluid(t, "R-22")
	at := func(kilopascals float64) gauge {
		return quantity.Kilopascals(kilopascals).Gauge(quantity.StandardAtmosphere).PlusMinus(0)
	}
	m, err := MeasureSuperheat(r22, at(583.6), seaLevel, quantity.Celsius(12).PlusMinus(0))
	if err != nil {
		t.Fatal(err)
	}
	tables := verify.Source{
		Cite: "saturation tables of refrigerants on the IIR datum, as the open library scisuit " +
			"carries them",
		Kind: verify.Published,
	}
	verify.Value(
		t, tables, "superheat of R-22 at 583.6 kPa, a line at 12 °C", "K", 7,
		float64(m.Value.Value), 0.08,
	)
	m, err = MeasureSubcooling(r22, at(1533.3), seaLevel, quantity.Celsius(33).PlusMinus(0))
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(
		t, tables, "subcooling of R-22 at 1,533.3 kPa, a line at 33 °C", "K", 7,
		float64(m.Value.Value), 0.08,
	)
}

// Altitude: the same machine read through a gauge at 6,000 ft.
func TestGaugeAtAltitude(t *testing.T) {
	r22 := fluid(t, "R-22")
	high := quantity.AtmosphereAt(quantity.Feet(6000)).PlusMinus(0)
	here, err1 := MeasureSuperheat(r22, psig(68.5, 0), seaLevel, f(52).PlusMinus(0))
	there, err2 := MeasureSuperheat(r22, psig(68.5, 0), high, f(52).PlusMinus(0))
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	// 2.9 psi at about 0.67 °F per psi.
	if d := (there.Value.Value - here.Value.Value).Fahrenheit(); d < 1.6 || d > 2.4 {
		t.Errorf("the gauge at 6,000 ft makes %.2f °F of superheat", d)
	}
}

// Units and altitude do not change a verdict: the same absolute pressure, read
// by a gauge in any unit at any elevation.
func TestVerdictKnowsNoUnits(t *testing.T) {
	r22 := fluid(t, "R-22")
	rapid.Check(t, func(rt *rapid.T) {
		p := quantity.PSIA(rapid.Float64Range(60, 110).Draw(rt, "suction psia"))
		line := f(rapid.Float64Range(25, 80).Draw(rt, "line"))
		wb, db := f(rapid.Float64Range(58, 72).Draw(rt, "wet bulb")),
			f(rapid.Float64Range(65, 85).Draw(rt, "outdoor"))
		target, err := SuperheatTarget(nil, wb.PlusMinus(df(0.7)), db.PlusMinus(df(0.6)))
		if err != nil {
			return
		}
		verdict := func(atm quantity.Pressure, g quantity.GaugePressure, l quantity.Temperature,
			tt Target) Verdict {
			m, err := MeasureSuperheat(
				r22, g.PlusMinus(quantity.PSIG(0.6)), atm.PlusMinus(quantity.Pascals(300)),
				l.PlusMinus(df(0.9)),
			)
			if err != nil {
				rt.Fatal(err)
			}
			v, err := Judge(m, tt)
			if err != nil {
				rt.Fatal(err)
			}
			return v
		}
		a := verdict(
			quantity.StandardAtmosphere, p.Gauge(quantity.StandardAtmosphere), line, target,
		)
		atm := quantity.AtmosphereAt(
			quantity.Feet(rapid.Float64Range(0, 10000).Draw(rt, "elevation")),
		)
		metric, err := SuperheatTarget(
			nil, quantity.Celsius(wb.Celsius()).PlusMinus(quantity.CelsiusDelta(df(0.7).Celsius())),
			quantity.Celsius(db.Celsius()).PlusMinus(quantity.CelsiusDelta(df(0.6).Celsius())),
		)
		if err != nil {
			rt.Fatal(err)
		}
		b := verdict(
			atm, quantity.KilopascalsGauge(p.Gauge(atm).KilopascalsGauge()),
			quantity.Celsius(line.Celsius()), metric,
		)
		if a.Outcome != b.Outcome && math.Abs(max(a.Low, a.InBand, a.High)-0.9) > 1e-6 ||
			math.Abs(a.Low-b.Low)+math.Abs(a.High-b.High) > 1e-6 {
			rt.Fatalf(
				"%v (%v, %v) and %v (%v, %v)", a.Outcome, a.Low, a.High, b.Outcome, b.Low, b.High,
			)
		}
	})
}

// The first-order uncertainty against Monte Carlo (JCGM 101:2008), through
// saturation, the target table and the deviation, at sea level and at altitude.
func TestUncertaintyByMonteCarlo(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	const n = 20000
	for _, c := range []struct {
		designation                 string
		method                      Method
		pressure, pressureStd, line float64
		wetBulb, outdoor            float64
		elevation                   float64
	}{
		{"R-22", Superheat, 68.5, 1, 54, 62, 77, 0},
		{"R-134a", Superheat, 35, 1.5, 52, 66, 90, 6000},
		{"R-32", Superheat, 120, 2, 55, 64, 85, 3000},
		{"R-22", Subcooling, 210, 3, 95, 62, 77, 6000},
		{"R-454B", Subcooling, 310, 3, 88, 62, 77, 0},
		{"R-410A", Superheat, 118, 1.5, 54, 63, 82, 6000},
	} {
		r := fluid(t, c.designation)
		atm := quantity.AtmosphereAt(quantity.Feet(c.elevation)).PlusMinus(quantity.Pascals(800))
		g, line := psig(c.pressure, c.pressureStd), f(c.line).PlusMinus(df(0.9))
		wb, db := f(c.wetBulb).PlusMinus(df(0.7)), f(c.outdoor).PlusMinus(df(0.6))
		read := MeasureSuperheat
		if c.method == Subcooling {
			read = MeasureSubcooling
		}
		target := func(w, d quantity.Temperature) Target {
			if c.method == Subcooling {
				return targetOf(t, Subcooling, 9, 0.5)
			}
			tt, err := SuperheatTarget(nil, w.PlusMinus(df(0.7)), d.PlusMinus(df(0.6)))
			if err != nil {
				t.Fatal(err)
			}
			return tt
		}
		m, err := read(r, g, atm, line)
		if err != nil {
			t.Fatal(err)
		}
		v, err := Judge(m, target(wb.Value, db.Value))
		if err != nil {
			t.Fatal(err)
		}
		sum, square, low := 0.0, 0.0, 0
		for range n {
			draw := func(std float64) float64 { return std * rng.NormFloat64() }
			mm, err := read(
				r, (g.Value + quantity.GaugePressure(draw(g.Std))).PlusMinus(0),
				(atm.Value + quantity.Pressure(draw(atm.Std))).PlusMinus(0),
				line.Value.Add(quantity.TemperatureDelta(draw(line.Std))).PlusMinus(0),
			)
			if err != nil {
				t.Fatal(err)
			}
			tt := target(
				wb.Value.Add(quantity.TemperatureDelta(draw(wb.Std))),
				db.Value.Add(quantity.TemperatureDelta(draw(db.Std))),
			)
			wanted := float64(tt.Value.Value)
			if c.method == Subcooling {
				wanted += draw(tt.Value.Std)
			}
			d := float64(mm.Value.Value) - wanted
			sum, square = sum+d, square+d*d
			if c.method == Superheat && d > float64(tt.Tolerance) ||
				c.method == Subcooling && d < -float64(tt.Tolerance) {
				low++
			}
		}
		mean := sum / n
		std := math.Sqrt(square/n - mean*mean)
		if math.Abs(mean-float64(v.Deviation.Value)) > 0.05*std+4*std/math.Sqrt(n) {
			t.Errorf(
				"%s %v: deviation %v, by Monte Carlo %v", c.designation, c.method,
				float64(v.Deviation.Value), mean,
			)
		}
		if math.Abs(std/v.Deviation.Std-1) > 0.03 {
			t.Errorf(
				"%s %v: standard uncertainty %v, by Monte Carlo %v", c.designation, c.method,
				v.Deviation.Std, std,
			)
		}
		if p := float64(low) / n; math.Abs(p-v.Low) > 0.02 {
			t.Errorf("%s %v: chance low %v, by Monte Carlo %v", c.designation, c.method, v.Low, p)
		}
	}
}

// Common practice, no source: suction saturated at 41.5 °F with the line at
// 41.9 °F is liquid coming back.
func TestFloodingFromReadings(t *testing.T) {
	r22 := fluid(t, "R-22")
	p, err := r22.DewPressure(f(41.5))
	if err != nil {
		t.Fatal(err)
	}
	m, err := MeasureSuperheat(
		r22, p.Gauge(quantity.StandardAtmosphere).PlusMinus(quantity.PSIG(0.6)), seaLevel,
		f(41.9).PlusMinus(df(0.9)),
	)
	if err != nil || !m.LiquidReturning() || m.Value.Value <= 0 {
		t.Errorf("superheat %v, liquid returning %v, %v", m.Value, m.LiquidReturning(), err)
	}
}

// With glide the side counts: at one pressure, a line at the dew point has no
// superheat and a line at the bubble point no subcooling.
func TestGlideIsCountedFromItsOwnSide(t *testing.T) {
	for _, designation := range []string{"R-407C", "R-454B", "R-410A"} {
		r := fluid(t, designation)
		p := psig(120, 0)
		abs := p.Value.Absolute(quantity.StandardAtmosphere)
		dew, err1 := r.DewTemperature(abs)
		bubble, err2 := r.BubbleTemperature(abs)
		sh, err3 := MeasureSuperheat(r, p, seaLevel, dew.PlusMinus(0))
		sc, err4 := MeasureSubcooling(r, p, seaLevel, bubble.PlusMinus(0))
		if err := errors.Join(err1, err2, err3, err4); err != nil ||
			math.Abs(float64(sh.Value.Value)) > 1e-9 ||
			math.Abs(float64(sc.Value.Value)) > 1e-9 ||
			dew < bubble {
			t.Errorf(
				"%s: superheat %v at the dew point, subcooling %v at the bubble point, %v",
				designation, sh.Value, sc.Value, err,
			)
		}
	}
}

// More suction pressure at the same line is less superheat, and a warmer line more.
func TestMeasureIsMonotone(t *testing.T) {
	r := fluid(t, "R-32")
	rapid.Check(t, func(rt *rapid.T) {
		p, step := rapid.Float64Range(60, 200).
			Draw(rt, "psig"),
			rapid.Float64Range(0.01, 20).
				Draw(rt, "step")
		line := rapid.Float64Range(20, 90).Draw(rt, "line")
		a, err1 := MeasureSuperheat(r, psig(p, 1), seaLevel, f(line).PlusMinus(df(1)))
		b, err2 := MeasureSuperheat(r, psig(p+step, 1), seaLevel, f(line).PlusMinus(df(1)))
		c, err3 := MeasureSubcooling(r, psig(p, 1), seaLevel, f(line).PlusMinus(df(1)))
		d, err4 := MeasureSubcooling(r, psig(p+step, 1), seaLevel, f(line).PlusMinus(df(1)))
		if err := errors.Join(err1, err2, err3, err4); err != nil {
			rt.Fatal(err)
		}
		if b.Value.Value >= a.Value.Value || d.Value.Value <= c.Value.Value {
			rt.Fatalf("%v %v %v %v", a.Value, b.Value, c.Value, d.Value)
		}
		if s := float64(a.Budget.Std()); math.Abs(s-a.Value.Std) > 1e-12 ||
			a.Value.Std < float64(df(1)) {
			rt.Fatalf("budget %v, value %v", s, a.Value.Std)
		}
	})
}

func TestMeasureRefusesNonsense(t *testing.T) {
	r22 := fluid(t, "R-22")
	line := f(50).PlusMinus(df(1))
	var r *RangeError
	for name, got := range map[string]func() (Measurement, error){
		"no atmosphere": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(68, 1), pressure{}, line)
		},
		"vacuum": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(-30, 1), seaLevel, line)
		},
		"beyond critical": func() (Measurement, error) {
			return MeasureSubcooling(r22, psig(900, 1), seaLevel, line)
		},
		"not a number": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(math.NaN(), 1), seaLevel, line)
		},
		"line far out": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(68, 1), seaLevel, f(400).PlusMinus(0))
		},
		"line not a number": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(68, 1), seaLevel, f(math.NaN()).PlusMinus(0))
		},
		"gauge std": func() (Measurement, error) {
			return MeasureSuperheat(r22, gauge{Value: 5e5, Std: math.NaN()}, seaLevel, line)
		},
		"line std": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(68, 1), seaLevel, temperature{Value: 283, Std: -1})
		},
		"approach": func() (Measurement, error) {
			return MeasureApproach(f(500).PlusMinus(0), f(80).PlusMinus(0))
		},
		"approach std": func() (Measurement, error) {
			return MeasureApproach(f(90).PlusMinus(0), temperature{Value: 300, Std: math.NaN()})
		},
		"atmosphere std": func() (Measurement, error) {
			return MeasureSuperheat(r22, psig(68, 1), pressure{Value: 101325, Std: math.Inf(1)},
				line)
		},
	} {
		if m, err := got(); !errors.As(err, &r) || m.Method != 0 {
			t.Errorf("%s: %v, %v", name, m, err)
		}
	}
}

func TestMeasureDoesNotAllocate(t *testing.T) {
	r22 := fluid(t, "R-22")
	if n := testing.AllocsPerRun(100, func() {
		if _, err := MeasureSuperheat(r22, psig(68, 1), seaLevel,
			f(52).PlusMinus(df(1))); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkMeasureSuperheat(b *testing.B) {
	b.ReportAllocs()
	r22 := fluid(b, "R-22")
	for b.Loop() {
		if _, err := MeasureSuperheat(r22, psig(68, 1), seaLevel,
			f(52).PlusMinus(df(1))); err != nil {
			b.Fatal(err)
		}
	}
}

// An estimated refrigerant has the doubt of its saturation curve beside the instruments'.
func TestEstimateIsInTheBudget(t *testing.T) {
	for _, designation := range []string{"R-410A", "R-438A"} {
		r := fluid(t, designation)
		m, err := MeasureSubcooling(r, psig(250, 1), seaLevel,
			quantity.Fahrenheit(90).PlusMinus(quantity.FahrenheitDelta(0.5)))
		if err != nil {
			t.Fatal(err)
		}
		doubt, _ := r.SaturationUncertainty()
		found := quantity.TemperatureDelta(0)
		for _, term := range m.Budget.Terms() {
			if term.Reading == fromSaturation {
				found += term.Contribution
			}
		}
		if found != doubt || m.Value.Std < float64(doubt) || m.Saturation.Std < float64(doubt) {
			t.Errorf("%s: %v of ± %v in the budget of %+v", designation, found, doubt, m)
		}
	}
}
