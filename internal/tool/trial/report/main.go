// Report runs the trials of the judges in full and carries their figures into the pages that
// quote them.
//
//	go run ./internal/tool/trial/report           some ten minutes on two cores
//	go run ./internal/tool/trial/report -carry    of the trials as they stand
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

func main() {
	carry := flag.Bool("carry", false, "run no trial, carry the figures that stand")
	flag.Parse()
	if err := run(*carry); err != nil {
		fmt.Fprintln(os.Stderr, "report:", err)
		os.Exit(1)
	}
}

func run(carry bool) error {
	if !carry {
		trials := exec.Command("go", "test", "-timeout", "60m", "-run", "Trial$",
			"./internal/judge/diagnose", "./internal/judge/heatpump", "./internal/judge/coldroom")
		trials.Env = append(os.Environ(), "SATLINE_TRIAL=full")
		trials.Stdout, trials.Stderr = os.Stdout, os.Stderr
		if err := trials.Run(); err != nil {
			return err
		}
	}
	for file, table := range quoted {
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		fresh, err := carried(".", string(text), table)
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := os.WriteFile(file, []byte(fresh), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// A column is a figure of a trial: the row of its first table, and the cell.
type column struct {
	head, row string
	cell      int
}

const (
	oneFault = "one fault, effect 10 % or more"
	alarm    = "sound machine, something called wrong (false alarm)"
)

// A quotation is the table of figures of a page: how many of the trials, and what of them.
type quotation struct {
	trials  int
	columns []column
}

// quoted are the pages, each with a table between two marks.
var quoted = map[string]quotation{
	"README.md": {3, []column{
		{"one fault: named first", oneFault, 2}, {"among the first three", oneFault, 3},
		{"nothing wrong: false alarm", alarm, 2},
	}},
	"guides/trial.md": {len(trials), []column{
		{"visits with one fault", oneFault, 1}, {"named first", oneFault, 2},
		{"among the first three", oneFault, 3}, {"first after what was asked for", oneFault, 4},
		{"effect below 10 %: first", "one fault, effect below 10 %", 2},
		{"sound: called sound", "sound machine", 2}, {"sound: false alarm", alarm, 2},
	}},
}

// trials are the rows of the tables, those on machines of another kind first, by their page and the heading in it.
var trials = []struct{ name, page, heading string }{
	{"cooling, the test bench", "diagnose", "the test bench"},
	{"heating, the test bench", "heatpump", "the test bench"},
	{"cold rooms, their bench", "coldroom", "the bench"},
	{"cooling, machines by the model that was learnt from", "diagnose", "by the system model"},
	{"cooling, machines by a model made different on purpose", "diagnose", "deliberately different"},
}

const opened, closed = "<!-- figures of the trials -->\n", "<!-- end -->"

// carried is a page with its table of figures as the trials have them now.
func carried(root, page string, table quotation) (string, error) {
	before, rest, ok := strings.Cut(page, opened)
	_, after, ok2 := strings.Cut(rest, closed)
	if !ok || !ok2 {
		return "", fmt.Errorf("no table between %q and %q", opened, closed)
	}
	var b strings.Builder
	b.WriteString(before + opened + "| trial |")
	for _, c := range table.columns {
		fmt.Fprintf(&b, " %s |", c.head)
	}
	b.WriteString("\n|---|" + strings.Repeat("---|", len(table.columns)) + "\n")
	for _, t := range trials[:table.trials] {
		section, err := sectionOf(root, t.page, t.heading)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "| %s |", t.name)
		for _, c := range table.columns {
			_, row, found := strings.Cut(section, "\n| "+c.row+" |")
			row, _, _ = strings.Cut(row, "\n")
			cells := strings.Split(row, "|")
			if !found || len(cells) < c.cell {
				return "", fmt.Errorf("the trial of %s has no row %q", t.name, c.row)
			}
			fmt.Fprintf(&b, " %s |", strings.TrimSpace(cells[c.cell-1]))
		}
		b.WriteString("\n")
	}
	b.WriteString(closed + after)
	return b.String(), nil
}

// sectionOf is what a trial's page says under the heading that holds some words.
func sectionOf(root, judge, heading string) (string, error) {
	page, err := os.ReadFile(root + "/internal/judge/" + judge + "/testdata/trial.md")
	if err != nil {
		return "", err
	}
	for _, section := range strings.Split(string(page), "\n## ")[1:] {
		title, _, _ := strings.Cut(section, "\n")
		if strings.Contains(title, heading) {
			return section, nil
		}
	}
	return "", fmt.Errorf("the trial of %s has no heading with %q", judge, heading)
}
