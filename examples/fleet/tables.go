package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"github.com/satline/satline/quantity"
)

// A total with the parts of its key.
type total struct {
	key []string
	Tally
}

// of lists the totals of one table.
func (t tallies) of(table string) []total {
	var out []total
	for _, k := range slices.Sorted(t.keys()) {
		if parts := strings.Split(k, between); parts[0] == table {
			out = append(out, total{parts[1:], t[k]})
		}
	}
	return out
}

const (
	// most of a table that is ranked.
	most = 40
	// seldom is the share of orders below which a cause is not listed.
	seldom = 0.005
)

// report writes the tables, as Markdown.
func (t tallies) report(w io.Writer) {
	line := func(name string) int64 { return t["lines"+between+name].N }
	fmt.Fprintf(w, "# The fleet\n\n%d orders assessed; %d lines read, of which %d could not be "+
		"(see dead-letter) and %d stood there twice.\n\nA count is the sum of chances, ± its "+
		"standard uncertainty; behind a share stands the interval that holds the true one with "+
		"95 %% (Wilson 1927).\n", line("assessed"), line("read"), line("dead"), line("twice"))
	t.faultTable(w)
	t.refrigerantTable(w)
	t.callbackTable(w)
	t.instrumentTable(w)
	t.overchargeTable(w)
}

func (t tallies) faultTable(w io.Writer) {
	header(w, "Faults by model and season", "What was wrong as the machine was found.",
		"Model", "Months", "Orders", "Cause", "Count", "Share")
	orders := map[string]int64{}
	var rows []total
	for _, one := range t.of("faults") {
		if group := one.key[0] + between + one.key[1]; one.key[2] == "" {
			orders[group] = one.N
		} else if one.N = orders[group]; one.P.value() >= max(1, seldom*float64(one.N)) {
			rows = append(rows, one)
		}
	}
	slices.SortStableFunc(rows, func(a, b total) int {
		return cmp.Or(cmp.Compare(a.key[0], b.key[0]), cmp.Compare(a.key[1], b.key[1]),
			cmp.Compare(b.P, a.P))
	})
	for _, r := range rows {
		row(w, r.key[0], r.key[1], fmt.Sprint(r.N), r.key[2], count(r.Tally), share(r.Tally))
	}
}

func (t tallies) refrigerantTable(w io.Writer) {
	header(w, "Refrigerant by year",
		"What was added to machines that had lost it, as a share of the full charge of all "+
			"machines visited that year, ± its standard uncertainty between machines. Machines "+
			"that nobody visited are not in it. Over is how many leaked more than the federal "+
			"rule allows, by the annualizing method of 40 CFR 82.152.",
		"Year", "Machines", "Added", "Leak rate", "Over")
	for _, y := range t.of("refrigerant") {
		rate := "not known"
		if y.F > 0 && y.N > 1 {
			r, n := float64(y.A)/float64(y.F), float64(y.N)
			squares := y.AA.value() - 2*r*y.AF.value() + r*r*y.FF.value()
			spread := math.Sqrt(max(0, squares) * n / (n - 1))
			rate = fmt.Sprintf("%.1f %% ± %.1f %%", 100*r, 100*spread/y.F.value())
		}
		added := quantity.Kilograms(y.A.value())
		row(w, y.key[0], fmt.Sprint(y.N),
			added.Format(quantity.IP)+", "+added.Format(quantity.SI), rate,
			fmt.Sprintf("%.0f", y.P.value()))
	}
}

func (t tallies) callbackTable(w io.Writer) {
	header(w, fmt.Sprintf("Callbacks within %d days", callbackDays), "Visited again for the same "+
		"cause. Orders at the very end of the archive count as not called back.",
		"Cause", "Orders", "Callbacks", "Share")
	all := t.of("callbacks")
	slices.SortStableFunc(all, func(a, b total) int { return cmp.Compare(b.P, a.P) })
	for _, c := range all {
		row(w, c.key[0], fmt.Sprint(c.N), count(c.Tally), share(c.Tally))
	}
}

// instrumentTable ranks who reads wrong more often than others do the same reading, by
// how many standard uncertainties.
func (t tallies) instrumentTable(w io.Writer) {
	header(w, "Instruments that lie",
		"Readings that are likely wrong, where one technician has more of them than all have of "+
			"that reading by over three standard uncertainties. Try the instrument against "+
			"another before blaming anybody.",
		"Technician", "Reading", "Readings", "Wrong", "Share", "Share of all")
	readings := t.of("instruments")
	all := map[string]Tally{}
	for _, r := range readings {
		all[r.key[1]] = addTallies(all[r.key[1]], r.Tally)
	}
	rank := func(r total) float64 {
		rest := all[r.key[1]]
		usual := rest.P.value() / float64(rest.N)
		n := float64(r.N)
		return (r.P.value() - n*usual) / math.Sqrt(r.V.value()+n*usual*(1-usual)+1)
	}
	slices.SortStableFunc(readings, func(a, b total) int { return cmp.Compare(rank(b), rank(a)) })
	for i, r := range readings {
		if i == most || rank(r) < 3 {
			break
		}
		rest := all[r.key[1]]
		row(w, r.key[0], r.key[1], fmt.Sprint(r.N), count(r.Tally), share(r.Tally),
			fmt.Sprintf("%.1f %%", 100*rest.P.value()/float64(rest.N)))
	}
}

func (t tallies) overchargeTable(w io.Writer) {
	header(w, "Overcharges by technician",
		"Machines left with over 5 % too much after refrigerant was added.",
		"Technician", "Charged", "Overcharged", "Share")
	all := t.of("overcharges")
	slices.SortStableFunc(all, func(a, b total) int {
		return cmp.Compare(b.P.value()/float64(b.N), a.P.value()/float64(a.N))
	})
	for i, r := range all {
		if i == most {
			break
		}
		row(w, r.key[0], fmt.Sprint(r.N), count(r.Tally), share(r.Tally))
	}
}

func header(w io.Writer, title, about string, columns ...string) {
	fmt.Fprintf(w, "\n## %s\n\n%s\n\n", title, about)
	row(w, columns...)
	fmt.Fprintln(w, "|"+strings.Repeat(" --- |", len(columns)))
}

// plainCell keeps text of strangers in its cell.
var plainCell = strings.NewReplacer("|", "\\|", "\n", " ", "\r", " ", "<", "&lt;")

func row(w io.Writer, cells ...string) {
	for i := range cells {
		cells[i] = plainCell.Replace(cells[i])
	}
	fmt.Fprintf(w, "| %s |\n", strings.Join(cells, " | "))
}

func count(t Tally) string {
	return fmt.Sprintf("%.1f ± %.1f", t.P.value(), math.Sqrt(t.V.value()))
}

// share is P of N with the interval of Wilson (1927), in a hundred.
func share(t Tally) string {
	n, z := float64(t.N), 1.96
	if n == 0 {
		return "none"
	}
	p := min(t.P.value()/n, 1)
	middle := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return fmt.Sprintf("%.1f %% (%.1f to %.1f)",
		100*p, 100*max(0, middle-half), 100*(middle+half))
}
