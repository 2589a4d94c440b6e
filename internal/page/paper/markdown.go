package paper

import (
	"encoding/base64"
	"fmt"
	"strings"
)

// Markdown is the document as CommonMark with tables. Pictures stand in it as data.
func (d Document) Markdown() string {
	d = d.visible()
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", escapeMarkdown(d.Title))
	for _, l := range d.Lines {
		fmt.Fprintf(&b, "\n%s\n", escapeMarkdown(l))
	}
	for _, k := range d.Blocks {
		fmt.Fprintf(&b, "\n## %s\n", escapeMarkdown(k.Heading))
		for _, p := range k.Paragraphs {
			fmt.Fprintf(&b, "\n%s\n", escapeLines(p))
		}
		if k.Table != nil {
			b.WriteString("\n")
			markdownRow(&b, k.Table.Head)
			b.WriteString(strings.Repeat("| --- ", len(k.Table.Head)) + "|\n")
			for _, r := range k.Table.Rows {
				markdownRow(&b, r)
			}
		}
		if len(k.Items) > 0 {
			b.WriteString("\n")
		}
		for i, it := range k.Items {
			lead := "- "
			if k.Numbered {
				lead = fmt.Sprintf("%d. ", i+1)
			}
			b.WriteString(lead + escapeMarkdown(it.Text) + "\n")
			for _, s := range it.Below {
				b.WriteString(strings.Repeat(" ", len(lead)) + "- " + escapeMarkdown(s) + "\n")
			}
		}
		for _, p := range k.Pictures {
			fmt.Fprintf(
				&b, "\n![%s](data:image/svg+xml;base64,%s)\n", escapeMarkdown(p.Caption),
				base64.StdEncoding.EncodeToString(p.SVG),
			)
		}
	}
	return b.String()
}

func markdownRow(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + escapeMarkdown(c) + " ")
	}
	b.WriteString("|\n")
}

// Any of these characters is itself behind a backslash (CommonMark 0.31, 2.4).
var markdownEscapes = strings.NewReplacer("\\", `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", `\<`,
	"[", `\[`, "]", `\]`, "#", `\#`, "~", `\~`, "&", `\&`, "|", `\|`)

// blockStart is where, in a line, a backslash keeps it from making a list, a quotation, a rule
// or a heading by how it begins (CommonMark 0.31, 4.1, 4.3, 5.1 and 5.2), or a table of
// the line before (the extension of GFM); markdownEscapes has the others. It is below zero
// where the line makes none.
func blockStart(line string) int {
	rest := strings.TrimLeft(line, "0123456789")
	digits := len(line) - len(rest)
	ends := func(at int, by string) bool {
		return at == len(line) || strings.Contains(by, line[at:at+1])
	}
	switch {
	case rest == "":
	case digits > 0 && digits <= 9:
		if (rest[0] == '.' || rest[0] == ')') && ends(digits+1, " ") {
			return digits
		}
	case digits == 0 && strings.Contains(">=", rest[:1]),
		digits == 0 && strings.Contains("-+:", rest[:1]) && ends(1, " -:"):
		return 0
	}
	return -1
}

// escapeMarkdown keeps a line that people type from becoming markup. Spaces before it stay,
// and make no code of it.
func escapeMarkdown(s string) string {
	s = strings.ReplaceAll(strings.TrimRight(s, " \t"), "\t", "    ")
	text := strings.TrimLeft(s, " ")
	indent := strings.Repeat("\u00a0", len(s)-len(text))
	text = markdownEscapes.Replace(text)
	if at := blockStart(text); at >= 0 {
		text = text[:at] + `\` + text[at:]
	}
	return indent + text
}

// escapeLines is escapeMarkdown of each line of a paragraph; a blank one ends it.
func escapeLines(s string) string {
	var b strings.Builder
	for i, line := range strings.Split(strings.Trim(s, "\n"), "\n") {
		line = escapeMarkdown(line)
		switch {
		case i > 0 && line != "" && !strings.HasSuffix(b.String(), "\n"):
			b.WriteString("  \n") // a break of the line (6.7), in the form that every reader has
		case i > 0 && line == "" && !strings.HasSuffix(b.String(), "\n\n"):
			b.WriteString("\n\n")
		}
		b.WriteString(line)
	}
	return b.String()
}
