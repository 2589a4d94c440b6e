package satline

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Files of the package use one another in one direction: at most three of them may stand in
// a circle. What a file uses is told by the type checker.
func TestFilesStandInNoCircle(t *testing.T) {
	uses := fileUses(t)
	var circles [][]string
	for _, c := range stronglyConnected(uses) {
		if len(c) > 1 {
			slices.Sort(c)
			circles = append(circles, c)
		}
	}
	total := 0
	for _, c := range circles {
		total += len(c)
		for _, from := range c {
			for to, names := range uses[from] {
				if slices.Contains(c, to) {
					t.Logf("%s uses %v of %s", from, names, to)
				}
			}
		}
	}
	t.Logf("%d files, in circles: %v", len(uses), circles)
	if total > 3 {
		t.Errorf("%d files stand in circles", total)
	}
}

// fileUses lists for each file the other files whose names it uses.
func fileUses(t *testing.T) map[string]map[string][]string {
	t.Helper()
	set := token.NewFileSet()
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	for _, p := range paths {
		if strings.HasSuffix(p, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(set, p, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	config := types.Config{Importer: importer.ForCompiler(set, "source", nil)}
	pkg, err := config.Check("github.com/satline/satline", set, files, info)
	if err != nil {
		t.Fatal(err)
	}
	uses := map[string]map[string][]string{}
	for _, f := range files {
		uses[set.Position(f.Pos()).Filename] = map[string][]string{}
	}
	for id, object := range info.Uses {
		if object.Pkg() != pkg {
			continue
		}
		// A field belongs to its type, and a method to the file it is written in.
		if v, ok := object.(*types.Var); ok && (v.IsField() || v.Parent() != pkg.Scope()) {
			continue
		}
		from, to := set.Position(id.Pos()).Filename, set.Position(object.Pos()).Filename
		if from != to && uses[from] != nil && !slices.Contains(uses[from][to], object.Name()) {
			uses[from][to] = append(uses[from][to], object.Name())
		}
	}
	return uses
}

// stronglyConnected finds the circles of a graph (Tarjan 1972, SIAM Journal on Computing
// 1:146-160).
func stronglyConnected(graph map[string]map[string][]string) [][]string {
	var out [][]string
	var stack []string
	index, low := map[string]int{}, map[string]int{}
	var visit func(string)
	visit = func(v string) {
		index[v], low[v] = len(index)+1, len(index)+1
		stack = append(stack, v)
		for w := range graph[v] {
			if index[w] == 0 {
				visit(w)
			}
			if slices.Contains(stack, w) {
				low[v] = min(low[v], low[w])
			}
		}
		if low[v] != index[v] {
			return
		}
		at := slices.Index(stack, v)
		out = append(out, slices.Clone(stack[at:]))
		stack = stack[:at]
	}
	for v := range graph {
		if index[v] == 0 {
			visit(v)
		}
	}
	return out
}
