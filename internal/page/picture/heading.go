package picture

import (
	"image/color"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Fill paints a rectangle.
func (l *Lettering) Fill(c color.Color, r vg.Rectangle) {
	l.Canvas.FillPolygon(
		c, []vg.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}},
	)
}

// Bounds is all of the page.
func (p Page) Bounds() vg.Rectangle {
	return vg.Rectangle{Max: vg.Point{X: vg.Points(p.Width), Y: vg.Points(p.Height)}}
}

// headingTop is what is left free above the title, in points, and beneath the distance
// from there to the second line of the heading.
const (
	headingTop = 12
	beneath    = Title * 1.35
)

// Heading writes a title at the top of the page and a line of what is shown beneath it,
// both from x on.
func (l *Lettering) Heading(p Page, x vg.Length, title, shown string) {
	room := vg.Points(p.Width) - 2*x
	write := func(style text.Style, word string, down float64) {
		style.YAlign = text.YTop
		l.Canvas.FillText(
			style, vg.Point{X: x, Y: vg.Points(p.Height - headingTop - down)},
			fit(style, word, room),
		)
	}
	write(Writing(Title, Ink, true), title, 0)
	write(Writing(Normal, Quiet, false), shown, beneath)
}

// A Family of lines, as the legend names it.
type Family struct {
	Style draw.LineStyle
	Name  string
}

// legendEntry is the width of one entry of a legend, in points; LegendLeading the distance
// from one row to the next.
const (
	legendEntry   = 132
	LegendLeading = 1.45 * Normal
)

// LegendTop is the middle of the first row of the legend, beneath the heading, in points.
func (p Page) LegendTop() float64 { return p.Height - headingTop - beneath - 2.1*Normal }

// LegendColumns is how many entries of a legend stand side by side across the page.
func (p Page) LegendColumns() int { return max(1, int((p.Width-20)/legendEntry)) }

// LegendRows is how many rows that makes of a number of entries.
func (p Page) LegendRows(entries int) int {
	return (entries + p.LegendColumns() - 1) / p.LegendColumns()
}

// Legend names families of lines beneath the heading, each beside a piece of it, from x on.
func (l *Lettering) Legend(p Page, x vg.Length, families []Family, columns int, leading float64) {
	style := Writing(Normal, Ink, false)
	style.YAlign = text.YCenter
	for i, f := range families {
		at := vg.Point{
			X: x + vg.Length(i%columns)*legendEntry,
			Y: vg.Points(p.LegendTop() - float64(i/columns)*leading),
		}
		l.Canvas.StrokeLine2(f.Style, at.X, at.Y, at.X+vg.Points(16), at.Y)
		l.Canvas.FillText(style, vg.Point{X: at.X + vg.Points(21), Y: at.Y}, f.Name)
		l.Take(
			Box{
				Center: vg.Point{X: at.X + vg.Points(65), Y: at.Y},
				Width:  vg.Points(140),
				Height: vg.Points(Normal * 1.3),
			},
		)
	}
}
