package satline

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// logged gives a visit a log of suction pressure and suction line, in psig and °F.
func logged(
	v Visit, rng *rand.Rand, minutes, step float64, at func(minutes float64) (psig, line float64),
) Visit {
	v.Log = nil
	for s := 0.0; s <= 60*minutes; s += step {
		p, l := at(s / 60)
		v.Log = append(v.Log, LogEntry{At: time.Duration(s * 1e9), Readings: Readings{
			SuctionPressure: Measured(quantity.PSIG(p + 0.15*rng.NormFloat64())),
			SuctionLine:     Measured(quantity.Fahrenheit(l + 0.1*rng.NormFloat64())),
		}})
	}
	return v
}

// Minutes after a start with liquid in the sump the suction line and the pressure
// still fall, each on a curve of its own whose end is not in the log. What is told
// is what was read.
func TestDangersComeFromReadings(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 1))
	for range 200 {
		fall, slow := 4+8*rng.Float64(), 5+15*rng.Float64()
		minutes := 4 + 6*rng.Float64()
		step := []float64{5, 15, 30}[rng.IntN(3)]
		v := logged(
			load(t, "sound-r410a-piston"),
			rng,
			minutes,
			step,
			func(m float64) (float64, float64) {
				return 126 + fall*math.Exp(-m/3), 55.5 + fall*math.Exp(-m/slow) -
					fall*math.Exp(-m/3)
			},
		)
		v.Conditions.Running = time.Duration(minutes * float64(time.Minute))
		j, err := prepare(v)
		if err != nil {
			t.Fatal(err)
		}
		a := assess(t, v)
		low, high := math.Inf(1), math.Inf(-1)
		for i := range j.log {
			if j.log[i].At < a.Steadiness.Course.From {
				continue
			}
			sh, ok := valueOf(j, charge.Superheat, &j.log[i].Readings)
			if !ok {
				t.Fatal(j.log[i])
			}
			low, high = min(low, sh.Fahrenheit()), max(high, sh.Fahrenheit())
		}
		if got := a.Derived.Superheat.Value.Fahrenheit(); got < low-0.01 || got > high+0.01 {
			t.Errorf("superheat %.1f °F; read %.1f to %.1f in its stretch (%v)",
				got, low, high, a.Steadiness.Course.State)
		}
		if endangers(a, "floodback") && low > 3 || endangers(a, "superheat-low") && low > 5 {
			t.Errorf("%+v at superheats of %.1f °F to %.1f °F", a.Dangers, low, high)
		}
	}
}

// The value shown is the value that is judged, whatever the log does.
func TestShownIsJudged(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 2))
	states := map[charge.Course]int{}
	for i := range 60 {
		swing, period, minutes := []float64{0, 1, 8}[i%3], 1+3*rng.Float64(), 1+20*rng.Float64()
		v := logged(
			load(t, "sound-r410a-piston"),
			rng,
			minutes,
			10,
			func(m float64) (float64, float64) {
				turn := math.Sin(2 * math.Pi * m / period)
				return 126 + swing*turn, 55 - swing/2*turn + 20*math.Exp(-m/2)
			},
		)
		a := assess(t, v)
		s := a.Steadiness
		states[s.Course.State]++
		same := func(v quantity.TemperatureDelta) bool { // up to the places of the document
			return math.Abs(float64(v-a.Derived.Superheat.Value)) < 1e-3
		}
		if !same(s.Course.Value.Value) ||
			a.Charge.Reading != nil && !same(a.Charge.Reading.Measured.Value) {
			t.Errorf("%v shown, %v judged, %v derived",
				s.Course.Value, a.Charge.Reading, a.Derived.Superheat)
		}
		switch a.Charge.Outcome {
		case ChargeInBand, ChargeLow, ChargeHigh:
			if !s.Course.Steady() {
				t.Errorf("%q while %v", a.Charge.Outcome, s.Course.State)
			}
		}
	}
	t.Log(states)
	for _, s := range []charge.Course{charge.TooShort, charge.Hunting, charge.Settled} {
		if states[s] == 0 {
			t.Errorf("no log is %v", s)
		}
	}
}

// A log that is thinned before is assessed as the whole of it.
func TestThinnedLogIsAssessedAlike(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 3))
	for range 5 {
		period := 1 + 3*rng.Float64()
		v := logged(load(t, "sound-r410a-piston"), rng, 12, 1, func(m float64) (float64, float64) {
			return 126 + 3*math.Sin(2*math.Pi*m/period), 55 + 20*math.Exp(-m/2)
		})
		whole := assess(t, v)
		v.Log = thinned(v.Log)
		if len(v.Log) > 80 {
			t.Fatalf("%d entries", len(v.Log))
		}
		if diff := cmp.Diff(whole, assess(t, v)); diff != "" {
			t.Error(diff)
		}
	}
}
