package chart_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/internal/page/picture/picturetest"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// coil is a chart of an invented house at 6,000 feet.
func coil(t testing.TB, sys quantity.System) (c *chart.Chart, entering, leaving psychro.Air) {
	t.Helper()
	c, err := chart.New(chart.Options{System: sys, Elevation: quantity.Feet(6000)})
	if err != nil {
		t.Fatal(err)
	}
	if entering, err = psychro.FromWetBulb(quantity.Fahrenheit(78), quantity.Fahrenheit(63),
		c.Pressure()); err != nil {
		t.Fatal(err)
	}
	if leaving, err = psychro.FromWetBulb(quantity.Fahrenheit(57), quantity.Fahrenheit(53.5),
		c.Pressure()); err != nil {
		t.Fatal(err)
	}
	for _, err := range []error{c.AddState("return", entering), c.AddState("supply <&>", leaving),
		c.AddCoil("coil", entering, leaving)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	return c, entering, leaving
}

func TestSVG(t *testing.T) {
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		c, _, _ := coil(t, sys)
		for _, page := range []chart.Page{chart.Phone(), chart.Letter()} {
			var b, again bytes.Buffer
			if err := c.SVG(&b, page); err != nil {
				t.Fatal(err)
			}
			if err := c.SVG(&again, page); err != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
				t.Errorf("the same chart twice differs, %v", err)
			}
			words, viewBox := picturetest.Texts(t, b.Bytes())
			want := []string{"Psychrometric chart", "return", "supply <&>", "coil"}
			if page.Sparse {
				want = append(want, "ADP")
			} else {
				want = append(want, "apparatus dew point")
			}
			if sys == quantity.IP {
				want = append(
					want, "Moist air at 11.8 psia, 6,000 ft above sea level", "Dry bulb, °F",
					"Humidity ratio, gr/lb dry air", "78.0", "63.0", "60",
				)
			} else {
				want = append(want, "Moist air at 81.2 kPa, 1,829 m above sea level",
					"Dry bulb, °C", "Humidity ratio, g/kg dry air", "25.6", "17.2", "15")
			}
			for _, w := range want {
				if !slices.Contains(words, w) {
					t.Errorf("%v %v: no %q among %q", sys, page, w, words)
				}
			}
			if slices.Contains(words, "−0") {
				t.Error("a negative zero on a scale")
			}
			if page == chart.Phone() && viewBox != "0 0 292.5 420" {
				t.Errorf("view box %q", viewBox)
			}
		}
	}
}

func TestLanguage(t *testing.T) {
	picturetest.Translated(t, func(tag string) []byte {
		c, err := chart.New(chart.Options{Language: tag, Elevation: quantity.Feet(6000)})
		if err != nil {
			t.Fatal(err)
		}
		_, entering, leaving := coil(t, quantity.IP)
		if err := errors.Join(
			c.AddState("1", entering), c.AddState("2", leaving), c.AddCoil("", entering, leaving),
		); err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := c.SVG(&b, chart.Letter()); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	})
}

