package normal

import "fmt"

// Percent writes a probability in whole percent; nothing that rests on an instrument
// or a model is certain, either way.
func Percent(p float64) string {
	switch {
	case p < 0.01:
		return "below 1 %"
	case p > 0.99:
		return "above 99 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}
