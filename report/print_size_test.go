package report

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// Every report of a demonstration visit, with a picture of the refrigerant and one of the
// air, prints on one sheet. How much room text takes was measured with a browser and the
// widest of the usual fonts.
func TestReportsPrintOnOneSheet(t *testing.T) {
	files, err := filepath.Glob("../testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	caption := strings.Repeat("a state of the refrigerant; ", 9)
	for _, f := range files {
		a := assess(t, load(t, f))
		for _, audience := range []Audience{Technician, File, Owner} {
			d := document(&a, audience, []Picture{{Caption: caption}, {Caption: caption}})
			if sheets := d.Sheets(); sheets > 1 {
				t.Errorf(
					"%s for audience %d takes %.2f of a sheet at %.1f points", f, audience, sheets,
					d.PrintSize(),
				)
			}
			var page strings.Builder
			if err := HTML(&page, a, audience); err != nil {
				t.Fatal(err)
			}
			if want := fmt.Sprintf("font-size: %gpt", document(&a, audience,
				nil).PrintSize()); !strings.Contains(
				page.String(), want,
			) {
				t.Errorf("%s: no %q in the page", f, want)
			}
		}
	}
}
