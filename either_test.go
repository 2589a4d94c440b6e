package satline

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/simulate"
)

// A machine whose metering device nobody told gets a belief and a plan. No dose is in it, and what
// is done without a look at the device is what would be done if it were told.
func TestDeviceNotTold(t *testing.T) {
	n := 600
	if testing.Short() {
		n = 150
	}
	asked, named := 0, 0
	for i := range n {
		rng := rand.New(rand.NewPCG(41, uint64(i)))
		v, _ := simulated(t, rng, simulate.Options{Other: i%2 == 1})
		if i%3 == 0 {
			v = decorated(rng, v)
		}
		told := v.Equipment.Metering
		with, err := Assess(v)
		if err != nil {
			t.Fatalf("visit %d: %v", i, err)
		}
		v.Equipment.Metering = 0
		a, err := Assess(v)
		if err != nil {
			t.Fatalf("visit %d: %v", i, err)
		}
		if slices.ContainsFunc(a.Plan, isDose) {
			t.Errorf("visit %d: a dose, and the device is not known: %v", i, codes(a))
		}
		if a.Findings != nil && with.Findings != nil && a.Findings[0].Cause == with.Findings[0].Cause {
			named++
		}
		if slices.Contains(codes(a), StepAskDevice) {
			asked++
			if a.Ask == nil && a.Charge.Outcome != ChargeNotJudged {
				t.Errorf("visit %d: nothing says what the device would mean", i)
			}
		} else if !slices.Equal(codes(a), codes(with)) {
			t.Errorf("visit %d, %v: %v, and told %v", i, told, codes(a), codes(with))
		}
		for _, l := range laws {
			if what := l.broken(&v, &a); what != "" {
				t.Errorf("visit %d: %s: %s %v", i, l.name, what, codes(a))
			}
		}
	}
	t.Logf("of %d visits the device is asked for in %d; the first cause is that of the told one in %d",
		n, asked, named)
	if asked == 0 || asked == n {
		t.Errorf("the device is asked for in %d of %d visits", asked, n)
	}
}

// In heating and in a cold room nothing asks for it.
func TestDeviceNotToldElsewhere(t *testing.T) {
	for _, name := range []string{"heating-unsaid-35F", "walk-in-sound"} {
		v := caseOfName(t, name)
		v.Equipment.Metering = 0
		a, err := Assess(v)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if slices.Contains(codes(a), StepAskDevice) {
			t.Errorf("%s: %v", name, codes(a))
		}
	}
}

// What a machine will do hangs on the device.
func TestForecastWantsTheDevice(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Metering = 0
	_, err := Forecast(v, CoolNight())
	if e, ok := err.(*VisitError); !ok || e.Kind != FieldMissing || e.Field != "equipment.metering" {
		t.Errorf("got %v", err)
	}
}
