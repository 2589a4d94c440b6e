package chart

import (
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// draw puts the whole chart on a canvas of the page's size.
func (c *Chart) draw(canvas draw.Canvas, page Page) {
	low, high, wettest := c.bounds()
	pl := &plane{
		scales: scalesOf(c.options.System), p: c.options.Pressure, model: c.options.Model,
		low: low, high: high, wettest: wettest,
	}
	pl.frame = vg.Rectangle{
		Min: vg.Point{X: vg.Points(14), Y: vg.Points(34)},
		Max: vg.Point{X: vg.Points(page.Width - 38), Y: vg.Points(page.Height - 12)},
	}
	s := &sheet{chart: c, plane: pl, page: page, lettering: lettering{canvas: canvas}}
	if s.stacked = page.Sparse || !s.cornerHolds(); s.stacked {
		pl.frame.Max.Y -= vg.Points(title*1.35 + normal*(1.7+1.45*float64(s.legendRows())))
		if rows := len(s.listed()); rows > 0 {
			pl.frame.Min.Y += vg.Points(rowHeight * (float64(rows) + 2.2))
		}
	}
	s.ground()
	s.header()
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
	lettering
	chart *Chart
	page  Page
	// stacked puts title and legend above the chart and the table of states below
	// it; else they stand in the corner above the saturation curve.
	stacked bool
	words   []func() // of the lines, written when all lines are drawn
	marked  []placed
}

// later writes a word when no line can cross it any more.
func (s *sheet) later(write func()) { s.words = append(s.words, write) }

// lines strokes what of them is inside the frame.
func (s *sheet) lines(style draw.LineStyle, lines ...[]vg.Point) [][]vg.Point {
	inside := s.inside()
	clipped := inside.ClipLinesXY(lines...)
	s.canvas.StrokeLines(style, clipped...)
	return clipped
}

func (s *sheet) inside() draw.Canvas {
	return draw.Canvas{Canvas: s.canvas.Canvas, Rectangle: s.frame}
}

func (s *sheet) ground() {
	s.canvas.FillPolygon(paper, rectangle(vg.Rectangle{Max: vg.Point{X: vg.Points(s.page.Width), Y: vg.Points(s.page.Height)}}))
	s.canvas.FillPolygon(field, s.region())
}

func rectangle(r vg.Rectangle) []vg.Point {
	return []vg.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}}
}

// cornerHolds reports whether title, legend and table have room above the
// saturation curve and its scale of enthalpy.
func (s *sheet) cornerHolds() bool {
	width, bottom := float64(tableLeft+6*tableColumn), s.tableTop()-vg.Points(small*1.15)
	if rows := len(s.listed()); rows == 0 {
		width = 160
	} else {
		bottom -= vg.Points(rowHeight * float64(rows))
	}
	reach := s.frame.Min.X + vg.Points(width) + vg.Points(34)
	if reach > s.frame.Max.X {
		return false
	}
	share := float64((reach - s.frame.Min.X) / (s.frame.Max.X - s.frame.Min.X))
	return s.y(s.saturated(s.low+(s.high-s.low)*quantity.Temperature(share))) < bottom
}

// header writes title and place above the saturation curve, where there is no air.
func (s *sheet) header() {
	top := vg.Points(s.page.Height) - vg.Points(12)
	x := s.frame.Min.X
	heading := writing(title, ink, true)
	heading.YAlign = text.YTop
	room := vg.Points(s.page.Width) - 2*x
	s.canvas.FillText(heading, vg.Point{X: x, Y: top}, fit(heading, s.chart.options.Title, room))
	o := s.chart.options
	place := o.Pressure.Format(o.System)
	if o.Elevation != 0 {
		place += fmt.Sprintf(", %s above sea level", elevation(o.Elevation, o.System))
	}
	sub := writing(normal, quiet, false)
	sub.YAlign = text.YTop
	s.canvas.FillText(sub, vg.Point{X: x, Y: top - vg.Points(title*1.35)}, fit(sub, "Moist air at "+place, room))
}

// A family of lines, as the legend names it.
type family struct {
	style draw.LineStyle
	name  string
}

func (s *sheet) families() []family {
	f := []family{
		{stroke(tealLight, 0.9), "relative humidity, %"},
		{stroke(blue, 0.8), "wet bulb, " + s.temperatureUnit},
		{stroke(ochre, 0.8, 4, 2), "volume, " + s.volumeUnit},
	}
	if !s.page.Sparse {
		f = append(f, family{stroke(ink, 0.6), "enthalpy, " + s.enthalpyUnit})
	}
	return f
}

