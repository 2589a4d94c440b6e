// Package visible makes text of strangers safe to print: what steers a terminal, ends a
// line of a log or turns the direction of writing is shown instead of obeyed.
package visible

import (
	"strings"
	"unicode"
)

// Line is text without such characters, and in one line: breaks and tabs become spaces.
// Any other becomes U+FFFD, the replacement character.
func Line(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\r' || r == '\t' || r == '\u2028' || r == '\u2029':
			return ' '
		case steers(r):
			return unicode.ReplacementChar
		}
		return r
	}, s)
}

// Text is Line for text of several lines: line feeds and tabs stay.
func Text(s string) string {
	if !strings.ContainsAny(s, "\n\t") {
		return Line(s)
	}
	lines := strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n")
	for i, line := range lines {
		cells := strings.Split(line, "\t")
		for j := range cells {
			cells[j] = Line(cells[j])
		}
		lines[i] = strings.Join(cells, "\t")
	}
	return strings.Join(lines, "\n")
}

// steers reports whether a character is a control (C0, DEL, C1), a byte that is no UTF-8,
// or one that says in which direction what follows is written (UAX #9, explicit
// directional formatting), or is not seen at all. The joiners that scripts and pictures
// are spelled with are none.
func steers(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) ||
		unicode.Is(unicode.Zl, r) ||
		unicode.Is(unicode.Zp, r) || r == '\ufeff' ||
		r == '\u00ad' ||
		r >= 0xE0000 && r <= 0xE007F
}
