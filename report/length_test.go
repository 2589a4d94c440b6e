package report

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/satline/satline/internal/page/paper"
)

// What a technician reads of a visit is at most 450 words, beside the cautions.
func TestReportsAreShort(t *testing.T) {
	const longest = 450
	var files []string
	for _, dir := range []string{"visits", "cases"} {
		found, err := filepath.Glob("../testdata/" + dir + "/*.json")
		if err != nil || len(found) == 0 {
			t.Fatal(err, found)
		}
		files = append(files, found...)
	}
	sum, most := 0, 0
	for _, f := range files {
		a := assess(t, load(t, f))
		a.Cautions = nil
		var text strings.Builder
		if err := Text(&text, a, Technician); err != nil {
			t.Fatal(err)
		}
		n := len(paper.Words(text.String()))
		if n > longest {
			t.Errorf("%s: %d words", f, n)
		}
		sum, most = sum+n, max(most, n)
	}
	t.Logf("%d reports: %d words on average, %d at most", len(files), sum/len(files), most)
}
