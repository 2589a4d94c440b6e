// Package examples holds that each program is one to copy.
package examples

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Each program builds and passes its tests in a module of its own that replaces
// satline by this directory: it needs nothing that only this module may import.
func TestEachInAModuleOfItsOwn(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: it runs the tests of three programs")
	}
	root, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"visit", "problems", "service"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			if err := os.CopyFS(dir, os.DirFS(name)); err != nil {
				t.Fatal(err)
			}
			ownModule(t, root, dir, name)
			for _, args := range [][]string{{"build", "./..."},
				{"test", "-short", "-tags", "copied", "./..."}} {
				cmd := exec.Command("go", args...)
				cmd.Dir = dir
				cmd.Env = append(os.Environ(), "GOFLAGS=-mod=mod", "GOPROXY=off", "GOWORK=off")
				if out, err := cmd.CombinedOutput(); err != nil {
					t.Fatalf("go %s: %v\n%s", strings.Join(args, " "), err, out)
				}
			}
		})
	}
}

// ownModule writes the files that make a module of dir, with the versions that
// satline itself was tested with.
func ownModule(t *testing.T, root, dir, name string) {
	t.Helper()
	module, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	const satline = "github.com/satline/satline"
	own := strings.Replace(string(module), "module "+satline, "module example.com/"+name, 1) +
		"\nrequire " + satline + " v0.0.0\n\nreplace " + satline + " => " + root + "\n"
	sums, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		t.Fatal(err)
	}
	for file, text := range map[string]string{"go.mod": own, "go.sum": string(sums)} {
		if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
