package diagnose_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
	"github.com/satline/satline/internal/judge/diagnose/testbench"
	"github.com/satline/satline/quantity"
)

// The trial: simulated visits, made by a generator that shares nothing with
// the inference but the language of Evidence, and what inference makes of them.
//
//	SATLINE_TRIAL=full go test -run Trial ./internal/judge/diagnose
//
// runs 2,000 visits on each of three kinds of machine, two of package simulate and one of
// package testbench, writes testdata/trial.md and the plot testdata/calibration.svg, and
// holds the figures promised, as CI does. On the bench they are reported, not promised. A
// plain go test runs a sample of the same visits, and holds them to looser bounds,
// as a sample is.
const trialVariable = "SATLINE_TRIAL"

// effect is the loss of capacity or efficiency from which a fault counts.
const effect = 0.10

type answer struct {
	visit trialVisit
	d     diagnose.Diagnosis
	// after is the first explanation once the measurement that the diagnosis
	// asks for was made.
	after string
	// afterCharge is what is believed of the charge by then.
	afterCharge diagnose.ChargeBelief
}

func (a *answer) truth() string { return a.visit.Code() }

// rank of the truth among the explanations, from 1; 0 where it is not listed.
func (a *answer) rank() int {
	for i := range a.d.Explanations {
		if a.d.Explanations[i].Code() == a.truth() {
			return i + 1
		}
	}
	return 0
}

func (a *answer) first() string { return a.d.Explanations[0].Code() }

// follow takes the look or reading that a diagnosis asks for, weighs all anew, and
// returns what follows then.
func follow(rng *rand.Rand, v *trialVisit, d *diagnose.Diagnosis) diagnose.Diagnosis {
	if len(d.Decision.Looks) == 0 {
		return *d
	}
	m := d.Decision.Looks[0]
	e, isReading := v.maker.Read(rng, m.Code)
	if !isReading {
		e.Answers = append(e.Answers, diagnose.Answer{Code: m.Code, Yes: v.maker.Look(rng, m.Code)})
	}
	return diagnose.Infer(e)
}

// Seeds of the trial, and of the visits by which thresholds and priors were
// chosen: never the same.
const (
	trialSeed = 2000
	tuneSeed  = 7
)

func run(t testing.TB, seed uint64, n int, draw generator) []answer {
	out := make([]answer, n)
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		wg.Go(func() {
			for i := w; i < n; i += workers {
				// Each visit has a seed of its own: a sample is the start of the
				// full trial, whatever the number of workers.
				rng := rand.New(rand.NewPCG(seed, uint64(i)))
				v, err := draw(rng)
				if err != nil {
					t.Errorf("visit %d: %v", i, err)
					return
				}
				out[i] = answer{visit: v, d: diagnose.Infer(v.Evidence)}
				after := follow(rng, &v, &out[i].d)
				out[i].after, out[i].afterCharge = after.Explanations[0].Code(), after.Charge
			}
		})
	}
	wg.Wait()
	return out
}

// A tally sums answers up.
type tally struct {
	faults, first, three, called, rightCalled int // single faults of the machine above the effect
	slight, slightFirst                       int // below it
	instruments, instrumentFirst              int
	pairs, pairFirst, pairThree               int
	pairOne                                   int // first explanation names one of the two, and nothing else
	sound, alarms, suspected                  int
	// right once the measurement asked for was made
	after, slightAfter, instrumentAfter, pairAfter, soundAfter int
	soundFirst                                                 int
	high, highAlarms                                           int // sound machines above 3,000 ft
	bins                                                       [10]struct{ n, right, said float64 }
	confusion                                                  map[string]map[string]int
	byFault                                                    map[string]*[5]int // n, first, three, marginal above half, first after one measurement
}

