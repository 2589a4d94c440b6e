package picture

import (
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// RowHeight is that of a row of a table of states, in points.
const RowHeight = 11.5

// MostRows is how many rows of a table leave most of the page to the picture.
func (p Page) MostRows() int { return int(0.35 * p.Height / RowHeight) }

// A Column of a table lists one figure of every state.
type Column[S any] struct {
	Head, Unit string
	Value      func(S) string
}

// A Row is a state by its name.
type Row[S any] struct {
	Name  string
	State S
}

// A TablePlace says where a table stands: from the left end of the names and the line of
// the headings on, to where its first column of figures ends, and each of the others
// beyond it. Room is that of a name.
type TablePlace struct {
	Left, Top, First, Step, Room vg.Length
}

// Table lists states in figures, one to a row beneath the headings of the columns.
func Table[S any](l *Lettering, place TablePlace, columns []Column[S], rows []Row[S]) {
	head, figure, name := Writing(Small, Quiet, false), Writing(Small, Ink, false),
		Writing(Small, Vermilion, true)
	head.XAlign, figure.XAlign, name.XAlign = text.XRight, text.XRight, text.XLeft
	x := func(i int) vg.Length { return place.Left + place.First + vg.Length(i)*place.Step }
	units := place.Top - vg.Points(Small*1.15)
	for i, c := range columns {
		l.Canvas.FillText(head, vg.Point{X: x(i), Y: place.Top}, c.Head)
		l.Canvas.FillText(head, vg.Point{X: x(i), Y: units}, c.Unit)
	}
	for i, row := range rows {
		y := units - vg.Points(RowHeight)*vg.Length(i+1) - vg.Points(1)
		rule := y + vg.Points(RowHeight-2.5)
		l.Canvas.StrokeLine2(Stroke(GridMajor, 0.6), place.Left, rule, x(len(columns)-1), rule)
		l.Canvas.FillText(name, vg.Point{X: place.Left, Y: y}, fit(name, row.Name, place.Room))
		for j, c := range columns {
			l.Canvas.FillText(figure, vg.Point{X: x(j), Y: y}, c.Value(row.State))
		}
	}
}
