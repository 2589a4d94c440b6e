package satline

import (
	"reflect"
	"slices"
	"testing"

	"github.com/satline/satline/quantity/fact"
)

// What visits to heat pumps that heat come to; they are invented.
func TestHeatingVisits(t *testing.T) {
	for name, want := range map[string]struct {
		cause, second fact.Term // of the headline
		headline      fact.Code
		causes        fact.Terms
		has, lacks    []fact.Code
	}{
		// Low charge frosts the coil: the leak is looked for while the ice melts.
		"heating-frost-low-charge": {
			cause: "cause.undercharge", second: "cause.outdoor-air-short",
			has:   []fact.Code{"step.heating-thaw", "step.find-leak", "step.leave-charge"},
			lacks: []fact.Code{"step.weigh-in-label"},
		},
		// The filter that was seen is changed once, and the charge waits for it.
		"heating-filter-and-overcharged": {
			cause: "cause.low-indoor-airflow", second: "cause.overcharge",
			has:   []fact.Code{"step.clean-filter", "step.leave-charge"},
			lacks: []fact.Code{"mend.filter", "step.heating-recover-all"},
		},
		// A charge that is likely to be too much leaves no plan empty.
		"heating-overcharge-doubtful": {
			cause: "cause.overcharge", has: []fact.Code{"look.liquid-clamp-second"},
			lacks: []fact.Code{"step.heating-recover-all"},
		},
		// Nothing wrong is likelier than any one cause: the headline says so, as the plan does.
		"heating-chilly-house": {headline: "headline.sound-likely", has: []fact.Code{"step.leave"}},
		// Liquid cools the discharge line; a compressor that leaks within would heat it.
		"heating-floods-mildly": {
			cause: "cause.overfeed",
			has:   []fact.Code{"step.feel-compressor", "look.check-valves"},
			lacks: []fact.Code{"step.leave"},
		},
		// A machine that liquid comes back to is not left as it is.
		"heating-floods-valve": {
			cause: "cause.overcharge",
			has:   []fact.Code{"step.feel-compressor", "look.valve-bulb", "step.charge-stays"},
			lacks: []fact.Code{"step.leave"},
		},
		// Where liquid comes back, nothing wrong is named in no headline.
		"heating-liquid-unexplained": {
			headline: "headline.open", causes: fact.Terms{"cause.overcharge", "cause.overfeed"},
			has: []fact.Code{"step.feel-compressor", "look.valve-bulb"}, lacks: []fact.Code{"step.leave"},
		},
		// A coil that gets no air is named before the shortage that it looks like, as the plan goes.
		"heating-fan-and-short": {
			cause: "cause.outdoor-air-short", second: "cause.undercharge",
			has: []fact.Code{"step.find-leak", "step.leave-charge"},
		},
		// A check valve that was found to leak is put right, whatever ranks first.
		"heating-check-valve-found": {
			cause: "cause.vapor-leak", has: []fact.Code{"step.heating-seen-check"},
		},
		// A hand found the reversing valve to leak: it is not felt again.
		"heating-valve-found": {
			cause: "cause.reversing-valve", has: []fact.Code{"mend.reversing-valve-found"},
			lacks: []fact.Code{"look.reversing-valve", "mend.reversing-valve-leak"},
		},
		// Strips that draw no current warm nothing.
		"heating-strips-denied": {
			cause: "cause.low-indoor-airflow", has: []fact.Code{"mend.low-indoor-airflow"},
			lacks: []fact.Code{"mend.strips-on", "look.strips-current"},
		},
		// A charge that is likelier too much than not is not called one to leave alone.
		"heating-mild-and-full": {
			cause: "cause.overcharge", has: []fact.Code{"step.charge-stays"},
			lacks: []fact.Code{"step.leave", "step.heating-recover-all"},
		},
		"heating-iced-solid": {
			cause: "cause.outdoor-air-short", has: []fact.Code{"step.heating-thaw"},
		},
		// Vapor warmer than its outdoor coil: a valve stuck midway reads as an idle compressor does.
		"heating-hot-suction": {
			cause: "cause.not-pumping-or-midway", has: []fact.Code{"mend.heating-not-pumping"},
			lacks: []fact.Code{"step.find-leak"},
		},
		// So is it where the charge is likely to be low beside the ice: the ice comes first.
		"heating-iced-and-short": {
			cause: "cause.outdoor-air-short", second: "cause.undercharge",
			has:   []fact.Code{"step.heating-thaw", "step.find-leak", "step.leave-charge"},
			lacks: []fact.Code{"step.weigh-in-label"},
		},
		// Defrosts that a log shows are counted.
		"heating-defrosts-often": {
			cause: "cause.defrost-wrong", has: []fact.Code{"mend.defrost-often"},
		},
		// In bitter cold the model knows little of the suction: no gauge is accused by it.
		"heating-bitter-cold": {
			headline: "headline.sound-likely",
			has:      []fact.Code{"step.heating-auxiliary", "step.leave"},
		},
		"heating-valve-midway": {
			cause: "cause.reversing-valve-midway", has: []fact.Code{"mend.reversing-valve-midway"},
		},
		// A compressor that leaks within is hot: this one gets liquid.
		"heating-liquid-back": {
			headline: "headline.open",
			has:      []fact.Code{"step.feel-compressor", "look.pressures-at-stop"},
			lacks:    []fact.Code{"mend.compressor-valves"},
		},
		// What reads like a weak compressor is a variable speed that runs slowly.
		"heating-inverter-slow": {
			headline: "headline.heating-sound", has: []fact.Code{"step.leave"},
		},
		// Ice was complained of: it is looked for before the machine is left alone.
		"heating-ice-complained": {
			has:   []fact.Code{"look.outdoor-ice", "look.defrost-test"},
			lacks: []fact.Code{"step.leave"},
		},
		// What a look found is put right, however sound the readings are.
		"heating-strips-found": {
			headline: "headline.heating-sound", has: []fact.Code{"step.heating-seen-strips"},
			lacks: []fact.Code{"step.leave"},
		},
		// Strips that help a machine out are no reason to doubt what else is read of it.
		"heating-strips-and-short": {
			cause: "cause.undercharge", second: "cause.auxiliary-heat",
			has:   []fact.Code{"step.find-leak", "mend.strips-on"},
			lacks: []fact.Code{"mend.other-refrigerant"},
		},
		"heating-warm-day": {
			cause: "cause.overcharge", has: []fact.Code{"step.heating-change-over"},
			lacks: []fact.Code{"step.heating-recover-all"},
		},
		// Nobody said that it heats.
		"unsaid-mode-in-the-cold": {
			has: []fact.Code{"step.ask-mode"}, lacks: []fact.Code{"step.stop"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			a := assess(t, load(t, name))
			term := func(name string) fact.Term {
				value, _ := a.Headline.Value(name)
				code, _ := value.Of.(fact.Term)
				return code
			}
			if term("cause") != want.cause || term("second") != want.second {
				t.Errorf("the headline is of %q and %q: %s", term("cause"), term("second"),
					a.Headline.Text)
			}
			if want.headline != "" && a.Headline.Code != want.headline {
				t.Errorf("the headline is %s", a.Headline.Code)
			}
			if value, _ := a.Headline.Value("causes"); want.causes != nil &&
				!reflect.DeepEqual(value.Of, want.causes) {
				t.Errorf("the headline is of %v", value.Of)
			}
			steps := codes(a)
			for _, code := range want.has {
				if !slices.Contains(steps, code) {
					t.Errorf("the plan lacks %s: %v", code, steps)
				}
			}
			for _, code := range want.lacks {
				if slices.Contains(steps, code) {
					t.Errorf("the plan holds %s: %v", code, steps)
				}
			}
		})
	}
}

// A temperature in °C that was typed for one in °F is told as such.
func TestHeatingInCelsius(t *testing.T) {
	for name, want := range map[string]fact.Term{
		"heating-return-in-celsius":   "charge.heating-cold-room",
		"heating-outdoors-in-celsius": "charge.heating-cold-outdoors",
	} {
		a := assess(t, caseOfName(t, name))
		if why, _ := a.Headline.Value("why"); why.Of != want {
			t.Errorf("%s: %s", name, a.Headline.Text)
		}
	}
}
