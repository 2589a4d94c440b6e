package satline

import (
	"math"
	"slices"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// A fitting is the model of the whole machine that was fitted to a visit.
type fitting struct {
	machine *cycle.Fitted
	seen    cycle.Conditions
	// off is how far the machine is off the visit, in K, beyond its own uncertainty.
	off     struct{ superheat, subcooling, evaporating float64 }
	believe []fact.Fact
}

// missed is how many standard uncertainties the fitted machine may be off a reading before
// the forecast says that it misses it.
const missed = 2

// fittedTo are the readings that a forecast stands on.
var fittedTo = []string{
	"outdoorDryBulb", "returnDryBulb", "returnWetBulb", "suctionPressure", "liquidPressure",
	"suctionLine",
}

// fitTo fits a machine of common make to the readings.
func fitTo(p *prepared, s *settled, d *Derived, doubts []readcheck.Doubt) (*fitting, error) {
	r, e := &s.readings, &p.visit.Equipment
	switch {
	case e.NominalCapacity == 0:
		return nil, missing(
			"equipment.nominalCapacity", "a forecast starts from the size of the machine",
		)
	case r.OutdoorDryBulb == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SuctionPressure == nil:
		return nil, missing(
			"readings",
			"a forecast needs outdoorDryBulb, returnDryBulb, returnWetBulb and suctionPressure",
		)
	}
	for _, x := range doubts {
		if x.Weight == readcheck.Impossible &&
			slices.ContainsFunc(
				x.Fields, func(f string) bool { return slices.Contains(fittedTo, f) },
			) {
			return nil, &VisitError{
				Field:   "readings." + x.Fields[0],
				Kind:    FieldContradictory,
				Problem: "it cannot be true together with the other readings (" + x.Code + "); read it again",
			}
		}
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: p.fluid,
		Capacity:    e.NominalCapacity,
		Metering:    asFitted(e.Metering),
		Airflow:     e.Label.RatedAirflow,
	})
	if err != nil {
		return nil, rangeProblem("equipment", err)
	}
	seen := cycle.Conditions{
		OutdoorDryBulb: r.OutdoorDryBulb.Value, ReturnDryBulb: r.ReturnDryBulb.Value, ReturnWetBulb: r.ReturnWetBulb.Value,
		Elevation: elevationOf(p.visit.Site),
	}
	visit := cycle.Visit{
		OutdoorStd:        quantity.TemperatureDelta(r.OutdoorDryBulb.Std),
		DryBulbStd:        quantity.TemperatureDelta(r.ReturnDryBulb.Std),
		WetBulbStd:        quantity.TemperatureDelta(r.ReturnWetBulb.Std),
		SuctionPressure:   r.SuctionPressure,
		LiquidPressure:    r.LiquidPressure,
		DischargePressure: r.DischargePressure,
		SuctionLine:       r.SuctionLine,
		LiquidLine:        r.LiquidLine,
		DischargeLine:     r.DischargeLine,
		Supply:            r.SupplyDryBulb,
		CondenserLeaving:  r.CondenserLeaving,
		Power:             r.Power,
	}
	if r.Airflow != nil {
		seen.Airflow = r.Airflow.Value
		visit.AirflowStd = r.Airflow.Std / float64(r.Airflow.Value)
	}
	visit.Conditions = seen
	machine, err := cycle.Fit(system, visit)
	if err != nil {
		return nil, rangeProblem("readings", err)
	}
	fit := &fitting{machine: machine, seen: seen}
	if err := fit.compare(d); err != nil {
		return nil, rangeProblem("readings", err)
	}
	fit.believe = append(forbidding(p, s, d, doubts), fit.believe...)
	return fit, nil
}

