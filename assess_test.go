package satline

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/verify"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func load(t testing.TB, name string) Visit {
	t.Helper()
	data, err := os.ReadFile("testdata/visits/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	v, err := DecodeVisit(data)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func assess(t testing.TB, v Visit) Assessment {
	t.Helper()
	a, err := Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestSoundVisit(t *testing.T) {
	a := assess(t, load(t, "sound-r410a-piston"))
	if len(a.Doubts) != 0 {
		t.Errorf("a sound visit was doubted: %+v", a.Doubts)
	}
	if a.Charge.Outcome == ChargeLow || a.Charge.Outcome == ChargeHigh || a.Charge.Outcome == ChargeNotNow {
		t.Errorf("a sound visit reads %q: %v", a.Charge.Outcome, a.Charge.Reasons)
	}
	for _, r := range a.Readings {
		if r.Belief != Believed {
			t.Errorf("%s is %s", r.Field, r.Belief)
		}
	}
}

// The rules of thumb that an assessment must agree with; common practice, no
// source.
func TestCommonPractice(t *testing.T) {
	source := verify.Source{Cite: "charging a fixed restrictor by superheat", Kind: verify.CommonPractice}
	base := load(t, "sound-r410a-piston")
	at := func(wetBulb, outdoor float64) Visit {
		v := base
		v.Readings.ReturnWetBulb = Measured(quantity.Fahrenheit(wetBulb))
		v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(outdoor))
		return v
	}
	verify.Value(t, source, "target superheat at 62 °F wet bulb, 77 °F outdoors", "°F", 14, assess(t, at(62, 77)).Charge.Target.Value.Fahrenheit(), 0.5)
	verify.Value(t, source, "target superheat at 62 °F wet bulb, 75.5 °F outdoors", "°F", 15, assess(t, at(62, 75.5)).Charge.Target.Value.Fahrenheit(), 0.5)

	// Liquid coming back: saturated at 41.5 °F with the line at 41.9 °F.
	v := at(66, 85)
	dew, err := mustFluid(t, "R-410A").DewPressure(quantity.Fahrenheit(41.5))
	if err != nil {
		t.Fatal(err)
	}
	v.Readings.SuctionPressure = Measured(dew.Gauge(quantity.AtmosphereAt(*v.Site.Elevation)))
	v.Readings.SuctionLine = Measured(quantity.Fahrenheit(41.9))
	a := assess(t, v)
	verify.Value(t, source, "superheat of a line at 41.9 °F saturated at 41.5 °F", "°F", 0.4, a.Derived.Superheat.Value.Fahrenheit(), 0.01)
	if !hasRisk(a, "floodback") {
		t.Errorf("no floodback is named: %+v", a.Risks)
	}

	// A subcooling of 26 °F beside no superheat reads overcharged.
	liquid, err := mustFluid(t, "R-410A").BubblePressure(quantity.Fahrenheit(116))
	if err != nil {
		t.Fatal(err)
	}
	v.Readings.LiquidPressure = Measured(liquid.Gauge(quantity.AtmosphereAt(*v.Site.Elevation)))
	v.Readings.LiquidLine = Measured(quantity.Fahrenheit(90))
	if a := assess(t, v); a.Charge.Outcome != ChargeHigh {
		t.Errorf("26 °F of subcooling beside no superheat reads %q: %v", a.Charge.Outcome, a.Charge.Reasons)
	}
}

func hasRisk(a Assessment, code string) bool {
	for _, r := range a.Risks {
		if strings.Contains(r.Code, code) {
			return true
		}
	}
	return false
}

// Units of the sentences and of the readings do not change what is concluded,
// and the same refrigerant on a mountain reads the same in absolute terms. The
// diagnosis is left out of that: thin air moves what a sound machine reads.
func TestUnitsAndAltitudeDoNotChangeTheVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Visit{
			Equipment: Equipment{Refrigerant: "R-410A", Metering: FixedRestrictor},
			Site:      Site{Barometer: new(quantity.StandardAtmosphere)},
		}
		suction := quantity.PSIG(rapid.Float64Range(90, 160).Draw(t, "suction")).Absolute(quantity.StandardAtmosphere)
		v.Readings = Readings{
			SuctionPressure: Measured(suction.Gauge(*v.Site.Barometer)),
			SuctionLine:     Measured(quantity.Fahrenheit(rapid.Float64Range(45, 75).Draw(t, "line"))),
			OutdoorDryBulb:  Measured(quantity.Fahrenheit(rapid.Float64Range(60, 105).Draw(t, "outdoor"))),
			ReturnWetBulb:   Measured(quantity.Fahrenheit(rapid.Float64Range(52, 74).Draw(t, "wet bulb"))),
		}
		a, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Units = quantity.SI
		si, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		if a.Charge.Outcome != si.Charge.Outcome || a.Charge.High != si.Charge.High {
			t.Fatalf("%q in IP, %q in SI", a.Charge.Outcome, si.Charge.Outcome)
		}
		v.Scope = VerdictOnly
		a, err = Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Site.Barometer = new(quantity.Kilopascals(80))
		v.Readings.SuctionPressure = Measured(suction.Gauge(*v.Site.Barometer))
		high, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(a.Charge.High-high.Charge.High) > 1e-9 || a.Charge.Outcome != high.Charge.Outcome {
			t.Fatalf("%q at sea level, %q at 80 kPa", a.Charge.Outcome, high.Charge.Outcome)
		}
	})
}

