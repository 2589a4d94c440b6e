package satline

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var updateHostile = flag.Bool(
	"update-hostile", false, "write testdata/hostile.txt from what the visits get now",
)

const hostileFile = "testdata/hostile.txt"

// Every hostile visit gets exactly the line that testdata/hostile.txt holds for
// it: nothing panics, and nothing wrong is accepted in silence. Where a
// contradictory visit is assessed, the line is its headline.
func TestHostileVisits(t *testing.T) {
	var got []string
	seen := map[string]bool{}
	for _, h := range hostileVisits(t) {
		if seen[h.name] {
			t.Errorf("two hostile visits are named %q", h.name)
		}
		seen[h.name] = true
		got = append(got, h.name+" => "+outcomeOf(t, h.doc))
	}
	if len(got) < 300 {
		t.Errorf("%d hostile visits, want at least 300", len(got))
	}
	if *updateHostile {
		if err := os.WriteFile(hostileFile, []byte(strings.Join(got, "\n")+"\n"),
			0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(hostileFile)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(strings.TrimSuffix(string(want), "\n"), "\n"), got); d != "" {
		t.Errorf("messages changed (-file +now); read them, then run with -update-hostile:\n%s", d)
	}
}

func outcomeOf(t *testing.T, doc string) string {
	v, err := DecodeVisit([]byte(doc))
	if err == nil {
		var a Assessment
		if a, err = Assess(v); err == nil {
			if _, err := json.Marshal(a); err != nil {
				t.Errorf("an assessment cannot be marshaled: %v", err)
			}
			return "assessed: " + a.Headline.Text
		}
	}
	if !errors.Is(err, ErrVisit) {
		t.Errorf("%v is not an ErrVisit", err)
	}
	if strings.Contains(err.Error(), "\n") {
		t.Errorf("the message has more than one line: %q", err.Error())
	}
	return err.Error()
}

type hostile struct{ name, doc string }

func hostileVisits(t *testing.T) []hostile {
	var out []hostile
	add := func(name, doc string) { out = append(out, hostile{name, doc}) }
	with := func(name, path, raw string) { add(name, change(t, path, raw)) }

	for _, f := range readingFields {
		path := "readings." + f.name
		for _, bad := range []struct{ name, raw string }{
			{"bare number", `68.5`}, {"text without unit", `"68.5"`},
			{"wrong unit", `"68.5 furlong"`}, {"another quantity", `"68.5 kg"`},
			{"not a number", `"NaN"`}, {"null", `null`}, {"object", `{"value": 68.5}`},
			{"list", `["68.5 °F"]`}, {"empty", `""`}, {"decimal comma", `"68,5 °F"`},
			{"negative uncertainty", `"68.5 ` + unitOf(f) + ` ± -1 ` + unitOf(f) + `"`},
			{"uncertainty without unit", `"68.5 ` + unitOf(f) + ` ± 1"`},
			{"absurdly high", `"1e12 ` + unitOf(f) + `"`},
			{"absurdly low", `"-1e12 ` + unitOf(f) + `"`},
			{"beyond float", `"1e999 ` + unitOf(f) + `"`},
		} {
			with(f.name+": "+bad.name, path, bad.raw)
		}
	}
	for _, c := range []struct{ path, raw string }{
		{"equipment.refrigerant", `""`}, {"equipment.refrigerant", `"R-999"`},
		{"equipment.refrigerant", `"R-401"`}, {"equipment.refrigerant", `"frostine"`},
		{"equipment.refrigerant", `410`}, {"equipment.refrigerant", `"R-22\u0000"`},
		{"equipment.refrigerant", strconv.Quote(strings.Repeat("R", 5000))},
		{"equipment.metering", `""`}, {"equipment.metering", `"valve"`},
		{"equipment.metering", `2`}, {"equipment.arrangement", `"window"`},
		{"equipment.nominalCapacity", `"0.01 ton"`}, {"equipment.nominalCapacity", `"-3 ton"`},
		{"equipment.nominalCapacity", `"3 tons of ice"`},
		{"equipment.nominalCapacity", `"1e9 ton"`}, {"equipment.label.charge", `"6 lb 20 oz"`},
		{"equipment.label.charge", `"-1 lb"`}, {"equipment.label.charge", `"9999 lb"`},
		{"equipment.label.subcooling", `"90 °F"`}, {"equipment.label.subcooling", `"-5 °F"`},
		{"equipment.label.superheat", `"200 °F"`}, {"equipment.label.approach", `"-1 K"`},
		{"equipment.label.ratedAirflow", `"5 CFM"`},
		{"equipment.label.maxExternalStatic", `"90 in. w.c."`},
		{"equipment.label.ratedLoadCurrent", `"1e6 A"`},
		{"equipment.label.factoryLineSet", `"-3 ft"`},
		{"equipment.label.approach", `"8 °F ± 90 °F"`},
		{"equipment.label.superheat", `"12 °F ± 1e6 °F"`}, {"equipment.label.tolerance", `"90 °F"`},
		{"equipment.label.tolerance", `"3"`}, {"equipment.label.lineAdder", `"0.6 oz"`},
		{"equipment.label.lineAdder", `{"mass": "0.6 oz"}`},
		{"equipment.label.lineAdder", `{"mass": "-1 oz", "per": "1 ft"}`},
		{"equipment.label.lineAdder", `{"mass": "0.6 oz", "per": "0 ft"}`},
		{"equipment.accessories", `{"mass": "4 oz"}`},
		{"equipment.accessories", `[{"name": "drier", "mass": "-4 oz"}]`},
		{"equipment.accessories", `[{"name": "drier", "weight": "4 oz"}]`},
		{"equipment.lineSet.length", `"9 km"`}, {"equipment.lineSet.length", `"900 m"`},
		{"equipment.lineSet.liquidDiameter", `"3/8 in"`},
		{"equipment.lineSet.liquidDiameter", `"1 mm"`}, {"equipment.colour", `"green"`},
		{"site.elevation", `6000`}, {"site.elevation", `"60000 ft"`},
		{"site.elevation", `"-9000 ft"`}, {"site.elevation", `"0 ft"`},
		{"site.barometer", `"5 psia"`}, {"site.barometer", `"0 kPa"`},
		{"site.barometer", `"29.92"`}, {"site.barometer", `"200 kPa"`}, {"site.name", `12`},
		{"instruments.gauge", `"-1 psig"`}, {"instruments.gauge", `"500 psig"`},
		{"instruments.clamp", `"-2 °F"`}, {"instruments.thermometer", `"90 °F"`},
		{"instruments.wetBulb", `"1"`}, {"instruments.wetbulb", `"1 °F"`},
		{"conditions.running", `"soon"`}, {"conditions.running", `15`},
		{"conditions.running", `"-5m"`}, {"conditions.running", `"1e99h"`},
		{"conditions.coilWet", `"yes"`}, {"conditions.coilWet", `1`},
		{"conditions.coilwet", `true`}, {"complaint", `"it hums"`}, {"complaint", `[]`},
		{"units", `"metric"`}, {"units", `1`}, {"title", `{}`},
		{"title", strconv.Quote(strings.Repeat("x", 300))}, {"notes", `true`}, {"reading", `{}`},
		{"Readings", `{}`}, {"log", `{}`}, {"log", `[1]`}, {"log", `[{"at": "1m"}, {"at": "1m"}]`},
		{"log", `[{"at": "2m"}, {"at": "1m"}]`}, {"log", `[{"at": "-1m"}]`},
		{"log", `[{"suctionLine": "55 °F"}, {"suctionLine": "56 °F"}]`},
		{"log", `[{"at": "1m", "suctionLine": 55}]`},
		{"log", `[{"at": "1m", "suctionLine": "9000 °F"}]`},
		{"log", "[" + strings.Repeat(`{"at":"1m"},`, 6000) + `{"at":"2m"}]`},
		{"moves", `[{"added": "1 oz"}]`}, {"moves", `[{"at": "1m"}]`},
		{"moves", `[{"at": "1m", "added": "1 oz", "recovered": "1 oz"}]`},
		{"moves", `[{"at": "1m", "added": "-1 oz"}]`},
		{"moves", `[{"at": "1m", "added": "9999 kg"}]`},
		{"moves", `[{"at": "2m", "added": "1 oz"}, {"at": "1m", "added": "1 oz"}]`},
		{"checks", `[{"look": "gauges", "found": true}]`}, {"checks", `[{"found": true}]`},
		{"checks", `[{"look": "elevation"}]`},
		{"checks", `[{"look": "elevation", "found": "yes"}]`},
		{"checks", `[{"look": "elevation", "found": false}, {"look": "elevation", "found": true}]`},
		{"checks", `{"look": "elevation"}`}, {"checks", `[{"look": "elevation", "answer": true}]`},
		{"checks", `[{"look": 7}]`}, {"moves", `[{"at": "1m", "added": 4}]`},
		{"moves", `[{"at": "1m", "vented": "1 oz"}]`},
	} {
		name := fmt.Sprintf("%s = %.50s", c.path, c.raw)
		with(name, c.path, c.raw)
	}
	for _, c := range []struct{ name, doc string }{
		{"nothing", ""}, {"white space", " \n\t "}, {"null document", "null"},
		{"list document", "[]"}, {"text document", `"visit"`}, {"number document", "42"},
		{"no fields", "{}"}, {"no equipment", `{"title": "x"}`}, {"cut short", `{"title": "x`},
		{"open brace", "{"}, {"trailing comma", `{"title": "x",}`}, {"comment", "{} // done"},
		{"two documents", "{}{}"}, {"single quotes", "{'title': 'x'}"},
		{"key twice", `{"title": "a", "title": "b"}`},
		{"nested key twice", `{"site": {"name": "a", "name": "b"}}`}, {"NaN", `{"title": NaN}`},
		{"Infinity", `{"readings": {"airflow": Infinity}}`},
		{"deep nesting", strings.Repeat(`{"site":`, 2000) + "1" + strings.Repeat("}", 2000)},
		{"deep lists", strings.Repeat("[", 5000) + strings.Repeat("]", 5000)},
		{"huge", `{"notes": "` + strings.Repeat("x", MaxVisitBytes) + `"}`},
		{"not UTF-8", "{\"title\": \"\xff\xfe\"}"}, {"byte order mark", "\ufeff{}"},
		{"many fields", `{"site": {` + strings.Repeat(`"x": 1, `, 100) + `"y": 1}}`},
		{"control character", "{\"title\": \"a\x01b\"}"}, {"lone surrogate", `{"title": "\ud800"}`},
	} {
		add(c.name, c.doc)
	}
	for _, c := range []struct{ name, path, raw string }{
		{"wet bulb above dry bulb", "readings.returnWetBulb", `"80 °F"`},
		{"hoses swapped", "readings.suctionPressure", `"390 psig"`},
		{"not pumping", "readings.liquidPressure", `"140 psig"`},
		{"suction in deep vacuum", "readings.suctionPressure", `"-14.6 psig"`},
		{"suction below any vacuum", "readings.suctionPressure", `"-30 psig"`},
		{"liquid above critical", "readings.liquidPressure", `"900 psig"`},
		{"liquid line below outdoor", "readings.liquidLine", `"60 °F"`},
		{"outdoor too cold for the method", "readings.outdoorDryBulb", `"40 °F"`},
		{"wet bulb below the table", "readings.returnWetBulb", `"45 °F"`},
		{"target below the floor", "readings.outdoorDryBulb", `"112 °F"`},
		{"suction line frozen", "readings.suctionLine", `"20 °F"`},
		{"supply above return", "readings.supplyDryBulb", `"90 °F"`},
		{"wet bulb equal to dry bulb", "readings.returnWetBulb", `"75 °F"`},
		{"suction line hot", "readings.suctionLine", `"120 °F"`}, {"no readings", "readings", `{}`},
		{"heating", "conditions.heating", `true`}, {"coil wet", "conditions.coilWet", `true`},
		{"just started", "conditions.running", `"2m"`},
		{"panels off", "conditions.panelsOff", `true`},
		{"another refrigerant", "equipment.refrigerant", `"R-134a"`},
		{"carbon dioxide", "equipment.refrigerant", `"R-744"`},
		{"water", "equipment.refrigerant", `"R-718"`},
	} {
		with(c.name, c.path, c.raw)
	}
	return out
}

// unitOf is a unit that the reading is given in.
func unitOf(f readingField) string {
	switch f.name {
	case "suctionPressure", "liquidPressure", "dischargePressure":
		return "psig"
	case "airflow":
		return "CFM"
	case "externalStatic":
		return "in. w.c."
	case "power":
		return "W"
	case "compressorCurrent":
		return "A"
	}
	return "°F"
}

// change returns a sound visit with one value set to raw JSON.
func change(t *testing.T, path, raw string) string {
	t.Helper()
	doc, err := os.ReadFile("testdata/visits/sound-r410a-piston.json")
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(doc, &root); err != nil {
		t.Fatal(err)
	}
	at, keys := root, strings.Split(path, ".")
	for _, k := range keys[:len(keys)-1] {
		next, ok := at[k].(map[string]any)
		if !ok {
			next = map[string]any{}
			at[k] = next
		}
		at = next
	}
	at[keys[len(keys)-1]] = json.RawMessage(raw)
	b, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
