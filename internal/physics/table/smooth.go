package table

import (
	"encoding/binary"
	"math"
)

// A curve is stored as how far its nodes are off what those before them foretell: of a
// smooth curve that is little, and takes a third of the room of the numbers themselves, half of
// that again once packed. Slopes are foretold by their differences, values by integrating the
// slopes. It loses nothing: a decoder foretells to the last bit what the encoder did, on
// every processor, since every product is rounded before it is added.

// maxOrder bounds the differences that foretell a slope.
const maxOrder = 10

// A foreteller foretells numbers in their order, by as many differences as would have done
// best lately.
type foreteller struct {
	seen        int
	differences [maxOrder]float64     // backward, of rising order
	missed      [maxOrder + 1]float64 // by the number of differences, what is long ago counts less
}

func (f *foreteller) next() (v float64) {
	best := 0
	for n := range min(f.seen, maxOrder) + 1 {
		if f.missed[n] <= f.missed[best] {
			best = n
		}
	}
	for _, d := range f.differences[:best] {
		v += d
	}
	return v
}

func (f *foreteller) learn(v float64) {
	foretold, difference := 0.0, v
	for n := range min(f.seen, maxOrder) + 1 {
		f.missed[n] = f.missed[n]/2 + math.Abs(v-foretold)
		if n < maxOrder {
			before := f.differences[n]
			foretold += before
			f.differences[n], difference = difference, difference-before
		}
	}
	f.seen++
}

// across are the weights, over 1440, of six slopes for the integral over the cell that
// begins at the first of them, the second, the third: exact for polynomials of the fifth degree,
// as the six-point formulas of Adams and Moulton are. Cells beyond are those mirrored.
var across = [3][6]float64{
	{475, 1427, -798, 482, -173, 27},
	{-27, 637, 1022, -258, 77, -11},
	{11, -93, 802, 802, -93, 11},
}

// rise is the integral of the slopes over a cell.
func rise(slopes []float32, cell int) (sum float64) {
	const points = len(across[0])
	if len(slopes) < points {
		return (float64(slopes[cell]) + float64(slopes[cell+1])) / 2
	}
	first := min(max(cell-2, 0), len(slopes)-points)
	for i := range points {
		begins, j := cell-first, i
		if begins >= len(across) {
			begins, j = points-2-begins, points-1-i
		}
		sum += float64(across[begins][j] * float64(slopes[first+i]))
	}
	return sum / 1440
}

// appendSmooth stores a curve.
func appendSmooth(b []byte, values, slopes []float32) []byte {
	var f foreteller
	for _, m := range slopes {
		b = binary.AppendVarint(b, rank(m)-rank(float32(f.next())))
		f.learn(float64(m))
	}
	foretold := 0.0
	for i, v := range values {
		if i > 0 {
			foretold = float64(values[i-1]) + rise(slopes, i-1)
		}
		b = binary.AppendVarint(b, rank(v)-rank(float32(foretold)))
	}
	return b
}

// smooth reads a curve of n nodes.
func (r *reader) smooth(n int) (values, slopes []float32) {
	if 2*n > len(r.rest) {
		r.failed = true
		return nil, nil
	}
	values, slopes = make([]float32, n), make([]float32, n)
	var f foreteller
	for i := range slopes {
		slopes[i] = ranked(rank(float32(f.next())) + r.varint())
		f.learn(float64(slopes[i]))
	}
	foretold := 0.0
	for i := range values {
		if i > 0 {
			foretold = float64(values[i-1]) + rise(slopes, i-1)
		}
		values[i] = ranked(rank(float32(foretold)) + r.varint())
	}
	return values, slopes
}

// rank numbers the floats by size, so that neighbors are one apart.
func rank(v float32) int64 {
	bits := math.Float32bits(v)
	if v < 0 {
		return -int64(bits &^ (1 << 31))
	}
	return int64(bits)
}

func ranked(n int64) float32 {
	if n < 0 {
		return -math.Float32frombits(uint32(-n))
	}
	return math.Float32frombits(uint32(n))
}

func (r *reader) varint() int64 {
	v, n := uint64(0), 0
	for n < len(r.rest) && n < binary.MaxVarintLen64 {
		c := r.rest[n]
		v |= uint64(c&0x7f) << (7 * n)
		n++
		if c < 0x80 {
			r.rest = r.rest[n:]
			return int64(v>>1) ^ -int64(v&1)
		}
	}
	r.failed, r.rest = true, ""
	return 0
}
