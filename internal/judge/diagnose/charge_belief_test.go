package diagnose

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// shortBy is a machine on the mean of the table, short of a part of its charge.
func shortBy(m refrigerant.Metering, short float64) Evidence {
	table := signature.For(deviceOf(m))
	v := table.Sound.Mean(table.Sound.At(signature.Rated, signature.UsualFluid))
	levels := table.Cause(string(Undercharge))
	at, was := 0.0, vector{}
	for i := range levels {
		is := levels[i].Shift(table.Sound.At(signature.Rated, signature.UsualFluid))
		if short <= levels[i].Severity || i == len(levels)-1 {
			t := (short - at) / (levels[i].Severity - at)
			for f := range v {
				v[f] += was[f] + t*(is[f]-was[f])
			}
			break
		}
		at, was = levels[i].Severity, is
	}
	e := reads(signature.Rated, v)
	e.Metering = m
	return e
}

// The belief moves with the readings, without a jump at any size that was tabled.
func TestChargeBeliefIsContinuous(t *testing.T) {
	for _, m := range []refrigerant.Metering{refrigerant.FixedRestrictor, refrigerant.TXV} {
		last := -1.0
		for short := 0.0; short < 0.2; short += 0.0005 {
			d := Infer(shortBy(m, short))
			if last >= 0 && math.Abs(d.Charge.Low-last) > 0.02 {
				t.Errorf(
					"metering %d: low %.3f at %.2f %% short, %.3f just before", m, d.Charge.Low,
					100*short, last,
				)
			}
			last = d.Charge.Low
		}
		if last < 0.95 {
			t.Errorf("metering %d: low %.2f with a fifth missing", m, last)
		}
	}
}

// The size believed is that of the readings.
func TestChargeBeliefFindsTheSize(t *testing.T) {
	for _, m := range []refrigerant.Metering{refrigerant.FixedRestrictor, refrigerant.TXV} {
		for _, short := range []float64{0.12, 0.2, 0.3} {
			d := Infer(shortBy(m, short))
			b := &d.Charge
			if got := b.ErrorGivenLow; math.Abs(got.Mean+short) > 2*got.Std {
				t.Errorf(
					"metering %d: %.2f ± %.2f believed, %.2f short", m, got.Mean, got.Std, short,
				)
			}
		}
	}
}

// What holds of every belief.
func TestChargeBeliefAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b ChargeBelief
		for range rapid.IntRange(0, 5).Draw(t, "terms") {
			b.density[rapid.IntRange(0, chargeCells-1).Draw(t, "cell")] += rapid.Float64Range(0, 1).
				Draw(t, "weight")
		}
		b.sumUp()
		if sum := b.Low + b.InBand + b.High; math.Abs(sum-1) > 1e-9 {
			t.Fatalf("chances add to %v", sum)
		}
		last := math.Inf(-1)
		for p := 0.0; p <= 1; p += 0.05 {
			q := b.Quantile(p)
			if !(q >= last) || q < chargeLeast || q > chargeMost {
				t.Fatalf("quantile %.2f is %v after %v", p, q, last)
			}
			last = q
		}
		if b.Low > 1e-6 && !(b.ErrorGivenLow.Mean < -ChargeBand) {
			t.Fatalf("%+v given low", b.ErrorGivenLow)
		}
	})
}

// The chance of a signature is that of all explanations that hold it.
func TestMarginalsAddUp(t *testing.T) {
	for _, short := range []float64{0, 0.07, 0.2} {
		d := Infer(shortBy(refrigerant.TXV, short))
		last := 1.0
		for _, m := range d.Marginals() {
			if math.Abs(m.Chance-d.Probability(m.Signature)) > 1e-9 || m.Chance > last {
				t.Errorf(
					"%s: %v after %v, %v as an explanation", m.Signature, m.Chance, last,
					d.Probability(m.Signature),
				)
			}
			if either := d.Any(m.Signature); math.Abs(either-m.Chance) > 1e-9 {
				t.Errorf("%s: any %v, %v", m.Signature, either, m.Chance)
			}
			last = m.Chance
			sum := 0.0
			for _, f := range m.Faults {
				sum += f.Chance
			}
			if math.Abs(sum-1) > 1e-9 {
				t.Errorf("%s: chances of faults add to %v", m.Signature, sum)
			}
		}
		both := d.Any(Undercharge, LowIndoorAir)
		if a, b := d.Probability(Undercharge), d.Probability(LowIndoorAir); both > a+b+1e-9 ||
			both < max(a, b)-1e-9 {
			t.Errorf("either %v, of %v and %v", both, a, b)
		}
	}
}

// A rule for machines of any make is no label: a sound machine that reads three kelvin below it
// is not called overfull.
func TestRulesOfAnyMakeWiden(t *testing.T) {
	e := shortBy(refrigerant.FixedRestrictor, 0)
	target := Expectation{Feature: signature.Superheat, Std: 0.5}
	sound := Infer(e)
	target.Value = float64(e.SuctionLine.Value-e.EvaporatingDew.Value) + 3
	e.Expected = []Expectation{target}
	stated := Infer(e)
	target.Rule = true
	e.Expected = []Expectation{target}
	ruled := Infer(e)
	if !(ruled.Charge.High < stated.Charge.High/2) || ruled.Charge.High > sound.Charge.High+0.1 {
		t.Errorf("high %.3f, by a label %.3f, by a rule %.3f",
			sound.Charge.High, stated.Charge.High, ruled.Charge.High)
	}
}
