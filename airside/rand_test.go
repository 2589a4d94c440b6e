package airside

import "math/rand/v2"

// newRand returns draws that are the same on every run.
func newRand(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, seed)) }
