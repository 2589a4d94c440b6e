package diagram

import (
	"github.com/satline/satline/internal/picture"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// rowHeight is that of a row of the table of states, in points; nameWidth that of the
// column of names, and columnWidth the most of one of figures.
const (
	rowHeight   = 11.5
	nameWidth   = 74
	columnWidth = 64
)

// listed are the states in the table: as many as leave most of the page to the
// diagram.
func (s *sheet) listed() []Mark {
	return s.diagram.states[:min(len(s.diagram.states), int(0.35*s.page.Height/rowHeight))]
}

// table lists the states in figures beneath the diagram.
func (s *sheet) table() {
	states := s.listed()
	if len(states) == 0 {
		return
	}
	columns := []struct {
		head, unit string
		value      func(refrigerant.State) string
	}{
		{"pressure", s.pressureUnit, func(st refrigerant.State) string { return picture.Number(s.pressure(st.Pressure), 1) }},
		{"temperature", s.temperatureUnit, func(st refrigerant.State) string { return picture.Number(s.temperature(st.Temperature), 1) }},
		{"SH, SC or x", s.deltaUnit() + ", %", func(st refrigerant.State) string { short, _ := s.condition(s.fluid, st); return short }},
		{"enthalpy", s.enthalpyUnit, func(st refrigerant.State) string { return picture.Number(s.enthalpy(st.Enthalpy), 1) }},
		{"entropy", s.entropyUnit, func(st refrigerant.State) string { return picture.Number(s.entropy(st.Entropy), 4) }},
		{"density", s.densityUnit, func(st refrigerant.State) string { return picture.Number(s.density(st.Density), 2) }},
	}
	if s.page.Sparse {
		columns = columns[:4]
	}
	left, top := vg.Points(margin), s.frame.Min.Y-vg.Points(42)
	step := min(vg.Points(columnWidth), (vg.Points(s.page.Width-2*margin)-vg.Points(nameWidth))/vg.Length(len(columns)))
	right := left + vg.Points(nameWidth) + step*vg.Length(len(columns))
	head, figure, name := picture.Writing(picture.Small, picture.Quiet, false), picture.Writing(picture.Small, picture.Ink, false), picture.Writing(picture.Small, picture.Vermilion, true)
	head.XAlign, figure.XAlign, name.XAlign = text.XRight, text.XRight, text.XLeft
	x := func(i int) vg.Length { return left + vg.Points(nameWidth) + step*vg.Length(i+1) }
	for i, c := range columns {
		s.Canvas.FillText(head, vg.Point{X: x(i), Y: top}, c.head)
		s.Canvas.FillText(head, vg.Point{X: x(i), Y: top - vg.Points(picture.Small*1.15)}, c.unit)
	}
	for row, m := range states {
		y := top - vg.Points(picture.Small*1.15) - vg.Points(rowHeight)*vg.Length(row+1) - vg.Points(1)
		rule := y + vg.Points(rowHeight-2.5)
		s.Canvas.StrokeLine2(picture.Stroke(picture.GridMajor, 0.6), left, rule, right, rule)
		s.Canvas.FillText(name, vg.Point{X: left, Y: y}, picture.Fit(name, m.Label, vg.Points(nameWidth)))
		for i, c := range columns {
			s.Canvas.FillText(figure, vg.Point{X: x(i), Y: y}, c.value(m.State))
		}
	}
}
