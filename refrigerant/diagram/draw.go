package diagram

import (
	"image/color"
	"math"
	"slices"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// draw puts the whole diagram on a canvas of the page's size.
func (d *Diagram) draw(canvas draw.Canvas, page picture.Page) {
	pl := &plane{scales: scalesOf(d.options), fluid: d.fluid, dome: d.dome}
	pl.low, pl.high, pl.least, pl.most = d.bounds()
	s := &sheet{diagram: d, plane: pl, page: page, Lettering: picture.Lettering{Canvas: canvas}}
	pl.frame = vg.Rectangle{
		Min: vg.Point{X: vg.Points(46), Y: vg.Points(34)},
		Max: vg.Point{
			X: vg.Points(page.Width - 12),
			Y: vg.Points(
				page.LegendTop() - picture.LegendLeading*float64(
					page.LegendRows(len(s.families())),
				) + 0.1*picture.Normal,
			),
		},
	}
	if rows := len(s.listed()); rows > 0 {
		pl.frame.Min.Y += vg.Points(picture.RowHeight * (float64(rows) + 2.2))
	}
	s.bubble, s.dew = pl.points(d.dome.bubble), pl.points(d.dome.dew)
	s.ground()
	s.Heading(page, vg.Points(margin), d.options.Title, d.fluid.Designation()+", "+d.pressures())
	s.Legend(page, vg.Points(margin), s.families(), page.LegendColumns(), picture.LegendLeading)
	s.table()
	s.reserveMarks()
	s.grid()
	s.qualityLines()
	s.isotherms()
	s.isentropes()
	s.saturation()
	s.axes()
	for _, write := range s.words {
		write()
	}
	s.marks()
}

// A sheet is one drawing of a diagram.
type sheet struct {
	*plane
	picture.Lettering
	diagram *Diagram
	page    picture.Page

	bubble, dew []vg.Point
	words       []func() // of the lines, written when all lines are drawn
	placed      []picture.Placed
}

func (s *sheet) number(v float64, digits int) string {
	return picture.Number(s.diagram.book, v, digits)
}

// later writes a word when no line can cross it any more.
func (s *sheet) later(write func()) { s.words = append(s.words, write) }

// lines strokes what of them is inside the frame.
func (s *sheet) lines(style draw.LineStyle, lines ...[]vg.Point) (clipped [][]vg.Point) {
	inside := draw.Canvas{Canvas: s.Canvas.Canvas, Rectangle: s.frame}
	for _, line := range lines {
		if len(line) > 1 {
			clipped = append(clipped, inside.ClipLinesXY(line)...)
		}
	}
	s.Canvas.StrokeLines(style, clipped...)
	return clipped
}

// region is the outline of the dome.
func (s *sheet) region() []vg.Point {
	outline := slices.Clone(s.bubble)
	for _, at := range slices.Backward(s.dew) {
		outline = append(outline, at)
	}
	inside := draw.Canvas{Canvas: s.Canvas.Canvas, Rectangle: s.frame}
	return inside.ClipPolygonXY(outline)
}

func (s *sheet) ground() {
	s.Fill(picture.Paper, s.page.Bounds())
	s.Fill(picture.Field, s.frame)
	if outline := s.region(); len(outline) > 2 {
		s.Canvas.FillPolygon(picture.TealTint, outline)
	}
}

// margin is that of heading, legend and table at the left, in points.
const margin = 14

var (
	saturationStyle = picture.Stroke(picture.Teal, 1.8)
	isothermStyle   = picture.Stroke(picture.Blue, 0.7)
	isentropeStyle  = picture.Stroke(picture.Ochre, 0.7, 4, 2)
	qualityStyle    = picture.Stroke(picture.TealLight, 0.6)
)

// named says what a family or a scale shows, in a unit.
func (s *sheet) named(code fact.Code, unit string) string {
	return s.diagram.book.Say(fact.New(code, fact.Of("unit", unit)))
}

func (s *sheet) families() []picture.Family {
	f := []picture.Family{
		{Style: saturationStyle, Name: s.diagram.book.Term("diagram.saturation")},
		{Style: isothermStyle, Name: s.named("diagram.temperature", s.temperature.Symbol())},
	}
	if s.diagram.options.Isentropes {
		f = append(f, picture.Family{
			Style: isentropeStyle, Name: s.named("diagram.entropy", s.entropy.Symbol()),
		})
	}
	if s.diagram.options.Qualities {
		f = append(
			f, picture.Family{Style: qualityStyle, Name: s.named("diagram.qualities", "%")},
		)
	}
	return f
}

// enthalpySteps are the major and minor ones.
func (s *sheet) enthalpySteps() (major, minor float64) {
	n := int((s.frame.Max.X - s.frame.Min.X) / vg.Points(44))
	major = step(s.enthalpy.Number(s.most)-s.enthalpy.Number(s.least), n)
	return major, major / 5
}

// pressureTicks stand far enough apart to be read.
func (s *sheet) pressureTicks() []float64 {
	perPoint := math.Log(float64(s.high/s.low)) / float64(s.frame.Max.Y-s.frame.Min.Y)
	return s.plane.pressureTicks(s.low, s.high, 13*perPoint)
}

func (s *sheet) grid() {
	major, minor := s.enthalpySteps()
	var strong, faint [][]vg.Point
	picture.Each(s.enthalpy.Number(s.least), s.enthalpy.Number(s.most), minor, func(v float64) {
		x := s.x(s.enthalpy.Value(v))
		line := []vg.Point{{X: x, Y: s.frame.Min.Y}, {X: x, Y: s.frame.Max.Y}}
		if picture.Multiple(v, major) {
			strong = append(strong, line)
		} else {
			faint = append(faint, line)
		}
	})
	for _, v := range s.pressureTicks() {
		y := s.y(s.fromPressure(v))
		strong = append(strong, []vg.Point{{X: s.frame.Min.X, Y: y}, {X: s.frame.Max.X, Y: y}})
	}
	if !s.page.Sparse {
		s.lines(picture.Stroke(picture.GridMinor, 0.5), faint...)
	}
	s.lines(picture.Stroke(picture.GridMajor, 0.6), strong...)
}

// temperatures are those at the corners, where there is a state.
func (s *sheet) temperatures() (coldest, warmest quantity.Temperature) {
	limits := s.fluid.Limits()
	coldest, warmest = limits.MinTemperature, limits.MaxTemperature
	low, errLow := s.fluid.StateAtEnthalpy(s.low, s.most)
	high, errHigh := s.fluid.StateAtEnthalpy(min(s.high, almostCritical*s.dome.critical.p), s.most)
	if errLow == nil && errHigh == nil {
		warmest = max(low.Temperature, high.Temperature)
	}
	if st, err := s.fluid.StateAtEnthalpy(max(s.low, s.dome.bubble[0].p), s.least); err == nil {
		coldest = st.Temperature
	}
	return coldest, warmest
}

func (s *sheet) isotherms() {
	coldest, warmest := s.temperatures()
	most := 18
	if s.page.Sparse {
		most = 11
	}
	low, high := s.temperature.Number(coldest), s.temperature.Number(warmest)
	words := picture.Writing(picture.Small, picture.Blue, true)
	by := step(high-low, most)
	picture.Each(low, high, by, func(v float64) {
		line := s.isotherm(s.temperature.Value(v))
		liquid := s.lines(isothermStyle, line.liquid)
		across := s.lines(isothermStyle, line.across)
		vapor := s.lines(isothermStyle, line.vapor)
		s.later(func() {
			word := s.number(v, tickDigits(by))
			write := func(pieces [][]vg.Point, ground color.Color, shares ...float64) bool {
				return slices.ContainsFunc(pieces, func(piece []vg.Point) bool {
					return s.WriteAlong(words, word, piece, s.frame, ground, shares...)
				})
			}
			_ = write(across, picture.TealTint, 0.5, 0.44, 0.56, 0.38, 0.62, 0.3, 0.7, 0.2, 0.8) ||
				write(liquid, picture.Field, 0.25, 0.4, 0.15, 0.6) ||
				write(vapor, picture.Field, 0.15, 0.25, 0.35, 0.5, 0.65, 0.8)
		})
	})
}

func (s *sheet) isentropes() {
	if !s.diagram.options.Isentropes {
		return
	}
	_, warmest := s.temperatures()
	last, err := s.fluid.State(s.low, warmest)
	if err != nil {
		return
	}
	above := s.isobars(min(1.15*warmest, s.fluid.Limits().MaxTemperature))
	most := 10
	if s.page.Sparse {
		most = 6
	}
	low, high := s.entropy.Number(s.dome.criticalEntropy), s.entropy.Number(last.Entropy)
	by := step(high-low, most)
	words := picture.Writing(picture.Small, picture.Ochre, true)
	picture.Each(low, high, by, func(v float64) {
		curves := s.isentrope(s.entropy.Value(v), s.dome.criticalEntropy, above)
		for _, piece := range s.lines(isentropeStyle, curves...) {
			s.later(func() {
				s.WriteAlong(
					words, s.number(v, tickDigits(by)), piece, s.frame, picture.Field, 0.6,
					0.7, 0.5, 0.4, 0.8, 0.3,
				)
			})
		}
	})
}

func (s *sheet) qualityLines() {
	if !s.diagram.options.Qualities {
		return
	}
	shares := []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9}
	if s.page.Sparse {
		shares = []float64{0.2, 0.4, 0.6, 0.8}
	}
	words := picture.Writing(picture.Small, picture.Teal, true)
	for i, line := range s.qualities(shares) {
		for _, piece := range s.lines(qualityStyle, line) {
			s.later(func() {
				s.WriteAlong(
					words, s.number(100*shares[i], 0)+" %", piece, s.frame, picture.TealTint,
					0.1, 0.15, 0.2, 0.25, 0.05,
				)
			})
		}
	}
}

