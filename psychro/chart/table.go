package chart

import (
	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/psychro"
	"gonum.org/v1/plot/vg"
)

// tableLeft is where the first column of figures ends, and tableColumn the width of
// one, in points.
const (
	tableLeft   = 78
	tableColumn = 44
)

// tableTop is the line of its heading in the corner, beneath the legend.
func (s *sheet) tableTop() vg.Length {
	return vg.Points(s.page.LegendTop() - 5*cornerLeading)
}

// listed are the states in the table: those that air passes through, as many as
// leave most of the page to the chart.
func (s *sheet) listed() (out []state) {
	for _, st := range s.chart.states {
		if !st.open && len(out) < s.page.MostRows() {
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
	temperature := func(v float64) string { return s.number(v, 1) }
	head := func(name string) string { return s.chart.book.Term("chart.column." + name) }
	columns := []picture.Column[psychro.Air]{
		{
			Head:  head("dry-bulb"),
			Unit:  s.dryBulb.Symbol(),
			Value: func(a psychro.Air) string { return temperature(s.dryBulb.Number(a.DryBulb())) },
		},
		{
			Head:  head("wet-bulb"),
			Unit:  s.dryBulb.Symbol(),
			Value: func(a psychro.Air) string { return temperature(s.dryBulb.Number(a.WetBulb())) },
		},
		{
			Head: head("humidity"),
			Unit: "%",
			Value: func(a psychro.Air) string {
				return s.number(100*a.RelativeHumidity(), 0)
			},
		},
		{
			Head: head("dew-point"),
			Unit: s.dryBulb.Symbol(),
			Value: func(a psychro.Air) string {
				return temperature(s.dryBulb.Number(a.DewPoint()))
			},
		},
		{
			Head:  head("enthalpy"),
			Unit:  s.enthalpyUnit.Symbol(),
			Value: func(a psychro.Air) string { return s.number(s.enthalpy(a), 1) },
		},
		{
			Head: head("water"),
			Unit: s.waterUnit,
			Value: func(a psychro.Air) string {
				return s.number(a.HumidityRatio()*s.perWater, 1)
			},
		},
		{Head: head("volume"), Unit: s.scales.volume.Symbol(), Value: func(a psychro.Air) string {
			return s.number(s.scales.volume.Number(a.SpecificVolume()), s.volumeDigits+1)
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
		step = min(
			step, (vg.Points(s.page.Width)-left-vg.Points(8)-first)/vg.Length(len(columns)-1),
		)
	}
	var rows []picture.Row[psychro.Air]
	for _, st := range states {
		rows = append(rows, picture.Row[psychro.Air]{Name: st.label, State: st.air})
	}
	picture.Table(
		&s.Lettering,
		picture.TablePlace{
			Left:  left,
			Top:   top,
			First: first,
			Step:  step,
			Room:  first - vg.Points(34),
		},
		columns,
		rows,
	)
	if !s.stacked {
		height := vg.Points(picture.RowHeight * (float64(len(states)) + 2))
		width := first + step*vg.Length(len(columns)-1)
		s.Take(
			picture.Box{
				Center: vg.Point{X: left + width/2, Y: top + vg.Points(picture.Small) - height/2},
				Width:  width,
				Height: height,
			},
		)
	}
}
