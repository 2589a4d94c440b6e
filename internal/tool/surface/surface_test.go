package surface

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the listing")

const (
	listing = "../../../testdata/surface.txt"
	table   = "../hostile/exported_test.go"
)

// The exported surface changes only on purpose: run this test with -update,
// read the diff, and give a removed or changed line its reason in CHANGELOG.md.
func TestSurface(t *testing.T) {
	lines, err := List("../../..")
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) == 0 {
		t.Fatal("nothing is exported")
	}
	got := strings.Join(lines, "\n") + "\n"
	if *update {
		if err := os.WriteFile(listing, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(listing)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("the exported surface is not that of testdata/surface.txt (-listed +now):\n%s", d)
	}
}

// What package hostile calls is all that is exported; -update writes it with the listing.
func TestCallable(t *testing.T) {
	lines, err := List("../../..")
	if err != nil {
		t.Fatal(err)
	}
	got, err := Table("hostile", "github.com/satline/satline", lines)
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(table, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(table)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); d != "" {
		t.Errorf("run with -update (-written +now):\n%s", d)
	}
}

func TestListSeesEveryKind(t *testing.T) {
	dir := t.TempDir()
	code := `package p
type T struct { A int ` + "`json:\"a\"`" + `; b int }
type I interface { M() }
type G[K any] []K
type hidden int
const ( X T2 = iota; Y )
type T2 int
var V int
func F(a int) error { return nil }
func (t *T) M() {}
func (h hidden) M() {}
func (g G[K]) N() {}
`
	if err := os.WriteFile(dir+"/p.go", []byte(code), 0o644); err != nil {
		t.Fatal(err)
	}
	got, err := List(dir)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		".: const X T2", ".: const Y T2", ".: func (g G[K]) N()", ".: func (t *T) M()",
		".: func F(a int) error", ".: type G[K any] []K", ".: type I interface",
		".: type I interface, M func()", ".: type T struct", ".: type T struct, A int `json:\"a\"`",
		".: type T2 int", ".: var V int",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}