// legendColumn is the width of one entry of the legend above the chart, in points.
const legendColumn = 132

func (s *sheet) legendColumns() int { return max(1, int((s.page.Width-20)/legendColumn)) }

func (s *sheet) legendRows() int {
	return (len(s.families()) + s.legendColumns() - 1) / s.legendColumns()
}

// legend names the families of lines, each beside a piece of it.
func (s *sheet) legend() {
	style := writing(normal, ink, false)
	style.YAlign = text.YCenter
	x, y := s.frame.Min.X, vg.Points(s.page.Height-(12+title*1.35+normal*2.1))
	for i, f := range s.families() {
		at := vg.Point{X: x, Y: y - vg.Length(i)*vg.Points(normal*1.6)}
		if s.stacked {
			row, column := i/s.legendColumns(), i%s.legendColumns()
			at = vg.Point{X: x + vg.Length(column)*legendColumn, Y: y - vg.Length(row)*vg.Points(normal*1.45)}
		}
		s.canvas.StrokeLine2(f.style, at.X, at.Y, at.X+vg.Points(16), at.Y)
		s.canvas.FillText(style, vg.Point{X: at.X + vg.Points(21), Y: at.Y}, f.name)
		s.take(box{center: vg.Point{X: at.X + vg.Points(65), Y: at.Y}, width: vg.Points(140), height: vg.Points(normal * 1.3)})
	}
}

func (s *sheet) grid() {
	var minor, major [][]vg.Point
	each(s.dryBulb(s.low), s.dryBulb(s.high), s.dryBulbMinor, func(v float64) {
		t := s.fromDryBulb(v)
		line := []vg.Point{{X: s.x(t), Y: s.frame.Min.Y}, {X: s.x(t), Y: s.y(s.saturated(t))}}
		if multiple(v, s.dryBulbMajor) {
			major = append(major, line)
		} else {
			minor = append(minor, line)
		}
	})
	each(0, s.wettest*s.perWater, s.waterMinor, func(v float64) {
		w := v / s.perWater
		left := s.frame.Min.X
		if a, err := s.model.FromHumidityRatioAndRelativeHumidity(w, 1, s.p); err == nil {
			left = max(left, s.x(a.DryBulb()))
		}
		line := []vg.Point{{X: left, Y: s.y(w)}, {X: s.frame.Max.X, Y: s.y(w)}}
		if multiple(v, s.waterMajor) {
			major = append(major, line)
		} else {
			minor = append(minor, line)
		}
	})
	if !s.page.Sparse {
		s.lines(stroke(gridMinor, 0.5), minor...)
	}
	s.lines(stroke(gridMajor, 0.6), major...)
}

// each calls visit for every multiple of step from low to high.
func each(low, high, step float64, visit func(float64)) {
	const slack = 1e-9
	for i := math.Ceil(low/step - slack); i <= math.Floor(high/step+slack); i++ {
		visit(i * step)
	}
}

func multiple(v, step float64) bool {
	return math.Abs(v/step-math.Round(v/step)) < 1e-6
}

func (s *sheet) wetBulbs() {
	top := s.fullAt()
	highest := s.dryBulb(s.high)
	major := s.wetBulbMajor[0]
	if s.page.Sparse {
		major = s.wetBulbMajor[1]
	}
	if !s.page.Sparse {
		each(s.dryBulb(s.low)-60, highest, s.wetBulbMinor, func(v float64) {
			if !multiple(v, major) {
				s.lines(stroke(blueLight, 0.4), s.wetBulb(s.fromDryBulb(v)))
			}
		})
	}
	each(s.dryBulb(s.low)-60, highest, major, func(v float64) {
		b := s.fromDryBulb(v)
		s.lines(stroke(blue, 0.7), s.wetBulb(b))
		if b > s.low && b < top {
			s.later(func() { s.beside(writing(small, blue, true), number(v, 0), b, vg.Points(8)) })
		}
	})
}

