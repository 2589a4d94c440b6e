package heatpump

import (
	"math"

	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant/cycle"
)

// noLoss is the outdoor temperature at which a house wants no heat: common practice, and the
// base of heating degree days.
var noLoss = quantity.Fahrenheit(65)

// Forecast fits a machine of common make to what was read of one that heats.
func Forecast(c *modes.Case) (modes.Foretell, error) {
	switch {
	case c.NominalCapacity == 0:
		return nil, modes.Lacking(
			"equipment.nominalCapacity",
			"a forecast starts from the size of the machine",
		)
	case c.OutdoorDryBulb == nil || c.ReturnDryBulb == nil || c.SuctionPressure == nil:
		return nil, modes.Lacking(
			"readings",
			"a forecast needs outdoorDryBulb, returnDryBulb and suctionPressure",
		)
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: c.Fluid, Capacity: c.NominalCapacity, Metering: c.Metering,
		Airflow: c.RatedAirflow, HeatPump: true,
	})
	if err != nil {
		return nil, err
	}
	ordinary, err := system.Reversed(cycle.HeatingSpec{})
	if err != nil {
		return nil, err
	}
	f := forecast{c: c, seen: cycle.HeatingConditions{
		OutdoorDryBulb: c.OutdoorDryBulb.Value, ReturnDryBulb: c.ReturnDryBulb.Value,
		Elevation: quantity.ElevationOf(c.Site.Value),
	}}
	read := cycle.HeatingReadings{
		Evaporating: c.EvaporatingDew, Condensing: c.CondensingBubble,
		Superheat: c.Superheat, Subcooling: c.Subcooling,
		Supply: c.SupplyDryBulb, Power: c.Power,
	}
	if a := c.Airflow; a != nil {
		f.seen.Airflow = a.Value
	}
	b := believe(c)
	if b.of(strips) >= worth { // of the heat pump alone they tell nothing
		read.Supply, read.Power = nil, nil
	}
	if b.modulates() { // its readings are those of a speed that nobody may know
		f.fit, f.slow = ordinary, true
		f.believe = []fact.Fact{fact.New("forecast.full-speed")}
		return f.outlook, nil
	}
	if f.fit, err = ordinary.Fit(f.seen, read); err != nil {
		return nil, err
	}
	now, err := f.fit.Predict(f.seen, cycle.Faults{})
	if err != nil {
		return nil, err
	}
	f.compare(&now)
	return f.outlook, nil
}

// A forecast is a machine that was fitted to a case.
type forecast struct {
	c       *modes.Case
	fit     *cycle.Reversed
	seen    cycle.HeatingConditions
	believe []fact.Fact
	// slow says that it was read at a speed below that of what is foretold.
	slow bool
	// off is how far the machine is off what was read, in K, beyond its own uncertainty.
	off struct{ evaporating, condensing, superheat, subcooling float64 }
}

// compare holds the fitted machine against what it was fitted to.
func (f *forecast) compare(now *cycle.HeatingPrediction) {
	// Its readings are not those of the machine, or contradict each other.
	if j := Judge(f.c); len(j.Findings) == 0 || j.Headline.Code == "headline.not-judged" {
		f.believe = j.DoNotBuild()
	}
	var misses fitted.Comparison
	at := func(term fact.Term, is quantity.Uncertain[quantity.Temperature],
		read *quantity.Uncertain[quantity.Temperature]) float64 {
		if read == nil {
			return 0
		}
		return misses.Off(term, float64(read.Value.Sub(is.Value)), is.Std, read.Std)
	}
	by := func(term fact.Term, is quantity.Uncertain[quantity.TemperatureDelta],
		read *quantity.Uncertain[quantity.TemperatureDelta]) float64 {
		if read == nil {
			return 0
		}
		return misses.Off(term, float64(read.Value-is.Value), is.Std, read.Std)
	}
	f.off.evaporating = at("feature.evaporating", now.Evaporating, f.c.EvaporatingDew)
	f.off.condensing = at("feature.condensing", now.Condensing, f.c.CondensingBubble)
	f.off.superheat = by("feature.superheat", now.Superheat, f.c.Superheat)
	f.off.subcooling = by("feature.subcooling", now.Subcooling, f.c.Subcooling)
	if f.believe = append(f.believe, misses...); len(misses) == 0 {
		f.believe = append(f.believe, fact.New("forecast.fits"))
	}
}

