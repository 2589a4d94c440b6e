package work

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/report"
)

// Each record of the demonstrations prints on one sheet, for whoever it is.
func TestRecordsFitOneSheet(t *testing.T) {
	files, err := filepath.Glob("../examples/visit/jobs/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		o, err := Decode(text)
		if err != nil {
			continue // a history
		}
		for _, language := range satline.Languages() {
			o.Language = language
			r, err := Judge(o)
			if err != nil {
				t.Fatal(f, err)
			}
			for _, a := range []report.Audience{report.Technician, report.File, report.Owner} {
				if d := r.document(a); d.Sheets() > 1 {
					t.Errorf("%s in %s for the %v takes %.2f sheets", f, language, a, d.Sheets())
				}
			}
		}
	}
}
