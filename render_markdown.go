package satline

import (
	"encoding/base64"
	"fmt"
	"io"
	"strings"
)

// WriteMarkdown writes the report for an audience as CommonMark with tables.
// Pictures stand in it as data, so that the file is whole by itself; a reader that
// shows no such pictures shows their captions. The error is the writer's.
func (a Assessment) WriteMarkdown(w io.Writer, audience Audience, pictures ...Picture) error {
	_, err := io.WriteString(w, a.document(audience, pictures).markdown())
	return err
}

func (d document) markdown() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", escapeMarkdown(d.title))
	for _, l := range d.lines {
		fmt.Fprintf(&b, "\n%s\n", escapeMarkdown(l))
	}
	for _, k := range d.blocks {
		fmt.Fprintf(&b, "\n## %s\n", escapeMarkdown(k.heading))
		for _, p := range k.paragraphs {
			fmt.Fprintf(&b, "\n%s\n", escapeMarkdown(p))
		}
		if k.table != nil {
			b.WriteString("\n")
			markdownRow(&b, k.table.head)
			b.WriteString(strings.Repeat("| --- ", len(k.table.head)) + "|\n")
			for _, r := range k.table.rows {
				markdownRow(&b, r)
			}
		}
		if len(k.items) > 0 {
			b.WriteString("\n")
		}
		for i, it := range k.items {
			lead := "- "
			if k.numbered {
				lead = fmt.Sprintf("%d. ", i+1)
			}
			b.WriteString(lead + escapeMarkdown(it.text) + "\n")
			for _, s := range it.below {
				b.WriteString(strings.Repeat(" ", len(lead)) + "- " + escapeMarkdown(s) + "\n")
			}
		}
		for _, p := range k.pictures {
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
