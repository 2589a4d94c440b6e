package charge

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"testing"
)

// Every figure and condition of rules.go is in Rules, with words and a source.
func TestRulesAreComplete(t *testing.T) {
	listed := map[string]bool{}
	for _, r := range Rules() {
		if listed[r.Code] {
			t.Errorf("%s is listed twice", r.Code)
		}
		listed[r.Code] = true
		if r.Says == "" || r.Source.Standing == 0 {
			t.Errorf("%s has no words or no source", r.Code)
		}
		if r.Source.Title == "" && r.Source.Standing != CommonPractice {
			t.Errorf("%s has no title for its source", r.Code)
		}
	}
	tree, err := parser.ParseFile(token.NewFileSet(), "rules.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	ast.Inspect(tree, func(n ast.Node) bool {
		lit, ok := n.(*ast.CompositeLit)
		if !ok || len(lit.Elts) == 0 {
			return true
		}
		code, ok := lit.Elts[0].(*ast.BasicLit)
		if id, isSource := lit.Type.(*ast.Ident); !ok || isSource && id.Name == "Source" {
			return true
		}
		name, err := strconv.Unquote(code.Value)
		if err == nil {
			found++
			if !listed[name] {
				t.Errorf("%s stands in rules.go and is not in Rules", name)
			}
		}
		return true
	})
	if found != len(listed) {
		t.Errorf("%d rules written, %d listed", found, len(listed))
	}
}
