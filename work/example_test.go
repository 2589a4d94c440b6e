package work_test

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/report"
	"github.com/satline/satline/work"
)

// A job as a program sends it: a vacuum that does not hold.
const opened = `{
	"title": "Circuit opened for a drier (invented)",
	"machine": {
		"equipment": {
			"refrigerant": "R-410A", "metering": "TXV", "arrangement": "package",
			"label": {"charge": "6 lb"}
		},
		"lowSideDesign": "250 psig"
	},
	"tasks": ["open the circuit"],
	"nitrogen": [{"readings": [
		{"at": "0m", "pressure": "240 psig", "gas": "80 °F"},
		{"at": "70m", "pressure": "239 psig", "gas": "78 °F"}
	]}],
	"evacuations": [{"decay": [
		{"at": "0m", "vacuum": "300 micron"}, {"at": "2m", "vacuum": "500 micron"},
		{"at": "4m", "vacuum": "700 micron"}, {"at": "6m", "vacuum": "900 micron"},
		{"at": "8m", "vacuum": "1100 micron"}, {"at": "10m", "vacuum": "1300 micron"},
		{"at": "12m", "vacuum": "1500 micron"}, {"at": "14m", "vacuum": "1700 micron"}
	]}]
}`

func ExampleJudge() {
	o, err := work.Decode([]byte(opened))
	if err != nil {
		panic(err)
	}
	r, err := work.Judge(o)
	if err != nil {
		panic(err)
	}
	fmt.Println(r.Headline.Code, r.Complete)
	for _, f := range r.Next {
		fmt.Println(f.Text)
	}
	// Output:
	// result.decay-leak false
	// Check hoses, valves and gauge; pressure-test again; then evacuate again.
	// Weigh in 6 lb 0.0 oz: label 6 lb 0.0 oz.
	// Run it and read pressures, line and air temperatures again.
}

func ExampleDecode() {
	_, err := work.Decode([]byte(`{"tasks": ["maintane"]}`))
	fmt.Println(err)
	// Output:
	// order: tasks[0] (line 1): task "maintane" is not known; write one of "find the fault", "set the charge", "commission", "repair a leak", "open the circuit", "maintain", "weigh in", "check a cylinder"
}

func ExampleRead() {
	o, err := work.Read(strings.NewReader(opened))
	fmt.Println(o.Tasks, err)
	// Output: [open the circuit] <nil>
}

// Everything that keeps an order from being judged is told at once.
func ExampleOrder_Validate() {
	for _, p := range (work.Order{Tasks: []work.Task{work.Maintain},
		Leaks: []work.Leak{{}}}).Validate() {
		fmt.Println(p.Field, "-", p.Kind)
	}
	// Output:
	// machine.equipment.refrigerant - missing
	// leaks[0].where - missing
}

func ExampleRecord_WriteText() {
	r, err := work.Judge(work.Order{
		Title: "Recovery cylinder (invented)", Tasks: []work.Task{work.CheckCylinder},
		Cylinders: []work.Cylinder{{Name: "REC-1", Refrigerant: "R-410A"}},
	})
	if err != nil {
		panic(err)
	}
	if err := r.WriteText(os.Stdout, report.Technician); err != nil {
		panic(err)
	}
	// Output:
	// Recovery cylinder (invented)
	// Job: check a cylinder
	//
	// ANSWER
	// Not finished: 1 thing is still to do.
	//
	// DO THIS
	// 1. Read on the collar WC and TW, weigh the cylinder, note what is in it.
	//
	// BE CAREFUL
	// - The unit's label and its maker's chart come before every general rule; local
	//   codes and licensed practice apply.
	// - Refrigerant is under pressure and its liquid freezes skin and eyes: gloves,
	//   glasses, open valves slowly.
	// - Vapor collects low and displaces air: ventilate pits and closets.
	// - Never vent it; recover it as the law asks.
	// - Weigh the cylinder; never heat it or fill it above 80 %; one refrigerant to
	//   a cylinder.
}

// The round of the yearly service.
func ExampleChecklist() {
	fmt.Println(work.Checklist(work.Maintain)[0])
	// Output: filter-clean
}

// A rooftop unit of 100 lb took 10 lb, 180 days after it was last charged.
func ExampleLeakRate() {
	may := time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)
	rate, err := work.LeakRate(quantity.Pounds(100), []work.Addition{
		{On: may.AddDate(0, 0, -180), Mass: quantity.Pounds(4)},
		{On: may, Mass: quantity.Pounds(10)},
	}, work.Annualizing)
	fmt.Println(rate, err)
	// Output:
	// 20 % <nil>
}

func ExampleJudgeLeak() {
	m := work.Machine{
		Equipment: satline.Equipment{Refrigerant: "R-410A"}, Use: work.ComfortCooling,
	}
	v, err := work.JudgeLeak(m, quantity.Pounds(100), []work.Addition{
		{On: time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC), Mass: quantity.Pounds(12)},
	}, work.RollingAverage)
	fmt.Println(v.Applies, v.Over, err)
	fmt.Println(v.Source)
	// Output:
	// true true <nil>
	// 40 CFR 84.106, from January 1, 2026
}

// The same machine, a year apart.
func ExampleCompare() {
	text, err := os.ReadFile("../examples/visit/jobs/years.json")
	if err != nil {
		panic(err)
	}
	orders, err := work.DecodeHistory(text)
	if err != nil {
		panic(err)
	}
	h, err := work.Compare(orders)
	if err != nil {
		panic(err)
	}
	for _, d := range h.Drifts {
		fmt.Println(d.Name, d.Moved)
	}
	// Output:
	// derived.superheat false
	// derived.subcooling false
	// derived.evaporatingDew false
	// derived.condensingBubble true
	// reading.supplyDryBulb false
	// drift.charge false
	// reading.airflow false
}

// The history as a page of a report, in each of the forms that a record has too.
func ExampleHistory_WriteMarkdown() {
	text, err := os.ReadFile("../examples/visit/jobs/years.json")
	if err != nil {
		panic(err)
	}
	orders, err := work.DecodeHistory(text)
	if err != nil {
		panic(err)
	}
	h, err := work.Compare(orders)
	if err != nil {
		panic(err)
	}
	last, err := work.Judge(orders[len(orders)-1])
	if err != nil {
		panic(err)
	}
	for _, write := range []func(io.Writer, report.Audience) error{
		h.WriteText, h.WriteMarkdown, h.WriteHTML, last.WriteText, last.WriteMarkdown,
		last.WriteHTML,
	} {
		var page strings.Builder
		if err := write(&page, report.Owner); err != nil {
			panic(err)
		}
		first, _, _ := strings.Cut(page.String(), "\n")
		fmt.Println(first)
	}
	// Output:
	// History of a machine
	// # History of a machine
	// <!DOCTYPE html>
	// Library annex 2026 (invented)
	// # Library annex 2026 (invented)
	// <!DOCTYPE html>
}

// Whatever is wrong with an order wraps ErrOrder, and says at which field.
func ExampleProblem() {
	_, err := work.Judge(work.Order{Tasks: []work.Task{work.Maintain}})
	if p, ok := errors.AsType[*work.Problem](err); ok {
		fmt.Println(errors.Is(err, work.ErrOrder), p.Field, p.Kind)
	}
	// Output: true machine.equipment.refrigerant missing
}
