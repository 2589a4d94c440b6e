package work_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/work"
)

// inOrder are steps on a circuit of which each stands before those behind it.
var inOrder = []fact.Code{
	"next.find-leak", "next.recover", "next.fit-part", "next.mend-leak", "next.nitrogen-by-label",
	"next.joints", "next.evacuate", "next.label-charge", "next.weigh-in", "next.read-after",
}

// What holds of every record, whatever was read before the work: what is dangerous comes first
// and nothing is complete with it, a machine that has to be stopped is stopped first, the work on
// the circuit stands in its order, nothing is asked for twice.
func TestRecordsObeyLaws(t *testing.T) {
	names, err := filepath.Glob("../testdata/visits/*.json")
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	tasks := [][]work.Task{
		{work.FindFault}, {work.SetCharge}, {work.RepairLeak}, {work.Maintain}, {work.OpenCircuit},
		{work.FindFault, work.RepairLeak}, {work.Commission},
	}
	for i, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		v, err := satline.DecodeVisit(text)
		if err != nil {
			t.Fatal(err)
		}
		for k, list := range tasks {
			if every := 4; (i+k)%every != 0 || testing.Short() && (i+k)%(3*every) != 0 {
				continue
			}
			for _, after := range []bool{false, true} {
				o := work.Order{
					Machine: work.Machine{Equipment: v.Equipment, Site: v.Site},
					Tasks:   list, Complaint: v.Complaint, Before: &v,
				}
				if after {
					o.After = &v
				}
				r, err := work.Judge(o)
				if err != nil {
					t.Fatalf("%s, %v: %v", name, list, err)
				}
				lawful(t, filepath.Base(name), &r)
			}
		}
	}
}

func lawful(t *testing.T, name string, r *work.Record) {
	t.Helper()
	last := r.After
	if last == nil {
		last = r.Before
	}
	dangerous := slices.ContainsFunc(r.Results,
		func(x work.Result) bool { return x.Standing == work.Dangerous })
	if dangerous && (r.Complete || r.Results[0].Standing != work.Dangerous) {
		t.Errorf("%s, %v: a danger is not first, or all is done with it", name, r.Order.Tasks)
	}
	if r.Headline.IsZero() || r.Headline.Text == "" || r.Complete != (len(r.Next) == 0) &&
		r.Complete {
		t.Errorf("%s, %v: headline %v, complete %v with %v", name, r.Order.Tasks, r.Headline,
			r.Complete, codes(r.Next))
	}
	stops := slices.ContainsFunc(last.Dangers, func(d satline.Danger) bool { return d.Stops })
	if i := slices.IndexFunc(last.Plan, func(s satline.Step) bool { return s.Stops }); i >= 0 &&
		stops {
		first := slices.IndexFunc(r.Next,
			func(f fact.Fact) bool { return f.Code == last.Plan[i].Do.Code })
		if first < 0 || first > i {
			t.Errorf("%s, %v: %v is not done first: %v", name, r.Order.Tasks, last.Plan[i].Do.Code,
				codes(r.Next))
		}
	}
	at := -1
	for _, f := range r.Next {
		if i := slices.Index(inOrder, f.Code); i >= 0 {
			if i < at {
				t.Errorf("%s, %v: out of order: %v", name, r.Order.Tasks, codes(r.Next))
			}
			at = i
		}
	}
	seen := map[string]bool{}
	for _, f := range r.Next {
		if seen[f.Text] {
			t.Errorf("%s, %v: asks twice: %q", name, r.Order.Tasks, f.Text)
		}
		seen[f.Text] = true
	}
}
