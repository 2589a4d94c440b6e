// Report runs the tests that hold checks against published values and writes every check
// into VERIFICATION.md.
//
//	go run ./internal/tool/verify/report            write the file
//	go run ./internal/tool/verify/report -check     fail where the file is not fresh
//	go run ./internal/tool/verify/report -rows DIR  take what tests wrote there, run none
package main

import (
	"bufio"
	"cmp"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/satline/satline/internal/tool/verify"
)

const file = "VERIFICATION.md"

func main() {
	check := flag.Bool("check", false, "compare with the checked-in file and write nothing")
	dir := flag.String("rows", "", "folder that the tests were told by "+verify.Directory)
	flag.Parse()
	if err := run(*check, *dir); err != nil {
		fmt.Fprintln(os.Stderr, "report:", err)
		os.Exit(1)
	}
}

func run(check bool, dir string) error {
	collect := collect
	if dir != "" {
		collect = func() ([]verify.Row, error) { return rowsIn(dir) }
	}
	rows, err := collect()
	if err != nil {
		return err
	}
	fresh := page(rows)
	if !check {
		return os.WriteFile(file, []byte(fresh), 0o644)
	}
	kept, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	if string(kept) != fresh {
		return fmt.Errorf(
			"%s is not fresh; run go run ./internal/tool/verify/report and commit it", file,
		)
	}
	return nil
}

// checked lists the packages whose tests hold checks.
func checked() ([]string, error) {
	const tests = `{{.ImportPath}} {{.TestImports}} {{.XTestImports}}`
	out, err := exec.Command("go", "list", "-f", tests, "./...").Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var list []string
	for line := range strings.Lines(string(out)) {
		name, imports, _ := strings.Cut(line, " ")
		if strings.Contains(imports, "internal/tool/verify") {
			list = append(list, name)
		}
	}
	return list, nil
}

// collect runs the tests that hold checks once and reads the rows that they recorded.
func collect() ([]verify.Row, error) {
	packages, err := checked()
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "verification")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	tests := exec.Command("go", append([]string{"test", "-count=1"}, packages...)...)
	tests.Env = append(os.Environ(), verify.Directory+"="+dir)
	if out, err := tests.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the tests do not pass: %w\n%s", err, out)
	}
	return rowsIn(dir)
}

// rowsIn reads what tests wrote into a folder.
func rowsIn(dir string) ([]verify.Row, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	if err != nil {
		return nil, err
	}
	var rows []verify.Row
	for _, name := range files {
		more, err := read(name)
		if err != nil {
			return nil, err
		}
		if strings.HasSuffix(name, "internal_verify.jsonl") {
			continue
		}
		rows = append(rows, more...)
	}
	return rows, nil
}

func read(name string) ([]verify.Row, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var rows []verify.Row
	lines := bufio.NewScanner(f)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var row verify.Row
		if err := json.Unmarshal(lines.Bytes(), &row); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		rows = append(rows, row)
	}
	return rows, lines.Err()
}

func page(rows []verify.Row) string {
	slices.SortStableFunc(rows, func(a, b verify.Row) int {
		return cmp.Or(
			cmp.Compare(a.Package, b.Package), cmp.Compare(a.Source.Cite, b.Source.Cite),
			cmp.Compare(a.Test, b.Test), cmp.Compare(a.Check, b.Check),
			cmp.Compare(a.Reference, b.Reference),
		)
	})
	rows = slices.Compact(rows)
	var b strings.Builder
	b.WriteString("# Verification\n\n" +
		"Every check of the tests against a value from outside the project: what the source " +
		"says, what the project computes, how far apart they are and how far they may be. " +
		"Written by `go run ./internal/tool/verify/report` from the tests themselves; a row " +
		"outside its tolerance fails `go test ./...`.\n")
	for len(rows) > 0 {
		pkg := rows[0].Package
		n := slices.IndexFunc(rows, func(r verify.Row) bool { return r.Package != pkg })
		if n < 0 {
			n = len(rows)
		}
		section(&b, pkg, rows[:n])
		rows = rows[n:]
	}
	return b.String()
}

func section(b *strings.Builder, pkg string, rows []verify.Row) {
	if pkg == "" {
		pkg = "satline"
	}
	fmt.Fprintf(b, "\n## %s\n", pkg)
	source := verify.Source{}
	for _, r := range rows {
		if r.Source != source {
			source = r.Source
			fmt.Fprintf(
				b,
				"\n%s (%s)\n\n| check | unit | source says | computed | deviation | tolerance |\n"+
					"| --- | --- | ---: | ---: | ---: | ---: |\n",
				source.Cite, source.Kind,
			)
		}
		fmt.Fprintf(
			b, "| %s | %s | %.9g | %.7g | %s | %s |\n", r.Check, r.Unit, r.Reference, r.Computed,
			oneDigit(math.Abs(r.Computed-r.Reference)), oneDigit(r.Tolerance),
		)
	}
}

// oneDigit shows one digit of v that counts, and no power of ten where v is an
// everyday number.
func oneDigit(v float64) string {
	text := fmt.Sprintf("%.1g", v)
	if v < 1 || v >= 1e6 {
		return text
	}
	rounded, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return text
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
