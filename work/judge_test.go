package work_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/work"
)

func split(fluid string) work.Machine {
	return work.Machine{
		Equipment: satline.Equipment{
			Refrigerant: fluid, Metering: satline.TXV, Arrangement: satline.Split,
			Label: satline.Label{
				Charge: quantity.Pounds(6), FactoryLineSet: quantity.Feet(15),
				LineAdder: &charge.Adder{Mass: quantity.Ounces(0.6), Per: quantity.Feet(1)},
			},
			LineSet: satline.LineSet{Length: quantity.Feet(40),
				LiquidDiameter: quantity.Inches(0.375)},
		},
		LowSideDesign: quantity.PSIG(250),
	}
}

func judge(t *testing.T, o work.Order) work.Record {
	t.Helper()
	r, err := work.Judge(o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func gauge(at time.Duration, psig float64) work.Reading {
	return work.Reading{At: at, Pressure: new(quantity.PSIG(psig).PlusMinus(0))}
}

func standing(r work.Record, code fact.Code) work.Progress {
	for _, x := range r.Results {
		if x.Says.Code == code {
			return x.Standing
		}
	}
	return ""
}

func codes(list []fact.Fact) []fact.Code {
	var out []fact.Code
	for _, f := range list {
		out = append(out, f.Code)
	}
	return out
}

// The level of 40 CFR 82.156, table 1, equipment made since November 15, 1993, relative to a
// standard atmosphere.
func TestRecoveryLevels(t *testing.T) {
	table := verify.Source{Cite: "40 CFR 82.156, Table 1", Kind: verify.Published}
	for _, c := range []struct {
		name, fluid string
		charge      float64 // lb
		want        float64 // inches of mercury below the atmosphere
	}{
		// 40 CFR 82.152 names R-410A among those of high pressure, R-23 above them.
		{"very high pressure, large", "R-23", 400, 0},
		{"R-410A, small", "R-410A", 20, 0}, {"R-410A, large", "R-410A", 400, 10},
		{"high pressure, small", "R-22", 20, 0}, {"high pressure, large", "R-22", 200, 10},
		{"medium pressure, small", "R-134a", 20, 10}, {"medium pressure, large", "R-134a", 200, 15},
	} {
		m := split(c.fluid)
		m.FullCharge = quantity.Pounds(c.charge)
		r := judge(t, work.Order{Machine: m, Tasks: []work.Task{work.OpenCircuit}})
		i := slices.Index(codes(r.Next), "next.recover")
		if i < 0 {
			t.Fatalf("%s: %v", c.name, codes(r.Next))
		}
		v, _ := r.Next[i].Value("to")
		inches := -float64(v.Of.(quantity.GaugePressure)) / float64(quantity.InchesHg(1))
		verify.Value(t, table, "recovery level, "+c.name, "inHg vacuum", c.want, inches, 0.05)
	}
}

// A small appliance sealed in the factory: 4 inches of vacuum, or 90 % of its charge. From
// memory of 40 CFR 82.156.
func TestSmallAppliance(t *testing.T) {
	m := work.Machine{Equipment: satline.Equipment{
		Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: satline.WallMounted,
		Label: satline.Label{Charge: quantity.Pounds(2)},
	}}
	o := work.Order{
		Machine: m, Tasks: []work.Task{work.OpenCircuit},
		Recovery: &work.RecoveryPart{Readings: []work.Reading{gauge(0, 100),
			gauge(time.Minute, 1)}},
		Cylinders: []work.Cylinder{{
			Name: "A", Refrigerant: "R-410A", Kind: work.Recovery,
			Before: quantity.Pounds(30), After: quantity.Pounds(31.85),
		}},
	}
	if s := standing(judge(t, o), "result.recovered-share"); s != work.Good {
		t.Errorf("92 %% came out: %q", s)
	}
	o.Cylinders[0].After = quantity.Pounds(31.5)
	if s := standing(judge(t, o), "result.recovery-short"); s != work.Bad {
		t.Errorf("75 %% came out: %q", s)
	}
	o.Recovery.Readings = append(o.Recovery.Readings, gauge(2*time.Minute, -2))
	if s := standing(judge(t, o), "result.recovered"); s != work.Good {
		t.Errorf("4 inches of vacuum: %q", s)
	}
}

// What boils out of the oil counts: the last reading, not the lowest.
func TestRecoveryComesBack(t *testing.T) {
	o := work.Order{Machine: split("R-410A"), Tasks: []work.Task{work.OpenCircuit}}
	o.Recovery = &work.RecoveryPart{Readings: []work.Reading{gauge(0, 100), gauge(5*time.Minute, 0),
		gauge(9*time.Minute, 8)}}
	r := judge(t, o)
	if s := standing(r, "result.recovery-came-back"); s != work.Bad ||
		codes(r.Next)[0] != "next.recover-again" {
		t.Errorf("%q, next %v", s, codes(r.Next))
	}
}

// The order of the work on a circuit: recover, mend, test, evacuate, weigh in, run.
func TestWorkStandsInOrder(t *testing.T) {
	r := judge(t, work.Order{Machine: split("R-410A"), Tasks: []work.Task{work.RepairLeak}})
	want := []fact.Code{
		"next.find-leak", "next.recover", "next.weigh-recovered", "next.mend-leak", "next.nitrogen",
		"next.evacuate", "next.weigh-in", "next.read-after",
	}
	if !slices.Equal(codes(r.Next), want) || r.Complete {
		t.Errorf("next %v", codes(r.Next))
	}
}

// One figure of label, line and parts.
func TestOneFigure(t *testing.T) {
	m := split("R-410A")
	m.Equipment.Accessories = []charge.Accessory{{Name: "drier", Mass: quantity.Ounces(3)}}
	r := judge(t, work.Order{Machine: m, Tasks: []work.Task{work.WeighIn}})
	// 6 lb, 25 ft beyond the factory's at 0.6 oz, and 3 oz.
	if got := r.Weigh.Total.Value.Ounces(); got < 113.99 || got > 114.01 {
		t.Errorf("to weigh in %v oz", got)
	}
	m.Precharged = true
	r = judge(t, work.Order{Machine: m, Tasks: []work.Task{work.Commission}})
	for _, f := range r.Next {
		if due, ok := f.Value("due"); ok && f.Code == "next.weigh-in" {
			if oz := due.Of.(quantity.Mass).Ounces(); oz < 17.99 || oz > 18.01 {
				t.Errorf("a precharged one is owed %v oz", oz)
			}
			return
		}
	}
	t.Errorf("nothing to weigh in: %v", codes(r.Next))
}

// A machine without a port on its liquid side is weighed in, and never asked for a liquid or
// discharge pressure, whatever was read of it.
func TestNoLiquidPort(t *testing.T) {
	m := split("R-32")
	m.Equipment.Metering = satline.EXV
	m.Equipment.LineSet.Device = charge.DeviceOutdoors
	for name, readings := range map[string]satline.Readings{
		"nothing": {},
		"low": {
			SuctionPressure: satline.Measured(quantity.PSIG(95)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(62)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(90)),
		},
		"air alone": {
			ReturnDryBulb: satline.Measured(quantity.Fahrenheit(78)),
			SupplyDryBulb: satline.Measured(quantity.Fahrenheit(57)),
		},
	} {
		for _, tasks := range [][]work.Task{
			{work.SetCharge}, {work.FindFault}, {work.FindFault, work.SetCharge}, {work.Maintain},
			{work.RepairLeak}, {work.Commission},
		} {
			for _, after := range []bool{false, true} {
				o := work.Order{Machine: m, Tasks: tasks,
					Before: &satline.Visit{Readings: readings}}
				if after {
					o.After = &satline.Visit{Readings: readings}
				}
				r := judge(t, o)
				for _, f := range r.Next {
					v, _ := f.Value("readings")
					terms, _ := v.Of.(fact.Terms)
					if slices.Contains(terms, "reading.liquidPressure") ||
						slices.Contains(terms, "reading.dischargePressure") {
						t.Errorf("%s, %v: asks %v", name, tasks, f)
					}
				}
				if !slices.Contains(codes(r.Next), "next.weigh-in") &&
					slices.Equal(tasks, []work.Task{work.SetCharge}) {
					t.Errorf("%s, %v: is not weighed in: %v", name, tasks, codes(r.Next))
				}
			}
		}
	}
}

// No test goes above the label, and a mixture, a filled disposable and an overfilled cylinder
// are dangers that come first.
func TestDangersComeFirst(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*work.Order)
		want   fact.Code
	}{
		"above the label": {func(o *work.Order) {
			o.Nitrogen = []work.NitrogenPart{{Readings: []work.Reading{gauge(0, 400),
				gauge(time.Hour, 400)}}}
		}, "result.pressure-over-limit"},
		"mixture": {func(o *work.Order) {
			o.Cylinders = []work.Cylinder{{Name: "A", Refrigerant: "R-22", Kind: work.Recovery,
				Before: 10, After: 12}}
		}, "cylinder.mixed"},
		"disposable": {func(o *work.Order) {
			o.Cylinders = []work.Cylinder{{Name: "A", Refrigerant: "R-410A", Kind: work.Disposable,
				Before: 10, After: 12}}
		}, "cylinder.disposable"},
		"overfilled": {func(o *work.Order) {
			o.Cylinders = []work.Cylinder{{Name: "A", Refrigerant: "R-410A",
				WaterCapacity: quantity.Pounds(26.2), Tare: quantity.Pounds(15),
				Kind: work.Recovery, After: quantity.Pounds(40)}}
		}, "cylinder.overfilled"},
		"test over": {func(o *work.Order) {
			o.Start = day(0)
			o.Cylinders = []work.Cylinder{{Name: "A", Refrigerant: "R-410A",
				WaterCapacity: quantity.Pounds(26.2), Tare: quantity.Pounds(15),
				Kind: work.Recovery, Tested: day(-365 * 6), After: quantity.Pounds(20)}}
		}, "cylinder.test-over"},
	} {
		o := work.Order{Machine: split("R-410A"), Tasks: []work.Task{work.OpenCircuit}}
		c.change(&o)
		r := judge(t, o)
		if len(r.Results) == 0 || r.Results[0].Says.Code != c.want ||
			r.Results[0].Standing != work.Dangerous || r.Headline.Code != c.want || r.Complete {
			t.Errorf("%s: headline %v, first of %v", name, r.Headline.Code, r.Results)
		}
	}
}

