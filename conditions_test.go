package satline

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/verify"
	"github.com/satline/satline/quantity"
)

// Each condition that rules the method out is found from the visit, named with
// its own words and source, and answered with what to do instead.
func TestConditionsForbidFromTheVisit(t *testing.T) {
	degrees := func(v float64) *temperatureReading { return Measured(quantity.Fahrenheit(v)) }
	for _, c := range []struct {
		code   string
		both   bool // for a valve as well as for a fixed restrictor
		change func(*Visit)
	}{
		{"outdoor-cold", true, func(v *Visit) { v.Readings.OutdoorDryBulb = degrees(54) }},
		{"outdoor-above-table", false, func(v *Visit) { v.Readings.OutdoorDryBulb = degrees(117) }},
		{"target-below-floor", false, func(v *Visit) {
			v.Readings.OutdoorDryBulb, v.Readings.ReturnWetBulb = degrees(95), degrees(60)
		}},
		{"return-cold", false, func(v *Visit) { v.Readings.ReturnDryBulb = degrees(68) }},
		{"wet-bulb-below-table", false, func(v *Visit) { v.Readings.ReturnWetBulb = degrees(49) }},
		{"wet-bulb-above-table", false, func(v *Visit) {
			v.Readings.ReturnDryBulb, v.Readings.ReturnWetBulb = degrees(82), degrees(77)
		}},
		{"airflow-low", false, func(v *Visit) { v.Readings.Airflow = Measured(quantity.CFM(700)) }},
		{"economizer-open", true, func(v *Visit) { v.Conditions.EconomizerOpen = true }},
		{"condenser-fan-cycling", true, func(v *Visit) { v.Conditions.CondenserFanCycling = true }},
		{"coil-wet", true, func(v *Visit) { v.Conditions.CoilWet = true }},
		{"run-short", true, func(v *Visit) { v.Conditions.Running = 14 * time.Minute }},
		{"doors-open", false, func(v *Visit) { v.Conditions.DoorsOpen = true }},
		{"panels-off", true, func(v *Visit) { v.Conditions.PanelsOff = true }},
		{"coil-iced", true, func(v *Visit) { v.Conditions.CoilIced = true }},
		{"heating", true, func(v *Visit) { v.Conditions.Heating = true }},
		{"circuit-opened", true, func(v *Visit) { v.Conditions.SealedSystemOpened = true }},
		{"just-moved", true, func(v *Visit) {
			v.Moves = []Move{{At: 20 * time.Minute, Added: quantity.Ounces(4)}}
			v.Log = []LogEntry{{At: 25 * time.Minute, Readings: v.Readings}}
		}},
	} {
		i := slices.IndexFunc(charge.Rules(), func(r charge.Rule) bool { return r.Code == c.code })
		if i < 0 {
			t.Fatalf("no rule %s", c.code)
		}
		rule := charge.Rules()[i]
		for _, metering := range []Metering{FixedRestrictor, TXV} {
			v := load(t, "sound-r410a-piston")
			v.Equipment.Metering = metering
			c.change(&v)
			a := assess(t, v)
			if metering == TXV && !c.both {
				if slices.Contains(rule.Forbids, charge.Subcooling) {
					t.Errorf("%s is said to leave subcooling alone and does not", c.code)
				}
				if slices.Contains(rule.Doubts, charge.Subcooling) && !stepped(a, rule.Do) {
					t.Errorf("%s makes subcooling less sure, and no step says what to do: %+v", c.code, a.Next)
				}
				continue
			}
			if a.Charge.Outcome != ChargeNotNow || a.Charge.Target != nil || a.Dose != nil {
				t.Errorf("%s, %v: %q, target %v, dose %v", c.code, metering, a.Charge.Outcome, a.Charge.Target, a.Dose)
			}
			if !slices.Contains(a.Charge.Instead, rule.Do) || !stepped(a, rule.Do) {
				t.Errorf("%s, %v: what to do instead is not told: %v", c.code, metering, a.Charge.Instead)
			}
			if a.Charge.Low != 0 || a.Charge.InBand != 0 || a.Charge.High != 0 {
				t.Errorf("%s, %v: chances of a charge that was not judged", c.code, metering)
			}
		}
	}
}

