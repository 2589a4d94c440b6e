package quantity

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Conversions of NIST SP 811 (2008), appendix B.8, and of the ASHRAE Handbook
// Fundamentals, "Units and Conversions" (from memory).
func TestConversions(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
		within    float64
	}{
		{"32 °F in K", float64(Fahrenheit(32)), 273.15, 1e-13},
		{"212 °F in °C", Fahrenheit(212).Celsius(), 100, 1e-12},
		{"−40 °C in °F", Celsius(-40).Fahrenheit(), -40, 1e-12},
		{"18 °F difference in K", float64(FahrenheitDelta(18)), 10, 1e-14},
		{"1 atm in psia", StandardAtmosphere.PSIA(), 14.695948775, 1e-9},
		{"1 atm in inHg", StandardAtmosphere.InchesHg(), 29.9212524, 1e-6},
		{"1000 microns in Pa", float64(Microns(1000)), 133.322387, 1e-6},
		{"1 in. w.c. in Pa", float64(InchesWater(1)), 249.08891, 1e-9},
		{"1 lb in oz", Pounds(1).Ounces(), 16, 1e-13},
		{"1 ton in W", float64(Tons(1)), 3516.852842, 1e-6},
		{"1 ton in Btu/h", Tons(1).BtuPerHour(), 12000, 1e-9},
		{"1 Btu/lb in J/kg", float64(BtuPerPound(1)), 2326, 0},
		{"1 Btu/(lb R) in J/(kg K)", float64(BtuPerPoundRankine(1)), 4186.8, 0},
		{"1000 CFM in L/s", CFM(1000).LitersPerSecond(), 471.9474432, 1e-9},
		{"1 lb/ft³ in kg/m³", float64(PoundsPerCubicFoot(1)), 16.01846337, 1e-8},
		{"1 ft³/lb in m³/kg", float64(CubicFeetPerPound(1)), 0.06242796, 1e-8},
		{"100 fpm in m/s", float64(FeetPerMinute(100)), 0.508, 1e-15},
		{"1 ft³ in in³", CubicFeet(1).CubicInches(), 1728, 1e-10},
		{"1 Btu/(h °F) in W/K", float64(BtuPerHourFahrenheit(1)), 0.5275279, 1e-7},
		{"1 Btu/ft³ in kJ/m³", float64(BtuPerCubicFoot(1)) / 1e3, 37.25895, 1e-5},
		{"1000 lb/h in kg/s", float64(PoundsPerHour(1000)), 0.1259979, 1e-7},
	} {
		if math.Abs(c.got-c.want) > c.within {
			t.Errorf("%s = %.10g, want %.10g", c.name, c.got, c.want)
		}
	}
}

// The U.S. Standard Atmosphere as tabulated in ASHRAE Fundamentals chapter 1,
// Table 1 (altitude in m, pressure in kPa; from memory).
func TestAtmosphereAt(t *testing.T) {
	for _, c := range []struct{ z, kPa float64 }{
		{-500, 107.478}, {0, 101.325}, {500, 95.461}, {1000, 89.875}, {1500, 84.556},
		{2000, 79.495}, {2500, 74.682}, {3000, 70.108}, {5000, 54.020},
	} {
		if got := AtmosphereAt(Meters(c.z)).Kilopascals(); math.Abs(got-c.kPa) > 0.006 {
			t.Errorf("at %g m: %.3f kPa, table says %.3f", c.z, got, c.kPa)
		}
	}
	off := StandardAtmosphere.PSIA() - AtmosphereAt(Feet(6000)).PSIA()
	if math.Abs(off-2.92) > 0.02 {
		t.Errorf("a gauge at 6,000 ft is off by %.2f psi, want about 2.92", off)
	}
	for _, z := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		if p := float64(AtmosphereAt(Length(z))); math.IsNaN(p) || p <= 0 || math.IsInf(p, 0) {
			t.Errorf("AtmosphereAt(%g) = %g", z, p)
		}
	}
}

