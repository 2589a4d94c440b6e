package picture

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Dot is the radius of a marked state in points.
const Dot = 3.2

// Mark draws a state; an open one is a point that nothing passes through.
func (l *Lettering) Mark(at vg.Point, open bool) {
	l.Canvas.DrawGlyphNoClip(
		draw.GlyphStyle{Color: Field, Radius: vg.Points(Dot + 1), Shape: draw.CircleGlyph{}}, at,
	)
	l.Canvas.DrawGlyphNoClip(
		draw.GlyphStyle{Color: Vermilion, Radius: vg.Points(Dot), Shape: draw.CircleGlyph{}}, at,
	)
	if open {
		l.Canvas.DrawGlyphNoClip(
			draw.GlyphStyle{Color: Field, Radius: vg.Points(Dot - 1.3), Shape: draw.CircleGlyph{}},
			at,
		)
	}
}

// Arrow draws a line and, past its middle, the head that says which way.
func (l *Lettering) Arrow(a, b vg.Point, dashed bool) {
	style := Stroke(Vermilion, 1.8)
	if dashed {
		style = Stroke(Vermilion, 1.1, 3, 2.5)
	}
	l.Canvas.StrokeLine2(Stroke(Field, style.Width.Points()+1.6), a.X, a.Y, b.X, b.Y)
	l.Canvas.StrokeLine2(style, a.X, a.Y, b.X, b.Y)
	length := Distance(a, b)
	if dashed || length < vg.Points(4*Dot) {
		return
	}
	unit := b.Sub(a).Scale(1 / length)
	side := vg.Point{X: -unit.Y, Y: unit.X}
	tip := a.Add(unit.Scale(length*0.5 + vg.Points(4)))
	base := tip.Sub(unit.Scale(vg.Points(8)))
	l.Canvas.FillPolygon(
		Vermilion,
		[]vg.Point{tip, base.Add(side.Scale(vg.Points(3.4))), base.Sub(side.Scale(vg.Points(3.4)))},
	)
}
