package charge

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
)

// A trace is a log of a superheat in °F whose truth is known: what somebody who
// watches it calls it, the level at its end, and how far it may be off.
type trace struct {
	log    []Sample[quantity.TemperatureDelta]
	called verdictOnTrace
	level  float64 // the mean of the last cycles where it hunts
	off    float64 // how far from level the value may be
}

type verdictOnTrace int

const (
	isSteady verdictOnTrace = iota
	isHunting
	isMoving // or too short: the verdict is to be held, and the value is one that was read
)

// A signal is a superheat in °F at a time in seconds, without noise.
type signal func(t float64) float64

// sampling is how a signal is read: gauges that send every second, or somebody
// who writes every minute.
type sampling struct {
	minutes, step  float64
	noise, memory  float64
	digit          float64 // the last place of the display, °F
	irregular, gap bool
}

func (s sampling) read(rng *rand.Rand, of signal) []Sample[quantity.TemperatureDelta] {
	var out []Sample[quantity.TemperatureDelta]
	wander := s.noise * rng.NormFloat64()
	gapFrom, gapTo := 0.0, 0.0
	if s.gap {
		gapFrom = between(rng, 0.1, 0.6) * 60 * s.minutes
		gapTo = gapFrom + between(rng, 0.05, 0.2)*60*s.minutes
	}
	for t := 0.0; t <= 60*s.minutes; t += s.step {
		wander = s.memory*wander + math.Sqrt(1-s.memory*s.memory)*s.noise*rng.NormFloat64()
		if t > gapFrom && t < gapTo {
			continue
		}
		at := t
		if s.irregular && t > 0 {
			at += s.step * 0.8 * (rng.Float64() - 0.5)
		}
		v := of(at) + wander
		if s.digit > 0 {
			v = math.Round(v/s.digit) * s.digit
		}
		out = append(out, Sample[quantity.TemperatureDelta]{time.Duration(at * 1e9), df(v)})
	}
	return out
}

// drawSampling draws a way to read that a visit may have, of a log as long as asked.
func drawSampling(rng *rand.Rand, low, high float64) sampling {
	steps := []float64{1, 1, 2, 5, 5, 10, 10, 15, 20, 30, 60}
	s := sampling{
		minutes: between(rng, low, high), step: steps[rng.IntN(len(steps))],
		noise: 0.05 * math.Exp(rng.Float64()*math.Log(12)), memory: 0.7 * rng.Float64(),
		irregular: rng.IntN(3) == 0, gap: rng.IntN(6) == 0,
	}
	if rng.IntN(3) == 0 {
		s.digit = 0.1
	}
	return s
}

// upOrDown draws a sign.
func upOrDown(rng *rand.Rand) float64 { return float64(2*rng.IntN(2) - 1) }

// movedIn is how far a signal goes in the last five minutes.
func movedIn(of signal, end float64) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for t := end - 300; t <= end; t += 5 {
		low, high = min(low, of(t)), max(high, of(t))
	}
	return high - low
}

// wave is a swing from −½ to ½ over a turn from 0 to 1, of a shape that the
// superheat behind a valve takes.
func wave(shape int, duty, turn float64) float64 {
	_, x := math.Modf(turn)
	switch shape {
	case 0:
		return math.Sin(2*math.Pi*x) / 2
	case 1: // triangle that rises over duty of the cycle
		if x < duty {
			return x/duty - 0.5
		}
		return 0.5 - (x-duty)/(1-duty)
	case 2: // rectangle
		if x < duty {
			return 0.5
		}
		return -0.5
	case 3: // saw, up
		return x - 0.5
	default: // saw, down
		return 0.5 - x
	}
}

// hunt draws a swing about mean whose cycles differ by jitter in length and
// height.
func hunt(rng *rand.Rand, mean, swing, period, jitter float64) signal {
	shape, duty := rng.IntN(5), between(rng, 0.3, 0.7)
	starts, heights := []float64{-2 * period * rng.Float64()}, []float64{}
	for starts[len(starts)-1] < 2*3600 {
		starts = append(starts, starts[len(starts)-1]+period*(1+jitter*(2*rng.Float64()-1)))
		heights = append(heights, swing*(1+jitter*(2*rng.Float64()-1)))
	}
	return func(t float64) float64 {
		i := 0
		for i+2 < len(starts) && starts[i+1] <= t {
			i++
		}
		return mean + heights[i]*wave(shape, duty, (t-starts[i])/(starts[i+1]-starts[i]))
	}
}

