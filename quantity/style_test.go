package quantity

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Every spelling of a unit is that unit's and no other's.
func TestSpellings(t *testing.T) {
	for _, k := range kinds {
		for i := range k.units {
			u := &k.units[i]
			for _, s := range append([]string{u.symbol}, u.also...) {
				for _, text := range []string{"7 " + s, "7" + s, " 7\u00a0" + s + " "} {
					got, err := k.parse(text, Style{})
					if want := u.toSI(7); k.floor != "" && want < 0 {
						continue
					} else if err != nil || got != want {
						t.Errorf("%s: %q reads %v, want %v: %v", k.name, text, got, want, err)
					}
				}
				for j := range k.units {
					if i != j && k.units[j].matches(s) {
						t.Errorf("%s: %q is %s and %s", k.name, s, u.symbol, k.units[j].symbol)
					}
				}
			}
		}
		for i := range k.difference {
			if k.difference[i].scale != math.Abs(k.units[i].scale) {
				t.Errorf("%s: an uncertainty in %s and a value in %s are not of one size",
					k.name, k.difference[i].symbol, k.units[i].symbol)
			}
		}
	}
}

// A milliohm is not a megohm, and no megapascal a millipascal.
func TestMegaIsACapital(t *testing.T) {
	for text, want := range map[string]float64{
		"2 MΩ": 2e6, "2 megohm": 2e6, "2 Mohm": 2e6, "2 ohm": 2, "2 \u2126": 2,
	} {
		if r, err := ParseResistance(text); err != nil || r.Ohms() != want {
			t.Errorf("%q reads %v, %v", text, float64(r), err)
		}
	}
	for _, text := range []string{"2 mΩ", "2 mohm", "2 milliohm"} {
		if r, err := ParseResistance(text); err == nil {
			t.Errorf("%q reads %v", text, r)
		}
	}
	if p, err := ParsePressure("2 mPa"); err == nil {
		t.Errorf("2 mPa reads %v", p)
	}
}

func TestParseBelowZero(t *testing.T) {
	for _, text := range []string{"-273.16 °C", "-459.68 °F", "-1 K"} {
		var pe *ParseError
		if v, err := ParseTemperature(text); !errors.As(err, &pe) {
			t.Errorf("%q reads %v, %v", text, float64(v), err)
		}
	}
	for _, text := range []string{"-273.15 °C", "-459.67 °F", "0 K"} {
		if v, err := ParseTemperature(text); err != nil || v != 0 {
			t.Errorf("%q reads %v, %v", text, float64(v), err)
		}
	}
	if p, err := ParsePressure("-1 Pa"); err == nil {
		t.Errorf("-1 Pa reads %v", p)
	}
	if d, err := ParseTemperatureDelta("-300 K"); err != nil || d != -300 {
		t.Errorf("a difference of -300 K: %v, %v", d, err)
	}
	var u Uncertain[Temperature]
	if u.UnmarshalText([]byte("-300 ± 1 °C")) == nil {
		t.Errorf("-300 ± 1 °C reads %v", u)
	}
}

func TestParseStyled(t *testing.T) {
	comma := Style{Comma: true}
	for text, want := range map[string]float64{
		"1,5 kg": 1.5, "1.5 kg": 1.5, ",5 kg": 0.5, "-1,25 kg": -1.25, "−1,25 kg": -1.25,
		"2,835 kg": 2.835,
		"1,5e1 kg": 15, "12 kg": 12, "1/2 kg": 0.5, "1,2345 kg": 1.2345, "1.2345 kg": 1.2345,
	} {
		if m, err := ParseStyled[Mass](text, comma); err != nil || float64(m) != want {
			t.Errorf("%q reads %v, want %v: %v", text, float64(m), want, err)
		}
	}
	m, err := ParseStyled[Mass]("6 lb 4,5 oz", comma)
	if err != nil || math.Abs(m.Ounces()-100.5) > 1e-12 {
		t.Errorf("6 lb 4,5 oz reads %v oz, %v", m.Ounces(), err)
	}
	for _, text := range []string{
		"1.234 kg", "1.234,5 kg", "1,234.5 kg", "1,234,567 kg", "1.234.567 kg", "1 234 kg",
		"1,,5 kg", ", kg", "1,5",
	} {
		var pe *ParseError
		if m, err := ParseStyled[Mass](text, comma); !errors.As(err, &pe) {
			t.Errorf("with a comma %q reads %v, %v", text, float64(m), err)
		}
	}
	for _, text := range []string{"1,5 kg", "1,234 kg", "1,234.5 kg", "1.234.567 kg"} {
		var pe *ParseError
		if m, err := Parse[Mass](text); !errors.As(err, &pe) {
			t.Errorf("without a comma %q reads %v, %v", text, float64(m), err)
		}
	}
}

