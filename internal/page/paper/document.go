// Package paper sets a report in type: as plain text, as Markdown, as a page to print.
package paper

// A Document is a report before it has a format.
type Document struct {
	Lang   string // of its texts, as HTML names it
	Title  string
	Lines  []string // under the title
	Blocks []Block
}

// A Block is a part of a document under a heading.
type Block struct {
	Heading    string
	Paragraphs []string
	Table      *Table
	Items      []Item
	Numbered   bool
	Pictures   []Picture
}

// An Item of a list, with what stands below it.
type Item struct {
	Text  string
	Below []string
}

// A Table has as many cells in each row as in its head.
type Table struct {
	Head []string
	Rows [][]string
}

// A Picture is a drawing with its caption.
type Picture struct {
	Caption string
	SVG     []byte
}

// Empty reports whether there is nothing under the heading.
func (b Block) Empty() bool {
	return len(b.Paragraphs) == 0 && len(b.Items) == 0 && b.Table == nil && len(b.Pictures) == 0
}
