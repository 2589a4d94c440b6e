package work

import (
	"encoding"
	"fmt"
	"maps"
	"slices"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/airside/drain"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// longestList bounds what a list of an order may hold, longestText a text.
const (
	longestList = 500
	longestText = 2000
	longestWork = 31 * 24 * time.Hour
)

const (
	missing       = satline.FieldMissing
	unknown       = satline.FieldUnknown
	contradictory = satline.FieldContradictory
	outOfRange    = satline.FieldOutOfRange
)

// Validate lists every field to mend before the order can be judged, with its path; nil where
// there is none. What only shows as a part is judged is looked at once the fields themselves are
// right. What a task still misses is no error: Judge tells it.
func (o Order) Validate() []*Problem {
	if problems := o.checked(); len(problems) > 0 {
		return problems
	}
	j := judgeOf(&o)
	j.parts()
	return j.problems
}

func (o *Order) checked() []*Problem {
	var c checker
	if len(o.Tasks) == 0 {
		c.add(missing, "tasks", `missing; say what the job is for, as in ["maintain"]`)
	}
	for i, t := range o.Tasks {
		field := fmt.Sprintf("tasks[%d]", i)
		switch _, err := t.MarshalText(); {
		case err != nil || t == 0:
			c.add(unknown, field, "is none of the tasks there are: %v", taskNames[1:])
		case slices.Contains(o.Tasks[:i], t):
			c.add(contradictory, field, "%q is given twice; keep one", t)
		}
	}
	for _, w := range []struct {
		field string
		of    encoding.TextMarshaler
	}{
		{"units", o.Units}, {"complaint", o.Complaint}, {"machine.ports", o.Machine.Ports},
		{"machine.use", o.Machine.Use},
	} {
		if _, err := w.of.MarshalText(); err != nil {
			c.because(unknown, w.field, err)
		}
	}
	if !o.Start.IsZero() && !o.End.IsZero() && o.End.Before(o.Start) {
		c.add(contradictory, "end", "is before the start; see date and time")
	}
	for i, at := range []time.Time{o.Start, o.End} {
		if y := at.Year(); !at.IsZero() && (y < 1950 || y > 2200) {
			c.add(outOfRange, []string{"start", "end"}[i],
				"the year %d cannot be; write the date as in \"2026-07-14\"", y)
		}
	}
	c.machine(o)
	c.visits(o)
	c.parts(o)
	c.texts(o)
	return c
}

func (c *checker) machine(o *Order) {
	m := &o.Machine
	if m.Equipment.Refrigerant == "" {
		if len(o.Tasks) != 1 || o.Tasks[0] != CheckCylinder {
			c.add(missing, "machine.equipment.refrigerant",
				`missing; name the refrigerant on the unit's label, as in "R-410A"`)
		}
	} else if _, err := refrigerant.Lookup(m.Equipment.Refrigerant); err != nil {
		c.because(unknown, "machine.equipment.refrigerant", err)
	}
	if _, err := m.Site.Atmosphere(); err != nil {
		c.because(outOfRange, "machine.site", err)
	}
	const advice = "read it on the label, or leave it out"
	within(c, "machine.lowSideDesign", m.LowSideDesign, quantity.PSIG(20), quantity.PSIG(2500),
		advice)
	within(c, "machine.fullCharge", m.FullCharge, quantity.Grams(50), quantity.Kilograms(10000),
		advice)
	within(c, "machine.equipment.label.charge", m.Equipment.Label.Charge, quantity.Grams(20),
		quantity.Kilograms(500), advice)
}

// visits are checked as they will be assessed, each under its own path.
func (c *checker) visits(o *Order) {
	for _, v := range []struct {
		name string
		of   *satline.Visit
	}{{"before", o.Before}, {"after", o.After}} {
		if v.of == nil {
			continue
		}
		for _, p := range o.visit(v.of).Validate() {
			field := v.name
			if p.Field != "" {
				field += "." + p.Field
			}
			*c = append(*c, &Problem{Field: field, Kind: p.Kind, Problem: p.Problem, Err: p})
		}
	}
}

func (c *checker) parts(o *Order) {
	if r := o.Recovery; r != nil {
		c.readings("recovery.readings", r.Readings, true, false)
	}
	for i, n := range o.Nitrogen {
		c.readings(fmt.Sprintf("nitrogen[%d].readings", i), n.Readings, true, false)
	}
	for i, e := range o.Evacuations {
		c.readings(fmt.Sprintf("evacuations[%d].decay", i), e.Decay, false, true)
		const advice = "it is the maker's limit, an absolute pressure, or left out"
		field := fmt.Sprintf("evacuations[%d].maker", i)
		within(c, field+".start", e.Maker.Start, quantity.Microns(10), quantity.Microns(5000),
			advice)
		within(c, field+".level", e.Maker.Level, quantity.Microns(10), quantity.Microns(5000),
			advice)
	}
	c.joints(o)
	for i, l := range o.Leaks {
		if l.Where == "" {
			c.add(missing, fmt.Sprintf("leaks[%d].where", i), "missing; say at which joint or part")
		}
	}
	c.cylinders(o)
	c.checklist(o)
	for i, p := range o.Parts {
		if p.Name == "" {
			c.add(missing, fmt.Sprintf("parts[%d].name", i), "missing; name the part")
		}
	}
	for i, r := range o.Water {
		if _, err := drain.Judge(r); err != nil {
			c.because(outOfRange, fmt.Sprintf("water[%d]", i), err)
		}
	}
	if o.Air != nil {
		_, err := airside.JudgeSurvey(o.survey())
		c.because(outOfRange, "air", err)
	}
	lengths := map[string]int{
		"leaks": len(o.Leaks), "nitrogen": len(o.Nitrogen), "joints": len(o.Joints),
		"evacuations": len(o.Evacuations), "cylinders": len(o.Cylinders), "parts": len(o.Parts),
		"water": len(o.Water),
		"done":  len(o.Done), "left": len(o.Left), "tasks": len(o.Tasks),
	}
	for _, name := range slices.Sorted(maps.Keys(lengths)) {
		if n := lengths[name]; n > longestList {
			c.add(outOfRange, name, "has %d entries; at most %d", n, longestList)
		}
	}
}

func (c *checker) joints(o *Order) {
	for i, j := range o.Joints {
		field := fmt.Sprintf("joints[%d]", i)
		if !(j.Applied > 0 && j.Applied <= quantity.PSIG(2500)) {
			c.add(missing, field+".applied",
				"missing, or out of range: the gauge pressure in the joint while it was tested")
		}
		if !(j.PerYear > 0 && j.PerYear < quantity.Kilograms(1000)) {
			c.add(missing, field+".perYear",
				"missing, or out of range: the smallest leak in a year that the detector's maker "+
					`states, as in "5 g"`)
		}
	}
}

func (c *checker) checklist(o *Order) {
	for i, k := range o.Checklist {
		field := fmt.Sprintf("checklist[%d].check", i)
		if !k.Check.known() {
			c.add(unknown, field, "%.40q is none of the checks there are", string(k.Check))
		} else if slices.ContainsFunc(o.Checklist[:i],
			func(b Checked) bool { return b.Check == k.Check }) {
			c.add(contradictory, field, "%q is answered twice; keep the later answer",
				string(k.Check))
		}
	}
}

// readings checks one series: in order of time, each with what the part reads.
func (c *checker) readings(field string, list []Reading, pressure, vacuum bool) {
	if len(list) == 0 {
		c.add(missing, field, "missing; give at least one reading with its time")
	}
	for i, r := range list {
		at := fmt.Sprintf("%s[%d]", field, i)
		switch {
		case r.At < 0 || r.At > longestWork:
			c.add(outOfRange, at+".at",
				"%v is out of range 0 to %v; count from the start of this part", r.At, longestWork)
		case i > 0 && r.At <= list[i-1].At:
			c.add(
				contradictory, at+".at",
				"%v is not after the reading before it, %v; put the readings in order", r.At,
				list[i-1].At,
			)
		}
		if pressure && r.Pressure == nil {
			c.add(missing, at+".pressure", "missing; the gauge pressure in the circuit")
		}
		if vacuum && r.Vacuum == nil {
			c.add(missing, at+".vacuum", `missing; the vacuum gauge, as in "350 micron"`)
		}
		measured(c, at+".pressure", r.Pressure, quantity.PSIG(-14.7), quantity.PSIG(2500))
		measured(c, at+".gas", r.Gas, quantity.Fahrenheit(-40), quantity.Fahrenheit(170))
		if v := r.Vacuum; v != nil && !(*v >= 0 && *v <= quantity.StandardAtmosphere*1.1) {
			c.because(outOfRange, at+".vacuum", &quantity.RangeError{
				Quantity: "it", Value: *v, Min: quantity.Pressure(0),
				Max:    quantity.StandardAtmosphere * 1.1,
				Advice: "it is absolute, as microns of mercury",
			})
		}
	}
}

func (c *checker) cylinders(o *Order) {
	for i, k := range o.Cylinders {
		field := fmt.Sprintf("cylinders[%d]", i)
		if k.Name == "" {
			c.add(missing, field+".name",
				"missing; name the cylinder by what is stamped or written on it")
		}
		if _, err := k.Kind.MarshalText(); err != nil {
			c.because(unknown, field+".kind", err)
		}
		if k.Refrigerant != "" {
			if _, err := refrigerant.Lookup(k.Refrigerant); err != nil {
				c.because(unknown, field+".refrigerant", err)
			}
		}
		const advice = "it is what the scale showed, cylinder and all"
		most := quantity.Kilograms(5000)
		within(c, field+".before", k.Before, 0, most, advice)
		within(c, field+".after", k.After, 0, most, advice)
		within(c, field+".waterCapacity", k.WaterCapacity, quantity.Kilograms(0.1), most,
			"read WC on the collar")
		within(c, field+".tare", k.Tare, 0, most, "read TW on the collar")
		within(c, field+".service", k.Service, quantity.PSIG(50), quantity.PSIG(6000),
			"read it behind DOT on the collar")
		for _, w := range []struct {
			name string
			of   quantity.Mass
		}{{"before", k.Before}, {"after", k.After}} {
			if k.Tare > 0 && w.of > 0 && w.of < k.Tare {
				c.add(
					contradictory, field+"."+w.name,
					"%v is less than the empty cylinder, %v: "+
						"zero the scale and read the tare (TW) again",
					w.of, k.Tare,
				)
			}
		}
	}
}

func (c *checker) texts(o *Order) {
	texts := map[string]string{
		"title": o.Title, "number": o.Number, "customer": o.Customer, "address": o.Address,
		"technician.name": o.Technician.Name, "technician.license": o.Technician.License,
		"machine.name": o.Machine.Name, "machine.make": o.Machine.Make,
		"machine.model": o.Machine.Model, "machine.serial": o.Machine.Serial, "notes": o.Notes,
	}
	for _, field := range slices.Sorted(maps.Keys(texts)) {
		if n := len(texts[field]); n > longestText {
			c.add(outOfRange, field, "has %d bytes; at most %d", n, longestText)
		}
	}
}

// visit is one of the two with what the order says of the machine, where it does not itself.
func (o *Order) visit(v *satline.Visit) satline.Visit {
	out := *v
	if out.Equipment.Refrigerant == "" && out.Equipment.Metering == 0 {
		out.Equipment = o.Machine.Equipment
	}
	if out.Site.Elevation == nil && out.Site.Barometer == nil {
		out.Site = o.Machine.Site
	}
	if out.Language == "" {
		out.Language = o.Language
	}
	if out.Complaint == 0 {
		out.Complaint = o.Complaint
	}
	out.Units = o.Units
	return out
}