func meanOf(of signal, from, to float64) float64 {
	sum, n := 0.0, 0.0
	for t := from; t <= to; t++ {
		sum, n = sum+of(t), n+1
	}
	return sum / n
}

// approachTo makes an approach of one or two time constants.
func approachTo(rng *rand.Rand, two bool) (of signal, end float64) {
	end = between(rng, -1, 25)
	a, tau := between(rng, 5, 30)*upOrDown(rng), between(rng, 40, 400)
	if !two {
		return func(t float64) float64 { return end + a*math.Exp(-t/tau) }, end
	}
	b, slow := between(rng, 2, 10)*upOrDown(rng), between(rng, 300, 1500)
	tau = between(rng, 20, 120)
	return func(t float64) float64 { return end + a*math.Exp(-t/tau) + b*math.Exp(-t/slow) }, end
}

// traceOf reads a signal whose movement of the last five minutes says what it
// is; ok is false where people would differ.
func traceOf(rng *rand.Rand, s sampling, of signal) (trace, bool) {
	end := 60 * s.minutes
	moved := movedIn(of, end)
	tr := trace{log: s.read(rng, of), level: of(end), off: 1, called: isSteady}
	if moved > 1.6 {
		tr.called, tr.off = isMoving, math.Inf(1)
	}
	return tr, moved < 0.5 || moved > 1.6
}

