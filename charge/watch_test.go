package charge

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func watch(t testing.TB) *Watch[quantity.TemperatureDelta] {
	t.Helper()
	w, err := NewWatch(df(1))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// While it is taken, a log is judged as it is at once, and as the few readings are
// that the Watch keeps of it: to the last bit, at every moment.
func TestWatchSettles(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1))
		kind := traces[rapid.IntRange(0, len(traces)-1).Draw(rt, "kind")]
		tr, _ := kind.draw(rng)
		start := time.Duration(rapid.Int64Range(-1e12, 1e12).Draw(rt, "start"))
		for i := range tr.log {
			tr.log[i].At += start
		}
		w := watch(t)
		for i, s := range tr.log {
			if err := w.Take(s); err != nil {
				rt.Fatal(err)
			}
			if i%97 != 0 && i != len(tr.log)-1 {
				continue
			}
			now := w.Steadiness()
			if batch, err := SteadinessOf(tr.log[:i+1], df(1)); err != nil || batch != now {
				rt.Fatalf("%s: %+v at once, %+v taken one by one, %v", kind.name, batch, now, err)
			}
			if kept, err := SteadinessOf(w.Log(), df(1)); err != nil || kept != now {
				rt.Fatalf("%s: %+v of what is kept, %+v of all, %v", kind.name, kept, now, err)
			}
			if n := len(w.Log()); n > thin.Kept {
				rt.Fatalf("%d readings kept", n)
			}
		}
	})
}

// A reading that cannot be is refused, and the next is taken as if it had not come.
func TestWatchRefuses(t *testing.T) {
	a, b := watch(t), watch(t)
	var wrong *RangeError
	for i := range 400 {
		s := Sample[quantity.TemperatureDelta]{
			time.Duration(i) * time.Second, df(10 + 0.1*float64(i%7)),
		}
		for _, w := range []*Watch[quantity.TemperatureDelta]{a, b} {
			if err := w.Take(s); err != nil {
				t.Fatal(err)
			}
		}
		for _, bad := range []Sample[quantity.TemperatureDelta]{
			s, {s.At - time.Second, df(3)}, {s.At + 1, df(math.NaN())}, {s.At + 1, df(math.Inf(1))},
			{s.At + longestSpan + time.Hour, df(3)},
		} {
			if err := a.Take(bad); !errors.As(err, &wrong) {
				t.Fatalf("%+v: %v", bad, err)
			}
		}
	}
	if a.Steadiness() != b.Steadiness() {
		t.Errorf("%+v with readings refused, %+v without", a.Steadiness(), b.Steadiness())
	}
	if _, err := NewWatch(df(0)); !errors.As(err, &wrong) {
		t.Error(err)
	}
}

// After a move the log begins anew.
func TestWatchRestarts(t *testing.T) {
	w := watch(t)
	if s := w.Steadiness(); s != (Steadiness[quantity.TemperatureDelta]{}) || w.Log() != nil {
		t.Errorf("%+v of nothing", s)
	}
	var after []Sample[quantity.TemperatureDelta]
	for i := range 3000 {
		s := Sample[quantity.TemperatureDelta]{time.Duration(i) * time.Second, df(30)}
		if i == 2400 {
			w.Restart()
		}
		if i >= 2400 {
			s.Value = df(12 + 0.2*float64(i%3))
			after = append(after, s)
		}
		if err := w.Take(s); err != nil {
			t.Fatal(err)
		}
	}
	fresh, err := SteadinessOf(after, df(1))
	if got := w.Steadiness(); err != nil || got != fresh || got.State != Settled {
		t.Errorf("%+v, want %+v, %v", got, fresh, err)
	}
}

// MeanOver takes a freak out, and knows what stands still.
func TestMeanOver(t *testing.T) {
	var log []Sample[quantity.TemperatureDelta]
	for i := range 60 {
		at := time.Duration(i) * 10 * time.Second
		log = append(log, Sample[quantity.TemperatureDelta]{at, df(float64(i) / 10)})
	}
	log[40].Value = df(60)
	from, to := 300*time.Second, 590*time.Second
	mean, still, ok := MeanOver(log, from, to, df(1))
	if !ok || still || math.Abs(mean.Value.Fahrenheit()-4.45) > 0.05 ||
		!(mean.Std > float64(df(0.5))) {
		t.Errorf("%v, still %v, %v", mean, still, ok)
	}
	if _, still, ok := MeanOver(log, from, to, df(4)); !still || !ok {
		t.Errorf("3 °F in five minutes are no movement of 4 °F: %v, %v", still, ok)
	}
	if _, _, ok := MeanOver(log, time.Hour, 2*time.Hour, df(1)); ok {
		t.Error("a mean of no readings")
	}
}

// day is a day of a gauge that sends every second.
func day() []Sample[quantity.TemperatureDelta] {
	rng := rand.New(rand.NewPCG(3, 4))
	log := make([]Sample[quantity.TemperatureDelta], 24*3600)
	for i := range log {
		t := float64(i)
		valve := 3 * math.Sin(2*math.Pi*t/100) * math.Sin(2*math.Pi*t/7200)
		v := 12 + 6*math.Sin(2*math.Pi*t/86400) + valve + 0.3*rng.NormFloat64()
		log[i] = Sample[quantity.TemperatureDelta]{time.Duration(i) * time.Second, df(v)}
	}
	return log
}

// BenchmarkWatchTake is one reading of a day at one a second, without a judgement.
func BenchmarkWatchTake(b *testing.B) {
	b.ReportAllocs()
	log := day()
	w := watch(b)
	i := 0
	for b.Loop() {
		if i == len(log) {
			w.Restart()
			i = 0
		}
		if err := w.Take(log[i]); err != nil {
			b.Fatal(err)
		}
		i++
	}
}

// BenchmarkWatchJudged is one reading and the judgement after it.
func BenchmarkWatchJudged(b *testing.B) {
	b.ReportAllocs()
	log := day()
	w := watch(b)
	i := 0
	for b.Loop() {
		if i == len(log) {
			w.Restart()
			i = 0
		}
		if err := w.Take(log[i]); err != nil {
			b.Fatal(err)
		}
		w.Steadiness()
		i++
	}
}

// BenchmarkWatchDay is all 86,400 readings of a day, judged once a minute.
func BenchmarkWatchDay(b *testing.B) {
	b.ReportAllocs()
	log := day()
	for b.Loop() {
		w := watch(b)
		for i, s := range log {
			if err := w.Take(s); err != nil {
				b.Fatal(err)
			}
			if i%60 == 0 {
				w.Steadiness()
			}
		}
	}
}