func count(answers []answer) *tally {
	t := &tally{confusion: map[string]map[string]int{}, byFault: map[string]*[5]int{}}
	for i := range answers {
		a := &answers[i]
		rank, first := a.rank(), a.first()
		p := a.d.Explanations[0].Probability
		bin := min(9, int(p*10))
		t.bins[bin].n++
		t.bins[bin].said += p
		if rank == 1 {
			t.bins[bin].right++
		}
		v := &a.visit
		settled := 0
		if a.after == a.truth() {
			settled = 1
		}
		switch {
		case len(v.Truth) == 0:
			t.sound++
			t.soundAfter += settled
			if rank == 1 {
				t.soundFirst++
			}
			if v.Evidence.Atmosphere < highSite {
				t.high++
				if a.d.Alarm() {
					t.highAlarms++
				}
			}
			if a.d.Alarm() {
				t.alarms++
			}
			if first != "sound" && first != string(diagnose.LowLoad) &&
				first != string(diagnose.LowAmbient) {
				t.suspected++
			}
		case len(v.Truth) == 2:
			t.pairs++
			t.pairAfter += settled
			if rank == 1 {
				t.pairFirst++
			} else if first == string(v.Truth[0]) || first == string(v.Truth[1]) {
				t.pairOne++
			}
			if rank >= 1 && rank <= 3 {
				t.pairThree++
			}
		case v.Instrument:
			t.instruments++
			t.instrumentAfter += settled
			if rank == 1 {
				t.instrumentFirst++
			}
		case v.Loss < effect:
			t.slight++
			t.slightAfter += settled
			if rank == 1 {
				t.slightFirst++
			}
		default:
			t.faults++
			t.after += settled
			if rank == 1 {
				t.first++
			}
			if rank >= 1 && rank <= 3 {
				t.three++
			}
			if a.d.Alarm() {
				t.called++
				if rank == 1 {
					t.rightCalled++
				}
			}
		}
		if len(v.Truth) < 2 && (len(v.Truth) == 0 || v.Instrument || v.Loss >= effect) {
			truth := a.truth()
			if t.confusion[truth] == nil {
				t.confusion[truth] = map[string]int{}
				t.byFault[truth] = &[5]int{}
			}
			said := first
			if strings.Contains(said, "+") {
				said = "two causes"
				for _, x := range v.Truth {
					if slices.Contains(strings.Split(first, "+"), string(x)) {
						said = "truth and another"
					}
				}
			}
			t.confusion[truth][said]++
			b := t.byFault[truth]
			b[0]++
			if rank == 1 {
				b[1]++
			}
			if rank >= 1 && rank <= 3 {
				b[2]++
			}
			if len(v.Truth) == 1 && a.d.Probability(v.Truth[0]) > 0.5 {
				b[3]++
			}
			b[4] += settled
		}
	}
	return t
}

// highSite is the atmosphere at 3,000 ft.
var highSite = quantity.AtmosphereAt(quantity.Feet(3000))

func share(k, n int) float64 { return float64(k) / float64(max(1, n)) }

