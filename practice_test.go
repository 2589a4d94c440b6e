package satline

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/quantity"
)

func told(a Assessment, words string) bool {
	return slices.ContainsFunc(a.Next, func(s Step) bool { return strings.Contains(s.Do, words) })
}

// A charge in band is no answer where the machine is sick elsewhere.
func TestInBandDoesNotHideTheCause(t *testing.T) {
	a := assess(t, load(t, "outdoor-fan-stopped")) // condensing 54 °F over the outdoor air
	if a.Charge.Outcome != ChargeInBand || !strings.Contains(a.Headline, "outdoor coil") || !strings.Contains(a.Next[0].Do, "outdoor fan") || told(a, "write the readings down") {
		t.Errorf("%s\n%+v", a.Headline, a.Next)
	}
	a = assess(t, load(t, "outdoor-coil-dirty"))
	if !strings.Contains(a.Headline, "irty or blocked outdoor coil") || !told(a, "lean the outdoor coil") {
		t.Errorf("a dirty coil is not in the headline: %s", a.Headline)
	}
	a = assess(t, load(t, "water-leak"))
	if !told(a, "condensate drain") {
		t.Errorf("the customer asks about water, and no step answers: %+v", a.Next)
	}
}

// Readings that still move are no ground for a repair, nor for another reading.
func TestNothingIsMendedByReadingsThatMove(t *testing.T) {
	a := assess(t, load(t, "superheat-drifting"))
	if a.Charge.Outcome != ChargeNotNow || len(a.Next) != 1 || !strings.HasPrefix(a.Next[0].Do, "Wait until it has settled") || a.Settle != nil {
		t.Errorf("%s\n%+v\n%+v", a.Headline, a.Next, a.Settle)
	}
}

// A machine that has only started says nothing of its air or of ice.
func TestStartSaysNothingOfAirOrIce(t *testing.T) {
	a := assess(t, load(t, "started-five-minutes"))
	if a.Air != nil || a.Freeze != nil || len(a.Risks) > 0 || len(a.Next) != 1 {
		t.Errorf("air %+v, freezing %+v, risks %+v, steps %+v", a.Air, a.Freeze, a.Risks, a.Next)
	}
}

// Each danger is told, and what to do about the gravest stands once among the steps.
func TestStepsDoNotListEveryDanger(t *testing.T) {
	a := assess(t, load(t, "service-valve-shut"))
	if len(a.Risks) < 3 || a.Next[0].Do != "Stop the machine." || !told(a, "Open closed valves") || told(a, "Find what holds the suction") || told(a, "Check airflow") {
		t.Errorf("%+v", a.Next)
	}
}

// What the technician sees explains a reading: it is not doubted among the steps again.
func TestSeenIsNotDoubted(t *testing.T) {
	for _, name := range []string{"outdoor-coil-wet", "coil-iced-unexplained"} {
		a := assess(t, load(t, name))
		if len(a.Doubts) == 0 || told(a, "in the sun") {
			t.Errorf("%s: doubts %+v, steps %+v", name, a.Doubts, a.Next)
		}
	}
}

// What helps against ice, and why it froze, must not contradict what was found.
func TestFreezingDoesNotContradictItself(t *testing.T) {
	a := assess(t, load(t, "coil-iced-unexplained"))
	if len(a.Freeze.Why) != 1 || !strings.Contains(a.Freeze.Why[0], "readings taken on ice") {
		t.Errorf("%q", a.Freeze.Why)
	}
	a = assess(t, load(t, "nearly-empty")) // no change of air or weather lifts its coil above freezing
	if len(a.Freeze.Would) != 1 || len(a.Freeze.Instead) > 0 {
		t.Errorf("%q, then %q", a.Freeze.Would, a.Freeze.Instead)
	}
	a = assess(t, load(t, "cool-night"))
	rule := 0
	for _, s := range append(slices.Clone(a.Freeze.Reasons), a.Freeze.Why...) {
		rule += strings.Count(s, "the rule that")
	}
	if rule != 1 {
		t.Errorf("the rule of ice is spelled out %d times: %q, %q", rule, a.Freeze.Reasons, a.Freeze.Why)
	}
}

