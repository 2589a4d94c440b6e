package airside

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
)

// icingRule is the rule that IcingChance goes by.
func icingRule() quantity.Uncertain[quantity.Temperature] {
	return quantity.Temperature(271.48).PlusMinus(quantity.KelvinDelta(1.1))
}

// IcingChance is the probability of ice on a comfort cooling coil, from the dew temperature at
// the suction pressure, by the rule of the trade; 0 where it is not a number. Ice builds from an
// evaporating temperature of about 29 °F (-1.7 °C) down, with a standard deviation of 2 °F
// (1.1 K) between coils. The tubes, where ice starts, are colder than the surface on average, so
// a coil can ice whose surface JudgeFrost finds above freezing. Common practice, no source.
func IcingChance(evaporating quantity.Uncertain[quantity.Temperature]) float64 {
	rule := icingRule()
	p := normal.Below(float64(rule.Value-evaporating.Value) / math.Hypot(rule.Std, evaporating.Std))
	if math.IsNaN(p) {
		return 0
	}
	return p
}
