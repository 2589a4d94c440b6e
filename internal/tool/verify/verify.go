// Package verify is how a test holds a computed value against a published one,
// so that the same line both fails the test and stands in VERIFICATION.md.
package verify

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"
)

// Directory is the environment variable that names where rows are written; no
// rows are written where it is empty.
const Directory = "SATLINE_VERIFICATION"

// Source says where a reference value comes from.
type Source struct {
	// Cite names the publication, and the table, equation, example or page.
	Cite string `json:"cite"`
	// Kind says how far the value can be trusted to be what the source prints.
	Kind Kind `json:"kind"`
}

// Kind is the standing of a reference value.
type Kind string

// The kinds.
const (
	Published      Kind = "published"                  // as printed
	FromMemory     Kind = "published, from memory"     // printed, recalled and not looked up
	Computed       Kind = "independent computation"    // another implementation of the same paper
	CommonPractice Kind = "common practice, no source" // a rule of thumb of the trade
)

// A Row is one check.
type Row struct {
	Package   string  `json:"package"`
	Test      string  `json:"test"`
	Check     string  `json:"check"`
	Unit      string  `json:"unit"`
	Reference float64 `json:"reference"`
	Computed  float64 `json:"computed"`
	Tolerance float64 `json:"tolerance"`
	Source    Source  `json:"source"`
}

// Value fails the test unless computed is within tolerance, an absolute figure
// in the same unit, of reference.
func Value(
	t testing.TB, source Source, check, unit string, reference, computed, tolerance float64,
) {
	t.Helper()
	if deviation := math.Abs(computed - reference); !(deviation <= tolerance) {
		t.Errorf(
			"%s: %.9g %s, and %s says %.9g (off by %.3g, tolerance %.3g)", check, computed, unit,
			source.Cite, reference, deviation, tolerance,
		)
	}
	record(
		t,
		Row{
			Test:      t.Name(),
			Check:     check,
			Unit:      unit,
			Reference: reference,
			Computed:  computed,
			Tolerance: tolerance,
			Source:    source,
		},
	)
}

// Relative is Value with a tolerance in proportion to the reference.
func Relative(
	t testing.TB, source Source, check, unit string, reference, computed, tolerance float64,
) {
	t.Helper()
	Value(t, source, check, unit, reference, computed, tolerance*math.Abs(reference))
}

func record(t testing.TB, row Row) {
	dir := os.Getenv(Directory)
	if dir == "" {
		return
	}
	row.Package = callerPackage()
	b, err := json.Marshal(row)
	if err != nil {
		t.Errorf("verify: %v", err)
		return
	}
	name := filepath.Join(dir, strings.ReplaceAll(row.Package, "/", "_")+".jsonl")
	f, err := os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Errorf("verify: %v", err)
		return
	}
	defer f.Close()
	if _, err := f.Write(append(b, '\n')); err != nil {
		t.Errorf("verify: %v", err)
	}
}

// callerPackage is the package of the test that called Value.
func callerPackage() string {
	own := reflect.TypeFor[Row]().PkgPath()
	module := strings.TrimSuffix(own, "/internal/tool/verify")
	pcs := make([]uintptr, 16)
	frames := runtime.CallersFrames(pcs[:runtime.Callers(2, pcs)])
	for {
		frame, more := frames.Next()
		if pkg := packageOf(frame.Function); pkg != own && strings.HasPrefix(pkg, module) {
			return strings.TrimSuffix(
				strings.TrimPrefix(strings.TrimPrefix(pkg, module), "/"), "_test",
			)
		}
		if !more {
			return "unknown"
		}
	}
}

func packageOf(function string) string {
	slash := strings.LastIndex(function, "/")
	if dot := strings.Index(function[slash+1:], "."); dot >= 0 {
		return function[:slash+1+dot]
	}
	return function
}
