package satline

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

// Every field to mend is listed with its kind and its whole path, and Assess answers with
// the first.
func TestValidateListsEverything(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	if problems := v.Validate(); problems != nil {
		t.Fatal(problems)
	}
	v.Equipment.Refrigerant = "R-999"
	v.Equipment.Metering = 7
	v.Equipment.Arrangement = -1
	v.Equipment.Label.Charge = quantity.Kilograms(math.NaN())
	v.Equipment.Accessories = []charge.Accessory{{Name: "drier"}}
	v.Units, v.Scope, v.Language = 7, 7, "?"
	v.Site.Elevation = new(quantity.Meters(9000))
	v.Log = make([]LogEntry, 31)
	for i := range v.Log {
		v.Log[i].At = time.Duration(i) * time.Minute
	}
	v.Log[20].At = v.Log[19].At
	v.Log[30].SuctionPressure = Measured(quantity.PSIG(9000))
	v.Moves = []Move{{At: time.Minute}, {At: 0, Added: 1, Recovered: 1}}
	v.Checks = []Check{{Look: "elevation"}, {Look: "elevation"}, {Look: "x"}}
	v.Readings.SuctionLine = ReadingOf(
		temperatureReading{Value: quantity.Fahrenheit(52), Std: -1},
	)
	v.Readings.LiquidLine = ReadingOf(
		temperatureReading{Value: quantity.Fahrenheit(92), Std: 30.1},
	)
	v.Readings.LiquidPressure = ReadingOf(
		quantity.PSIG(300).PlusMinus(quantity.PSIG(150)),
	)
	want := map[string]ProblemKind{
		"equipment.refrigerant": FieldUnknown, "equipment.metering": FieldUnknown,
		"equipment.arrangement": FieldUnknown, "equipment.label.charge": FieldOutOfRange,
		"equipment.accessories[0].mass": FieldMissing,
		"units":                         FieldUnknown, "scope": FieldUnknown,
		"language":       FieldUnknown,
		"site.elevation": FieldOutOfRange, "log[20].at": FieldContradictory,
		"log[30].suctionPressure": FieldOutOfRange,
		"moves[0]":                FieldMissing, "moves[1]": FieldContradictory,
		"moves[1].at":    FieldContradictory,
		"checks[1].look": FieldContradictory, "checks[2].look": FieldUnknown,
		"readings.suctionLine": FieldOutOfRange, "readings.liquidLine": FieldOutOfRange,
		"readings.liquidPressure": FieldOutOfRange,
	}
	got := map[string]ProblemKind{}
	for _, p := range v.Validate() {
		got[p.Field] = p.Kind
		if r, ok := errors.AsType[*quantity.RangeError](p); ok != (p.Kind == FieldOutOfRange) ||
			ok && (r.Min == nil || r.Max == nil) {
			t.Errorf("%s: no range, or one too much", p)
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	_, err := Assess(v)
	if first, ok := errors.AsType[*VisitError](err); !ok || first.Field != v.Validate()[0].Field {
		t.Errorf("Assess answers %v, want %v", err, v.Validate()[0])
	}
}

// A pressure at which nothing boils is told as a gauge shows it.
func TestValidatePressures(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.SuctionPressure = Measured(quantity.PSIG(-14.6))
	v.Readings.LiquidPressure = Measured(quantity.PSIG(900))
	problems := v.Validate()
	if len(problems) != 2 {
		t.Fatal(problems)
	}
	for i, field := range []string{"readings.suctionPressure", "readings.liquidPressure"} {
		r, ok := errors.AsType[*quantity.RangeError](problems[i])
		if !ok || problems[i].Field != field {
			t.Fatal(problems[i])
		}
		if _, ok := r.Min.(quantity.GaugePressure); !ok {
			t.Errorf("%s: the range is of %T", field, r.Min)
		}
	}
	_, err := Assess(v)
	if first, ok := errors.AsType[*VisitError](err); !ok || first.Field != problems[0].Field {
		t.Errorf("Assess answers %v", err)
	}
}

// A reading that the method cannot be judged by is told before Assess tells it.
func TestValidateTakesTheMethod(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Metering = TXV
	v.Readings.LiquidLine = Measured(quantity.Fahrenheit(225))
	_, err := Assess(v)
	first, ok := errors.AsType[*VisitError](err)
	if got := v.Validate(); !ok || len(got) != 1 || got[0].Field != first.Field {
		t.Errorf("Validate finds %v, Assess %v", got, err)
	}
}

// What is wrong with a document is found at its field, as what is wrong with a visit is.
func TestMalformedNamesItsField(t *testing.T) {
	for _, c := range []struct {
		doc, field string
		kind       ProblemKind
	}{
		{`{"log": [{"at": "0s"}, {"at": "1m", "liquidLine": "92"}]}`, "log[1].liquidLine",
			DocumentMalformed},
		{`{"equipment": {"stages": "three"}}`, "equipment.stages", FieldUnknown},
		{`{"house": {"holds": [{"methods": ["weight"]}]}}`, "house.holds[0].methods[0]",
			FieldUnknown},
		{`[]`, "", DocumentMalformed},
	} {
		_, err := DecodeVisit([]byte(c.doc))
		e, ok := errors.AsType[*VisitError](err)
		if !ok || e.Field != c.field || e.Kind != c.kind {
			t.Errorf("%s: %+v", c.doc, err)
			continue
		}
		if c.field != "" &&
			(strings.Count(e.Error(), c.field) != 1 || strings.Contains(e.Problem, c.field)) {
			t.Errorf("%s names %s not once", e, c.field)
		}
		names, ok := errors.AsType[*quantity.NameError](err)
		if ok != (c.kind == FieldUnknown) || ok && len(names.Known) == 0 {
			t.Errorf("%s: the words there are are missing", c.doc)
		}
		if _, ok := errors.AsType[*strictjson.Error](err); !ok {
			t.Errorf("%s: no place in the document", c.doc)
		}
	}
}

// json.Unmarshal is as strict as DecodeVisit.
func TestUnmarshalIsStrict(t *testing.T) {
	for _, h := range hostileVisits(t) {
		_, want := DecodeVisit([]byte(h.doc))
		var v Visit
		got := json.Unmarshal([]byte(h.doc), &v)
		if (want == nil) != (got == nil) && h.name != "byte order mark" &&
			h.name != "deep nesting" {
			t.Errorf("%s: json.Unmarshal answers %v, DecodeVisit %v", h.name, got, want)
		}
	}
	for _, into := range []any{new(LogEntry), new(Move), new(Conditions)} {
		err := json.Unmarshal([]byte(`{"at": "1m", "colour": "green"}`), into)
		if _, ok := errors.AsType[*VisitError](err); !ok {
			t.Errorf("%T: %v", into, err)
		}
	}
	var v Visit
	v.Equipment.Arrangement = 9
	if text, err := json.Marshal(v); err == nil {
		t.Errorf("written as %s", text)
	}
}