// It is charged over a vacuum that was not proved: not right, however well it was weighed.
func TestChargedUnproved(t *testing.T) {
	o := work.Order{Machine: split("R-410A"), Tasks: []work.Task{work.WeighIn}}
	o.Cylinders = []work.Cylinder{{Name: "A", Refrigerant: "R-410A", Before: quantity.Ounces(200),
		After: quantity.Ounces(200 - 111)}}
	r := judge(t, o)
	if standing(r, "result.charged-right") != work.Good ||
		standing(r, "result.charged-unproved") != work.Bad || r.Complete {
		t.Errorf("%v", r.Results)
	}
}

// A pressure test without the temperature of the gas tells nothing.
func TestNitrogenNeedsTheGas(t *testing.T) {
	o := work.Order{Machine: split("R-410A"), Tasks: []work.Task{work.OpenCircuit}}
	o.Nitrogen = []work.NitrogenPart{{Readings: []work.Reading{gauge(0, 240),
		gauge(time.Hour, 236)}}}
	if s := standing(judge(t, o), "result.pressure-no-gas"); s != work.Open {
		t.Errorf("%q", s)
	}
}

// What only shows as a part is judged is told by Validate too: a test under nitrogen that starts in
// a vacuum.
func TestValidateJudgesParts(t *testing.T) {
	o := work.Order{Machine: split("R-410A"), Tasks: []work.Task{work.OpenCircuit}}
	start, end := gauge(0, -2), gauge(time.Hour, 236)
	gas := quantity.Fahrenheit(70).PlusMinus(1)
	start.Gas, end.Gas = &gas, &gas
	o.Nitrogen = []work.NitrogenPart{{Readings: []work.Reading{start, end}}}
	_, err := work.Judge(o)
	want, ok := errors.AsType[*work.Problem](err)
	if got := o.Validate(); !ok || len(got) != 1 || got[0].Field != want.Field ||
		got[0].Field != "nitrogen[0]" {
		t.Errorf("Validate finds %v, Judge %v", got, err)
	}
}

