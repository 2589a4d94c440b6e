package chart

import (
	"bytes"
	"fmt"
	"html"
	"io"

	"github.com/satline/satline/quantity"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// SVG writes the chart as a drawing of the page's size. It names the fonts it was
// laid out with and others of the same width after them, and carries a title and a
// description for who listens to it.
func (c *Chart) SVG(w io.Writer, page Page) error {
	if err := page.check(); err != nil {
		return err
	}
	canvas := vgsvg.NewWith(vgsvg.UseWH(vg.Points(page.Width), vg.Points(page.Height)))
	c.draw(draw.New(canvas), page)
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return fmt.Errorf("chart: %w", err)
	}
	out := bytes.ReplaceAll(b.Bytes(), []byte("font-family:Liberation Sans;"), []byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif;"))
	if head, tail, ok := bytes.Cut(out, []byte("xlink\">\n")); ok {
		words := fmt.Sprintf("xlink\" role=\"img\">\n<title>%s</title>\n<desc>%s</desc>\n", html.EscapeString(c.options.Title), html.EscapeString(c.Describe()))
		out = append(append(head[:len(head):len(head)], words...), tail...)
	}
	if _, err := w.Write(out); err != nil {
		return fmt.Errorf("chart: %w", err)
	}
	return nil
}

// The resolutions of an image that there is sense in.
const (
	minDPI = 48
	maxDPI = 600

	maxPixels = 64e6
)

// PNG writes the chart as an image of dpi pixels per inch: 96 gives a Phone page
// 390 pixels wide, 192 the 780 that a sharp screen shows as wide.
func (c *Chart) PNG(w io.Writer, page Page, dpi int) error {
	if err := page.check(); err != nil {
		return err
	}
	if pixels := page.Width * page.Height / (72 * 72) * float64(dpi) * float64(dpi); pixels > maxPixels {
		return &quantity.RangeError{Quantity: "pixels of the image", Value: quantity.Number(pixels), Max: quantity.Number(maxPixels), Advice: "take a smaller page, a lower resolution, or SVG"}
	}
	if dpi < minDPI || dpi > maxDPI {
		return &quantity.RangeError{Quantity: "resolution in dots per inch", Value: quantity.Number(dpi), Min: quantity.Number(minDPI), Max: quantity.Number(maxDPI), Advice: "96 for a plain screen, 192 for a sharp one, 300 for paper"}
	}
	canvas := vgimg.NewWith(vgimg.UseWH(vg.Points(page.Width), vg.Points(page.Height)), vgimg.UseDPI(dpi))
	c.draw(draw.New(canvas), page)
	if _, err := (vgimg.PngCanvas{Canvas: canvas}).WriteTo(w); err != nil {
		return fmt.Errorf("chart: %w", err)
	}
	return nil
}

// Describe tells in words what is marked on the chart.
func (c *Chart) Describe() string {
	o := c.options
	s := fmt.Sprintf("Moist air at %s.", o.Pressure.Format(o.System))
	for _, st := range c.states {
		a := st.air
		s += fmt.Sprintf(" %s: dry bulb %s, wet bulb %s, relative humidity %.0f %%.", st.label, a.DryBulb().Format(o.System), a.WetBulb().Format(o.System), 100*a.RelativeHumidity())
	}
	return s
}
