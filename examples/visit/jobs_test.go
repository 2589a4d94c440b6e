package main

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/satline/satline/work"
)

// A job and a history are told apart from a visit by what they hold, and written in every form.
func TestJobsAndHistories(t *testing.T) {
	for name, schema := range map[string]string{"leak-repair": work.RecordSchema,
		"years": work.HistorySchema} {
		var out, problems strings.Builder
		if status := run([]string{"-json", "-demo", name}, nil, &out, &problems); status != 0 {
			t.Fatal(problems.String())
		}
		var got struct {
			Schema string `json:"schema"`
		}
		if err := json.Unmarshal([]byte(out.String()), &got); err != nil || got.Schema != schema {
			t.Errorf("%s: %q, %v", name, got.Schema, err)
		}
		for _, args := range [][]string{{"-html"}, {"-markdown"}, {"-language", "es"},
			{"-units", "SI"}, {"-for", "owner"}} {
			var out, problems strings.Builder
			if status := run(append(args, "-demo", name), nil, &out, &problems); status != 0 ||
				out.Len() == 0 || !utf8.ValidString(out.String()) {
				t.Errorf("%s %v: %s", name, args, problems.String())
			}
		}
	}
}

// Values of look-ups are published in tables of saturation; here it is that a number comes
// back, and its unit.
func TestLookups(t *testing.T) {
	for _, c := range []struct {
		args []string
		want []string
	}{
		{[]string{"saturation", "R-410A", "118 psig"}, []string{"R-410A", "118.0 psig", "°F"}},
		{[]string{"saturation", "410a", "40 °F"}, []string{"40.0 °F", "psig"}},
		{[]string{"saturation", "404a", "-20 °F"}, []string{"-20.0 °F", "psig"}},
		{[]string{"saturation", "404a", "-units", "SI", "-29 °C"}, []string{"-29.0 °C"}},
		{[]string{"superheat", "R-410A", "118psig", "52 °F"}, []string{"Superheat", "°F"}},
		{[]string{"subcooling", "R-22", "200 psig", "90 °F"}, []string{"Subcooling"}},
		{[]string{"subcooling", "R-22", "-units", "SI", "200 psig", "90 °F"}, []string{" K", "°C"}},
		{[]string{"target", "95 °F", "67 °F"}, []string{"Target superheat", "°F"}},
		{[]string{"air", "75 °F", "63 °F"}, []string{"dew point", "%"}},
		{[]string{"air", "75 °F", "50 %", "-elevation", "5280 ft"}, []string{"50 %"}},
		{[]string{"superheat", "-language", "es", "R-410A", "118 psig", "52 °F"},
			[]string{"Sobrecalentamiento"}},
	} {
		var out, problems strings.Builder
		if status := run(c.args, nil, &out, &problems); status != 0 ||
			strings.Count(out.String(), "\n") != 1 {
			t.Errorf("%v: status %d, %q, %s", c.args, status, out.String(), problems.String())
		}
		for _, w := range c.want {
			if !strings.Contains(out.String(), w) {
				t.Errorf("%v: %q lacks %q", c.args, out.String(), w)
			}
		}
	}
}

func TestLookupsRefuse(t *testing.T) {
	for want, args := range map[string][]string{
		"superheat takes":     {"superheat"},
		"is neither":          {"saturation", "R-410A", "118"},
		"the unit is missing": {"superheat", "R-410A", "118", "52 °F"},
		"R-9":                 {"saturation", "R-999", "118 psig"},
		"elevation":           {"air", "75 °F", "63 °F", "-elevation", "high"},
		"wet bulb":            {"air", "75 °F", "damp"},
		"-units":              {"air", "75 °F", "63 °F", "-units", "both"},
		"flag provided":       {"air", "75 °F", "63 °F", "-verbose"},
		"target":              {"target", "95 °F", "20 °F"},
	} {
		var out, problems strings.Builder
		status := run(args, nil, &out, &problems)
		if status != 2 || out.Len() != 0 || strings.Count(problems.String(), "\n") != 1 ||
			!strings.Contains(problems.String(), want) {
			t.Errorf("%v: status %d, %q, want %q", args, status, problems.String(), want)
		}
	}
}

// What is wrong in an order is told in one line.
func TestBadOrders(t *testing.T) {
	for text, want := range map[string]string{
		`{"machine": {}, "tasks": []}`: "tasks",
		`{"tasks": ["maintain"]}`:      "machine.equipment.refrigerant",
		`{"tasks": ["maintain"],
			"machine": {"equipment": {"refrigerent": "R-22"}}}`: `did you mean "refrigerant"`,
		`{"orders": []}`: "orders",
	} {
		var out, problems strings.Builder
		if status := run([]string{"-"}, strings.NewReader(text), &out, &problems); status != 2 ||
			out.Len() != 0 || strings.Count(problems.String(), "\n") != 1 ||
			!strings.Contains(problems.String(), want) {
			t.Errorf("%s: status %d, %q, want %q", text, status, problems.String(), want)
		}
	}
}
