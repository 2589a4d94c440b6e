package fluiddata

import "github.com/satline/satline/internal/physics/helmholtz"

// An AnchoredPair is one of the pairs that estimates rest on, for their test.
type AnchoredPair struct {
	Pair                    *helmholtz.Pair
	Likeness, Spread, Doubt float64
	Printed                 bool // anchored to print, not to likeness alone
}

// AnchoredPairs returns them all.
func AnchoredPairs() []AnchoredPair {
	var list []AnchoredPair
	for i := range anchored {
		a := &anchored[i]
		list = append(list, AnchoredPair{
			&a.pair, a.likeness, a.spread, a.doubt, a.pair.Source == anchoredSource,
		})
	}
	return list
}
