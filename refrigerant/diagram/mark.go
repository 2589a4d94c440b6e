package diagram

import (
	"image/color"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/plot/vg"
)

// shows reports whether a state is within the frame.
func (s *sheet) shows(st refrigerant.State) bool {
	return st.Pressure >= s.low && st.Pressure <= s.high && st.Enthalpy >= s.least &&
		st.Enthalpy <= s.most
}

// reserveMarks finds room for the words of the marks before the lines take it.
func (s *sheet) reserveMarks() {
	for _, m := range s.diagram.states {
		if s.shows(m.State) {
			s.TakeMark(s.point(m.State))
		}
	}
	for _, p := range s.diagram.paths {
		for _, leg := range s.legs(p) {
			s.Take(picture.Along(leg[0], leg[1], vg.Points(5)))
		}
	}
	bounds := vg.Rectangle{
		Min: s.frame.Min.Add(vg.Point{X: 1, Y: 1}),
		Max: s.frame.Max.Sub(vg.Point{X: 1, Y: 1}),
	}
	place := func(size float64, bold bool, word string, at vg.Point, away float64, needed bool) {
		style := picture.Writing(size, picture.Vermilion, bold)
		if w, ok := s.Place(style, word, at, away, needed, bounds, s.groundOf); ok {
			s.placed = append(s.placed, w)
		}
	}
	for _, m := range s.diagram.states {
		if s.shows(m.State) {
			place(picture.Normal, true, m.Label, s.point(m.State), picture.Dot+2, true)
		}
	}
	for _, p := range s.diagram.paths {
		if legs := s.legs(p); len(legs) > 0 {
			place(
				picture.Small, false, p.label, legs[0][0].Add(legs[0][1]).Scale(0.5), 4,
				!s.page.Sparse,
			)
		}
	}
}

// legs are the lines of a path whose ends are shown.
func (s *sheet) legs(p path) (out [][2]vg.Point) {
	for i := 1; i < len(p.points); i++ {
		if s.shows(p.points[i-1]) && s.shows(p.points[i]) {
			out = append(out, [2]vg.Point{s.point(p.points[i-1]), s.point(p.points[i])})
		}
	}
	return out
}

// groundOf is the color behind a box, and whether the bubble or dew line crosses it.
func (s *sheet) groundOf(b picture.Box) (ground color.Color, across bool) {
	for _, points := range [][]vg.Point{s.bubble, s.dew} {
		for i := 1; i < len(points); i++ {
			if b.Meets(picture.Along(points[i-1], points[i], 2)) {
				return picture.FieldHalo, true
			}
		}
	}
	if s.inDome(b.Center) {
		return picture.TintHalo, false
	}
	return picture.FieldHalo, false
}

// inDome reports whether a point of the page lies under both lines.
func (s *sheet) inDome(at vg.Point) bool {
	inside := func(points []vg.Point, right bool) bool {
		for i := 1; i < len(points); i++ {
			a, b := points[i-1], points[i]
			if a.Y <= at.Y && at.Y < b.Y {
				edge := a.X + (b.X-a.X)*(at.Y-a.Y)/(b.Y-a.Y)
				return (at.X < edge) == right
			}
		}
		return false
	}
	return inside(s.bubble, false) && inside(s.dew, true)
}

// marks draws the paths, the states over them and the words over both.
func (s *sheet) marks() {
	for _, p := range s.diagram.paths {
		for _, leg := range s.legs(p) {
			s.Arrow(leg[0], leg[1], false)
		}
	}
	for _, m := range s.diagram.states {
		if s.shows(m.State) {
			s.Mark(s.point(m.State), false)
		}
	}
	s.WritePlaced(s.placed)
}
