// Package fitted is a machine of common make that was fitted to what one was read: what it
// will do in other weather, with other air or charge, and how far to believe that.
package fitted

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant/cycle"
)

type (
	delta       = quantity.Uncertain[quantity.TemperatureDelta]
	temperature = quantity.Uncertain[quantity.Temperature]
)

// Read is what a machine is fitted to, and what follows from that: those are not fitted, but
// held against it.
type Read struct {
	Visit       cycle.Readings
	Superheat   *delta
	Subcooling  *delta
	Evaporating *temperature
}

// A Machine is a model of the whole machine that was fitted to a visit.
type Machine struct {
	// Seen are the conditions that it was read in.
	Seen cycle.Conditions
	// Believe says how far to believe it.
	Believe []fact.Fact

	fitted *cycle.Fitted
	// off is how far the machine is off the visit, in K, beyond its own uncertainty.
	off struct{ superheat, subcooling, evaporating float64 }
}

// missed is how many standard uncertainties the fitted machine may be off a reading before
// it is said that it misses it.
const missed = 2

// A Comparison says what a fitted machine misses of the readings; empty for nothing.
type Comparison []fact.Fact

// Off is by how much the machine is off a reading, in K, beyond its own uncertainty: by the gap
// between them and the standard uncertainty of each, in K too.
func (c *Comparison) Off(of fact.Term, gap, machine, read float64) float64 {
	if math.Abs(gap) > missed*max(machine, read) {
		*c = append(*c, fact.New(
			"forecast.misses", fact.Of("feature", of),
			fact.Amount("by", quantity.TemperatureDelta(math.Abs(gap))),
		))
	}
	return math.Sqrt(max(0, gap*gap-machine*machine))
}

// Fit fits a design to what was read. The error is that of cycle.Fit.
func Fit(system *cycle.System, read Read) (*Machine, error) {
	fit, err := cycle.Fit(system, read.Visit)
	if err != nil {
		return nil, err
	}
	m := &Machine{Seen: read.Visit.Conditions, fitted: fit}
	return m, m.compare(&read)
}

// compare holds the fitted machine against the visit it was fitted to.
func (m *Machine) compare(read *Read) error {
	now, err := m.fitted.Predict(m.Seen, cycle.Faults{})
	if err != nil {
		return err
	}
	var misses Comparison
	off := func(term fact.Term, model, modelStd float64, measured *delta) float64 {
		if measured == nil {
			return 0
		}
		return misses.Off(term, float64(measured.Value)-model, modelStd, measured.Std)
	}
	m.off.superheat = off(
		"feature.superheat", float64(now.Superheat.Value), now.Superheat.Std, read.Superheat,
	)
	m.off.subcooling = off(
		"feature.subcooling", float64(now.Subcooling.Value), now.Subcooling.Std, read.Subcooling,
	)
	if e := read.Evaporating; e != nil {
		m.off.evaporating = off(
			"feature.evaporating", 0, now.Evaporating.Std,
			&delta{Value: e.Value.Sub(now.Evaporating.Value), Std: e.Std},
		)
	}
	switch m.Believe = misses; {
	case len(misses) > 0:
	case m.fitted.Misfit() > missed:
		m.Believe = []fact.Fact{fact.New("forecast.does-not-fit")}
	default:
		m.Believe = []fact.Fact{fact.New("forecast.fits")}
	}
	return nil
}
