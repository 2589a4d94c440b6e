package refrigerant

import "testing"

// sample is all, and under -short, as for the race detector, one in eight.
func sample(all []*Refrigerant) (some []*Refrigerant) {
	if !testing.Short() {
		return all
	}
	for i := 0; i < len(all); i += 8 {
		some = append(some, all[i])
	}
	return some
}
