package chart

import (
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
	return vg.Points(s.page.Height - (12 + title*1.35 + normal*2.1 + 5*normal*1.6))
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
	temperature := func(v float64) string { return number(v, 1) }
	columns := []struct {
		head, unit string
		value      func(psychro.Air) string
	}{
		{"dry bulb", s.temperatureUnit, func(a psychro.Air) string { return temperature(s.dryBulb(a.DryBulb())) }},
		{"wet bulb", s.temperatureUnit, func(a psychro.Air) string { return temperature(s.dryBulb(a.WetBulb())) }},
		{"humidity", "%", func(a psychro.Air) string { return number(100*a.RelativeHumidity(), 0) }},
		{"dew point", s.temperatureUnit, func(a psychro.Air) string { return temperature(s.dryBulb(a.DewPoint())) }},
		{"enthalpy", s.enthalpyShort, func(a psychro.Air) string { return number(s.enthalpy(a), 1) }},
		{"water", s.waterShort, func(a psychro.Air) string { return number(a.HumidityRatio()*s.perWater, 1) }},
		{"volume", s.volumeShort, func(a psychro.Air) string { return number(s.scales.volume(a.SpecificVolume()), s.volumeDigits+1) }},
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
	head, figure, name := writing(small, quiet, false), writing(small, ink, false), writing(small, vermilion, true)
	head.XAlign, figure.XAlign, name.XAlign = text.XRight, text.XRight, text.XLeft
	for i, c := range columns {
		x := left + first + vg.Length(i)*step
		s.canvas.FillText(head, vg.Point{X: x, Y: top}, c.head)
		s.canvas.FillText(head, vg.Point{X: x, Y: top - vg.Points(small*1.15)}, c.unit)
	}
	for row, st := range states {
		y := top - vg.Points(small*1.15) - vg.Points(rowHeight)*vg.Length(row+1) - vg.Points(1)
		s.canvas.StrokeLine2(stroke(gridMajor, 0.6), left, y+vg.Points(rowHeight-2.5), left+first+step*vg.Length(len(columns)-1), y+vg.Points(rowHeight-2.5))
		s.canvas.FillText(name, vg.Point{X: left, Y: y}, fit(name, st.label, first-vg.Points(34)))
		for i, c := range columns {
			s.canvas.FillText(figure, vg.Point{X: left + first + vg.Length(i)*step, Y: y}, c.value(st.air))
		}
	}
	if !s.stacked {
		height := vg.Points(rowHeight * (float64(len(states)) + 2))
		width := first + step*vg.Length(len(columns)-1)
		s.take(box{center: vg.Point{X: left + width/2, Y: top + vg.Points(small) - height/2}, width: width, height: height})
	}
}

// fit shortens a word to a width.
func fit(style text.Style, word string, width vg.Length) string {
	if style.Width(word) <= width {
		return word
	}
	letters := []rune(word)
	for len(letters) > 1 && style.Width(string(letters)+"…") > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}
