package satline

import (
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// What a technician of long practice would say to each of these invented
// visits; common practice, no source. Each was once judged otherwise.
func TestVisitsAsATechnicianWould(t *testing.T) {
	for _, c := range []struct {
		name     string
		outcomes []ChargeOutcome
		headline string   // must be in it
		steps    []string // must be among them, in this order
		never    []string // may be in no step
	}{
		{"sound-r22-piston", []ChargeOutcome{ChargeInBand}, "In band", []string{"Leave the charge as it is"}, nil},
		// Airflow before charge, also where the superheat alone is undecided.
		{"dirty-filter-low-superheat", []ChargeOutcome{ChargeNotNow}, "less air than it should have", []string{"filter", "judge the charge again"}, []string{"Recover", "better"}},
		{"compressor-leaking", []ChargeOutcome{ChargeNotNow}, "ompressor leaking", []string{"before condemning the compressor"}, []string{"Recover"}},
		// What the technician sees outranks what the numbers would say.
		{"outdoor-coil-wet", []ChargeOutcome{ChargeNotNow}, "the outdoor coil is wet", []string{"Run until it is dry"}, []string{"Shade the sensor"}},
		{"outdoor-coil-dirty", []ChargeOutcome{ChargeInBand}, "In band", []string{"Clean the outdoor coil"}, []string{"write the readings down"}},
		{"just-started", []ChargeOutcome{ChargeNotNow}, "has run 3 min", []string{"Let it run on"}, []string{"clamp"}},
		{"coil-iced-filter-dirty", []ChargeOutcome{ChargeNotNow}, "ice on the indoor coil", []string{"Stop the cooling, and run the blower alone", "filter", "Find out why it froze"}, []string{"Add", "Recover"}},
		// Readings that cannot be believed come before any cause.
		{"return-wet-bulb-as-dry-bulb", []ChargeOutcome{ChargeCannotTell}, "nearly the return dry bulb", []string{"dry sensor"}, []string{"seal the return", "warm up"}},
		{"return-dry-bulb-as-wet-bulb", []ChargeOutcome{ChargeCannotTell}, "nearly the return dry bulb", []string{"wet the wick"}, []string{"filter"}},
		{"return-bulbs-swapped", []ChargeOutcome{ChargeCannotTell}, "above the return dry bulb", []string{"are the two swapped"}, []string{"warm up"}},
		{"supply-wet-bulb-as-dry-bulb", []ChargeOutcome{ChargeNotNow}, "", []string{"stayed dry"}, []string{"Add", "Recover "}},
		// A valve that hunts floods, however steady its subcooling is.
		{"valve-hunting", []ChargeOutcome{ChargeInBand}, "", []string{"why it hunts"}, []string{"write the readings down"}},
		// Propane leaves the compressor cool: that is no flooding valve.
		{"r290-cool-discharge", []ChargeOutcome{ChargeLow}, "Undercharged", nil, []string{"Strap the bulb", "condemning"}},
		{"cool-night", []ChargeOutcome{ChargeHigh}, "move no refrigerant yet: the outdoor coil", []string{"Leave the charge alone"}, []string{"Recover 7"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := assess(t, load(t, c.name))
			if !slices.Contains(c.outcomes, a.Charge.Outcome) {
				t.Errorf("%q, want one of %q: %q", a.Charge.Outcome, c.outcomes, a.Charge.Reasons)
			}
			if !strings.Contains(a.Headline, c.headline) {
				t.Errorf("headline %q does not say %q", a.Headline, c.headline)
			}
			next := 0
			for _, s := range a.Next {
				if next < len(c.steps) && strings.Contains(s.Do, c.steps[next]) {
					next++
				}
				for _, no := range c.never {
					if strings.Contains(s.Do, no) {
						t.Errorf("a step says %q: %q", no, s.Do)
					}
				}
				if strings.HasSuffix(s.Do, "?.") || s.Why == "" {
					t.Errorf("a step reads %q because %q", s.Do, s.Why)
				}
			}
			if next < len(c.steps) {
				t.Errorf("no step says %q in its place: %+v", c.steps[next], a.Next)
			}
		})
	}
}

// A superheat that dips to none in slugs is a danger, whatever its mean.
func TestHuntingValveIsADanger(t *testing.T) {
	a := assess(t, load(t, "valve-hunting"))
	if a.Valve == nil || !hasRisk(a, "slugging") {
		t.Errorf("valve %+v, risks %+v", a.Valve, a.Risks)
	}
}

// The owner reads no words of the trade.
func TestOwnerReportIsPlain(t *testing.T) {
	for _, name := range []string{"dirty-filter-low-superheat", "valve-hunting", "outdoor-coil-dirty", "compressor-leaking", "coil-iced-filter-dirty", "return-bulbs-swapped", "r290-cool-discharge"} {
		var text strings.Builder
		if err := assess(t, load(t, name)).WriteText(&text, Owner); err != nil {
			t.Fatal(err)
		}
		for _, jargon := range []string{"superheat", "subcooling", "TXV", "saturat", "wet bulb", "condens", "suction", "evaporat", "clamp"} {
			if strings.Contains(strings.ToLower(text.String()), strings.ToLower(jargon)) {
				t.Errorf("%s: the owner reads %q:\n%s", name, jargon, &text)
			}
		}
	}
}

// The owner is told of every danger to the compressor that there is.
func TestOwnerReadsOfEveryDanger(t *testing.T) {
	dangers := 0
	for _, r := range charge.Rules() {
		if r.Do == "" || len(r.Forbids)+len(r.Doubts) > 0 {
			continue // a figure or a condition
		}
		dangers++
		if ownerRisks[r.Code] == "" {
			t.Errorf("%s: the owner reads nothing of it", r.Code)
		}
	}
	if dangers != len(ownerRisks) {
		t.Errorf("%d dangers, and words for %d", dangers, len(ownerRisks))
	}
}

// A surface judged by airflow that is said to be missing elsewhere in the same
// report would contradict it.
func TestFreezeUsesTheAirThatIsLeft(t *testing.T) {
	a := assess(t, load(t, "dirty-filter-low-superheat"))
	if a.Freeze == nil || !slices.ContainsFunc(a.Freeze.Reasons, func(r string) bool { return strings.Contains(r, "look missing") }) {
		t.Errorf("%+v", a.Freeze)
	}
}

// A dose that will hardly show is said to, so that nobody doubles it.
func TestDoseThatHardlyShowsSaysSo(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Metering = TXV
	v.Equipment.Label.Subcooling = new(quantity.FahrenheitDelta(10).PlusMinus(quantity.FahrenheitDelta(0.5)))
	bubble, err := mustFluid(t, "R-410A").BubblePressure(quantity.Fahrenheit(98))
	if err != nil {
		t.Fatal(err)
	}
	v.Readings.LiquidPressure = Measured(bubble.Gauge(quantity.AtmosphereAt(*v.Site.Elevation)))
	v.Readings.LiquidLine = Measured(quantity.Fahrenheit(97.8))
	v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(85))
	a := assess(t, v)
	if a.Dose == nil || !strings.Contains(a.Dose.Text(quantity.IP), "hardly move yet") {
		t.Errorf("dose %+v, steps %+v", a.Dose, a.Next)
	}
}
