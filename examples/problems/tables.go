package main

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

const (
	saturationSource = "saturation table below, from the equation of state"
	targetSource     = "California Energy Commission, Reference Residential Appendix RA3.2, Table RA3.2-2"
	toleranceSource  = "ANSI/ACCA 5 QI"
	moistAirSource   = "ASHRAE Handbook Fundamentals, chapter 1"
	definition       = "definition"
)

// saturationTable is an excerpt of a printed pressure-temperature table, around
// a temperature, for a gauge at sea level.
func (g *generator) saturationTable(f *refrigerant.Refrigerant, around quantity.Temperature) (Table, error) {
	step, reach := 2.0, 5
	if !g.ip() {
		step = 1
	}
	middle := step * float64(int(g.scale(around)/step))
	t := Table{
		Caption: fmt.Sprintf("%s, gauge pressure at sea level (%s)", f.Designation(), g.gaugeUnit()),
		Head:    []string{"temperature " + g.degreeUnit(), "bubble (liquid)", "dew (vapor)"},
	}
	for i := -reach; i <= reach; i++ {
		at := g.fromScale(middle + step*float64(i))
		bubble, err := f.BubblePressure(at)
		if err != nil {
			return Table{}, err
		}
		dew, err := f.DewPressure(at)
		if err != nil {
			return Table{}, err
		}
		t.Rows = append(t.Rows, []string{
			number(g.scale(at)),
			number(g.gauge(bubble, quantity.StandardAtmosphere)),
			number(g.gauge(dew, quantity.StandardAtmosphere)),
		})
	}
	return t, nil
}

// targetTable is an excerpt of the target superheat table around the two
// temperatures, in °F as it is printed.
func targetTable(wetBulb, outdoor float64) Table {
	t := Table{Caption: "Target superheat, °F, fixed restrictor: return wet bulb across, outdoor dry bulb down", Head: []string{"°F"}}
	var bulbs []float64
	for w := max(50, wetBulb-4); w <= min(76, wetBulb+4); w++ {
		bulbs = append(bulbs, w)
		t.Head = append(t.Head, number(w))
	}
	first := 5 * float64(int((outdoor-10)/5))
	for o := max(55, first); o <= min(115, first+25); o += 5 {
		row := []string{number(o)}
		for _, w := range bulbs {
			cell := "–"
			if target, err := charge.TargetSuperheat(quantity.Fahrenheit(w), quantity.Fahrenheit(o)); err == nil {
				cell = decimals(target.FahrenheitDelta(), 0)
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
