package diagram

import (
	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/plot/vg"
)

// nameWidth is the width of the column of names of the table of states, in points, and
// columnWidth the most of one of figures.
const (
	nameWidth   = 74
	columnWidth = 64
)

// listed are the states in the table: as many as leave most of the page to the
// diagram.
func (s *sheet) listed() []Mark {
	return s.diagram.states[:min(len(s.diagram.states), s.page.MostRows())]
}

// table lists the states in figures beneath the diagram.
func (s *sheet) table() {
	states := s.listed()
	if len(states) == 0 {
		return
	}
	head := func(name string) string { return s.diagram.book.Term("diagram.column." + name) }
	columns := []picture.Column[refrigerant.State]{
		{
			Head: head("pressure"),
			Unit: s.pressureUnit,
			Value: func(st refrigerant.State) string {
				return s.number(s.pressure(st.Pressure), 1)
			},
		},
		{
			Head: head("temperature"),
			Unit: s.temperature.Symbol(),
			Value: func(st refrigerant.State) string {
				return s.number(s.temperature.Number(st.Temperature), 1)
			},
		},
		{
			Head: head("condition"),
			Unit: s.delta.Symbol() + ", %",
			Value: func(st refrigerant.State) string {
				f := s.diagram.condition(st)
				f.Code += ".short"
				return s.diagram.book.Say(f)
			},
		},
		{
			Head: head("enthalpy"),
			Unit: s.enthalpy.Symbol(),
			Value: func(st refrigerant.State) string {
				return s.number(s.enthalpy.Number(st.Enthalpy), 1)
			},
		},
		{
			Head: head("entropy"),
			Unit: s.entropy.Symbol(),
			Value: func(st refrigerant.State) string {
				return s.number(s.entropy.Number(st.Entropy), 4)
			},
		},
		{
			Head: head("density"),
			Unit: s.density.Symbol(),
			Value: func(st refrigerant.State) string {
				return s.number(s.density.Number(st.Density), 2)
			},
		},
	}
	if s.page.Sparse {
		columns = columns[:4]
	}
	left, top := vg.Points(margin), s.frame.Min.Y-vg.Points(42)
	step := min(
		vg.Points(columnWidth),
		(vg.Points(s.page.Width-2*margin)-vg.Points(nameWidth))/vg.Length(len(columns)),
	)
	place := picture.TablePlace{
		Left:  left,
		Top:   top,
		First: vg.Points(nameWidth) + step,
		Step:  step,
		Room:  vg.Points(nameWidth),
	}
	var rows []picture.Row[refrigerant.State]
	for _, m := range states {
		rows = append(rows, picture.Row[refrigerant.State]{Name: m.Label, State: m.State})
	}
	picture.Table(&s.Lettering, place, columns, rows)
}