func reader[T Quantity](text string) (float64, error) {
	v, err := Parse[T](text)
	return float64(v), err
}

func TestParseAccepts(t *testing.T) {
	temp, gauge, mass := reader[Temperature], reader[GaugePressure], reader[Mass]
	power, static, length := reader[Power], reader[StaticPressure], reader[Length]
	for _, c := range []struct {
		parse func(string) (float64, error)
		text  string
		want  float64
	}{
		{temp, "71 °F", float64(Fahrenheit(71))}, {temp, "71 F", float64(Fahrenheit(71))},
		{temp, "71F", float64(Fahrenheit(71))}, {temp, "16.7 °C", float64(Celsius(16.7))},
		{temp, " -4 degC ", float64(Celsius(-4))}, {temp, "−4 °C", float64(Celsius(-4))},
		{temp, "2.9e2 K", 290}, {gauge, "68.5 psig", float64(PSIG(68.5))},
		{gauge, "68.5 PSIG", float64(PSIG(68.5))}, {gauge, "10 inHg vac", -33863.89},
		{gauge, "4.7 barg", 4.7e5}, {mass, "6 lb 4 oz", float64(Pounds(6.25))},
		{mass, "4 oz", float64(Ounces(4))}, {mass, "350 g", 0.35},
		{power, "4 ton", float64(Tons(4))}, {power, "48000 Btu/h", float64(Tons(4))},
		{static, "0.5 in. w.c.", float64(InchesWater(0.5))},
		{static, "-0.25 inWC", float64(InchesWater(-0.25))}, {length, "6000 ft", 1828.8},
		{length, "12 ft 6 in", 3.81}, {length, "3/8 in", float64(Inches(0.375))},
		{length, "3/8\"", float64(Inches(0.375))}, {length, "1 1/8 in", float64(Inches(1.125))},
		{length, "1-1/8 in", float64(Inches(1.125))},
		{length, "6 ft 1/2 in", float64(Feet(6) + Inches(0.5))},
		{mass, "1/2 lb", float64(Pounds(0.5))}, {length, "3/0 in", math.NaN()},
		{length, "3/ in", math.NaN()}, {length, "/8 in", math.NaN()}, {length, "1 1/8", math.NaN()},
		{temp, "1/2 °F", math.NaN()},
	} {
		got, err := c.parse(c.text)
		if math.IsNaN(c.want) {
			if err == nil {
				t.Errorf("%q was accepted as %g", c.text, got)
			}
			continue
		}
		if err != nil || math.Abs(got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%q = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for text, problem := range map[string]string{
		"":            "empty",
		"71":          "the unit is missing",
		"°F":          "does not start with a number",
		"sixty °F":    "does not start with a number",
		"62 psig":     "not one of its units",
		"1,000 °F":    "decimal point",
		"71 °F high":  "not one of its units",
		"NaN °F":      "does not start with a number",
		"Inf K":       "does not start with a number",
		"0x1p4 K":     "not one of its units",
		"1e999 K":     "beyond what a number can hold",
		"1.7e308 °F":  "",
		"6_2 °F":      "not one of its units",
		"62 \xff":     "UTF-8",
		"--71 °F":     "does not start with a number",
		"71 °F 71 °F": "not one of its units",
	} {
		v, err := ParseTemperature(text)
		if problem == "" {
			if err != nil {
				t.Errorf("%q: %v", text, err)
			}
			continue
		}
		var pe *ParseError
		if !errors.As(err, &pe) {
			t.Errorf("%q: got %v, %v; want a *ParseError", text, v, err)
			continue
		}
		if !strings.Contains(pe.Error(), problem) {
			t.Errorf("%q: %q does not say %q", text, pe.Error(), problem)
		}
		if len(pe.Units) == 0 {
			t.Errorf("%q: the error names no units", text)
		}
	}
	if _, err := ParseTemperature(strings.Repeat("1", 1000) + " K"); err == nil {
		t.Error("a text of a thousand digits was accepted")
	}
	if _, err := ParseMass("6 lb 20 oz"); err == nil {
		t.Error("6 lb 20 oz was accepted")
	}
	if _, err := ParseMass("6.5 lb 4 oz"); err == nil {
		t.Error("6.5 lb 4 oz was accepted")
	}
	if _, err := ParseGaugePressure("68.5 psi"); err == nil {
		t.Error("psi without gauge or absolute was accepted")
	}
}

func TestMarshalIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "v")
		for _, k := range kinds {
			v := v
			if k.floor != "" {
				v = math.Abs(v)
			}
			b, err := k.appendExact(nil, v)
			if err != nil {
				t.Fatal(err)
			}
			back, err := k.parse(string(b), Style{})
			if err != nil || back != v {
				t.Fatalf("%s: %g wrote %q, which reads %g, %v", k.name, v, b, back, err)
			}
		}
	})
}

