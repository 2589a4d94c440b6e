//go:build !copied

// The visits are those of another program: a copy of this one stands without them.

package api

import (
	"os"
	"path/filepath"
	"testing"
)

// Assessments of visits as they are are written as json.Marshal does, but for the quantities.
func TestVisitsAreAsMarshalHasThem(t *testing.T) {
	visits, err := filepath.Glob("../../visit/demo/*.json")
	if err != nil || len(visits) == 0 {
		t.Fatal("no visits", err)
	}
	for _, name := range visits {
		visit, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		sameButQuantities(t, assessment(t, visit))
	}
}
