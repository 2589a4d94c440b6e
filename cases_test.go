package satline

import (
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// What the first screen of each case has to say, and what its plan and its dangers may not hold;
// the cases are invented, eight of them by a simulation. A code ends in "*" where any that begins
// so will do.
var cases = []struct {
	name    string
	danger  string // told
	calm    string // a danger that is not told
	stops   bool
	first   []string // among the first three steps, in this order
	then    string   // after them
	never   []string // anywhere in the plan
	cause   string   // in the headline
	outcome ChargeOutcome
}{
	{
		name: "liquid-hose-shut-no-supply", cause: "liquid-hose", first: []string{"mend.liquid-hose"},
		never: []string{"mend.compressor-*", "mend.not-pumping"}, outcome: ChargeNotJudged,
	},
	{
		name: "one-gauge-on-isobutane", cause: "other-refrigerant",
		first: []string{"mend.other-refrigerant"}, never: []string{"step.find-leak"},
	},
	{
		name: "discharge-misread", cause: "discharge-clamp", first: []string{"mend.discharge-clamp"},
		never: []string{"mend.valve-overfeeding"}, outcome: ChargeInBand,
	},
	{
		name: "heating-hot-no-head", danger: "discharge-hottest", stops: true,
		first: []string{"step.stop", "step.heating-why-stopped"},
	},
	{
		name: "outdoors-in-celsius", cause: "outdoor-sensor", first: []string{"look.outdoor-second"},
		never: []string{"step.stop", "step.warmer-day"},
	},
	{
		name: "drop-at-the-drier", cause: "restriction",
		first: []string{"mend.liquid-line-restriction"},
		never: []string{"step.add*", "look.liquid-line-drop"},
	},
	{
		name: "no-drop-to-the-valve", cause: "restriction", first: []string{"mend.valve-starving"},
		never: []string{"step.add*", "look.liquid-line-drop"},
	},
	{
		name: "valve-bulb-off", cause: "overfeed", danger: "floodback",
		first: []string{"step.feel-compressor", "mend.valve-overfeeding"},
		never: []string{"step.add*", "step.recover*"},
	},
	{name: "compressor-weak-amps", cause: "vapor-leak|not-pumping", never: []string{"step.add*"}},
	{
		name:    "fan-dead-4min",
		danger:  "condensing-highest",
		stops:   true,
		first:   []string{"step.stop", "step.outdoor-fan"},
		never:   []string{"step.run-on"},
		outcome: ChargeNotJudged,
	},
	{
		name:    "head-high-25min",
		danger:  "condensing-highest",
		stops:   true,
		first:   []string{"step.stop", "step.outdoor-fan", "step.outdoor-coil"},
		outcome: ChargeNotJudged,
	},
	{
		name: "head-high-outdoors-right", danger: "condensing-highest", stops: true,
		first:   []string{"step.stop", "mend.condenser-beyond"},
		never:   []string{"step.outdoor-fan", "step.outdoor-coil", "look.outdoor-coil"},
		outcome: ChargeNotJudged,
	},
	{
		name: "heating-head-high-air-right", danger: "condensing-highest", stops: true,
		first: []string{"step.stop", "mend.air-beyond"},
		never: []string{"step.heating-indoor-air", "look.indoor-air-path"},
	},
	{
		name: "cold-hot-discharge", danger: "discharge-hottest", stops: true,
		first: []string{"step.stop", "step.cold-food-frozen", "step.cold-why-stopped"},
		then:  "step.cold-restart", never: []string{"step.cold-leave"},
	},
	{
		name: "weighed-in-reads-low", first: []string{"look.oil-and-leak"},
		never: []string{"step.add*", "step.recover*", "step.evacuate", "step.nitrogen"},
	},
	{
		name: "outdoors-unsure", first: []string{"look.outdoor-coil"},
		never: []string{"step.leave", "step.add*", "step.recover*"},
	},
	{
		name: "liquid-back-air-unseen", danger: "floodback",
		first: []string{"step.feel-compressor", "look.indoor-air-path"},
		never: []string{"step.leave", "step.add*", "step.recover*"},
	},
	{
		name: "liquid-back-air-right", danger: "floodback",
		first: []string{"step.feel-compressor", "step.why-liquid"},
		never: []string{"step.leave", "step.add*", "look.indoor-air-path"},
	},
	{
		name:    "head-high-hot-discharge",
		danger:  "discharge-hottest",
		stops:   true,
		first:   []string{"step.stop", "step.outdoor-fan"},
		never:   []string{"step.run-on"},
		outcome: ChargeNotJudged,
	},
	{
		name:   "nearly-empty-vacuum",
		danger: "suction-in-vacuum",
		stops:  true,
		first:  []string{"step.stop", "step.find-leak"},
		cause:  "next-to-empty",
		never:  []string{"mend.other-refrigerant", "mend.refrigerant-selected"},
	},
	{
		name:  "nearly-empty-no-outdoor",
		first: []string{"step.find-leak"},
		cause: "next-to-empty",
		never: []string{"mend.other-refrigerant", "mend.refrigerant-selected"},
	},
	{name: "moves-without-log", first: []string{"step.halt"}, never: []string{"step.add*"}},
	{
		name:    "walk-in-sound",
		first:   []string{"step.cold-leave"},
		never:   []string{"step.close-doors", "step.warmer-day", "step.makers-chart", "mend.*"},
		outcome: ChargeInBand,
	},
	{
		name:  "restricted-piston",
		cause: "restriction",
		first: []string{"mend.*"},
		never: []string{"step.add*"},
	},
	{name: "gauges-on-other-refrigerant", cause: "other-refrigerant", first: []string{"mend.*"}},
	{
		name:  "mini-split-no-readings",
		first: []string{"step.weigh-in"},
		never: []string{"step.read"},
	},
	{name: "new-install-opened", first: []string{"step.weigh-in"}},
	{
		name:    "heating-unsaid-35F",
		first:   []string{"step.leave"},
		never:   []string{"step.thaw", "mend.*", "step.add*"},
		outcome: ChargeNotJudged,
	},
	{
		name:  "heating-unsaid-58F",
		first: []string{"step.ask-mode"},
		never: []string{"step.thaw", "mend.condenser*"},
	},
	{
		name:    "r407c-leaked",
		cause:   "undercharge",
		first:   []string{"step.find-leak", "step.recover-rest", "step.mend-leak"},
		never:   []string{"step.add*"},
		outcome: ChargeLow,
	},
	{
		name:  "four-readings-low",
		cause: "undercharge",
		first: []string{"step.find-leak"},
		never: []string{"step.add*"},
	},
	{
		name:    "short-piston",
		cause:   "undercharge",
		first:   []string{"step.find-leak", "step.read"},
		never:   []string{"step.add*", "step.recover*"},
		outcome: ChargeLow,
	},
	{
		name:  "moved-third-open",
		first: []string{"step.halt"},
		never: []string{"step.find-leak", "step.add*"},
	},
	{
		name:    "moved-third-too-far",
		first:   []string{"step.recover"},
		never:   []string{"step.halt", "step.find-leak"},
		outcome: ChargeHigh,
	},
	{
		name:    "short-and-hot",
		danger:  "discharge-hottest",
		stops:   true,
		first:   []string{"step.find-leak", "step.recover-rest"},
		never:   []string{"step.add*"},
		outcome: ChargeLow,
	},
	{
		name:    "leak-found",
		first:   []string{"step.recover-rest", "step.mend-leak"},
		never:   []string{"step.add*", "step.find-leak"},
		outcome: ChargeLow,
	},
	{
		name:  "all-seen-and-short",
		cause: "undercharge",
		first: []string{"step.recover-rest", "step.nitrogen", "step.evacuate"},
		never: []string{"step.charge-stays", "step.add*"},
	},
	{
		name:    "far-over-its-charge",
		danger:  "condensing-highest",
		stops:   true,
		first:   []string{"step.outdoor-fan", "step.outdoor-coil"},
		then:    "step.recover-rest",
		never:   []string{"step.recover", "step.leave-charge", "step.start-again"},
		outcome: ChargeNotJudged,
	},
	{
		name:    "opened-and-ran",
		first:   []string{"step.recover-rest", "step.nitrogen", "step.evacuate"},
		outcome: ChargeNotJudged,
	},
	{
		name:    "added-once-still-short",
		first:   []string{"step.find-leak", "step.add"},
		never:   []string{"step.read"},
		outcome: ChargeLow,
	},
	{
		name:    "added-too-much",
		first:   []string{"step.recover", "step.wait"},
		never:   []string{"step.read"},
		outcome: ChargeHigh,
	},
	{
		name:  "recovered-third-dirty",
		first: []string{"step.halt", "mend.condenser*"},
		never: []string{"step.read"},
	},
	{
		name:   "iced-and-wet",
		danger: "floodback",
		first:  []string{"step.thaw", "step.why-froze"},
		never:  []string{"step.feel-compressor"},
	},
	{
		name: "froze-and-so-cold", danger: "evaporating-coldest",
		first: []string{"look.indoor-ice", "mend.low-indoor-airflow"},
	},
	{
		name: "looked-and-iced", first: []string{"step.thaw", "step.why-froze"},
		never: []string{"look.indoor-ice"},
	},
	{name: "sound-on-the-hottest-day", first: []string{"step.leave"}, never: []string{"step.stop"}},
	{
		name:  "froze-last-night",
		first: []string{"look.indoor-air-path"},
		never: []string{"step.leave"},
	},
	{name: "froze-air-seen", first: []string{"step.leave", "step.ask-use"}},
	{
		name:  "not-cooling-sound",
		first: []string{"look.indoor-air-path"},
		never: []string{"step.leave"},
	},
	{
		name:   "drier-hot-discharge",
		danger: "discharge-hottest",
		stops:  true,
		first:  []string{"step.start-again", "mend.restriction"},
	},
	{
		name:  "dirty-and-short",
		first: []string{"mend.condenser*", "step.leave-charge"},
		never: []string{"step.read"},
	},
	{
		name:  "gauges-on-water",
		cause: "other-refrigerant",
		first: []string{"mend.*"},
		never: []string{"step.makers-chart"},
		calm:  "floodback",
	},
	{
		name:    "gauges-on-isobutane",
		calm:    "floodback",
		first:   []string{"mend.other-refrigerant"},
		never:   []string{"step.find-leak"},
		outcome: ChargeNotJudged,
	},
	{
		name:    "suction-hose-shut",
		calm:    "compression-ratio-highest",
		first:   []string{"mend.suction-hose"},
		never:   []string{"step.stop", "mend.restriction"},
		outcome: ChargeInBand,
	},
	{
		name:    "compressor-still",
		calm:    "floodback",
		cause:   "not-pumping",
		first:   []string{"mend.compressor-stopped"},
		outcome: ChargeNotJudged,
	},
	{
		name:   "liquid-valve-shut",
		danger: "compression-ratio-highest",
		stops:  true,
		first:  []string{"step.open-valves", "step.find-leak"},
		never:  []string{"step.start-again", "step.read"},
	},
	{
		name:  "mini-split-starved",
		first: []string{"step.find-leak", "step.recover-weigh"},
		never: []string{"step.read", "mend.restriction"},
	},
	{
		name:  "liquid-not-read",
		first: []string{"step.find-leak", "step.read", "step.leave-charge"},
		never: []string{"mend.restriction"},
	},
	{
		name:  "over-its-label",
		first: []string{"look.liquid-clamp-second"},
		never: []string{"step.leave", "step.charge-stays"},
	},
	{name: "two-pressures", first: []string{"step.read"}, never: []string{"step.leave"}},
	{
		// Ice may be why readings contradict each other.
		name: "one-port-iced", first: []string{"look.indoor-ice", "step.reread"},
	},
	{
		// Whether it has run long enough or not, that head comes from outdoors.
		name: "tripped-and-high", danger: "condensing-high",
		first: []string{"look.outdoor-coil", "step.run-on"},
	},
	{name: "just-started", calm: "superheat-low", first: []string{"step.run-on"}},
	{
		name:  "low-air-txv",
		cause: "low-indoor-airflow",
		first: []string{"mend.low-indoor-airflow"},
		never: []string{"step.recover*", "step.evacuate"},
	},
	{name: "sound-txv", first: []string{"step.leave"}, outcome: ChargeInBand},
	{
		name:    "sim-sound-subcooling-edge",
		first:   []string{"step.leave"},
		never:   []string{"step.recover*"},
		outcome: ChargeInBand,
	},
	{
		name:    "sim-undercharged-no-target",
		cause:   "undercharge",
		first:   []string{"step.find-leak"},
		outcome: ChargeLow,
	},
	{
		name:    "sim-undercharged-air-known",
		cause:   "undercharge",
		first:   []string{"step.find-leak", "step.add"},
		outcome: ChargeLow,
	},
	{
		name:    "sim-overcharged-flooding-piston",
		cause:   "overcharge",
		never:   []string{"step.add*", "mend.liquid-clamp"},
		outcome: ChargeHigh,
	},
	{
		name:    "liquid-hose-shut",
		first:   []string{"mend.liquid-hose"},
		never:   []string{"mend.not-pumping", "mend.compressor-*"},
		outcome: ChargeNotJudged,
	},
	{
		name: "runs-backwards", cause: "not-pumping", first: []string{"mend.*"},
		never: []string{"step.run-on"},
	},
	{
		name: "vacuum-ten-minutes", danger: "suction-in-vacuum", stops: true,
		first: []string{"step.open-valves", "step.find-leak"},
		never: []string{"step.start-again", "look.oil-and-leak"},
	},
	{
		// Liquid stands before something that is shut: the valves are opened once.
		name: "vacuum-behind-a-valve", danger: "suction-in-vacuum", stops: true,
		first: []string{"step.open-valves", "step.start-again"},
		never: []string{"mend.liquid-line-shut"},
	},
	{
		name: "draws-much", danger: "current-high", first: []string{"step.why-current"},
		never: []string{"step.leave"},
	},
	{
		name: "added-behind-restriction", cause: "restriction",
		first: []string{"mend.restriction", "step.leave-charge"},
		never: []string{"step.add*", "step.recover*"},
	},
	{
		name:  "restrictor-unsure",
		first: []string{"look.suction-clamp-second"},
		never: []string{"mend.restrict*"},
	},
	{
		name: "sim-clamp-reads-the-air", first: []string{"look.liquid-clamp-second"},
		never: []string{"step.recover*", "step.evacuate"},
	},
	{
		name: "clamp-in-the-sun", first: []string{"look.liquid-clamp-second", "step.leave-charge"},
		never: []string{"step.recover*", "step.add*", "step.evacuate"},
	},
	{
		name: "short-on-a-long-line", cause: "undercharge", first: []string{"step.find-leak"},
		never: []string{"step.add*"},
	},
	{
		name: "fan-slow", cause: "condenser-heat-rejection", first: []string{"mend.condenser-beyond"},
		never: []string{"mend.condenser-recirculation"},
	},
	{
		name: "air-comes-back", cause: "condenser-heat-rejection",
		first: []string{"look.outdoor-air-at-coil"}, never: []string{"mend.*"},
	},
	{
		name: "over-by-all-looks", danger: "floodback", cause: "overcharge",
		first: []string{"step.feel-compressor", "step.recover"},
		never: []string{"step.recover-rest", "step.evacuate"},
	},
	{
		name: "liquid-over-saturation", first: []string{"look.liquid-clamp-second"},
		never: []string{"step.recover*", "step.add*", "step.evacuate"},
	},
	{
		name: "short-by-one-clamp", first: []string{"look.liquid-clamp-second", "step.find-leak"},
		never: []string{"step.add*"},
	},
	{
		name: "liquid-clamp-low", first: []string{"look.liquid-clamp-second"},
		never: []string{"step.recover*"},
	},
	{
		name: "piston-short-and-humid", cause: "undercharge", outcome: ChargeLow,
		first: []string{"step.find-leak", "step.leave-charge"},
		never: []string{"step.recover*"},
	},
	{
		name: "capillary-too-full", danger: "floodback",
		first: []string{"step.feel-compressor", "look.standing-pressure"},
		never: []string{"step.why-liquid", "step.add*"},
	},
	{
		name: "slugs-on-a-cool-day", danger: "floodback",
		first: []string{"step.feel-compressor", "look.standing-pressure"},
		never: []string{"step.why-liquid", "step.read-again", "step.add*"},
	},
	{
		name: "air-alone-read", first: []string{"look.indoor-air-path", "step.read"},
		never: []string{"step.find-leak"},
	},
	{
		// Hardly cooled air: whether the compressor runs at all is seen before gauges go on.
		name:  "thermometers-alone",
		first: []string{"step.see-runs", "look.indoor-air-path", "step.read"},
	},
	{
		// What a reading in the wrong place makes of a head is no danger.
		name: "air-sensors-exchanged", calm: "condensing-high", cause: "air-sensors-swapped",
		first: []string{"mend.air-sensors-swapped"},
	},
	{
		// Little air by the label, and measured to be that: nothing blocks it.
		name: "air-as-rated", first: []string{"step.leave"},
	},
	{
		// A test that was taken is not asked for again: another proves it.
		name: "holds-at-stop", cause: "vapor-leak", first: []string{"mend.compressor-proof"},
	},
	{
		// Nothing is broken, and the rooms are kept colder than the coil stands.
		name: "froze-set-cold", first: []string{"step.leave", "mend.low-load"},
	},
	{
		name: "wet-bulb-typed-wrong", outcome: ChargeNotJudged,
		first: []string{"doubt.return-drier-than-dry.mend"},
		never: []string{"mend.*", "step.add*"},
	},
	{
		name: "hoses-swapped", cause: "hoses-swapped", outcome: ChargeNotJudged,
		never: []string{"step.find-leak", "step.add*"},
	},
	{
		name: "searched-no-leak", cause: "undercharge",
		first: []string{"step.recover-rest", "step.nitrogen", "step.evacuate"},
		never: []string{"step.find-leak", "step.mend-leak", "step.add*"},
	},
	{name: "leak-found-and-doubted", first: []string{"step.recover-rest", "step.mend-leak"}},
	{name: "gas-unproved", first: []string{"look.standing-pressure"}},
	{
		name: "over-and-floods", cause: "overcharge", danger: "floodback",
		first: []string{"step.feel-compressor", "step.recover-rest", "step.evacuate"},
		never: []string{"step.leave-charge"},
	},
	{
		name:  "heating-return-in-celsius",
		first: []string{"step.reread"}, never: []string{"step.leave", "mend.*"},
	},
	{
		name:  "heating-outdoors-in-celsius",
		first: []string{"step.reread"}, never: []string{"step.leave", "mend.*"},
	},
	{
		// Ice that was seen is melted, however little was read, and what made it is looked for.
		name:  "heating-iced-no-port",
		first: []string{"step.heating-thaw", "look.defrost-test", "look.outdoor-coil"},
		never: []string{"step.read"},
	},
	{
		// Beyond what makers ask for, and hardly sound: no charge moves, and nothing is left unseen.
		name:  "heating-odd-subcooling",
		first: []string{"look.liquid-clamp-second"},
		never: []string{"step.leave", "step.heating-recover-all"},
	},
	{
		// Who weighed a charge in sees the coil outdoors before the caps are on.
		name: "heating-weighed-in", first: []string{"look.outdoor-coil"}, never: []string{"step.leave"},
	},
	{
		name: "heating-leak-found", cause: "undercharge",
		first: []string{"step.recover-rest", "step.mend-leak"}, never: []string{"step.find-leak"},
	},
	{
		name: "heating-restricted-hot", danger: "discharge-hottest", stops: true,
		first: []string{"step.start-again", "mend.heating-restriction"},
	},
	{
		name: "heating-iced-and-hot", danger: "discharge-hottest", stops: true,
		first: []string{"mend.low-indoor-airflow", "step.start-again"}, then: "step.heating-thaw",
	},
	{
		// A controller moves the valve: its compressor may run at less than full speed.
		name: "inverter-unsaid", never: []string{"mend.valve-before-compressor", "mend.vapor-leak"},
	},
	{name: "weak-heat-pump", first: []string{"mend.valve-before-compressor"}},
	{name: "gas-proved", first: []string{"mend.gas-proved"}},
	{name: "restricted-at-device", first: []string{"mend.restriction-at-device"}},
	{
		name:  "iced-and-low",
		first: []string{"step.thaw", "step.find-leak"},
		never: []string{"step.why-froze*"},
	},
	{
		// The air is right, so that the ice may come from what is missing.
		name: "iced-air-clear", first: []string{"step.thaw", "step.find-leak"},
		never: []string{"step.why-froze*"},
	},
	{
		name:  "iced-filter-seen",
		first: []string{"step.thaw", "step.clean-filter", "step.why-froze-beside"},
		never: []string{"step.why-froze"},
	},
	{
		name:  "high-bill-sound",
		first: []string{"look.outdoor-coil"},
		never: []string{"step.leave"},
	},
	{name: "noise-sound", first: []string{"step.find-noise", "step.leave"}},
	{
		name:  "nearly-empty-saturated",
		first: []string{"step.find-leak", "step.recover-rest"},
		never: []string{"step.read", "look.*"},
	},
	{
		name: "room-machine-short", danger: "leak-burns",
		first: []string{"step.find-leak", "step.recover-weigh"},
		never: []string{"step.read"},
	},
	{
		name: "propane-short", danger: "leak-burns",
		first: []string{"step.find-leak", "step.recover-rest"},
		never: []string{"step.add*"},
	},
	{name: "burning-leak", danger: "leak-burns", first: []string{"step.find-leak"}},
	{
		name: "device-unknown-short", cause: "undercharge", first: []string{"step.ask-device"},
		never: []string{"step.add*", "step.recover*"},
	},
	{
		name: "device-unknown-drier", cause: "restriction", first: []string{"mend.*"},
		never: []string{"step.ask-device", "step.add*"},
	},
	{name: "drain-found", first: []string{"mend.drain*"}, never: []string{"step.read-again"}},
	{
		// Sound machines condense so high in such air.
		name: "heat-wave", calm: "condensing-highest", danger: "condensing-high",
		first: []string{"look.outdoor-coil"},
	},
	{
		// A control holds the head: it is as high as it should be, whatever it is outdoors.
		name: "cold-day-fan-cycles", calm: "condensing-highest",
		first: []string{"step.hold-fan"}, never: []string{"mend.*", "look.outdoor-coil"},
	},
	{
		name: "cold-day-head-held", calm: "condensing-highest",
		first: []string{"step.warmer-day"}, never: []string{"mend.*", "look.outdoor-coil"},
	},
	{
		// The weather hides what a charge is off by, and nothing else.
		name: "cold-day-empty", cause: "next-to-empty",
		first: []string{"step.find-leak", "step.recover-rest", "step.mend-leak"},
		never: []string{"step.warmer-day", "step.add*"},
	},
	{
		name: "cold-day-not-pumping", cause: "not-pumping",
		first: []string{"mend.not-pumping"}, never: []string{"step.warmer-day"},
	},
	{
		name: "cold-day-filter", cause: "low-indoor-airflow",
		first: []string{"look.indoor-ice", "mend.filter"}, never: []string{"step.warmer-day"},
	},
	{
		name: "cold-day-short", outcome: ChargeNotJudged,
		first: []string{"step.find-leak"}, never: []string{"step.add*"},
	},
	{
		name: "hunts-by-the-minute", danger: "slugging", calm: "floodback",
		first: []string{"step.feel-compressor", "step.valve-hunts"},
	},
	{
		name: "wet-bulb-digits-swapped", outcome: ChargeNotJudged,
		first: []string{"doubt.return-drier-than-dry.mend"}, never: []string{"mend.*"},
	},
	{
		name: "no-pressure-reversing", cause: "not-pumping",
		first: []string{"mend.valve-before-compressor"},
	},
	{
		// It is not run on to dry with a head like that, and what was found is put right.
		name: "found-outdoors-wet", stops: true,
		first: []string{"step.stop", "mend.condenser-heat-rejection", "step.start-again"},
		never: []string{"step.dry-coil"},
	},
	{
		name: "looked-outdoors-wet", stops: true,
		first: []string{"step.stop", "mend.condenser-beyond", "step.start-again"},
		never: []string{"step.dry-coil", "look.outdoor-coil"},
	},
	{
		// What a look found is put right, though it reads sound.
		name: "found-in-the-air", first: []string{"step.seen-indoor"},
		never: []string{"step.leave"},
	},
	{
		// In the first of two stages it reads as one whose compressor leaks.
		name: "stage-unsaid", first: []string{"step.full-capacity", "step.read-again"},
		never: []string{"mend.*", "look.*"},
	},
	{
		name: "economizer-in-the-cold", outcome: ChargeNotJudged,
		first: []string{"step.why-runs", "step.warmer-day"},
	},
	{
		name: "lines-in-celsius", outcome: ChargeNotJudged, calm: "floodback",
		first: []string{"doubt.lines-in-celsius.mend"},
		never: []string{"doubt.suction-line-cannot-be.mend"},
	},
	{
		name: "gauges-right-drum-wrong", cause: "other-refrigerant", outcome: ChargeNotJudged,
		first: []string{"mend.wrong-refrigerant"}, never: []string{"mend.other-refrigerant"},
	},
	{
		// A hand was on the reversing valve: the compressor is proved, before a long reading.
		name: "valve-felt-tight", cause: "vapor-leak", first: []string{"mend.compressor-proof"},
		never: []string{"mend.leak-within", "step.read"},
	},
	{
		// Minutes at the ports tell more than a search.
		name: "suction-pressure-alone", first: []string{"step.read", "step.leave-charge"},
		never: []string{"step.find-leak"},
	},
	{
		name:   "sim-starved-no-capacity",
		cause:  "restriction",
		danger: "discharge-hottest",
		stops:  true,
		first:  []string{"mend.*"},
	},
}

func caseOfName(t *testing.T, name string) Visit {
	t.Helper()
	return decoded(t, "cases/"+name)
}

func TestCases(t *testing.T) {
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := assess(t, caseOfName(t, c.name))
			steps := codes(a)
			has := func(steps []fact.Code, want string) bool {
				return slices.ContainsFunc(steps, func(c fact.Code) bool {
					begins, any := strings.CutSuffix(want, "*")
					return string(c) == want || any && strings.HasPrefix(string(c), begins)
				})
			}
			rest := steps[:min(3, len(steps))]
			for _, want := range c.first {
				k := slices.IndexFunc(rest, func(s fact.Code) bool {
					return has([]fact.Code{s}, want)
				})
				if k < 0 {
					t.Errorf("not in order among the first three steps: %s; %v", want, steps)
				}
				rest = rest[k+1:]
			}
			if c.then != "" && !has(steps[min(3, len(steps)):], c.then) {
				t.Errorf("not after the first three steps: %s; %v", c.then, steps)
			}
			for _, bad := range c.never {
				if has(steps, bad) {
					t.Errorf("the plan holds %s: %v", bad, steps)
				}
			}
			if c.danger != "" && !endangers(a, c.danger) {
				t.Errorf("the danger %s is not told: %v", c.danger, a.Dangers)
			}
			if c.calm != "" && endangers(a, c.calm) {
				t.Errorf("the danger %s is told", c.calm)
			}
			if c.stops && steps[0] != StepStop {
				t.Errorf("it is not stopped first: %v", steps)
			}
			cause, _ := a.Headline.Value("cause")
			code, _ := cause.Of.(fact.Term)
			if c.cause != "" &&
				!slices.Contains(
					strings.Split(c.cause, "|"), strings.TrimPrefix(string(code), "cause."),
				) {
				t.Errorf("the headline is of %q: %s", code, a.Headline.Text)
			}
			if c.outcome != "" && a.Charge.Outcome != c.outcome {
				t.Errorf("the charge is %s", a.Charge.Outcome)
			}
		})
	}
}

