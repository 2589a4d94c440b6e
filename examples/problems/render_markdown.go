package main

import (
	"fmt"
	"strings"
)

// markdown writes the problems, and with key the answers and solutions.
func (s Set) markdown(key bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", s.title())
	for _, p := range s.Problems {
		s.markdownProblem(&b, p)
	}
	if formulas := s.formulas(); len(formulas) > 0 {
		fmt.Fprintf(&b, "\n## %s\n\n", s.say("formulas"))
		for _, f := range formulas {
			fmt.Fprintf(&b, "- %s %s\n", f.words.in(s.Options.Language), f.sum)
		}
	}
	fmt.Fprintf(&b, "\n## %s\n\n", s.say("glossary"))
	for _, t := range s.glossary() {
		fmt.Fprintf(&b, "- %s: %s\n", t.Word, t.Means)
	}
	b.WriteString("\n---\n")
	for _, c := range s.cautions() {
		fmt.Fprintf(&b, "\n%s\n", c)
	}
	fmt.Fprintf(&b, "\n%s\n", s.Name())
	if key {
		s.markdownKey(&b)
	}
	return b.String()
}

func (s Set) markdownProblem(b *strings.Builder, p Problem) {
	fmt.Fprintf(b, "\n## %d. %s\n\n%s\n\n", p.Number, p.Title, p.Statement)
	for _, g := range p.Given {
		fmt.Fprintf(b, "- %s: %s\n", g.Name, g.Value)
	}
	fmt.Fprintf(b, "\n%s\n", p.Ask)
	if t := p.tolerance(); t != "" {
		fmt.Fprintf(b, "\n%s\n", t)
	}
	for i, a := range p.Among {
		if i == 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(b, "- %s\n", a)
	}
	for _, t := range p.Tables {
		fmt.Fprintf(b, "\n%s\n\n| %s |\n|%s\n", t.Caption, strings.Join(t.Head, " | "),
			strings.Repeat(" ---: |", len(t.Head)))
		for _, r := range t.Rows {
			fmt.Fprintf(b, "| %s |\n", strings.Join(r, " | "))
		}
	}
	for i, c := range p.Choices {
		if i == 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(b, "- %s: %s\n", c.Letter, c.Text)
	}
	if p.Caution != "" {
		fmt.Fprintf(b, "\n*%s: %s*\n", s.say("caution"), p.Caution)
	}
}

func (s Set) markdownKey(b *strings.Builder) {
	fmt.Fprintf(b, "\n# %s\n\n%s\n\n| %s | %s | %s |\n| ---: | --- | --- |\n",
		s.say("key"), s.Name(), s.say("number"), s.say("answer"), s.say("accept"))
	for _, p := range s.Problems {
		fmt.Fprintf(b, "| %d | %s | %s |\n", p.Number, p.Lettered(), p.Accept())
	}
	for _, p := range s.Problems {
		fmt.Fprintf(b, "\n## %d. %s\n\n", p.Number, p.Lettered())
		if p.Answer.Note != "" {
			fmt.Fprintf(b, "%s: %s.\n\n", s.say("also"), p.Answer.Note)
		}
		for i, st := range p.Steps {
			fmt.Fprintf(b, "%d. %s (%s)\n", i+1, strings.TrimSpace(st.Text+" "+st.Sum), st.Source)
		}
		fmt.Fprintf(b, "\n%s:\n\n", s.say("mistakes"))
		for _, w := range p.Wrong {
			fmt.Fprintf(b, "- %s: %s\n", w.Lettered(), w.Mistake)
		}
	}
}
