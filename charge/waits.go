package charge

import "time"

// ShortestRun is how long a machine runs without a stop before its readings count.
func ShortestRun() time.Duration { return shortestRun.value }

// WaitAfterMove is how long a machine runs at least after refrigerant was moved before its
// readings count.
func WaitAfterMove() time.Duration { return waitAfterMove.value }

// MostMoved is the net part of the whole charge, moved without reaching the band, beyond
// which it is recovered and weighed in.
func MostMoved() float64 { return mostMoved.value }
