package main

import (
	"bytes"
	"html/template"
	"io"

	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

// A drawing is a chart drawn into the page.
type drawing struct {
	Name    string
	Caption string
	SVG     template.HTML
}

// The sizes of a chart that a student reads and of one that shows a solution,
// in points.
const (
	readWidth, readHeight = 720, 500
	showWidth, showHeight = 460, 340
)

// airChart draws the part of the psychrometric chart that comfort cooling needs,
// with the solution of p on it where show is set.
func (s Set) airChart(p Problem, show bool) (template.HTML, error) {
	o := chart.Options{
		Language:         s.Options.Language.ofCharts(),
		System:           s.Options.Units,
		Elevation:        p.Elevation,
		MinDryBulb:       quantity.Fahrenheit(40),
		MaxDryBulb:       quantity.Fahrenheit(100),
		MaxHumidityRatio: 0.022,
	}
	if s.Options.Units == quantity.SI {
		o.MinDryBulb, o.MaxDryBulb = quantity.Celsius(5), quantity.Celsius(40)
	}
	c, err := chart.New(o)
	if err != nil {
		return "", err
	}
	page := chart.Page{Width: readWidth, Height: readHeight}
	if show {
		page = chart.Page{Width: showWidth, Height: showHeight, Sparse: true}
		if err := p.plot(c); err != nil {
			return "", err
		}
	}
	return inline(func(w io.Writer) error { return c.SVG(w, page) })
}

// cycleDiagram draws the pressure-enthalpy diagram of the refrigerant of p from
// below where comfort cooling boils it up, with the machine on it where show is
// set.
func (s Set) cycleDiagram(p Problem, show bool) (template.HTML, error) {
	low, err := p.Cycle.DewPressure(quantity.Fahrenheit(10))
	if err != nil {
		return "", err
	}
	d, err := diagram.New(
		p.Cycle,
		diagram.Options{
			Language:    s.Options.Language.ofCharts(),
			System:      s.Options.Units,
			Qualities:   true,
			MinPressure: low,
			MaxPressure: p.Cycle.Critical().Pressure * 1.1,
		},
	)
	if err != nil {
		return "", err
	}
	page := diagram.Page{Width: readWidth, Height: readHeight}
	if show {
		page = diagram.Page{Width: showWidth, Height: showHeight, Sparse: true}
		if err := d.AddCycle(p.marks...); err != nil {
			return "", err
		}
	}
	return inline(func(w io.Writer) error { return d.SVG(w, page) })
}

// chartKey tells which problems share a chart: those of one elevation, or of one
// refrigerant.
type chartKey struct {
	elevation quantity.Length
	fluid     *refrigerant.Refrigerant
}

func (p Problem) chartKey() chartKey {
	if p.Cycle != nil {
		return chartKey{fluid: p.Cycle}
	}
	return chartKey{elevation: p.Elevation}
}

// charted reports whether p needs a chart.
func (p Problem) charted() bool { return p.Air || p.Cycle != nil }

// charts are those that the problems need, each once, and the name of each.
func (s Set) charts() ([]drawing, map[chartKey]string, error) {
	var out []drawing
	names := map[chartKey]string{}
	for _, p := range s.Problems {
		key := p.chartKey()
		if !p.charted() || names[key] != "" {
			continue
		}
		svg, err := s.draw(p, false)
		if err != nil {
			return nil, nil, err
		}
		d := drawing{
			Name:    s.say("chart", "letter", letters(len(out))),
			Caption: s.say("chart-air"),
			SVG:     svg,
		}
		switch {
		case p.Cycle != nil:
			d.Caption = p.Cycle.Designation()
		case p.Elevation != 0:
			d.Caption = s.say("chart-air-high", "elevation", s.elevation(p.Elevation))
		}
		names[key] = d.Name
		out = append(out, d)
	}
	return out, names, nil
}

// draw draws the chart that p needs, with its solution where show is set.
func (s Set) draw(p Problem, show bool) (template.HTML, error) {
	if p.Cycle != nil {
		return s.cycleDiagram(p, show)
	}
	return s.airChart(p, show)
}

// letters counts A to Z, AA, AB and on.
func letters(n int) string {
	if n >= 26 {
		return letters(n/26-1) + letters(n%26)
	}
	return string(rune('A' + n))
}

// inline makes a drawing an element of a page, without the head of a file.
func inline(draw func(io.Writer) error) (template.HTML, error) {
	var b bytes.Buffer
	if err := draw(&b); err != nil {
		return "", err
	}
	svg := b.Bytes()
	if start := bytes.Index(svg, []byte("<svg")); start > 0 {
		svg = svg[start:]
	}
	return template.HTML(svg), nil
}

func (s Set) elevation(z quantity.Length) string {
	if u := unitsOf(s.Options).length; s.Options.Units == quantity.IP {
		return u.print(z.Feet())
	} else {
		return u.print(z.Meters())
	}
}
