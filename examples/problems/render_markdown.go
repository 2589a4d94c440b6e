package main

import (
	"fmt"
	"strings"
)

func (s Set) title() string {
	return fmt.Sprintf(
		"Problem set %d (%s units, difficulty %d)",
		s.Options.Seed,
		s.Options.Units,
		s.Options.Difficulty,
	)
}

// cautions stand on every set: what is learned here is done on real machines.
func (s Set) cautions() []string {
	out := []string{
		"The machines and readings of these problems are invented. On a real machine its label and the manufacturer's chart come before any general rule.",
		"Refrigerant stands under pressure, freezes skin and takes the place of air; capacitors hold a charge. Work on it is licensed work, under the local code, with eye protection and gloves.",
	}
	if len(s.Flammable) > 0 {
		out = append(
			out,
			strings.Join(
				s.Flammable,
				", ",
			)+": flammable. No flame or spark near, ventilate, and use tools and cylinders made for it.",
		)
	}
	if len(s.Toxic) > 0 {
		out = append(
			out,
			strings.Join(
				s.Toxic,
				", ",
			)+": toxic. Ventilate, watch a detector, and have breathing protection and a way out at hand.",
		)
	}
	return out
}

// Accept is how far from the answer a student may be, as it is printed.
func (p Problem) Accept() string {
	if p.Answer.Within == 0 {
		return ""
	}
	return "±" + decimals(p.Answer.Margin(), p.Answer.Places) + " " + p.Answer.Unit
}

// markdown writes the problems, and with key the answers and solutions.
func (s Set) markdown(key bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", s.title())
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "\n## %d. %s\n\n%s\n\n", p.Number, sentence(p.Topic), p.Statement)
		for _, g := range p.Given {
			fmt.Fprintf(&b, "- %s: %s\n", g.Name, g.Value)
		}
		fmt.Fprintf(&b, "\n%s\n", p.Ask)
		if len(p.Among) > 0 {
			b.WriteString("\n")
		}
		for _, a := range p.Among {
			fmt.Fprintf(&b, "- %s\n", a)
		}
		for _, t := range p.Tables {
			fmt.Fprintf(
				&b,
				"\n%s\n\n| %s |\n|%s\n",
				t.Caption,
				strings.Join(t.Head, " | "),
				strings.Repeat(" ---: |", len(t.Head)),
			)
			for _, r := range t.Rows {
				fmt.Fprintf(&b, "| %s |\n", strings.Join(r, " | "))
			}
		}
		if len(p.Choices) > 0 {
			b.WriteString("\n")
		}
		for _, c := range p.Choices {
			fmt.Fprintf(&b, "- %s: %s\n", c.Letter, c.Text)
		}
		if p.Caution != "" {
			fmt.Fprintf(&b, "\n*Caution: %s*\n", p.Caution)
		}
	}
	if formulas := s.formulas(); len(formulas) > 0 {
		b.WriteString("\n## Formulas\n\n")
		for _, f := range formulas {
			fmt.Fprintf(&b, "- %s\n", f)
		}
	}
	b.WriteString("\n---\n")
	for _, c := range s.cautions() {
		fmt.Fprintf(&b, "\n%s\n", c)
	}
	if key {
		s.markdownKey(&b)
	}
	return b.String()
}

func (s Set) markdownKey(b *strings.Builder) {
	b.WriteString("\n# Answer key\n\n| No. | answer | accept within |\n| ---: | --- | --- |\n")
	for _, p := range s.Problems {
		fmt.Fprintf(b, "| %d | %s | %s |\n", p.Number, p.Lettered(), p.Accept())
	}
	for _, p := range s.Problems {
		fmt.Fprintf(b, "\n## %d. %s\n\n", p.Number, p.Lettered())
		if p.Answer.Note != "" {
			fmt.Fprintf(b, "Also: %s.\n\n", p.Answer.Note)
		}
		for i, st := range p.Steps {
			fmt.Fprintf(b, "%d. %s (%s)\n", i+1, st.Text, st.Source)
		}
		b.WriteString("\nWrong answers and the mistake behind each:\n\n")
		for _, w := range p.Wrong {
			fmt.Fprintf(b, "- %s: %s\n", w.Lettered(), w.Mistake)
		}
	}
}

// Lettered is the answer, after its letter where there are choices.
func (p Problem) Lettered() string {
	if l := p.Letter(); l != "" {
		return l + ": " + p.Answer.Text
	}
	return p.Answer.Text
}
