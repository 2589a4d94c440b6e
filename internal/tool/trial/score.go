package trial

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// A Score is how often the truth was named in visits of one kind: first, among the first
// three, and first once what was asked for had been answered.
type Score struct{ First, Three, After Part }

// Count adds a visit.
func (s *Score) Count(first, three, after bool) {
	s.First.Count(first)
	s.Three.Count(three)
	s.After.Count(after)
}

// A Group is a row of a trial's first table; a part of nothing leaves its cell empty.
type Group struct {
	Name string
	Score
}

// WriteGroups writes a trial's first table; asked says what was answered in between.
func WriteGroups(b *strings.Builder, asked string, groups []Group) {
	fmt.Fprintf(b, "Figures are shares with their 95 %% score interval.\n\n"+
		"| group | visits | first explanation right | among the first three | "+
		"first right after %s |\n|---|---|---|---|---|\n", asked)
	for _, g := range groups {
		fmt.Fprintf(b, "| %s | %d | %v | %v | %v |\n", g.Name, g.First.Of, g.First, g.Three,
			g.After)
	}
	b.WriteString("\n")
}

// A Cause is what came of the visits where one thing was wrong.
type Cause struct {
	Score
	Taken map[string]int // what it was taken for instead, and how often
}

// Causes are the rows of the table of confusion, by the truth.
type Causes map[string]*Cause

// Count adds a visit whose truth was said to be something.
func (c Causes) Count(truth, said string, three, after bool) {
	if c[truth] == nil {
		c[truth] = &Cause{Taken: map[string]int{}}
	}
	c[truth].Score.Count(said == truth, three, after)
	if said != truth {
		c[truth].Taken[said]++
	}
}

// Write writes the table of confusion; asked says what was answered in between.
func (c Causes) Write(b *strings.Builder, asked string) {
	fmt.Fprintf(b, "| truth | visits | first | first three | first after %s | taken for |\n"+
		"|---|---|---|---|---|---|\n", asked)
	for _, truth := range slices.Sorted(maps.Keys(c)) {
		x := c[truth]
		others := slices.SortedFunc(maps.Keys(x.Taken), func(a, b string) int {
			return cmp.Or(x.Taken[b]-x.Taken[a], strings.Compare(a, b))
		})
		for i, code := range others {
			others[i] = fmt.Sprintf("%s %d", code, x.Taken[code])
		}
		fmt.Fprintf(b, "| %s | %d | %v | %v | %v | %s |\n", truth, x.First.Of, x.First, x.Three,
			x.After, strings.Join(others, ", "))
	}
	b.WriteString("\n")
}
