package satline

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// sampleOf is what gauges send of a machine that comes to rest, some of it or all.
func sampleOf(base *Readings, at time.Duration, rng *rand.Rand, all bool) LogEntry {
	e := LogEntry{At: at}
	left := 8 * math.Exp(-at.Seconds()/300)
	set := func(to, from *degrees, by float64) {
		if from.taken && (all || rng.IntN(3) > 0) {
			*to = Measured(from.of.Value + quantity.Temperature(by+0.1*rng.NormFloat64()))
		}
	}
	e.SuctionLine = Measured(
		base.SuctionLine.of.Value + quantity.Temperature(left+0.1*rng.NormFloat64()),
	)
	set(&e.LiquidLine, &base.LiquidLine, left)
	set(&e.OutdoorDryBulb, &base.OutdoorDryBulb, 0)
	set(&e.ReturnDryBulb, &base.ReturnDryBulb, 0)
	set(&e.ReturnWetBulb, &base.ReturnWetBulb, 0)
	set(&e.SupplyDryBulb, &base.SupplyDryBulb, 0)
	for _, g := range []struct {
		to, from *gauge
	}{
		{&e.SuctionPressure, &base.SuctionPressure}, {&e.LiquidPressure, &base.LiquidPressure},
	} {
		if all || rng.IntN(3) > 0 {
			*g.to = Measured(g.from.of.Value + quantity.PSIG(0.3*rng.NormFloat64()))
		}
	}
	return e
}

var asks = []func(*Session) (Assessment, error){(*Session).Assess, (*Session).Verdict}

// A session answers as Assess does of its Visit, written and read back; and of one move and
// less than half an hour as Assess does of all that was sent.
func TestSessionAssessesAsItsVisit(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		start := load(
			t, rapid.SampledFrom([]string{"sound-r410a-piston", "valve-hunting"}).Draw(rt, "visit"),
		)
		start.Log = nil
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1))
		s, err := NewSession(start)
		if err != nil {
			rt.Fatal(err)
		}
		all := start
		at := time.Duration(rng.Int64N(int64(time.Minute)))
		n, move := 1+rng.IntN(400), rng.IntN(800)
		for i := range n {
			at += time.Duration(1 + rng.Int64N(int64(5*time.Second)))
			if i == move {
				m := Move{At: at, Added: quantity.Ounces(1 + rng.Float64())}
				if err := s.Move(m); err != nil {
					rt.Fatal(err)
				}
				all.Moves = append(slices.Clone(all.Moves), m)
			}
			at += time.Duration(1 + rng.Int64N(int64(time.Second)/2))
			e := sampleOf(&start.Readings, at, rng, false)
			if aside := s.Take(e); len(aside) > 0 {
				rt.Fatal(aside)
			}
			all.Log = append(all.Log, e)
			if rng.IntN(60) == 0 { // what was asked before changes no answer
				if _, err := rapid.SampledFrom(asks).Draw(rt, "ask")(s); err != nil {
					rt.Fatal(err)
				}
			}
			if i == n/2 {
				look := Check{Look: "indoor-air-path", Found: rng.IntN(2) == 0}
				if err := s.Look(look); err != nil {
					rt.Fatal(err)
				}
				all.Checks = append(slices.Clone(all.Checks), look)
			}
		}
		sameAssessment(rt, s)
		want, err := Assess(all)
		if err != nil {
			rt.Fatal(err)
		}
		got, err := s.Assess()
		if err != nil {
			rt.Fatal(err)
		}
		if d := cmp.Diff(want.Charge, got.Charge, exported); d != "" {
			rt.Fatalf("all that was sent, and the session:\n%s", d)
		}
	})
}

var exported = cmp.Comparer(func(x, y interface{ MarshalJSON() ([]byte, error) }) bool {
	a, _ := json.Marshal(x)
	b, _ := json.Marshal(y)
	return string(a) == string(b)
})

type failer interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
}

