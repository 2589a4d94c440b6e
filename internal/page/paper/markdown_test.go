package paper

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Whatever begins a block other than a paragraph, by CommonMark 0.31: code indented (4.4) or
// fenced (4.5), rule (4.1), heading (4.2, 4.3), HTML (4.6), definition (4.7), quotation (5.1),
// list (5.2).
var otherBlock = regexp.MustCompile(
	"^( {4}|\t| {0,3}(```|~~~|([-_*] *){3,}$|#|=+ *$|-+ *$|<|\\[|>|" +
		"[-+*]( |$)|:-|-:|[0-9]{1,9}[.)]( |$)))",
)

// Whatever is markup inside a paragraph (6.1 to 6.6, and strikethrough and tables of GFM) where no
// backslash stands before it.
var markup = regexp.MustCompile("(^|[^\\\\])(\\\\\\\\)*[*_`<\\[\\]&~|]")

// read is the text that a paragraph of CommonMark shows: what is behind a backslash is
// itself (2.4), two spaces at the end of a line break it (6.7).
func read(markdown string) string {
	var b strings.Builder
	escaped := false
	for _, r := range markdown {
		switch {
		case escaped:
			escaped = false
			b.WriteRune(r)
		case r == '\\':
			escaped = true
		default:
			b.WriteRune(r)
		}
	}
	return strings.ReplaceAll(strings.ReplaceAll(b.String(), "  \n", "\n"), "\u00a0", " ")
}

func holdsAsText(t interface{ Fatalf(string, ...any) }, notes string) {
	got := escapeLines(notes)
	for line := range strings.SplitSeq(got, "\n") {
		if otherBlock.MatchString(line) || markup.MatchString(line) {
			t.Fatalf("%q becomes markup: %q", notes, got)
		}
	}
	want := strings.Split(strings.Trim(strings.ReplaceAll(notes, "\t", "    "), "\n"), "\n")
	var lines []string
	for _, l := range want {
		if l = strings.TrimRight(l, " "); l != "" {
			lines = append(lines, l)
		}
	}
	shown := strings.FieldsFunc(read(got), func(r rune) bool { return r == '\n' })
	if strings.Join(shown, "\n") != strings.Join(lines, "\n") {
		t.Fatalf("%q is shown as %q by %q", notes, shown, got)
	}
}

func TestNotesStayText(t *testing.T) {
	for _, notes := range []string{
		"- x", "> x", "~~~\nx", "---", "a\n---", "a\n===", "    x", "\tx", "1. x", "2) x", "+ x",
		"* x", "# x", "<b>x</b>", "&lt;", "[a](b)", "[a]: b", "`x`", "~~x~~", "a\\", "a  \nb",
		"a\n\n\nb", "-5 °F\n9.2 °F", "- - -", "",
	} {
		holdsAsText(t, notes)
	}
	rapid.Check(t, func(t *rapid.T) {
		holdsAsText(
			t,
			rapid.StringOf(rapid.RuneFrom([]rune("ab1 \t\n-+*_=>#~`<>&[]()!.|\\;:"))).
				Draw(t, "notes"),
		)
	})
}

// Nothing that steers a terminal reaches any of the forms.
func TestNothingSteers(t *testing.T) {
	const bad = "a\x1b[2J\x00\u009b\u202eb"
	d := Document{Title: bad, Lines: []string{bad}, Blocks: []Block{{
		Heading: bad, Paragraphs: []string{bad + "\nsecond"},
		Table: &Table{Head: []string{bad}, Rows: [][]string{{bad}}},
		Items: []Item{{Text: bad, Below: []string{bad}}},
	}, {Pictures: []Picture{{Caption: bad}}}}}
	var page strings.Builder
	if err := d.WriteHTML(&page); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"text": d.Text(), "Markdown": d.Markdown(), "HTML": page.String(),
	} {
		if strings.ContainsAny(text, "\x1b\x00\u009b\u202e") {
			t.Errorf("%s: %q", name, text)
		}
	}
	if d.Blocks[0].Items[0].Text != bad || d.Blocks[0].Table.Rows[0][0] != bad {
		t.Error("the document itself is changed")
	}
}
