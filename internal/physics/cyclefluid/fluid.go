package cyclefluid

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Fluid is one refrigerant. It is immutable.
type Fluid struct {
	Designation                           string
	CriticalTemperature, CriticalPressure float64

	table     *refrigerant.StateTable
	low, high float64 // Pa, of the isobars

	coldest, hottest [edges]float64 // K: the edges at low and at high
}

const (
	// needed is the lowest critical temperature of a machine that rejects heat to
	// outdoor air of 52 °C by condensing.
	needed = quantity.Temperature(335)
	// warmest is where the range of a refrigerant may begin at most: a coil short of
	// refrigerant is as cold.
	warmest = quantity.Temperature(250)

	nearest = 0.97 * (1 - 1e-9) // of the critical pressure: last isobar
)

// New returns the Fluid of r. It fails for a refrigerant that does not condense at the
// temperatures of an air-cooled machine.
func New(r *refrigerant.Refrigerant) (*Fluid, error) {
	c := r.Critical()
	if c.Temperature < needed {
		return nil, &quantity.RangeError{
			Quantity: "critical temperature of " + r.Designation(),
			Value:    c.Temperature,
			Min:      quantity.Temperature(needed),
			Advice: "above it nothing condenses in outdoor air; this model is of a " +
				"subcritical machine",
		}
	}
	if least := r.Limits().MinTemperature; least > warmest {
		return nil, &quantity.RangeError{
			Quantity: "coldest temperature of " + r.Designation(),
			Value:    least,
			Max:      warmest,
			Advice: "colder than that its properties are not known, " +
				"and a coil short of refrigerant is colder",
		}
	}
	table, err := r.StateTable()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", r.Designation(), err)
	}
	low, _ := table.Range()
	f := &Fluid{
		Designation:         r.Designation(),
		CriticalTemperature: float64(c.Temperature),
		CriticalPressure:    float64(c.Pressure),
		table:               table,
		low:                 float64(low),
		high:                nearest * float64(c.Pressure),
	}
	for e := range edges {
		f.coldest[e], f.hottest[e] = f.edgeTemperature(e, f.low), f.edgeTemperature(e, f.high)
	}
	return f, nil
}

// LowPressure and HighPressure are the ends of the isobars.
func (f *Fluid) LowPressure() float64 { return f.low }

// HighPressure is the end of the isobars, a little below the critical pressure.
func (f *Fluid) HighPressure() float64 { return f.high }

// DewPressure returns the pressure of the isobar whose dew point is t.
func (f *Fluid) DewPressure(t float64) float64 { return f.pressureAt(t, dew) }

// BubblePressure returns the pressure of the isobar whose bubble point is t.
func (f *Fluid) BubblePressure(t float64) float64 { return f.pressureAt(t, bubble) }

// The edges of the two-phase region.
const (
	bubble = iota
	dew
	edges // how many there are
)

func (f *Fluid) edgeTemperature(e int, p float64) float64 {
	line := f.line(p)
	if e == dew {
		return float64(line.DewTemperature())
	}
	return float64(line.BubbleTemperature())
}

// pressureAt inverts an edge by secants: the logarithm of pressure goes almost in a
// straight line with the reciprocal of its temperature.
func (f *Fluid) pressureAt(t float64, e int) float64 {
	low, high := f.coldest[e], f.hottest[e]
	switch {
	case t <= low:
		return f.low
	case t >= high:
		return f.high
	}
	const enough = 1e-11
	x0, off0 := math.Log(f.low), 1/t-1/low
	x, off := math.Log(f.high), 1/t-1/high
	for range 12 {
		next := x - off*(x-x0)/(off-off0)
		if math.Abs(next-x) < enough {
			break
		}
		x0, off0, x = x, off, next
		off = 1/t - 1/f.edgeTemperature(e, math.Exp(x))
		if off == off0 {
			break
		}
	}
	return math.Exp(x)
}

// line returns the isobar of the table at p, in Pa, or the nearest there is.
func (f *Fluid) line(p float64) refrigerant.Isobar {
	line, err := f.table.Isobar(quantity.Pressure(min(max(p, f.low), f.high)))
	if err != nil {
		line, _ = f.table.Isobar(quantity.Pressure(f.low)) // p is not a number
	}
	return line
}
