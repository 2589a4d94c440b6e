package diagnose_test

import (
	"fmt"
	"math"
	"strings"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/refrigerant"
)

// off is the relative charge error from which a charge has to be called.
const off = 0.10

// A chargeTally holds what was said of the charge against what it was.
type chargeTally struct {
	low, high, inBand part // said, and right
	// offCalled are charges off by 10 % or more, by metering device; pairs of faults and
	// single ones. settled says the same once the measurement asked for was made.
	offCalled, settled  [2]part
	lowCalled, hiCalled part
	soundLeft           part // sound machines of which 'leave it' is said
	soundMoved          int  // and of which it is not, but low or high
	wrongWay            int
	covered             part // errors within the belief's 10th to 90th percentile
	bins                [3][10]struct{ n, right, said float64 }
	ladder              [len(rungs)]struct{ low, high, lowCalled, hiCalled part }
}

// A part of a whole.
type part struct{ of, n int }

func (p *part) count(holds bool) {
	p.of++
	if holds {
		p.n++
	}
}

func (p part) String() string { return fmt.Sprintf("%.1f %% of %d", 100*share(p.n, p.of), p.of) }

var rungs = [...]float64{0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95}

func countCharges(answers []answer) *chargeTally {
	t := &chargeTally{}
	const band = diagnose.ChargeBand
	for i := range answers {
		a := &answers[i]
		b, truth := &a.d.Charge, a.visit.Charge
		call, settled := b.Call(), a.afterCharge.Call()
		device := 1
		if a.visit.Evidence.Metering == refrigerant.FixedRestrictor {
			device = 0
		}
		wanted := diagnose.ChargeLow
		if truth > 0 {
			wanted = diagnose.ChargeHigh
		}
		if math.Abs(truth) >= off {
			t.offCalled[device].count(call == wanted)
			t.settled[device].count(settled == wanted)
			if wanted == diagnose.ChargeLow {
				t.lowCalled.count(call == wanted)
			} else {
				t.hiCalled.count(call == wanted)
			}
		}
		switch call {
		case diagnose.ChargeLow:
			t.low.count(truth < -band)
		case diagnose.ChargeHigh:
			t.high.count(truth > band)
		case diagnose.ChargeInBand:
			t.inBand.count(math.Abs(truth) <= band)
		}
		if call == diagnose.ChargeLow && truth > band ||
			call == diagnose.ChargeHigh && truth < -band {
			t.wrongWay++
		}
		if len(a.visit.Truth) == 0 {
			t.soundLeft.count(call == diagnose.ChargeInBand)
			if call == diagnose.ChargeLow || call == diagnose.ChargeHigh {
				t.soundMoved++
			}
		}
		t.covered.count(b.Quantile(0.1) <= truth && truth <= b.Quantile(0.9))
		for k, x := range [...]struct {
			said float64
			is   bool
		}{{b.Low, truth < -band}, {b.InBand, math.Abs(truth) <= band}, {b.High, truth > band}} {
			bin := &t.bins[k][min(9, int(10*x.said))]
			bin.n++
			bin.said += x.said
			if x.is {
				bin.right++
			}
		}
		for k, least := range rungs {
			r := &t.ladder[k]
			if b.Low >= least {
				r.low.count(truth < -band)
			}
			if b.High >= least {
				r.high.count(truth > band)
			}
			if truth <= -off {
				r.lowCalled.count(b.Low >= least)
			}
			if truth >= off {
				r.hiCalled.count(b.High >= least)
			}
		}
	}
	return t
}

// miscalibration is that of the three chances together, as of the explanations.
func (t *chargeTally) miscalibration() float64 {
	var sum, n float64
	for k := range t.bins {
		for _, x := range t.bins[k] {
			sum += math.Abs(x.said - x.right)
			n += x.n
		}
	}
	return sum / n
}

func (t *chargeTally) write(b *strings.Builder) {
	both := func(p [2]part) part { return part{p[0].of + p[1].of, p[0].n + p[1].n} }
	fmt.Fprintf(
		b,
		"The charge, whatever else is wrong; in band is within %.0f %% of the right charge.\n\n| | |\n|---|---|\n",
		100*diagnose.ChargeBand,
	)
	for _, row := range []struct {
		name string
		p    fmt.Stringer
	}{
		{"said low, and right", t.low}, {"said high, and right", t.high},
		{"said in band, and right", t.inBand},
		{"off by 10 % or more, called the right way", both(t.offCalled)},
		{"the same, short of refrigerant", t.lowCalled}, {"the same, too much of it", t.hiCalled},
		{"the same, fixed restrictors", t.offCalled[0]},
		{"the same, expansion valves", t.offCalled[1]},
		{"off by 10 % or more, after the one measurement asked for", both(t.settled)},
		{"sound machine, said to be in band", t.soundLeft},
		{"charge within the belief's 10th to 90th percentile", t.covered},
	} {
		fmt.Fprintf(b, "| %s | %s |\n", row.name, row.p)
	}
	fmt.Fprintf(
		b,
		"| sound machine, said low or high | %d |\n| the wrong way | %d |\n| miscalibration of low, in band and high | %.1f points |\n\n",
		t.soundMoved, t.wrongWay, 100*t.miscalibration(),
	)
	b.WriteString(
		"What other thresholds would give:\n\n| threshold | low right | off by 10 % or more, called low | high right | off by 10 % or more, called high |\n|---|---|---|---|---|\n",
	)
	for k, least := range rungs {
		r := &t.ladder[k]
		fmt.Fprintf(
			b, "| %.0f %% | %s | %s | %s | %s |\n", 100*least, r.low, r.lowCalled, r.high,
			r.hiCalled,
		)
	}
	b.WriteString("\n")
}