// What is missing may be what a long line takes, and the search for a leak says so; beside a line
// that the label allows for it does not.
func TestShortOnALongLine(t *testing.T) {
	says := func(v Visit) bool {
		a := assess(t, v)
		i := slices.IndexFunc(a.Plan, func(s Step) bool {
			return s.Do.Code == StepFindLeak || s.Look == "oil-and-leak"
		})
		if i < 0 {
			t.Fatalf("no leak is looked for: %v", codes(a))
		}
		return a.Plan[i].Why != nil && a.Plan[i].Why.Code == "leak.or-line"
	}
	v := caseOfName(t, "short-on-a-long-line")
	if !says(v) {
		t.Error("the line is not spoken of")
	}
	weighed := v
	if weighed.Conditions.ChargeWeighed = true; !says(weighed) {
		t.Error("the line is not spoken of where the charge was weighed in")
	}
	at := v.Equipment.Label.FactoryLineSet
	if v.Equipment.LineSet.Length = at; says(v) {
		t.Error("a line that the label allows for is spoken of")
	}
	if v.Equipment.LineSet.Length = at + quantity.Feet(3); says(v) {
		t.Error("a line that takes next to nothing more is spoken of")
	}
}

// A machine whose charge was put right is left: no reading more is asked for.
func TestDosingEnds(t *testing.T) {
	v := caseOfName(t, "added-into-band")
	for i := range v.Log {
		if e := &v.Log[i]; e.At > v.Moves[0].At { // at its target
			e.LiquidLine = Measured(quantity.Fahrenheit(97))
		}
	}
	if steps := codes(assess(t, v)); len(steps) != 1 || steps[0] != StepLeave {
		t.Errorf("%v", steps)
	}
}

// What a look found is put right before a machine is run on to settle.
func TestFoundBeforeItSettled(t *testing.T) {
	v := caseOfName(t, "tripped-and-high")
	v.Checks = []Check{{Look: "outdoor-coil", Found: true}}
	steps := codes(assess(t, v))
	if right := slices.Index(steps, fact.Code("step.seen-outdoor")); right < 0 ||
		right > slices.Index(steps, StepRunOn) {
		t.Errorf("%v", steps)
	}
}