// beside writes a word outside the saturation curve at a temperature.
func (s *sheet) beside(style text.Style, word string, t quantity.Temperature, away vg.Length) bool {
	out := s.outward(t)
	at := vg.Point{X: s.x(t), Y: s.y(s.saturated(t))}.Add(out.Scale(away))
	b := boxOf(style, word, at, 0)
	if !s.free(b) || b.corners()[0].X < vg.Points(2) || b.corners()[2].Y > vg.Points(s.page.Height-4) {
		return false
	}
	s.write(style, word, b, nil)
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
	driest := s.scales.volume(s.volumeOf(s.low, 0))
	wettest := s.scales.volume(s.volumeOf(s.high, s.wettest))
	each(driest, wettest, step, func(v float64) {
		line := s.plane.volume(s.fromVolume(v))
		for _, piece := range s.lines(stroke(ochre, 0.7, 4, 2), line) {
			s.later(func() {
				s.along(writing(small, ochre, true), number(v, s.volumeDigits), piece, s.frame, 0.12, 0.2, 0.3, 0.42, 0.06)
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
		for _, piece := range s.lines(stroke(tealLight, 0.8), line) {
			s.later(func() {
				s.along(writing(small, teal, true), number(float64(rh), 0)+" %", piece, s.frame, 0.86, 0.8, 0.92, 0.72, 0.64, 0.55, 0.45)
			})
		}
	}
	s.lines(stroke(teal, 1.8), s.relativeHumidity(1))
}

func (s *sheet) axes() {
	frame := stroke(ink, 0.9)
	s.canvas.StrokeLine2(frame, s.frame.Min.X, s.frame.Min.Y, s.frame.Max.X, s.frame.Min.Y)
	s.canvas.StrokeLine2(frame, s.frame.Max.X, s.frame.Min.Y, s.frame.Max.X, s.frame.Max.Y)
	figures := writing(small, ink, false)
	figures.XAlign, figures.YAlign = text.XCenter, text.YTop
	step := s.dryBulbMajor
	if s.page.Sparse && (s.dryBulb(s.high)-s.dryBulb(s.low))/step > 9 {
		step *= 2
	}
	each(s.dryBulb(s.low), s.dryBulb(s.high), step, func(v float64) {
		x := s.x(s.fromDryBulb(v))
		s.canvas.StrokeLine2(frame, x, s.frame.Min.Y, x, s.frame.Min.Y-vg.Points(3))
		s.canvas.FillText(figures, vg.Point{X: x, Y: s.frame.Min.Y - vg.Points(4)}, number(v, 0))
	})
	figures.XAlign, figures.YAlign = text.XLeft, text.YCenter
	each(0, s.wettest*s.perWater, s.waterMajor, func(v float64) {
		y := s.y(v / s.perWater)
		s.canvas.StrokeLine2(frame, s.frame.Max.X, y, s.frame.Max.X+vg.Points(3), y)
		s.canvas.FillText(figures, vg.Point{X: s.frame.Max.X + vg.Points(5), Y: y}, number(v, 0))
	})
	name := writing(normal, ink, true)
	name.XAlign, name.YAlign = text.XCenter, text.YBottom
	s.canvas.FillText(name, vg.Point{X: (s.frame.Min.X + s.frame.Max.X) / 2, Y: s.frame.Min.Y - vg.Points(28)}, "Dry bulb, "+s.temperatureUnit)
	name.Rotation = math.Pi / 2
	name.YAlign = text.YTop
	s.canvas.FillText(name, vg.Point{X: vg.Points(s.page.Width - 14), Y: (s.frame.Min.Y + s.frame.Max.Y) / 2}, "Humidity ratio, "+s.waterUnit)
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
	words := writing(small, ink, false)
	each(s.enthalpy(first), s.enthalpy(last), s.enthalpyMinor, func(v float64) {
		a, ok := at(v)
		if !ok {
			return
		}
		// Along constant enthalpy the air is cooler by what its vapor holds more.
		wetter := a.HumidityRatio() + 0.02*s.wettest
		cooler := a.DryBulb() - quantity.Temperature(0.02*s.wettest*2501/1.006)
		direction := vg.Point{X: s.x(cooler), Y: s.y(wetter)}.Sub(s.point(a))
		unit := direction.Scale(1 / distance(vg.Point{}, direction))
		near, far := vg.Points(15), vg.Points(19)
		if multiple(v, s.enthalpyMajor) {
			far = vg.Points(23)
		}
		from, to := s.point(a).Add(unit.Scale(near)), s.point(a).Add(unit.Scale(far))
		middle := from.Add(to).Scale(0.5)
		if to.X < vg.Points(6) || to.Y > vg.Points(s.page.Height-8) || !s.free(box{center: middle, width: 2, height: 2}) {
			return
		}
		s.canvas.StrokeLine2(stroke(ink, 0.6), from.X, from.Y, to.X, to.Y)
		if multiple(v, s.enthalpyMajor) {
			b := boxOf(words, number(v, 0), s.point(a).Add(unit.Scale(far+vg.Points(7))), 0)
			if s.free(b) && b.corners()[0].X > vg.Points(3) {
				s.write(words, number(v, 0), b, nil)
			}
		}
	})
}