// A supply that may be a wet bulb is not taken for a lack of air.
func TestDoubtedSupplyIsNoLackOfAir(t *testing.T) {
	a := assess(t, load(t, "supply-wet-bulb-as-dry-bulb"))
	if a.Air == nil || strings.Contains(strings.Join(a.Air.Reasons, " "), "there is too little of it") || !strings.Contains(a.Air.Reasons[1], "may be a wet bulb") {
		t.Errorf("%+v", a.Air)
	}
}

// Outside the table of splits the technician reads their own units, and what to do.
func TestNoTargetSplitIsSaidInTheUnitsOfTheVisit(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.ReturnDryBulb, v.Readings.ReturnWetBulb = Measured(quantity.Fahrenheit(66)), Measured(quantity.Fahrenheit(56))
	v.Readings.SupplyDryBulb = Measured(quantity.Fahrenheit(49))
	a := assess(t, v)
	if a.Air == nil || strings.Contains(a.Air.Reasons[0], "°C") || !strings.Contains(a.Air.Reasons[0], "66.0 °F") || !strings.Contains(a.Air.Reasons[0], "measure the airflow itself") {
		t.Errorf("%+v", a.Air)
	}
}

// A long line set that was never charged for looks like a leak; a leak of a refrigerant
// that burns begins with the air of the room.
func TestLeakStep(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.SuctionPressure, v.Readings.LiquidPressure = Measured(quantity.PSIG(112)), Measured(quantity.PSIG(310))
	v.Readings.SuctionLine, v.Readings.LiquidLine = Measured(quantity.Fahrenheit(60)), Measured(quantity.Fahrenheit(95))
	v.Readings.SupplyDryBulb = Measured(quantity.Fahrenheit(58))
	leak := func() Step {
		a := assess(t, v)
		i := slices.IndexFunc(a.Next, func(s Step) bool { return strings.Contains(s.Do, "ind and mend the leak") })
		if i < 0 {
			t.Fatalf("%s\n%+v", a.Headline, a.Next)
		}
		if a.WeighIn != nil {
			t.Errorf("a weigh-in beside a dose: %+v", a.WeighIn)
		}
		return a.Next[i]
	}
	if s := leak(); strings.Contains(s.Why, "line set") || strings.Contains(s.Do, "flames") {
		t.Errorf("%+v", s)
	}
	v.Equipment.Label.Charge, v.Equipment.Label.FactoryLineSet = quantity.Pounds(7), quantity.Feet(15)
	v.Equipment.LineSet = LineSet{Length: quantity.Feet(70), LiquidDiameter: quantity.Inches(0.375)}
	if s := leak(); !strings.Contains(s.Why, "a line set 55") || !strings.Contains(s.Why, "takes 29 oz more") {
		t.Errorf("%+v", s)
	}
	burns := load(t, "r290-cool-discharge")
	burns.Readings.Airflow = nil
	for _, s := range assess(t, burns).Next {
		if strings.Contains(s.Do, "mend the leak") && !strings.Contains(s.Do, "flames") {
			t.Errorf("%+v", s)
		}
	}
}

// What follows from a reading that cannot be is marked as no better than it.
func TestDerivedFromDoubtedReadingsSaysSo(t *testing.T) {
	sound := load(t, "sound-r410a-piston")
	swapped := sound
	swapped.Readings.SuctionPressure, swapped.Readings.LiquidPressure = sound.Readings.LiquidPressure, sound.Readings.SuctionPressure
	for _, row := range assess(t, swapped).derivedBlock().table.rows {
		marked := strings.HasSuffix(row[1], ", of impossible readings")
		if rests := slices.Contains([]string{"superheat", "subcooling", "compression ratio"}, row[0]); rests && !marked {
			t.Errorf("%q stands unmarked", row)
		}
		if row[0] == "temperature split" && marked {
			t.Errorf("%q is marked", row)
		}
	}
	a := assess(t, sound)
	for _, row := range a.derivedBlock().table.rows {
		if strings.Contains(row[1], "readings") {
			t.Errorf("%q is marked", row)
		}
	}
	for _, x := range a.Derived.Values(quantity.IP) {
		if restsOn[x.Name] == nil {
			t.Errorf("nothing says what %q rests on", x.Name)
		}
	}
}

