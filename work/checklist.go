package work

import "slices"

// An Item is a thing to look at, on a list that a task has.
type Item string

// The items.
const (
	BreakerByLabel   Item = "breaker-by-label"
	WiringTight      Item = "wiring-tight"
	ValvesOpen       Item = "service-valves-open"
	Clearances       Item = "clearances"
	Level            Item = "level"
	LineInsulated    Item = "line-insulated"
	DrainFlows       Item = "drain-flows"
	FloatSwitch      Item = "float-switch-stops"
	FilterClean      Item = "filter-clean"
	IndoorCoilClean  Item = "indoor-coil-clean"
	OutdoorCoilClean Item = "outdoor-coil-clean"
	FansFree         Item = "fans-turn-free"
	ModesRun         Item = "every-mode-runs"
	FlammableMarked  Item = "flammable-marked"
	OwnerShown       Item = "owner-shown"
)

// checklists are what each task looks at, in the order of a round. Common practice, no
// source; the maker's start-up sheet comes first.
var checklists = map[Task][]Item{
	Commission: {
		BreakerByLabel, WiringTight, Clearances, Level, LineInsulated, FilterClean, ValvesOpen,
		FlammableMarked, DrainFlows, FloatSwitch, ModesRun, OwnerShown,
	},
	Maintain: {
		FilterClean, IndoorCoilClean, OutdoorCoilClean, FansFree, WiringTight, DrainFlows,
		FloatSwitch, ModesRun,
	},
}

// Checklist returns what a task looks at, in the order of a round; nil for a task without a list.
func Checklist(t Task) []Item { return slices.Clone(checklists[t]) }

// known reports whether any task has the check.
func (c Item) known() bool {
	for _, list := range checklists {
		if slices.Contains(list, c) {
			return true
		}
	}
	return false
}