func sameAssessment(t failer, s *Session) {
	t.Helper()
	text, err := json.Marshal(s.Visit())
	if err != nil {
		t.Fatal(err)
	}
	back, err := DecodeVisit(text)
	if err != nil {
		t.Fatalf("%d bytes: %v", len(text), err)
	}
	again, err := NewSession(back)
	if err != nil {
		t.Fatal(err)
	}
	want, errWant := Assess(s.Visit())
	fromBack, errBack := Assess(back)
	got, errGot := s.Assess()
	resumed, errResumed := again.Assess()
	if errWant != nil || errBack != nil || errGot != nil || errResumed != nil {
		t.Fatal(errWant, errBack, errGot, errResumed)
	}
	wantText, _ := json.Marshal(want)
	for name, a := range map[string]Assessment{"read back": fromBack, "the session": got,
		"the session resumed": resumed} {
		if text, _ := json.Marshal(a); string(text) != string(wantText) {
			t.Fatalf("%s: %s", name, cmp.Diff(string(wantText), string(text)))
		}
	}
}

// A day of every reading each second, with a move every half hour, is written small enough
// to be read back.
func TestSessionOfADay(t *testing.T) {
	if testing.Short() {
		t.Skip("a day of samples")
	}
	start := load(t, "sound-r410a-piston")
	s, err := NewSession(start)
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(1, 2))
	for i := range 86400 {
		at := time.Duration(i) * time.Second
		if i%1800 == 1799 {
			if err := s.Move(Move{At: at, Added: quantity.Ounces(1)}); err != nil {
				t.Fatal(err)
			}
		}
		e := sampleOf(&start.Readings, at, rng, true)
		e.DischargePressure = Measured(e.LiquidPressure.of.Value)
		e.DischargeLine = Measured(quantity.Fahrenheit(160 + rng.Float64()))
		e.SupplyWetBulb = Measured(quantity.Fahrenheit(52 + rng.Float64()))
		e.CondenserLeaving = Measured(quantity.Fahrenheit(100 + rng.Float64()))
		e.Airflow, e.ExternalStatic = Measured(quantity.CFM(1100+rng.Float64())),
			Measured(quantity.InchesWater(0.5+0.01*rng.Float64()))
		e.Power, e.CompressorCurrent = Measured(quantity.Watts(2500+rng.Float64())),
			Measured(quantity.Amperes(12+rng.Float64()))
		if aside := s.Take(e); aside != nil {
			t.Fatal(aside)
		}
	}
	text, err := json.Marshal(s.Visit())
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d bytes, %d entries, %d moves", len(text), len(s.Visit().Log), len(s.Visit().Moves))
	sameAssessment(t, s)
}

func TestSessionSetsAside(t *testing.T) {
	start := load(t, "sound-r410a-piston")
	s, err := NewSession(start)
	if err != nil {
		t.Fatal(err)
	}
	suction := func(psig float64) Readings {
		return Readings{SuctionPressure: Measured(quantity.PSIG(psig))}
	}
	for _, c := range []struct {
		at   time.Duration
		r    Readings
		want []SetAside
	}{
		{10 * time.Second, suction(118), nil},
		{10 * time.Second, suction(118),
			[]SetAside{{10 * time.Second, "suctionPressure", TimeDoubled}}},
		{10 * time.Second, Readings{LiquidPressure: Measured(quantity.PSIG(math.NaN()))},
			[]SetAside{{10 * time.Second, "liquidPressure", SensorLost}}},
		{10 * time.Second, Readings{SuctionPressure: Measured(quantity.PSIG(118)),
			ReturnDryBulb: Measured(quantity.Fahrenheit(74))},
			[]SetAside{{10 * time.Second, "suctionPressure", TimeDoubled}}},
		{9 * time.Second, suction(118), []SetAside{{9 * time.Second, "at", TimeBackward}}},
		{-1, suction(118), []SetAside{{-1, "at", TimeImpossible}}},
		{11 * time.Second, suction(math.NaN()),
			[]SetAside{{11 * time.Second, "suctionPressure", SensorLost}}},
		{12 * time.Second, Readings{SuctionLine: Measured(quantity.Fahrenheit(2500)),
			LiquidLine: Measured(quantity.Fahrenheit(95))},
			[]SetAside{{12 * time.Second, "suctionLine", SensorLost}}},
		{13 * time.Second, suction(0.2),
			[]SetAside{{13 * time.Second, "suctionPressure", HoseOff}}},
		{4 * time.Minute, suction(-0.1), []SetAside{{4 * time.Minute, "suctionPressure", HoseOff}}},
		{5 * time.Minute, suction(117), nil},
		{7 * time.Minute, suction(1), nil}, // not from one moment to the next
		{50 * time.Hour, suction(118), nil},
		{50*time.Hour + time.Second, suction(118), nil},
		{8 * time.Minute, suction(117),
			[]SetAside{{50*time.Hour + time.Second, "at", TimeAhead}}},
		{6 * time.Minute, suction(117), []SetAside{{6 * time.Minute, "at", TimeBackward}}},
	} {
		if d := cmp.Diff(c.want, s.Take(LogEntry{At: c.at, Readings: c.r})); d != "" {
			t.Errorf("at %v: %s", c.at, d)
		}
	}
	sameAssessment(t, s)
	if v := s.Visit(); v.Readings.ReturnDryBulb.of.Value != quantity.Fahrenheit(74) {
		t.Errorf("%v", v.Readings.ReturnDryBulb)
	}
	if v := s.Visit(); v.Readings.LiquidLine.of.Value != quantity.Fahrenheit(95) {
		t.Errorf("%v", v.Readings.LiquidLine)
	}
	for name, err := range map[string]error{
		"a move of nothing":     s.Move(Move{At: time.Hour}),
		"a look there is not":   s.Look(Check{Look: "crystal ball"}),
		"a machine not started": s.Conditions(Conditions{Running: -1}),
	} {
		if _, ok := err.(*VisitError); !ok {
			t.Errorf("%s: %v", name, err)
		}
	}
	if d := cmp.Diff(start.Moves, s.Visit().Moves); d != "" || len(s.Visit().Checks) > 0 {
		t.Errorf("what was refused is kept: %s", d)
	}
}

