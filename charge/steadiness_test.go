package charge

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// A history makes logs of a superheat in °F that is known beforehand.
type history struct {
	start, end float64 // °F
	tau        float64 // s
	swing      float64 // lowest to highest
	period     float64 // s
	saw        bool
	noise      float64
	memory     float64 // correlation of the noise from one reading to the next
	minutes    float64
	step       float64 // s
	irregular  bool
	gap        bool
	spikes     int
}

func (h history) log(rng *rand.Rand) []Sample[quantity.TemperatureDelta] {
	var out []Sample[quantity.TemperatureDelta]
	wander := 0.0
	phase := 2 * math.Pi * rng.Float64()
	for t := 0.0; t <= 60*h.minutes; t += h.step {
		at := t
		if h.irregular {
			at += h.step * 0.8 * (rng.Float64() - 0.5)
		}
		wander = h.memory*wander + math.Sqrt(1-h.memory*h.memory)*h.noise*rng.NormFloat64()
		if h.gap && t > 24*h.minutes && t < 36*h.minutes {
			continue
		}
		v := h.end + wander
		if h.tau > 0 {
			v += (h.start - h.end) * math.Exp(-at/h.tau)
		}
		if h.period > 0 {
			turn := 2*math.Pi*at/h.period + phase
			if h.saw {
				_, frac := math.Modf(turn / (2 * math.Pi))
				v += h.swing * (frac - 0.5)
			} else {
				v += h.swing / 2 * math.Sin(turn)
			}
		}
		out = append(out, Sample[quantity.TemperatureDelta]{time.Duration(max(at, 0) * 1e9), df(v)})
	}
	for range h.spikes {
		i := 1 + rng.IntN(len(out)-2)
		out[i].Value += df(40 * (float64(rng.IntN(2)) - 0.5))
	}
	for i := 1; i < len(out); i++ {
		if out[i].At <= out[i-1].At {
			out[i].At = out[i-1].At + time.Millisecond
		}
	}
	return out
}