func (t *tally) write(b *strings.Builder, title string) {
	fmt.Fprintf(b, "## %s\n\n", title)
	fmt.Fprintf(
		b,
		"| group | visits | first explanation right | among the first three | first right after the one measurement asked for |\n|---|---|---|---|---|\n",
	)
	fmt.Fprintf(
		b, "| one fault, effect 10 %% or more | %d | %.1f %% | %.1f %% | %.1f %% |\n", t.faults,
		100*share(t.first, t.faults), 100*share(t.three, t.faults), 100*share(t.after, t.faults),
	)
	fmt.Fprintf(
		b, "| the same, something called wrong | %d | %.1f %% | | |\n", t.faults,
		100*share(t.called, t.faults),
	)
	fmt.Fprintf(
		b, "| the same, called, and the first explanation right | %d | %.1f %% | | |\n", t.faults,
		100*share(t.rightCalled, t.faults),
	)
	fmt.Fprintf(
		b, "| one fault, effect below 10 %% | %d | %.1f %% | | %.1f %% |\n", t.slight,
		100*share(t.slightFirst, t.slight), 100*share(t.slightAfter, t.slight),
	)
	fmt.Fprintf(
		b, "| an instrument that lies | %d | %.1f %% | | %.1f %% |\n", t.instruments,
		100*share(t.instrumentFirst, t.instruments), 100*share(t.instrumentAfter, t.instruments),
	)
	fmt.Fprintf(
		b, "| two faults at once, both named | %d | %.1f %% | %.1f %% | %.1f %% |\n", t.pairs,
		100*share(t.pairFirst, t.pairs), 100*share(t.pairThree, t.pairs),
		100*share(t.pairAfter, t.pairs),
	)
	fmt.Fprintf(
		b, "| two faults at once, one named alone | %d | %.1f %% | | |\n", t.pairs,
		100*share(t.pairOne, t.pairs),
	)
	fmt.Fprintf(
		b, "| sound machine | %d | %.1f %% | | %.1f %% |\n", t.sound,
		100*share(t.soundFirst, t.sound), 100*share(t.soundAfter, t.sound),
	)
	fmt.Fprintf(
		b, "| sound machine, something called wrong (false alarm) | %d | %.1f %% | | |\n", t.sound,
		100*share(t.alarms, t.sound),
	)
	fmt.Fprintf(
		b, "| the same above 3,000 ft (false alarm) | %d | %.1f %% | | |\n", t.high,
		100*share(t.highAlarms, t.high),
	)
	fmt.Fprintf(
		b, "| sound machine, a fault likelier than none, not called | %d | %.1f %% | | |\n\n",
		t.sound, 100*share(t.suspected-t.alarms, t.sound),
	)
	b.WriteString(
		"Called wrong: the probability that nothing is wrong is below 8 %. Short of that the verdict is that more than one explanation fits.\n\n",
	)

	fmt.Fprintf(
		b,
		"Calibration: what the first explanation said of itself, and how often it was right.\n\n| said | visits | mean said | right |\n|---|---|---|---|\n",
	)
	for i, x := range t.bins {
		if x.n > 0 {
			fmt.Fprintf(
				b, "| %d to %d %% | %.0f | %.0f %% | %.0f %% |\n", 10*i, 10*i+10, x.n,
				100*x.said/x.n, 100*x.right/x.n,
			)
		}
	}
	fmt.Fprintf(
		b,
		"\nBy cause (effect of 10 %% or more, or an instrument):\n\n| truth | visits | first | first three | present with more than half | first after the one measurement | taken for |\n|---|---|---|---|---|---|---|\n",
	)
	truths := make([]string, 0, len(t.confusion))
	for k := range t.confusion {
		truths = append(truths, k)
	}
	slices.Sort(truths)
	for _, k := range truths {
		x := t.byFault[k]
		type taken struct {
			code string
			n    int
		}
		var others []taken
		for code, n := range t.confusion[k] {
			if code != k {
				others = append(others, taken{code, n})
			}
		}
		slices.SortFunc(others, func(a, b taken) int {
			if a.n != b.n {
				return b.n - a.n
			}
			return strings.Compare(a.code, b.code)
		})
		var text []string
		for _, o := range others {
			text = append(text, fmt.Sprintf("%s %d", o.code, o.n))
		}
		present := fmt.Sprintf("%.0f %%", 100*share(x[3], x[0]))
		if k == "sound" {
			present = ""
		}
		fmt.Fprintf(
			b, "| %s | %d | %.0f %% | %.0f %% | %s | %.0f %% | %s |\n", k, x[0],
			100*share(x[1], x[0]), 100*share(x[2], x[0]), present, 100*share(x[4], x[0]),
			strings.Join(text, ", "),
		)
	}
	b.WriteString("\n")
}

// miscalibration is the mean absolute difference of said and right, weighted
// by the visits of each bin (the expected calibration error).
func (t *tally) miscalibration() float64 {
	var sum, n float64
	for _, x := range t.bins {
		if x.n > 0 {
			sum += math.Abs(x.said - x.right)
			n += x.n
		}
	}
	return sum / n
}

