package main

import (
	"os"
	"testing"
)

// The figures that README.md and the guide quote are those of the trials as they stand.
func TestQuotedFiguresAreFresh(t *testing.T) {
	const root = "../../../.."
	for file, tables := range quoted {
		text, err := os.ReadFile(root + "/" + file)
		if err != nil {
			t.Fatal(err)
		}
		fresh, err := carried(root, string(text), tables)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		if fresh != string(text) {
			t.Errorf("%s quotes other figures than the trials have; "+
				"go run ./internal/tool/trial/report -carry, and read the diff", file)
		}
	}
}

func TestCarriedRefuses(t *testing.T) {
	const root = "../../../.."
	table := quotation{mark: "x", trials: trials[:1], columns: []column{{"x", "no such row", 1}}}
	for _, page := range []string{"no marks", "<!-- x -->\n" + closed} {
		if got, err := carried(root, page, []quotation{table}); err == nil {
			t.Errorf("%q is taken: %q", page, got)
		}
	}
}
