package diagnose

import (
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
)

// Readings that looked like too little refrigerant do not move when some is
// added, but for the subcooling: the diagnosis is revised and says so.
func TestDiagnosisIsRevised(t *testing.T) {
	table := signature.For(signature.Fixed)
	at := func(code Code, level int) vector {
		at := table.Sound.At(signature.Rated, signature.UsualFluid)
		v := table.Sound.Mean(at)
		d := table.Cause(string(code))[level].Shift(at)
		for f := range v {
			v[f] += d[f]
		}
		return v
	}
	before := reads(signature.Rated, at(Undercharge, 3))
	now := at(Restriction, 2)
	e := reads(signature.Rated, now)
	e.Charge = quantity.Kilograms(3)
	e.Earlier = &Earlier{
		Input: before.Input,
		Done:  []Action{{ChargeAdded, quantity.Kilograms(0.5)}},
	}
	d := Infer(e)
	if d.Change == nil || d.Change.AsSaid || !d.Change.Revised {
		t.Fatalf("change %+v", d.Change)
	}
	if d.Change.Before.Code() != string(Undercharge) {
		t.Errorf("before it was %s", d.Change.Before.Code())
	}
	if d.Probability(Restriction) < 0.5 {
		t.Errorf("a restriction has %.2f", d.Probability(Restriction))
	}
}

// What was mended is gone from the explanation that follows.
func TestActionsMend(t *testing.T) {
	table := signature.For(signature.Fixed)
	at := table.Sound.At(signature.Rated, signature.UsualFluid)
	v := table.Sound.Mean(at)
	d := table.Cause(string(LowIndoorAir))[3].Shift(at)
	low := v
	for f := range v {
		low[f] += d[f]
	}
	before, e := reads(signature.Rated, low), reads(signature.Rated, v)
	e.Earlier = &Earlier{Input: before.Input, Done: []Action{{Kind: IndoorAirRestored}}}
	answer := Infer(e)
	first := &answer.Explanations[0]
	if first.Code() != "sound" || first.Probability < 0.5 ||
		!answer.Change.AsSaid || answer.Change.Revised ||
		answer.Change.Before.Code() != string(LowIndoorAir) {
		t.Errorf(
			"%s %.2f; before %s, as said %v, revised %v", first.Code(), first.Probability,
			answer.Change.Before.Code(), answer.Change.AsSaid, answer.Change.Revised,
		)
	}
}