func settled(t testing.TB, h history, rng *rand.Rand) Steadiness[quantity.TemperatureDelta] {
	t.Helper()
	s, err := SteadinessOf(h.log(rng), df(1))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Each kind of log is called by its name in at least 95 of 100 runs of noise,
// and the settled value lies within two of its standard uncertainties of the
// truth in at least 85.
func TestSettleOnKnownLogs(t *testing.T) {
	for name, c := range map[string]struct {
		history
		want Course
	}{
		"steady":        {history{end: 12, noise: 0.3, minutes: 10, step: 10}, Settled},
		"steady, noisy": {history{end: 12, noise: 1, minutes: 15, step: 5}, Settled},
		"settled long ago": {history{start: 30, end: 12, tau: 100, noise: 0.3, minutes: 15,
			step: 10}, Settled},
		"irregular, gap": {history{start: 25, end: 12, tau: 90, noise: 0.3, minutes: 15,
			step: 10, irregular: true, gap: true}, Settled},
		"settling": {history{start: 30, end: 10, tau: 240, noise: 0.2, minutes: 8,
			step: 5}, Settling},
		"spikes": {history{end: 12, noise: 0.3, minutes: 10, step: 10, spikes: 3},
			Settled},
		"hunting 6 to 14": {history{end: 10, swing: 8, period: 90, noise: 0.4, minutes: 10,
			step: 5}, Hunting},
		"hunting, saw": {history{end: 10, swing: 8, period: 120, saw: true, noise: 0.4,
			minutes: 12, step: 5, irregular: true}, Hunting},
		"hunting, settled": {history{start: 30, end: 10, tau: 120, swing: 6, period: 100,
			noise: 0.4, minutes: 15, step: 5}, Hunting},
		"hunting from the start": {history{start: 30, end: 10, tau: 60, swing: 6, period: 100,
			noise: 0.4, minutes: 8, step: 5}, Hunting},
		"settling and hunting": {history{start: 40, end: 10, tau: 150, swing: 6, period: 60,
			noise: 0.3, minutes: 6, step: 5}, Settling},
		"wandering noise": {history{end: 12, noise: 0.4, memory: 0.8, minutes: 15, step: 5},
			Settled},
	} {
		rng := rand.New(rand.NewPCG(7, 11))
		const runs = 100
		named, within := 0, 0
		for range runs {
			s := settled(t, c.history, rng)
			if s.State == c.want {
				named++
			}
			value := s.Value
			if s.State == Settling {
				value = s.Estimate
			}
			if math.Abs(float64(value.Value-df(c.end))) <= 2*value.Std {
				within++
			}
		}
		t.Logf(
			"%-18s named %d, value within two standard uncertainties %d of %d", name, named, within,
			runs,
		)
		if named < 95 || within < 85 {
			t.Errorf(
				"%s: named %v in %d runs of %d, truth within in %d", name, c.want, named, runs,
				within,
			)
		}
	}
}

// Common practice, no source: a superheat fluctuating from 6 to 14 °F gets a
// mean and a band.
func TestFluctuatingSuperheat(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	s := settled(t, history{end: 10, swing: 8, period: 100, noise: 0.3, minutes: 10, step: 5}, rng)
	if s.State != Hunting || !s.Steady() {
		t.Fatalf("%v", s.State)
	}
	if math.Abs(s.Value.Value.Fahrenheit()-10) > 0.3 || math.Abs(s.Low.Fahrenheit()-6) > 0.8 ||
		math.Abs(s.High.Fahrenheit()-14) > 0.8 {
		t.Errorf(
			"mean %v, band %v to %v", s.Value.Value.Fahrenheit(), s.Low.Fahrenheit(),
			s.High.Fahrenheit(),
		)
	}
	if math.Abs(s.Period.Seconds()-100) > 3 || math.Abs(s.Swing.Fahrenheit()-8) > 1 {
		t.Errorf("period %v, swing %v", s.Period, s.Swing.Fahrenheit())
	}
	// One mean gives one verdict, whichever moment it is read at.
	target := targetOf(t, Superheat, 10, 0.5)
	v, err := Judge(taken(t, Superheat, 14, 0.8).At(s.Value), target)
	if err != nil || v.Outcome != InBand {
		t.Errorf("%v, %v", v.Outcome, err)
	}
}

func TestSettlingSaysWhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	h := history{start: 30, end: 10, tau: 240, noise: 0.2, minutes: 8, step: 5}
	s := settled(t, h, rng)
	if s.State != Settling || math.Abs(s.Estimate.Value.Fahrenheit()-10) > 1 {
		t.Fatalf("%v at %v °F", s.State, s.Estimate.Value.Fahrenheit())
	}
	// The value is the last that was read: 10 + 20·exp(−450 s/240 s) °F.
	if want := 10 + 20*math.Exp(-450./240); math.Abs(s.Value.Value.Fahrenheit()-want) > 0.3 {
		t.Errorf("last read %v, want %.1f", s.Value.Value, want)
	}
	if math.Abs(s.TimeConstant.Seconds()-240) > 30 {
		t.Errorf("time constant %v", s.TimeConstant)
	}
	// 20·exp(−t/τ) moves by 1 °F from t−300 s to t where 20·(exp(300 s/τ)−1)·exp(−t/τ)
	// is 1 °F: after 938 s, of which 480 s have passed.
	if want := 240*math.Log(20*math.Expm1(300./240)) - 480; math.Abs(s.Wait.Seconds()-want) > 60 {
		t.Errorf("wait %v, want %.0f s", s.Wait, want)
	}
	if w := s.WaitAfter(df(90)); math.Abs(w.Seconds()-240*math.Log(90)) > 130 {
		t.Errorf("wait after the next move %v", w)
	}
	if w := s.WaitAfter(df(0.5)); w != waitAfterMove.value {
		t.Errorf("wait after a small move %v", w)
	}
}