// Nothing is judged by a method that has no target, and the reason says so.
func TestNoTargetIsNoNumber(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(48))
	a := assess(t, v)
	if a.Charge.Outcome != ChargeNotNow || a.Charge.Target != nil || len(a.Charge.Instead) == 0 {
		t.Errorf("at 48 °F outdoors: %+v", a.Charge)
	}
	if !strings.Contains(a.Headline, "Do not charge by superheat now") {
		t.Errorf("headline %q", a.Headline)
	}
}

func TestMissingReadingsAreNamed(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.ReturnWetBulb, v.Readings.SuctionLine = nil, nil
	a := assess(t, v)
	if a.Charge.Outcome != ChargeNotMeasured || !strings.Contains(a.Charge.Reasons[0], "suction line and return wet bulb") ||
		!slices.Equal(a.Charge.Missing, []string{"suctionLine", "returnWetBulb"}) {
		t.Errorf("%+v", a.Charge)
	}
}

func TestLogSettles(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	for i := range 40 {
		v.Log = append(v.Log, LogEntry{At: time.Duration(i) * 30 * time.Second, Readings: Readings{
			SuctionPressure: Measured(quantity.PSIG(126)),
			SuctionLine:     Measured(quantity.Fahrenheit(55 + 15*math.Exp(-float64(i)/4) + 0.1*math.Sin(float64(7*i)))),
		}})
	}
	a := assess(t, v)
	if a.Steadiness == nil || !a.Steadiness.Course.Steady() {
		t.Fatalf("a settled log reads %+v", a.Steadiness)
	}
	line := a.Readings[2]
	if line.Field != "suctionLine" || !line.Settled || !strings.HasPrefix(line.Value, "55.") {
		t.Errorf("settled suction line %+v", line)
	}
	v.Log = v.Log[:8]
	if a := assess(t, v); a.Charge.Outcome == ChargeInBand || a.Charge.Outcome == ChargeLow || a.Charge.Outcome == ChargeHigh {
		t.Errorf("an unsettled log was judged: %q (%+v)", a.Charge.Outcome, a.Steadiness)
	}
}

func TestReportsHaveEveryPart(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Notes = "a note with <b>markup</b> and *stars* | bars"
	a := assess(t, v)
	for _, audience := range []Audience{Technician, File, Owner} {
		var text, markdown, html strings.Builder
		if err := a.WriteText(&text, audience); err != nil {
			t.Fatal(err)
		}
		if err := a.WriteMarkdown(&markdown, audience, Picture{Caption: "a [line]", SVG: []byte("<svg></svg>")}); err != nil {
			t.Fatal(err)
		}
		if err := a.WriteHTML(&html, audience, Picture{Caption: "a line", SVG: []byte("<svg></svg>")}); err != nil {
			t.Fatal(err)
		}
		if strings.Contains(html.String(), "<b>markup") {
			t.Error("what the technician typed became markup")
		}
		if !strings.Contains(html.String(), "<svg></svg>") {
			t.Error("the picture is not in the page")
		}
		if !strings.Contains(markdown.String(), `![a \[line\]](data:image/svg+xml;base64,PHN2Zz48L3N2Zz4=)`) {
			t.Error("the picture is not in the Markdown")
		}
		for _, out := range []string{text.String(), markdown.String(), html.String()} {
			if !strings.Contains(strings.ToLower(out), "be careful") || !strings.Contains(out, "outrank") {
				t.Errorf("a report has no cautions:\n%s", out)
			}
			for _, bad := range []string{"%!", "NaN", "<nil>", "Inf"} {
				if strings.Contains(out, bad) {
					t.Errorf("a report holds %q:\n%s", bad, out)
				}
			}
		}
	}
}

func FuzzDecodeVisit(f *testing.F) {
	for _, name := range []string{"sound-r410a-piston"} {
		data, err := os.ReadFile("testdata/visits/" + name + ".json")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		v, err := DecodeVisit(data)
		if err != nil {
			return
		}
		a, err := Assess(v)
		if err != nil {
			return
		}
		if _, err := json.Marshal(a); err != nil {
			t.Fatalf("an assessment cannot be marshaled: %v", err)
		}
	})
}

// The whole assessment, with dose, freezing and diagnosis.
func BenchmarkAssess(b *testing.B) { benchmarkAssess(b, Whole) }

// Readings judged, derived values, charge, air and risks.
func BenchmarkAssessVerdict(b *testing.B) { benchmarkAssess(b, VerdictOnly) }

func benchmarkAssess(b *testing.B, scope Scope) {
	v := load(b, "sound-r410a-piston")
	v.Scope = scope
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Assess(v); err != nil {
			b.Fatal(err)
		}
	}
}