// compare holds the fitted machine against the visit it was fitted to.
func (fit *fitting) compare(d *Derived) error {
	now, err := fit.machine.Predict(fit.seen, cycle.Faults{})
	if err != nil {
		return err
	}
	misses := false
	off := func(term fact.Term, model, modelStd float64, measured *deltaReading) float64 {
		if measured == nil {
			return 0
		}
		gap := float64(measured.Value) - model
		if math.Abs(gap) > missed*max(modelStd, measured.Std) {
			misses = true
			fit.believe = append(
				fit.believe,
				fact.New(
					"forecast.misses", fact.Of("feature", term),
					fact.Amount("by", quantity.TemperatureDelta(math.Abs(gap))),
				),
			)
		}
		return math.Sqrt(max(0, gap*gap-modelStd*modelStd))
	}
	fit.off.superheat = off(
		"feature.superheat", float64(now.Superheat.Value), now.Superheat.Std, d.Superheat,
	)
	fit.off.subcooling = off(
		"feature.subcooling", float64(now.Subcooling.Value), now.Subcooling.Std, d.Subcooling,
	)
	if e := d.EvaporatingDew; e != nil {
		fit.off.evaporating = off(
			"feature.evaporating", 0, now.Evaporating.Std,
			&deltaReading{Value: e.Value.Sub(now.Evaporating.Value), Std: e.Std},
		)
	}
	if !misses && fit.machine.Misfit() > missed {
		fit.believe = append(fit.believe, fact.New("forecast.does-not-fit"))
	} else if !misses {
		fit.believe = append(fit.believe, fact.New("forecast.fits"))
	}
	return nil
}

// forbidding says what forbids to build on a forecast: a machine that does not run as it
// will later, or readings that are in doubt.
func forbidding(p *prepared, s *settled, d *Derived, doubts []readcheck.Doubt) []fact.Fact {
	var out []fact.Fact
	not := func(why fact.Fact) {
		out = append(
			out,
			fact.New("forecast.do-not-build", fact.Of("why", fact.Term(why.Code))).
				With(why.Values...),
		)
	}
	situation := situationOf(p, s, d, Cooling)
	for _, o := range charge.Obstacles(situation, charge.MethodFor(p.visit.Equipment.Metering)) {
		if o.Spoils {
			not(o.Says)
		}
	}
	if s.moving() {
		not(s.steadiness.Says)
	}
	for _, x := range doubts {
		if x.Weight != readcheck.Note {
			not(fact.New(fact.Code("doubt."+x.Code), x.Values...))
		}
	}
	return out
}

// outlook is what the fitted machine will do in a scenario, with what has become of it by
// then.
func (fit *fitting) outlook(v *prepared, s Scenario, become cycle.Faults) (Outlook, error) {
	fitted, at, changed, err := fit.under(s, v.visit.Equipment.Label.Charge)
	if err != nil {
		return Outlook{}, err
	}
	become.Charge += changed.Charge
	become.IndoorAirflow = (1+become.IndoorAirflow)*(1+changed.IndoorAirflow) - 1
	changed = become
	p, err := fitted.Predict(at, changed)
	if err != nil {
		return Outlook{}, err
	}
	freeze, err := fitted.Freeze(at, changed)
	if err != nil {
		return Outlook{}, err
	}
	o := Outlook{
		Scenario: s, Superheat: widened(p.Superheat, fit.off.superheat), Subcooling: widened(p.Subcooling, fit.off.subcooling),
		Evaporating: widened(p.Evaporating, fit.off.evaporating), Condensing: p.Condensing,
		CoilSurface: widened(
			freeze.Surface, fit.off.evaporating,
		), Supply: p.Supply, Capacity: p.NetCapacity,
		Believe: slices.Clone(fit.believe),
	}
	bySurface := normal.Below(
		-float64(o.CoilSurface.Value.Sub(airside.Freezing)) / o.CoilSurface.Std,
	)
	o.FreezeChance = max(bySurface, airside.IcingChance(o.Evaporating))
	for _, x := range p.Extrapolating {
		o.Extrapolating = append(o.Extrapolating, x.Fact())
	}
	o.Says = o.says(freeze)
	speak(&o, v.visit.Language.book(v.visit.Units))
	return o, nil
}

