package chart

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// A box is a rectangle at an angle, taken by a word or a mark.
type box struct {
	center        vg.Point
	width, height vg.Length
	angle         float64
}

func (b box) corners() []vg.Point {
	sin, cos := math.Sincos(b.angle)
	var out []vg.Point
	for _, s := range [][2]vg.Length{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		dx, dy := s[0]*b.width/2, s[1]*b.height/2
		out = append(out, vg.Point{
			X: b.center.X + dx*vg.Length(cos) - dy*vg.Length(sin),
			Y: b.center.Y + dx*vg.Length(sin) + dy*vg.Length(cos),
		})
	}
	return out
}

// meets reports whether two boxes overlap, by the axes that may part them.
func (b box) meets(o box) bool {
	p, q := b.corners(), o.corners()
	for _, angle := range []float64{b.angle, b.angle + math.Pi/2, o.angle, o.angle + math.Pi/2} {
		sin, cos := math.Sincos(angle)
		span := func(pts []vg.Point) (low, high vg.Length) {
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

func (b box) within(r vg.Rectangle) bool {
	for _, c := range b.corners() {
		if c.X < r.Min.X || c.X > r.Max.X || c.Y < r.Min.Y || c.Y > r.Max.Y {
			return false
		}
	}
	return true
}

// A lettering writes words where there is room for them.
type lettering struct {
	canvas draw.Canvas
	taken  []box
}

func (l *lettering) take(b box) { l.taken = append(l.taken, b) }

func (l *lettering) free(b box) bool {
	for _, t := range l.taken {
		if b.meets(t) {
			return false
		}
	}
	return true
}

func boxOf(s text.Style, word string, center vg.Point, angle float64) box {
	return box{center: center, width: s.Width(word) + 2.5, height: s.Font.Size * 1.05, angle: angle}
}

// write puts a word on a ground that hides the lines behind it, where there is one.
func (l *lettering) write(s text.Style, word string, b box, ground color.Color) {
	if ground != nil {
		l.canvas.FillPolygon(ground, b.corners())
	}
	s.Rotation = b.angle
	s.XAlign, s.YAlign = text.XCenter, text.YCenter
	// The handler centers the line with its descender; capitals and figures look
	// centered a little lower.
	sin, cos := math.Sincos(b.angle)
	drop := -0.06 * s.Font.Size
	at := vg.Point{X: b.center.X - drop*vg.Length(sin), Y: b.center.Y + drop*vg.Length(cos)}
	l.canvas.FillText(s, at, word)
	l.take(b)
}

// along writes a word on a line, at the first of the shares of its length where
// there is room, and reports whether there was.
func (l *lettering) along(s text.Style, word string, line []vg.Point, bounds vg.Rectangle, shares ...float64) bool {
	total := vg.Length(0)
	for i := 1; i < len(line); i++ {
		total += distance(line[i-1], line[i])
	}
	for _, share := range shares {
		at, angle, ok := walk(line, total*vg.Length(share))
		if !ok {
			continue
		}
		b := boxOf(s, word, at, upright(angle))
		if b.within(bounds) && l.free(b) {
			l.write(s, word, b, field)
			return true
		}
	}
	return false
}

// walk is the point at a distance along a line, and its direction there.
func walk(line []vg.Point, far vg.Length) (at vg.Point, angle float64, ok bool) {
	for i := 1; i < len(line); i++ {
		step := distance(line[i-1], line[i])
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

func distance(a, b vg.Point) vg.Length {
	return vg.Length(math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)))
}
