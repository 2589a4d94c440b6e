package table

import "math"

// cellsPerOctave of an Octaves grid: a power of two, so that the cell is read
// from the bits of the argument.
const (
	octaveBits     = 3
	CellsPerOctave = 1 << octaveBits

	mantissaBits = 52
	fractionBits = mantissaBits - octaveBits
	fractionMask = 1<<fractionBits - 1
)

// Octaves is a grid for an argument that spans decades, such as a pressure.
// Every doubling is cut into CellsPerOctave cells of equal width, so widths grow
// with the argument as on a logarithmic scale, yet no logarithm is taken: the
// exponent and the leading bits of the mantissa are the cell, and the rest is
// the place in it.
type Octaves struct{ first uint64 }

// NewOctaves returns the grid whose first cell holds low, which is positive.
func NewOctaves(low float64) Octaves {
	return Octaves{math.Float64bits(low) >> fractionBits}
}

// Locate returns the cell of x and the place in it from 0 up to 1. Below the
// first cell, and for what is not a positive number, the cell is no index of
// any table: compare it as unsigned.
func (g Octaves) Locate(x float64) (cell uint64, t float64) {
	b := math.Float64bits(x)
	return b>>fractionBits - g.first, float64(int64(b&fractionMask)) * (1.0 / (1 << fractionBits))
}

// Node returns the left end of cell i.
func (g Octaves) Node(i int) float64 {
	return math.Float64frombits((g.first + uint64(i)) << fractionBits)
}

// Width returns the width of cell i.
func (g Octaves) Width(i int) float64 { return g.Node(i+1) - g.Node(i) }

// Root is a grid for a curve that ends as a saturation curve does at the
// critical temperature, with slopes that grow without bound like a power of the
// distance. Cells are of equal width in √(end − x), so they narrow toward the
// end as the curve steepens.
type Root struct{ end, start, perUnit float64 }

// NewRoot returns a grid of the given number of cells from low to high, both
// below end.
func NewRoot(end, low, high float64, cells int) Root {
	start := math.Sqrt(end - low)
	return Root{end, start, float64(cells) / (start - math.Sqrt(end-high))}
}

// Locate returns the cell of x and the place in it. What is outside the grid has
// a cell that is no index, or a place outside 0 to 1.
func (g Root) Locate(x float64) (cell uint64, t float64) {
	u := (g.start - math.Sqrt(g.end-x)) * g.perUnit
	if !(u >= 0) {
		return math.MaxUint64, 0
	}
	i := int64(u)
	return uint64(i), u - float64(i)
}

// Node returns the left end of cell i.
func (g Root) Node(i int) float64 {
	w := g.start - float64(i)/g.perUnit
	return g.end - w*w
}

// SlopeScale returns the change of x per cell at node i: a slope per x times
// this is a slope per cell.
func (g Root) SlopeScale(i int) float64 {
	w := g.start - float64(i)/g.perUnit
	return 2 * w / g.perUnit
}
