// Package live answers the page: what the technician has typed so far goes in,
// and everything there is to show comes out.
package live

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
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
	// InBar are the paths of pressures of which it is asked whether they are in bar.
	InBar []string `json:"inBar,omitempty"`

	// Loop is what stands on the screen of the loop; the rest explains it, and is left out in
	// the scope of a verdict.
	Loop       *Loop               `json:"loop,omitempty"`
	Trend      *Trend              `json:"trend,omitempty"`
	Assessment *satline.Assessment `json:"assessment,omitempty"`
	// Values are what follows from the readings, ready to show.
	Values []Shown `json:"values,omitempty"`
	// Readings as they are judged, ready to show, by their field.
	Readings map[string]Shown `json:"readings,omitempty"`
	Band     *Band            `json:"band,omitempty"`
	Charts   *Charts          `json:"charts,omitempty"`
}

// Shown is a value ready to show.
type Shown struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// A Band is a measured value against its target, as bare numbers to draw.
type Band struct {
	Method   string  `json:"method"`
	Of       string  `json:"of"` // the method in words
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
	v, a, err := read(visit)
	if err == nil {
		out.fill(v, a)
		out.ask(readInBar(v))
		return out
	}
	var doc map[string]any
	if err := json.Unmarshal(visit, &doc); err != nil {
		out.Problem = "the visit cannot be read: " + err.Error()
		return out
	}
	inBar := map[string]string{}
	for range maxMended {
		v, a, err := try(doc)
		maps.Copy(inBar, readInBar(v))
		if err == nil {
			out.fill(v, a)
			out.ask(inBar)
			return out
		}
		path, problem := fault(err)
		if !spoken(doc) {
			problem = book{languageOf(doc)}.problem(err, systemOf(doc))
		}
		// What is left out is then missing: what was wrong with it says more.
		if out.Errors[path] == "" {
			out.Errors[path] = problem
		}
		if !leaveOut(doc, path) {
			out.Problem = out.Errors[path]
			return out
		}
	}
	out.Problem = "too much has to be mended first"
	return out
}

// ask asks at fields whether bar was meant, in place of what else there is to say of them.
func (out *Answer) ask(questions map[string]string) {
	out.InBar = slices.Collect(maps.Keys(questions))
	for path, question := range questions {
		if out.Errors[path] != "" {
			out.Errors[path] = question
		} else {
			out.Loop.Doubts[path] = question
		}
	}
}

// reading is the visit without what is wrong in it, for what needs only a part of it.
func reading(visit []byte) (satline.Visit, error) {
	var doc map[string]any
	if err := json.Unmarshal(visit, &doc); err != nil {
		return satline.Visit{}, err
	}
	for range maxMended {
		text, err := json.Marshal(doc)
		if err != nil {
			return satline.Visit{}, err
		}
		v, err := satline.DecodeVisit(text)
		if err == nil {
			return v, nil
		}
		if path, _ := fault(err); !leaveOut(doc, path) {
			return satline.Visit{Language: languageOf(doc), Units: systemOf(doc)}, err
		}
	}
	return satline.Visit{}, nil
}

// spoken reports whether the library's own words of errors are in the language of the page.
func spoken(doc map[string]any) bool {
	return languageOf(doc) == "" || languageOf(doc) == satline.English
}

func languageOf(doc map[string]any) satline.Language {
	text, _ := doc["language"].(string)
	return satline.Language(text)
}

func systemOf(doc map[string]any) (sys quantity.System) {
	if text, ok := doc["units"].(string); ok {
		if sys.UnmarshalText([]byte(text)) != nil {
			return quantity.IP
		}
	}
	return sys
}

func try(doc map[string]any) (satline.Visit, satline.Assessment, error) {
	text, err := json.Marshal(doc)
	if err != nil {
		return satline.Visit{}, satline.Assessment{}, err
	}
	return read(text)
}

func read(visit []byte) (satline.Visit, satline.Assessment, error) {
	v, err := satline.DecodeVisit(visit)
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

// leaveOut takes what is wrong out of a visit: the field at a path; where that is missing, the
// row of a list, or the rules of a firm, that are nothing without it.
func leaveOut(doc map[string]any, path string) bool {
	if path == "" || remove(doc, strings.Split(path, ".")) {
		return path != ""
	}
	whole, _, _ := strings.Cut(path, ".")
	if end := strings.LastIndexByte(path, ']'); end >= 0 {
		whole = path[:end+1]
	} else if whole != "house" {
		return false
	}
	return remove(doc, strings.Split(whole, "."))
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
	out.Loop = loopOf(v, &a)
	out.Band = bandOf(v, &a)
	fluid, err := refrigerant.Lookup(v.Equipment.Refrigerant)
	if err == nil {
		out.Trend = trend(v, a, fluid, a.Atmosphere.Pressure.Value)
		if out.Trend != nil && out.Band != nil && out.Band.Method == out.Trend.Method {
			out.Trend.Band = out.Band
		}
	}
	if v.Scope == satline.VerdictOnly {
		return
	}
	out.Assessment = &a
	if err == nil {
		out.Charts = charts(v, a, fluid)
	}
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
			satline.Word("reading."+r.Field, v.Language), satline.Show(r.Value, v.Language, sys),
		}
	}
}

// bandOf is the value that the charge is judged by, where it has a target.
func bandOf(v satline.Visit, a *satline.Assessment) *Band {
	c := a.Charge.Reading
	if c == nil || c.Target == nil {
		return nil
	}
	degrees := quantity.UnitOf[quantity.TemperatureDelta](v.Units)
	target, tolerance := degrees.Number(c.Target.Value), degrees.Number(c.Tolerance)
	measured := fact.Amount("measured", c.Measured.Value)
	return &Band{
		Method: c.Method.String(), Of: satline.Word("method."+c.Method.String(), v.Language),
		Unit: degrees.Symbol(), Text: satline.Show(measured, v.Language, v.Units),
		Measured: degrees.Number(c.Measured.Value),
		Std:      degrees.Number(quantity.TemperatureDelta(c.Measured.Std)),
		Target:   target, Low: target - tolerance, High: target + tolerance,
	}
}

// methodOf is the value that a visit's charge shows by.
func methodOf(v satline.Visit) charge.Method {
	if v.Equipment.Metering.Fixed() {
		return charge.Superheat
	}
	return charge.Subcooling
}
