package satline

import (
	"encoding"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// checked is what a visit states, with all that is wrong in it.
func checked(visit Visit) (*prepared, []*VisitError) {
	p := &prepared{visit: visit, readings: visit.Readings}
	v := &p.visit
	var c checker
	e := &v.Equipment
	p.fluid = c.fluid(e.Refrigerant)
	for _, w := range []struct {
		field string
		of    encoding.TextMarshaler
	}{
		{"equipment.metering", e.Metering}, {"units", v.Units}, {"scope", v.Scope},
		{"equipment.arrangement", e.Arrangement}, {"equipment.stages", e.Stages},
		{"equipment.lineSet.device", e.LineSet.Device}, {"conditions.mode", v.Conditions.Mode},
		{"complaint", v.Complaint},
	} {
		if _, err := w.of.MarshalText(); err != nil {
			c.because(FieldUnknown, w.field, err)
		}
	}
	if !v.Language.known() {
		c.add(
			FieldUnknown, "language",
			`is no language tag; write one as in "en" or "es-MX", or leave it out`,
		)
	}
	c.equipment(e)
	c.conditions(v)
	var err error
	if p.atmosphere, err = v.Site.Atmosphere(); err != nil {
		c = append(c, err.(*VisitError))
	}
	c.instruments(&v.Instruments)
	c.house(v.House)
	c.times(v)
	c.checks(v.Checks)
	c.electrical(p)
	c.readings(&v.Readings, func() string { return "readings." })
	for i := range v.Log {
		c.readings(&v.Log[i].Readings, func() string { return fmt.Sprintf("log[%d].", i) })
	}
	return p, c
}

// A checker collects what is wrong in a visit.
type checker []*VisitError

func (c *checker) add(kind ProblemKind, field, problem string, args ...any) {
	*c = append(*c, &VisitError{Field: field, Kind: kind, Problem: fmt.Sprintf(problem, args...)})
}

func (c *checker) because(kind ProblemKind, field string, err error) {
	*c = append(*c, &VisitError{Field: field, Kind: kind, Problem: err.Error(), Err: err})
}

func (c *checker) beyond(field string, v, low, top fmt.Stringer, advice string) {
	*c = append(*c, outOfRange(field, v, low, top, advice))
}

func (c *checker) missing(field, advice string) { *c = append(*c, missing(field, advice)) }

// oneOf checks a code against those that are known.
func (c *checker) oneOf(field, known, code string, codes []string) bool {
	ok := slices.Contains(codes, code)
	if !ok {
		c.add(
			FieldUnknown, field, "%.40q is none of %s; give one of %s", code, known,
			strings.Join(codes, ", "),
		)
	}
	return ok
}

// within checks a value that is stated.
func within[T quantity.Quantity](c *checker, field string, v, low, top T, advice string) {
	if v != 0 && !(v >= low && v <= top) {
		c.beyond(field, v, low, top, advice)
	}
}

// fluid is the refrigerant by its name on the label.
func (c *checker) fluid(name string) *refrigerant.Refrigerant {
	if name == "" {
		c.missing("equipment.refrigerant", `name the refrigerant on the unit's label, as in "R-410A"`)
		return nil
	}
	fluid, err := refrigerant.Lookup(name)
	if err != nil {
		c.because(FieldUnknown, "equipment.refrigerant", err)
	}
	return fluid
}

func (c *checker) equipment(e *Equipment) {
	const label, advice = "equipment.label.", "check the figure and its unit, or leave it out"
	l := &e.Label
	within(
		c, "equipment.nominalCapacity", e.NominalCapacity, quantity.Watts(500), quantity.Tons(200),
		advice,
	)
	if t := e.ColdRoom.Setpoint; t != nil && !(*t >= coldroom.Coldest && *t <= coldroom.Warmest) {
		c.beyond("equipment.coldRoom.setpoint", *t, coldroom.Coldest, coldroom.Warmest, advice)
	}
	within(
		c, "equipment.coldRoom.load", e.ColdRoom.Load, quantity.Watts(50), quantity.Tons(200),
		advice,
	)
	within(c, label+"charge", l.Charge, quantity.Grams(50), quantity.Kilograms(500), advice)
	within(
		c, label+"tolerance", l.Tolerance, quantity.KelvinDelta(0.1),
		quantity.KelvinDelta(15), advice,
	)
	within(c, label+"factoryLineSet", l.FactoryLineSet, 0, quantity.Meters(100), advice)
	within(c, label+"ratedAirflow", l.RatedAirflow, quantity.CFM(50), quantity.CFM(100000), advice)
	within(
		c, label+"maxExternalStatic", l.MaxExternalStatic, 0,
		quantity.PascalsStatic(2500), advice,
	)
	within(
		c, label+"ratedLoadCurrent", l.RatedLoadCurrent, quantity.Amperes(0.5),
		quantity.Amperes(1000), advice,
	)
	const finest, widest = 0.3, 6 // mm, of a fixed restrictor
	within(
		c, "equipment.restrictor", e.Restrictor, quantity.Millimeters(finest),
		quantity.Millimeters(widest), advice,
	)
	within(
		c, label+"restrictor", l.Restrictor, quantity.Millimeters(finest),
		quantity.Millimeters(widest), advice,
	)
	within(c, "equipment.lineSet.length", e.LineSet.Length, 0, quantity.Meters(150), advice)
	within(
		c, "equipment.lineSet.liquidDiameter", e.LineSet.LiquidDiameter, quantity.Millimeters(3),
		quantity.Millimeters(110), advice,
	)
	c.targets(label, l.Superheat, l.Subcooling, l.Approach)
	if a := l.LineAdder; a != nil {
		const advice = `give a mass and the length of liquid line it is for, ` +
			`as {"mass": "0.6 oz", "per": "1 ft"}`
		within(c, label+"lineAdder.mass", a.Mass, 0, quantity.Kilograms(10), advice)
		if a.Per == 0 {
			c.missing(label+"lineAdder.per", advice)
		}
		within(c, label+"lineAdder.per", a.Per, 0, quantity.Meters(100), advice)
	}
	c.number(label+"year", float64(l.Year), 1950, 2100, advice)
	c.number(label+"seer", l.SEER, 5, 45, advice)
	c.number(label+"seer2", l.SEER2, 5, 45, advice)
	for i, n := range l.Normal {
		c.normal(fmt.Sprintf("equipment.label.normal[%d].", i), &n)
	}
	for i, a := range e.Accessories {
		const advice = "give the mass that the maker of the part states, or leave the part out"
		field := fmt.Sprintf("equipment.accessories[%d].mass", i)
		if a.Mass == 0 {
			c.missing(field, advice)
		}
		within(c, field, a.Mass, 0, quantity.Kilograms(100), advice)
	}
}

// targets checks those of a label or a house.
func (c *checker) targets(of string, superheat, subcooling, approach *deltaReading) {
	for _, t := range []struct {
		field string
		of    *deltaReading
		top   quantity.TemperatureDelta
	}{
		{"subcooling", subcooling, quantity.KelvinDelta(30)},
		{"superheat", superheat, quantity.KelvinDelta(40)},
		{"approach", approach, quantity.KelvinDelta(30)},
	} {
		if t.of != nil {
			within(
				c, of+t.field, t.of.Value, 0, t.top,
				"check the figure and its unit, or leave it out",
			)
			within(
				c, of+t.field, quantity.TemperatureDelta(t.of.Std), 0, quantity.KelvinDelta(30),
				adviceOnStd,
			)
		}
	}
}

// house checks the rules of a firm.
func (c *checker) house(h *House) {
	if h == nil {
		return
	}
	c.words("house.name", h.Name)
	c.targets("house.", h.Superheat, h.Subcooling, h.Approach)
	within(
		c, "house.tolerance", h.Tolerance, quantity.KelvinDelta(0.1), quantity.KelvinDelta(15),
		"give half the width of the band",
	)
	if n := len(h.Holds) + len(h.Faults); n > mostHouseRules {
		const advice = "give those that matter to this machine"
		c.beyond("house", quantity.Number(n), nil, quantity.Number(mostHouseRules), advice)
	}
	for i, x := range h.Holds {
		c.words(fmt.Sprintf("house.holds[%d].rule", i), x.Rule)
		for j, m := range x.Methods {
			if _, err := m.MarshalText(); err != nil {
				c.because(FieldUnknown, fmt.Sprintf("house.holds[%d].methods[%d]", i, j), err)
			}
		}
	}
	var codes []string
	for _, f := range diagnose.Library() {
		codes = append(codes, string(f.Code))
	}
	for i, f := range h.Faults {
		field := fmt.Sprintf("house.faults[%d]", i)
		c.words(field+".name", f.Name)
		if slices.Contains(codes, f.Name) {
			c.add(
				FieldContradictory, field+".name",
				"%q is a fault that is known; give yours another name", f.Name,
			)
		}
		c.oneOf(field+".like", "the faults that are known", f.Like, codes)
		if f.Share == 0 {
			c.missing(field+".share", adviceOnShare)
		}
		c.number(field+".share", f.Share, 0, 100, adviceOnShare)
	}
}

const (
	mostHouseRules   = 50
	longestHouseText = 80
	adviceOnShare    = "say how often it is met beside the fault that it is like: 1 is as often"
)

func (c *checker) number(field string, v, low, top float64, advice string) {
	if v != 0 && !(v >= low && v <= top) {
		c.beyond(field, quantity.Number(v), quantity.Number(low), quantity.Number(top), advice)
	}
}

// words checks a text that stands in sentences.
func (c *checker) words(field, text string) {
	switch {
	case strings.TrimSpace(text) == "":
		c.missing(field, "say it in a few words")
	case len(text) > longestHouseText:
		c.beyond(field, bytesLong(len(text)), nil, bytesLong(longestHouseText), "say it shorter")
	}
}

func (c *checker) normal(row string, n *NormalPressures) {
	const advice = "copy the row as the maker prints it"
	if n.Suction == 0 && n.Liquid == 0 {
		c.add(FieldMissing, row+"suction", "missing, and so is liquid; "+advice)
	}
	within(c, row+"suction", n.Suction, 0, quantity.PSIG(400), advice)
	within(c, row+"liquid", n.Liquid, 0, quantity.PSIG(700), advice)
	coldest, hottest := quantity.Celsius(-30), quantity.Celsius(60)
	within(c, row+"outdoor", n.Outdoor, coldest, hottest, advice)
	within(c, row+"returnDryBulb", n.ReturnDryBulb, coldest, hottest, advice)
	within(c, row+"returnWetBulb", n.ReturnWetBulb, coldest, hottest, advice)
}

func (c *checker) conditions(v *Visit) {
	c.span(
		"conditions.running", v.Conditions.Running,
		"give the time since the machine last started, or leave it out",
	)
	c.number("conditions.capacityShare", v.Conditions.CapacityShare, 0.1, 1,
		"give the part of full capacity that it ran at, 0.7 for a first stage, or leave it out")
	c.span("conditions.readAt", v.Conditions.ReadAt, adviceOnTime)
	if n := len(v.Title); n > longestTitle {
		c.beyond("title", bytesLong(n), nil, bytesLong(longestTitle), "put the rest into notes")
	}
}

const longestTitle = 200

type bytesLong int

func (n bytesLong) String() string { return fmt.Sprintf("%d bytes", int(n)) }

// span checks a time of the visit.
func (c *checker) span(field string, d time.Duration, advice string) {
	if d < 0 || d > longestVisit {
		c.beyond(field, d, time.Duration(0), longestVisit, advice)
	}
}

const (
	longestVisit = 366 * 24 * time.Hour
	adviceOnTime = "count from the start of the visit, as the log and the moves do"
)

func (c *checker) instruments(in *Instruments) {
	const advice = "it is the standard uncertainty, about half of the maker's accuracy"
	within(c, "instruments.gauge", in.Gauge, 0, quantity.PSIG(50), advice)
	within(c, "instruments.clamp", in.Clamp, 0, quantity.KelvinDelta(10), advice)
	within(c, "instruments.thermometer", in.Thermometer, 0, quantity.KelvinDelta(10), advice)
	within(c, "instruments.wetBulb", in.WetBulb, 0, quantity.KelvinDelta(10), advice)
	for _, x := range []struct {
		field string
		part  float64
	}{
		{"instruments.gaugePart", in.GaugePart}, {"instruments.airflowPart", in.AirflowPart},
		{"instruments.staticPart", in.StaticPart}, {"instruments.powerPart", in.PowerPart},
		{"instruments.currentPart", in.CurrentPart},
	} {
		c.number(x.field, x.part, 0, 0.5, "it is a part of the reading: 0.01 is one per cent")
	}
}

// times checks the log and the moves, which share a clock.
func (c *checker) times(v *Visit) {
	for i := range v.Log {
		at := v.Log[i].At
		switch {
		case at < 0 || at > longestVisit:
			c.span(fmt.Sprintf("log[%d].at", i), at, adviceOnTime)
		case i > 0 && at <= v.Log[i-1].At:
			c.add(
				FieldContradictory, fmt.Sprintf("log[%d].at", i),
				"%v is not after the entry before it, %v; put the entries in order", at,
				v.Log[i-1].At,
			)
		}
	}
	for i, m := range v.Moves {
		field := fmt.Sprintf("moves[%d]", i)
		if both := m.Added != 0; both == (m.Recovered != 0) {
			kind := FieldMissing
			if both {
				kind = FieldContradictory
			}
			c.add(kind, field, "give exactly one of added and recovered")
		}
		within(c, field+".added", m.Added, 0, quantity.Kilograms(500), adviceOnMass)
		within(c, field+".recovered", m.Recovered, 0, quantity.Kilograms(500), adviceOnMass)
		c.span(field+".at", m.At, adviceOnTime)
		if i > 0 && m.At < v.Moves[i-1].At {
			c.add(FieldContradictory, field+".at", "is before the move above it; put them in order")
		}
	}
}

const adviceOnMass = "give the mass that the scale showed, above zero"

func (c *checker) checks(checks []Check) {
	if len(checks) == 0 {
		return
	}
	codes, answered := []string{}, map[string]bool{}
	for _, l := range everyLook() {
		codes = append(codes, l.Code)
	}
	for i, check := range checks {
		field := fmt.Sprintf("checks[%d].look", i)
		if c.oneOf(field, "the looks there are", check.Look, codes) && answered[check.Look] {
			c.add(FieldContradictory, field, "%q is answered twice; keep the later answer", check.Look)
		}
		answered[check.Look] = true
	}
}

// readings checks each of a set; path names it where there is something to say of it.
func (c *checker) readings(r *Readings, path func() string) {
	for i := range readingFields {
		if wrong := readingFields[i].check(r); wrong != nil {
			wrong.Field = path() + wrong.Field
			*c = append(*c, wrong)
		}
	}
}

// electrical judges what the meter showed; what cannot be is a problem of the visit.
func (c *checker) electrical(p *prepared) {
	if p.visit.Electrical == nil {
		return
	}
	report, err := electrical.Judge(*p.visit.Electrical)
	if err == nil {
		p.electrical = &report
		return
	}
	kind := FieldUnknown
	if out := (*quantity.RangeError)(nil); errors.As(err, &out) {
		kind = FieldOutOfRange
	}
	c.because(kind, "electrical", err)
}
