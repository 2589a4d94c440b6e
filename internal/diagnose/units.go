package diagnose

import (
	"fmt"
	"math"
	"strings"

	"github.com/satline/satline/quantity"
)

// inUnits rewrites figures in braces for a system of units: "{3 °F}" is
// a difference, "{at 55 °F}" a temperature, "{6 in}" a length.
func inUnits(text string, sys quantity.System) string {
	if !strings.Contains(text, "{") {
		return text
	}
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(text, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		figure, after, _ := strings.Cut(rest, "}")
		b.WriteString(inSystem(figure, sys))
		text = after
	}
}

func inSystem(figure string, sys quantity.System) string {
	point, isPoint := strings.CutPrefix(figure, "at ")
	if sys == quantity.IP {
		return point
	}
	if isPoint {
		if t, err := quantity.ParseTemperature(point); err == nil {
			return t.Format(sys)
		}
		return point
	}
	if d, err := quantity.ParseTemperatureDelta(figure); err == nil {
		return d.Format(sys)
	}
	if l, err := quantity.ParseLength(figure); err == nil {
		if m := float64(l); m < 1 {
			return fmt.Sprintf("%.0f mm", 10*math.Round(100*m))
		}
		return fmt.Sprintf("%.0f m", float64(l))
	}
	return figure
}
