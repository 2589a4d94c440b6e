package diagnose_test

import (
	"fmt"
	"math"
	"strings"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/tool/trial"
	"github.com/satline/satline/refrigerant"
)

// off is the relative charge error from which a charge has to be called.
const off = 0.10

// A chargeTally holds what was said of the charge against what it was.
type chargeTally struct {
	low, high, inBand trial.Part // said, and right
	// offCalled are charges off by 10 % or more, by metering device; pairs of faults and
	// single ones. settled says the same once the measurement asked for was made.
	offCalled, settled  [2]trial.Part
	lowCalled, hiCalled trial.Part
	soundLeft           trial.Part // sound machines of which 'leave it' is said
	soundMoved          trial.Part // and of which it is not, but low or high
	wrongWay            trial.Part
	covered             trial.Part // errors within the belief's 10th to 90th percentile
	bins                [3]trial.Calibration
	ladder              [len(rungs)]struct{ low, high, lowCalled, hiCalled trial.Part }
}

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
			t.offCalled[device].Count(call == wanted)
			t.settled[device].Count(settled == wanted)
			if wanted == diagnose.ChargeLow {
				t.lowCalled.Count(call == wanted)
			} else {
				t.hiCalled.Count(call == wanted)
			}
		}
		switch call {
		case diagnose.ChargeLow:
			t.low.Count(truth < -band)
		case diagnose.ChargeHigh:
			t.high.Count(truth > band)
		case diagnose.ChargeInBand:
			t.inBand.Count(math.Abs(truth) <= band)
		}
		t.wrongWay.Count(call == diagnose.ChargeLow && truth > band ||
			call == diagnose.ChargeHigh && truth < -band)
		if len(a.visit.Truth) == 0 {
			t.soundLeft.Count(call == diagnose.ChargeInBand)
			t.soundMoved.Count(call == diagnose.ChargeLow || call == diagnose.ChargeHigh)
		}
		t.covered.Count(b.Quantile(0.1) <= truth && truth <= b.Quantile(0.9))
		for k, x := range [...]struct {
			said float64
			is   bool
		}{{b.Low, truth < -band}, {b.InBand, math.Abs(truth) <= band}, {b.High, truth > band}} {
			t.bins[k].Count(x.said, x.is)
		}
		for k, least := range rungs {
			r := &t.ladder[k]
			if b.Low >= least {
				r.low.Count(truth < -band)
			}
			if b.High >= least {
				r.high.Count(truth > band)
			}
			if truth <= -off {
				r.lowCalled.Count(b.Low >= least)
			}
			if truth >= off {
				r.hiCalled.Count(b.High >= least)
			}
		}
	}
	return t
}

// miscalibration is that of the three chances together, as of the explanations.
func (t *chargeTally) miscalibration() float64 {
	sum := 0.0
	for k := range t.bins {
		sum += t.bins[k].Off()
	}
	return sum / float64(len(t.bins))
}

func (t *chargeTally) write(b *strings.Builder) {
	both := func(p [2]trial.Part) trial.Part {
		return trial.Part{N: p[0].N + p[1].N, Of: p[0].Of + p[1].Of}
	}
	fmt.Fprintf(
		b,
		"The charge, whatever else is wrong; in band is within %.0f %% of the right "+
			"charge.\n\n| | |\n|---|---|\n",
		100*diagnose.ChargeBand,
	)
	for _, row := range []struct {
		name string
		p    trial.Part
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
		{"sound machine, said low or high", t.soundMoved}, {"the wrong way", t.wrongWay},
	} {
		fmt.Fprintf(b, "| %s | %s |\n", row.name, row.p.OfHowMany())
	}
	fmt.Fprintf(
		b,
		"| miscalibration of low, in band and high | %.1f points |\n\n", 100*t.miscalibration(),
	)
	b.WriteString(
		"What other thresholds would give:\n\n| threshold | low right | off by 10 % or more, " +
			"called low | high right | off by 10 % or more, called high |\n|---|---|---|---|---|\n",
	)
	for k, least := range rungs {
		r := &t.ladder[k]
		fmt.Fprintf(
			b, "| %.0f %% | %s | %s | %s | %s |\n", 100*least, r.low.OfHowMany(),
			r.lowCalled.OfHowMany(), r.high.OfHowMany(), r.hiCalled.OfHowMany(),
		)
	}
	b.WriteString("\n")
}
