package chart

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// Options say what a chart shows. The zero value is a chart for sea level in
// inch-pound units.
type Options struct {
	// Title stands above the chart; empty, it is "Psychrometric chart" in the language of the
	// chart.
	Title string
	// Language is a BCP 47 tag, as "es-MX": the words are in the nearest language there is, and
	// in English where it is not given or no tag; its region decides how numbers are written.
	Language string
	// System is that of all scales and numbers.
	System quantity.System
	// Pressure of the air; 0 is the standard atmosphere of Elevation.
	Pressure quantity.Pressure
	// Elevation above sea level; it is named on the chart where it is not 0.
	Elevation quantity.Length
	// Model computes the lines.
	Model psychro.Model
	// MinDryBulb and MaxDryBulb bound the chart; both 0 leaves them to the chart,
	// 0 to 50 °C or 30 to 120 °F and as far as the states on it go.
	MinDryBulb, MaxDryBulb quantity.Temperature
	// MaxHumidityRatio in kilograms per kilogram bounds it above; 0 leaves it to
	// the chart, 30 g/kg (210 grains/lb) and as far as the states on it go.
	MaxHumidityRatio float64
}

// A Chart is a psychrometric chart with what is marked on it. Get one from New: nil
// and the zero value are for no pressure, take no marks and are not drawn. It may be
// read and drawn by several goroutines at once, but not while marks are added.
type Chart struct {
	options Options
	book    *words.Book
	states  []state
	paths   []path
}

type state struct {
	label string
	air   psychro.Air
	open  bool // a point that no air passes through: an apparatus dew point
}

// A path is a line from one state to the next, with an arrow in it.
type path struct {
	label  string
	points []psychro.Air
	dashed bool
}

// New returns a chart without marks. A pressure or a range in which there is no
// air to draw is a *quantity.RangeError.
func New(o Options) (*Chart, error) {
	book := picture.Book(o.Language, o.System)
	if o.Title = picture.OneLine(o.Title); o.Title == "" {
		o.Title = book.Term("chart.title")
	}
	if !(o.Elevation >= -5000 && o.Elevation <= 11000) {
		return nil, &quantity.RangeError{
			Quantity: "elevation",
			Value:    o.Elevation,
			Min:      quantity.Length(-5000),
			Max:      quantity.Length(11000),
			Advice:   "the standard atmosphere of the chart ends there",
		}
	}
	if o.Pressure == 0 {
		o.Pressure = quantity.AtmosphereAt(o.Elevation)
	}
	if o.MinDryBulb != 0 || o.MaxDryBulb != 0 {
		if !finite.Is(o.MinDryBulb) {
			return nil, &quantity.RangeError{
				Quantity: "lowest dry bulb of the chart",
				Value:    o.MinDryBulb,
				Advice:   "give both ends of the scale, at least 10 K apart",
			}
		}
		if !(o.MaxDryBulb-o.MinDryBulb >= 10) {
			return nil, &quantity.RangeError{
				Quantity: "highest dry bulb of the chart",
				Value:    o.MaxDryBulb,
				Min:      o.MinDryBulb + 10,
				Advice:   "give both ends of the scale, at least 10 K apart",
			}
		}
	}
	if !(o.MaxHumidityRatio == 0 || o.MaxHumidityRatio >= 0.002 && o.MaxHumidityRatio <= 0.5) {
		return nil, &quantity.RangeError{
			Quantity: "highest humidity ratio of the chart",
			Value:    quantity.Number(o.MaxHumidityRatio),
			Min:      quantity.Number(0.002),
			Max:      quantity.Number(0.5),
			Advice:   "it is kilograms of water per kilogram of dry air",
		}
	}
	c := &Chart{options: o, book: book}
	low, high := o.MinDryBulb, o.MaxDryBulb
	if low == 0 && high == 0 {
		low, high, _ = c.bounds()
	}
	for _, t := range []quantity.Temperature{low, high} {
		if _, err := o.Model.FromRelativeHumidity(t, 0, o.Pressure); err != nil {
			return nil, fmt.Errorf("chart: %w", err)
		}
	}
	return c, nil
}

// Pressure returns the pressure that the chart is drawn for.
func (c *Chart) Pressure() quantity.Pressure {
	if c == nil {
		return 0
	}
	return c.options.Pressure
}

// made refuses a chart that New did not make.
func (c *Chart) made() error {
	if c.Pressure() == 0 {
		return &quantity.RangeError{Quantity: "chart", Advice: "make it with chart.New"}
	}
	return nil
}