// All that is wrong is told at once, with its path.
func TestValidateTellsAll(t *testing.T) {
	o := work.Order{
		Machine:     work.Machine{Equipment: satline.Equipment{Refrigerant: "R-999"}},
		Tasks:       []work.Task{work.Maintain, work.Maintain},
		Evacuations: []work.EvacuationPart{{}},
		Recovery:    &work.RecoveryPart{Readings: []work.Reading{{At: -1}}},
		Joints:      []work.JointPart{{}},
		Cylinders:   []work.Cylinder{{Name: "A"}, {Name: "A", Before: -1}},
		Checklist:   []work.Checked{{Check: "look twice"}},
		Before: &satline.Visit{
			Readings: satline.Readings{SuctionLine: satline.Measured(quantity.Fahrenheit(900))},
		},
		Start: day(2), End: day(1),
	}
	var fields []string
	for _, p := range o.Validate() {
		fields = append(fields, p.Field)
		if strings.Contains(p.Error(), "\n") || p.Problem == "" {
			t.Errorf("%q", p.Error())
		}
	}
	for _, want := range []string{
		"tasks[1]", "machine.equipment.refrigerant", "evacuations[0].decay",
		"recovery.readings[0].at", "recovery.readings[0].pressure", "joints[0].applied",
		"joints[0].perYear", "cylinders[1].before", "checklist[0].check",
		"before.readings.suctionLine", "end",
	} {
		if !slices.Contains(fields, want) {
			t.Errorf("nothing is said of %s: %v", want, fields)
		}
	}
	if _, err := work.Judge(o); err == nil {
		t.Error("it is judged")
	}
}

