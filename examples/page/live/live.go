// Package live answers the page: what the technician has typed so far goes in,
// and everything there is to show comes out.
package live

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/strictjson"
)

// An Answer is what the page shows. Sentences and values are in the units of
// the visit.
type Answer struct {
	// Errors says what has to be mended, by the path of the field. The
	// assessment is made without those fields.
	Errors map[string]string `json:"errors"`
	// Problem says why there is no assessment at all.
	Problem string `json:"problem,omitempty"`

	Assessment *satline.Assessment `json:"assessment,omitempty"`
	// Values are what follows from the readings, ready to show.
	Values []Shown `json:"values,omitempty"`
	// Readings as they are judged, ready to show, by their field.
	Readings map[string]Shown `json:"readings,omitempty"`
	// Target is that of the charging method with its band, ready to show.
	Target string  `json:"target,omitempty"`
	Band   *Band   `json:"band,omitempty"`
	Charts *Charts `json:"charts,omitempty"`
}

// Shown is a value ready to show.
type Shown struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// A Band is a measured value against its target, as bare numbers to draw.
type Band struct {
	Of       string  `json:"of"`
	Unit     string  `json:"unit"`
	Text     string  `json:"text"` // Measured as the headline has it
	Measured float64 `json:"measured"`
	Std      float64 `json:"std"`
	Target   float64 `json:"target"`
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
}

// maxMended bounds how many fields of one visit may be left out as wrong.
const maxMended = 60

// Assess answers for a visit as the page has it: every value is text as typed,
// and any of them may be wrong.
func Assess(visit []byte) Answer {
	out := Answer{Errors: map[string]string{}}
	var doc map[string]any
	if err := json.Unmarshal(visit, &doc); err != nil {
		out.Problem = "the visit cannot be read: " + err.Error()
		return out
	}
	for range maxMended {
		v, a, err := try(doc)
		if err == nil {
			out.fill(v, a)
			return out
		}
		path, problem := fault(err)
		out.Errors[path] = problem
		if path == "" || !remove(doc, strings.Split(path, ".")) {
			out.Problem = problem
			return out
		}
	}
	out.Problem = "too much has to be mended first"
	return out
}

func try(doc map[string]any) (satline.Visit, satline.Assessment, error) {
	text, err := json.Marshal(doc)
	if err != nil {
		return satline.Visit{}, satline.Assessment{}, err
	}
	v, err := satline.DecodeVisit(text)
	if err != nil {
		return v, satline.Assessment{}, err
	}
	a, err := satline.Assess(v)
	return v, a, err
}

// fault is the field that an error is about, and what is wrong with it.
func fault(err error) (path, problem string) {
	var at *strictjson.Error
	if errors.As(err, &at) {
		return at.Path, at.Problem
	}
	var visit *satline.VisitError
	if errors.As(err, &visit) {
		return visit.Field, visit.Problem
	}
	return "", err.Error()
}

// remove takes the field at a path out of a document, or the whole of an entry
// that is nothing without it; false where it is not there.
func remove(at any, path []string) bool {
	name, index := path[0], -1
	if open := strings.IndexByte(name, '['); open >= 0 {
		if _, err := fmt.Sscanf(name[open:], "[%d]", &index); err != nil {
			return false
		}
		name = name[:open]
	}
	object, ok := at.(map[string]any)
	if !ok {
		return false
	}
	value, ok := object[name]
	if !ok {
		return false
	}
	if index < 0 {
		if len(path) == 1 {
			delete(object, name)
			return true
		}
		return remove(value, path[1:])
	}
	list, ok := value.([]any)
	if !ok || index >= len(list) {
		return false
	}
	if len(path) == 1 || slices.Contains([]string{"at", "look", "found"}, path[1]) {
		object[name] = append(list[:index:index], list[index+1:]...)
		return true
	}
	return remove(list[index], path[1:])
}

func (out *Answer) fill(v satline.Visit, a satline.Assessment) {
	out.Assessment = &a
	sys := v.Units
	for _, x := range a.Derived.Values() {
		out.Values = append(
			out.Values,
			Shown{satline.Word("derived."+x.Name, v.Language), satline.Show(x, v.Language, sys)},
		)
	}
	out.Readings = map[string]Shown{}
	for _, r := range a.Readings {
		out.Readings[r.Field] = Shown{
			satline.Word("reading."+r.Field, v.Language),
			satline.Show(r.Value, v.Language, sys),
		}
	}
	if c := a.Charge.Reading; c != nil && c.Target != nil {
		degrees := quantity.UnitOf[quantity.TemperatureDelta](sys)
		target, tolerance := degrees.Number(c.Target.Value), degrees.Number(c.Tolerance)
		out.Band = &Band{
			Of: c.Method.String(), Unit: degrees.Symbol(), Text: c.Measured.Value.Format(sys),
			Measured: degrees.Number(c.Measured.Value),
			Std:      degrees.Number(quantity.TemperatureDelta(c.Measured.Std)),
			Target:   target, Low: target - tolerance, High: target + tolerance,
		}
		out.Target = fmt.Sprintf("%s ± %s", c.Target.Value.Format(sys), c.Tolerance.Format(sys))
	}
	if fluid, err := refrigerant.Lookup(v.Equipment.Refrigerant); err == nil {
		out.Charts = charts(v, a, fluid)
		if out.Charts.Trend != nil && out.Band != nil && out.Band.Of == out.Charts.Trend.Of {
			out.Charts.Trend.Band = out.Band
		}
	}
}

// A Fluid is a choice of refrigerant on the page.
type Fluid struct {
	Designation string `json:"designation"`
	Note        string `json:"note"`
}

// Fluids lists every refrigerant, with what to beware of.
func Fluids() []Fluid {
	var out []Fluid
	for _, r := range refrigerant.All() {
		note := string(r.SafetyGroup())
		if r.Flammable() {
			note += ", flammable"
		}
		out = append(out, Fluid{r.Designation(), note})
	}
	return out
}

// Looks lists every look in both systems of units, between which the page changes.
func Looks() map[quantity.System][]satline.Look {
	out := map[quantity.System][]satline.Look{}
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		out[sys] = satline.Looks(satline.English, sys)
	}
	return out
}

// methodOf is the value that a visit's charge shows by.
func methodOf(v satline.Visit) charge.Method {
	if v.Equipment.Metering.Fixed() {
		return charge.Superheat
	}
	return charge.Subcooling
}
