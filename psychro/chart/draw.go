package chart

import (
	"math"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// draw puts the whole chart on a canvas of the page's size.
func (c *Chart) draw(canvas draw.Canvas, page picture.Page) {
	low, high, wettest := c.bounds()
	pl := &plane{
		scales: scalesOf(c.options.System), p: c.options.Pressure, model: c.options.Model,
		low: low, high: high, wettest: wettest,
	}
	pl.frame = vg.Rectangle{
		Min: vg.Point{X: vg.Points(14), Y: vg.Points(34)},
		Max: vg.Point{X: vg.Points(page.Width - 38), Y: vg.Points(page.Height - 12)},
	}
	s := &sheet{chart: c, plane: pl, page: page, Lettering: picture.Lettering{Canvas: canvas}}
	if s.stacked = page.Sparse || !s.cornerHolds(); s.stacked {
		pl.frame.Max.Y -= vg.Points(
			picture.Title*1.35 + picture.Normal*1.7 + picture.LegendLeading*float64(
				page.LegendRows(len(s.families())),
			),
		)
		if rows := len(s.listed()); rows > 0 {
			pl.frame.Min.Y += vg.Points(picture.RowHeight * (float64(rows) + 2.2))
		}
	}
	s.ground()
	s.Heading(page, pl.frame.Min.X, c.options.Title, c.place())
	s.legend()
	s.table()
	s.reserveMarks()
	s.grid()
	s.wetBulbs()
	s.volumes()
	s.humidities()
	s.axes()
	for _, write := range s.words {
		write()
	}
	if !page.Sparse {
		s.enthalpies()
	}
	s.marks()
}

// A sheet is one drawing of a chart.
type sheet struct {
	*plane
	picture.Lettering
	chart *Chart
	page  picture.Page
	// stacked puts title and legend above the chart and the table of states below
	// it; else they stand in the corner above the saturation curve.
	stacked bool
	words   []func() // of the lines, written when all lines are drawn
	marked  []picture.Placed
}

// later writes a word when no line can cross it any more.
func (s *sheet) later(write func()) { s.words = append(s.words, write) }

// lines strokes what of them is inside the frame.
func (s *sheet) lines(style draw.LineStyle, lines ...[]vg.Point) [][]vg.Point {
	inside := s.inside()
	clipped := inside.ClipLinesXY(lines...)
	s.Canvas.StrokeLines(style, clipped...)
	return clipped
}

func (s *sheet) inside() draw.Canvas {
	return draw.Canvas{Canvas: s.Canvas.Canvas, Rectangle: s.frame}
}

func (s *sheet) ground() {
	s.Fill(picture.Paper, s.page.Bounds())
	s.Canvas.FillPolygon(picture.Field, s.region())
}

// cornerHolds reports whether title, legend and table have room above the
// saturation curve and its scale of enthalpy.
func (s *sheet) cornerHolds() bool {
	width, bottom := float64(tableLeft+6*tableColumn), s.tableTop()-vg.Points(picture.Small*1.15)
	if rows := len(s.listed()); rows == 0 {
		width = 160
	} else {
		bottom -= vg.Points(picture.RowHeight * float64(rows))
	}
	reach := s.frame.Min.X + vg.Points(width) + vg.Points(34)
	if reach > s.frame.Max.X {
		return false
	}
	share := float64((reach - s.frame.Min.X) / (s.frame.Max.X - s.frame.Min.X))
	return s.y(s.saturated(s.low+(s.high-s.low)*quantity.Temperature(share))) < bottom
}

// place is the pressure of the chart, and the elevation that it was taken from.
func (c *Chart) place() string {
	f := fact.New("chart.place", fact.Amount("pressure", c.options.Pressure))
	if z := c.options.Elevation; z != 0 {
		f = f.With(fact.Of("elevation", c.book.Decimal(elevation(z, c.options.System))))
	}
	return c.book.Say(f)
}

func (s *sheet) number(v float64, digits int) string {
	return picture.Number(s.chart.book, v, digits)
}

// named says what a family or a scale shows, in a unit.
func (s *sheet) named(code fact.Code, unit string) string {
	return s.chart.book.Say(fact.New(code, fact.Of("unit", unit)))
}

func (s *sheet) families() []picture.Family {
	f := []picture.Family{
		{
			Style: picture.Stroke(picture.TealLight, 0.9),
			Name:  s.named("chart.relative-humidity", "%"),
		},
		{
			Style: picture.Stroke(picture.Blue, 0.8),
			Name:  s.named("chart.wet-bulb", s.dryBulb.Symbol()),
		},
		{
			Style: picture.Stroke(picture.Ochre, 0.8, 4, 2),
			Name:  s.named("chart.volume", s.scales.volume.Symbol()),
		},
	}
	if !s.page.Sparse {
		f = append(
			f,
			picture.Family{
				Style: picture.Stroke(picture.Ink, 0.6),
				Name:  s.named("chart.enthalpy", s.enthalpyUnit.Symbol()),
			},
		)
	}
	return f
}

// cornerLeading is the distance between the rows of the legend in the corner, in points.
const cornerLeading = 1.6 * picture.Normal

// legend stands in rows across the page, or down the corner.
func (s *sheet) legend() {
	if s.stacked {
		s.Legend(s.page, s.frame.Min.X, s.families(), s.page.LegendColumns(), picture.LegendLeading)
	} else {
		s.Legend(s.page, s.frame.Min.X, s.families(), 1, cornerLeading)
	}
}

func (s *sheet) grid() {
	var minor, major [][]vg.Point
	picture.Each(
		s.dryBulb.Number(s.low),
		s.dryBulb.Number(s.high),
		s.dryBulbMinor,
		func(v float64) {
			t := s.dryBulb.Value(v)
			line := []vg.Point{{X: s.x(t), Y: s.frame.Min.Y}, {X: s.x(t), Y: s.y(s.saturated(t))}}
			if picture.Multiple(v, s.dryBulbMajor) {
				major = append(major, line)
			} else {
				minor = append(minor, line)
			}
		},
	)
	picture.Each(0, s.wettest*s.perWater, s.waterMinor, func(v float64) {
		w := v / s.perWater
		left := s.frame.Min.X
		if a, err := s.model.FromHumidityRatioAndRelativeHumidity(w, 1, s.p); err == nil {
			left = max(left, s.x(a.DryBulb()))
		}
		line := []vg.Point{{X: left, Y: s.y(w)}, {X: s.frame.Max.X, Y: s.y(w)}}
		if picture.Multiple(v, s.waterMajor) {
			major = append(major, line)
		} else {
			minor = append(minor, line)
		}
	})
	if !s.page.Sparse {
		s.lines(picture.Stroke(picture.GridMinor, 0.5), minor...)
	}
	s.lines(picture.Stroke(picture.GridMajor, 0.6), major...)
}

func (s *sheet) wetBulbs() {
	top := s.fullAt()
	highest := s.dryBulb.Number(s.high)
	major := s.wetBulbMajor[0]
	if s.page.Sparse {
		major = s.wetBulbMajor[1]
	}
	if !s.page.Sparse {
		picture.Each(s.dryBulb.Number(s.low)-60, highest, s.wetBulbMinor, func(v float64) {
			if !picture.Multiple(v, major) {
				s.lines(picture.Stroke(picture.BlueLight, 0.4), s.wetBulb(s.dryBulb.Value(v)))
			}
		})
	}
	picture.Each(s.dryBulb.Number(s.low)-60, highest, major, func(v float64) {
		b := s.dryBulb.Value(v)
		s.lines(picture.Stroke(picture.Blue, 0.7), s.wetBulb(b))
		if b > s.low && b < top {
			s.later(func() {
				s.beside(
					picture.Writing(picture.Small, picture.Blue, true), s.number(v, 0), b,
					vg.Points(8),
				)
			})
		}
	})
}

// beside writes a word outside the saturation curve at a temperature.
func (s *sheet) beside(style text.Style, word string, t quantity.Temperature, away vg.Length) bool {
	out := s.outward(t)
	at := vg.Point{X: s.x(t), Y: s.y(s.saturated(t))}.Add(out.Scale(away))
	b := picture.BoxOf(style, word, at, 0)
	if !s.Free(b) || b.Corners()[0].X < vg.Points(2) ||
		b.Corners()[2].Y > vg.Points(s.page.Height-4) {
		return false
	}
	s.Write(style, word, b, nil)
	return true
}

// outward is the direction from the saturation curve into the fog.
func (s *sheet) outward(t quantity.Temperature) vg.Point {
	const step = 0.2
	rise := s.y(s.saturated(t+step)) - s.y(s.saturated(t-step))
	run := s.x(t+step) - s.x(t-step)
	length := math.Hypot(float64(rise), float64(run))
	return vg.Point{X: -rise / vg.Length(length), Y: run / vg.Length(length)}
}

func (s *sheet) volumes() {
	step := s.volumeStep[0]
	if s.page.Sparse {
		step = s.volumeStep[1]
	}
	driest := s.scales.volume.Number(s.volumeOf(s.low, 0))
	wettest := s.scales.volume.Number(s.volumeOf(s.high, s.wettest))
	picture.Each(driest, wettest, step, func(v float64) {
		line := s.plane.volume(s.scales.volume.Value(v))
		for _, piece := range s.lines(picture.Stroke(picture.Ochre, 0.7, 4, 2), line) {
			s.later(func() {
				s.WriteAlong(
					picture.Writing(picture.Small, picture.Ochre, true),
					s.number(v, s.volumeDigits), piece, s.frame, picture.Field, 0.12, 0.2,
					0.3, 0.42, 0.06,
				)
			})
		}
	})
}

func (s *sheet) humidities() {
	step := 10
	if s.page.Sparse {
		step = 20
	}
	for rh := step; rh < 100; rh += step {
		line := s.relativeHumidity(float64(rh) / 100)
		for _, piece := range s.lines(picture.Stroke(picture.TealLight, 0.8), line) {
			s.later(func() {
				s.WriteAlong(
					picture.Writing(picture.Small, picture.Teal, true),
					s.number(float64(rh), 0)+" %", piece, s.frame, picture.Field, 0.86, 0.8,
					0.92, 0.72, 0.64, 0.55, 0.45,
				)
			})
		}
	}
	s.lines(picture.Stroke(picture.Teal, 1.8), s.relativeHumidity(1))
}

func (s *sheet) axes() {
	frame := picture.Stroke(picture.Ink, 0.9)
	s.Canvas.StrokeLine2(frame, s.frame.Min.X, s.frame.Min.Y, s.frame.Max.X, s.frame.Min.Y)
	s.Canvas.StrokeLine2(frame, s.frame.Max.X, s.frame.Min.Y, s.frame.Max.X, s.frame.Max.Y)
	figures := picture.Writing(picture.Small, picture.Ink, false)
	figures.XAlign, figures.YAlign = text.XCenter, text.YTop
	step := s.dryBulbMajor
	if s.page.Sparse && (s.dryBulb.Number(s.high)-s.dryBulb.Number(s.low))/step > 9 {
		step *= 2
	}
	picture.Each(s.dryBulb.Number(s.low), s.dryBulb.Number(s.high), step, func(v float64) {
		x := s.x(s.dryBulb.Value(v))
		s.Canvas.StrokeLine2(frame, x, s.frame.Min.Y, x, s.frame.Min.Y-vg.Points(3))
		s.Canvas.FillText(
			figures, vg.Point{X: x, Y: s.frame.Min.Y - vg.Points(4)}, s.number(v, 0),
		)
	})
	figures.XAlign, figures.YAlign = text.XLeft, text.YCenter
	picture.Each(0, s.wettest*s.perWater, s.waterMajor, func(v float64) {
		y := s.y(v / s.perWater)
		s.Canvas.StrokeLine2(frame, s.frame.Max.X, y, s.frame.Max.X+vg.Points(3), y)
		s.Canvas.FillText(
			figures, vg.Point{X: s.frame.Max.X + vg.Points(5), Y: y}, s.number(v, 0),
		)
	})
	name := picture.Writing(picture.Normal, picture.Ink, true)
	name.XAlign, name.YAlign = text.XCenter, text.YBottom
	s.Canvas.FillText(
		name, vg.Point{X: (s.frame.Min.X + s.frame.Max.X) / 2, Y: s.frame.Min.Y - vg.Points(28)},
		s.named("chart.axis.dry-bulb", s.dryBulb.Symbol()),
	)
	name.Rotation = math.Pi / 2
	name.YAlign = text.YTop
	s.Canvas.FillText(
		name, vg.Point{X: vg.Points(s.page.Width - 14), Y: (s.frame.Min.Y + s.frame.Max.Y) / 2},
		s.named("chart.axis.humidity-ratio", s.waterUnit),
	)
}

// enthalpies draws the scale of enthalpy outside the saturation curve: ticks that
// lie along the lines of constant enthalpy, to be continued with a ruler.
func (s *sheet) enthalpies() {
	at := func(v float64) (a psychro.Air, ok bool) {
		low, high := s.low, s.fullAt()
		for range 50 {
			mid := (low + high) / 2
			m, err := s.model.Saturated(mid, s.p)
			if err != nil || s.enthalpy(m) > v {
				high = mid
			} else {
				low = mid
			}
		}
		a, err := s.model.Saturated((low+high)/2, s.p)
		return a, err == nil && math.Abs(s.enthalpy(a)-v) < 1e-6*(1+math.Abs(v))
	}
	first, err1 := s.model.Saturated(s.low, s.p)
	last, err2 := s.model.Saturated(s.fullAt(), s.p)
	if err1 != nil || err2 != nil {
		return
	}
	words := picture.Writing(picture.Small, picture.Ink, false)
	picture.Each(s.enthalpy(first), s.enthalpy(last), s.enthalpyMinor, func(v float64) {
		a, ok := at(v)
		if !ok {
			return
		}
		// Along constant enthalpy the air is cooler by what its vapor holds more.
		wetter := a.HumidityRatio() + 0.02*s.wettest
		cooler := a.DryBulb() - quantity.Temperature(0.02*s.wettest*2501/1.006)
		direction := vg.Point{X: s.x(cooler), Y: s.y(wetter)}.Sub(s.point(a))
		unit := direction.Scale(1 / picture.Distance(vg.Point{}, direction))
		near, far := vg.Points(15), vg.Points(19)
		if picture.Multiple(v, s.enthalpyMajor) {
			far = vg.Points(23)
		}
		from, to := s.point(a).Add(unit.Scale(near)), s.point(a).Add(unit.Scale(far))
		middle := from.Add(to).Scale(0.5)
		if to.X < vg.Points(6) || to.Y > vg.Points(s.page.Height-8) ||
			!s.Free(picture.Box{Center: middle, Width: 2, Height: 2}) {
			return
		}
		s.Canvas.StrokeLine2(picture.Stroke(picture.Ink, 0.6), from.X, from.Y, to.X, to.Y)
		if picture.Multiple(v, s.enthalpyMajor) {
			b := picture.BoxOf(
				words, s.number(v, 0), s.point(a).Add(unit.Scale(far+vg.Points(7))), 0,
			)
			if s.Free(b) && b.Corners()[0].X > vg.Points(3) {
				s.Write(words, s.number(v, 0), b, nil)
			}
		}
	})
}