func TestMarshalRefusesNonFinite(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if b, err := json.Marshal(Temperature(v)); err == nil {
			t.Errorf("%g was marshaled as %s", v, b)
		}
	}
}

func TestUncertainText(t *testing.T) {
	for _, c := range []struct {
		text       string
		value, std float64
	}{
		{`"71 °F ± 0.6 °F"`, float64(Fahrenheit(71)), 0.6 * 5 / 9},
		{`"71 °F +/- 0.6 F"`, float64(Fahrenheit(71)), 0.6 * 5 / 9},
		{`"71 °F +- 0.6 F"`, float64(Fahrenheit(71)), 0.6 * 5 / 9},
		{`"71 °F"`, float64(Fahrenheit(71)), 0},
	} {
		var u Uncertain[Temperature]
		if err := json.Unmarshal([]byte(c.text), &u); err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if math.Abs(float64(u.Value)-c.value) > 1e-12*c.value || math.Abs(u.Std-c.std) > 1e-14 {
			t.Errorf("%s = %v ± %v", c.text, float64(u.Value), u.Std)
		}
		b, err := json.Marshal(u)
		if err != nil {
			t.Fatal(err)
		}
		var back Uncertain[Temperature]
		if err := json.Unmarshal(b, &back); err != nil || back != u {
			t.Errorf("%s wrote %s, which reads %v, %v", c.text, b, back, err)
		}
	}
	var g Uncertain[GaugePressure]
	err := g.UnmarshalText([]byte("68.5 psig ± 0.5 psi"))
	if err != nil || math.Abs(g.Std-0.5*PSI) > 1e-9 {
		t.Errorf("gauge pressure: %v, %v", g, err)
	}
	if got := PSIG(68.5).PlusMinus(PSIG(0.5)).Format(IP); got != "68.5 psig ± 0.5 psi" {
		t.Errorf("Format(IP) = %q", got)
	}
	if err := g.UnmarshalText([]byte("68.5 psig ± -0.5 psi")); err == nil {
		t.Error("a negative uncertainty was accepted")
	}
}

// A deep vacuum is not shown as nothing, and an uncertainty stays in its unit.
func TestVacuumShown(t *testing.T) {
	for _, c := range []struct {
		p      Pressure
		std    Pressure
		si, ip string
	}{
		{Microns(450), Microns(20), "60.0 Pa ± 2.7 Pa", "450 micron ± 20 micron"},
		{Pascals(499), Pascals(1), "499.0 Pa ± 1.0 Pa", "3743 micron ± 8 micron"},
		{Kilopascals(81.2), Pascals(400), "81.2 kPa ± 0.4 kPa", "11.8 psia ± 0.1 psi"},
		{0, Pascals(400), "0.0 kPa ± 0.4 kPa", "0.0 psia ± 0.1 psi"},
	} {
		u := c.p.PlusMinus(c.std)
		if si, ip := u.Format(SI), u.Format(IP); si != c.si || ip != c.ip {
			t.Errorf("%g Pa: %q, %q", float64(c.p), si, ip)
		}
		for _, sys := range []System{SI, IP} {
			var back Uncertain[Pressure]
			if err := back.UnmarshalText([]byte(u.Format(sys))); err != nil {
				t.Errorf("%s does not read back: %v", u.Format(sys), err)
			}
		}
	}
}