// AddState marks an air. The scales stretch to show it. Air of a pressure more
// than 1 % from the chart's is a *quantity.RangeError: its lines are not those of
// this chart.
func (c *Chart) AddState(label string, a psychro.Air) error {
	if err := c.check(a); err != nil {
		return err
	}
	c.states = append(c.states, state{label: picture.OneLine(label), air: a})
	return nil
}

// AddProcess draws a process from its start to its end, with an arrow, and marks
// neither; see [Chart.AddState]. The errors are those of AddPath.
func (c *Chart) AddProcess(label string, p psychro.Process) error {
	return c.AddPath(label, p.Start, p.End)
}

// AddPath draws straight lines from each air to the next, with arrows: on this
// chart mixing, heating, cooling and a coil are straight, and so is adiabatic
// humidification to within the width of the line. Fewer than two airs, and one that
// AddState would not take, are a *quantity.RangeError.
func (c *Chart) AddPath(label string, airs ...psychro.Air) error {
	for _, a := range airs {
		if err := c.check(a); err != nil {
			return err
		}
	}
	if len(airs) < 2 {
		return &quantity.RangeError{
			Quantity: "number of airs of the path",
			Value:    quantity.Number(len(airs)),
			Min:      quantity.Number(2),
			Advice:   "mark a single air with AddState",
		}
	}
	c.paths = append(
		c.paths, path{label: picture.OneLine(label), points: append([]psychro.Air(nil), airs...)},
	)
	return nil
}

// AddCoil draws the air from before to after a coil and, dashed, on to the
// apparatus dew point, which it marks. Where there is none the error is that of
// psychro.ApparatusDewPoint, and nothing is drawn; an air that AddState would not
// take is a *quantity.RangeError.
func (c *Chart) AddCoil(label string, entering, leaving psychro.Air) error {
	for _, a := range []psychro.Air{entering, leaving} {
		if err := c.check(a); err != nil {
			return err
		}
	}
	adp, _, err := psychro.ApparatusDewPoint(entering, leaving)
	if err != nil {
		return err
	}
	surface, err := entering.Model().Saturated(adp, entering.Pressure())
	if err != nil {
		return err
	}
	c.paths = append(c.paths,
		path{label: picture.OneLine(label), points: []psychro.Air{entering, leaving}},
		path{points: []psychro.Air{leaving, surface}, dashed: true})
	c.states = append(
		c.states, state{label: c.book.Term("chart.apparatus"), air: surface, open: true},
	)
	return nil
}

func (c *Chart) check(a psychro.Air) error {
	if err := c.made(); err != nil {
		return err
	}
	if !a.IsValid() {
		return &quantity.RangeError{
			Quantity: "air",
			Advice:   "it is the zero Air, which no constructor made",
		}
	}
	if p := c.options.Pressure; math.Abs(float64(a.Pressure()-p)) > 0.01*float64(p) {
		return &quantity.RangeError{
			Quantity: "pressure of the air",
			Value:    a.Pressure(),
			Min:      p * 0.99,
			Max:      p * 1.01,
			Advice:   "make a chart for its pressure; the lines of this one do not hold for it",
		}
	}
	return nil
}

// airs calls visit for every air that is marked or passed.
func (c *Chart) airs(visit func(psychro.Air)) {
	for _, s := range c.states {
		visit(s.air)
	}
	for _, p := range c.paths {
		for _, a := range p.points {
			visit(a)
		}
	}
}

// bounds are those asked for, or the usual ones stretched to the next round
// number beyond all that is on the chart.
func (c *Chart) bounds() (low, high quantity.Temperature, wettest float64) {
	o := c.options
	s := scalesOf(o.System)
	low, high = s.low, s.high
	wettest = s.wettest
	set := o.MinDryBulb != 0 || o.MaxDryBulb != 0
	if set {
		low, high = o.MinDryBulb, o.MaxDryBulb
	}
	if o.MaxHumidityRatio != 0 {
		wettest = o.MaxHumidityRatio
	}
	c.airs(func(a psychro.Air) {
		if t := a.DryBulb(); !set {
			margin := quantity.Temperature(2)
			low = min(
				low,
				s.dryBulb.Value(
					math.Floor(s.dryBulb.Number(t-margin)/s.dryBulbMajor)*s.dryBulbMajor,
				),
			)
			high = max(
				high,
				s.dryBulb.Value(
					math.Ceil(s.dryBulb.Number(t+margin)/s.dryBulbMajor)*s.dryBulbMajor,
				),
			)
		}
		if w := a.HumidityRatio() * 1.05; o.MaxHumidityRatio == 0 && w > wettest {
			wettest = math.Ceil(w*s.perWater/s.waterMajor) * s.waterMajor / s.perWater
		}
	})
	return max(low, quantity.Celsius(-100)), min(high, quantity.Celsius(200)), wettest
}