// The owner is not told that the charge is right beside a machine that is not, nor a
// cause by readings that still move.
func TestOwnerIsNotMisled(t *testing.T) {
	owner := func(name string) string {
		var text strings.Builder
		if err := assess(t, load(t, name)).WriteText(&text, Owner); err != nil {
			t.Fatal(err)
		}
		return strings.Join(strings.Fields(text.String()), " ")
	}
	if s := owner("outdoor-fan-stopped"); strings.Contains(s, "refrigerant in the machine is right") || !strings.Contains(s, "reads right as the machine runs now") {
		t.Error(s)
	}
	if s := owner("superheat-drifting"); strings.Contains(s, "Likely") {
		t.Error(s)
	}
	if s := owner("nearly-empty"); !strings.Contains(s, "The cooling stays off") || strings.Contains(s, "thermostat help") || strings.Contains(s, "a little is added") || !strings.Contains(s, "none is added or taken out before that") {
		t.Error(s)
	}
	if s := owner("sound-r410a-piston"); strings.Contains(s, "stays off") {
		t.Error(s)
	}
	if s := owner("coil-iced-filter-dirty"); strings.Count(s, "first") > 1 {
		t.Error(s)
	}
}

// An electronic valve has sensors and a motor; the words of the other kind send the
// technician looking for a bulb that is not there.
func TestElectronicValveHasNoBulb(t *testing.T) {
	v := load(t, "electronic-valve-overcharged")
	var text strings.Builder
	if err := assess(t, v).WriteText(&text, File); err != nil {
		t.Fatal(err)
	}
	if s := strings.Join(strings.Fields(text.String()), " "); strings.Contains(s, "TXV") || strings.Contains(s, "bulb loose") || strings.Contains(s, "the bulb") || !strings.Contains(s, "electronic expansion valve") {
		t.Error(s)
	}
	hunts := load(t, "valve-hunting")
	for i := range hunts.Log { // mild enough not to be a danger
		hunts.Log[i].SuctionLine = Measured(hunts.Log[i].SuctionLine.Value + quantity.Temperature(5))
	}
	for metering, want := range map[Metering]string{TXV: "its bulb", EXV: "its sensors"} {
		hunts.Equipment.Metering = metering
		if a := assess(t, hunts); !told(a, want) {
			t.Errorf("%v: %+v", metering, a.Next)
		}
	}
}

// A moment after refrigerant was moved the machine has not answered yet.
func TestJustMovedIsNoAnswer(t *testing.T) {
	if a := assess(t, load(t, "just-moved")); a.Change != nil || a.Charge.Outcome != ChargeNotNow {
		t.Errorf("%+v, %q", a.Change, a.Charge.Outcome)
	}
}

// Panels go on before anybody waits for the building to warm up.
func TestPanelsFirst(t *testing.T) {
	a := assess(t, load(t, "panels-off"))
	if !strings.HasPrefix(a.Next[0].Do, "Put the panels on") || !told(a, "Let the building warm up") {
		t.Errorf("%+v", a.Next)
	}
}

// A control that cycles the outdoor fan is why the head is high, and is not a fault.
func TestFanControlIsNoFault(t *testing.T) {
	a := assess(t, load(t, "fan-cycling"))
	if !strings.Contains(a.Headline, "cycles the condenser fan") || len(a.Findings) > 0 || told(a, "outdoor fan runs") {
		t.Errorf("%s\n%+v\n%+v", a.Headline, a.Findings, a.Next)
	}
}

// Whoever is told to add refrigerant is told how.
func TestDoseComesWithItsCautions(t *testing.T) {
	a := assess(t, load(t, "r407c-leaked"))
	if a.Dose == nil {
		t.Fatal(a.Headline)
	}
	text := strings.Join(a.Cautions, "\n")
	for _, want := range []string{"only throttled", "as liquid", "never top up with another"} {
		if strings.Count(text, want) != 1 {
			t.Errorf("%q stands %d times in %s", want, strings.Count(text, want), text)
		}
	}
	if !slices.ContainsFunc(a.Next, func(s Step) bool { return strings.Contains(s.Why, "weigh in new") }) {
		t.Errorf("a blend with much glide that has leaked is topped up without a word: %+v", a.Next)
	}
	if text := strings.Join(assess(t, load(t, "sound-r410a-piston")).Cautions, "\n"); strings.Contains(text, "throttled") {
		t.Errorf("nothing is added: %s", text)
	}
}

