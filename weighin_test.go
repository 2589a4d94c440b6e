package satline

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// coldDay is a split system that cannot be charged by its readings.
func coldDay(t *testing.T) Visit {
	v := load(t, "sound-r410a-piston")
	v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(48))
	v.Conditions.Mode, v.Equipment.Arrangement = Cooling, Split
	v.Equipment.Label.Charge = quantity.Pounds(7)
	v.Equipment.Label.FactoryLineSet = quantity.Feet(15)
	v.Equipment.LineSet = LineSet{Length: quantity.Feet(40), LiquidDiameter: quantity.Inches(0.375)}
	return v
}

// What cannot be judged by readings can be weighed in: label, and the liquid
// line beyond its allowance, by its content.
func TestWeighInOnAColdDay(t *testing.T) {
	a := assess(t, coldDay(t))
	if a.WeighIn == nil {
		t.Fatalf("%v", codes(a))
	}
	tube, err := charge.TubeOf(quantity.Inches(0.375), charge.Annealed)
	if err != nil {
		t.Fatal(err)
	}
	line, err := charge.LineCharge(
		mustFluid(t, "R-410A"), tube, quantity.Feet(25), quantity.Fahrenheit(95),
	)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs((a.WeighIn.Line-line).Ounces()) > 0.05 ||
		math.Abs((a.WeighIn.Total.Value-quantity.Pounds(7)-line).Ounces()) > 0.1 ||
		a.WeighIn.Total.Std <= 0 {
		t.Errorf("%+v, want %v for the line", a.WeighIn, line)
	}
}

func TestWeighInByTheLabelsAdder(t *testing.T) {
	v := coldDay(t)
	v.Equipment.Label.LineAdder = &charge.Adder{Mass: quantity.Ounces(0.6), Per: quantity.Feet(1)}
	v.Equipment.Accessories = []charge.Accessory{{Name: "filter drier", Mass: quantity.Ounces(4)}}
	w := assess(t, v).WeighIn
	if w == nil || w.Source.Standing != fact.Label ||
		math.Abs(w.Total.Value.Ounces()-112-15-4) > 0.1 {
		t.Errorf("%+v", w)
	}
}

func TestWeighInOfOneHousing(t *testing.T) {
	v := coldDay(t)
	v.Equipment.Arrangement, v.Equipment.LineSet = Package, LineSet{}
	if w := assess(t, v).WeighIn; w == nil || w.Line != 0 ||
		math.Abs(w.Total.Value.Pounds()-7) > 1e-3 {
		t.Errorf("%+v", w)
	}
}

// Without a line set no figure is made up: the step says what to measure.
func TestWeighInWantsTheLine(t *testing.T) {
	for name, change := range map[string]func(*Equipment){
		"no line":     func(e *Equipment) { e.LineSet = LineSet{} },
		"no diameter": func(e *Equipment) { e.LineSet.LiquidDiameter = 0 },
		"a diameter of no tube": func(e *Equipment) {
			e.LineSet.LiquidDiameter = quantity.Millimeters(11)
		},
		"arrangement not stated":  func(e *Equipment) { e.Arrangement, e.LineSet = 0, LineSet{} },
		"a label that says no kg": func(e *Equipment) { e.Label.Charge = 0 },
	} {
		v := coldDay(t)
		change(&v.Equipment)
		a := assess(t, v)
		if a.WeighIn != nil {
			t.Errorf("%s: %+v", name, a.WeighIn)
		}
		want := StepMeasureLine
		if v.Equipment.Label.Charge == 0 {
			want = StepReadLabel
		}
		if !slices.Contains(codes(a), want) {
			t.Errorf("%s: the plan is %v, without %s", name, codes(a), want)
		}
	}
}

// A machine that can be charged by its readings, or could be once a panel is
// back on, is not weighed in.
func TestNoWeighInWhereReadingsServe(t *testing.T) {
	v := coldDay(t)
	v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(85))
	if a := assess(t, v); a.WeighIn != nil {
		t.Errorf("%q and %+v", a.Charge.Outcome, a.WeighIn)
	}
	v.Conditions.PanelsOff = true
	if a := assess(t, v); a.WeighIn != nil {
		t.Errorf("%q and %+v", a.Charge.Outcome, a.WeighIn)
	}
}

