package chart

import (
	"image/color"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// placed is a word of a mark and where it goes.
type placed struct {
	style  text.Style
	word   string
	box    box
	ground color.Color
}

const dot = 3.2 // points, the radius of a state

// reserveMarks finds room for the words of the marks before the lines take it.
func (s *sheet) reserveMarks() {
	for _, st := range s.chart.states {
		s.take(box{center: s.point(st.air), width: vg.Points(3 * dot), height: vg.Points(3 * dot)})
	}
	for _, p := range s.chart.paths {
		for i := 1; i < len(p.points); i++ {
			from, to := s.point(p.points[i-1]), s.point(p.points[i])
			d := to.Sub(from)
			s.take(box{center: from.Add(d.Scale(0.5)), width: distance(from, to), height: vg.Points(5), angle: math.Atan2(float64(d.Y), float64(d.X))})
		}
	}
	for _, st := range s.chart.states {
		label := st.label
		if st.open && s.page.Sparse {
			label = "ADP"
		}
		s.place(writing(normal, vermilion, true), label, s.point(st.air), dot+2, true)
	}
	for _, p := range s.chart.paths {
		if from, to := s.point(p.points[0]), s.point(p.points[1]); p.label != "" {
			s.place(writing(small, vermilion, false), p.label, from.Add(to.Sub(from).Scale(0.5)), 4, !s.page.Sparse)
		}
	}
}

// place finds the spot around a point with the least in its way, and keeps it. A
// word that is not needed stays away where nothing is free close by.
func (s *sheet) place(style text.Style, word string, at vg.Point, away float64, needed bool) {
	if word == "" {
		return
	}
	bounds := vg.Rectangle{Min: vg.Point{X: vg.Points(3), Y: s.frame.Min.Y}, Max: vg.Point{X: s.frame.Max.X - 1, Y: vg.Points(s.page.Height - 3)}}
	best := placed{style: style, word: word}
	least := math.Inf(1)
	for ring := range 4 {
		for i := range 16 {
			angle := math.Pi * (0.25 + float64(i)/8)
			sin, cos := math.Sincos(angle)
			b := boxOf(style, word, at, 0)
			reach := vg.Points(away + 9*float64(ring))
			b.center.X += vg.Length(cos) * (reach + b.width/2)
			b.center.Y += vg.Length(sin) * (reach + b.height/2)
			cost := 3*float64(ring) + 0.1*float64(i)
			for _, t := range s.taken {
				if b.meets(t) {
					cost += 10
				}
			}
			if !b.within(bounds) {
				cost += 100
			}
			ground, across := s.groundOf(b)
			if across {
				cost += 6
			}
			if cost < least {
				best.box, best.ground, least = b, ground, cost
			}
		}
	}
	if !needed && least > 6 {
		return
	}
	s.take(best.box)
	s.marked = append(s.marked, best)
}

// groundOf is the color behind a box, and whether the saturation curve crosses it.
func (s *sheet) groundOf(b box) (ground color.Color, across bool) {
	in := 0
	corners := b.corners()
	for _, c := range corners {
		share := float64((c.X - s.frame.Min.X) / (s.frame.Max.X - s.frame.Min.X))
		if c.Y < s.y(s.saturated(s.low+(s.high-s.low)*quantity.Temperature(share))) {
			in++
		}
	}
	if in < len(corners) {
		return paperHalo, in > 0
	}
	return fieldHalo, false
}

// marks draws the paths, the states over them and the words over both.
func (s *sheet) marks() {
	for _, p := range s.chart.paths {
		for i := 1; i < len(p.points); i++ {
			s.arrow(p.points[i-1], p.points[i], p.dashed)
		}
	}
	for _, st := range s.chart.states {
		at := s.point(st.air)
		s.canvas.DrawGlyphNoClip(draw.GlyphStyle{Color: field, Radius: vg.Points(dot + 1), Shape: draw.CircleGlyph{}}, at)
		s.canvas.DrawGlyphNoClip(draw.GlyphStyle{Color: vermilion, Radius: vg.Points(dot), Shape: draw.CircleGlyph{}}, at)
		if st.open {
			s.canvas.DrawGlyphNoClip(draw.GlyphStyle{Color: field, Radius: vg.Points(dot - 1.3), Shape: draw.CircleGlyph{}}, at)
		}
	}
	for _, m := range s.marked {
		s.canvas.FillPolygon(m.ground, m.box.corners())
	}
	for _, m := range s.marked {
		m.style.XAlign, m.style.YAlign = text.XCenter, text.YCenter
		s.canvas.FillText(m.style, m.box.center.Add(vg.Point{Y: -0.06 * m.style.Font.Size}), m.word)
	}
}

// arrow draws a line and, past its middle, the head that says which way.
func (s *sheet) arrow(from, to psychro.Air, dashed bool) {
	a, b := s.point(from), s.point(to)
	style := stroke(vermilion, 1.8)
	if dashed {
		style = stroke(vermilion, 1.1, 3, 2.5)
	}
	s.canvas.StrokeLine2(stroke(field, style.Width.Points()+1.6), a.X, a.Y, b.X, b.Y)
	s.canvas.StrokeLine2(style, a.X, a.Y, b.X, b.Y)
	length := distance(a, b)
	if dashed || length < vg.Points(4*dot) {
		return
	}
	unit := b.Sub(a).Scale(1 / length)
	side := vg.Point{X: -unit.Y, Y: unit.X}
	tip := a.Add(unit.Scale(length*0.5 + vg.Points(4)))
	base := tip.Sub(unit.Scale(vg.Points(8)))
	s.canvas.FillPolygon(vermilion, []vg.Point{tip, base.Add(side.Scale(vg.Points(3.4))), base.Sub(side.Scale(vg.Points(3.4)))})
}
