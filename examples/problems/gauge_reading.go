package main

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A gaugeReading is what a gauge shows at a saturation temperature, and what a
// student makes of it in the printed table, rightly and wrongly.
type gaugeReading struct {
	site  gaugeSite
	shown float64 // by the gauge
	table Table
	how   string // the right column leads to the temperature
	// other is the temperature in the wrong column, where the table reaches so far.
	other   float64
	between bool

	asAbsolute, wrongAtmosphere misread
}

// gaugeReading hangs a gauge at a site where what the column says saturates at a
// temperature.
func (g *generator) gaugeReading(
	f *refrigerant.Refrigerant,
	column int,
	at quantity.Temperature,
) (r gaugeReading, err error) {
	pressure, right, wrong, otherColumn := f.BubblePressure, f.BubbleTemperature, f.DewTemperature, dewColumn
	if column == dewColumn {
		pressure, right, wrong, otherColumn = f.DewPressure, f.DewTemperature, f.BubbleTemperature, bubbleColumn
	}
	p, err := pressure(at)
	if err != nil {
		return r, err
	}
	r.site = g.gaugeSite()
	listed := g.listed(r.site, p)
	r.shown = r.site.shown(listed)
	misread, err := wrong(p)
	if err != nil {
		return r, err
	}
	if r.table, err = g.saturationTable(f, r.site, at, misread); err != nil {
		return r, err
	}
	if r.asAbsolute, r.wrongAtmosphere, err = g.misreads(r.site, r.shown, right); err != nil {
		return r, err
	}
	_, r.how, _ = g.read(r.table, r.site, column, listed)
	r.other, _, r.between = g.read(r.table, r.site, otherColumn, listed)
	return r, nil
}