// A state is where its dry bulb and humidity ratio put it, on a chart whose scales
// are fixed so that the place is known.
func TestPNG(t *testing.T) {
	a, err := psychro.FromRelativeHumidity(quantity.Celsius(30), 0.4, quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	c, err := chart.New(
		chart.Options{
			System:           quantity.SI,
			MinDryBulb:       quantity.Celsius(0),
			MaxDryBulb:       quantity.Celsius(50),
			MaxHumidityRatio: 0.03,
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	render := func() image.Image {
		var b bytes.Buffer
		if err := c.PNG(&b, chart.Letter(), 72); err != nil {
			t.Fatal(err)
		}
		m, err := png.Decode(&b)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	// The frame of a letter page: 14 to 754 points across, 34 to 600 up, at one
	// pixel to the point.
	x := 14 + (754-14)*30.0/50
	y := 612 - (34 + (600-34)*a.HumidityRatio()/0.03)
	empty := render()
	if n := picturetest.Marked(empty, x, y, 5); n != 0 {
		t.Errorf("%d pixels marked on a chart without marks", n)
	}
	if err := c.AddState("", a); err != nil {
		t.Fatal(err)
	}
	m := render()
	if b := m.Bounds(); b.Dx() != 792 || b.Dy() != 612 {
		t.Errorf("%v", b)
	}
	if n := picturetest.Marked(m, x, y, 5); n < 15 {
		t.Errorf("%d pixels marked at the state", n)
	}
	if m.At(2, 2) != m.At(790, 610) || m.At(2, 2) == (color.RGBA{}) {
		t.Error("the paper is not one color to the edges")
	}
}

// Lines move with the pressure: thinner air holds more water per kilogram.
func TestPressureMovesTheCurve(t *testing.T) {
	var pictures [2]bytes.Buffer
	for i, p := range []quantity.Pressure{quantity.StandardAtmosphere, quantity.Kilopascals(80)} {
		c, err := chart.New(chart.Options{Pressure: p, Title: "one"})
		if err != nil {
			t.Fatal(err)
		}
		if err := c.SVG(&pictures[i], chart.Phone()); err != nil {
			t.Fatal(err)
		}
	}
	if bytes.Equal(pictures[0].Bytes(), pictures[1].Bytes()) {
		t.Error("the chart of 80 kPa is that of sea level")
	}
}

func TestRefusals(t *testing.T) {
	c, entering, _ := coil(t, quantity.IP)
	sea, err := psychro.Saturated(quantity.Celsius(20), quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	_, tooHot := chart.New(
		chart.Options{MinDryBulb: quantity.Celsius(0), MaxDryBulb: quantity.Celsius(300)},
	)
	_, tooNarrow := chart.New(
		chart.Options{MinDryBulb: quantity.Celsius(20), MaxDryBulb: quantity.Celsius(21)},
	)
	_, vacuum := chart.New(chart.Options{Pressure: 100})
	_, tooWet := chart.New(chart.Options{MaxHumidityRatio: 30})
	_, nowhere := chart.New(chart.Options{Elevation: quantity.Length(math.NaN())})
	for name, err := range map[string]error{
		"air of another pressure": c.AddState("x", sea),
		"zero air":                c.AddPath("x", psychro.Air{}, entering),
		"a dry coil":              c.AddCoil("x", entering, entering),
		"a tiny page":             c.SVG(io.Discard, chart.Page{Width: 10, Height: 10}),
		"a page without size":     c.PNG(io.Discard, chart.Page{}, 96),
		"no resolution":           c.PNG(io.Discard, chart.Phone(), 0),
		"a huge image":            c.PNG(io.Discard, chart.Page{Width: 4000, Height: 4000}, 600),
		"a chart to 300 °C":       tooHot,
		"a chart of 1 K":          tooNarrow,
		"a chart of a vacuum":     vacuum,
		"a chart of soup":         tooWet,
		"a chart of nowhere":      nowhere,
	} {
		var re *quantity.RangeError
		if !errors.As(err, &re) || re.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := c.AddPath("x", entering); err == nil {
		t.Error("a path of one state")
	}
}

// Any chart that New accepts is drawn, whatever is on it.
func TestDrawsAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := chart.Options{
			System: rapid.SampledFrom([]quantity.System{quantity.IP, quantity.SI}).
				Draw(t, "system"),
			Pressure: quantity.Kilopascals(rapid.Float64Range(20, 200).Draw(t, "kPa")),
			Title:    rapid.String().Draw(t, "title"),
		}
		if rapid.Bool().Draw(t, "range") {
			low := rapid.Float64Range(-100, 190).Draw(t, "low")
			o.MinDryBulb, o.MaxDryBulb = quantity.Celsius(low),
				quantity.Celsius(low+rapid.Float64Range(5, 100).Draw(t, "span"))
		}
		if rapid.Bool().Draw(t, "limit") {
			o.MaxHumidityRatio = rapid.Float64Range(0.001, 0.6).Draw(t, "w")
		}
		c, err := chart.New(o)
		if err != nil {
			return
		}
		for range rapid.IntRange(0, 12).Draw(t, "states") {
			a, err := psychro.FromRelativeHumidity(
				quantity.Celsius(rapid.Float64Range(-90, 190).Draw(t, "°C")),
				rapid.Float64Range(0, 1).Draw(t, "rh"), o.Pressure,
			)
			if err != nil || a.HumidityRatio() > 0.4 {
				continue
			}
			if err := c.AddState(rapid.StringN(0, 30, -1).Draw(t, "label"), a); err != nil {
				t.Fatal(err)
			}
		}
		page := chart.Page{
			Width:  rapid.Float64Range(200, 900).Draw(t, "width"),
			Height: rapid.Float64Range(200, 900).Draw(t, "height"),
			Sparse: rapid.Bool().Draw(t, "sparse"),
		}
		var b bytes.Buffer
		if err := c.SVG(&b, page); err != nil {
			t.Fatal(err)
		}
		if err := xml.Unmarshal(b.Bytes(), new(struct{})); err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if s := b.String(); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
			t.Fatal("a line without end")
		}
	})
}

func BenchmarkSVGLetter(b *testing.B) {
	c, _, _ := coil(b, quantity.IP)
	b.ReportAllocs()
	for b.Loop() {
		if err := c.SVG(io.Discard, chart.Letter()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPNGPhone(b *testing.B) {
	c, _, _ := coil(b, quantity.IP)
	b.ReportAllocs()
	for b.Loop() {
		if err := c.PNG(io.Discard, chart.Phone(), 192); err != nil {
			b.Fatal(err)
		}
	}
}

// What New did not make says so instead of drawing.
func TestNoChart(t *testing.T) {
	a, err := psychro.FromWetBulb(
		quantity.Fahrenheit(80), quantity.Fahrenheit(67), quantity.StandardAtmosphere,
	)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []*chart.Chart{nil, {}} {
		for name, err := range map[string]error{
			"state": c.AddState("x", a), "path": c.AddPath("x", a, a), "coil": c.AddCoil("x", a, a),
			"process": c.AddProcess("x", psychro.Process{Start: a, End: a}),
			"SVG":     c.SVG(io.Discard, chart.Phone()),
			"PNG":     c.PNG(io.Discard, chart.Phone(), 96),
		} {
			var re *quantity.RangeError
			if !errors.As(err, &re) || !strings.Contains(re.Advice, "chart.New") {
				t.Errorf("%s: %v", name, err)
			}
		}
		if c.Describe() != "" || c.Pressure() != 0 {
			t.Errorf("%q", c.Describe())
		}
	}
}
