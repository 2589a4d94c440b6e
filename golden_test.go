package satline_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/report"
)

// TestReports holds every report of every visit, for three audiences in two systems of
// units, against the one that was read and found good.
func TestReports(t *testing.T) {
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".json")
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			got := reports(t, name)
			golden := filepath.Join("testdata", "reports", name+".txt")
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf(
					"the report changed; if that is meant, run the test with -update (-want "+
						"+got):\n%s",
					diff,
				)
			}
		})
	}
}

func reports(t *testing.T, name string) string {
	t.Helper()
	var out strings.Builder
	file, err := os.Open(filepath.Join("testdata", "visits", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	v, err := satline.ReadVisit(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		v.Units = sys
		a, err := satline.Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		for _, audience := range []report.Audience{report.Technician, report.File, report.Owner} {
			fmt.Fprintf(&out, "======== %v, %v\n", audience, sys)
			if err := report.Text(&out, a, audience); err != nil {
				t.Fatal(err)
			}
		}
	}
	return out.String()
}
