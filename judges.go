package satline

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom"
	"github.com/satline/satline/internal/judge/cooling"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/heatpump"
	"github.com/satline/satline/internal/judge/modes"
)

// judges of the modes, and their looks; see package modes. The zero Mode is in doubt.
var (
	judges = map[Mode]modes.Judge{
		0: modes.Ask, Cooling: cooling.Judge, Heating: heatpump.Judge,
		Refrigeration: coldroom.Judge,
	}
	forecasters = map[Mode]modes.Forecaster{
		Cooling: cooling.Forecast, Heating: heatpump.Forecast, Refrigeration: coldroom.Forecast,
	}
	looks = [][]diagnose.Look{cooling.Looks(), heatpump.Looks(), coldroom.Looks()}
)

// everyLook lists the looks of all modes, each once.
func everyLook() []diagnose.Look {
	var out []diagnose.Look
	for _, l := range slices.Concat(looks...) {
		if !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	return out
}
