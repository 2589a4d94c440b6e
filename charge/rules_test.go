package charge

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/satline/satline/quantity/fact"
)

// Every figure and condition of rules.go is in Rules, with a source.
func TestRulesAreComplete(t *testing.T) {
	listed := map[string]bool{}
	for _, r := range Rules() {
		if listed[r.Code] {
			t.Errorf("%s is listed twice", r.Code)
		}
		listed[r.Code] = true
		if strings.HasPrefix(r.Figure, "0.0 ") {
			t.Errorf("%s: the figure %s is rounded away", r.Code, r.Figure)
		}
		if r.Source.Standing == 0 {
			t.Errorf("%s has no source", r.Code)
		}
		if r.Source.Title == "" && r.Source.Standing != fact.CommonPractice {
			t.Errorf("%s has no title for its source", r.Code)
		}
	}
	source, err := os.ReadFile("rules.go")
	if err != nil {
		t.Fatal(err)
	}
	written := regexp.MustCompile(`(?:code: +|figure\[[^\]]+\]\{\s*)"([a-z0-9-]+)",`).
		FindAllSubmatch(source, -1)
	for _, w := range written {
		if !listed[string(w[1])] {
			t.Errorf("%s stands in rules.go and is not in Rules", w[1])
		}
	}
	if len(written) != len(listed) {
		t.Errorf("%d rules written, %d listed", len(written), len(listed))
	}
}
