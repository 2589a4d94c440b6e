package main

import (
	"bytes"

	"github.com/satline/satline"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// pictures draws what the readings give to draw: a visit without a wet bulb has
// no psychrometric chart.
func pictures(v satline.Visit, a satline.Assessment) []satline.Picture {
	var out []satline.Picture
	if p, ok := airPicture(v, a); ok {
		out = append(out, p)
	}
	return out
}

// airPicture marks the return and the supply air, and the coil between them.
func airPicture(v satline.Visit, a satline.Assessment) (satline.Picture, bool) {
	r := &v.Readings
	pressure := a.Atmosphere.Pressure.Value
	c, err := chart.New(chart.Options{Title: "Air through the indoor coil", System: v.Units, Pressure: pressure})
	if err != nil {
		return satline.Picture{}, false
	}
	entering, ok := airOf(r.ReturnDryBulb, r.ReturnWetBulb, pressure)
	if !ok || c.AddState("return", entering) != nil {
		return satline.Picture{}, false
	}
	if leaving, ok := airOf(r.SupplyDryBulb, r.SupplyWetBulb, pressure); ok && c.AddState("supply", leaving) == nil {
		// Where the line through both meets no saturation, the states alone are
		// drawn.
		_ = c.AddCoil("", entering, leaving)
	}
	var svg bytes.Buffer
	if c.SVG(&svg, chart.Phone()) != nil {
		return satline.Picture{}, false
	}
	return satline.Picture{Caption: c.Describe(), SVG: svg.Bytes()}, true
}

func airOf(dry, wet *quantity.Uncertain[quantity.Temperature], p quantity.Pressure) (psychro.Air, bool) {
	if dry == nil || wet == nil {
		return psychro.Air{}, false
	}
	air, err := psychro.FromWetBulb(dry.Value, wet.Value, p)
	return air, err == nil
}
