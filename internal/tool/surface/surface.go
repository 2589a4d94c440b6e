// Package surface lists what the public packages of the module export, one
// declaration a line, so that a change of the surface shows in a diff.
package surface

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// List returns the exported declarations of every public package below root,
// each behind the path of its package, sorted.
func List(root string) ([]string, error) {
	var out []string
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if name := d.Name(); path != root &&
			(strings.HasPrefix(name, ".") || name == "internal" || name == "testdata" ||
				name == "examples") {
			return filepath.SkipDir
		}
		lines, err := listDir(root, path)
		out = append(out, lines...)
		return err
	})
	slices.Sort(out)
	return slices.Compact(out), err
}

func listDir(root, dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	rel, err := filepath.Rel(root, dir)
	if err != nil {
		return nil, err
	}
	var out []string
	for _, e := range entries {
		name := e.Name()
		if e.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		files := token.NewFileSet()
		f, err := parser.ParseFile(
			files, filepath.Join(dir, name), nil, parser.SkipObjectResolution,
		)
		if err != nil {
			return nil, err
		}
		if f.Name.Name == "main" {
			continue
		}
		for _, d := range f.Decls {
			for _, line := range declaration(files, d) {
				out = append(out, filepath.ToSlash(rel)+": "+line)
			}
		}
	}
	return out, nil
}

func declaration(files *token.FileSet, d ast.Decl) []string {
	switch d := d.(type) {
	case *ast.FuncDecl:
		if !d.Name.IsExported() || d.Recv != nil && !exportedReceiver(d.Recv) {
			return nil
		}
		return []string{source(files, &ast.FuncDecl{Recv: d.Recv, Name: d.Name, Type: d.Type})}
	case *ast.GenDecl:
		var out []string
		for i, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				if s.Name.IsExported() {
					out = append(out, typeLines(files, s)...)
				}
			case *ast.ValueSpec:
				for _, n := range s.Names {
					if n.IsExported() {
						out = append(out, value(files, d.Tok, d.Specs[:i+1], s, n))
					}
				}
			}
		}
		return out
	}
	return nil
}

func exportedReceiver(recv *ast.FieldList) bool {
	t := recv.List[0].Type
	for {
		switch u := t.(type) {
		case *ast.StarExpr:
			t = u.X
		case *ast.IndexExpr:
			t = u.X
		case *ast.Ident:
			return u.IsExported()
		default:
			return false
		}
	}
}

// value writes a constant or variable with its type, which for a constant
// without one is that of the constant above it in the group.
func value(
	files *token.FileSet, tok token.Token, group []ast.Spec, s *ast.ValueSpec, n *ast.Ident,
) string {
	typ := s.Type
	for i := len(group) - 1; i >= 0 && typ == nil && len(s.Values) == 0; i-- {
		typ = group[i].(*ast.ValueSpec).Type
	}
	line := tok.String() + " " + n.Name
	if typ != nil {
		line += " " + source(files, typ)
	}
	return line
}

// typeLines writes a struct or an interface one exported member a line, and
// another type whole.
func typeLines(files *token.FileSet, s *ast.TypeSpec) []string {
	head := "type " + s.Name.Name
	if s.TypeParams != nil {
		var params []string
		for _, f := range s.TypeParams.List {
			for _, n := range f.Names {
				params = append(params, n.Name+" "+source(files, f.Type))
			}
		}
		head += "[" + strings.Join(params, ", ") + "]"
	}
	if s.Assign.IsValid() {
		head += " ="
	}
	var members *ast.FieldList
	switch t := s.Type.(type) {
	case *ast.StructType:
		members, head = t.Fields, head+" struct"
	case *ast.InterfaceType:
		members, head = t.Methods, head+" interface"
	default:
		return []string{head + " " + source(files, s.Type)}
	}
	out := []string{head}
	for _, f := range members.List {
		if len(f.Names) == 0 {
			out = append(out, head+", "+source(files, f.Type))
		}
		for _, n := range f.Names {
			if n.IsExported() {
				line := head + ", " + n.Name + " " + source(files, f.Type)
				if f.Tag != nil {
					line += " " + f.Tag.Value
				}
				out = append(out, line)
			}
		}
	}
	return out
}

func source(files *token.FileSet, node any) string {
	var b bytes.Buffer
	if err := printer.Fprint(&b, files, node); err != nil {
		return fmt.Sprint(err)
	}
	line := strings.Join(strings.Fields(b.String()), " ")
	return strings.NewReplacer("( ", "(", ", )", ")").Replace(line) // however it was broken
}