// traces draw logs of every kind.
var traces = []struct {
	name string
	draw func(*rand.Rand) (trace, bool)
}{
	{"level", func(rng *rand.Rand) (trace, bool) {
		level := between(rng, -1, 40)
		return traceOf(rng, drawSampling(rng, 6.5, 40), func(float64) float64 { return level })
	}},
	{"level, spikes", func(rng *rand.Rand) (trace, bool) {
		level := between(rng, -1, 40)
		tr, ok := traceOf(rng, drawSampling(rng, 8, 40), func(float64) float64 { return level })
		for range 1 + rng.IntN(3) {
			tr.log[rng.IntN(len(tr.log))].Value += df(between(rng, 5, 60) * upOrDown(rng))
		}
		return tr, ok
	}},
	{"level, sensor lost for a while", func(rng *rand.Rand) (trace, bool) {
		level := between(rng, -1, 40)
		s := drawSampling(rng, 15, 40)
		s.gap = false
		tr, ok := traceOf(rng, s, func(float64) float64 { return level })
		from := between(rng, 0, 60*s.minutes-480)
		for i := range tr.log {
			if t := tr.log[i].At.Seconds(); t > from && t < from+120 {
				tr.log[i].Value = df(-60)
			}
		}
		return tr, ok
	}},
	{"drift of the weather", func(rng *rand.Rand) (trace, bool) {
		level, rate := between(rng, 0, 30), between(rng, -0.4, 0.4)/300
		return traceOf(
			rng, drawSampling(rng, 7, 40), func(t float64) float64 { return level + rate*t },
		)
	}},
	{"ramp", func(rng *rand.Rand) (trace, bool) {
		level, rate := between(rng, 0, 30), between(rng, 0.35, 3)/60*upOrDown(rng)
		return traceOf(
			rng, drawSampling(rng, 6, 20), func(t float64) float64 { return level + rate*t },
		)
	}},
	{"approach", func(rng *rand.Rand) (trace, bool) {
		of, _ := approachTo(rng, false)
		return traceOf(rng, drawSampling(rng, 6, 30), of)
	}},
	{"approach, two time constants", func(rng *rand.Rand) (trace, bool) {
		of, _ := approachTo(rng, true)
		return traceOf(rng, drawSampling(rng, 6, 30), of)
	}},
	{"step, then level", func(rng *rand.Rand) (trace, bool) {
		s := drawSampling(rng, 12, 30)
		s.gap = false
		level, step := between(rng, 0, 30), between(rng, 3, 15)*upOrDown(rng)
		at := between(rng, 1, s.minutes-7) * 60
		return traceOf(rng, s, func(t float64) float64 {
			if t < at {
				return level + step
			}
			return level
		})
	}},
	{"step a minute or three ago", func(rng *rand.Rand) (trace, bool) {
		s := drawSampling(rng, 10, 30)
		s.gap, s.step = false, min(s.step, 20)
		level, step := between(rng, 0, 30), between(rng, 4, 15)*upOrDown(rng)
		at := (s.minutes - between(rng, 1, 3)) * 60
		return traceOf(rng, s, func(t float64) float64 {
			if t < at {
				return level + step
			}
			return level
		})
	}},
	{"level, too short a log", func(rng *rand.Rand) (trace, bool) {
		level := between(rng, -1, 40)
		tr, ok := traceOf(rng, drawSampling(rng, 0.2, 3.5), func(float64) float64 { return level })
		tr.called = isMoving
		return tr, ok
	}},
	{
		"hunting, regular",
		func(rng *rand.Rand) (trace, bool) { return hunted(rng, 6, 15, 0, false) },
	},
	{
		"hunting, uneven",
		func(rng *rand.Rand) (trace, bool) { return hunted(rng, 6, 15, 0.3, false) },
	},
	{"hunting, flooding at each low", func(rng *rand.Rand) (trace, bool) {
		return hunted(rng, 8, 15, 0.15, true)
	}},
	{"hunting, short gulps of liquid", func(rng *rand.Rand) (trace, bool) {
		s, _, period, swing := huntOf(rng, 6, 15, 0)
		s.step = min(s.step, 5)
		duty, phase, mean := between(rng, 0.15, 0.3), period*rng.Float64(), between(rng, 8, 25)
		return huntTrace(rng, s, func(t float64) float64 {
			if math.Mod(t+phase, period) < duty*period {
				return mean - swing
			}
			return mean
		}, period, swing), period >= 60
	}},
	{"valve in a loop with a lag", valveLoop},
	{
		"hunting, 4 to 6 °F",
		func(rng *rand.Rand) (trace, bool) { return hunted(rng, 4, 6, 0.1, false) },
	},
	{"hunting after an approach", func(rng *rand.Rand) (trace, bool) {
		s, of, period, swing := huntOf(rng, 6, 15, 0.15)
		away, tau := between(rng, 5, 25), between(rng, 40, 120)
		s.minutes = max(s.minutes, 5*period/60+8*tau/60)
		at := func(t float64) float64 { return of(t) + away*math.Exp(-t/tau) }
		return huntTrace(rng, s, at, period, swing), true
	}},
	{"hunting that has died away", func(rng *rand.Rand) (trace, bool) {
		s, of, period, _ := huntOf(rng, 6, 15, 0.15)
		s.gap = false
		until, level := 60*s.minutes, between(rng, 0, 25)
		s.minutes += between(rng, 6.5, 15)
		tr := trace{log: nil, called: isSteady, level: level, off: 1}
		tr.log = s.read(rng, func(t float64) float64 {
			if t < until {
				return of(t)
			}
			return level
		})
		return tr, period > 0
	}},
	{"damped swing", func(rng *rand.Rand) (trace, bool) {
		level, swing, period := between(rng, 5, 25), between(rng, 6, 15), between(rng, 60, 200)
		tau := period * between(rng, 0.5, 2)
		of := func(t float64) float64 {
			return level + swing*math.Exp(-t/tau)*math.Cos(2*math.Pi*t/period)
		}
		s := drawSampling(rng, 10, 30)
		s.step = min(s.step, period/6)
		tr, _ := traceOf(rng, s, of)
		return tr, movedIn(of, 60*s.minutes) < 0.5
	}},
	{"swing of 1 °F", func(rng *rand.Rand) (trace, bool) {
		mean := between(rng, 0, 25)
		of := hunt(rng, mean, between(rng, 0.3, 1.2), between(rng, 40, 200), 0.1)
		s := drawSampling(rng, 8, 30)
		return trace{log: s.read(rng, of), called: isSteady, level: mean, off: 1}, true
	}},
	{"hunting about a mean that moves", func(rng *rand.Rand) (trace, bool) {
		s, of, period, _ := huntOf(rng, 6, 12, 0.1)
		s.minutes = max(6, 4*period/60)
		rate := between(rng, 1.5, 4) / 60 * upOrDown(rng)
		log := s.read(rng, func(t float64) float64 { return of(t) + rate*t })
		return trace{log: log, called: isMoving, off: math.Inf(1)}, true
	}},
}

