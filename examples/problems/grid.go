package main

import "math"

// A grid is an excerpt of a printed table, by columns with their units.
type grid struct {
	d     *draft
	rows  [][]float64
	units []unit
}

// print adds the excerpt to the problem.
func (t grid) print(caption string, head []string) {
	print := Table{Caption: caption, Head: head}
	for _, row := range t.rows {
		var cells []string
		for i, v := range row {
			if math.IsNaN(v) {
				cells = append(cells, "–")
				continue
			}
			cells = append(cells, t.units[i].number(v))
		}
		print.Rows = append(print.Rows, cells)
	}
	t.d.table(print)
}

// between reads column to where column from is at, between two rows where need
// be, as a student does; slip reads so many rows off. It is NaN outside the excerpt.
func (t grid) between(from, to int, at float64, slip int) float64 {
	for i := range t.rows {
		j := i + slip
		switch x := t.rows[i][from]; {
		case x < at-1e-9:
		case math.Abs(x-at) < 1e-9:
			if j < 0 || j >= len(t.rows) {
				return math.NaN()
			}
			return t.rows[j][to]
		case i == 0 || j < 1 || j >= len(t.rows):
			return math.NaN()
		default:
			before := t.rows[i-1][from]
			share := (at - before) / (x - before)
			return t.rows[j-1][to] + share*(t.rows[j][to]-t.rows[j-1][to])
		}
	}
	return math.NaN()
}

// how binds NAME-how and NAME-sum: how a column was read, and the calculation.
func (t grid) how(name string, from, to int, at float64) {
	d, x, y := t.d, t.units[from], t.units[to]
	for i, row := range t.rows {
		if math.Abs(row[from]-at) < 1e-9 {
			d.bound[name+"-how"] = say(d.language, "how-row", "from", x.print(at),
				"to", y.print(row[to]))
			d.bound[name+"-sum"] = ""
			return
		}
		if i == 0 || row[from] < at || t.rows[i-1][from] > at {
			continue
		}
		low := t.rows[i-1]
		d.bound[name+"-how"] = say(d.language, "how-between", "from", x.print(at),
			"low", x.number(low[from]), "high", x.number(row[from]))
		d.bound[name+"-sum"] = y.number(low[to]) + " + (" + x.number(at) + " − " +
			x.number(low[from]) + ") / (" + x.number(row[from]) + " − " + x.number(low[from]) +
			") × (" + y.number(row[to]) + " − " + y.number(low[to]) + ") = " +
			y.print(t.between(from, to, at, 0))
		return
	}
}
