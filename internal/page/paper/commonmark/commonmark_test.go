// Package commonmark reads with a reader of CommonMark what package paper writes. It is a
// module of its own, so that the reader is no dependency of the library.
package commonmark

import (
	"bytes"
	"html"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/satline/satline/internal/page/paper"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

var paragraphs = regexp.MustCompile(`<(?:/?p|br ?/?)>`)

// Notes of any characters are shown as they are: no markup, and no line is lost.
func TestNotesStayText(t *testing.T) {
	reader := goldmark.New(goldmark.WithExtensions(extension.GFM))
	characters := []rune("ab1 \t\n-+*_=>#~`<>&[]()!.|\\;:")
	rng := rand.New(rand.NewPCG(1, 1))
	for range 50000 {
		notes := make([]rune, 1+rng.IntN(14))
		for i := range notes {
			notes[i] = characters[rng.IntN(len(characters))]
		}
		var lines []string
		for line := range strings.SplitSeq(strings.ReplaceAll(string(notes), "\t", "    "), "\n") {
			if line = strings.TrimRight(line, " "); line != "" {
				lines = append(lines, line)
			}
		}
		written := paper.Document{Title: "x", Blocks: []paper.Block{{
			Heading: "Notes", Paragraphs: []string{string(notes)},
		}}}.Markdown()
		var shown bytes.Buffer
		if err := reader.Convert([]byte(written), &shown); err != nil {
			t.Fatal(err)
		}
		_, body, ok := strings.Cut(shown.String(), "</h2>\n")
		plain := paragraphs.ReplaceAllString(body, "")
		text := strings.ReplaceAll(html.UnescapeString(plain), "\u00a0", " ")
		got := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' })
		if !ok || strings.ContainsAny(plain, "<>") ||
			strings.Join(got, "\n") != strings.Join(lines, "\n") {
			t.Fatalf("%q is written as %q and shown as %q", string(notes), written, shown.String())
		}
	}
}