// under is the fitted machine in a scenario: what holds its head pressure, the weather and
// the air, and how its charge has changed from that of the label.
func (fit *fitting) under(
	s Scenario, label quantity.Mass,
) (fitted *cycle.Fitted, at cycle.Conditions, changed cycle.Faults, err error) {
	fitted, at = fit.machine, fit.seen
	for _, c := range []struct {
		to   *quantity.Temperature
		from quantity.Temperature
	}{{&at.OutdoorDryBulb, s.OutdoorDryBulb}, {&at.ReturnDryBulb, s.ReturnDryBulb}, {&at.ReturnWetBulb, s.ReturnWetBulb}} {
		if c.from != 0 {
			*c.to = c.from
		}
	}
	if s.Airflow != 0 { // all of it, whatever the fit took away
		at.Airflow = s.Airflow
		changed.IndoorAirflow = 1/(1+fit.airflow()) - 1
	}
	if s.Added != 0 {
		const least, most = -0.8, 1 // of the whole charge, as for cycle.Faults
		changed.Charge = fitted.ChargeChange(s.Added, label)
		if !(changed.Charge >= least && changed.Charge <= most) {
			perKilogram := fitted.ChargeChange(quantity.Kilograms(1), label)
			return nil, at, changed, &quantity.RangeError{
				Quantity: "refrigerant added", Value: s.Added, Min: quantity.Kilograms(least / perKilogram), Max: quantity.Kilograms(most / perKilogram),
				Advice: "what is recovered is negative; the model goes from 20 % of a charge to twice as much",
			}
		}
	}
	if s.HeadPressure != 0 {
		if low, high := quantity.Fahrenheit(50), quantity.Fahrenheit(150); !(s.HeadPressure >= low && s.HeadPressure <= high) {
			return nil, at, changed, &quantity.RangeError{
				Quantity: "condensing temperature that the head is held at", Value: s.HeadPressure, Min: low, Max: high,
				Advice: "give the setting of the control as a saturation temperature, or 0 for no control",
			}
		}
		fitted = fitted.WithHeadPressure(s.HeadPressure)
	}
	return fitted, at, changed, nil
}

// airflow is the share by which the fit found more than was measured, or than is rated
// where nothing was.
func (fit *fitting) airflow() float64 {
	for _, u := range fit.machine.Unknowns() {
		if u.Name == "indoor airflow" {
			return u.Value
		}
	}
	return 0
}

// tellable is the widest standard uncertainty of a superheat or a surface by which
// anything is called likely.
const tellable = 4.0 // K

// says is the outlook in facts: whether the coil freezes first.
func (o *Outlook) says(freeze cycle.FreezeForecast) []fact.Fact {
	code := fact.Code("forecast.no-ice")
	switch {
	case o.CoilSurface.Std > tellable:
		code = "forecast.ice-too-wide"
	case o.FreezeChance > 0.9:
		code = "forecast.ice"
	case o.FreezeChance > 0.5:
		code = "forecast.ice-likely"
	case o.FreezeChance > 0.1:
		code = "forecast.ice-possible"
	}
	out := []fact.Fact{
		fact.New(code, fact.Of("chance", fact.Share(o.FreezeChance))),
		fact.New(
			"forecast.cold", fact.Measured("evaporating", o.Evaporating),
			fact.Measured("surface", o.CoilSurface),
		),
		fact.New(
			"forecast.state", fact.Measured("superheat", o.Superheat),
			fact.Measured("subcooling", o.Subcooling), fact.Measured("capacity", o.Capacity),
		),
	}
	if o.FreezeChance < 0.5 {
		if freeze.Outdoor != nil {
			out = append(
				out, fact.New("freeze.at-outdoor", fact.Amount("outdoor", *freeze.Outdoor)),
			)
		}
		if freeze.WetBulb != nil {
			out = append(
				out, fact.New("freeze.at-wet-bulb", fact.Amount("wetBulb", *freeze.WetBulb)),
			)
		}
		if freeze.Airflow != nil {
			out = append(
				out, fact.New("freeze.at-airflow", fact.Of("share", fact.Share(*freeze.Airflow))),
			)
		}
	}
	liquid := normal.Below(-float64(o.Superheat.Value) / o.Superheat.Std)
	switch {
	case o.Superheat.Std > tellable:
		out = append(out, fact.New("forecast.superheat-too-wide"))
	case liquid >= 0.1:
		out = append(out, fact.New("forecast.liquid", fact.Of("chance", fact.Share(liquid))))
	}
	return out
}

// widened is a value whose uncertainty covers what the fitted machine is off by at the
// visit: it will not be off by less elsewhere.
func widened[T quantity.Quantity](u quantity.Uncertain[T], off float64) quantity.Uncertain[T] {
	u.Std = math.Hypot(u.Std, off)
	return u
}

// elevationOf is that of the site, or the one that its barometer stands for.
func elevationOf(site Site) quantity.Length {
	switch {
	case site.Barometer == nil && site.Elevation == nil:
		return 0
	case site.Barometer == nil:
		return *site.Elevation
	}
	low, high := quantity.Meters(-1000), quantity.Meters(6000)
	for range 60 {
		middle := (low + high) / 2
		if quantity.AtmosphereAt(middle) > *site.Barometer {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// asFitted is the device that a machine is fitted with: a capillary tube is followed as the
// short tube that passes as much.
func asFitted(m Metering) Metering {
	if m == refrigerant.Capillary {
		return FixedRestrictor
	}
	return m
}