// stepped says that a step tells it, or that the first one secures the machine
// and another tells the rest.
func stepped(a Assessment, do string) bool {
	if first, rest, ok := strings.Cut(do, "; "); ok && a.Next[0].Do == closed(sentence(first)) {
		do = rest
	}
	return slices.ContainsFunc(a.Next, func(s Step) bool { return s.Do == closed(sentence(do)) })
}

// A dirty filter is changed before charge is moved by a reading that it spoils.
func TestDirtComesBeforeTheDose(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.SuctionPressure, v.Readings.LiquidPressure = Measured(quantity.PSIG(112)), Measured(quantity.PSIG(310))
	v.Readings.SuctionLine, v.Readings.LiquidLine = Measured(quantity.Fahrenheit(60)), Measured(quantity.Fahrenheit(95))
	v.Readings.SupplyDryBulb = Measured(quantity.Fahrenheit(58))
	if a := assess(t, v); a.Charge.Outcome != ChargeLow || a.Dose == nil {
		t.Fatalf("%q, dose %v: %+v", a.Charge.Outcome, a.Dose, a.Next)
	}
	v.Conditions.FilterDirty = true
	a := assess(t, v)
	if a.Dose != nil || !strings.Contains(a.Next[0].Do, "filter") {
		t.Errorf("with a dirty filter: dose %v, %+v", a.Dose, a.Next)
	}
}

// Common practice, no source: a split of 20 to 21 °F at a 62 °F wet bulb and a
// return of 73 to 74 °F is sound airflow, and holds up nothing.
func TestSoundSplitHoldsUpNothing(t *testing.T) {
	source := verify.Source{Cite: "a split of 20 to 21 °F at a 62 °F wet bulb is sound airflow", Kind: verify.CommonPractice}
	for _, dryBulb := range []float64{73, 74} {
		for _, split := range []float64{20, 21} {
			v := load(t, "sound-r410a-piston")
			v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(77))
			v.Readings.ReturnDryBulb = Measured(quantity.Fahrenheit(dryBulb))
			v.Readings.ReturnWetBulb = Measured(quantity.Fahrenheit(62))
			v.Readings.SupplyDryBulb = Measured(quantity.Fahrenheit(dryBulb - split))
			v.Readings.SuctionPressure, v.Readings.LiquidPressure = Measured(quantity.PSIG(112)), Measured(quantity.PSIG(285))
			v.Readings.SuctionLine, v.Readings.LiquidLine = Measured(quantity.Fahrenheit(66)), Measured(quantity.Fahrenheit(89))
			a := assess(t, v)
			if a.Air.Do != "" || a.Charge.Outcome != ChargeLow {
				t.Errorf("split %v of %v °F: air %q, charge %q: %v", split, dryBulb, a.Air.Do, a.Charge.Outcome, a.Charge.Reasons)
			}
			verify.Value(t, source, "target split in the assessment", "°F", split, a.Air.TargetSplit.Value.Fahrenheit(), 3)
		}
	}
}

// Common practice, no source: a return read as 62 °F with a supply of 53 °F is a
// wet bulb taken for a dry bulb until shown otherwise.
func TestReturnOf62WithSupplyOf53(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.ReturnDryBulb, v.Readings.ReturnWetBulb = Measured(quantity.Fahrenheit(62)), nil
	v.Readings.SupplyDryBulb = Measured(quantity.Fahrenheit(53))
	a := assess(t, v)
	if !slices.ContainsFunc(a.Doubts, func(d Doubt) bool {
		return slices.Contains(d.Fields, "returnDryBulb") && strings.Contains(d.Text+d.Mend, "wet bulb")
	}) {
		t.Errorf("nothing doubts it: %+v", a.Doubts)
	}
}

// The tolerance that a maker states goes with the maker's target, and not with a
// general one.
func TestLabelToleranceGoesWithItsTarget(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Label.Tolerance = quantity.FahrenheitDelta(2)
	if a := assess(t, v); a.Charge.Tolerance.Fahrenheit() < 4.9 {
		t.Errorf("the table's target within %v (%s)", a.Charge.Tolerance, a.Charge.ToleranceSource)
	}
	v.Equipment.Label.Superheat = new(quantity.FahrenheitDelta(12).PlusMinus(0))
	if a := assess(t, v); a.Charge.Tolerance.Fahrenheit() > 2.1 || a.Charge.ToleranceSource != "the unit's label" {
		t.Errorf("the label's target within %v (%s)", a.Charge.Tolerance, a.Charge.ToleranceSource)
	}
}