// The time constant of a log that has settled is known for the next wait.
func TestSettledKnowsItsTimeConstant(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 7))
	for _, tau := range []float64{60, 120, 180} {
		s := settled(
			t, history{start: 35, end: 10, tau: tau, noise: 0.2, minutes: 25, step: 5}, rng,
		)
		if s.State != Settled || math.Abs(s.TimeConstant.Seconds()/tau-1) > 0.1 {
			t.Errorf("%v with a time constant of %v, want %.0f s", s.State, s.TimeConstant, tau)
		}
	}
	if s := settled(t, history{end: 10, noise: 0.3, minutes: 25, step: 5},
		rng); s.TimeConstant != 0 {
		t.Errorf("level, with a time constant of %v", s.TimeConstant)
	}
}

// A log turned upside down is judged alike.
func TestSettleHasNoSide(t *testing.T) {
	for k, kind := range traces {
		rng := rand.New(rand.NewPCG(16, uint64(k)))
		for range 30 {
			tr, _ := kind.draw(rng)
			a, err := SteadinessOf(tr.log, df(1))
			if err != nil {
				t.Fatal(err)
			}
			for i := range tr.log {
				tr.log[i].Value = -tr.log[i].Value
			}
			b, err := SteadinessOf(tr.log, df(1))
			if err != nil || a.State != b.State ||
				math.Abs(float64(a.Value.Value+b.Value.Value)) > 1e-9 ||
				a.From != b.From ||
				math.Abs(float64(a.Low+b.High)) > 1e-9 {
				t.Fatalf("%s: %+v upright, %+v upside down, %v", kind.name, a, b, err)
			}
		}
	}
}

// What is still on its way is never called settled far from its end.
func TestUnfinishedIsNotSettled(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	wrong := 0
	const runs = 200
	for range runs {
		h := history{
			start:   30,
			end:     10,
			tau:     200 + 400*rng.Float64(),
			noise:   0.3,
			minutes: 3 + 2*rng.Float64(),
			step:    10,
		}
		if s := settled(t, h, rng); s.Steady() {
			wrong++
		}
	}
	if wrong > 0 {
		t.Errorf("%d of %d unfinished logs called steady", wrong, runs)
	}
}

// Noise alone is not called hunting.
func TestNoiseIsNotHunting(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 9))
	wrong := 0
	const runs = 300
	for i := range runs {
		h := history{
			end:     12,
			noise:   0.5 + rng.Float64(),
			minutes: 10,
			step:    5,
			memory:  0.3 * float64(i%3),
		}
		if s := settled(t, h, rng); s.State == Hunting {
			wrong++
		}
	}
	t.Logf("%d of %d", wrong, runs)
	if wrong > runs*2/100 {
		t.Errorf("%d of %d logs of noise called hunting", wrong, runs)
	}
}

func TestShortLogsSayNothing(t *testing.T) {
	log := []Sample[quantity.TemperatureDelta]{
		{0, df(14)}, {time.Minute, df(9)}, {2 * time.Minute, df(12)},
	}
	s, err := SteadinessOf(log, df(1))
	if err != nil || s.State != TooShort || s.Steady() {
		t.Errorf("%v, %v", s.State, err)
	}
	if s, err := SteadinessOf(log[:1], df(1)); err != nil || s.State != TooShort ||
		s.Value.Value != df(14) {
		t.Errorf("%+v, %v", s, err)
	}
}

