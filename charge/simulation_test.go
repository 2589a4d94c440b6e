package charge

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
)

// A machine answers to charge in a way that the doser does not know: another
// curve than its own, a gain drawn over a factor of six, a lag, correlated
// noise, and an instrument that is off by the same amount all along. In °F and
// ounces.
type machine struct {
	method Method
	target float64
	whole  float64 // oz
	latent func(net float64) float64
	lag    float64 // s
	noise  float64
	offset float64
	shown  float64 // where the last move left the value
}

func between(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// newMachine draws a machine that is out of band at the start.
func newMachine(rng *rand.Rand, m Method) *machine {
	s := &machine{
		method: m, whole: between(rng, 50, 250),
		lag: between(rng, 60, 300), noise: between(rng, 0.2, 0.8), offset: 0.7 * rng.NormFloat64(),
	}
	// Local gain at the target, °F per hundredth of the charge.
	gain := 0.4 * math.Exp(rng.Float64()*math.Log(2.5/0.4))
	switch m {
	case Superheat:
		// A power of the filling: the slope grows as the coil floods, by a
		// factor drawn up to about six from starved to flooded.
		s.target = between(rng, 6, 30)
		power := between(rng, 1, 3)
		const starved = 48
		atTarget := math.Pow(1-s.target/starved, 1/power)
		perFilling := starved * power * math.Pow(
			atTarget, power-1,
		) // |d superheat / d filling| at the target
		perOunce := 100 * gain / s.whole / perFilling
		curve := func(filling float64) float64 {
			return starved * (1 - math.Copysign(math.Pow(math.Abs(filling), power), filling))
		}
		start := 0.0
		for {
			start = between(rng, -0.25, 0.20) * s.whole // charge error, ounces
			if math.Abs(curve(atTarget+perOunce*start)-s.target) > 6.5 &&
				curve(atTarget+perOunce*start) < 45 {
				break
			}
		}
		s.latent = func(net float64) float64 { return curve(atTarget + perOunce*(start+net)) }
	case Subcooling:
		s.target = between(rng, 7, 14)
		gain *= 0.6
		bend := between(rng, -0.01, 0.01) // change of slope per °F
		start := 0.0
		curve := func(x float64) float64 { return s.target + x + bend*x*x/2 }
		for {
			start = between(rng, -0.25, 0.25)
			if v := curve(100 * gain * start); math.Abs(v-s.target) > 4 && v < 35 {
				break
			}
		}
		s.latent = func(net float64) float64 { return curve(100 * gain * (start + net/s.whole)) }
	}
	s.shown = max(s.latent(0), 0)
	return s
}

// read runs the machine for a quarter of an hour after a move, longer while its
// log says so, and returns the settled value with the doubt of the instrument.
func (s *machine) read(t *testing.T, rng *rand.Rand, net float64) delta {
	end := max(s.latent(net), 0)
	var log []Sample[quantity.TemperatureDelta]
	wander, at := 0.0, 0.0
	run := 15 * 60.0
	for range 4 {
		for ; at <= run; at += 20 {
			wander = 0.6*wander + 0.8*s.noise*rng.NormFloat64()
			v := end + (s.shown-end)*math.Exp(-at/s.lag) + wander + s.offset
			log = append(log, Sample[quantity.TemperatureDelta]{time.Duration(at * 1e9), df(v)})
		}
		st, err := SteadinessOf(log, df(1))
		if err != nil {
			t.Fatal(err)
		}
		if st.Steady() {
			s.shown = end
			return st.Value.Value.PlusMinus(
				quantity.TemperatureDelta(math.Hypot(st.Value.Std, float64(df(0.9)))),
			)
		}
		run += max(st.Wait.Seconds(), 120)
	}
	s.shown = end
	return log[len(log)-1].Value.PlusMinus(df(2))
}

type outcome struct {
	moves    int
	inBand   bool // truly, at the end
	reached  int  // moves after which it was first truly in band; −1 never
	overshot bool // passed the far side by more than the tolerance, at any time
	pastEdge bool // passed the far edge at all
	reason   string
}

func charged(t *testing.T, rng *rand.Rand, s *machine) outcome {
	tolerance := superheatTolerance.value.Fahrenheit()
	if s.method == Subcooling {
		tolerance = subcoolingTolerance.value.Fahrenheit()
	}
	d := Dosing{Target: targetOf(t, s.method, s.target, 0.5), LabelCharge: quantity.Ounces(s.whole)}
	net := 0.0
	side := math.Copysign(1, s.latent(0)-s.target)
	o := outcome{reached: -1}
	for {
		d.History = append(d.History, Moved{quantity.Ounces(net), s.read(t, rng, net)})
		dose, err := d.Next()
		if err != nil {
			t.Fatal(err)
		}
		checkDirection(t, d, dose)
		o.reason = dose.Reason
		if dose.Action == Leave || dose.Action == Halt {
			break
		}
		o.moves++
		if dose.Action == Add {
			net += dose.Mass.Ounces()
		} else {
			net -= dose.Mass.Ounces()
		}
		off := s.latent(net) - s.target
		if math.Abs(off) <= tolerance && o.reached < 0 {
			o.reached = o.moves
		}
		o.overshot = o.overshot || -side*off > 2*tolerance
		o.pastEdge = o.pastEdge || -side*off > tolerance
	}
	o.inBand = math.Abs(s.latent(net)-s.target) <= tolerance
	return o
}

// A system above its target superheat is never told to recover, nor one below
// to add; a subcooling the other way round.
func checkDirection(t *testing.T, d Dosing, dose Dose) {
	t.Helper()
	above := d.History[len(d.History)-1].Value.Value > d.Target.Value.Value
	if (d.Target.Method == Subcooling) != above && dose.Action == Recover ||
		(d.Target.Method == Subcooling) == above && dose.Action == Add {
		t.Errorf(
			"%v %v against %v: %v", d.Target.Method, d.History[len(d.History)-1].Value,
			d.Target.Value, dose.Action,
		)
	}
}

// On 1,000 machines of unknown gain, with noise and lag, dosing reaches the
// band in a median of at most three moves, and passes the far side by more than
// the tolerance in fewer than 5 of 100.
func TestDosingOnSimulatedMachines(t *testing.T) {
	t.Parallel()
	runs := 1000
	if testing.Short() {
		runs = 100
	}
	for _, m := range []Method{Superheat, Subcooling} {
		rng := rand.New(rand.NewPCG(2024, uint64(m)))
		var reached []int
		overshot, pastEdge, inBand, never := 0, 0, 0, 0
		reasons := map[string]int{}
		for range runs {
			o := charged(t, rng, newMachine(rng, m))
			reasons[o.reason]++
			if o.overshot {
				overshot++
			}
			if o.pastEdge {
				pastEdge++
			}
			if o.inBand {
				inBand++
			}
			if o.reached < 0 {
				never++
				reached = append(reached, 99)
			} else {
				reached = append(reached, o.reached)
			}
		}
		slices.Sort(reached)
		t.Logf(
			"%v: band reached after a median of %d moves (90 %% within %d, never in %d), in "+
				"band at the end %d; past the far edge %d, past it by more than the tolerance "+
				"%d; ends %v",
			m, reached[runs/2], reached[runs*9/10], never, inBand, pastEdge, overshot, reasons,
		)
		if reached[runs/2] > 3 || overshot > runs*5/100 {
			t.Errorf("%v: median %d moves, %d of %d overshot", m, reached[runs/2], overshot, runs)
		}
		// Nor the far edge of the band itself, which is the stricter reading.
		if pastEdge > runs*5/100 {
			t.Errorf("%v: %d of %d passed the far edge", m, pastEdge, runs)
		}
		if inBand < runs*90/100 {
			t.Errorf("%v: %d of %d end in band", m, inBand, runs)
		}
	}
}