func TestCompressorCurrentAgainstItsLabel(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.CompressorCurrent = Measured(quantity.Amperes(18))
	if a := assess(t, v); hasRisk(a, "current-high") {
		t.Error("without a label's figure no current is too high")
	}
	v.Equipment.Label.RatedLoadCurrent = quantity.Amperes(14)
	a := assess(t, v)
	if !hasRisk(a, "current-high") {
		t.Errorf("18 A of 14 A: %+v", a.Risks)
	}
	// A charge in band is left alone, and the danger beside it is not forgotten.
	if last := a.Next[len(a.Next)-1].Do; a.Charge.Outcome != ChargeInBand || !strings.Contains(last, "voltage") {
		t.Errorf("%q, and the last step is %q", a.Charge.Outcome, last)
	}
}

// Capacity over power is the efficiency, and the parts of the capacity add up.
func TestEfficiencyFromTheVisit(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.SupplyWetBulb = Measured(quantity.Fahrenheit(54))
	v.Readings.Airflow = Measured(quantity.CFM(1200))
	v.Readings.Power = Measured(quantity.Kilowatts(3))
	d := assess(t, v).Derived
	if d.Efficiency == nil || d.SensibleHeatRatio == nil || d.Condensate == nil {
		t.Fatalf("%+v", d)
	}
	// Each is rounded by itself, the capacities to 0.1 W.
	if cop := float64(d.TotalCapacity.Value) / 3000; math.Abs(d.Efficiency.COP-cop) > 2e-5 {
		t.Errorf("COP %v, and watts over watts are %v", d.Efficiency.COP, cop)
	}
	if ratio := float64(d.SensibleCapacity.Value / d.TotalCapacity.Value); math.Abs(*d.SensibleHeatRatio-ratio) > 2e-5 {
		t.Errorf("sensible heat ratio %v, and sensible over total is %v", *d.SensibleHeatRatio, ratio)
	}
	if !(d.Efficiency.COPStd > 0 && d.SensibleHeatRatioStd > 0 && d.Condensate.Std > 0 && d.ReturnHumidityStd > 0 && d.CompressionRatioStd > 0) {
		t.Errorf("a derived value has no uncertainty: %+v", d)
	}
}

// The maker's approach outranks a general subcooling, and the assessment says
// which was used; on a fixed restrictor it stands in where superheat has no
// target, and a dose can follow from it.
func TestLabelApproach(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Label.Approach = new(quantity.FahrenheitDelta(9).PlusMinus(0))
	if a := assess(t, v); a.Charge.Method != "superheat" {
		t.Errorf("a fixed restrictor with a target is judged by %s", a.Charge.Method)
	}
	v.Readings.OutdoorDryBulb, v.Readings.ReturnWetBulb = Measured(quantity.Fahrenheit(90)), Measured(quantity.Fahrenheit(60))
	v.Readings.LiquidPressure, v.Readings.LiquidLine = Measured(quantity.PSIG(365)), Measured(quantity.Fahrenheit(99))
	a := assess(t, v)
	if a.Charge.Method != "approach" || a.Charge.TargetSource != "the unit's label" || a.Charge.Target == nil || a.Charge.Outcome == ChargeNotNow {
		t.Errorf("%s, %q, target from %q", a.Charge.Method, a.Charge.Outcome, a.Charge.TargetSource)
	}
	if !strings.Contains(a.Charge.Reasons[0], "below 5.0 °F") {
		t.Errorf("it is not told why superheat was passed over: %v", a.Charge.Reasons)
	}
	v.Equipment.Metering = TXV
	if a := assess(t, v); a.Charge.Method != "approach" || a.Charge.TargetSource != "the unit's label" {
		t.Errorf("a valve is judged by %s, target from %q", a.Charge.Method, a.Charge.TargetSource)
	}
	v.Equipment.Label.Subcooling = new(quantity.FahrenheitDelta(10).PlusMinus(0))
	if a := assess(t, v); a.Charge.Method != "subcooling" || a.Charge.TargetSource != "the unit's label" {
		t.Errorf("a valve with both is judged by %s, target from %q", a.Charge.Method, a.Charge.TargetSource)
	}
}
