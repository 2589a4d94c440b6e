package picture

import (
	"image/color"
	"math"
	"slices"
	"testing"

	"github.com/satline/satline/quantity"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
	"pgregory.net/rapid"
)

// Two boxes meet where a point of one is in the other, whichever is asked, and not
// where a line parts them.
func TestMeets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, low, high float64) vg.Length {
			return vg.Length(rapid.Float64Range(low, high).Draw(t, name))
		}
		a := Box{
			Width:  length("width", 1, 40),
			Height: length("height", 1, 40),
			Angle:  rapid.Float64Range(-3, 3).Draw(t, "angle"),
		}
		b := Box{
			Center: vg.Point{X: length("x", -60, 60), Y: length("y", -60, 60)},
			Width:  length("width", 1, 40),
			Height: length("height", 1, 40),
			Angle:  rapid.Float64Range(-3, 3).Draw(t, "angle"),
		}
		if a.Meets(b) != b.Meets(a) {
			t.Fatal("one meets the other and not the other way round")
		}
		if inside := a; !a.Meets(inside) {
			t.Fatal("a box does not meet itself")
		}
		touching := b
		touching.Center = a.Corners()[0]
		if !a.Meets(touching) {
			t.Fatal("a box on the corner of another does not meet it")
		}
		if apart := Distance(a.Center, b.Center); apart > (a.Width+a.Height+b.Width+b.Height)/2 &&
			a.Meets(b) {
			t.Fatalf("boxes %v apart meet", apart)
		}
	})
}

func newLettering() *Lettering {
	return &Lettering{Canvas: draw.New(vgsvg.New(200, 200))}
}

// Words are placed where nothing is, and one that is not needed stays away.
func TestPlace(t *testing.T) {
	bounds := vg.Rectangle{Max: vg.Point{X: 200, Y: 200}}
	plain := func(Box) (color.Color, bool) { return Field, false }
	l := newLettering()
	at := vg.Point{X: 100, Y: 100}
	var placed []Placed
	for range 6 {
		p, ok := l.Place(Writing(Normal, Ink, false), "word", at, 4, true, bounds, plain)
		if !ok || !p.Box.within(bounds) {
			t.Fatalf("%v %+v", ok, p.Box)
		}
		for _, q := range placed {
			if p.Box.Meets(q.Box) {
				t.Errorf("%+v on %+v", p.Box, q.Box)
			}
		}
		placed = append(placed, p)
	}
	full := newLettering()
	full.Take(Box{Center: at, Width: 400, Height: 400})
	if _, ok := full.Place(Writing(Normal, Ink, false), "word", at, 4, false, bounds, plain); ok {
		t.Error("a word that is not needed stands on others")
	}
	if _, ok := full.Place(Writing(Normal, Ink, false), "", at, 4, true, bounds, plain); ok {
		t.Error("an empty word is placed")
	}
}

func TestWriteAlong(t *testing.T) {
	l := newLettering()
	line := []vg.Point{{X: 10, Y: 100}, {X: 190, Y: 100}}
	bounds := vg.Rectangle{Max: vg.Point{X: 200, Y: 200}}
	style := Writing(Small, Ink, true)
	if !l.WriteAlong(style, "one", line, bounds, Field, 0.5) ||
		l.WriteAlong(style, "two", line, bounds, Field, 0.5) ||
		!l.WriteAlong(style, "two", line, bounds, Field, 0.5, 0.2) {
		t.Error("a word wants the free place, and no other")
	}
}

func TestWords(t *testing.T) {
	for in, want := range map[string]string{" a\n b\x00\xff": "a b", "R-22 °F": "R-22 °F"} {
		if got := OneLine(in); got != want {
			t.Errorf("%q: %q", in, got)
		}
	}
	for v, want := range map[float64][2]string{
		-0.04: {"0.0", "0,0"}, -12.34: {"−12.3", "−12,3"}, 7: {"7.0", "7,0"},
	} {
		point := Number(Book("es-MX", quantity.SI), v, 1)
		if comma := Number(Book("es", quantity.SI), v, 1); point != want[0] || comma != want[1] {
			t.Errorf("%v: %q, %q", v, point, comma)
		}
	}
	style := Writing(Normal, Ink, false)
	if got := fit(style, "a long word", style.Width("a long")); got == "a long word" ||
		style.Width(got) > style.Width("a long") {
		t.Errorf("%q", got)
	}
	var steps []float64
	Each(-0.2, 0.3, 0.1, func(v float64) { steps = append(steps, v) })
	if len(steps) != 6 || !slices.IsSorted(steps) || !Multiple(0.3, 0.1) || Multiple(0.25, 0.1) {
		t.Errorf("%v", steps)
	}
}

// A word stands nearer to its own mark than to any other where there is room.
func TestPlaceTellsMarksApart(t *testing.T) {
	bounds := vg.Rectangle{Max: vg.Point{X: 300, Y: 300}}
	plain := func(Box) (color.Color, bool) { return Field, false }
	rapid.Check(t, func(t *rapid.T) {
		l := newLettering()
		a := vg.Point{X: 150, Y: 150}
		sin, cos := math.Sincos(rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "direction"))
		away := rapid.Float64Range(3*Dot, 60).Draw(t, "away")
		b := a.Add(vg.Point{X: vg.Length(away * cos), Y: vg.Length(away * sin)})
		l.TakeMark(a)
		l.TakeMark(b)
		for own, other := range map[vg.Point]vg.Point{a: b, b: a} {
			p, _ := l.Place(Writing(Normal, Ink, true), "return", own, Dot+2, true, bounds, plain)
			if p.Box.from(own) >= p.Box.from(other) {
				t.Errorf(
					"the word of %v is %v from it and %v from %v", own, p.Box.from(own),
					p.Box.from(other), other,
				)
			}
		}
	})
}
