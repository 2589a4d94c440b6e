package satline

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
)

// What may harm the machine as it runs is seen to before anything is looked for,
// whatever the cause and however sure it is; common practice, no source.
func TestMachineIsSecuredFirst(t *testing.T) {
	restricted := load(t, "liquid-line-restricted")
	flooding := load(t, "dirty-filter-low-superheat")
	hot := load(t, "sound-r410a-piston")
	hot.Readings.DischargeLine = Measured(quantity.Fahrenheit(240))
	for _, c := range []struct {
		name  string
		visit Visit
		risk  string
		first string
	}{
		{"a restriction, and a coil that ices", restricted, "evaporating-coldest", "Stop the cooling"},
		{"a dirty filter, and liquid coming back", flooding, "floodback", "Feel the compressor"},
		{"a hot discharge", hot, "discharge-hottest", "Stop the machine"},
		{"ice", load(t, "coil-iced-filter-dirty"), "evaporating-coldest", "Stop the cooling"},
		{"a hunting valve", load(t, "valve-hunting"), "slugging", "Listen to the compressor"},
	} {
		a := assess(t, c.visit)
		i := slices.IndexFunc(a.Risks, func(r Risk) bool { return r.Code == c.risk })
		if i < 0 {
			t.Errorf("%s: %+v", c.name, a.Risks)
			continue
		}
		if !strings.HasPrefix(a.Next[0].Do, c.first) || a.Next[0].Why == "" || len(a.Next) < 2 {
			t.Errorf("%s: the first step is %+v", c.name, a.Next[0])
		}
		for j, s := range a.Next[1:] {
			if strings.Contains(s.Do, a.Risks[i].Stop) || strings.HasPrefix(s.Do, c.first) {
				t.Errorf("%s: step %d says it again: %q", c.name, j+2, s.Do)
			}
		}
	}
	if a := assess(t, load(t, "sound-r410a-piston")); slices.ContainsFunc(a.Next, func(s Step) bool { return strings.Contains(strings.ToLower(s.Do), "stop") }) {
		t.Errorf("a sound machine is stopped: %+v", a.Next)
	}
}

// The suction dips for minutes after every start: that is no reason to stop.
func TestStartIsNoDanger(t *testing.T) {
	v := load(t, "just-started")
	v.Readings.SuctionPressure = Measured(quantity.PSIG(40)) // R-22, 17 °F
	v.Readings.SuctionLine = Measured(quantity.Fahrenheit(45))
	if a := assess(t, v); len(a.Risks) > 0 || !strings.HasPrefix(a.Next[0].Do, "Let it run on") {
		t.Errorf("%+v, %+v", a.Risks, a.Next)
	}
	v.Conditions.Running = 40 * time.Minute
	if a := assess(t, v); !hasRisk(a, "evaporating-coldest") || !strings.HasPrefix(a.Next[0].Do, "Stop the cooling") {
		t.Errorf("%+v, %+v", a.Risks, a.Next)
	}
}

// A report says a thing once: not the headline again as its own reason, nor the
// steps above their own section.
func TestReportSaysItOnce(t *testing.T) {
	for _, name := range []string{"return-bulbs-swapped", "just-started", "outdoor-coil-wet", "dirty-filter-low-superheat", "cool-night", "gauge-off-zero-at-altitude"} {
		a := assess(t, load(t, name))
		b := a.verdictBlock()
		for _, it := range b.items {
			if strings.Contains(a.Headline, it.text) || stepped(a, it.text) {
				t.Errorf("%s: %q stands in the verdict twice, or also among the steps", name, it.text)
			}
		}
		zeroed := 0
		for i, s := range a.Next {
			if strings.Contains(s.Do, "zero") {
				zeroed++
			}
			if slices.ContainsFunc(a.Next[:i], func(before Step) bool { return before.Do == s.Do }) {
				t.Errorf("%s: step %q twice", name, s.Do)
			}
		}
		if zeroed > 1 || name == "gauge-off-zero-at-altitude" && zeroed == 0 {
			t.Errorf("%s: the gauges are zeroed in %d steps: %+v", name, zeroed, a.Next)
		}
	}
}
