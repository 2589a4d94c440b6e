package diagnose_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
)

// Half the missing charge is added to an undercharged machine, and as much to
// one with a restricted liquid line. The first moves as said; the second is
// named for what it is once both sets of readings are weighed.
func TestChangeOverAVisit(t *testing.T) {
	var asSaid, kept, restricted, n int
	for i := range 40 {
		rng := rand.New(rand.NewPCG(11, uint64(i)))
		under, err := simulate.DrawChange(
			rng, simulate.Change{Signature: diagnose.Undercharge, Size: 0.28, Added: 0.14},
		)
		if err != nil {
			t.Fatal(err)
		}
		n++
		d := diagnose.Infer(under)
		if d.Change == nil {
			t.Fatal("no change reported")
		}
		if d.Change.AsSaid {
			asSaid++
		}
		if strings.Contains(d.Explanations[0].Code(), string(diagnose.Undercharge)) ||
			d.Explanations[0].Code() == "sound" {
			kept++
		}
		// A valve of the population has up to 1.9 times the capacity that is needed: less of
		// a restriction than this it makes good for.
		stopped, err := simulate.DrawChange(
			rng, simulate.Change{Signature: diagnose.Restriction, Size: 0.5, Added: 0.14},
		)
		if err != nil {
			t.Fatal(err)
		}
		d = diagnose.Infer(stopped)
		if d.Probability(diagnose.Restriction) > 0.5 {
			restricted++
		}
	}
	t.Logf(
		"of %d: moved as said %d, still undercharge or sound %d; restriction named after the "+
			"change %d",
		n, asSaid, kept, restricted,
	)
	if asSaid < n*9/10 || kept < n*9/10 {
		t.Errorf(
			"of %d undercharged machines %d moved as said, and %d were still held undercharged "+
				"or sound",
			n, asSaid, kept,
		)
	}
	if restricted < n*9/10 {
		t.Errorf("of %d restricted machines %d were named after the change", n, restricted)
	}
}

// A frozen coil is put down to what froze it: too little air, too little
// refrigerant, too little load, or cool weather.
func TestFreezeIsSeparated(t *testing.T) {
	for _, x := range []struct {
		name    string
		frozen  simulate.Frozen
		want    diagnose.Code
		control string
		least   float64 // of the ice that the control prevents, on average
	}{
		{"low airflow", simulate.Frozen{Signature: diagnose.LowIndoorAir, Size: 0.55},
			diagnose.LowIndoorAir, "airflow", 0.7},
		{"low charge", simulate.Frozen{Signature: diagnose.Undercharge, Size: 0.38},
			diagnose.Undercharge, "charge", 0.7},
		{"low load", simulate.Frozen{ReturnWetBulb: 49, ReturnDryBulb: 63, Outdoor: 80},
			diagnose.LowLoad, "set-point", 0.15},
		{"cool weather", simulate.Frozen{ReturnWetBulb: 57.5, ReturnDryBulb: 69, Outdoor: 42},
			diagnose.LowAmbient, "head-pressure", 0.5},
	} {
		first, prevents, n := 0, 0.0, 0
		for i := range 120 {
			e, ok, err := simulate.DrawFrozen(rand.New(rand.NewPCG(12, uint64(i))), x.frozen)
			if err != nil {
				t.Fatal(err)
			}
			if !ok {
				continue // this machine does not freeze so
			}
			n++
			d := diagnose.Infer(e)
			if d.Freeze == nil {
				t.Fatal("a frozen coil was not answered")
			}
			if len(d.Freeze.Causes) > 0 && d.Freeze.Causes[0].Code == x.want {
				first++
			}
			for _, c := range d.Freeze.Controls {
				if c.Code == x.control {
					prevents += c.Prevents
				}
			}
		}
		t.Logf(
			"%s: first cause in %d of %d; %s prevents %.2f on average", x.name, first, n, x.control,
			prevents/float64(max(1, n)),
		)
		if prevents < x.least*float64(n) {
			t.Errorf(
				"%s: %s prevents %.2f on average", x.name, x.control, prevents/float64(max(1, n)),
			)
		}
		if n < 5 || first < n*8/10 {
			t.Errorf("%s: first cause in %d of %d", x.name, first, n)
		}
	}
}
