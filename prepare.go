package satline

import (
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// prepared is a visit that has been checked field by field, with every reading
// carrying an uncertainty.
type prepared struct {
	visit      Visit
	fluid      *refrigerant.Refrigerant
	atmosphere AtmosphereUsed
	readings   Readings
	log        []LogEntry
}

func prepare(v Visit) (*prepared, error) {
	p := &prepared{visit: v}
	var err error
	if v.Equipment.Refrigerant == "" {
		return nil, missing("equipment.refrigerant", "name the refrigerant on the unit's label, as in \"R-410A\"")
	}
	if p.fluid, err = refrigerant.Lookup(v.Equipment.Refrigerant); err != nil {
		return nil, &VisitError{Field: "equipment.refrigerant", Problem: err.Error(), Err: err}
	}
	if v.Equipment.Metering < FixedRestrictor || v.Equipment.Metering > EXV {
		return nil, missing("equipment.metering", `say "fixed restrictor", "TXV" or "EXV": the charging method depends on it`)
	}
	if v.Units != quantity.IP && v.Units != quantity.SI {
		return nil, missing("units", `say "IP" or "SI"`)
	}
	if v.Scope != Whole && v.Scope != VerdictOnly {
		return nil, missing("scope", `say "whole" or "verdict", or leave it out`)
	}
	if err := v.Language.check(); err != nil {
		return nil, err
	}
	if err := checkPlain(v); err != nil {
		return nil, err
	}
	if err := checkWeighing(v.Equipment); err != nil {
		return nil, err
	}
	if p.atmosphere, err = v.Site.Atmosphere(); err != nil {
		return nil, err
	}
	instruments, err := instrumentsOf(v.Instruments)
	if err != nil {
		return nil, err
	}
	if err := checkLog(v); err != nil {
		return nil, err
	}
	if err := checkChecks(v.Checks); err != nil {
		return nil, err
	}
	p.readings = v.Readings
	if err := prepareReadings(&p.readings, "readings", instruments); err != nil {
		return nil, err
	}
	p.log = slices.Clone(v.Log)
	for i := range p.log {
		if err := prepareReadings(&p.log[i].Readings, fmt.Sprintf("log[%d]", i), instruments); err != nil {
			return nil, err
		}
	}
	return p, nil
}

func prepareReadings(r *Readings, path string, in Instruments) error {
	for _, f := range readingFields {
		if err := f.prepare(r, path, in); err != nil {
			return err
		}
	}
	return nil
}

func missing(field, advice string) error {
	return &VisitError{Field: field, Problem: "missing; " + advice}
}

// checkPlain checks the values of a visit that are not readings.
func checkPlain(v Visit) error {
	l, e := v.Equipment.Label, v.Equipment
	for _, c := range []struct {
		field    string
		value    float64
		min, max float64
		shown    fmt.Stringer
		low, top fmt.Stringer
	}{
		limit("equipment.nominalCapacity", e.NominalCapacity, quantity.Watts(500), quantity.Tons(200)),
		limit("equipment.label.charge", l.Charge, quantity.Grams(50), quantity.Kilograms(500)),
		limit("equipment.label.tolerance", l.Tolerance, quantity.KelvinDelta(0.1), quantity.KelvinDelta(15)),
		limit("equipment.label.factoryLineSet", l.FactoryLineSet, 0, quantity.Meters(100)),
		limit("equipment.label.ratedAirflow", l.RatedAirflow, quantity.CFM(50), quantity.CFM(100000)),
		limit("equipment.label.maxExternalStatic", l.MaxExternalStatic, 0, quantity.PascalsStatic(2500)),
		limit("equipment.label.ratedLoadCurrent", l.RatedLoadCurrent, quantity.Amperes(0.5), quantity.Amperes(1000)),
		limit("equipment.lineSet.length", e.LineSet.Length, 0, quantity.Meters(150)),
		limit("equipment.lineSet.liquidDiameter", e.LineSet.LiquidDiameter, quantity.Millimeters(3), quantity.Millimeters(110)),
		limitStated("equipment.label.subcooling", l.Subcooling, 0, quantity.KelvinDelta(30)),
		limitStated("equipment.label.superheat", l.Superheat, 0, quantity.KelvinDelta(40)),
		limitStated("equipment.label.approach", l.Approach, 0, quantity.KelvinDelta(30)),
	} {
		if c.value == 0 {
			continue
		}
		if !(c.value >= c.min && c.value <= c.max) {
			return outOfRange(c.field, c.shown, c.low, c.top, "check the figure and its unit, or leave it out")
		}
	}
	const widest = 30 // K, more than any label figure
	for _, c := range []struct {
		field string
		of    *quantity.Uncertain[quantity.TemperatureDelta]
	}{{"subcooling", l.Subcooling}, {"superheat", l.Superheat}, {"approach", l.Approach}} {
		if c.of != nil && !(c.of.Std >= 0 && c.of.Std <= widest) {
			return &VisitError{Field: "equipment.label." + c.field, Problem: "its uncertainty is negative, not a number, or wider than all that can be read; give one standard deviation, or none"}
		}
	}
	if m := v.Conditions.Mode; m < 0 || m > Refrigeration {
		return missing("conditions.mode", `say "cooling", "heating" or "refrigeration", or leave it out`)
	}
	if v.Conditions.Running < 0 {
		return &VisitError{Field: "conditions.running", Problem: "is negative; give the time since the machine last started, or leave it out"}
	}
	if v.Conditions.ReadAt < 0 {
		return &VisitError{Field: "conditions.readAt", Problem: "is negative; count from the start of the visit, as the log and the moves do"}
	}
	if len(v.Title) > 200 {
		return &VisitError{Field: "title", Problem: "longer than 200 bytes; put the rest into notes"}
	}
	return nil
}

type plainLimit = struct {
	field    string
	value    float64
	min, max float64
	shown    fmt.Stringer
	low, top fmt.Stringer
}

func limit[T quantity.Quantity](field string, v, low, top T) plainLimit {
	return plainLimit{field, float64(v), float64(low), float64(top), v, low, top}
}

func limitStated[T quantity.Quantity](field string, u *quantity.Uncertain[T], low, top T) plainLimit {
	if u == nil {
		return plainLimit{}
	}
	return limit(field, u.Value, low, top)
}

// Atmosphere is the pressure that gauges at the site count from: that of the
// barometer, else of the standard atmosphere at the elevation, else of sea level.
// The uncertainty is that of the barometer, of the weather, or of not knowing
// (common practice, no source). The error is a *VisitError.
func (s Site) Atmosphere() (AtmosphereUsed, error) {
	switch {
	case s.Barometer != nil:
		p := *s.Barometer
		if !(p >= quantity.Kilopascals(50) && p <= quantity.Kilopascals(110)) {
			return AtmosphereUsed{}, outOfRange("site.barometer", p, quantity.Kilopascals(50), quantity.Kilopascals(110), "give the pressure as read at the site itself, not that reduced to sea level")
		}
		return AtmosphereUsed{p.PlusMinus(quantity.Pascals(200)), FromBarometer}, nil
	case s.Elevation != nil:
		z := *s.Elevation
		if !(z >= quantity.Meters(-450) && z <= quantity.Meters(5500)) {
			return AtmosphereUsed{}, outOfRange("site.elevation", z, quantity.Meters(-450), quantity.Meters(5500), "give the height of the site above sea level, and check its unit")
		}
		return AtmosphereUsed{quantity.AtmosphereAt(z).PlusMinus(quantity.Pascals(800)), FromElevation}, nil
	}
	return AtmosphereUsed{quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(1500)), SeaLevelAssumed}, nil
}

