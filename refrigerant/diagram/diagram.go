package diagram

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Options say what a diagram shows. The zero value is in inch-pound units and
// absolute pressure.
type Options struct {
	// Title stands above the diagram; empty, it is "Pressure-enthalpy diagram" in the language
	// of the diagram.
	Title string
	// Language is a BCP 47 tag, as "es-MX": the words are in the nearest language there is, and
	// in English where it is not given or no tag; its region decides how numbers are written.
	Language string
	// System is that of all scales and numbers.
	System quantity.System
	// Atmosphere is what gauges count from; with it all pressures are shown as a
	// gauge there shows them. 0 shows absolute pressure.
	Atmosphere quantity.Pressure
	// Isentropes draws lines of constant entropy in the vapor: a compressor without
	// loss follows one.
	Isentropes bool
	// Qualities draws lines of constant quality in the dome.
	Qualities bool
	// MinPressure and MaxPressure bound the diagram, absolute; both 0 leaves them to
	// it: from well below the states to above the critical point.
	MinPressure, MaxPressure quantity.Pressure
	// MinEnthalpy and MaxEnthalpy bound the diagram; both 0 leaves them to it: the
	// dome, some superheat, and as far as the states go.
	MinEnthalpy, MaxEnthalpy quantity.SpecificEnthalpy
}

// A Diagram is a pressure-enthalpy diagram with what is marked on it. Get one from New:
// nil and the zero value are of no refrigerant, take no marks and are not drawn. It may
// be read and drawn by several goroutines at once, but not while marks are added.
type Diagram struct {
	options Options
	book    *words.Book
	fluid   *refrigerant.Refrigerant
	dome    dome
	states  []Mark
	paths   []path
}

// A Mark is a state and its name on the diagram.
type Mark struct {
	Label string
	State refrigerant.State
}

// A path is a line from one state to the next, with an arrow in it.
type path struct {
	label  string
	points []refrigerant.State
}

// New returns a diagram of r without marks. Bounds or an atmosphere that cannot be
// are a *quantity.RangeError, and no refrigerant is refrigerant.ErrNoRefrigerant.
func New(r *refrigerant.Refrigerant, o Options) (*Diagram, error) {
	if len(r.Composition()) == 0 {
		return nil, refrigerant.ErrNoRefrigerant
	}
	book := picture.Book(o.Language, o.System)
	if o.Title = picture.OneLine(o.Title); o.Title == "" {
		o.Title = book.Term("diagram.title")
	}
	if o.Atmosphere != 0 {
		if err := limit.Within(
			"atmosphere of the gauge", o.Atmosphere, quantity.Kilopascals(20),
			quantity.Kilopascals(200),
			"take it from a barometer or quantity.AtmosphereAt, or 0 for absolute pressures",
		); err != nil {
			return nil, err
		}
	}
	const both = "give both ends of the scale, or neither"
	if o.MinPressure != 0 || o.MaxPressure != 0 {
		low, high := quantity.Pressure(100), r.Limits().MaxPressure
		if err := limit.Within(
			"lowest pressure of the diagram", o.MinPressure, low, high/2, both,
		); err != nil {
			return nil, err
		}
		if err := limit.Within(
			"highest pressure of the diagram", o.MaxPressure, 2*o.MinPressure, high,
			"at least twice the lowest, and within the limits of the refrigerant",
		); err != nil {
			return nil, err
		}
	}
	if o.MinEnthalpy != 0 || o.MaxEnthalpy != 0 {
		least, most := quantity.KilojoulesPerKilogram(-2000), quantity.KilojoulesPerKilogram(8000)
		narrow := quantity.KilojoulesPerKilogram(20)
		if err := limit.Within(
			"lowest enthalpy of the diagram", o.MinEnthalpy, least, most, both,
		); err != nil {
			return nil, err
		}
		if err := limit.Within(
			"highest enthalpy of the diagram", o.MaxEnthalpy, o.MinEnthalpy+narrow, most+narrow,
			both,
		); err != nil {
			return nil, err
		}
	}
	d := &Diagram{options: o, book: book, fluid: r}
	var err error
	if d.dome, err = domeOf(r); err != nil {
		return nil, fmt.Errorf("diagram: %w", err)
	}
	return d, nil
}

