package picture

import "github.com/satline/satline/quantity"

// A Page is the size of a picture in points, 1/72 inch. Sparse leaves out what a
// small page has no room for.
type Page struct {
	Width, Height float64
	Sparse        bool
}

// Phone returns a page 390 CSS pixels wide, the width of a phone held upright.
func Phone() Page { return Page{Width: 292.5, Height: 420, Sparse: true} }

// Letter returns a page of US letter paper in landscape.
func Letter() Page { return Page{Width: 792, Height: 612} }

// The sizes of a page that there is sense in, and that a machine can draw.
const (
	minSide = 200
	maxSide = 4000
)

// check returns a *quantity.RangeError for a page that cannot be drawn.
func (p Page) check() error {
	for _, side := range []struct {
		name  string
		value float64
	}{{"width of the page in points", p.Width}, {"height of the page in points", p.Height}} {
		if !(side.value >= minSide && side.value <= maxSide) {
			return &quantity.RangeError{
				Quantity: side.name, Value: quantity.Number(side.value),
				Min: quantity.Number(minSide), Max: quantity.Number(maxSide),
				Advice: "a point is 1/72 inch; Phone and Letter return two pages that suit",
			}
		}
	}
	return nil
}
