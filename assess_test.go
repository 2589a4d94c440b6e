package satline

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

func load(t testing.TB, name string) Visit {
	t.Helper()
	return decoded(t, "visits/"+name)
}

func decoded(t testing.TB, name string) Visit {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name + ".json")
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

func codes(a Assessment) []fact.Code {
	var out []fact.Code
	for _, s := range a.Plan {
		out = append(out, s.Do.Code)
	}
	return out
}

func endangers(a Assessment, code string) bool {
	return slices.ContainsFunc(a.Dangers, func(d Danger) bool { return d.Code == code })
}

func TestSoundVisit(t *testing.T) {
	a := assess(t, load(t, "sound-r410a-piston"))
	if len(a.Doubts) != 0 {
		t.Errorf("a sound visit was doubted: %+v", a.Doubts)
	}
	if a.Charge.Outcome != ChargeInBand || !slices.Equal(codes(a), []fact.Code{StepLeave}) {
		t.Errorf("a sound visit: charge %q, plan %v", a.Charge.Outcome, codes(a))
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
	source := verify.Source{
		Cite: "charging a fixed restrictor by superheat",
		Kind: verify.CommonPractice,
	}
	base := load(t, "sound-r410a-piston")
	at := func(wetBulb, outdoor float64) Visit {
		v := base
		v.Readings.ReturnWetBulb = Measured(quantity.Fahrenheit(wetBulb))
		v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(outdoor))
		return v
	}
	target := func(wetBulb, outdoor float64) float64 {
		return assess(t, at(wetBulb, outdoor)).Charge.Reading.Target.Value.Fahrenheit()
	}
	verify.Value(
		t, source, "target superheat at 66 °F wet bulb, 80 °F outdoors", "°F", 18, target(66, 80),
		0.5,
	)
	verify.Value(
		t, source, "target superheat at 70 °F wet bulb, 95 °F outdoors", "°F", 18, target(70, 95),
		0.5,
	)

	// Liquid coming back: a line hardly warmer than saturation.
	v := at(66, 85)
	dew, err := mustFluid(t, "R-410A").DewPressure(quantity.Fahrenheit(46))
	if err != nil {
		t.Fatal(err)
	}
	v.Readings.SuctionPressure = Measured(dew.Gauge(quantity.AtmosphereAt(*v.Site.Elevation)))
	v.Readings.SuctionLine = Measured(quantity.Fahrenheit(46.6))
	a := assess(t, v)
	verify.Value(
		t, source, "superheat of a line at 46.6 °F saturated at 46 °F", "°F", 0.6,
		a.Derived.Superheat.Value.Fahrenheit(), 0.01,
	)
	if !endangers(a, "floodback") {
		t.Errorf("no floodback is named: %+v", a.Dangers)
	}
}

// A machine that started late and was given refrigerant since waits once for both.
func TestOneWaitForTwoReasons(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Conditions.Running = 12 * time.Minute
	v.Moves = []Move{{At: 4 * time.Minute, Added: quantity.Ounces(8)}}
	v.Conditions.ReadAt = 12 * time.Minute
	waits := 0
	for _, step := range assess(t, v).Plan {
		if step.Waits {
			waits++
		}
	}
	if waits != 1 {
		t.Errorf("%d waits", waits)
	}
}

// Units and language of the sentences do not change what is concluded.
func TestUnitsAndLanguageChangeNoVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Visit{
			Equipment: Equipment{Refrigerant: "R-410A", Metering: FixedRestrictor},
			Site:      Site{Barometer: new(quantity.StandardAtmosphere)},
			Readings: Readings{
				SuctionPressure: Measured(
					quantity.PSIG(rapid.Float64Range(90, 160).Draw(t, "suction")),
				),
				SuctionLine: Measured(
					quantity.Fahrenheit(rapid.Float64Range(45, 75).Draw(t, "line")),
				),
				OutdoorDryBulb: Measured(
					quantity.Fahrenheit(rapid.Float64Range(60, 105).Draw(t, "outdoor")),
				),
				ReturnWetBulb: Measured(
					quantity.Fahrenheit(rapid.Float64Range(52, 74).Draw(t, "wet bulb")),
				),
			},
		}
		ip, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		v.Units, v.Language = quantity.SI, Spanish
		si, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(ip.In(Spanish, quantity.SI), si); diff != "" {
			t.Fatalf("said again, and assessed in the other language:\n%s", diff)
		}
	})
}

func TestNoTargetIsNoNumber(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(48))
	v.Readings.LiquidPressure = Measured(quantity.PSIG(205))
	v.Readings.LiquidLine = Measured(quantity.Fahrenheit(60))
	a := assess(t, v)
	if a.Charge.Outcome != ChargeNotJudged || len(a.Charge.Why) == 0 ||
		a.Charge.Low+a.Charge.InBand+a.Charge.High != 0 {
		t.Errorf("at 48 °F outdoors: %+v", a.Charge)
	}
	if slices.ContainsFunc(a.Plan, func(s Step) bool { return s.Moves }) {
		t.Errorf("at 48 °F outdoors the plan is %v", codes(a))
	}
}

func TestMissingReadingsAreNamed(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings = Readings{
		SuctionPressure: v.Readings.SuctionPressure,
		OutdoorDryBulb:  v.Readings.OutdoorDryBulb,
	}
	a := assess(t, v)
	if !slices.Equal(a.Charge.Missing, []string{"suctionLine", "returnWetBulb"}) {
		t.Errorf("missing %v", a.Charge.Missing)
	}
}

func TestLogSettles(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	for i := range 40 {
		v.Log = append(v.Log, LogEntry{At: time.Duration(i) * 30 * time.Second, Readings: Readings{
			SuctionPressure: Measured(quantity.PSIG(126)),
			SuctionLine: Measured(
				quantity.Fahrenheit(55 + 15*math.Exp(-float64(i)/4) + 0.1*math.Sin(float64(7*i))),
			),
		}})
	}
	a := assess(t, v)
	if a.Steadiness == nil || !a.Steadiness.Course.Steady() {
		t.Fatalf("a settled log reads %+v", a.Steadiness)
	}
	line := a.Readings[slices.IndexFunc(a.Readings, func(r JudgedReading) bool {
		return r.Field == "suctionLine"
	})]
	value, ok := line.Value.Of.(quantity.Uncertain[quantity.Temperature])
	if !line.Settled || !ok || math.Abs(value.Value.Fahrenheit()-55) > 0.5 {
		t.Errorf("settled suction line %+v", line)
	}
	v.Log = v.Log[:8]
	if a := assess(t, v); a.Charge.Outcome != ChargeNotJudged {
		t.Errorf("an unsettled log was judged: %q (%+v)", a.Charge.Outcome, a.Steadiness)
	}
}

// What a danger leads to is told with its figures: an overload trips from its limit on.
func TestWhyOfADangerHasItsFigures(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Label.RatedLoadCurrent = quantity.Amperes(10)
	v.Readings.CompressorCurrent = Measured(quantity.Amperes(17))
	a := assess(t, v)
	if !endangers(a, "current-highest") {
		t.Fatal(a.Dangers)
	}
	for _, l := range Languages() {
		for _, d := range a.In(l, quantity.IP).Dangers {
			for _, f := range []fact.Fact{d.Says, d.Why} {
				if f.Text == "" || f.Text == f.String() {
					t.Errorf("%s: %s has no words", l, f)
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
		if problems := v.Validate(); (err == nil) != (len(problems) == 0) {
			t.Fatalf("Validate finds %v, Assess %v", problems, err)
		}
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

// Single causes only, without look, dose and freezing.
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
