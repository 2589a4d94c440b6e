package diagnose_test

import (
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// mean averages a figure over visits.
func mean(n int, figure func(i uint64) float64) float64 {
	sum := 0.0
	for i := range uint64(n) {
		sum += figure(i) / float64(n)
	}
	return sum
}

// A machine that its label makes for 350 CFM per ton is not short of air.
func TestLabelAirflowIsNotTooLittleAir(t *testing.T) {
	chance := func(labelled bool) float64 {
		return mean(60, func(i uint64) float64 {
			e := broken(
				t, 81, i,
				func(*rand.Rand) cycle.Faults { return cycle.Faults{IndoorAirflow: 350.0/400 - 1} },
			)
			e.RatedAirflow = 0
			if labelled {
				e.RatedAirflow = quantity.CFM(350 * e.NominalCapacity.Tons())
			}
			d := diagnose.Infer(e)
			return d.Probability(diagnose.LowIndoorAir)
		})
	}
	with, without := chance(true), chance(false)
	t.Logf("too little air: %.3f with the label, %.3f without", with, without)
	// What is left is the chance of too little air before anything is read.
	if with > 0.5*without || with > 0.14 {
		t.Errorf("too little air has %.3f with the label, %.3f without", with, without)
	}
}

// A restrictor that is not the one of the label is the likelier cause of what it reads like; the
// label's own changes nothing, nor does a number at a valve.
func TestRestrictorsNumberCounts(t *testing.T) {
	chance := func(code diagnose.Code, of refrigerant.Metering, bore, label float64) float64 {
		return mean(40, func(i uint64) float64 {
			e := drawFault(t, i, diagnose.Overfeed, 0.2)
			if code == "restrictor-small" {
				e = drawFault(t, i, diagnose.Restriction, 0.2)
			}
			e.Metering = of
			e.Bore, e.RatedBore = quantity.Inches(bore), quantity.Inches(label)
			d, sum := diagnose.Infer(e), 0.0
			for _, m := range d.Marginals() {
				for _, f := range m.Faults {
					if f.Fault.Code == code {
						sum += m.Chance * f.Chance
					}
				}
			}
			return sum
		})
	}
	for code, bore := range map[diagnose.Code]float64{
		"restrictor-small": 0.055, "restrictor-large": 0.063,
	} {
		unknown := chance(code, refrigerant.FixedRestrictor, 0, 0.059)
		same := chance(code, refrigerant.FixedRestrictor, 0.059, 0.059)
		other := chance(code, refrigerant.FixedRestrictor, bore, 0.059)
		t.Logf("%s: %.2f, with the label's own %.2f, with another %.2f", code, unknown, same, other)
		if same != unknown || other < unknown+0.2 || other < 0.6 {
			t.Errorf("%s: %.2f, the label's own %.2f, another %.2f", code, unknown, same, other)
		}
		if with, without := chance(code, refrigerant.TXV, bore, 0.059),
			chance(code, refrigerant.TXV, 0, 0); with != without {
			t.Errorf("%s behind a valve: %.2f, and %.2f with a number", code, without, with)
		}
	}
}

// drawFault is a visit to a machine with one fault, without the earlier readings.
func drawFault(t *testing.T, i uint64, code diagnose.Code, size float64) diagnose.Evidence {
	e, err := simulate.DrawChange(
		rand.New(rand.NewPCG(83, i)), simulate.Change{Signature: code, Size: size},
	)
	if err != nil {
		t.Fatal(err)
	}
	e.Earlier = nil
	return e
}

// What was moved before the readings counts: a machine that was sound before 15 % was added
// is 15 % too full, and what reads as a little too much is that.
func TestMovesCount(t *testing.T) {
	high := func(moved float64) float64 {
		return mean(40, func(i uint64) float64 {
			e := drawFault(t, i, diagnose.Overcharge, 0.12)
			e.Moved = quantity.Mass(moved * float64(e.Charge))
			d := diagnose.Infer(e)
			return d.Charge.High
		})
	}
	none, hardly, some := high(0), high(0.002), high(0.15)
	t.Logf(
		"too much: %.2f untouched, %.2f after 0.2 %% was added, %.2f after 15 %%", none, hardly,
		some,
	)
	if some < none+0.2 || hardly < none-0.05 || hardly > none+0.05 {
		t.Errorf(
			"too much has %.2f untouched, %.2f after 0.2 %% was added, %.2f after 15 %%", none,
			hardly, some,
		)
	}
}

// An identifier that names another refrigerant leaves only what follows from that; one that
// names the one on the label leaves nothing of it.
func TestIdentifiedRefrigerantIsFinal(t *testing.T) {
	chance := func(yes bool) float64 {
		return mean(40, func(i uint64) float64 {
			_, e := soundVisit(t, 87, i)
			e.Answers = append(e.Answers, diagnose.Answer{Code: "refrigerant-label", Yes: yes})
			d := diagnose.Infer(e)
			return d.Probability(diagnose.OtherRefrigerant)
		})
	}
	yes, no := chance(true), chance(false)
	t.Logf("another refrigerant: %.3f identified as such, %.4f as the one named", yes, no)
	if yes < 0.9 || no > 0.001 {
		t.Errorf("another refrigerant has %.3f identified as such, %.4f as the one named", yes, no)
	}
}

// Air that was measured as rated, and seen clear everywhere, is hardly ever short.
func TestAirThatWasLookedAtIsSettled(t *testing.T) {
	chance := mean(60, func(i uint64) float64 {
		rng := rand.New(rand.NewPCG(89, i))
		e := drawFault(t, i, diagnose.Undercharge, 0.15)
		rated := e.NominalCapacity.Tons() * 400
		e.RatedAirflow = quantity.CFM(rated)
		e.Airflow = &quantity.Uncertain[quantity.VolumeFlow]{
			Value: quantity.CFM(rated * (1 + 0.05*rng.NormFloat64())),
			Std:   float64(quantity.CFM(0.05 * rated)),
		}
		for _, look := range []string{"indoor-air-path", "static-pressure", "coil-inlet-air"} {
			e.Answers = append(e.Answers, diagnose.Answer{Code: look})
		}
		d := diagnose.Infer(e)
		return d.Any(diagnose.LowIndoorAir, diagnose.HighIndoorAir, diagnose.ReturnLeak)
	})
	t.Logf("air: %.3f", chance)
	if chance > 0.06 {
		t.Errorf("air that was measured and looked at has %.3f", chance)
	}
}