// Any log that is in order gets an answer without NaN or infinity.
func TestSettleAnswersAnything(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(rt, "n")
		var log []Sample[quantity.TemperatureDelta]
		at := time.Duration(0)
		widest := rapid.SampledFrom([]float64{1e-200, 30, 1e6, 1e100}).Draw(rt, "widest")
		longest := rapid.SampledFrom([]int64{1e9, 1e11, 1e14}).Draw(rt, "longest")
		for range n {
			at += time.Duration(rapid.Int64Range(1, longest).Draw(rt, "step"))
			v := quantity.TemperatureDelta(rapid.Float64Range(-widest, widest).Draw(rt, "value"))
			log = append(log, Sample[quantity.TemperatureDelta]{at, v})
		}
		if rapid.Bool().Draw(rt, "constant") {
			for i := range log {
				log[i].Value = log[0].Value
			}
		}
		s, err := SteadinessOf(log, df(rapid.Float64Range(1e-3, 100).Draw(rt, "within")))
		if err != nil {
			rt.Fatal(err)
		}
		for _, v := range []float64{
			float64(s.Value.Value), s.Value.Std, float64(s.Low), float64(s.High), float64(s.Swing),
			float64(s.Noise), float64(s.Estimate.Value), s.Estimate.Std,
		} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				rt.Fatalf("%+v", s)
			}
		}
		if s.State < TooShort || s.State > Settled || s.Wait < 0 || s.TimeConstant < 0 ||
			s.Value.Std < 0 ||
			s.Low > s.High ||
			s.From > s.To {
			rt.Fatalf("%+v", s)
		}
	})
}

// Shifting and scaling the values shifts and scales the answer.
func TestSettleKeepsUnits(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 5))
	log := history{start: 25, end: 12, tau: 90, noise: 0.3, minutes: 15, step: 10}.log(rng)
	a, err := SteadinessOf(log, df(1))
	if err != nil {
		t.Fatal(err)
	}
	other := make([]Sample[quantity.TemperatureDelta], len(log))
	for i, s := range log {
		other[i] = Sample[quantity.TemperatureDelta]{s.At + time.Hour, 1.8*s.Value + 5}
	}
	b, err := SteadinessOf(other, 1.8*df(1))
	if err != nil || a.State != b.State ||
		math.Abs(float64(1.8*a.Value.Value+5-b.Value.Value)) > 1e-6 ||
		math.Abs(a.TimeConstant.Seconds()-b.TimeConstant.Seconds()) > 0.1 {
		t.Errorf("%+v and %+v, %v", a, b, err)
	}
}

func TestSettleRefusesNonsense(t *testing.T) {
	ok := []Sample[quantity.TemperatureDelta]{{0, 1}, {1, 2}}
	var r *RangeError
	for name, c := range map[string]struct {
		log    []Sample[quantity.TemperatureDelta]
		within quantity.TemperatureDelta
	}{
		"empty": {nil, 1}, "within zero": {ok, 0}, "within not a number": {ok,
			quantity.TemperatureDelta(math.NaN())},
		"same time": {[]Sample[quantity.TemperatureDelta]{{1, 1}, {1, 2}}, 1},
		"backwards": {[]Sample[quantity.TemperatureDelta]{{5, 1}, {1, 2}}, 1},
		"not a number": {[]Sample[quantity.TemperatureDelta]{{0,
			quantity.TemperatureDelta(math.NaN())}}, 1},
		"ages apart": {[]Sample[quantity.TemperatureDelta]{{math.MinInt64, 1}, {0, 2},
			{1 << 40, 2}, {1 << 50, 2}, {1 << 60, 2}, {1 << 61, 2}, {math.MaxInt64, 2}}, 1},
	} {
		if _, err := SteadinessOf(c.log, c.within); !errors.As(err, &r) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func BenchmarkSteadinessOf(b *testing.B) {
	b.ReportAllocs()
	log := history{
		start:   30,
		end:     10,
		tau:     120,
		swing:   6,
		period:  100,
		noise:   0.4,
		minutes: 15,
		step:    5,
	}.log(rand.New(rand.NewPCG(3, 4)))
	for b.Loop() {
		if _, err := SteadinessOf(log, df(1)); err != nil {
			b.Fatal(err)
		}
	}
}
