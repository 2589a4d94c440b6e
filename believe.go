package satline

import (
	"fmt"
	"math"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// missed is from how many standard uncertainties on a fitted machine is said to miss
// a reading.
const missed = 2

// compare holds the fitted machine against the visit it was fitted to, and says how
// far to believe a forecast by it.
func (j *job) compare(fit *fitting) error {
	now, err := fit.machine.Predict(fit.seen, cycle.Faults{})
	if err != nil {
		return rangeProblem("readings", err)
	}
	sys, d := j.visit.Units, &j.derived
	fit.believe = []string{"a machine of common make stands for this one, fitted to the readings of this visit; ± is one standard uncertainty, which two of three come within"}
	var where, not []string
	off := func(name string, model, measured float64, modelStd, measuredStd float64, format func(float64) string) float64 {
		gap := measured - model
		if math.Abs(gap) > missed*max(modelStd, measuredStd) {
			where = append(where, fmt.Sprintf("%s by %s (%s in the model, %s measured)", name, quantity.TemperatureDelta(math.Abs(gap)).Format(sys), format(model), format(measured)))
		}
		return math.Sqrt(max(0, gap*gap-modelStd*modelStd))
	}
	delta := func(v float64) string { return quantity.TemperatureDelta(v).Format(sys) }
	if m := d.Superheat; m != nil {
		fit.off.superheat = off("superheat", float64(now.Superheat.Value), float64(m.Value), now.Superheat.Std, m.Std, delta)
	}
	if m := d.Subcooling; m != nil {
		fit.off.subcooling = off("subcooling", float64(now.Subcooling.Value), float64(m.Value), now.Subcooling.Std, m.Std, delta)
	}
	if m := d.EvaporatingDew; m != nil {
		fit.off.evaporating = off("evaporating temperature", float64(now.Evaporating.Value), float64(m.Value), now.Evaporating.Std, m.Std,
			func(v float64) string { return quantity.Temperature(v).Format(sys) })
	}
	switch {
	case len(where) > 0:
		fit.believe = append(fit.believe, "it misses the "+listed(where)+": the model has nothing that gives all readings together; the ± above is wider by as much, and the figure tells the direction rather than the amount")
	case fit.machine.Misfit() > missed:
		not = append(not, "do not build on it: the fitted machine does not read as this one does; an instrument is off, or something is wrong that the model does not know")
	default:
		fit.believe = append(fit.believe, "it reads as this one does, within the uncertainty of the readings")
	}
	if j.readings.Airflow == nil {
		fit.believe = append(fit.believe, "the airflow was not measured; the fit has it from the other readings")
	}
	for _, o := range charge.Obstacles(j.situation(), devices[j.visit.Equipment.Metering].Method()) {
		if slices.Contains(notItself, o.Code) {
			not = append(not, "do not build on it: "+o.Reason)
		}
	}
	if why := j.unsettled(); why != "" {
		not = append(not, "do not build on it: "+why)
	}
	for _, x := range j.doubts {
		if grave(x) {
			not = append(not, "do not build on it before this is settled: "+x.Text)
		}
	}
	fit.believe = append(not, fit.believe...)
	return nil
}

// notItself are the conditions in which a machine does not run as it will later, so
// that one fitted to it forecasts the condition.
var notItself = []string{
	"coil-iced", "panels-off", "run-short", "just-moved", "coil-wet", "condenser-fan-cycling", "economizer-open", "doors-open", "circuit-opened",
}
