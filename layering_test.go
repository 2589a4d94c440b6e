package satline

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "github.com/satline/satline"

// layers orders the packages; an import may only point to a lower layer, or to
// one named in sideways.
var layers = []struct {
	prefix string
	level  int
}{
	{"/examples/service/server", 9},
	{"/examples", 8},
	{"/internal/tool/schema", 7},
	{"/work", 6},
	{"/report", 5},
	{"/charge", 3}, {"/airside", 3}, {"/electrical", 3},
	{"/refrigerant/cycle", 3}, {"/refrigerant/diagram", 4}, {"/psychro/chart", 4},
	{"/refrigerant", 2}, {"/psychro", 2}, {"/internal/physics/cyclefluid", 2},
	{"/internal/physics/coil", 2},  // moist air over a coil, for airside and the cycle
	{"/internal/tool/tablegen", 3}, // makes the tables of refrigerant, from its equations
	{"/quantity/fact", 1}, {"/quantity", 0},
}

// facadeInternal are the internal packages that serve the facade alone and may
// see the layers below it.
var facadeInternal = []string{
	"/internal/judge/diagnose", "/internal/judge/readcheck", "/internal/judge/fitted",
	"/internal/judge/modes",
	"/internal/judge/cooling", "/internal/judge/heatpump", "/internal/judge/coldroom",
}

// The bench tries the diagnosis on machines that share nothing with the cycle model, nor
// with what is learnt from it. It may see the packages of benchMay alone, and nothing but
// tests may see it.
const benchPath = "/internal/judge/diagnose/testbench"

var benchMay = []string{
	"/quantity", "/refrigerant", "/psychro", "/internal/physics/cyclefluid", "/internal/base/root",
	"/internal/judge/diagnose",
}

func level(path string) int {
	path = strings.TrimPrefix(path, module)
	if path == "" {
		return 4
	}
	for _, p := range facadeInternal {
		if path == p || strings.HasPrefix(path, p+"/") {
			return 4
		}
	}
	for _, l := range layers {
		if path == l.prefix || strings.HasPrefix(path, l.prefix+"/") {
			return l.level
		}
	}
	return 1
}

// The arrows of the design point one way. Programs stand above everything.
func TestLayering(t *testing.T) {
	out, err := exec.Command("go", "list", "-f",
		`{{if eq .Name "main"}}{{else}}{{.ImportPath}}: {{join .Imports " "}}{{end}}`, "./...").
		Output()
	if err != nil {
		t.Skipf("go list does not run here: %v", err)
	}
	for line := range strings.Lines(string(out)) {
		from, imports, _ := strings.Cut(strings.TrimSpace(line), ": ")
		if from == "" {
			continue
		}
		a := strings.TrimPrefix(from, module)
		for _, to := range strings.Fields(imports) {
			b := strings.TrimPrefix(to, module)
			switch {
			case to == "gonum.org/v1/plot" || strings.HasPrefix(to, "gonum.org/v1/plot/"):
				if a != "/refrigerant/diagram" && a != "/psychro/chart" &&
					a != "/internal/page/picture" {
					t.Errorf(
						"%s imports %s: only the two picture packages and what they share may",
						from, to,
					)
				}
			case !strings.HasPrefix(to, module):
			case a == benchPath && !slices.Contains(benchMay, b), b == benchPath:
				t.Errorf("%s imports %s: the bench stays apart", from, to)
			case strings.HasPrefix(a, "/refrigerant") && strings.HasPrefix(b, "/psychro") &&
				level(from) <= 2,
				strings.HasPrefix(a, "/psychro") && strings.HasPrefix(b, "/refrigerant"):
				t.Errorf("%s imports %s: the two fluids do not know each other", from, to)
			case level(from) < level(to),
				level(from) == level(to) && level(from) != 1 && level(from) != 4 &&
					level(from) != 2:
				t.Errorf("%s imports %s: that points up or sideways", from, to)
			}
		}
	}
}
