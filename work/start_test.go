package work_test

import (
	"slices"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/airside/drain"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/work"
)

// startUp is the demonstration of a start-up with all that it needs.
func startUp(t *testing.T) work.Order {
	t.Helper()
	o, err := work.Decode(files(t)["commissioning"])
	if err != nil {
		t.Fatal(err)
	}
	o.Checklist = append(o.Checklist, work.Checked{Check: work.OwnerShown, Good: true})
	return o
}

// A start-up sheet is complete, or names what it misses: each part of it in turn.
func TestStartUpSheet(t *testing.T) {
	if r := judge(t, startUp(t)); !r.Complete {
		t.Fatalf("not complete: %v, %v", codes(r.Next), r.Headline)
	}
	for name, c := range map[string]struct {
		take func(*work.Order)
		want fact.Code
	}{
		"nitrogen": {func(o *work.Order) { o.Nitrogen = nil }, "next.nitrogen"},
		"joints":   {func(o *work.Order) { o.Joints = nil }, "next.joints"},
		"vacuum":   {func(o *work.Order) { o.Evacuations = nil }, "next.evacuate"},
		"charge":   {func(o *work.Order) { o.Cylinders = nil }, "next.weigh-in"},
		"label": {func(o *work.Order) { o.Machine.Equipment.Label.Charge = 0 },
			"next.label-charge"},
		"line": {func(o *work.Order) { o.Machine.Equipment.LineSet.Length = 0 },
			"next.measure-line"},
		"electrical": {func(o *work.Order) { o.After.Electrical = nil }, "next.electrical"},
		"air":        {func(o *work.Order) { o.Air = nil }, "next.air"},
		"a check":    {func(o *work.Order) { o.Checklist = o.Checklist[1:] }, "next.checklist"},
		"readings":   {func(o *work.Order) { o.After = nil }, "next.read-after"},
		"serial":     {func(o *work.Order) { o.Machine.Serial = "" }, "next.name-machine"},
	} {
		o := startUp(t)
		c.take(&o)
		if r := judge(t, o); r.Complete || !slices.Contains(codes(r.Next), c.want) {
			t.Errorf("without %s: complete %v, next %v", name, r.Complete, codes(r.Next))
		}
	}
}

func weak(microfarads float64) *electrical.Readings {
	return &electrical.Readings{
		Nameplate: electrical.Nameplate{Voltage: 208, HighVoltage: 230},
		Supply:    electrical.Supply{AtRest: []quantity.Uncertain[quantity.Voltage]{{Value: 238}}},
		Compressor: electrical.Motor{
			State: electrical.Hums,
			RunCapacitor: &electrical.Capacitor{
				Rated:    quantity.Microfarads(45),
				Measured: new(quantity.Microfarads(microfarads).PlusMinus(0)),
			},
		},
	}
}

// What the meter shows is the answer where the machine does not run; read again and right, it
// was found and put right.
func TestMeterInAJob(t *testing.T) {
	o := work.Order{
		Machine: split("R-410A"), Tasks: []work.Task{work.FindFault},
		Before: &satline.Visit{Electrical: weak(12)},
	}
	r := judge(t, o)
	if r.Complete || r.Headline.Code != "electrical.capacitor-weak" || len(r.Next) == 0 {
		t.Errorf("headline %v, next %v", r.Headline, codes(r.Next))
	}
	sound := weak(45)
	sound.Compressor.State = electrical.Runs
	o.After = &satline.Visit{Electrical: sound}
	if r = judge(t, o); !r.Complete || r.Headline.Code != "record.complete-found" {
		t.Errorf("headline %v, next %v", r.Headline, codes(r.Next))
	}
}

// Water: the drain that was clogged was found; what is wrong at the last look is still to do.
func TestWaterInAJob(t *testing.T) {
	o := work.Order{
		Machine: split("R-410A"), Tasks: []work.Task{work.FindFault}, Complaint: satline.WaterLeak,
		Water: []drain.Readings{{PanFull: drain.Yes}},
	}
	if r := judge(t, o); r.Complete || codes(r.Next)[0] != "drain.do.clear" ||
		r.Headline.Code != "drain.pan-full.yes" {
		t.Errorf("headline %v, next %v", r.Headline, codes(r.Next))
	}
	o.Water = append(o.Water, drain.Readings{
		PanFull: drain.No, Runs: drain.Yes, Trapped: drain.Yes, Iced: drain.No, PanSound: drain.Yes,
		Level: drain.Yes, Insulated: drain.Yes, Above: drain.No,
		Seal: new(quantity.Inches(3)), Negative: new(quantity.InchesWater(0.5)),
	})
	if r := judge(t, o); !r.Complete || r.Headline.Code != "record.complete-found" {
		t.Errorf("headline %v, next %v", r.Headline, codes(r.Next))
	}
}
