package main

import (
	"os"
	"testing"
)

// The figures that README.md and the guide quote are those of the trials as they stand.
func TestQuotedFiguresAreFresh(t *testing.T) {
	const root = "../../../.."
	for file, table := range quoted {
		text, err := os.ReadFile(root + "/" + file)
		if err != nil {
			t.Fatal(err)
		}
		fresh, err := carried(root, string(text), table)
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
	if _, err := carried(root, "no marks", quotation{}); err == nil {
		t.Error("a page without a table is taken")
	}
	page := opened + closed
	if _, err := carried(root, page, quotation{1, []column{{"x", "no such row", 1}}}); err == nil {
		t.Error("a figure that no trial has is taken")
	}
}