// One sample from a clock that leapt ahead costs the log nothing but itself, be it the first.
func TestSessionForgetsALeapAhead(t *testing.T) {
	start := load(t, "sound-r410a-piston")
	for _, leap := range []int{0, 12, 53, 59} {
		s, err := NewSession(start)
		if err != nil {
			t.Fatal(err)
		}
		var aside []SetAside
		for i := range 100 {
			at := time.Duration(i) * time.Second
			if i == leap {
				at = time.Hour
			}
			aside = append(aside, s.Take(LogEntry{At: at, Readings: start.Readings})...)
		}
		if d := cmp.Diff([]SetAside{{time.Hour, "at", TimeAhead}}, aside); d != "" {
			t.Errorf("a leap at %d s: %s", leap, d)
		}
		sameAssessment(t, s)
	}
}

// A machine that runs on has run longer; what is told of it anew counts from then.
func TestSessionRunsOn(t *testing.T) {
	s, err := NewSession(load(t, "sound-r410a-piston"))
	if err != nil {
		t.Fatal(err)
	}
	base := s.Visit().Readings
	rng := rand.New(rand.NewPCG(1, 1))
	ran := func(after time.Duration, want time.Duration) {
		t.Helper()
		s.Take(sampleOf(&base, after, rng, true))
		if got := s.Visit().Conditions.Running; got != want {
			t.Errorf("%v after the start: it has run %v, want %v", after, got, want)
		}
	}
	tell := func(running time.Duration) {
		if err := s.Conditions(Conditions{Running: running}); err != nil {
			t.Fatal(err)
		}
	}
	tell(12 * time.Minute)
	ran(time.Hour, 12*time.Minute)
	ran(time.Hour+10*time.Minute, 22*time.Minute)
	tell(time.Minute)
	ran(time.Hour+14*time.Minute, 5*time.Minute)
	sameAssessment(t, s)
	if s, err = NewSession(s.Visit()); err != nil {
		t.Fatal(err)
	}
	ran(time.Hour+16*time.Minute, 7*time.Minute)
	tell(0) // not known
	ran(time.Hour+20*time.Minute, 0)
}

// What a session returns, and what it was given, can be changed without changing it.
func TestSessionSharesNothing(t *testing.T) {
	start := load(t, "sound-r410a-piston")
	start.Site.Elevation = new(quantity.Feet(100))
	start.House = &House{Name: "manual", Holds: []HouseHold{{Rule: "two persons"}}}
	s, err := NewSession(start)
	if err != nil {
		t.Fatal(err)
	}
	e := sampleOf(&start.Readings, time.Second, rand.New(rand.NewPCG(1, 1)), true)
	s.Take(e)
	want, _ := json.Marshal(s.Visit())
	v := s.Visit()
	for _, r := range []*Readings{&v.Readings, &v.Log[0].Readings, &e.Readings, &start.Readings} {
		r.SuctionPressure = Measured(quantity.PSIG(0))
	}
	for _, v := range []*Visit{&v, &start} {
		*v.Site.Elevation, v.House.Holds[0].Rule = 0, "one"
	}
	if got, _ := json.Marshal(s.Visit()); string(got) != string(want) {
		t.Error(cmp.Diff(string(want), string(got)))
	}
}

