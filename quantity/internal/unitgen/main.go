// Unitgen writes the types of package quantity from the table in table.go: a file
// for each type, the list of them all, that of package fact, and the test that each
// constructor, accessor and spelling agrees. Run it by go generate in package quantity.
package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"go/format"
	"log"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"text/template"
	"unicode"
	"unicode/utf8"
)

//go:embed type.tmpl
var typeText string

//go:embed kinds.tmpl
var kindsText string

//go:embed fact.tmpl
var factText string

//go:embed test.tmpl
var testText string

func main() {
	log.SetFlags(0)
	log.SetPrefix("unitgen: ")
	files, err := generate()
	if err != nil {
		log.Fatal(err)
	}
	for name, text := range files {
		if err := os.WriteFile(name, text, 0o644); err != nil {
			log.Fatal(err)
		}
	}
}

// generate returns the text of every generated file by its name.
func generate() (map[string][]byte, error) {
	out := make(map[string][]byte)
	add := func(name, text string, data any) error {
		t, err := template.New(name).Funcs(functions).Parse(text)
		if err != nil {
			return err
		}
		var b bytes.Buffer
		if err := t.Execute(&b, data); err != nil {
			return err
		}
		out[name], err = format.Source(b.Bytes())
		return err
	}
	for _, q := range table {
		if err := q.check(); err != nil {
			return nil, err
		}
		if err := add(fileName(q.Name), typeText, q); err != nil {
			return nil, fmt.Errorf("%s: %w", q.Name, err)
		}
	}
	if err := add("kinds.go", kindsText, table); err != nil {
		return nil, err
	}
	if err := add("fact/quantities.go", factText, table); err != nil {
		return nil, err
	}
	return out, add("every_type_gen_test.go", testText, table)
}

// check finds what the templates would make nonsense of.
func (q quantityType) check() error {
	if q.Difference != nil && len(q.Difference) != len(q.Units) {
		return fmt.Errorf("%s: an uncertainty has %d units, a value %d", q.Name,
			len(q.Difference), len(q.Units))
	}
	shows := []shown{q.SI, q.IP}
	if q.Fine != "" {
		shows = append(shows, q.FineSI, q.FineIP)
	}
	for _, s := range shows {
		if q.index(s.Symbol) < 0 {
			return fmt.Errorf("%s: shown in %q, which is none of its units", q.Name, s.Symbol)
		}
	}
	if q.Base() < 0 {
		return fmt.Errorf("%s: no unit is that of SI", q.Name)
	}
	return nil
}

func (q quantityType) index(symbol string) int {
	return slices.IndexFunc(q.Units, func(u unit) bool { return u.Symbol == symbol })
}

// Base is the index of the SI unit.
func (q quantityType) Base() int {
	return slices.IndexFunc(q.Units, func(u unit) bool { return u.Scale == "1" && u.Zero == "" })
}

// Kind is the name of the variable that holds the units.
func (q quantityType) Kind() string { return strings.ToLower(q.Name[:1]) + q.Name[1:] + "Kind" }

// Receiver is the first letter of the type.
func (q quantityType) Receiver() string { return strings.ToLower(q.Name[:1]) }

// Delta is the type of an uncertainty.
func (q quantityType) Delta() string {
	if q.Uncertainty != "" {
		return q.Uncertainty
	}
	return q.Name
}

// Shown is the literal of a unit to show, and its decimals.
func (q quantityType) Shown(s shown) string {
	return fmt.Sprintf("shown{%d, %d}", q.index(s.Symbol), s.Decimals)
}

// Spellings lists the units for the comment of the parser, each with its spellings.
func (q quantityType) Spellings() string {
	indent := 0
	for _, u := range q.Units {
		indent = max(indent, utf8.RuneCountInString(u.Symbol)+3)
	}
	var b strings.Builder
	for _, u := range q.Units {
		line := u.Symbol
		for i, a := range u.others() {
			if utf8.RuneCountInString(line+a) > 76 {
				b.WriteString("//\t" + line + "\n")
				line = ""
			}
			gap := max(2, indent-utf8.RuneCountInString(line))
			if i > 0 && line != "" {
				gap = 2
			}
			line += strings.Repeat(" ", gap) + a
		}
		b.WriteString("//\t" + line + "\n")
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// others are the spellings that are not one before in another case or spacing.
func (u unit) others() []string {
	var out []string
	seen := []string{plain(u.Symbol)}
	for _, a := range u.Also {
		if p := plain(a); !slices.Contains(seen, p) {
			seen, out = append(seen, p), append(out, a)
		}
	}
	return out
}

func plain(s string) string { return strings.ToLower(strings.ReplaceAll(s, " ", "")) }

// Make is the value of v of the unit, in SI.
func (u unit) Make() string {
	v := "v"
	if u.Zero != "" {
		v += " + " + u.Zero
	}
	if u.Scale == "1" {
		return v
	}
	if u.Zero != "" {
		v = "(" + v + ")"
	}
	return v + " * " + factor(u.Scale)
}

// Read is a value x in the unit.
func (u unit) Read(x string) string {
	v := "float64(" + x + ")"
	if u.Scale != "1" {
		v += " / " + factor(u.Scale)
	}
	if u.Zero != "" {
		v += " - " + u.Zero
	}
	return v
}

// factor sets a product in parentheses.
func factor(scale string) string {
	if strings.Contains(scale, " ") {
		return "(" + scale + ")"
	}
	return scale
}

// Literal is the unit as the package holds it.
func (u unit) Literal() string {
	fields := []string{fmt.Sprintf("symbol: %q, scale: %s", u.Symbol, u.Scale)}
	if u.Zero != "" {
		fields = append(fields, "zero: "+u.Zero)
	}
	for i, a := range u.Also {
		a = strconv.Quote(a)
		if i == 0 {
			a = "also: []string{" + a
		}
		if i == len(u.Also)-1 {
			a += "}"
		}
		fields = append(fields, a)
	}
	if u.In != "" {
		fields = append(fields, "in: in"+strings.ReplaceAll(u.In, " ", " | in"))
	}
	const width = 80
	text, column := "{", 1
	for i, f := range fields {
		switch {
		case i == 0:
		case column+len(f) > width:
			text += ",\n"
			column = 0
		default:
			text += ", "
		}
		text += f
		column += 2 + len(f)
	}
	return text + "}"
}

var functions = template.FuncMap{
	"comment": comment,
	"article": func(noun string) string {
		if strings.ContainsRune("aeiou", rune(noun[0])) {
			return "an " + noun
		}
		return "a " + noun
	},
}

// comment breaks a sentence into the lines of a doc comment.
func comment(parts ...string) string {
	const width = 77
	var lines []string
	line := "//"
	for _, word := range strings.Fields(strings.Join(parts, "")) {
		if len(line) > 2 && len([]rune(line))+1+len([]rune(word)) > width {
			lines = append(lines, line)
			line = "//"
		}
		line += " " + word
	}
	return strings.Join(append(lines, line), "\n")
}

// fileName is mass_flow.go for MassFlow.
func fileName(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return filepath.Clean(b.String() + ".go")
}
