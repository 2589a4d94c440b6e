// Package trial is what the trials of the judges share: parts of a whole with their
// intervals, tables of what was taken for what, and calibration as figures and drawn. It is
// used by tests alone.
package trial

import (
	"fmt"
	"math"
)

// A Part of a whole: N of Of.
type Part struct{ N, Of int }

// Count adds one to the whole, and to the part where it holds.
func (p *Part) Count(holds bool) {
	p.Of++
	if holds {
		p.N++
	}
}

// Share is the part in proportion, 0 of nothing.
func (p Part) Share() float64 { return float64(p.N) / float64(max(1, p.Of)) }

// Interval is the 95 % score interval (Wilson 1927, JASA 22:209-212), 0 to 1 of nothing.
func (p Part) Interval() (low, high float64) {
	const z = 1.96
	n := float64(p.Of)
	if n == 0 {
		return 0, 1
	}
	share := p.Share()
	middle := (share + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(share*(1-share)/n+z*z/(4*n*n))
	return max(0, middle-half), min(1, middle+half)
}

// String is the share with its interval, empty of nothing.
func (p Part) String() string {
	if p.Of == 0 {
		return ""
	}
	low, high := p.Interval()
	return fmt.Sprintf("%.1f %% (%.1f to %.1f)", 100*p.Share(), 100*low, 100*high)
}

// OfHowMany is the share with its interval and the size of the whole.
func (p Part) OfHowMany() string { return fmt.Sprintf("%v of %d", p, p.Of) }
