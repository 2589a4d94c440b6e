package diagram

import (
	"math"

	"github.com/satline/satline/internal/page/picture"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// scales are the units of one system, and the pressure on a gauge or in all.
type scales struct {
	temperature quantity.Unit[quantity.Temperature]
	delta       quantity.Unit[quantity.TemperatureDelta]
	enthalpy    quantity.Unit[quantity.SpecificEnthalpy]
	entropy     quantity.Unit[quantity.SpecificEntropy]
	density     quantity.Unit[quantity.Density]

	gauge        quantity.Unit[quantity.GaugePressure]
	absolute     quantity.Unit[quantity.Pressure]
	atmosphere   quantity.Pressure // around the gauge, 0 for absolute pressures
	pressureUnit string
	pressureName fact.Code
}

func scalesOf(o Options) scales {
	s := scales{
		temperature: quantity.UnitOf[quantity.Temperature](o.System),
		delta:       quantity.UnitOf[quantity.TemperatureDelta](o.System),
		enthalpy:    quantity.UnitOf[quantity.SpecificEnthalpy](o.System),
		entropy:     quantity.UnitOf[quantity.SpecificEntropy](o.System),
		density:     quantity.UnitOf[quantity.Density](o.System),
		gauge:       quantity.UnitOf[quantity.GaugePressure](o.System),
		absolute:    quantity.UnitOf[quantity.Pressure](o.System),
		atmosphere:  o.Atmosphere,
	}
	s.pressureUnit, s.pressureName = s.absolute.Symbol(), "diagram.axis.absolute"
	if s.atmosphere != 0 {
		s.pressureUnit, s.pressureName = s.gauge.Symbol(), "diagram.axis.gauge"
	}
	return s
}

func (s scales) pressure(p quantity.Pressure) float64 {
	if s.atmosphere != 0 {
		return s.gauge.Number(p.Gauge(s.atmosphere))
	}
	return s.absolute.Number(p)
}

func (s scales) fromPressure(v float64) quantity.Pressure {
	if s.atmosphere != 0 {
		return s.gauge.Value(v).Absolute(s.atmosphere)
	}
	return s.absolute.Value(v)
}

// pressureTicks are round numbers of the unit, the roundest first taken, that stand
// at least gap apart in the logarithm of the absolute pressure.
func (s scales) pressureTicks(low, high quantity.Pressure, gap float64) (ticks []float64) {
	var places []float64
	try := func(v float64) {
		p := s.fromPressure(v)
		if !(p >= low && p <= high) {
			return
		}
		at := math.Log(float64(p))
		for _, q := range places {
			if math.Abs(at-q) < gap {
				return
			}
		}
		places, ticks = append(places, at), append(ticks, v)
	}
	if s.atmosphere != 0 {
		try(0)
	}
	least := -2
	if s.atmosphere != 0 {
		least = 0
	}
	for _, round := range [][]float64{{1}, {2, 5}, {3, 1.5}, {4, 7}, {6, 8}, {1.2, 2.5, 3.5}} {
		for exponent := least; exponent <= 6; exponent++ {
			for _, mantissa := range round {
				v := mantissa * math.Pow10(exponent)
				try(v)
				if s.atmosphere != 0 {
					try(-v)
				}
			}
		}
	}
	return ticks
}

// tickDigits are those that a tick needs.
func tickDigits(v float64) int {
	for digits := range 3 {
		if picture.Multiple(v, math.Pow10(-digits)) {
			return digits
		}
	}
	return 3
}

// step is the smallest round step that makes at most n of a span.
func step(span float64, n int) float64 {
	for exponent := -6; exponent < 9; exponent++ {
		for _, mantissa := range []float64{1, 2, 2.5, 5} {
			if v := mantissa * math.Pow10(exponent); span/v <= float64(n) {
				return v
			}
		}
	}
	return span
}

// condition says where a state stands to saturation, as a fact with a short form.
func (d *Diagram) condition(st refrigerant.State) fact.Fact {
	r, unit := d.fluid, quantity.UnitOf[quantity.TemperatureDelta](d.options.System)
	by := func(code fact.Code, by quantity.TemperatureDelta) fact.Fact {
		return fact.New(
			code, fact.Of("by", picture.Number(d.book, unit.Number(by), 1)),
			fact.Of("unit", unit.Symbol()),
		)
	}
	switch st.Phase {
	case refrigerant.TwoPhase:
		return fact.New(
			"diagram.quality", fact.Of("by", picture.Number(d.book, 100*st.Quality, 0)),
			fact.Of("unit", "%"),
		)
	case refrigerant.Vapor:
		if d, err := r.Superheat(st.Pressure, st.Temperature); err == nil {
			return by("diagram.superheat", d)
		}
	case refrigerant.Liquid:
		if d, err := r.Subcooling(st.Pressure, st.Temperature); err == nil {
			return by("diagram.subcooling", d)
		}
	}
	return fact.New(fact.Code("phase." + string(st.Phase)))
}