// made is refrigerant.ErrNoRefrigerant for a diagram that New did not make.
func (d *Diagram) made() error {
	if d == nil || d.fluid == nil {
		return refrigerant.ErrNoRefrigerant
	}
	return nil
}

// AddState marks a state. Scales that were not asked for stretch to show it. A state
// that is none of this refrigerant's is a *quantity.RangeError.
func (d *Diagram) AddState(label string, s refrigerant.State) error {
	if err := d.check(s); err != nil {
		return err
	}
	d.states = append(d.states, Mark{Label: picture.OneLine(label), State: s})
	return nil
}

// AddPath draws straight lines from each state to the next, with arrows, and marks
// none; see [Diagram.AddState]. Of a compressor the states at its ends are known and not those
// between: its line stands for the change and is no record of it. Fewer than two states,
// and one that is none of this refrigerant's, are a *quantity.RangeError.
func (d *Diagram) AddPath(label string, states ...refrigerant.State) error {
	for _, s := range states {
		if err := d.check(s); err != nil {
			return err
		}
	}
	if len(states) < 2 {
		return &quantity.RangeError{
			Quantity: "number of states of the path",
			Value:    quantity.Number(len(states)),
			Min:      quantity.Number(2),
			Advice:   "mark a single state with AddState",
		}
	}
	d.paths = append(
		d.paths,
		path{label: picture.OneLine(label), points: append([]refrigerant.State(nil), states...)},
	)
	return nil
}

// AddCycle marks the states of a cycle in the order that the refrigerant passes them,
// such as suction, discharge, liquid and evaporator inlet, and draws the path through
// them and back to the first. Fewer than three states, and one that is none of this
// refrigerant's, are a *quantity.RangeError, and then nothing is added.
func (d *Diagram) AddCycle(marks ...Mark) error {
	if len(marks) < 3 {
		return &quantity.RangeError{
			Quantity: "number of states of the cycle",
			Value:    quantity.Number(len(marks)),
			Min:      quantity.Number(3),
			Advice:   "draw a line between two states with AddPath",
		}
	}
	states := make([]refrigerant.State, 0, len(marks)+1)
	for _, m := range marks {
		if err := d.check(m.State); err != nil {
			return fmt.Errorf("%s: %w", picture.OneLine(m.Label), err)
		}
		states = append(states, m.State)
	}
	for _, m := range marks {
		d.states = append(d.states, Mark{Label: picture.OneLine(m.Label), State: m.State})
	}
	d.paths = append(d.paths, path{points: append(states, states[0])})
	return nil
}

// sameEnthalpy is how far the enthalpy of a state may be from the refrigerant's at its
// pressure and temperature, or else sameState how far the temperature at its pressure
// and enthalpy.
const (
	sameEnthalpy quantity.SpecificEnthalpy = 500
	sameState    quantity.TemperatureDelta = 0.5
)

func (d *Diagram) check(s refrigerant.State) error {
	if err := d.made(); err != nil {
		return err
	}
	p := s.Pressure
	if most := d.fluid.Limits().MaxPressure; p > most && p <= most*(1+1e-9) {
		p = most // a solver's last digit
	}
	// The temperature goes first: states at the limits of the equation have it
	// exactly, and enthalpy but nearly.
	if own, err := d.fluid.State(p, s.Temperature); err == nil &&
		math.Abs(float64(own.Enthalpy-s.Enthalpy)) <= float64(sameEnthalpy) {
		return nil
	}
	own, err := d.fluid.StateAtEnthalpy(p, s.Enthalpy)
	if err != nil {
		return fmt.Errorf("diagram: %w", err)
	}
	if off := own.Temperature.Sub(s.Temperature); !(math.Abs(float64(off)) <= float64(sameState)) {
		return &quantity.RangeError{
			Quantity: "temperature of the state", Value: s.Temperature,
			Min: own.Temperature.Add(-sameState), Max: own.Temperature.Add(sameState),
			Advice: "at its pressure and enthalpy " + d.fluid.Designation() +
				" has another: is it a state of this refrigerant?",
		}
	}
	return nil
}
