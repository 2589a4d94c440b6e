package paper

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/satline/satline/quantity"
)

// TextWidth fits a terminal of 80 columns and a phone held sideways.
const TextWidth = 78

// namelessColumns is how many columns of a table tell by themselves what stands in them.
const namelessColumns = 3

// Text is the document as plain text.
func (d Document) Text() string {
	d = d.visible()
	var t textWriter
	t.paragraph("", d.Title)
	for _, l := range d.Lines {
		t.paragraph("", l)
	}
	for _, b := range d.Blocks {
		if len(b.Pictures) > 0 {
			continue
		}
		t.b.WriteString("\n" + strings.ToUpper(b.Heading) + "\n")
		for _, p := range b.Paragraphs {
			t.paragraph("", p)
		}
		if b.Table != nil {
			rows := b.Table.Rows
			if len(b.Table.Head) > namelessColumns {
				rows = append([][]string{b.Table.Head}, rows...)
			}
			t.rows(rows)
		}
		for i, it := range b.Items {
			lead := "- "
			if b.Numbered {
				lead = fmt.Sprintf("%d. ", i+1)
			}
			t.paragraph(lead, it.Text)
			for _, s := range it.Below {
				t.paragraph(strings.Repeat(" ", len(lead)), s)
			}
		}
	}
	return t.b.String()
}

type textWriter struct{ b strings.Builder }

func (t *textWriter) rows(rows [][]string) {
	if len(rows) == 0 {
		return
	}
	widths := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, r := range rows {
		line := " "
		for i, cell := range r {
			line += " " + cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+1)
		}
		t.b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// paragraph wraps text behind a lead; later lines are indented to match it.
func (t *textWriter) paragraph(lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line, started := lead, false
	for _, word := range Words(text) {
		if started && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > TextWidth {
			t.b.WriteString(line + "\n")
			line, started = indent, false
		}
		if started {
			line += " "
		}
		line, started = line+word, true
	}
	t.b.WriteString(line + "\n")
}

// Words splits text into words, and keeps a measure whole: "9.2 °F ± 1.1 °F" is
// not torn from line to line.
func Words(text string) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		if n := len(out); n > 0 && together(out[n-1], word) {
			out[n-1] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

func together(before, word string) bool {
	if strings.HasPrefix(word, "±") || strings.HasSuffix(before, "±") {
		return true
	}
	last := before[len(before)-1]
	return '0' <= last && last <= '9' && unitSymbols[strings.TrimRight(word, ".,;:?)")]
}

// unitSymbols are those that sentences write behind a number.
var unitSymbols = func() map[string]bool {
	symbols := map[string]bool{"s": true, "min": true}
	for _, s := range quantity.Symbols() {
		symbols[s] = true
	}
	return symbols
}()
