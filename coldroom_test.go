package satline

import (
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// What the first screen of each visit to a cold room has to say; the visits are invented. A
// code ends in "*" where any that begins so will do.
var coldVisits = map[string]struct {
	cause  string // in the headline
	second string // beside it
	// headline is its code, where that says more than the cause.
	headline fact.Code
	steps    []string
	all      []string // anywhere in the plan
	never    []string
}{
	"cold-walk-in-sound": {
		steps: []string{"step.cold-leave"}, never: []string{"mend.*"},
	},
	"cold-burning-short": {
		cause: "cold-undercharge", steps: []string{"step.cold-food-move", "step.find-leak"},
	},
	// Readings that cannot be are taken again before anything is judged by them.
	"cold-hoses-swapped": {
		headline: "headline.cold-early", steps: []string{"doubt.gauges-swapped.mend"},
		never: []string{"step.find-leak", "step.feel-compressor", "step.cold-leave", "mend.*"},
	},
	"cold-clamps-exchanged": {
		headline: "headline.cold-early", steps: []string{"doubt.cold-clamps.mend"},
		never: []string{"step.cold-leave", "mend.*"},
	},
	"cold-thermometers-exchanged": {
		headline: "headline.cold-early", steps: []string{"doubt.cold-air.mend"},
		never: []string{"step.cold-leave", "step.cold-too-cold", "mend.*"},
	},
	// A machine that was stopped for its head stands already, as a standing pressure wants.
	"cold-gas-after-repair": {
		cause: "cold-gas",
		steps: []string{"step.stop", "step.cold-food", "look.cold-standing"},
		never: []string{"step.evacuate"},
	},
	"cold-gas-proved": {
		cause: "cold-gas", steps: []string{"step.stop", "step.cold-food", "step.cold-food-away"},
		all:   []string{"step.recover-rest", "step.evacuate", "step.cold-start-level"},
		never: []string{"step.leave-charge", "step.cold-restart"},
	},
	"cold-freezer-iced": {
		cause: "cold-evaporator", steps: []string{"step.cold-food-frozen", "step.cold-defrost-now"},
	},
	// A shortage that stops the machine is not left for a restart to show again.
	"cold-short-and-hot": {
		cause: "cold-undercharge",
		steps: []string{"step.stop", "step.cold-food-frozen", "step.find-leak"},
		all:   []string{"step.cold-mend-leak", "step.cold-add"}, never: []string{"step.leave-charge"},
	},
	// A box far over what it is kept at began warm: a coil that takes up much is not short of air.
	"cold-new-room": {
		headline: "headline.cold-pull-down", steps: []string{"step.cold-food-move"},
		all: []string{"mend.cold-product"}, never: []string{"mend.cold-evaporator*"},
	},
	"cold-power-was-out": {
		headline: "headline.open", steps: []string{"step.cold-food-move", "look.cold-warm-product"},
		never: []string{"step.cold-add*", "step.find-leak"},
	},
	// A head far over the air of a kitchen, and yet one that any compressor endures, stops nothing.
	"cold-propane-dirty": {
		cause: "cold-condenser", steps: []string{"step.cold-food-move", "look.cold-condenser*"},
		never: []string{"step.stop", "step.cold-recover*", "step.recover-rest"},
	},
	// A clear glass says that liquid comes: the level is seen before any more is added.
	"cold-clear-glass-short": {
		cause: "cold-undercharge", steps: []string{"step.cold-food-move", "look.cold-receiver-low"},
		never: []string{"step.cold-add*", "step.halt"},
	},
	// Much was added and came to where it was to go: what the receiver lacks is no reason to halt.
	"cold-level-after-doses": {
		cause: "cold-reserve", all: []string{"step.cold-add-level"},
		never: []string{"step.halt", "step.recover-rest"},
	},
	// No compressor is opened for one test, where the readings say otherwise.
	"cold-pump-down-doubted": {
		cause: "cold-compressor", all: []string{"mend.cold-compressor-sealed"},
		never: []string{"mend.cold-compressor-proved", "step.cold-food-away"},
	},
	// A pump-down that was made is not asked for again.
	"cold-pumps-down-weak": {
		cause: "cold-compressor", all: []string{"mend.cold-compressor-sealed"},
		never: []string{"mend.cold-compressor", "mend.cold-compressor-valves"},
	},
	// What a hand found at the drier, a clear glass does not deny.
	"cold-drier-behind-clear-glass": {
		cause: "cold-restriction", all: []string{"mend.cold-restriction"},
		never: []string{"step.cold-add*"},
	},
	"cold-short-behind-receiver": {
		cause: "cold-undercharge", steps: []string{"step.cold-food-move", "step.find-leak"},
	},
	"cold-short-not-yet": {
		cause: "cold-reserve",
		steps: []string{"step.find-leak"},
	},
	"cold-evaporator-fan": {
		cause: "cold-evaporator",
		steps: []string{"step.cold-food-move", "mend.cold-evaporator-fan"},
		never: []string{"step.cold-add*"},
	},
	"cold-reach-in-dirty": {
		cause: "cold-condenser",
		steps: []string{"step.cold-food-move", "mend.cold-condenser-dirty"},
	},
	"cold-condenser-fan-dead": {
		cause: "cold-condenser",
		steps: []string{"step.stop", "step.cold-food-move", "mend.cold-condenser*"},
		never: []string{"step.cold-run", "step.start-again"},
	},
	"cold-head-low-winter": {
		cause: "cold-head-low", steps: []string{"step.cold-food", "mend.cold-head*"},
		never: []string{"step.cold-add*"},
	},
	"cold-bulb-loose": {
		cause: "cold-flooding", steps: []string{"mend.cold-bulb-loose"},
	},
	"cold-drier-restricted": {
		cause: "cold-restriction", never: []string{"step.cold-add*"},
		steps: []string{"step.cold-food-frozen", "look.cold-drier-drop"},
	},
	"cold-compressor-worn": {
		cause: "cold-compressor", steps: []string{"step.cold-food-move", "mend.cold-compressor*"},
	},
	"cold-door-open": {
		cause: "cold-load",
		steps: []string{"step.cold-food-move", "mend.cold-door"},
	},
	"cold-short-runs": {cause: "cold-short-cycle", steps: []string{"mend.cold-pressure-control"}},
	"cold-circuit-opened": {
		steps: []string{"step.cold-food-frozen", "step.cold-food-away", "step.nitrogen"},
		never: []string{"step.cold-add*"},
	},
	"cold-just-started": {
		steps: []string{"step.cold-food-move", "step.cold-run"}, never: []string{"mend.*"},
	},
	"cold-air-inside": {
		cause: "cold-gas", steps: []string{"step.recover-rest"},
		never: []string{"step.cold-add*"},
	},
	"cold-next-to-empty": {
		cause: "cold-undercharge",
		steps: []string{"step.stop", "step.cold-food-move", "step.find-leak"},
		all: []string{
			"step.recover-rest", "step.nitrogen", "step.evacuate", "step.weigh-in-label",
		},
		never: []string{"step.cold-add*", "mend.*"},
	},
	"cold-iced-and-short": {
		cause: "cold-undercharge", second: "cold-evaporator",
		steps: []string{"step.cold-food-move", "step.cold-defrost-now", "step.cold-why-iced"},
		all:   []string{"step.find-leak"}, never: []string{"step.cold-add*"},
	},
	"cold-dirty-and-overfull": {
		cause: "cold-condenser", steps: []string{"step.stop", "mend.cold-condenser-dirty"},
		never: []string{"step.cold-recover*", "step.cold-add*"},
	},
	"cold-freezer-fan-iced": {
		cause: "cold-evaporator", never: []string{"step.cold-add*"},
		steps: []string{
			"step.cold-food-frozen", "step.cold-defrost-now", "mend.cold-evaporator-fan",
		},
	},
	"cold-capillary-dirty": {
		// A capillary tube soldered to the suction line warms it: that is not the clamp.
		cause: "cold-condenser", steps: []string{"step.cold-food", "look.cold-condenser-dirt"},
	},
	// A box that falls is pulled down: nothing is broken, and no door is accused.
	"cold-pulls-down": {
		headline: "headline.cold-pull-down",
		steps:    []string{"step.cold-food-move", "mend.cold-product"},
		never:    []string{"mend.cold-door", "step.cold-add*"},
	},
	// Warm, and the machine does what it should: what warms it is asked and looked for.
	"cold-warm-unexplained": {
		cause: "cold-load",
		steps: []string{"step.cold-food-move", "look.cold-warm-product", "look.cold-door-leaks"},
		never: []string{"mend.*"},
	},
	// A control that floods the condenser in the cold makes subcooling: that is not surely a gas.
	"cold-winter-flooded": {
		steps: []string{"step.cold-food", "look.cold-standing"},
		never: []string{"step.recover-rest", "step.evacuate", "mend.*"},
	},
	// A valve of the hot gas that leaks reads as a compressor that does.
	"cold-hot-gas-leaks": {
		cause: "cold-compressor", steps: []string{"step.cold-hot-gas", "mend.cold-compressor*"},
	},
	// No charge is thrown away for a gas that nobody proved.
	"cold-gas-likely": {
		cause: "cold-gas", steps: []string{"step.cold-food", "look.cold-standing"},
		never: []string{"step.recover-rest", "step.evacuate"},
	},
	// What runs on in a box that is too cold is short of nothing.
	"cold-runs-on-cold": {
		headline: "headline.cold-sound", steps: []string{"step.cold-too-cold"},
		never: []string{"look.cold-drier-drop", "look.cold-bulb-warm", "mend.*"},
	},
	"cold-water-freezer": {
		headline: "headline.cold-sound", steps: []string{"step.cold-drain"},
		never: []string{"step.cold-leave", "step.cold-watch"},
	},
	// What was seen to be clean and to turn is not looked at again.
	"cold-condenser-seen": {
		cause: "cold-condenser", steps: []string{"mend.cold-condenser-hot-air"},
	},
	"cold-room-too-small": {
		headline: "headline.cold-too-small", never: []string{"mend.cold-compressor*"},
		steps: []string{"step.cold-food-move", "mend.cold-too-small"},
	},
	// Condensing far over a cold day's air is what the control is for, and no danger.
	"cold-head-low-somewhat": {
		steps: []string{"step.cold-food-move", "look.cold-head-holds"},
		never: []string{"step.stop", "step.cold-add*"},
	},
	"cold-suction-line-bare": {
		steps: []string{"step.cold-suction-line"}, never: []string{"mend.*"},
	},
	"cold-does-not-pump-down": {
		cause: "cold-compressor",
		steps: []string{"step.cold-food-move-frozen", "mend.cold-compressor-proved"},
	},
	"cold-fluid-unknown": {steps: []string{"step.cold-chart"}},
	// A tube soldered to the suction line warms it, and what is seen at once comes first.
	"cold-cabinet-warm-suction": {
		steps: []string{"look.cold-condenser-dirt"},
		never: []string{"look.cold-standing"},
	},
	// A box gets the warmer the longer it goes on, and warm product was loaded too: the coil far
	// below it tells.
	"cold-blast-freezer-iced": {
		cause: "cold-evaporator", never: []string{"mend.cold-product", "mend.cold-door"},
		steps: []string{"step.stop", "step.cold-food-frozen", "mend.cold-evaporator*"},
	},
	// More than half of the charge went in without an answer: no further dose.
	"cold-much-added": {
		headline: "headline.moved-much", steps: []string{"step.cold-food-move", "step.halt"},
		never: []string{"step.cold-add*"},
	},
	// Two clamps on the liquid line tell a drier from a valve that starves.
	"cold-drop-measured": {
		cause: "cold-restriction", steps: []string{"step.cold-food-move", "mend.cold-drier"},
		never: []string{"look.cold-drier-drop", "step.cold-add*"},
	},
	// What is seen to be wrong is put right, whatever the gauges will say.
	"cold-dirty-unread": {
		steps: []string{"step.cold-food-move", "step.cold-seen-dirt", "step.read"},
	},
	"cold-ice-complained": {
		steps: []string{"look.cold-coil-iced", "look.cold-defrost-works"},
		never: []string{"step.cold-leave"},
	},
	// In the cold a head that is held needs charge in the condenser: the level is low, and no
	// dose is put in before the leak is looked for.
	"cold-winter-short": {
		cause: "cold-undercharge", steps: []string{"step.find-leak"},
		never: []string{"mend.cold-head*", "step.cold-add*"},
	},
	"cold-head-stuck-high": {
		cause: "cold-head-high", steps: []string{"step.cold-food-frozen", "mend.cold-head*"},
		never: []string{"mend.cold-condenser*", "step.recover-rest"},
	},
	// What was stopped for its heat is not pumped down before it has cooled.
	"cold-compressor-hot": {
		cause: "cold-compressor",
		steps: []string{"step.stop", "step.cold-food-frozen", "mend.cold-compressor-stopped"},
		never: []string{"mend.cold-compressor-valves", "step.cold-add*"},
	},
	// A cabinet has neither a receiver to pump down into nor a charge that is topped up.
	"cold-cabinet-restricted": {
		cause: "cold-restriction",
		steps: []string{"step.cold-food-move", "step.recover-rest", "mend.cold-drier-tube"},
		all:   []string{"step.nitrogen", "step.evacuate", "step.weigh-in-label"},
		never: []string{"mend.cold-drier", "step.cold-add*"},
	},
	"cold-cabinet-worn": {
		cause: "cold-compressor",
		steps: []string{"step.cold-food-move", "mend.cold-compressor-sealed"},
		never: []string{"look.cold-pump-down", "step.cold-add*"},
	},
	"cold-freezer-in-vacuum": {
		steps: []string{"step.stop", "step.cold-food-move-frozen", "mend.cold-drier-stopped"},
		never: []string{"mend.cold-drier", "step.cold-add*"},
	},
	// A low level behind a clear glass: the leak is looked for, and the level watched.
	"cold-case-level-low": {
		steps: []string{"step.find-leak"},
		all:   []string{"step.cold-mark-level"}, never: []string{"step.cold-add*"},
	},
	"cold-freezer-filled": {
		headline: "headline.cold-pull-down",
		steps:    []string{"step.cold-food-frozen", "mend.cold-product"},
		never:    []string{"step.cold-add*", "mend.cold-compressor*"},
	},
	"cold-produce-fan": {
		cause: "cold-evaporator",
		steps: []string{"step.cold-food-move", "look.cold-evaporator-fans", "look.cold-coil-iced"},
		never: []string{"step.cold-add*"},
	},
	"cold-work-room": {
		cause: "cold-starving", steps: []string{"step.cold-room-warms", "look.cold-drier-drop"},
		never: []string{"step.cold-food*", "step.cold-add*"},
	},
	"cold-448-drier": {
		cause: "cold-restriction", steps: []string{"step.cold-food-move", "mend.cold-drier"},
		never: []string{"step.recover-rest", "step.cold-add*"},
	},
	"cold-hot-gas-iced": {
		cause: "cold-evaporator",
		steps: []string{
			"step.cold-food-move-frozen", "step.cold-defrost-now", "step.cold-why-iced",
		},
		never: []string{"step.cold-add*"},
	},
	// Air reads much like too much charge: it is told apart before any is taken out.
	"cold-topped-up": {
		cause: "cold-overcharge", steps: []string{"look.cold-standing"},
		never: []string{"step.cold-recover*"},
	},
	// Colder than it is kept, and still running: something should have stopped it.
	"cold-runs-on": {
		steps: []string{"step.cold-too-cold"},
		never: []string{"step.cold-leave", "mend.*"},
	},
	// A freezer that is as cold as it is kept, and runs on, is told nothing of its food.
	"cold-freezer-holds": {steps: []string{"step.cold-leave"}, never: []string{"step.cold-food*"}},
	// No circuit is opened for what a hand on the pipe would find in minutes.
	"cold-glass-bubbles-unread": {
		steps: []string{"step.cold-food-unknown", "step.read", "look.cold-drier-drop"},
		never: []string{"mend.cold-drier*", "step.cold-add*"},
	},
	// A valve that stays shut reads like a shortage: nothing is recovered before the level is known.
	"cold-valve-shut": {
		steps: []string{"step.cold-food-move", "look.cold-receiver-low", "step.find-leak"},
		never: []string{"step.recover-rest", "step.cold-add*"},
	},
	// Behind a valve that is wholly shut suction is pulled into a vacuum, with all the liquid in the
	// high side: whether the two sides meet after the stop tells it.
	"cold-shut-in-vacuum": {
		cause: "cold-undercharge",
		steps: []string{"step.stop", "step.cold-food-move", "look.cold-apart"},
		never: []string{"step.recover-rest", "step.cold-add*"},
	},
	"cold-shut-apart": {
		steps: []string{"step.stop", "step.cold-food-move", "mend.cold-valve-starves"},
		never: []string{"step.recover-rest", "step.cold-add*", "step.find-leak"},
	},
	// A defrost that the clock ends is put right, whatever iced the coil.
	"cold-iced-by-clock": {
		steps: []string{"step.cold-food-frozen", "step.cold-defrost-now"},
		all:   []string{"step.cold-seen-termination"}, never: []string{"step.cold-add*"},
	},
	// A defrost that was seen to fail is mended, and nothing else is looked for.
	"cold-defrost-fails": {
		cause: "cold-evaporator",
		steps: []string{
			"step.cold-food-frozen", "step.cold-defrost-now", "step.cold-seen-defrost",
		},
		never: []string{"step.cold-why-iced", "step.cold-add*"},
	},
	// Ice that was seen is melted before any gauge is read.
	"cold-iced-unread": {
		steps: []string{"step.cold-food-move", "step.cold-defrost-now"},
		never: []string{"step.read", "step.cold-add*"},
	},
	// Oil marks where refrigerant went, however sound the rest reads.
	"cold-oil-marks": {all: []string{"step.find-leak"}, never: []string{"step.cold-leave"}},
	// Liquid at the compressor comes before food that is cold.
	"cold-freezer-floods-back": {
		steps: []string{"step.feel-compressor", "step.cold-food-frozen", "look.cold-coil-iced"},
		never: []string{"step.cold-add*"},
	},
	"cold-freezer-vacuum-short": {
		cause: "cold-undercharge",
		steps: []string{"step.stop", "step.cold-food-frozen", "step.find-leak"},
		all:   []string{"step.cold-food-away", "step.weigh-in-label"},
		never: []string{"step.cold-add*"},
	},
	"cold-defrost-by-clock": {
		cause: "cold-load", steps: []string{"step.cold-food-frozen", "mend.cold-defrost-heats"},
		never: []string{"step.cold-add*"},
	},
}

func TestColdRooms(t *testing.T) {
	files, err := filepath.Glob("testdata/visits/cold-*.json")
	if err != nil || len(files) != len(coldVisits) {
		t.Fatalf("%d visits, %d of them expected: %v", len(files), len(coldVisits), err)
	}
	for name, want := range coldVisits {
		t.Run(name, func(t *testing.T) {
			v := load(t, name)
			a := assess(t, v)
			if a.Mode.Mode != Refrigeration {
				t.Errorf("judged as %v", a.Mode.Mode)
			}
			steps := codes(a)
			has := func(steps []fact.Code, want string) bool {
				return slices.ContainsFunc(steps, func(c fact.Code) bool {
					begins, any := strings.CutSuffix(want, "*")
					return string(c) == want || any && strings.HasPrefix(string(c), begins)
				})
			}
			for _, s := range want.steps {
				if !has(steps[:min(3, len(steps))], s) {
					t.Errorf("not among the first three steps: %s; %v", s, steps)
				}
			}
			for _, s := range want.all {
				if !has(steps, s) {
					t.Errorf("the plan lacks %s: %v", s, steps)
				}
			}
			for _, s := range want.never {
				if has(steps, s) {
					t.Errorf("the plan holds %s: %v", s, steps)
				}
			}
			if want.headline != "" && a.Headline.Code != want.headline {
				t.Errorf("the headline is %s: %s", a.Headline.Code, a.Headline.Text)
			}
			cause, _ := a.Headline.Value("cause")
			if code, _ := cause.Of.(fact.Term); want.cause != "" &&
				string(code) != "cause."+want.cause {
				t.Errorf("the headline is of %q: %s", code, a.Headline.Text)
			}
			second, _ := a.Headline.Value("second")
			if code, _ := second.Of.(fact.Term); want.second != "" &&
				string(code) != "cause."+want.second {
				t.Errorf("beside it stands %q: %s", code, a.Headline.Text)
			}
			for _, f := range factsOf(reflect.ValueOf(&a)) {
				if ofCooling(f.Code) {
					t.Errorf("a sentence of cooling: %s", f.Text)
				}
			}
			for _, l := range laws {
				if what := l.broken(&v, &a); what != "" {
					t.Errorf("%s: %s", l.name, what)
				}
			}
			v.Language = Spanish
			spanish := assess(t, v)
			for _, f := range factsOf(reflect.ValueOf(&spanish)) {
				if f.Text == "" || strings.HasPrefix(f.Text, string(f.Code)) {
					t.Errorf("no Spanish words: %v", f)
				}
			}
		})
	}
}

// ofCooling reports whether a code is one that only comfort cooling says: its findings, what
// it mends, its air, ice, conditions and targets.
func ofCooling(code fact.Code) bool {
	if strings.Contains(string(code), "cold") {
		return false
	}
	return slices.ContainsFunc(
		[]string{
			"finding.", "mend.", "look.", "split.", "freeze.", "ice.", "condition.", "sign.",
			"reading.", "dose.",
		},
		func(prefix string) bool { return strings.HasPrefix(string(code), prefix) },
	)
}

// A machine is taken for one of a cold room where its box, its refrigerant or its owner says so.
func TestColdRoomsAreFound(t *testing.T) {
	cold := Visit{
		Equipment: Equipment{Refrigerant: "R-449A", Metering: TXV},
		Readings: Readings{
			SuctionPressure: Measured(quantity.PSIG(44)),
			SuctionLine:     Measured(quantity.Fahrenheit(38)),
		},
	}
	if m := assess(t, cold).Mode.Mode; m != Refrigeration {
		t.Errorf("R-449A at such a suction is %v", m)
	}
	warm := Visit{
		Equipment: Equipment{
			Refrigerant: "R-134a", Metering: TXV,
			ColdRoom: coldroom.Room{Application: coldroom.WalkInCooler},
		},
		Readings: Readings{ReturnDryBulb: Measured(quantity.Fahrenheit(64))},
	}
	a := assess(t, warm)
	if a.Mode.Mode != Refrigeration || a.Plan[0].Do.Code != "step.cold-food-move" {
		t.Errorf("a cooler that failed is %v, and first %s", a.Mode.Mode, a.Plan[0].Do.Code)
	}
}

// Where a leak is looked for, it is said before that what leaks burns.
func TestColdRoomLeakBurns(t *testing.T) {
	for name, burns := range map[string]bool{
		"cold-burning-short": true, "cold-short-behind-receiver": false,
	} {
		a := assess(t, load(t, name))
		told := slices.ContainsFunc(
			a.Dangers, func(d Danger) bool { return d.Code == "leak-burns" },
		)
		if told != burns {
			t.Errorf("%s: the danger of a leak is told: %t", name, told)
		}
	}
}
