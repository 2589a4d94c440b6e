package main

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

// toTemperature are the forms that read a temperature off the saturation table, the others in
// which it is read go from a temperature to a pressure.
var toTemperature = []string{
	"saturation/boiling", "saturation/condensing", "superheat/find", "superheat/line",
	"superheat/coil", "subcooling/find", "subcooling/line", "subcooling/riser",
	"altitude/superheat", "altitude/subcooling", "refrigeration/superheat",
	"refrigeration/difference", "refrigeration/room", "standing/degrees",
}

var toPressure = []string{
	"saturation/cylinder", "saturation/coil", "superheat/pressure", "subcooling/pressure",
	"altitude/shown", "refrigeration/pressure", "standing/expected", "standing/partial",
}

// saturationTable is the place of the table with a bubble and a dew column.
func (p Problem) saturationTable() int {
	return slices.IndexFunc(p.Tables, func(t Table) bool {
		return len(t.Head) == 3 && strings.HasPrefix(t.Head[1], "bubble")
	})
}

// halfRow is half of the step of temperatures in that table.
func (p Problem) halfRow() float64 {
	rows := p.Tables[p.saturationTable()].Rows
	return (figure(rows[1][0]) - figure(rows[0][0])) / 2
}

// rewritten is the problem with another saturation table: the cell of each row and column is
// taken from elsewhere.
func (p Problem) rewritten(from func(row, column int) (int, int)) Problem {
	at := p.saturationTable()
	old, changed := p.Tables[at], Table{}
	changed.Caption, changed.Head = old.Caption, old.Head
	for i := range old.Rows {
		var cells []string
		for j := range old.Rows[i] {
			r, c := from(i, j)
			if r < 0 || r >= len(old.Rows) {
				cells = append(cells, "–")
				continue
			}
			cells = append(cells, old.Rows[r][c])
		}
		changed.Rows = append(changed.Rows, cells)
	}
	p.Tables = slices.Clone(p.Tables)
	p.Tables[at] = changed
	return p
}

// misread is the problem as one has it who makes the mistake, or false where the code is of
// another kind.
func (p Problem) misread(code string, temperature bool) (Problem, bool) {
	slips := map[string]int{
		"row-below": 1, "row-above": -1, "two-rows-below": 2, "two-rows-above": -2,
	}
	switch by, slip := slips[code]; {
	case slip:
		return p.rewritten(func(i, j int) (int, int) {
			if (j == 0) == temperature {
				return i + by, j
			}
			return i, j
		}), true
	case code == "dew-column", code == "bubble-column":
		return p.rewritten(func(i, j int) (int, int) { return i, [3]int{0, dew, bubble}[j] }), true
	case code == "sea-level-added", code == "sea-level-taken-off":
		p.Given = slices.Clone(p.Given)
		for i, g := range p.Given {
			if g.Name == "atmosphere here" {
				sea := quantity.StandardAtmosphere
				switch {
				case strings.HasSuffix(g.Value, "psia"):
					p.Given[i].Value = fixed(sea.PSIA(), 1) + " psia"
				case strings.HasSuffix(g.Value, "kPa"):
					p.Given[i].Value = fixed(sea.Kilopascals(), 0) + " kPa"
				default:
					p.Given[i].Value = fixed(sea.Bar(), 2) + " bar"
				}
			}
		}
		return p, true
	}
	return p, false
}

// Whoever makes the mistake with the print in hand comes to the wrong answer that names it.
func TestMistakesLeadThere(t *testing.T) {
	found := map[string]int{}
	for _, o := range styles {
		for o.Difficulty = 1; o.Difficulty <= 3; o.Difficulty++ {
			for o.Seed = 90; o.Seed < 93; o.Seed++ {
				o.PerTopic, o.Topics = 4, slices.Concat(toTemperature, toPressure)
				for _, p := range mustGenerate(t, o).Problems {
					at := p.Topic + "/" + p.Form
					for _, w := range p.Wrong {
						wrong, ok := p.misread(w.Code, slices.Contains(toTemperature, at))
						if !ok {
							continue
						}
						got := byHand[at](sheetOfPaper{t, wrong})
						if math.IsNaN(got) {
							continue // the slip leaves the excerpt
						}
						found[w.Code]++
						within := 1.5 * p.Answer.Within
						if o.Difficulty == 1 && strings.HasSuffix(w.Code, "-column") {
							within += p.halfRow() // the first level reads the nearest row
						}
						if !(math.Abs(got-w.Value) <= within) {
							t.Errorf("%s: %s leads to %g, not to %s (right: %s): %v",
								at, w.Code, got, w.Text, p.Answer.Text, p.Given)
						}
					}
				}
			}
		}
	}
	t.Log(found)
	for _, code := range []string{"row-below", "row-above", "two-rows-below", "two-rows-above",
		"dew-column", "bubble-column", "sea-level-added"} {
		if found[code] == 0 {
			t.Errorf("no wrong answer of %s", code)
		}
	}
}
