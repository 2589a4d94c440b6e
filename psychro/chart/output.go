package chart

import (
	"fmt"
	"io"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/quantity/fact"
	"gonum.org/v1/plot/vg/draw"
)

// SVG writes the chart as a drawing of the page's size. It names the fonts it was
// laid out with and others of the same width after them, and carries a title and a
// description for who listens to it. A page with a side below 200 or above 4000
// points is a *quantity.RangeError; any other error is the writer's.
func (c *Chart) SVG(w io.Writer, page Page) error {
	if err := c.made(); err != nil {
		return err
	}
	return picture.SVG(
		w, picture.Page(page), c.options.Title, c.Describe(),
		func(canvas draw.Canvas) { c.draw(canvas, picture.Page(page)) },
	)
}

// PNG writes the chart as an image of dpi pixels per inch: 96 gives a Phone page
// 390 pixels wide, 192 the 780 that a sharp screen shows as wide. A dpi outside 48 to
// 600, an image of more than 64 million pixels and a page as for SVG are a
// *quantity.RangeError; any other error is the writer's.
func (c *Chart) PNG(w io.Writer, page Page, dpi int) error {
	if err := c.made(); err != nil {
		return err
	}
	return picture.PNG(
		w, picture.Page(page), dpi, func(canvas draw.Canvas) { c.draw(canvas, picture.Page(page)) },
	)
}

// Describe tells in words what is marked on the chart.
func (c *Chart) Describe() string {
	if c.made() != nil {
		return ""
	}
	s := c.book.Say(fact.New("chart.place", fact.Amount("pressure", c.options.Pressure))) + "."
	for _, st := range c.states {
		a := st.air
		s += " " + st.label + ": " + c.book.Say(fact.New(
			"chart.state", fact.Amount("dryBulb", a.DryBulb()),
			fact.Amount("wetBulb", a.WetBulb()),
			fact.Of("humidity", fmt.Sprintf("%.0f %%", 100*a.RelativeHumidity())),
		))
	}
	return s
}
