package table

import "math"

// cellsPerOctave of an Octaves grid: a power of two, so that the cell is read
// from the bits of the argument.
const (
	octaveBits     = 4
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
type Octaves struct {
	scale float64
	cells int
}

// NewOctaves returns the grid that ends at high with a node and holds low in its
// first cell. Both are positive, and low is below high.
func NewOctaves(low, high float64) Octaves {
	fraction, exponent := math.Frexp(high / low)
	step := math.Ceil((2*fraction - 1) * CellsPerOctave)
	return Octaves{
		scale: math.Ldexp(1+step/CellsPerOctave, exponent-1) / high,
		cells: (exponent-1)*CellsPerOctave + int(step),
	}
}

// Cells returns the number of cells of g.
func (g Octaves) Cells() int { return g.cells }

// one is the exponent of 1 and no mantissa, as Locate sees it.
const one = 1023 << octaveBits

// Locate returns the cell of x and the place in it from 0 up to 1. Outside the
// grid, and for what is not a positive number, the cell is no index of any
// table: compare it as unsigned.
func (g Octaves) Locate(x float64) (cell uint64, t float64) {
	b := math.Float64bits(x * g.scale)
	return b>>fractionBits - one, float64(int64(b&fractionMask)) * (1.0 / (1 << fractionBits))
}

// Node returns the left end of cell i, or the end of the grid for Cells.
func (g Octaves) Node(i int) float64 {
	return math.Float64frombits(uint64(one+i)<<fractionBits) / g.scale
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
	u := g.place(x)
	if !(u >= 0) {
		return math.MaxUint64, 0
	}
	i := int64(u)
	return uint64(i), u - float64(i)
}

// At returns the argument at place u, counted in cells from the start. It may lie
// a little outside the grid.
func (g Root) At(u float64) float64 {
	w := g.start - u/g.perUnit
	return g.end - w*w
}

// place is the inverse of At.
func (g Root) place(x float64) float64 { return (g.start - math.Sqrt(g.end-x)) * g.perUnit }

// slope returns the slope of At.
func (g Root) slope(u float64) float64 { return 2 * (g.start - u/g.perUnit) / g.perUnit }

// Node returns the left end of cell i.
func (g Root) Node(i int) float64 { return g.At(float64(i)) }