// Arithmetic on points and differences is that of the scale.
func TestAffine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Temperature(rapid.Float64Range(100, 600).Draw(t, "a"))
		b := Temperature(rapid.Float64Range(100, 600).Draw(t, "b"))
		if got := b.Add(a.Sub(b)); math.Abs(float64(got-a)) > 1e-12*600 {
			t.Fatalf("b + (a − b) = %v, want %v", got, a)
		}
		if d := a.Sub(b); math.Abs(d.Fahrenheit()-(a.Fahrenheit()-b.Fahrenheit())) > 1e-9 {
			t.Fatalf("difference in °F %v", d.Fahrenheit())
		}
		p := Pressure(rapid.Float64Range(1e3, 5e6).Draw(t, "p"))
		atm := AtmosphereAt(Meters(rapid.Float64Range(-500, 5000).Draw(t, "z")))
		if got := p.Gauge(atm).Absolute(atm); math.Abs(float64(got-p)) > 1e-8 {
			t.Fatalf("absolute(gauge(p)) = %v, want %v", got, p)
		}
	})
}

func TestFormatHasNoNegativeZero(t *testing.T) {
	if got := KelvinDelta(-0.001).Format(SI); got != "0.0 K" {
		t.Errorf("got %q", got)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"71 °F", "68.5 psig", "6 lb 4 oz", "1 1/8 in", "10 inHg vac", "1e400 K", "-0 °C",
		"9 \u00a0Pa", "± 1 K", "71 °F ± 0.6 °F", "71 ± 0.6 °F",
	} {
		f.Add(s, false)
	}
	for _, s := range []string{"1,5 kg", "1.234,5 kg", "62,0 ± 0,6 °F"} {
		f.Add(s, true)
	}
	f.Fuzz(func(t *testing.T, s string, comma bool) {
		style := Style{Comma: comma}
		for _, k := range kinds {
			v, err := k.parse(s, style)
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%s: %q reads as %g", k.name, s, v)
			}
			if err != nil {
				continue
			}
			b, err := k.appendExact(nil, v)
			if err != nil {
				t.Fatal(err)
			}
			if back, err := k.parse(string(b), Style{}); err != nil || back != v {
				t.Fatalf("%s: %q reads %g, writes %q, which reads %g, %v",
					k.name, s, v, b, back, err)
			}
		}
		var u Uncertain[Temperature]
		if u.UnmarshalStyled([]byte(s), style) == nil && !(u.Std >= 0 && u.Std <= math.MaxFloat64) {
			t.Fatalf("%q: uncertainty %g", s, u.Std)
		}
	})
}

func BenchmarkParseTemperature(b *testing.B) {
	for b.Loop() {
		if _, err := ParseTemperature("71 °F"); err != nil {
			b.Fatal(err)
		}
	}
}

// A value that is missing has no number to print, and one that is absurd does not
// print three hundred digits.
func TestRangeErrorWithoutAValue(t *testing.T) {
	for _, c := range []struct {
		err  RangeError
		want string
	}{
		{
			RangeError{Quantity: "air", Advice: "make it with a constructor"},
			"air: missing; make it with a constructor",
		},
		{
			RangeError{Quantity: "mass", Value: Mass(1e300), Max: Mass(10)},
			"mass: 1e+300 kg (2.20462e+300 lb) is out of range; valid up to 10.000 kg (22.05 lb)",
		},
	} {
		if got := c.err.Error(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
