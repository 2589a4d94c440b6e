package diagnose_test

import (
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
	"github.com/satline/satline/internal/judge/diagnose/testbench"
)

// A trialVisit is what the trial asks of a visit, whoever made it.
type trialVisit struct {
	Evidence   diagnose.Evidence
	Truth      []diagnose.Code
	Loss       float64
	Charge     float64 // relative error of the charge
	Instrument bool
	maker      maker
}

type maker interface {
	Code() string
	Look(rng *rand.Rand, code string) bool
	Read(rng *rand.Rand, code string) (diagnose.Evidence, bool)
}

func (v *trialVisit) Code() string { return v.maker.Code() }

// A generator draws a visit.
type generator func(*rand.Rand) (trialVisit, error)

func simulated(o simulate.Options) generator {
	return func(rng *rand.Rand) (trialVisit, error) {
		v, err := simulate.Draw(rng, o)
		out := trialVisit{
			Evidence: v.Evidence, Loss: v.Loss, Charge: v.Charge, Instrument: v.Instrument,
			maker: &v,
		}
		for _, x := range v.Truth {
			out.Truth = append(out.Truth, x.Signature)
		}
		return out, err
	}
}

func onTheBench(o testbench.Options) generator {
	return func(rng *rand.Rand) (trialVisit, error) {
		v, err := testbench.DrawVisit(rng, o)
		if err != nil {
			return trialVisit{}, err
		}
		if label := v.LabelSubcooling; label != nil {
			v.Evidence.Expected = append(v.Evidence.Expected, diagnose.Expectation{
				Feature: signature.Subcooling, Value: float64(label.Value), Std: float64(label.Std),
				AtRated: true,
			})
		}
		out := trialVisit{
			Evidence: v.Evidence, Loss: v.Loss, Charge: v.Machine.ChargeError(),
			Instrument: v.Instrument, maker: v,
		}
		for _, x := range v.Truth {
			out.Truth = append(out.Truth, x.Signature)
		}
		return out, nil
	}
}

// A sample of the visits on the bench. Its figures are not promised, as those of package
// simulate are; the floors are three standard deviations of the sample under what the full
// trial found, so that a change for the worse shows.
func TestTrialOnTheBench(t *testing.T) {
	n := 160
	if testing.Short() {
		n = 40
	}
	count(run(t, trialSeed, n, onTheBench(testbench.Options{}))).hold(t, 0.88, 0.97, 0.965)
}
