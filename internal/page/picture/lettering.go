package picture

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// A Box is a rectangle at an angle, taken by a word or a mark.
type Box struct {
	Center        vg.Point
	Width, Height vg.Length
	Angle         float64
}

// BoxOf is the box of a word.
func BoxOf(s text.Style, word string, center vg.Point, angle float64) Box {
	return Box{Center: center, Width: s.Width(word) + 2.5, Height: s.Font.Size * 1.05, Angle: angle}
}

// Along is the box of a line of a thickness.
func Along(from, to vg.Point, thickness vg.Length) Box {
	d := to.Sub(from)
	return Box{
		Center: from.Add(d.Scale(0.5)),
		Width:  Distance(from, to),
		Height: thickness,
		Angle:  math.Atan2(float64(d.Y), float64(d.X)),
	}
}

// Corners go around the box.
func (b Box) Corners() []vg.Point {
	c := b.corners()
	return c[:]
}

func (b Box) corners() (out [4]vg.Point) {
	sin, cos := math.Sincos(b.Angle)
	for i, s := range [4][2]vg.Length{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		dx, dy := s[0]*b.Width/2, s[1]*b.Height/2
		out[i] = vg.Point{
			X: b.Center.X + dx*vg.Length(cos) - dy*vg.Length(sin),
			Y: b.Center.Y + dx*vg.Length(sin) + dy*vg.Length(cos),
		}
	}
	return out
}

// Meets reports whether two boxes overlap, by the axes that may part them.
func (b Box) Meets(o Box) bool {
	apart, reach := b.Center.Sub(o.Center), b.Width+b.Height+o.Width+o.Height
	if max(apart.X, -apart.X, apart.Y, -apart.Y) > reach/2 {
		return false
	}
	p, q := b.corners(), o.corners()
	for _, angle := range [...]float64{b.Angle, b.Angle + math.Pi/2, o.Angle, o.Angle + math.Pi/2} {
		sin, cos := math.Sincos(angle)
		span := func(pts [4]vg.Point) (low, high vg.Length) {
			low, high = vg.Length(math.Inf(1)), vg.Length(math.Inf(-1))
			for _, c := range pts {
				d := c.X*vg.Length(cos) + c.Y*vg.Length(sin)
				low, high = min(low, d), max(high, d)
			}
			return low, high
		}
		pl, ph := span(p)
		ql, qh := span(q)
		if ph <= ql || qh <= pl {
			return false
		}
	}
	return true
}

// within reports whether the whole box lies in r.
func (b Box) within(r vg.Rectangle) bool {
	for _, c := range b.corners() {
		if c.X < r.Min.X || c.X > r.Max.X || c.Y < r.Min.Y || c.Y > r.Max.Y {
			return false
		}
	}
	return true
}

// from is the distance of a point from the box, 0 inside it.
func (b Box) from(p vg.Point) vg.Length {
	sin, cos := math.Sincos(b.Angle)
	d := p.Sub(b.Center)
	along := d.X*vg.Length(cos) + d.Y*vg.Length(sin)
	across := d.Y*vg.Length(cos) - d.X*vg.Length(sin)
	return Distance(vg.Point{}, vg.Point{
		X: max(along, -along, b.Width/2) - b.Width/2,
		Y: max(across, -across, b.Height/2) - b.Height/2,
	})
}

// A Lettering writes words where there is room for them.
type Lettering struct {
	Canvas draw.Canvas
	taken  []Box
	marks  []vg.Point
}

// Take keeps words out of a box.
func (l *Lettering) Take(b Box) { l.taken = append(l.taken, b) }

// TakeMark keeps words off the mark of a state, and the words of other states
// farther from it than from their own.
func (l *Lettering) TakeMark(at vg.Point) {
	l.Take(Box{Center: at, Width: vg.Points(3 * Dot), Height: vg.Points(3 * Dot)})
	l.marks = append(l.marks, at)
}

// strays reports whether a word at at would be read as that of another mark.
func (l *Lettering) strays(b Box, at vg.Point) bool {
	own := b.from(at)
	for _, m := range l.marks {
		if m != at && b.from(m) < 1.2*own {
			return true
		}
	}
	return false
}

// Free reports whether nothing has taken any of the box.
func (l *Lettering) Free(b Box) bool { return l.meetings(b) == 0 }

func (l *Lettering) meetings(b Box) (n int) {
	for _, t := range l.taken {
		if b.Meets(t) {
			n++
		}
	}
	return n
}

