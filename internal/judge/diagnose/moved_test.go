package diagnose

import (
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Whoever adds refrigerant has read that it is short: a machine that still reads a little short
// after a tenth of its charge is not one that was full before.
func TestMovesWereAskedFor(t *testing.T) {
	sound := &signature.For(deviceOf(refrigerant.TXV)).Sound
	v := sound.Mean(sound.At(signature.Rated, signature.UsualFluid))
	v[signature.Evaporating] -= 0.8
	v[signature.CondensingOver] -= 1.5
	v[signature.Subcooling] -= 1.5
	e := reads(signature.Rated, v)
	e.Metering, e.Charge, e.Moved = refrigerant.TXV, quantity.Pounds(7), quantity.Ounces(11)
	d := Infer(e)
	over, short := d.Probability(Overcharge), d.Probability(Undercharge)
	if over > 0.2 || short < 0.4 {
		t.Errorf("overcharge %.2f, undercharge %.2f", over, short)
	}
}

// A reading a little off what this machine would read if it were charged right is a small error
// of the charge where the machine answers much to what is moved, and a large one where it
// answers little.
func TestResponseSizesTheError(t *testing.T) {
	e := shortBy(refrigerant.TXV, 0.1)
	e.Charge, e.Moved = quantity.Pounds(7), quantity.Ounces(8)
	believed := func(perCharge float64) float64 {
		e.Response = &Response{signature.Subcooling, Spread{perCharge, perCharge / 10}}
		d := Infer(e)
		return d.Charge.Error.Mean
	}
	steep, flat := believed(120), believed(20)
	if !(steep > flat+0.02) || flat > 0 {
		t.Errorf("%+.3f of a machine that answers much, %+.3f of one that answers little",
			steep, flat)
	}
}

// A machine that answers by half more than is usual is no reason to doubt a clamp.
func TestSteepMachinesAreNoLies(t *testing.T) {
	before, after := shortBy(refrigerant.TXV, 0.2), shortBy(refrigerant.TXV, 0.05)
	after.Charge = quantity.Pounds(8)
	after.Earlier = &Earlier{
		Input: before.Input, Done: []Action{{ChargeAdded, quantity.Pounds(0.8)}},
	}
	d := Infer(after)
	for _, lie := range WrongInstruments() {
		if p := d.Probability(lie.Signature); p > 0.1 {
			t.Errorf("%s %.2f", lie.Signature, p)
		}
	}
	if d.Charge.Error.Mean > 0 || d.Charge.Error.Mean < -0.12 {
		t.Errorf("charge %+.2f believed", d.Charge.Error.Mean)
	}
}

// What is likely to be right is left; what is likely to be off is moved by some ounces, by less
// where nobody knows what an ounce comes to.
func TestWhatIsLikelyRightIsLeft(t *testing.T) {
	about := func(at float64, ways []way) *ChargeBelief {
		b := &ChargeBelief{moved: 1, ways: ways}
		b.density.spreadAbout(at, 0.05, 1)
		b.sumUp()
		return b
	}
	if b := about(-0.03, byLabel); b.Call() != ChargeInBand {
		t.Errorf("low %.2f, in band %.2f: %v", b.Low, b.InBand, b.Call())
	}
	if b := about(-0.1, byLabel); b.Call() != ChargeLow {
		t.Errorf("low %.2f, in band %.2f: %v", b.Low, b.InBand, b.Call())
	}
	known, guessed := about(-0.12, byLabel), about(-0.12, byCapacity)
	if a, b := known.Dose(true), guessed.Dose(true); !(b < a) || b < leastDose*chargeStep {
		t.Errorf("%.2f of a charge that is known, %.2f of one that is not", a, b)
	}
}

// A fixed restrictor is called short from a smaller chance than a valve, and nothing is called by
// no belief at all.
func TestFixedRestrictorIsCalledShortSooner(t *testing.T) {
	const low = (callLowOfFixed + CallLow) / 2
	b := ChargeBelief{Low: low, InBand: 1 - low, fixed: true}
	if b.Call() != ChargeLow {
		t.Errorf("low %.2f behind a fixed restrictor: %v", b.Low, b.Call())
	}
	if b.fixed = false; b.Call() != ChargeOpen {
		t.Errorf("low %.2f behind a valve: %v", b.Low, b.Call())
	}
	if b = (ChargeBelief{}); b.Call() != ChargeOpen {
		t.Errorf("nothing believed: %v", b.Call())
	}
}
