package work

import "slices"

// A Check is a thing to look at, on a list that a task has.
type Check string

// The checks.
const (
	BreakerByLabel   Check = "breaker-by-label"
	WiringTight      Check = "wiring-tight"
	ValvesOpen       Check = "service-valves-open"
	Clearances       Check = "clearances"
	Level            Check = "level"
	LineInsulated    Check = "line-insulated"
	DrainFlows       Check = "drain-flows"
	FloatSwitch      Check = "float-switch-stops"
	FilterClean      Check = "filter-clean"
	IndoorCoilClean  Check = "indoor-coil-clean"
	OutdoorCoilClean Check = "outdoor-coil-clean"
	FansFree         Check = "fans-turn-free"
	ModesRun         Check = "every-mode-runs"
	FlammableMarked  Check = "flammable-marked"
	OwnerShown       Check = "owner-shown"
)

// checklists are what each task looks at, in the order of a round. Common practice, no
// source; the maker's start-up sheet comes first.
var checklists = map[Task][]Check{
	Commission: {
		BreakerByLabel, WiringTight, Clearances, Level, LineInsulated, FilterClean, ValvesOpen,
		FlammableMarked, DrainFlows, FloatSwitch, ModesRun, OwnerShown,
	},
	Maintain: {
		FilterClean, IndoorCoilClean, OutdoorCoilClean, FansFree, WiringTight, DrainFlows,
		FloatSwitch, ModesRun,
	},
}

// Checks lists what a task looks at, in the order of a round; nil for a task without a list.
func Checks(t Task) []Check { return slices.Clone(checklists[t]) }

// known reports whether any task has the check.
func (c Check) known() bool {
	for _, list := range checklists {
		if slices.Contains(list, c) {
			return true
		}
	}
	return false
}
