package satline

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/heatpump"
	"github.com/satline/satline/internal/judge/modes"
)

// judges of the modes other than cooling, and their looks; see package modes.
var (
	judges    = map[Mode]modes.Judge{Heating: heatpump.Judge, Refrigeration: coldroom.Judge}
	modeLooks = [][]diagnose.Look{heatpump.Looks(), coldroom.Looks()}
)

// everyLook lists the looks of all modes, each once.
func everyLook() []diagnose.Look {
	out := diagnose.Looks()
	for _, l := range slices.Concat(modeLooks...) {
		if !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	return out
}
