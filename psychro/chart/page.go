package chart

import "github.com/satline/satline/internal/page/picture"

// A Page is the size of a picture in points, 1/72 inch, and how much of the chart
// goes on it. Text is the same size on every page, so a picture is drawn for the
// page it is shown on, not shrunk to it.
type Page struct {
	Width, Height float64
	// Sparse draws every other line and leaves the enthalpy scale out.
	Sparse bool
}

// Phone returns a page 390 CSS pixels wide, the width of a phone held upright.
func Phone() Page { return Page(picture.Phone()) }

// Letter returns a page of US letter paper in landscape.
func Letter() Page { return Page(picture.Letter()) }
