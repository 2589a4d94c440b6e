package table

// A Line is one quantity at equal steps, joined by a cubic spline.
type Line []float64

// NewLine joins nodes, of which there are at least five.
func NewLine(nodes []float64) Line {
	c := make([]float64, len(nodes)+2)
	copy(c[1:], nodes)
	spline(c, 1, len(nodes), 1, false, make([]float64, len(nodes)))
	return c
}

// At returns the value in cell i with the Weights or SlopeWeights of a place in it.
func (l Line) At(i int, w *[4]float64) float64 {
	c := l[i : i+4 : i+4]
	return w[0]*c[0] + w[1]*c[1] + w[2]*c[2] + w[3]*c[3]
}

// Columns is how many quantities a Sheet keeps.
const Columns = 3

// A Sheet is three quantities on a grid of rows and columns at equal steps, joined by
// cubic splines both ways. It does not change and may be shared.
type Sheet struct {
	stride int // from row to row
	c      []float64
}

// NewSheet joins nodes, of which there are at least five each way. Along a row the three
// are even functions of the distance from its start.
func NewSheet(nodes [][][Columns]float64) *Sheet {
	rows, places := len(nodes), len(nodes[0])
	stride := (places + 2) * Columns
	s := &Sheet{stride, make([]float64, (rows+2)*stride)}
	scratch := make([]float64, max(rows, places))
	for i, row := range nodes {
		start := (i + 1) * stride
		for j := range row {
			copy(s.c[start+(j+1)*Columns:], row[j][:])
		}
		for c := range Columns {
			spline(s.c, start+Columns+c, places, Columns, true, scratch)
		}
	}
	for j := range stride {
		spline(s.c, stride+j, rows, stride, false, scratch)
	}
	return s
}

// At returns the three quantities in the cell of row i and place j, with the Weights of both.
func (s *Sheet) At(i int, row *[4]float64, j int, place *[4]float64) (x, y, z float64) {
	w0, w1, w2, w3 := place[0], place[1], place[2], place[3]
	start := i*s.stride + j*Columns
	for _, r := range row {
		c := s.c[start : start+4*Columns : start+4*Columns]
		x += r * (w0*c[0] + w1*c[3] + (w2*c[6] + w3*c[9]))
		y += r * (w0*c[1] + w1*c[4] + (w2*c[7] + w3*c[10]))
		z += r * (w0*c[2] + w1*c[5] + (w2*c[8] + w3*c[11]))
		start += s.stride
	}
	return x, y, z
}

// Cell returns the coefficients of one column in the cell of row i and place j, of which
// the Weights and SlopeWeights of the place make value and derivative.
func (s *Sheet) Cell(column, i int, row *[4]float64, j int) (v [4]float64) {
	start := i*s.stride + j*Columns + column
	for _, r := range row {
		c := s.c[start : start+3*Columns+1 : start+3*Columns+1]
		v[0] += r * c[0]
		v[1] += r * c[3]
		v[2] += r * c[6]
		v[3] += r * c[9]
		start += s.stride
	}
	return v
}
