package picture

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

// SVG writes what paint draws as a drawing of the page's size. It names the fonts it
// was laid out with and others of the same width after them, and carries a title
// and a description for who listens to it.
func SVG(w io.Writer, page Page, title, description string, paint func(draw.Canvas)) error {
	if err := page.check(); err != nil {
		return err
	}
	canvas := vgsvg.NewWith(vgsvg.UseWH(vg.Points(page.Width), vg.Points(page.Height)))
	paint(draw.New(canvas))
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return fmt.Errorf("picture: %w", err)
	}
	out := bytes.ReplaceAll(
		b.Bytes(), []byte("font-family:Liberation Sans;"),
		[]byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif;"),
	)
	if head, tail, ok := bytes.Cut(out, []byte("xlink\">\n")); ok {
		words := fmt.Sprintf(
			"xlink\" role=\"img\">\n<title>%s</title>\n<desc>%s</desc>\n", html.EscapeString(title),
			html.EscapeString(description),
		)
		out = append(append(head[:len(head):len(head)], words...), tail...)
	}
	if _, err := w.Write(out); err != nil {
		return fmt.Errorf("picture: %w", err)
	}
	return nil
}

// The resolutions of an image that there is sense in.
const (
	minDPI = 48
	maxDPI = 600

	maxPixels = 64e6
)

// PNG writes what paint draws as an image of dpi pixels per inch.
func PNG(w io.Writer, page Page, dpi int, paint func(draw.Canvas)) error {
	if err := page.check(); err != nil {
		return err
	}
	perPoint := float64(dpi) / 72
	if pixels := page.Width * page.Height * perPoint * perPoint; pixels > maxPixels {
		return &quantity.RangeError{
			Quantity: "pixels of the image",
			Value:    quantity.Number(pixels),
			Max:      quantity.Number(maxPixels),
			Advice:   "take a smaller page, a lower resolution, or SVG",
		}
	}
	if dpi < minDPI || dpi > maxDPI {
		return &quantity.RangeError{
			Quantity: "resolution in dots per inch",
			Value:    quantity.Number(dpi),
			Min:      quantity.Number(minDPI),
			Max:      quantity.Number(maxDPI),
			Advice:   "96 for a plain screen, 192 for a sharp one, 300 for paper",
		}
	}
	canvas := vgimg.NewWith(
		vgimg.UseWH(vg.Points(page.Width), vg.Points(page.Height)), vgimg.UseDPI(dpi),
	)
	paint(draw.New(canvas))
	if _, err := (vgimg.PngCanvas{Canvas: canvas}).WriteTo(w); err != nil {
		return fmt.Errorf("picture: %w", err)
	}
	return nil
}