// What is missing is read before anything is taken apart, and air in the circuit is
// drawn out before anything is judged.
func TestNothingIsMendedByHalfTheReadings(t *testing.T) {
	v := load(t, "liquid-line-restricted")
	v.Readings.LiquidPressure, v.Readings.LiquidLine = nil, nil
	v.Readings.SuctionPressure = Measured(quantity.PSIG(105)) // R-410A, 34 °F
	if a := assess(t, v); !strings.HasPrefix(a.Next[0].Do, "Read the liquid pressure") || told(a, "drier") {
		t.Errorf("%+v", a.Next)
	}
	v.Equipment.Metering = FixedRestrictor
	if a := assess(t, v); !strings.HasPrefix(a.Next[0].Do, "Read the liquid pressure") || told(a, "drier") {
		t.Errorf("%+v", a.Next)
	}
	v = load(t, "electronic-valve-overcharged")
	v.Conditions.SealedSystemOpened = true
	if a := assess(t, v); !strings.HasPrefix(a.Next[0].Do, "Recover, evacuate") || told(a, "Prove the") {
		t.Errorf("%+v", a.Next)
	}
}

// A reason that a step before has given is not printed again, though each step keeps its own.
func TestReasonsArePrintedOnce(t *testing.T) {
	for _, name := range []string{"supply-wet-bulb-as-dry-bulb", "coil-iced-filter-dirty", "gauge-off-zero-at-altitude", "dirty-filter-low-superheat"} {
		a := assess(t, load(t, name))
		var said []string
		for _, it := range a.nextBlock().items {
			for _, why := range it.below {
				if slices.Contains(said, why) {
					t.Errorf("%s: %q twice", name, why)
				}
				said = append(said, why)
			}
		}
		for _, s := range a.Next {
			if s.Why == "" {
				t.Errorf("%s: %q has no reason", name, s.Do)
			}
		}
		if len(a.Risks) > 0 && a.Risks[0].Code == "floodback" {
			for _, it := range a.verdictBlock().items {
				if strings.Contains(it.text, "liquid may be coming back") {
					t.Errorf("%s: the danger stands in the verdict as well", name)
				}
			}
		}
	}
}

// A coil that boils its refrigerant at 24 °F ices, whatever its mean surface; the owner
// is told.
func TestChanceOfIceHoldsToTheRule(t *testing.T) {
	a := assess(t, load(t, "liquid-line-restricted"))
	var text strings.Builder
	if err := a.WriteText(&text, Owner); err != nil {
		t.Fatal(err)
	}
	if a.Freeze.Chance < 0.9 || !strings.Contains(text.String(), "collect ice") {
		t.Errorf("%v, %s", a.Freeze.Chance, text.String())
	}
	if a := assess(t, load(t, "sound-r410a-piston")); a.Freeze.Chance > 0.01 {
		t.Errorf("a sound coil ices with %v", a.Freeze.Chance)
	}
}

// Doubts that are each too small for a step hold the dose back together.
func TestSmallDoubtsHoldTheDoseBack(t *testing.T) {
	j, err := prepare(load(t, "sound-r410a-piston"))
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(j.takeSettled(), j.derive(), j.judgeCharge()); err != nil {
		t.Fatal(err)
	}
	j.charge.Outcome, j.readings.Airflow = ChargeLow, Measured(quantity.CFM(1200))
	d := diagnose.Diagnosis{Verdict: diagnose.Faulty, Explanations: []diagnose.Explanation{{Causes: []diagnose.Cause{{Signature: diagnose.Undercharge}}, Probability: 0.8}}}
	j.diagnosis = &d
	if steps := j.next(); j.nextDose == nil {
		t.Fatalf("nothing holds it back: %+v", steps)
	}
	j.nextDose = nil
	d.Hold = "an instrument is in doubt"
	for _, settle := range []*Measurement{nil, {Take: "the zero of both gauges", Why: "it tells"}} {
		j.settle = settle
		steps := j.next()
		if len(steps) != 2 || j.nextDose != nil || !strings.HasPrefix(steps[0].Do, "Take ") || !strings.HasPrefix(steps[1].Do, "Leave the charge alone") || steps[1].Why != d.Hold {
			t.Errorf("%+v", steps)
		}
	}
}

// The mean of a hunting superheat stands once, among what follows from the readings.
func TestHuntingHasOneMean(t *testing.T) {
	a := assess(t, load(t, "valve-hunting"))
	if a.Valve == nil || a.Derived.Superheat == nil || strings.Contains(a.Valve.Text, "mean") {
		t.Errorf("%+v beside %v", a.Valve, a.Derived.Superheat)
	}
}