// valveLoop draws a superheat that nobody drew: a valve with a bulb that lags and
// a pipe that delays, in a loop of its own, hunts or comes to rest as the gain
// and the lags will have it.
func valveLoop(rng *rand.Rand) (trace, bool) {
	s := drawSampling(rng, 12, 30)
	s.step, s.gap = min(s.step, 10), false
	setting, gain := between(rng, 4, 15), between(rng, 0.3, 3)
	delay, bulb, coil := int(between(rng, 5, 30)), between(rng, 10, 60), between(rng, 10, 60)
	end := int(60*s.minutes) + 1
	sh, opening := make([]float64, end), make([]float64, end)
	felt, value := setting+between(rng, -8, 8), setting+between(rng, -8, 8)
	for t := range sh {
		felt += (value - felt) / bulb
		opening[t] = min(max((felt-setting)/8, -1), 1) // about its middle
		value += (setting - 8*gain*opening[max(t-delay, 0)] - value) / coil
		sh[t] = max(value, 0)
	}
	of := func(t float64) float64 { return sh[min(max(int(t), 0), end-1)] }
	last := 60 * s.minutes
	swing := movedIn(of, last)
	if swing < 0.5 {
		return traceOf(rng, s, of)
	}
	earlier := movedIn(of, last-300)
	tr := huntTrace(rng, s, of, 300, swing)
	return tr, swing > 4.5 && swing > 0.8*earlier
}

// huntOf draws a hunting superheat, and a way to read it that can show it: at
// least six readings to a cycle, and four cycles.
func huntOf(
	rng *rand.Rand, low, high, jitter float64,
) (s sampling, of signal, period, swing float64) {
	swing, period = between(rng, low, high), between(rng, 45, 240)
	s = drawSampling(rng, 6.5, 25)
	s.step = min(s.step, period/6)
	s.noise = min(s.noise, swing/15)
	s.minutes = max(s.minutes, 4*period/60)
	return s, hunt(rng, between(rng, -1, 25), swing, period, jitter), period, swing
}

func hunted(rng *rand.Rand, low, high, jitter float64, flooding bool) (trace, bool) {
	s, of, period, swing := huntOf(rng, low, high, jitter)
	if flooding { // liquid at the bulb: the superheat stops at none
		dry := of
		shift := between(rng, 0.1, 0.3)*swing - meanOf(dry, 0, 10*period)
		of = func(t float64) float64 { return max(dry(t)+shift, 0) }
	}
	return huntTrace(rng, s, of, period, swing), true
}

func huntTrace(rng *rand.Rand, s sampling, of signal, period, swing float64) trace {
	end := 60 * s.minutes
	mean := meanOf(of, max(end-math.Ceil(300/period)*period, 0), end)
	return trace{log: s.read(rng, of), called: isHunting, level: mean, off: 0.5 + 0.15*swing}
}

// rightCall reports whether a judgement of a trace is what people call it.
func (tr trace) rightCall(s Steadiness[quantity.TemperatureDelta]) (right bool, why string) {
	value := s.Value.Value.Fahrenheit()
	switch tr.called {
	case isSteady:
		right = s.State == Settled
	case isHunting:
		right = s.State == Hunting
	default:
		right = !s.Steady()
		// What is offered was read: it lies among the last readings.
		low, high := math.Inf(1), math.Inf(-1)
		last := tr.log[len(tr.log)-1].At
		for i, x := range tr.log {
			if x.At >= last-3*time.Minute || i >= len(tr.log)-6 {
				low, high = min(low, x.Value.Fahrenheit()), max(high, x.Value.Fahrenheit())
			}
		}
		if right && (value < low || value > high) {
			return false, fmt.Sprint(s.State, ", not read")
		}
		return right, fmt.Sprint(s.State)
	}
	if right && math.Abs(value-tr.level) > tr.off {
		return false, fmt.Sprint(s.State, ", far off")
	}
	return right, fmt.Sprint(s.State)
}