func instrumentsOf(given Instruments) (Instruments, error) {
	out := DefaultInstruments()
	if given.Gauge != 0 {
		if !(given.Gauge > 0 && given.Gauge <= quantity.PSIG(50)) {
			return out, outOfRange("instruments.gauge", given.Gauge, quantity.PSIG(0), quantity.PSIG(50), "it is the standard uncertainty, about half of the maker's accuracy")
		}
		out.Gauge = given.Gauge
	}
	for _, c := range []struct {
		name string
		from quantity.TemperatureDelta
		to   *quantity.TemperatureDelta
	}{
		{"clamp", given.Clamp, &out.Clamp},
		{"thermometer", given.Thermometer, &out.Thermometer},
		{"wetBulb", given.WetBulb, &out.WetBulb},
	} {
		if c.from == 0 {
			continue
		}
		if !(c.from > 0 && c.from <= quantity.KelvinDelta(10)) {
			return out, outOfRange("instruments."+c.name, c.from, quantity.KelvinDelta(0), quantity.KelvinDelta(10), "it is the standard uncertainty, about half of the maker's accuracy")
		}
		*c.to = c.from
	}
	return out, nil
}

func checkLog(v Visit) error {
	for i := range v.Log {
		if v.Log[i].At < 0 {
			return &VisitError{Field: fmt.Sprintf("log[%d].at", i), Problem: "is negative; count from the start of the visit"}
		}
		if i > 0 && v.Log[i].At <= v.Log[i-1].At {
			return &VisitError{Field: fmt.Sprintf("log[%d].at", i), Problem: fmt.Sprintf("%v is not after the entry before it, %v; put the entries in order", v.Log[i].At, v.Log[i-1].At)}
		}
	}
	for i, m := range v.Moves {
		field := fmt.Sprintf("moves[%d]", i)
		switch {
		case (m.Added != 0) == (m.Recovered != 0):
			return &VisitError{Field: field, Problem: "give exactly one of added and recovered"}
		case !(m.Added >= 0 && m.Recovered >= 0 && m.Added+m.Recovered <= quantity.Kilograms(500)):
			return &VisitError{Field: field, Problem: "a mass moved is above 0 and at most 500 kg"}
		case m.At < 0 || i > 0 && m.At < v.Moves[i-1].At:
			return &VisitError{Field: field + ".at", Problem: "is negative or before the move above it; put the moves in order"}
		}
	}
	return nil
}

// outOfRange is the error of a value of the visit that cannot be; it is also a
// *quantity.RangeError.
func outOfRange(field string, value, low, top fmt.Stringer, advice string) error {
	err := &quantity.RangeError{Quantity: field, Value: value, Min: low, Max: top, Advice: advice}
	return &VisitError{Field: field, Problem: strings.TrimPrefix(err.Error(), field+": "), Err: err}
}

// rangeProblem names the field that another package refused.
func rangeProblem(field string, err error) error {
	return &VisitError{Field: field, Problem: err.Error(), Err: err}
}
