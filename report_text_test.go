package satline

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/satline/satline/internal/paper"
)

// No line of a report ends between a number and its unit, or at a ±.
func TestMeasuresStayWhole(t *testing.T) {
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	torn := regexp.MustCompile(`(?m)(±|[0-9])\n +(±|°F|%|psi|oz|CFM)|±\n`)
	for _, f := range files {
		a := assess(t, load(t, strings.TrimSuffix(filepath.Base(f), ".json")))
		for _, audience := range []Audience{Technician, File, Owner} {
			var text strings.Builder
			if err := a.WriteText(&text, audience); err != nil {
				t.Fatal(err)
			}
			if at := torn.FindString(text.String()); at != "" {
				t.Errorf("%s for the %v: torn at %q", f, audience, at)
			}
			for line := range strings.Lines(text.String()) {
				if n := len([]rune(strings.TrimSpace(line))); n > paper.TextWidth {
					t.Errorf("%s for the %v: a line of %d characters: %s", f, audience, n, line)
				}
			}
		}
	}
}