func TestStyled(t *testing.T) {
	p := Kilopascals(1234.56)
	g := PSIG(68.5).PlusMinus(PSIG(0.5))
	wetBulb := Fahrenheit(71).PlusMinus(FahrenheitDelta(0.6))
	for _, c := range []struct{ got, want string }{
		{p.Styled(Style{}), "179.1 psia"},
		{p.Styled(Style{System: SI, Comma: true}), "1234,6 kPa"},
		{p.Styled(Style{}.In("bar", 2)), "12.35 bar"},
		{p.Styled(Style{Comma: true}.In("bar", 3)), "12,346 bar"},
		{p.Styled(Style{System: SI}.In("psig", 3)), "1234.6 kPa"}, // psig is of gauges
		{p.Styled(Style{}.In("Pa", -3)), "1234560 Pa"},
		{Grams(50).Styled(Style{}.In("lb", 2)), "0.11 lb"},
		{g.Styled(Style{Comma: true}), "68,5 psig ± 0,5 psi"},
		{g.Styled(Style{OneUnit: true}), "68.5 ± 0.5 psig"},
		{g.Styled(Style{}.In("barg", 3)), "4.723 barg ± 0.034 bar"},
		{g.Styled(Style{OneUnit: true}.In("inHg vac", 1)), "-139.5 ± 1.0 inHg vac"},
		{wetBulb.Styled(Style{OneUnit: true}), "71.0 ± 0.6 °F"},
		{wetBulb.Value.PlusMinus(0).Styled(Style{OneUnit: true}), "71.0 °F"},
		{Percent(27.4).Styled(Style{Comma: true}.In("%", 1)), "27,4 %"},
		{Microfarads(45).String(), "45.0 µF"},
		{Megohms(20).String(), "20.00 MΩ"},
		{Ohms(1.25).String(), "1.25 Ω"},
		{Kilograms(1e300).Styled(Style{System: SI, Comma: true}), "1e+300 kg"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// One unit does for a value and its uncertainty.
func TestUncertainInOneUnit(t *testing.T) {
	for text, want := range map[string]Uncertain[GaugePressure]{
		"68.5 ± 0.5 psig":  PSIG(68.5).PlusMinus(PSIG(0.5)),
		"68.5 +/- .5 psig": PSIG(68.5).PlusMinus(PSIG(0.5)),
		"10 ± 1 inHg vac":  {Value: -10 * inchMercury, Std: inchMercury},
	} {
		var got Uncertain[GaugePressure]
		if err := got.UnmarshalText([]byte(text)); err != nil || got != want {
			t.Errorf("%q reads %v, want %v: %v", text, got, want, err)
		}
	}
	for _, text := range []string{
		"68.5 ± 0.5 psi", "68.5 ± 0.5", "68.5 psig ± 0.5", "68.5 ± psig", "± 0.5 psig",
		"68.5 ± -0.5 psig",
	} {
		var pe *ParseError
		if got := new(Uncertain[GaugePressure]); !errors.As(got.UnmarshalText([]byte(text)), &pe) {
			t.Errorf("%q reads %v", text, got)
		}
	}
	var static Uncertain[StaticPressure]
	err := static.UnmarshalStyled([]byte("0,5 ± 0,05 in. w.c."), Style{Comma: true})
	if err != nil || static != InchesWater(0.5).PlusMinus(InchesWater(0.05)) {
		t.Errorf("0,5 ± 0,05 in. w.c. reads %v, %v", static, err)
	}
	rapid.Check(t, func(t *rapid.T) {
		u := Celsius(rapid.Float64Range(-60, 200).Draw(t, "value")).
			PlusMinus(TemperatureDelta(rapid.Float64Range(0, 20).Draw(t, "std")))
		style := Style{
			System:  System(rapid.IntRange(0, 1).Draw(t, "system")),
			Comma:   rapid.Bool().Draw(t, "comma"),
			OneUnit: rapid.Bool().Draw(t, "one unit"),
		}
		var back Uncertain[Temperature]
		if err := back.UnmarshalStyled([]byte(u.Styled(style)), style); err != nil {
			t.Fatalf("%q: %v", u.Styled(style), err)
		}
		if back.Styled(style) != u.Styled(style) && u.Std > 0.06 {
			t.Fatalf("%q reads back as %q", u.Styled(style), back.Styled(style))
		}
	})
}

func TestUncertainWritesWhatItReads(t *testing.T) {
	for _, std := range []float64{math.NaN(), math.Inf(1), -1} {
		if text, err := (Uncertain[Mass]{1, std}).MarshalText(); err == nil {
			t.Errorf("an uncertainty of %v is written as %q", std, text)
		}
	}
}

func TestUnits(t *testing.T) {
	for _, c := range []struct {
		got  []string
		want string
	}{
		{symbols(Units[GaugePressure](IP)), "psig kPag barg"},
		{symbols(Units[GaugePressure](SI)), "kPag barg psig"},
		{symbols(Units[Temperature](IP)), "°F °C"}, {symbols(Units[Mass](IP)), "lb oz kg g"},
		{symbols(Units[Mass](SI)), "kg g lb oz"}, {symbols(Units[Current](SI)), "A"},
	} {
		if got := strings.Join(c.got, " "); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	u, boiling := UnitOf[Temperature](IP), Celsius(100)
	if u.Symbol() != "°F" || u.Number(boiling) != boiling.Fahrenheit() ||
		u.Value(32) != Fahrenheit(32) {
		t.Errorf("%s: %v, %v", u.Symbol(), u.Number(boiling), u.Value(32))
	}
	if u := (Unit[Pressure]{}); u.Symbol() != "Pa" || u.Number(StandardAtmosphere) != 101325 {
		t.Errorf("the zero unit is %s", u.Symbol())
	}
	all := Symbols()
	if !slices.IsSorted(all) || !slices.Contains(all, "psi") || !slices.Contains(all, "µF") {
		t.Errorf("symbols: %q", all)
	}
}

func symbols[T Quantity](units []Unit[T]) []string {
	var out []string
	for _, u := range units {
		out = append(out, u.Symbol())
	}
	return out
}

func TestShowingAllocates(t *testing.T) {
	x := Fahrenheit(71).PlusMinus(FahrenheitDelta(0.6))
	style := Style{System: SI, Comma: true}
	buffer := make([]byte, 0, 64)
	n := testing.AllocsPerRun(100, func() { buffer = x.AppendStyled(buffer[:0], style) })
	if n != 0 {
		t.Errorf("appending allocates %v times", n)
	}
	text := ""
	if n := testing.AllocsPerRun(100, func() { text = x.Styled(style) }); n > 1 || text == "" {
		t.Errorf("a text allocates %v times", n)
	}
}

func BenchmarkFormat(b *testing.B) {
	t := Fahrenheit(71)
	b.ReportAllocs()
	for b.Loop() {
		_ = t.Format(SI)
	}
}

func BenchmarkStyled(b *testing.B) {
	u, style := Fahrenheit(71).PlusMinus(FahrenheitDelta(0.6)), Style{System: SI, Comma: true}
	b.ReportAllocs()
	for b.Loop() {
		_ = u.Styled(style)
	}
}

func BenchmarkAppendStyled(b *testing.B) {
	u, style := Fahrenheit(71).PlusMinus(FahrenheitDelta(0.6)), Style{System: SI, Comma: true}
	var buffer []byte
	b.ReportAllocs()
	for b.Loop() {
		buffer = u.AppendStyled(buffer[:0], style)
	}
}

// Digits follow the size: the pressure of the water in a room is not one digit.
func TestSmallPressureKeepsDigits(t *testing.T) {
	for p, want := range map[Pressure][2]string{
		Pascals(1907):   {"1.907 kPa", "0.277 psia"},
		Pascals(66.6):   {"66.6 Pa", "500 micron"},
		Pascals(101325): {"101.3 kPa", "14.7 psia"},
	} {
		if si, ip := p.Format(SI), p.Format(IP); si != want[0] || ip != want[1] {
			t.Errorf("%s, %s", si, ip)
		}
	}
}