// Years are compared in one weather: a machine that reads as its model does has not moved, and
// a condenser that got worse has.
// A machine that loses more than the rule allows is searched for its leak before what else the
// last job left open, once, and no more when that job has mended it.
func TestLeakRateAsksForTheLeak(t *testing.T) {
	asked := func(mended bool) (times int) {
		orders, err := work.DecodeHistory(files(t)["leak-log"])
		if err != nil {
			t.Fatal(err)
		}
		if mended {
			repair, err := work.Decode(files(t)["leak-repair"])
			if err != nil {
				t.Fatal(err)
			}
			machine := orders[0].Machine
			machine.Serial, machine.Equipment = "", repair.Machine.Equipment
			for i := range orders {
				orders[i].Machine.Serial = ""
			}
			repair.Machine, repair.Start = machine, orders[len(orders)-1].Start.AddDate(0, 0, 1)
			repair.End = repair.Start.Add(8 * time.Hour)
			orders = append(orders, repair)
		}
		h, err := work.Compare(orders)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range h.Next {
			if f.Code == "next.find-leak" {
				times++
			}
		}
		return times
	}
	if n := asked(false); n != 1 {
		t.Errorf("over the threshold the leak is asked for %d times", n)
	}
	if n := asked(true); n != 0 {
		t.Errorf("mended, it is asked for %d times", n)
	}
}

func TestCompare(t *testing.T) {
	orders, err := work.DecodeHistory(files(t)["years"])
	if err != nil {
		t.Fatal(err)
	}
	h, err := work.Compare(orders)
	if err != nil {
		t.Fatal(err)
	}
	moved := map[string]bool{}
	for _, d := range h.Drifts {
		moved[d.Name] = d.Moved
	}
	if !moved["derived.condensingBubble"] || moved["derived.superheat"] || h.Why != nil {
		t.Errorf("moved: %v, %v", moved, h.Why)
	}
	orders[1].Before = orders[0].Before
	if h, err = work.Compare(orders); err != nil || slices.ContainsFunc(h.Drifts,
		func(d work.Drift) bool { return d.Moved }) || len(h.Drifts) < 4 {
		t.Errorf("the same readings: %+v, %v", h.Drifts, err)
	}
	orders[1].Machine.Serial = "another"
	if _, err = work.Compare(orders); err == nil {
		t.Error("two machines are compared")
	}
	if _, err = work.Compare(nil); err == nil {
		t.Error("a history of nothing")
	}
}

// A precharged machine on a line shorter than its label allows for holds too much: some comes
// out, and that is not counted as a leak.
func TestShortLine(t *testing.T) {
	m := split("R-410A")
	m.Precharged, m.Equipment.LineSet.Length = true, quantity.Feet(10) // 5 ft less, at 0.6 oz
	o := work.Order{Machine: m, Tasks: []work.Task{work.Commission}}
	if r := judge(t, o); !slices.Contains(codes(r.Next), "next.take-out") {
		t.Errorf("next %v", codes(r.Next))
	}
	o.Cylinders = []work.Cylinder{{
		Name: "A", Refrigerant: "R-410A", Kind: work.Recovery,
		Before: quantity.Pounds(30), After: quantity.Pounds(30) + quantity.Ounces(3),
	}}
	r := judge(t, o)
	if standing(r, "result.taken-out") != work.Good || standing(r, "result.recovered-less") != "" {
		t.Errorf("%v", r.Results)
	}
}
