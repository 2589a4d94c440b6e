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
	for file, tables := range quoted {
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		fresh, err := carried(".", string(text), tables)
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := os.WriteFile(file, []byte(fresh), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// A column is a figure of a trial: the row of its tables, and the cell.
type column struct {
	head, row string
	cell      int
}

// A subject is one trial: how a table names it, its page, and the heading in it.
type subject struct{ name, page, heading string }

const (
	oneFault = "one fault, effect 10 % or more"
	oneFeed  = oneFault + ", a drier and a starving valve counted as one"
	alarm    = "sound machine, something called wrong (false alarm)"
)

// A quotation is a table of a page, after a mark: some of the trials, and what of them.
type quotation struct {
	mark    string
	trials  []subject
	columns []column
}

// Trials, those on machines of another kind first.
var (
	trials = []subject{
		{"cooling, the test bench", "diagnose", "the test bench"},
		{"heating, the test bench", "heatpump", "the test bench"},
		{"cold rooms, their bench", "coldroom", "the bench"},
		{"cooling, machines by the model that was learnt from", "diagnose", "by the system model"},
		{
			"cooling, machines by a model made different on purpose", "diagnose",
			"deliberately different",
		},
	}
	ofCooling = []subject{trials[0], trials[3], trials[4]}
)

// quoted are the pages with their tables.
var quoted = map[string][]quotation{
	"README.md": {{"figures of the trials", trials[:3], []column{
		{"one fault: named first", oneFault, 2}, {"among the first three", oneFault, 3},
		{"nothing wrong: false alarm", alarm, 2},
	}}},
	"guides/trial.md": {
		{"figures of the trials", trials, []column{
			{"visits with one fault", oneFault, 1}, {"named first", oneFault, 2},
			{"among the first three", oneFault, 3}, {"first after what was asked for", oneFault, 4},
			{"effect below 10 %: first", "one fault, effect below 10 %", 2},
			{"sound: called sound", "sound machine", 2}, {"sound: false alarm", alarm, 2},
		}},
		{"figures of cold rooms", trials[2:3], []column{
			{"named first by instruments alone", hadKnown("nothing but what instruments show"), 2},
			{"as found", oneFault, 2},
			{"as found, drier and starving valve as one", oneFeed, 2},
			{"had the bulb's superheat been known", hadKnown("the superheat at the bulb"), 2},
			{"the receiver's level", hadKnown("the receiver's level"), 2},
			{"the bulb's seat", hadKnown("the seat of the bulb"), 2},
			{"the two sides of the drier", hadKnown("the two sides of the drier"), 2},
			{"all that anyone sees who walks in", hadKnown("all that anyone sees who walks in"), 2},
			{
				"all that is seen or felt in three minutes",
				hadKnown("all that is seen or felt within three minutes"), 2,
			},
			{"after what was asked for", oneFault, 4},
		}},
		{"figures of the charge", ofCooling, []column{
			{"said low, and is", "said low, and right", 1},
			{"said high, and is", "said high, and right", 1},
			{"said in band, and is", "said in band, and right", 1},
			{"short by 10 % or more: said low", "the same, short of refrigerant", 1},
			{"over by 10 % or more: said high", "the same, too much of it", 1},
			{"said the wrong way", "the wrong way", 1},
		}},
	},
}

// hadKnown is the row of a trial of cold rooms where something more had been known.
func hadKnown(what string) string { return oneFault + ", had " + what + " been known" }

const closed = "<!-- end -->\n"

// carried is a page with its tables of figures as the trials have them now.
func carried(root, page string, tables []quotation) (string, error) {
	for _, table := range tables {
		opened := "<!-- " + table.mark + " -->\n"
		before, rest, ok := strings.Cut(page, opened)
		_, after, ok2 := strings.Cut(rest, closed)
		if !ok || !ok2 {
			return "", fmt.Errorf("no table between %q and %q", opened, closed)
		}
		text, err := table.text(root)
		if err != nil {
			return "", err
		}
		page = before + opened + text + closed + after
	}
	return page, nil
}

func (q *quotation) text(root string) (string, error) {
	var b strings.Builder
	b.WriteString("| trial |")
	for _, c := range q.columns {
		fmt.Fprintf(&b, " %s |", c.head)
	}
	b.WriteString("\n|---|" + strings.Repeat("---|", len(q.columns)) + "\n")
	for _, t := range q.trials {
		section, err := sectionOf(root, t.page, t.heading)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "| %s |", t.name)
		for _, c := range q.columns {
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