// Logs of every kind are called what people call them.
func TestTrialOfSteadiness(t *testing.T) {
	runs := 300
	if testing.Short() {
		runs = 60
	}
	all, right, acted := 0, 0, 0
	for k, kind := range traces {
		rng := rand.New(rand.NewPCG(15, uint64(k)))
		good, covered, wrong := 0, 0, map[string]int{}
		for n := 0; n < runs; {
			tr, clear := kind.draw(rng)
			if !clear {
				continue
			}
			n++
			s, err := SteadinessOf(tr.log, df(1))
			if err != nil {
				t.Fatal(err)
			}
			ok, why := tr.rightCall(s)
			switch {
			case !ok:
				wrong[why]++
			case tr.called == isMoving || near(s.Value, tr.level):
				good, covered = good+1, covered+1
			default:
				good++
			}
			if tr.called == isMoving && s.Steady() {
				acted++
			}
		}
		all, right = all+runs, right+good
		t.Logf(
			"%-34s right %5.1f %%, truth within two standard uncertainties in %5.1f %% of "+
				"these; else %v",
			kind.name, percent(good, runs), percent(covered, good), wrong,
		)
		if percent(good, runs) < 95 || percent(covered, good) < 90 {
			t.Errorf("%s: %d of %d right, truth covered in %d", kind.name, good, runs, covered)
		}
	}
	t.Logf(
		"all: %.1f %% of %d right; %d called steady that were not", percent(right, all), all, acted,
	)
	if percent(right, all) < 99 || percent(acted, all) > 0.2 {
		t.Errorf("%d of %d right, %d called steady that were not", right, all, acted)
	}
}

func percent(n, of int) float64 { return 100 * float64(n) / float64(max(of, 1)) }

// near reports whether a value is within two of its standard uncertainties of
// what it should be, in °F.
func near(v quantity.Uncertain[quantity.TemperatureDelta], fahrenheit float64) bool {
	return math.Abs(float64(v.Value-df(fahrenheit))) <= 2*v.Std
}

// Where a value on the move seems to go is an estimate. Its doubt holds for one
// time constant; of two, the slower cannot be seen in time.
func TestEstimateOfTheEnd(t *testing.T) {
	for _, c := range []struct {
		two   bool
		least float64
	}{{false, 95}, {true, 65}} {
		rng := rand.New(rand.NewPCG(15, 100))
		made, met := 0, 0
		for range 3000 {
			of, end := approachTo(rng, c.two)
			s, err := SteadinessOf(drawSampling(rng, 6, 30).read(rng, of), df(1))
			if err != nil {
				t.Fatal(err)
			}
			var none quantity.Uncertain[quantity.TemperatureDelta]
			if (s.State == Settling) != (s.Estimate != none) {
				t.Fatalf("%v with an estimate of %v", s.State, s.Estimate)
			}
			if s.State == Settling {
				made++
				if near(s.Estimate, end) {
					met++
				}
			}
		}
		t.Logf(
			"two time constants %v: of %d estimates %.1f %% met", c.two, made, percent(met, made),
		)
		if percent(met, made) < c.least {
			t.Errorf("two time constants %v: of %d estimates %d met", c.two, made, met)
		}
	}
}

// A chance trend in the jitter of a gauge is no movement, and widens nothing, in a
// log however short.
func TestJitterIsNoTrend(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 101))
	const jitter = 0.15 // psi
	widest, farthest, moving, runs := 0.0, 0.0, 0, 0
	for _, within := range []quantity.GaugePressure{quantity.PSIG(0.5), quantity.PSIG(2)} {
		for range 3000 {
			step, memory := []float64{1, 5, 20, 60}[rng.IntN(4)], between(rng, 0, 0.8)
			end := between(rng, 2*step, 1200)
			var log []Sample[quantity.GaugePressure]
			wander := jitter * rng.NormFloat64()
			for at := 0.0; at <= end; at += step {
				wander = memory*wander + math.Sqrt(1-memory*memory)*jitter*rng.NormFloat64()
				log = append(log, Sample[quantity.GaugePressure]{
					time.Duration(at * 1e9), quantity.PSIG(118 + wander),
				})
			}
			s, err := SteadinessOf(log, within)
			if err != nil {
				t.Fatal(err)
			}
			runs++
			if s.State != Settled && s.State != TooShort {
				moving++
			}
			widest = max(widest, quantity.GaugePressure(s.Value.Std).PSIG())
			farthest = max(farthest, math.Abs(s.Value.Value.PSIG()-118))
		}
	}
	found := fmt.Sprintf("of %d logs %d called moving; at most ±%.2f psi, at most %.2f psi off",
		runs, moving, widest, farthest)
	t.Log(found)
	if percent(moving, runs) > 0.1 || widest > 2*jitter || farthest > 4*jitter {
		t.Error(found)
	}
}
