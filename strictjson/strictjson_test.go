package strictjson

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/quantity"
)

type inner struct {
	Temperature *quantity.Uncertain[quantity.Temperature] `json:"temperature"`
	Flag        bool                                      `json:"flag"`
}

type outer struct {
	Name    string        `json:"name"`
	Inner   inner         `json:"inner"`
	List    []inner       `json:"list"`
	Count   int           `json:"count"`
	Share   *float64      `json:"share"`
	Running time.Duration `json:"running"`
	At      time.Time     `json:"at"`
}

var limits = Limits{Bytes: 4096, Depth: 8, Items: 20}

func TestDecode(t *testing.T) {
	var got outer
	doc := `{"name": "a", "inner": {"temperature": "71 °F", "flag": true},
		"list": [{}, {"flag": true}], "count": 3, "share": 0.5,
		"running": "15 min", "at": "2026-07-01T14:00:00Z"}`
	if err := Decode([]byte(doc), &got, limits); err != nil {
		t.Fatal(err)
	}
	half, temp := 0.5, quantity.Fahrenheit(71).PlusMinus(0)
	want := outer{
		Name:    "a",
		Inner:   inner{Temperature: &temp, Flag: true},
		List:    []inner{{}, {Flag: true}},
		Count:   3,
		Share:   &half,
		Running: 15 * time.Minute,
		At:      time.Date(2026, 7, 1, 14, 0, 0, 0, time.UTC),
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// A decimal comma is read where it is asked for, and what a program wrote in any case.
func TestDecodeStyled(t *testing.T) {
	comma := quantity.Style{Comma: true}
	for doc, want := range map[string]quantity.Uncertain[quantity.Temperature]{
		`{"temperature": "16,5 °C ± 0,25 °C"}`: quantity.Celsius(16.5).PlusMinus(0.25),
		`{"temperature": "16,5 ± 0,25 °C"}`:    quantity.Celsius(16.5).PlusMinus(0.25),
		`{"temperature": "16.125 °C"}`:         quantity.Celsius(16.125).PlusMinus(0),
	} {
		var got inner
		if err := DecodeStyled([]byte(doc), &got, limits, comma); err != nil ||
			*got.Temperature != want {
			t.Errorf("%s: %v, %v", doc, got.Temperature, err)
		}
	}
	for doc, style := range map[string]quantity.Style{
		`{"temperature": "16,5 °C"}`:    {},
		`{"temperature": "1.016,5 °C"}`: comma,
		`{"temperature": 16,5}`:         comma,
	} {
		var got inner
		var e *Error
		if err := DecodeStyled([]byte(doc), &got, limits, style); !errors.As(err, &e) {
			t.Errorf("%s: %v, %v", doc, got.Temperature, err)
		}
	}
}

// A struct that cannot be filled is an error, not a panic.
func TestDecodeIntoNilEmbedded(t *testing.T) {
	type hidden struct {
		Name string `json:"name"`
	}
	var into struct{ *hidden }
	if err := Decode([]byte(`{"name": "a"}`), &into, limits); err == nil {
		t.Error("no error")
	}
}

func TestDecodeRefuses(t *testing.T) {
	const early = `the document ends too early; a bracket, brace or quote is not closed`
	for doc, want := range map[string]string{
		``: `line 1: the document is empty`,
		"{\n\"inner\":{\"temperature\":62}}": `inner.temperature (line 2): temperature "62": ` +
			`the unit is missing; write a number and one of °C, °F, K, in quotes`,
		`{"inner":{"temperature":"62"}}`: `inner.temperature (line 1): temperature "62": ` +
			`the unit is missing; write a number and one of °C, °F, K`,
		`{"nmae":"a"}`: `nmae (line 1): unknown field; did you mean "name"?`,
		`{"zzzzzz":"a"}`: `zzzzzz (line 1): unknown field; known here: ` +
			`at, count, inner, list, name, running, share`,
		`{"Name":"a"}`:            `Name (line 1): unknown field; did you mean "name"?`,
		`{"name":"a","name":"b"}`: `name (line 1): the field is given twice`,
		`{"name":null}`: `name (line 1): null is not a value; ` +
			`leave out what is not known`,
		`{"name":"a"`:          `line 1: ` + early,
		`{"name":"a`:           `name (line 1): ` + early,
		`{"name":"a\"`:         `name (line 1): ` + early,
		`{"name":"a",}`:        `line 1: not JSON from "}" on`,
		"{\n'name':1}":         `line 2: not JSON from "'name':1}" on`,
		"{\"name\":\"a\x01\"}": `name (line 1): not JSON from "\"a�\"}" on`,
		`{"n\u001b[2J\u202e\nx":1}`: "n�[2J� x (line 1): unknown field; known here: " +
			"at, count, inner, list, name, running, share",
		`{"name":"a"} {}`:       `line 1: there is more after the end of the document`,
		`{"share":NaN}`:         `share (line 1): not JSON from "NaN}" on`,
		`{"share":1e999}`:       `share (line 1): the number is beyond what a number can hold`,
		`{"count":1.5}`:         `count (line 1): want a whole number, got 1.5`,
		`{"name":{}}`:           `name (line 1): want a text in quotes, got an object`,
		`{"inner":[]}`:          `inner (line 1): want an object in braces, got a list`,
		`{"list":"x"}`:          `list (line 1): want a list in brackets, got the text "x"`,
		`{"list":[{"flag":1}]}`: `list[0].flag (line 1): want true or false, got the number 1`,
		`{"running":"soon"}`: `running (line 1): "soon" is not a duration; ` +
			`write one as in "15m", "90s" or "1h30m"`,
		`[]`:                  `line 1: want an object in braces, got a list`,
		"{\"name\":\"\xff\"}": `line 1: the document is not UTF-8 text`,
		`{"list":[` + strings.Repeat(`{},`, 30) + `{}]}`: `list (line 1): more than 20 items`,
		`{"name":"` + strings.Repeat("x", 5000) +
			`"}`: `line 1: the document has 5011 bytes; at most 4096 are read`,
	} {
		var o outer
		err := Decode([]byte(doc), &o, limits)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%.60s: got %v, want an *Error", doc, err)
			continue
		}
		if e.Error() != want {
			t.Errorf("%.60s:\n got %s\nwant %s", doc, e.Error(), want)
		}
	}
}

type nest struct {
	In *nest `json:"in"`
}

func TestDecodeBoundsDepth(t *testing.T) {
	var n nest
	doc := strings.Repeat(`{"in":`, 200) + `{}` + strings.Repeat(`}`, 200)
	if err := Decode([]byte(doc), &n, limits); err == nil ||
		!strings.Contains(err.Error(), "nested more than 8 deep") {
		t.Errorf("got %v", err)
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(`{"name": "a", "inner": {"temperature": "71 °F"}, "list": [{}]}`))
	f.Add([]byte(`{"count": 1e3, "share": -0, "running": "1h"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var o outer
		if err := Decode(data, &o, limits); err != nil && err.Error() == "" {
			t.Error("an error without words")
		}
	})
}

func TestDecodeMissesWhatIsRequired(t *testing.T) {
	type entry struct {
		At   string `json:"at" strict:"required"`
		Note string `json:"note"`
	}
	var list struct {
		Log []entry `json:"log"`
	}
	if err := Decode([]byte(`{"log": [{"at": "1m"}]}`), &list, limits); err != nil {
		t.Error(err)
	}
	err := Decode([]byte(`{"log": [{"at": "1m"}, {"note": "x"}]}`), &list, limits)
	if err == nil ||
		err.Error() != "log[1].at (line 1): the field is missing, and has to be given here" {
		t.Error(err)
	}
}

// A date is written as programs write it, or as people do.
func TestDates(t *testing.T) {
	for text, want := range map[string]time.Time{
		"2026-07-14":                time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC),
		"2026-07-14 09:30":          time.Date(2026, 7, 14, 9, 30, 0, 0, time.UTC),
		"2026-07-14T09:30:00-06:00": time.Date(2026, 7, 14, 15, 30, 0, 0, time.UTC),
		"2026-07":                   time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC),
	} {
		var got outer
		if err := Decode([]byte(`{"at": "`+text+`"}`), &got, limits); err != nil ||
			!got.At.Equal(want) {
			t.Errorf("%s: %v, %v", text, got.At, err)
		}
	}
	for _, text := range []string{`"07/14/2026"`, `"2026-13-01"`, `""`, `"soon"`, `20260714`} {
		var got outer
		err := Decode([]byte(`{"at": `+text+`}`), &got, limits)
		if err == nil || !strings.Contains(err.Error(), `"2026-07-14"`) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// How far off a gauge may be is a difference of pressure; what it shows is not.
func TestDecodeUncertaintyOfAGauge(t *testing.T) {
	type gauges struct {
		Shows quantity.GaugePressure `json:"shows"`
		Off   quantity.GaugePressure `json:"off" strict:"uncertainty"`
	}
	for doc, want := range map[string]gauges{
		`{"off": "0.5 psi"}`:  {Off: quantity.PSIG(0.5)},
		`{"off": "0.5 psig"}`: {Off: quantity.PSIG(0.5)},
		`{"off": "4 kPa"}`:    {Off: quantity.KilopascalsGauge(4)},
		`{"off": "-1 psi"}`:   {}, `{"shows": "0.5 psi"}`: {},
	} {
		var got gauges
		err := Decode([]byte(doc), &got, limits)
		if (err == nil) != (want != gauges{}) || got != want {
			t.Errorf("%s: %v, %v", doc, got, err)
		}
	}
	var alone quantity.GaugePressure
	if err := Decode([]byte(`"0.5 psi"`), &alone, limits); err == nil {
		t.Error("a pressure alone was read from a difference")
	}
}

// What is wrong by itself does not keep the rest from being read; what opens a bracket does.
func TestDecodeTellsEveryMistake(t *testing.T) {
	for doc, want := range map[string][]string{
		`{"share": "x", "count": 1.5, "inner": {"temperature": "62"}, "name": null}`: {
			"share", "count", "inner.temperature", "name"},
		`{"list": ["a", 1, "b", 2], "at": "x"}`:    {"list[1]", "list[3]", "at"},
		`{"share": "x", "zzzzzz": 1, "count": ""}`: {"share", "zzzzzz"},
		`{"share": "x", "inner": [], "count": ""}`: {"share", "inner"},
		`{"share": "x", "count": 1.5`:              {"share", "count", ""},
		`{"share": "x"} {}`:                        {"share", ""},
	} {
		var into struct {
			Name  string    `json:"name"`
			Count int       `json:"count"`
			Share float64   `json:"share"`
			At    time.Time `json:"at"`
			List  []string  `json:"list"`
			Inner inner     `json:"inner"`
		}
		var first *Error
		if err := Decode([]byte(doc), &into, limits); !errors.As(err, &first) {
			t.Errorf("%s: %v", doc, err)
			continue
		}
		got := []string{first.Path}
		for _, e := range first.Also {
			got = append(got, e.Path)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", doc, got, want)
		}
	}
	many := `{"list": [` + strings.Repeat("1, ", 80) + `1]}`
	var into struct {
		List []string `json:"list"`
	}
	var first *Error
	err := Decode([]byte(many), &into, Limits{Bytes: 1000, Depth: 2, Items: 100})
	if !errors.As(err, &first) || len(first.Also) != mostWrong {
		t.Errorf("of many: %v", err)
	}
}
