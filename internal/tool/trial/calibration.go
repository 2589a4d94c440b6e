package trial

import (
	"fmt"
	"math"
	"strings"
)

// A Bin is what was said with chances of one tenth: their sum, and how often they were right.
type Bin struct {
	Said  float64
	Right Part
}

func (b *Bin) mean() float64 { return b.Said / float64(b.Right.Of) }

// A Calibration holds what is said to be likely against how often it is so, by tenths.
type Calibration [10]Bin

// Count adds a statement and whether it was right.
func (c *Calibration) Count(said float64, right bool) {
	bin := &c[min(9, int(10*said))]
	bin.Said += said
	bin.Right.Count(right)
}

// Off is the mean absolute difference of said and right, weighted by the visits of each bin
// (the expected calibration error).
func (c *Calibration) Off() float64 {
	sum, n := 0.0, 0
	for _, bin := range c {
		sum += math.Abs(bin.Said - float64(bin.Right.N))
		n += bin.Right.Of
	}
	return sum / float64(max(1, n))
}

// Write writes the table.
func (c *Calibration) Write(b *strings.Builder) {
	fmt.Fprintf(b, "Calibration: what the first explanation said of itself, and how often it was "+
		"right; off by %.1f points on average.\n\n"+
		"| said | visits | mean said | right |\n|---|---|---|---|\n", 100*c.Off())
	for i, bin := range c {
		if bin.Right.Of > 0 {
			fmt.Fprintf(b, "| %d to %d %% | %d | %.0f %% | %v |\n", 10*i, 10*i+10, bin.Right.Of,
				100*bin.mean(), bin.Right)
		}
	}
	b.WriteString("\n")
}
