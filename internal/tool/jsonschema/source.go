package jsonschema

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// source reads comments and constants of the packages of a module.
type source struct {
	module, dir string
	packages    map[string]*packageSource
}

type packageSource struct {
	types   map[string]string            // comment by type
	fields  map[string]map[string]string // comment by type and field
	strings map[string][]string          // string constants by type
	ints    map[string][]int             // integer constants by type
}

func newSource(module, dir string) *source {
	return &source{module: module, dir: dir, packages: make(map[string]*packageSource)}
}

func (s *source) of(t reflect.Type) (*packageSource, error) {
	path := t.PkgPath()
	if p := s.packages[path]; p != nil {
		return p, nil
	}
	rel, ok := strings.CutPrefix(path, s.module)
	if !ok {
		return nil, fmt.Errorf("jsonschema: %v is not of module %s", t, s.module)
	}
	p, err := readPackage(filepath.Join(s.dir, filepath.FromSlash(rel)))
	if err == nil {
		s.packages[path] = p
	}
	return p, err
}

func baseName(t reflect.Type) string {
	name, _, _ := strings.Cut(t.Name(), "[")
	return name
}

func (s *source) typeComment(t reflect.Type) (string, error) {
	p, err := s.of(t)
	if err != nil {
		return "", err
	}
	return p.types[baseName(t)], nil
}

// fieldComments gives the comments of a struct and of those it embeds, with the
// names of fields as JSON has them.
func (s *source) fieldComments(t reflect.Type) (map[string]string, error) {
	out := make(map[string]string)
	if t.Name() == "" {
		return out, nil
	}
	p, err := s.of(t)
	if err != nil {
		return nil, err
	}
	names := make(map[string]string)
	for _, f := range reflect.VisibleFields(t) {
		if name, _, _ := strings.Cut(f.Tag.Get("json"), ","); name != "" && name != "-" {
			names[f.Name] = name
		}
		if f.Anonymous && f.Type.Kind() == reflect.Struct {
			inner, err := s.fieldComments(f.Type)
			if err != nil {
				return nil, err
			}
			for k, v := range inner {
				out[k] = v
			}
		}
	}
	for name, comment := range p.fields[baseName(t)] {
		out[name] = word.ReplaceAllStringFunc(comment, func(w string) string {
			if json, ok := names[w]; ok {
				return json
			}
			return w
		})
	}
	return out, nil
}

var word = regexp.MustCompile(`\b[A-Z][A-Za-z]*[a-z][A-Za-z]*\b`)

// strings lists the constants of a string type; none for string itself.
func (s *source) strings(t reflect.Type) ([]string, error) {
	if t.PkgPath() == "" {
		return nil, nil
	}
	p, err := s.of(t)
	if err != nil {
		return nil, err
	}
	return p.strings[t.Name()], nil
}

// integers lists the constants of an integer type.
func (s *source) integers(t reflect.Type) ([]int, error) {
	p, err := s.of(t)
	if err != nil {
		return nil, err
	}
	if len(p.ints[t.Name()]) == 0 {
		return nil, fmt.Errorf("jsonschema: no constants of type %v", t)
	}
	return p.ints[t.Name()], nil
}

func readPackage(dir string) (*packageSource, error) {
	p := &packageSource{
		types:   make(map[string]string),
		fields:  make(map[string]map[string]string),
		strings: make(map[string][]string),
		ints:    make(map[string][]int),
	}
	paths, err := fs.Glob(os.DirFS(dir), "*.go")
	if err != nil {
		return nil, err
	}
	slices.Sort(paths)
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(dir, path), nil,
			parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, fmt.Errorf("jsonschema: %w", err)
		}
		for _, d := range file.Decls {
			g, ok := d.(*ast.GenDecl)
			switch {
			case !ok:
			case g.Tok == token.TYPE:
				p.readTypes(g)
			case g.Tok == token.CONST:
				p.readConstants(g)
			}
		}
	}
	return p, nil
}

func (p *packageSource) readTypes(g *ast.GenDecl) {
	for _, spec := range g.Specs {
		t := spec.(*ast.TypeSpec)
		comment := t.Doc
		if comment == nil && len(g.Specs) == 1 {
			comment = g.Doc
		}
		p.types[t.Name.Name] = oneLine(comment)
		st, ok := t.Type.(*ast.StructType)
		if !ok {
			continue
		}
		fields, above := make(map[string]string), ""
		for _, f := range st.Fields.List {
			text := cmp.Or(oneLine(f.Doc), oneLine(f.Comment))
			for _, n := range f.Names {
				fields[n.Name] = text
				if text == "" && slices.Contains(word.FindAllString(above, -1), n.Name) {
					fields[n.Name] = above // one comment for several fields, which it names
				}
			}
			above = cmp.Or(text, above)
		}
		p.fields[t.Name.Name] = fields
	}
}

// readConstants takes string constants with their type written, and integer
// ones that count by iota, from 0 or by "iota + n".
func (p *packageSource) readConstants(g *ast.GenDecl) {
	typeName, from, counting := "", 0, false
	for i, spec := range g.Specs {
		c := spec.(*ast.ValueSpec)
		if len(c.Values) > 0 {
			typeName, counting = "", false
			if id, ok := c.Type.(*ast.Ident); ok {
				typeName = id.Name
			}
			if lit, ok := c.Values[0].(*ast.BasicLit); ok && lit.Kind == token.STRING &&
				typeName != "" {
				if s, err := strconv.Unquote(lit.Value); err == nil {
					p.strings[typeName] = append(p.strings[typeName], s)
				}
			}
			from, counting = countsFrom(c.Values[0])
		}
		if counting && typeName != "" {
			p.ints[typeName] = append(p.ints[typeName], from+i)
		}
	}
}

func countsFrom(e ast.Expr) (from int, ok bool) {
	switch e := e.(type) {
	case *ast.Ident:
		return 0, e.Name == "iota"
	case *ast.BinaryExpr:
		left, leftOK := e.X.(*ast.Ident)
		right, rightOK := e.Y.(*ast.BasicLit)
		if leftOK && rightOK && left.Name == "iota" && e.Op == token.ADD &&
			right.Kind == token.INT {
			n, err := strconv.Atoi(right.Value)
			return n, err == nil
		}
	}
	return 0, false
}

func oneLine(c *ast.CommentGroup) string {
	return strings.Join(strings.Fields(c.Text()), " ")
}
