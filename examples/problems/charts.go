package main

import (
	"bytes"
	"html/template"

	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// A drawing is a chart drawn into the page.
type drawing struct {
	Name    string
	Caption string
	SVG     template.HTML
}

// The sizes of a chart that a student reads and of one that shows a solution,
// in points.
var (
	toRead = chart.Page{Width: 720, Height: 500}
	toShow = chart.Page{Width: 440, Height: 320, Sparse: true}
)

// airChart is the part of the psychrometric chart that comfort cooling needs.
func (s Set) airChart(z quantity.Length) (*chart.Chart, error) {
	o := chart.Options{System: s.Options.Units, Elevation: z, MinDryBulb: quantity.Fahrenheit(40), MaxDryBulb: quantity.Fahrenheit(100), MaxHumidityRatio: 0.022}
	if s.Options.Units == quantity.SI {
		o.MinDryBulb, o.MaxDryBulb = quantity.Celsius(5), quantity.Celsius(40)
	}
	return chart.New(o)
}

// airCharts are the charts that the problems need, one for each elevation, and
// the name of each.
func (s Set) airCharts() ([]drawing, map[quantity.Length]string, error) {
	var out []drawing
	names := map[quantity.Length]string{}
	for _, p := range s.Problems {
		if !p.Air || names[p.Elevation] != "" {
			continue
		}
		names[p.Elevation] = "Chart " + string(rune('A'+len(out)))
		c, err := s.airChart(p.Elevation)
		if err != nil {
			return nil, nil, err
		}
		svg, err := inline(c, toRead)
		if err != nil {
			return nil, nil, err
		}
		where := "at sea level"
		if p.Elevation != 0 {
			where = "at " + elevationText(p.Elevation, s.Options.Units)
		}
		out = append(out, drawing{Name: names[p.Elevation], Caption: "Moist air " + where, SVG: svg})
	}
	return out, names, nil
}

// solution is the chart of a problem with its solution marked.
func (s Set) solution(p Problem) (template.HTML, error) {
	if !p.Air {
		return "", nil
	}
	c, err := s.airChart(p.Elevation)
	if err != nil {
		return "", err
	}
	if err := p.plot(c); err != nil {
		return "", err
	}
	return inline(c, toShow)
}

// inline draws a chart as an element of a page, without the head of a file.
func inline(c *chart.Chart, page chart.Page) (template.HTML, error) {
	var b bytes.Buffer
	if err := c.SVG(&b, page); err != nil {
		return "", err
	}
	svg := b.Bytes()
	if start := bytes.Index(svg, []byte("<svg")); start > 0 {
		svg = svg[start:]
	}
	return template.HTML(svg), nil
}