func TestTrial(t *testing.T) {
	if os.Getenv(trialVariable) == "full" {
		fullTrial(t)
		return
	}
	n := 240
	if testing.Short() {
		n = 60
	}
	got := count(run(t, trialSeed, n, simulated(simulate.Options{})))
	t.Logf("first %d, three %d of %d faults; %d alarms of %d sound; miscalibration %.3f",
		got.first, got.three, got.faults, got.alarms, got.sound, got.miscalibration())
	if p := share(got.first, got.faults); p < below(0.85, got.faults) {
		t.Errorf("the first explanation was right in %.1f %%", 100*p)
	}
	if p := share(got.three, got.faults); p < below(0.97, got.faults) {
		t.Errorf("the truth was among the first three in %.1f %%", 100*p)
	}
	if p := share(got.alarms, got.sound); 1-p < below(0.97, got.sound) {
		t.Errorf("false alarms on %.1f %% of sound machines", 100*p)
	}
}

// below is three standard deviations of a sample of n below the figure p of the full trial.
func below(p float64, n int) float64 { return p - 3*math.Sqrt(p*(1-p)/float64(max(1, n))) }

func fullTrial(t *testing.T) {
	const n = 2000
	var b strings.Builder
	b.WriteString(
		"# Trial of the diagnosis on simulated visits\n\nWritten by `SATLINE_TRIAL=full go test -run Trial ./internal/judge/diagnose`; see trial_test.go and the packages simulate and testbench. What each figure means stands there. A cause is right if its signature is: faults that read alike at the ports (a filter and a slow blower, a drier and a plugged device, a dirty and a badly placed condenser) count as one. Priors and thresholds were chosen on other visits than these.\n\nAfter the one measurement: the measurement that the diagnosis asks for is made on the same machine, with instruments as before, or looks and tests that miss what is there, and find what is not, as often as the packages say. A gauge off zero by 10 psi on the low side or 25 psi on the high side, or 7,000 ft that nobody stated, moves the readings of an R-410A machine by one to three standard deviations of sound machines (limit_test.go): readings alone can doubt such an error, and hardly name them.\n\n",
	)
	b.WriteString(
		"![What the first explanation said of itself, and how often it was right](calibration.svg)\n\n",
	)
	var panels []panel
	for _, x := range []struct {
		title, machines string
		draw            generator
		promised        bool
	}{
		{"the system model", "2,000 visits, machines by the system model", simulated(simulate.Options{}), true},
		{"another model", "2,000 visits, machines by a deliberately different model", simulated(simulate.Options{Other: true}), true},
		{"the eight usual readings", "2,000 visits with the eight usual readings only", simulated(simulate.Options{Bare: true}), false},
		{"the test bench", "2,000 visits, machines of the test bench, which shares nothing with the model", onTheBench(testbench.Options{}), false},
		{"its class stated", "2,000 visits, year, efficiency, stages and arrangement stated", simulated(simulate.Options{Class: true}), false},
		{"its table too", "2,000 visits, with a maker's table of normal pressures besides", simulated(simulate.Options{Class: true, Table: true}), false},
	} {
		answers := run(t, trialSeed, n, x.draw)
		got := count(answers)
		got.write(&b, x.machines)
		charges := countCharges(answers)
		charges.write(&b)
		panels = append(panels, panel{x.title, got})
		if !x.promised {
			continue
		}
		for _, p := range []struct {
			what      string
			got, want float64
			atLeast   bool
		}{
			{"first explanation right, faults above 10 % effect", share(got.first, got.faults), 0.85, true},
			{"among the first three", share(got.three, got.faults), 0.97, true},
			{"false alarms on sound machines", share(got.alarms, got.sound), 0.02, false},
			{"miscalibration", got.miscalibration(), 0.05, false},
		} {
			if p.atLeast && p.got < p.want || !p.atLeast && p.got > p.want {
				t.Errorf(
					"%s, %s: %.1f %%, promised %.1f %%", x.machines, p.what, 100*p.got, 100*p.want,
				)
			}
		}
	}
	for name, text := range map[string]string{"trial.md": b.String(), "calibration.svg": calibrationPlot(panels)} {
		if err := os.WriteFile(filepath.Join("testdata", name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