// saturation draws the bubble and dew lines over all others.
func (s *sheet) saturation() {
	words := picture.Writing(picture.Small, picture.Teal, true)
	for _, edge := range []struct {
		line []vg.Point
		name string
	}{{s.bubble, "diagram.bubble-line"}, {s.dew, "diagram.dew-line"}} {
		for _, piece := range s.lines(saturationStyle, edge.line) {
			if !s.page.Sparse {
				s.later(func() {
					s.WriteAlong(
						words, s.diagram.book.Term(edge.name), piece, s.frame, picture.Field, 0.3, 0.4, 0.2, 0.5,
					)
				})
			}
		}
	}
	at := vg.Point{X: s.x(s.dome.critical.h), Y: s.y(s.dome.critical.p)}
	if s.frame.Min.X < at.X && at.X < s.frame.Max.X && s.frame.Min.Y < at.Y &&
		at.Y < s.frame.Max.Y {
		s.Canvas.DrawGlyphNoClip(
			draw.GlyphStyle{Color: picture.Teal, Radius: vg.Points(2), Shape: draw.CircleGlyph{}},
			at,
		)
	}
}

func (s *sheet) axes() {
	frame := picture.Stroke(picture.Ink, 0.9)
	s.Canvas.StrokeLine2(frame, s.frame.Min.X, s.frame.Min.Y, s.frame.Max.X, s.frame.Min.Y)
	s.Canvas.StrokeLine2(frame, s.frame.Min.X, s.frame.Min.Y, s.frame.Min.X, s.frame.Max.Y)
	figures := picture.Writing(picture.Small, picture.Ink, false)
	figures.XAlign, figures.YAlign = text.XCenter, text.YTop
	major, _ := s.enthalpySteps()
	picture.Each(s.enthalpy.Number(s.least), s.enthalpy.Number(s.most), major, func(v float64) {
		x := s.x(s.enthalpy.Value(v))
		s.Canvas.StrokeLine2(frame, x, s.frame.Min.Y, x, s.frame.Min.Y-vg.Points(3))
		s.Canvas.FillText(
			figures, vg.Point{X: x, Y: s.frame.Min.Y - vg.Points(4)},
			s.number(v, tickDigits(major)),
		)
	})
	figures.XAlign, figures.YAlign = text.XRight, text.YCenter
	for _, v := range s.pressureTicks() {
		y := s.y(s.fromPressure(v))
		s.Canvas.StrokeLine2(frame, s.frame.Min.X, y, s.frame.Min.X-vg.Points(3), y)
		s.Canvas.FillText(
			figures, vg.Point{X: s.frame.Min.X - vg.Points(5), Y: y},
			s.number(v, tickDigits(v)),
		)
	}
	name := picture.Writing(picture.Normal, picture.Ink, true)
	name.XAlign, name.YAlign = text.XCenter, text.YBottom
	s.Canvas.FillText(
		name, vg.Point{X: (s.frame.Min.X + s.frame.Max.X) / 2, Y: s.frame.Min.Y - vg.Points(28)},
		s.named("diagram.axis.enthalpy", s.enthalpy.Symbol()),
	)
	name.Rotation = math.Pi / 2
	name.YAlign = text.YTop
	s.Canvas.FillText(
		name, vg.Point{X: vg.Points(5), Y: (s.frame.Min.Y + s.frame.Max.Y) / 2},
		s.named(s.pressureName, s.pressureUnit),
	)
}
