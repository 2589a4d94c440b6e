package charge

import (
	"encoding"
	"strings"
	"testing"

	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// otherNames are those that a metering device goes by as well.
var otherNames = map[string]refrigerant.Metering{
	"piston": refrigerant.FixedRestrictor, "orifice": refrigerant.FixedRestrictor,
	"short tube": refrigerant.FixedRestrictor, "fixed": refrigerant.FixedRestrictor,
	"capillary": refrigerant.Capillary, "tev": refrigerant.TXV, "eev": refrigerant.EXV,
}

// Whatever text comes in, a name in letters of either case reads back as the name, and
// everything else is an error.
func FuzzNames(f *testing.F) {
	for _, s := range []string{"superheat", "weigh-in", "TXV", "in-band", "cannot-tell", "settled",
		"add", "moisture", "holds", "not-deep-enough", "TEV", "Short Tube ", "", "x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, v := range []interface {
			encoding.TextMarshaler
			encoding.TextUnmarshaler
		}{new(Method), new(refrigerant.Metering), new(Outcome), new(Course), new(Action),
			new(DecayOutcome), new(TestOutcome), new(fact.Standing), new(RecoveryClass),
			new(DevicePlace)} {
			if err := v.UnmarshalText([]byte(text)); err != nil {
				continue
			}
			name := strings.TrimSpace(text)
			if m, ok := v.(*refrigerant.Metering); ok && otherNames[strings.ToLower(name)] != 0 {
				if *m != otherNames[strings.ToLower(name)] {
					t.Errorf("%q reads as %v", text, *m)
				}
				continue
			}
			back, err := v.MarshalText()
			if err != nil || !strings.EqualFold(string(back), name) {
				t.Errorf("%T: %q reads back as %q, %v", v, text, back, err)
			}
		}
	})
}

// Every value has its own name, and values beyond have none that could be
// taken for one.
func TestNamesAreDistinct(t *testing.T) {
	for name, text := range map[string]func(int) string{
		"method": func(i int) string {
			return Method(i).String()
		},
		"metering": func(i int) string {
			return refrigerant.Metering(i).String()
		},
		"outcome": func(i int) string {
			return Outcome(i).String()
		}, "state": func(i int) string {
			return Course(i).String()
		},
		"action": func(i int) string {
			return Action(i).String()
		},
		"decay": func(i int) string {
			return DecayOutcome(i).String()
		},
		"test": func(i int) string {
			return TestOutcome(i).String()
		},
		"standing": func(i int) string {
			return fact.Standing(i).String()
		},
		"recovery": func(i int) string {
			return RecoveryClass(i).String()
		},
		"temper": func(i int) string {
			return Temper(i).String()
		},
		"device": func(i int) string { return DevicePlace(i).String() },
	} {
		seen := map[string]bool{text(0): true}
		for i := 1; text(i) != text(0); i++ {
			if seen[text(i)] || i > 20 {
				t.Errorf("%s %d: %q", name, i, text(i))
			}
			seen[text(i)] = true
		}
		if text(-1) != text(0) {
			t.Errorf("%s -1: %q", name, text(-1))
		}
	}
}