// outlook is what the machine will do in a scenario.
func (f *forecast) outlook(s modes.Scenario) (out modes.Outlook, err error) {
	if err := s.WithoutCharge(); err != nil {
		return out, err
	}
	at := f.seen
	if s.OutdoorDryBulb != 0 {
		at.OutdoorDryBulb = s.OutdoorDryBulb
	}
	if s.ReturnDryBulb != 0 {
		at.ReturnDryBulb = s.ReturnDryBulb
	}
	if s.Airflow != 0 {
		at.Airflow = s.Airflow
	}
	p, err := f.fit.Predict(at, cycle.Faults{})
	if err != nil {
		return out, err
	}
	out = modes.Outlook{
		Superheat:   fitted.Widened(p.Superheat, f.off.superheat, 2*unlike),
		Subcooling:  fitted.Widened(p.Subcooling, f.off.subcooling, unlike),
		Evaporating: fitted.Widened(p.Evaporating, f.off.evaporating, unlike),
		Condensing:  fitted.Widened(p.Condensing, f.off.condensing, unlike),
		CoilSurface: fitted.Widened(p.CoilSurface, f.off.evaporating, unlike),
		Supply:      fitted.Widened(p.Supply, unlike),
		Capacity:    fitted.Widened(p.Capacity, f.unlikeShare()*float64(p.Capacity.Value)),
		COP:         &quantity.UncertainNumber{Value: p.Heating.COP, Std: p.COPStd},
		Believe:     f.believe,
	}
	out.Says = []fact.Fact{
		fact.New("forecast.heating", fact.Measured("capacity", told(out.Capacity)),
			fact.Of("cop", fact.Number(p.Heating.COP)), fact.Measured("supply", out.Supply)),
		fact.New("forecast.heating-pressures", fact.Measured("condensing", out.Condensing),
			fact.Measured("evaporating", out.Evaporating),
			fact.Measured("discharge", fitted.Widened(p.DischargeLine, 4*unlike))),
	}
	switch p.Heating.Limit {
	case cycle.HighPressure:
		out.Says = append(out.Says, fact.New("forecast.stops-high"))
	case cycle.LowPressure:
		out.Says = append(out.Says, fact.New("forecast.stops-low"))
	}
	if at.OutdoorDryBulb < warmestFrost && p.CoilSurface.Value < quantity.Celsius(0) {
		out.Says = append(out.Says, fact.New("forecast.heating-frost"))
	}
	if s.Load > 0 {
		out.Says = append(out.Says, f.carries(at, s.Load, out.Capacity)...)
	}
	return out, nil
}

// carries says whether the machine carries what the house loses, and down to which outdoor
// temperature it does: the balance point.
func (f *forecast) carries(
	at cycle.HeatingConditions, load quantity.Power, gives quantity.Uncertain[quantity.Power],
) []fact.Fact {
	loses := fact.Amount("load", load)
	out := []fact.Fact{fact.New("forecast.heating-carries", loses)}
	if short := load - gives.Value; short > 0 {
		out[0] = fact.New(
			"forecast.heating-short", loses, fact.Amount("short", rounded(float64(short))),
		)
	}
	if at.OutdoorDryBulb > noLoss-1 {
		return out
	}
	spare := func(t quantity.Temperature) float64 {
		c := at
		c.OutdoorDryBulb = t
		o, err := f.fit.Solve(c, cycle.Faults{})
		if err != nil {
			return math.NaN()
		}
		part := float64(noLoss-t) / float64(noLoss-at.OutdoorDryBulb)
		return float64(o.Capacity) - float64(load)*part
	}
	low, high := quantity.Fahrenheit(-15), noLoss
	if !(spare(low) < 0 && spare(high) > 0) {
		return out
	}
	for high-low > 0.25 {
		if middle := (low + high) / 2; spare(middle) > 0 {
			high = middle
		} else {
			low = middle
		}
	}
	return append(out, fact.New(
		"forecast.heating-balance",
		fact.Amount("outdoor", quantity.Fahrenheit(math.Round(low.Fahrenheit()))),
	))
}

// unlike is how far, in K, a model of common make is off a machine of another, beyond what
// machines of its kind differ in, and unlikeShare what that is of its capacity: common
// practice, no source.
const unlike, unlikeShare = 0.7, 0.04

// unlikeShare is that of capacity, of a machine that was not fitted to its readings too.
func (f *forecast) unlikeShare() float64 {
	const unfitted = 0.1
	if f.slow {
		return unfitted
	}
	return unlikeShare
}

// told is a capacity to what anybody knows of it.
func told(q quantity.Uncertain[quantity.Power]) quantity.Uncertain[quantity.Power] {
	q.Value = rounded(float64(q.Value))
	q.Std = float64(max(rounded(q.Std), quantity.BtuPerHour(500)))
	return q
}
