package chart

import (
	"github.com/satline/satline/internal/picture"
	"github.com/satline/satline/psychro"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// rowHeight is that of a row of the table of states, in points.
const rowHeight = 11.5

// tableLeft is where the first column of figures ends, and tableColumn the width of
// one, in points.
const (
	tableLeft   = 78
	tableColumn = 44
)

// tableTop is the line of its heading in the corner, beneath the legend.
func (s *sheet) tableTop() vg.Length {
	return vg.Points(s.page.Height - (12 + picture.Title*1.35 + picture.Normal*2.1 + 5*picture.Normal*1.6))
}

// listed are the states in the table: those that air passes through, as many as
// leave most of the page to the chart.
func (s *sheet) listed() (out []state) {
	most := int(0.35 * s.page.Height / rowHeight)
	for _, st := range s.chart.states {
		if !st.open && len(out) < most {
			out = append(out, st)
		}
	}
	return out
}

// table lists the states in figures: beneath the chart on a sparse page, in the
// empty corner above the saturation curve on a full one.
func (s *sheet) table() {
	states := s.listed()
	if len(states) == 0 {
		return
	}
	temperature := func(v float64) string { return picture.Number(v, 1) }
	columns := []struct {
		head, unit string
		value      func(psychro.Air) string
	}{
		{"dry bulb", s.temperatureUnit, func(a psychro.Air) string { return temperature(s.dryBulb(a.DryBulb())) }},
		{"wet bulb", s.temperatureUnit, func(a psychro.Air) string { return temperature(s.dryBulb(a.WetBulb())) }},
		{"humidity", "%", func(a psychro.Air) string { return picture.Number(100*a.RelativeHumidity(), 0) }},
		{"dew point", s.temperatureUnit, func(a psychro.Air) string { return temperature(s.dryBulb(a.DewPoint())) }},
		{"enthalpy", s.enthalpyShort, func(a psychro.Air) string { return picture.Number(s.enthalpy(a), 1) }},
		{"water", s.waterShort, func(a psychro.Air) string { return picture.Number(a.HumidityRatio()*s.perWater, 1) }},
		{"volume", s.volumeShort, func(a psychro.Air) string {
			return picture.Number(s.scales.volume(a.SpecificVolume()), s.volumeDigits+1)
		}},
	}
	left, top := s.frame.Min.X, s.tableTop()
	first, step := vg.Points(tableLeft), vg.Points(tableColumn)
	if s.stacked {
		top = s.frame.Min.Y - vg.Points(42)
	}
	if s.page.Sparse {
		columns = columns[:5]
		first = vg.Points(92)
		step = min(step, (vg.Points(s.page.Width)-left-vg.Points(8)-first)/vg.Length(len(columns)-1))
	}
	head, figure, name := picture.Writing(picture.Small, picture.Quiet, false), picture.Writing(picture.Small, picture.Ink, false), picture.Writing(picture.Small, picture.Vermilion, true)
	head.XAlign, figure.XAlign, name.XAlign = text.XRight, text.XRight, text.XLeft
	for i, c := range columns {
		x := left + first + vg.Length(i)*step
		s.Canvas.FillText(head, vg.Point{X: x, Y: top}, c.head)
		s.Canvas.FillText(head, vg.Point{X: x, Y: top - vg.Points(picture.Small*1.15)}, c.unit)
	}
	for row, st := range states {
		y := top - vg.Points(picture.Small*1.15) - vg.Points(rowHeight)*vg.Length(row+1) - vg.Points(1)
		s.Canvas.StrokeLine2(picture.Stroke(picture.GridMajor, 0.6), left, y+vg.Points(rowHeight-2.5), left+first+step*vg.Length(len(columns)-1), y+vg.Points(rowHeight-2.5))
		s.Canvas.FillText(name, vg.Point{X: left, Y: y}, picture.Fit(name, st.label, first-vg.Points(34)))
		for i, c := range columns {
			s.Canvas.FillText(figure, vg.Point{X: left + first + vg.Length(i)*step, Y: y}, c.value(st.air))
		}
	}
	if !s.stacked {
		height := vg.Points(rowHeight * (float64(len(states)) + 2))
		width := first + step*vg.Length(len(columns)-1)
		s.Take(picture.Box{Center: vg.Point{X: left + width/2, Y: top + vg.Points(picture.Small) - height/2}, Width: width, Height: height})
	}
}