func TestWeighInRefusesNonsense(t *testing.T) {
	for field, change := range map[string]func(*Equipment){
		"equipment.label.lineAdder": func(e *Equipment) {
			e.Label.LineAdder = &charge.Adder{Mass: quantity.Ounces(0.6)}
		},
		"equipment.label.tolerance": func(e *Equipment) {
			e.Label.Tolerance = quantity.KelvinDelta(math.NaN())
		},
		"equipment.accessories[0].mass": func(e *Equipment) {
			e.Accessories = []charge.Accessory{{Name: "drier", Mass: -1}}
		},
	} {
		v := coldDay(t)
		change(&v.Equipment)
		if _, err := Assess(v); err == nil || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

// What is missing, or cannot be, is refused before it is handed on.
func TestWeighedChargeRefuses(t *testing.T) {
	good := Label{Charge: quantity.Pounds(6)}
	line := LineSet{Length: quantity.Feet(40)}
	for _, c := range []struct {
		field string
		kind  ProblemKind
		of    Equipment
	}{
		{"equipment.refrigerant", FieldMissing, Equipment{Label: good}},
		{"equipment.refrigerant", FieldUnknown, Equipment{Refrigerant: "R-999", Label: good}},
		{"equipment.label.charge", FieldMissing, Equipment{Refrigerant: "R-22"}},
		{"equipment.label.charge", FieldOutOfRange,
			Equipment{Refrigerant: "R-22", Label: Label{Charge: quantity.Pounds(2000)}}},
		{"equipment.label.lineAdder.mass", FieldOutOfRange, Equipment{
			Refrigerant: "R-22",
			Label: Label{
				Charge:    quantity.Pounds(6),
				LineAdder: &charge.Adder{Mass: quantity.Mass(math.Inf(-1)), Per: quantity.Feet(1)},
			},
		}},
		{"equipment.lineSet.length", FieldMissing, Equipment{Refrigerant: "R-22", Label: good}},
		{"equipment.lineSet.liquidDiameter", FieldMissing,
			Equipment{Refrigerant: "R-22", Label: good, LineSet: line}},
	} {
		_, err := c.of.WeighedCharge()
		wrong, ok := errors.AsType[*VisitError](err)
		if !ok || wrong.Field != c.field || wrong.Kind != c.kind {
			t.Errorf("%s, %s: %+v", c.field, c.kind, err)
		}
	}
}

// What was weighed in is not emptied again because the head is still dangerous: something else
// raises it.
func TestWeighedChargeIsNotWeighedAgain(t *testing.T) {
	visit := Visit{
		Equipment: Equipment{
			Refrigerant: "R-454B", Metering: TXV, Arrangement: Split,
			NominalCapacity: quantity.Tons(1.5),
			Label: Label{
				Charge:     quantity.Ounces(51),
				Subcooling: new(quantity.FahrenheitDelta(8).PlusMinus(0)),
			},
		},
		Site: Site{Elevation: new(quantity.Feet(600))},
		Readings: Readings{
			SuctionPressure:  Measured(quantity.PSIG(128.5)),
			LiquidPressure:   Measured(quantity.PSIG(521)),
			SuctionLine:      Measured(quantity.Fahrenheit(67)),
			LiquidLine:       Measured(quantity.Fahrenheit(109)),
			DischargeLine:    Measured(quantity.Fahrenheit(231)),
			OutdoorDryBulb:   Measured(quantity.Fahrenheit(110)),
			CondenserLeaving: Measured(quantity.Fahrenheit(128)),
			ReturnDryBulb:    Measured(quantity.Fahrenheit(78)),
			ReturnWetBulb:    Measured(quantity.Fahrenheit(66)),
			SupplyDryBulb:    Measured(quantity.Fahrenheit(63)),
		},
		Checks: []Check{{Look: "outdoor-coil"}},
	}
	for _, weighed := range []bool{false, true} {
		visit.Conditions.ChargeWeighed = weighed
		a, err := Assess(visit)
		if err != nil {
			t.Fatal(err)
		}
		emptied := slices.ContainsFunc(
			a.Plan, func(s Step) bool { return s.Do.Code == StepEvacuate },
		)
		if emptied == weighed {
			t.Errorf("weighed %v: emptied %v, %v", weighed, emptied, a)
		}
	}
}
