package satline

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
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	caption := strings.Repeat("a state of the refrigerant; ", 9)
	for _, f := range files {
		a := assess(t, load(t, strings.TrimSuffix(filepath.Base(f), ".json")))
		for _, audience := range []Audience{Technician, File, Owner} {
			d := a.document(audience, []Picture{{Caption: caption}, {Caption: caption}})
			size := d.printSize()
			if d.printed(size) > 2*columnHeight {
				t.Errorf("%s for audience %d takes %.2f of a sheet at %.1f points", f, audience, d.printed(size)/(2*columnHeight), size)
			}
			var page strings.Builder
			if err := a.WriteHTML(&page, audience); err != nil {
				t.Fatal(err)
			}
			if want := fmt.Sprintf("font-size: %gpt", a.document(audience, nil).printSize()); !strings.Contains(page.String(), want) {
				t.Errorf("%s: no %q in the page", f, want)
			}
		}
	}
	short, long := document{title: "short"}, document{title: "long", lines: []string{strings.Repeat("much to say ", 4000)}}
	if short.printSize() != largestPrint || long.printSize() != smallestPrint {
		t.Errorf("sizes %v and %v", short.printSize(), long.printSize())
	}
}
