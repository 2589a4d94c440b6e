package paper

import (
	"encoding/base64"
	"fmt"
	"strings"
)

// Markdown is the document as CommonMark with tables. Pictures stand in it as data.
func (d Document) Markdown() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", escapeMarkdown(d.Title))
	for _, l := range d.Lines {
		fmt.Fprintf(&b, "\n%s\n", escapeMarkdown(l))
	}
	for _, k := range d.Blocks {
		fmt.Fprintf(&b, "\n## %s\n", escapeMarkdown(k.Heading))
		for _, p := range k.Paragraphs {
			fmt.Fprintf(&b, "\n%s\n", escapeMarkdown(p))
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
			fmt.Fprintf(&b, "\n![%s](data:image/svg+xml;base64,%s)\n", strings.ReplaceAll(escapeMarkdown(p.Caption), "]", `\]`), base64.StdEncoding.EncodeToString(p.SVG))
		}
	}
	return b.String()
}

func markdownRow(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + strings.ReplaceAll(escapeMarkdown(c), "|", `\|`) + " ")
	}
	b.WriteString("|\n")
}

// escapeMarkdown keeps what people type from becoming markup.
var markdownEscapes = strings.NewReplacer("\\", `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", `\<`, "[", `\[`, "#", `\#`, "\n", " ", "\r", " ")

func escapeMarkdown(s string) string { return markdownEscapes.Replace(s) }
