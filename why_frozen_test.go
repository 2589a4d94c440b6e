package satline

import (
	"errors"
	"os"
	"slices"
	"testing"

	"github.com/satline/satline/quantity"
)

// The night and the room together make the coil colder than either, every cause colder
// still, and every control warmer.
func TestWhyFrozen(t *testing.T) {
	for _, name := range []string{
		"sound-r410a-piston", "sound-r22-piston", "dirty-filter-low-superheat",
		"r290-cool-discharge", "outdoor-coil-dirty",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			v := load(t, name)
			w, err := WhyFrozen(v, CoolNight())
			if err != nil {
				t.Fatal(err)
			}
			at := func(o Outlook) float64 { return o.CoilSurface.Value.Fahrenheit() }
			t.Logf(
				"as read %.1f °F, outdoors %.1f, room %.1f, together %.1f, ice %.2f", at(w.AsRead),
				at(w.Outdoors), at(w.Room), at(w.Together), w.Together.FreezeChance,
			)
			const same = 0.3 // °F, of the solver
			if both := at(w.Together) - same; !(both <= at(w.Outdoors) && both <= at(w.Room) &&
				both < at(w.AsRead)) {
				t.Error("not colder together")
			}
			var causes, controls []string
			for _, c := range w.Causes {
				causes = append(causes, c.Code)
				t.Logf(
					"%-18s %+5.1f °F, ice %.2f", c.Code, c.Surface.Fahrenheit(),
					c.Outlook.FreezeChance,
				)
				if c.Code == "charge" && v.Equipment.Metering != FixedRestrictor {
					continue // a valve opens for what is missing
				}
				if c.Surface.Fahrenheit() > same ||
					c.Outlook.FreezeChance < w.Together.FreezeChance-0.02 {
					t.Errorf("%s makes the coil %+.1f °F warmer", c.Code, c.Surface.Fahrenheit())
				}
			}
			for _, c := range w.Controls {
				controls = append(controls, c.Code)
				if c.Code == "freeze-thermostat" {
					if c.Outlook != nil || c.Surface != 0 {
						t.Errorf("a freeze thermostat changes the coil: %+v", c)
					}
					continue
				}
				t.Logf(
					"%-18s %+5.1f °F, ice %.2f", c.Code, c.Surface.Fahrenheit(),
					c.Outlook.FreezeChance,
				)
				if c.Surface.Fahrenheit() < -same {
					t.Errorf("%s makes the coil %+.1f °F warmer", c.Code, c.Surface.Fahrenheit())
				}
			}
			if !slices.Equal(
				causes, []string{"filter", "indoor-coil", "blower", "set-point", "charge"},
			) {
				t.Errorf("causes %v", causes)
			}
			want := []string{"set-point", "head-pressure", "freeze-thermostat"}
			if name == "dirty-filter-low-superheat" {
				want = slices.Insert(want, 0, "airflow")
			}
			if !slices.Equal(controls, want) {
				t.Errorf("controls %v, want %v", controls, want)
			}
		})
	}
}

// Without the readings of a forecast there is no answer, but an error that names them.
func TestWhyFrozenNeedsItsReadings(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.ReturnWetBulb = Reading[quantity.Temperature]{}
	var problem *VisitError
	if _, err := WhyFrozen(v, CoolNight()); !errors.As(err, &problem) {
		t.Error(err)
	}
	night := CoolNight()
	night.OutdoorDryBulb = quantity.Fahrenheit(-200)
	if _, err := WhyFrozen(load(t, "sound-r410a-piston"), night); !errors.As(err, &problem) ||
		problem.Field != "night" {
		t.Error(err)
	}
}

// Invented: with the hoses swapped the pressures say nothing of a coil.
func TestNoFreezingFromSwappedHoses(t *testing.T) {
	data, err := os.ReadFile("testdata/cases/hoses-swapped.json")
	if err != nil {
		t.Fatal(err)
	}
	v, err := DecodeVisit(data)
	if err != nil {
		t.Fatal(err)
	}
	if a := assess(t, v); a.Freeze.Says.Code != "freeze.readings-first" {
		t.Errorf("it is judged: %v", a.Freeze.Says)
	}
}
