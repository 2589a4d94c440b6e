package paper

import (
	"math"
	"unicode/utf8"
)

// The sheet that a report is printed on: two columns on what letter and A4 paper have in
// common, within the margins of the style sheet. Lengths are in points.
const (
	columnWidth  = (210 - 2*9 - 7) / 2 * 72 / 25.4
	columnHeight = (279.4 - 2*9) * 72 / 25.4
	lineHeight   = 1.22 // of the size of the text
	charWidth    = 0.56 // of it, as wide as the widest usual sans-serif fonts run

	largestPrint, smallestPrint = 7.6, 5.6
)

// PrintSize is the largest text, in points, with which the report fits on one sheet.
func (d Document) PrintSize() float64 {
	for size := largestPrint; size > smallestPrint+0.05; size -= 0.2 {
		if d.printed(size) <= 2*columnHeight {
			return math.Round(size*10) / 10
		}
	}
	return smallestPrint
}

// Sheets is how much of a sheet the report takes at its print size.
func (d Document) Sheets() float64 { return d.printed(d.PrintSize()) / (2 * columnHeight) }

// pictureHeight is that of a picture beside text of a size, in millimeters.
func pictureHeight(size float64) float64 { return math.Round(62 * size / largestPrint) }

// printed is about the height, in points, of all columns of the report with text of a size.
func (d Document) printed(size float64) float64 {
	// lines that a text takes in a column, indented in steps of a list, with letters of a
	// scale.
	lines := func(text string, indent, scale float64) float64 {
		perLine := (columnWidth - indent*1.5*size) / (charWidth * scale * size)
		return math.Ceil(float64(utf8.RuneCountInString(text)) / perLine * wrapped)
	}
	const (
		between = 0.3 // lines between paragraphs and lists
		heading = 2.1 // lines of a heading with what is around it
	)
	n := 2 * 2.5 // the title, over both columns
	for _, l := range d.Lines {
		n += lines(l, 0, 1) + between
	}
	height := 0.0
	for _, b := range d.Blocks {
		n += heading
		for _, p := range b.Paragraphs {
			n += lines(p, 0, 1) + between
		}
		if b.Table != nil {
			n += 1.1 * float64(len(b.Table.Rows)+1)
		}
		for _, it := range b.Items {
			n += lines(it.Text, 1, 1)
			for _, below := range it.Below {
				n += lines(below, 2, 1)
			}
			if len(it.Below) > 0 {
				n += between
			}
		}
		// Pictures stand two and two.
		for i := 0; i < len(b.Pictures); i += 2 {
			height += pictureHeight(size)*72/25.4 + 6
			caption := 0.0
			for _, p := range b.Pictures[i:min(i+2, len(b.Pictures))] {
				caption = max(caption, 0.87*lines(p.Caption, 0, 0.87/0.49))
			}
			n += caption + between
		}
	}
	if len(d.Blocks) > 0 {
		n += columnEnd
	}
	return height + n*lineHeight*size
}

const (
	wrapped   = 1.04 // lines end before a word that does not fit
	columnEnd = 4    // lines that stay empty where a picture or heading does not fit
)
