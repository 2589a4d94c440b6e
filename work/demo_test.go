package work_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/satline/satline"
	"github.com/satline/satline/report"
	"github.com/satline/satline/work"
)

var update = flag.Bool("update", false, "write the records under testdata anew")

const jobs = "../examples/visit/jobs"

func files(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(jobs, "*.json"))
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	out := map[string][]byte{}
	for _, n := range names {
		text, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		out[strings.TrimSuffix(filepath.Base(n), ".json")] = text
	}
	return out
}

// judged writes the record of an order, or the history of several.
func judged(t testing.TB, text []byte, language satline.Language) func(report.Audience) string {
	t.Helper()
	var of interface {
		WriteText(io.Writer, report.Audience) error
	}
	if bytes.Contains(text, []byte(`"orders"`)) {
		orders, err := work.DecodeHistory(text)
		if err != nil {
			t.Fatal(err)
		}
		for i := range orders {
			orders[i].Language = language
		}
		if of, err = work.Compare(orders); err != nil {
			t.Fatal(err)
		}
	} else {
		o, err := work.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		o.Language = language
		if of, err = work.Judge(o); err != nil {
			t.Fatal(err)
		}
	}
	return func(a report.Audience) string {
		var b strings.Builder
		if err := of.WriteText(&b, a); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
}

// The records of the demonstrations are kept, to see what moves:
// go test ./work -run TestRecords -update.
func TestRecords(t *testing.T) {
	for name, text := range files(t) {
		sheet := judged(t, text, satline.English)
		got := sheet(report.Technician) + "\n\n" + sheet(report.File) + "\n\n" + sheet(report.Owner)
		file := filepath.Join("testdata", "records", name+".txt")
		if *update {
			if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(masked(string(want)), masked(got)); diff != "" {
			t.Errorf("%s: -kept +written; -update and read the diff:\n%s", name, diff)
		}
	}
}

// masked is a sheet without its chances, which move with what is learnt of machines.
func masked(sheet string) string { return chance.ReplaceAllString(sheet, "n %") }

var chance = regexp.MustCompile(`((above|below) )?[0-9]+ %`)

// No sheet shows a code in place of words, in any language, or a number that is none.
func TestSheetsAreWords(t *testing.T) {
	code := regexp.MustCompile(
		`\b(next|result|record|owner|cylinder|check|task|weigh|leak|drift|history|` +
			`electrical|standing|heading|column|derived|reading)\.[a-zA-Z]`,
	)
	for name, text := range files(t) {
		for _, language := range satline.Languages() {
			sheet := judged(t, text, language)
			for _, a := range []report.Audience{report.Technician, report.File, report.Owner} {
				got := sheet(a)
				if found := code.FindString(got); found != "" {
					t.Errorf("%s in %s for the %v shows %q", name, language, a, found)
				}
				for _, bad := range []string{"NaN", "Inf", "%!", "<nil>", "{", "}"} {
					if strings.Contains(got, bad) {
						t.Errorf("%s in %s for the %v shows %q", name, language, a, bad)
					}
				}
			}
		}
	}
}

// What the owner reads has no chance in it and names no reading of the trade.
func TestOwnerReadsPlainWords(t *testing.T) {
	for name, text := range files(t) {
		got := judged(t, text, satline.English)(report.Owner)
		for _, bad := range []string{"%", "psig", "superheat", "subcooling", "µF"} {
			if strings.Contains(strings.ToLower(got), bad) {
				t.Errorf("%s: the owner reads %q", name, bad)
			}
		}
	}
}

// An order reads back from what it is written as.
func TestOrdersReadBack(t *testing.T) {
	for name, text := range files(t) {
		if bytes.Contains(text, []byte(`"orders"`)) {
			continue
		}
		o, err := work.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		written, err := json.Marshal(o)
		if err != nil {
			t.Fatal(err)
		}
		back, err := work.Decode(written)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if diff := cmp.Diff(o, back, cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("%s (-made +read):\n%s", name, diff)
		}
	}
}