// Write puts a word on a ground that hides the lines behind it, where there is one.
func (l *Lettering) Write(s text.Style, word string, b Box, ground color.Color) {
	if ground != nil {
		l.Canvas.FillPolygon(ground, b.Corners())
	}
	s.Rotation = b.Angle
	s.XAlign, s.YAlign = text.XCenter, text.YCenter
	// The handler centers the line with its descender; capitals and figures look
	// centered a little lower.
	sin, cos := math.Sincos(b.Angle)
	drop := -0.06 * s.Font.Size
	at := vg.Point{X: b.Center.X - drop*vg.Length(sin), Y: b.Center.Y + drop*vg.Length(cos)}
	l.Canvas.FillText(s, at, word)
	l.Take(b)
}

// WriteAlong writes a word on a line, at the first of the shares of its length where
// there is room, and reports whether there was.
func (l *Lettering) WriteAlong(
	s text.Style, word string, line []vg.Point, bounds vg.Rectangle, ground color.Color,
	shares ...float64,
) bool {
	total := vg.Length(0)
	for i := 1; i < len(line); i++ {
		total += Distance(line[i-1], line[i])
	}
	for _, share := range shares {
		at, angle, ok := walk(line, total*vg.Length(share))
		if !ok {
			continue
		}
		b := BoxOf(s, word, at, upright(angle))
		if b.within(bounds) && l.Free(b) {
			l.Write(s, word, b, ground)
			return true
		}
	}
	return false
}

// A Placed is a word of a mark and where it goes.
type Placed struct {
	Style  text.Style
	Word   string
	Box    Box
	Ground color.Color
}

// Place finds the spot around a point with the least in its way, and takes it.
// ground tells the color behind a box, and whether a line crosses it that a word
// should not cover. A word that is not needed stays away where nothing is free
// close by.
func (l *Lettering) Place(
	style text.Style, word string, at vg.Point, away float64, needed bool, bounds vg.Rectangle,
	ground func(Box) (color.Color, bool),
) (best Placed, ok bool) {
	if word == "" {
		return Placed{}, false
	}
	best = Placed{Style: style, Word: word}
	least := math.Inf(1)
	for ring := range 4 {
		for i := range 16 {
			sin, cos := math.Sincos(math.Pi * (0.25 + float64(i)/8))
			b := BoxOf(style, word, at, 0)
			reach := vg.Points(away + 9*float64(ring))
			b.Center.X += vg.Length(cos) * (reach + b.Width/2)
			b.Center.Y += vg.Length(sin) * (reach + b.Height/2)
			cost := 3*float64(ring) + 0.1*float64(i) + 10*float64(l.meetings(b))
			if !b.within(bounds) {
				cost += 100
			}
			g, across := ground(b)
			if across {
				cost += 6
			}
			if l.strays(b, at) {
				cost += 8
			}
			if cost < least {
				best.Box, best.Ground, least = b, g, cost
			}
		}
	}
	if !needed && least > 6 {
		return Placed{}, false
	}
	l.Take(best.Box)
	return best, true
}

// WritePlaced writes words over everything else.
func (l *Lettering) WritePlaced(words []Placed) {
	for _, m := range words {
		l.Canvas.FillPolygon(m.Ground, m.Box.Corners())
	}
	for _, m := range words {
		m.Style.XAlign, m.Style.YAlign = text.XCenter, text.YCenter
		l.Canvas.FillText(m.Style, m.Box.Center.Add(vg.Point{Y: -0.06 * m.Style.Font.Size}), m.Word)
	}
}

// walk is the point at a distance along a line, and its direction there.
func walk(line []vg.Point, far vg.Length) (at vg.Point, angle float64, ok bool) {
	for i := 1; i < len(line); i++ {
		step := Distance(line[i-1], line[i])
		if far <= step && step > 0 {
			d := line[i].Sub(line[i-1])
			return line[i-1].Add(d.Scale(far / step)), math.Atan2(float64(d.Y), float64(d.X)), true
		}
		far -= step
	}
	return vg.Point{}, 0, false
}

// upright turns a direction so that words along it are not upside down.
func upright(angle float64) float64 {
	if angle > math.Pi/2 {
		return angle - math.Pi
	}
	if angle < -math.Pi/2 {
		return angle + math.Pi
	}
	return angle
}

// Distance is that of two points.
func Distance(a, b vg.Point) vg.Length {
	return vg.Length(math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)))
}
