package chart

import (
	"image/color"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/quantity"
	"gonum.org/v1/plot/vg"
)

// reserveMarks finds room for the words of the marks before the lines take it.
func (s *sheet) reserveMarks() {
	for _, st := range s.chart.states {
		s.TakeMark(s.point(st.air))
	}
	for _, p := range s.chart.paths {
		for i := 1; i < len(p.points); i++ {
			s.Take(picture.Along(s.point(p.points[i-1]), s.point(p.points[i]), vg.Points(5)))
		}
	}
	bounds := vg.Rectangle{
		Min: vg.Point{X: vg.Points(3), Y: s.frame.Min.Y},
		Max: vg.Point{X: s.frame.Max.X - 1, Y: vg.Points(s.page.Height - 3)},
	}
	place := func(size float64, bold bool, word string, at vg.Point, away float64, needed bool) {
		style := picture.Writing(size, picture.Vermilion, bold)
		if w, ok := s.Place(style, word, at, away, needed, bounds, s.groundOf); ok {
			s.marked = append(s.marked, w)
		}
	}
	for _, st := range s.chart.states {
		label := st.label
		if st.open && s.page.Sparse {
			label = s.chart.book.Term("chart.apparatus-short")
		}
		place(picture.Normal, true, label, s.point(st.air), picture.Dot+2, true)
	}
	for _, p := range s.chart.paths {
		from, to := s.point(p.points[0]), s.point(p.points[1])
		place(picture.Small, false, p.label, from.Add(to.Sub(from).Scale(0.5)), 4, !s.page.Sparse)
	}
}

// groundOf is the color behind a box, and whether the saturation curve crosses it.
func (s *sheet) groundOf(b picture.Box) (ground color.Color, across bool) {
	in := 0
	corners := b.Corners()
	for _, c := range corners {
		share := float64((c.X - s.frame.Min.X) / (s.frame.Max.X - s.frame.Min.X))
		if c.Y < s.y(s.saturated(s.low+(s.high-s.low)*quantity.Temperature(share))) {
			in++
		}
	}
	if in < len(corners) {
		return picture.PaperHalo, in > 0
	}
	return picture.FieldHalo, false
}

// marks draws the paths, the states over them and the words over both.
func (s *sheet) marks() {
	for _, p := range s.chart.paths {
		for i := 1; i < len(p.points); i++ {
			s.Arrow(s.point(p.points[i-1]), s.point(p.points[i]), p.dashed)
		}
	}
	for _, st := range s.chart.states {
		s.Mark(s.point(st.air), st.open)
	}
	s.WritePlaced(s.marked)
}
