package satline

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every line of Go that README.md and the guides show stands, in order and together, in an
// Example that go test compiles and runs.
func TestReadmeCodeIsCompiled(t *testing.T) {
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	guides, err := filepath.Glob("guides/*.md")
	if err != nil || len(guides) == 0 {
		t.Fatal("no guides", err)
	}
	for _, file := range guides {
		guide, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		readme = append(readme, guide...)
	}
	var examples []string
	err = filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, "_test.go") ||
			!strings.Contains(filepath.Base(path), "example") {
			return err
		}
		data, err := os.ReadFile(path)
		examples = append(examples, flattened(string(data)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	blocks := strings.Split(string(readme), "```go\n")[1:]
	if len(blocks) == 0 {
		t.Fatal("README.md shows no Go")
	}
	for _, b := range blocks {
		code, _, closed := strings.Cut(b, "```")
		if !closed {
			t.Fatalf("a block of Go is not closed:\n%s", b)
		}
		found := false
		for _, e := range examples {
			found = found || strings.Contains(e, flattened(code))
		}
		if !found {
			t.Errorf("no Example holds this code of README.md:\n%s", code)
		}
	}
}

// flattened is code without regard to indentation.
func flattened(code string) string {
	var out []string
	for l := range strings.Lines(code) {
		out = append(out, strings.Join(strings.Fields(l), " "))
	}
	return strings.TrimSpace(strings.Join(out, "\n"))
}
