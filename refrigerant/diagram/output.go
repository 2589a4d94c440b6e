package diagram

import (
	"fmt"
	"io"
	"strings"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"gonum.org/v1/plot/vg/draw"
)

// SVG writes the diagram as a drawing of the page's size, with a title and a
// description for who listens to it. A page with a side below 200 or above 4000
// points is a *quantity.RangeError; any other error is the writer's.
func (d *Diagram) SVG(w io.Writer, page Page) error {
	if err := d.made(); err != nil {
		return err
	}
	return picture.SVG(
		w, picture.Page(page), d.options.Title, d.Describe(),
		func(c draw.Canvas) { d.draw(c, picture.Page(page)) },
	)
}

// PNG writes the diagram as an image of dpi pixels per inch: 96 gives a Phone page
// 390 pixels wide, 192 the 780 that a sharp screen shows as wide. A dpi outside 48 to
// 600, an image of more than 64 million pixels and a page as for SVG are a
// *quantity.RangeError; any other error is the writer's.
func (d *Diagram) PNG(w io.Writer, page Page, dpi int) error {
	if err := d.made(); err != nil {
		return err
	}
	return picture.PNG(
		w, picture.Page(page), dpi, func(c draw.Canvas) { d.draw(c, picture.Page(page)) },
	)
}

// Describe tells in words what is marked on the diagram.
func (d *Diagram) Describe() string {
	if d.made() != nil {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %s.", d.fluid.Designation(), d.pressures())
	if estimated, _ := d.fluid.Estimated(); estimated {
		b.WriteString(" " + d.book.Term("report.estimated"))
	}
	for _, m := range d.states {
		st := m.State
		fmt.Fprintf(
			&b, " %s: %s, %s, %s, %s.", m.Label, d.pressure(st.Pressure),
			d.book.Show(st.Temperature), d.book.Say(d.condition(st)), d.book.Show(st.Enthalpy),
		)
	}
	return b.String()
}

// pressures says what the pressures count from.
func (d *Diagram) pressures() string {
	if o := d.options; o.Atmosphere != 0 {
		return d.book.Say(fact.New("diagram.gauge", fact.Amount("atmosphere", o.Atmosphere)))
	}
	return d.book.Term("diagram.absolute")
}

func (d *Diagram) pressure(p quantity.Pressure) string {
	if o := d.options; o.Atmosphere != 0 {
		return d.book.Show(p.Gauge(o.Atmosphere))
	}
	return d.book.Show(p)
}