// BenchmarkSessionDay takes a day of samples, one a second, with a move every half hour;
// kept-B is what the session holds at its end.
func BenchmarkSessionDay(b *testing.B) {
	start := load(b, "sound-r410a-piston")
	rng := rand.New(rand.NewPCG(1, 2))
	var samples []LogEntry
	for i := range 1000 {
		samples = append(
			samples, sampleOf(&start.Readings, time.Duration(i)*time.Second, rng, true),
		)
	}
	var before, after runtime.MemStats
	for range 2 { // what earlier runs left is gone after the second
		runtime.GC()
	}
	runtime.ReadMemStats(&before)
	var s *Session
	for b.Loop() {
		var err error
		if s, err = NewSession(start); err != nil {
			b.Fatal(err)
		}
		for i := range 86400 {
			e := samples[i%len(samples)]
			e.At = time.Duration(i) * time.Second
			if i%1800 == 1799 {
				if err := s.Move(Move{At: e.At, Added: quantity.Ounces(1)}); err != nil {
					b.Fatal(err)
				}
			}
			s.Take(e)
		}
	}
	runtime.GC()
	runtime.ReadMemStats(&after)
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/86400, "ns/sample")
	b.ReportMetric(float64(after.HeapAlloc)-float64(before.HeapAlloc), "kept-B")
	runtime.KeepAlive(s)
	runtime.KeepAlive(samples)
}

// BenchmarkSessionVerdict and BenchmarkSessionWhole are a sample with its answer, of a full
// half hour of log, with another before a move and without.
func BenchmarkSessionVerdict(b *testing.B) {
	b.Run("unmoved", func(b *testing.B) { benchmarkSession(b, (*Session).Verdict, false) })
	b.Run("moved", func(b *testing.B) { benchmarkSession(b, (*Session).Verdict, true) })
}

func BenchmarkSessionWhole(b *testing.B) {
	b.Run("unmoved", func(b *testing.B) { benchmarkSession(b, (*Session).Assess, false) })
	b.Run("moved", func(b *testing.B) { benchmarkSession(b, (*Session).Assess, true) })
}

func benchmarkSession(b *testing.B, answer func(*Session) (Assessment, error), moved bool) {
	start := load(b, "sound-r410a-piston")
	rng := rand.New(rand.NewPCG(1, 2))
	s, err := NewSession(start)
	if err != nil {
		b.Fatal(err)
	}
	at := time.Duration(0)
	send := func() {
		at += time.Second
		s.Take(sampleOf(&start.Readings, at, rng, true))
	}
	for range 1800 {
		send()
	}
	if moved {
		if err := s.Move(Move{At: at, Added: quantity.Ounces(2)}); err != nil {
			b.Fatal(err)
		}
	}
	for range 1800 {
		send()
	}
	b.ReportAllocs()
	for b.Loop() {
		send()
		if _, err := answer(s); err != nil {
			b.Fatal(err)
		}
	}
}

// Instruments that send on their own make one log of what they send, whether their clocks tick
// together or not.
func TestSessionOfManyInstruments(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		start := load(t, "sound-r410a-piston")
		start.Log = nil
		whole, err := NewSession(start)
		if err != nil {
			rt.Fatal(err)
		}
		parts, _ := NewSession(start)
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1))
		at := time.Duration(0)
		for range rapid.IntRange(1, 200).Draw(rt, "samples") {
			at += time.Duration(1 + rng.Int64N(int64(20*time.Second)))
			e := sampleOf(&start.Readings, at, rng, true)
			whole.Take(e)
			for i := range readingFields {
				part := LogEntry{At: at}
				readingFields[i].copy(&part.Readings, &e.Readings)
				aside := parts.Take(part)
				if had := readingFields[i].has(&e.Readings); had && len(aside) > 0 {
					rt.Fatal(aside)
				}
			}
			if rng.IntN(100) == 0 {
				m := Move{At: at, Added: quantity.Ounces(1)}
				if errWhole, err := whole.Move(m), parts.Move(m); errWhole != nil || err != nil {
					rt.Fatal(errWhole, err)
				}
			}
		}
		if d := cmp.Diff(whole.Visit().Readings, parts.Visit().Readings); d != "" {
			rt.Error(d)
		}
		sameAssessment(rt, parts)
	})
}
