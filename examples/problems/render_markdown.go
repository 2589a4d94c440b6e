package main

import (
	"fmt"
	"strings"
)

func (s Set) title() string {
	return fmt.Sprintf("Problem set %d (%s units, difficulty %d)", s.Options.Seed, s.Options.Units, s.Options.Difficulty)
}

// markdown writes the problems, then the answers, and with key the solutions.
func (s Set) markdown(key bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", s.title())
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "\n## %d. %s\n\n%s\n\n", p.Number, sentence(p.Topic), p.Statement)
		for _, g := range p.Given {
			fmt.Fprintf(&b, "- %s: %s\n", g.Name, g.Value)
		}
		fmt.Fprintf(&b, "\n%s\n", p.Ask)
		for _, t := range p.Tables {
			fmt.Fprintf(&b, "\n%s\n\n| %s |\n|%s\n", t.Caption, strings.Join(t.Head, " | "), strings.Repeat(" ---: |", len(t.Head)))
			for _, r := range t.Rows {
				fmt.Fprintf(&b, "| %s |\n", strings.Join(r, " | "))
			}
		}
	}
	if !key {
		return b.String()
	}
	b.WriteString("\n# Answer key\n")
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "\n## %d. %s\n\n", p.Number, p.Answer.Text)
		for i, st := range p.Steps {
			fmt.Fprintf(&b, "%d. %s (%s)\n", i+1, st.Text, st.Source)
		}
		b.WriteString("\nWrong answers and the mistake behind each:\n\n")
		for _, w := range p.Wrong {
			fmt.Fprintf(&b, "- %s: %s\n", w.Text, w.Mistake)
		}
	}
	return b.String()
}
