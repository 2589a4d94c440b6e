package cooling

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// ways are what is done about the conditions that spoil the readings.
var ways = map[string]fact.Code{
	"fluid-no-liquid-in-summer": modes.MakersChart,
	"fluid-in-vacuum":           modes.MakersChart,
	"fluid-toxic-indoors":       modes.MakersChart,
	"coil-iced":                 modes.Thaw,
	"panels-off":                modes.PanelsOn,
	"run-short":                 modes.RunOn,
	"just-moved":                modes.Wait,
	"coil-wet":                  modes.DryCoil,
	"condenser-fan-cycling":     modes.HoldFan,
	"economizer-open":           modes.CloseDamper,
	"doors-open":                modes.CloseDoors,
	outdoorCold:                 modes.WarmerDay,
	"house":                     modes.HouseRule,
}

// cleans is what takes away the dirt of a cause.
var cleans = map[diagnose.Code]fact.Code{
	diagnose.LowIndoorAir: modes.CleanFilter,
	diagnose.CondenserAir: modes.CleanOutdoor,
}

// seen is what puts right what a look found of a cause, whatever the readings say of it.
var seen = map[diagnose.Code]fact.Code{
	diagnose.LowIndoorAir: "step.seen-indoor",
	diagnose.CondenserAir: "step.seen-outdoor",
}

// secures is what is looked at, with the machine stopped, about a danger; where it comes to a look,
// its answer and the cause that it is for.
var secures = map[string]struct {
	steps []fact.Code
	look  string
	cause diagnose.Code
}{
	"condensing-highest": {
		[]fact.Code{modes.OutdoorFan, modes.OutdoorCoil}, "outdoor-coil", diagnose.CondenserAir,
	},
	"suction-in-vacuum":         {steps: []fact.Code{modes.OpenValves}},
	"compression-ratio-highest": {steps: []fact.Code{modes.OpenValves}},
	"current-highest":           {steps: []fact.Code{modes.Voltage}},
}

// behind is what is looked at behind a danger, from outside, before a machine is left that reads
// sound beside it.
var behind = map[string]string{
	"condensing-high": "outdoor-coil", "discharge-hot": "outdoor-coil",
	"superheat-low": airLook, "evaporating-cold": airLook, "evaporating-coldest": airLook,
}

// asides are the looks that stand behind a reading below, or above, what its label asks for, in
// their order.
var asides = map[charge.Method]struct{ below, above []string }{
	charge.Superheat: {[]string{airLook}, []string{"suction-clamp-second", "oil-and-leak"}},
	charge.Subcooling: {[]string{"oil-and-leak"},
		[]string{"liquid-clamp-second", "outdoor-coil", "standing-pressure"}},
	charge.Approach: {[]string{"liquid-clamp-second"}, []string{"outdoor-coil", "oil-and-leak"}},
}

// clamps are the looks at the line clamps, and the words for a hand that is laid on them.
var clamps = []struct {
	cause diagnose.Code
	look  string
	word  fact.Term
}{
	{diagnose.LiquidClamp, "liquid-clamp-second", "clamp.liquid"},
	{diagnose.SuctionClamp, "suction-clamp-second", "clamp.suction"},
}

// beyond is how a cause is put right once its look was answered, by the way that holds before;
// split for machines alone that have no reversing valve or a tight one, from a chance of least on.
var beyond = []struct {
	way, then  fact.Code
	look       string
	yes, split bool
	least      float64
}{
	{way: "mend.non-condensables", look: "standing-pressure", yes: true, then: "mend.gas-proved"},
	{way: "mend.non-condensables", look: "standing-pressure", least: offFrom,
		then: "mend.gas-proved"},
	{way: "mend.refrigerant-selected", look: "refrigerant-label", then: otherDrum},
	{way: "mend.other-refrigerant", look: "refrigerant-label", then: otherDrum},
	{way: "mend.vapor-leak", look: atStop, yes: true, split: true, least: condemns,
		then: "mend.compressor-worn"},
	{way: "mend.compressor-valves", look: atStop, yes: true, split: true, least: condemns,
		then: "mend.compressor-worn"},
	{way: "mend.vapor-leak", look: atStop, yes: true, split: true, then: "mend.compressor-proof"},
	{way: "mend.compressor-valves", look: atStop, yes: true, split: true,
		then: "mend.compressor-proof"},
	{way: "mend.vapor-leak", look: atStop, split: true, then: "mend.compressor-proof"},
	{way: "mend.compressor-valves", look: atStop, split: true, then: "mend.compressor-proof"},
	{way: "mend.vapor-leak", look: atStop, yes: true, then: "mend.leak-within"},
	{way: "mend.compressor-valves", look: atStop, yes: true, then: "mend.leak-within"},
	{way: "mend.reversing-valve-leak", look: "reversing-valve", yes: true,
		then: "mend.reversing-valve-found"},
	{way: "mend.condenser-heat-rejection", look: "outdoor-coil", then: "mend.condenser-beyond"},
	{way: "mend.condenser-coil", look: "outdoor-coil", then: "mend.condenser-beyond"},
	{way: "mend.low-indoor-airflow", look: airLook, then: "mend.air-beyond"},
	{way: "mend.indoor-coil", look: airLook, then: "mend.air-beyond"},
	{way: "mend.ducts", look: airLook, then: "mend.air-beyond"},
	{way: "mend.restriction", look: "liquid-line-drop", then: "mend.restriction-at-device"},
	{way: "mend.valve-starving", look: "valve-bulb", yes: true, then: "mend.valve-bulb-found"},
	{way: "mend.restrictor-small", look: ofRestrictor, yes: true, then: "mend.restrictor-fit"},
	{way: "mend.restrictor-large", look: ofRestrictor, yes: true, then: "mend.restrictor-fit"},
}

// otherDrum is how a machine is put right that another refrigerant went into.
const otherDrum fact.Code = "mend.wrong-refrigerant"

// condemns is the chance from which one test is enough to replace a compressor by: it is the
// dearest part, and nothing brings it back. Common practice, no source.
const condemns = 0.8

const atStop, ofRestrictor = "pressures-at-stop", "restrictor-number"

// bored are the ways that compare the numbers of a restrictor.
var bored = []fact.Code{"mend.restrictor-small", "mend.restrictor-large"}

// leakWithin are the ways about a compressor that moves too little; where there is a reversing
// valve, a hand on it comes first.
var leakWithin = []fact.Code{
	"mend.vapor-leak", "mend.compressor-valves", "mend.not-pumping", "mend.compressor-runs-idle",
}
