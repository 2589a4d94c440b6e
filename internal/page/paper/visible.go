package paper

import (
	"slices"

	"github.com/satline/satline/internal/base/visible"
)

// visible is the document with nothing in it that steers what shows it. A paragraph may
// have lines; all else is one.
func (d Document) visible() Document {
	d.Title, d.Lines = visible.Line(d.Title), eachLine(d.Lines)
	d.Blocks = slices.Clone(d.Blocks)
	for i := range d.Blocks {
		b := &d.Blocks[i]
		b.Heading = visible.Line(b.Heading)
		b.Paragraphs = slices.Clone(b.Paragraphs)
		for j, p := range b.Paragraphs {
			b.Paragraphs[j] = visible.Text(p)
		}
		if t := b.Table; t != nil {
			b.Table = &Table{Head: eachLine(t.Head), Rows: slices.Clone(t.Rows)}
			for j, row := range b.Table.Rows {
				b.Table.Rows[j] = eachLine(row)
			}
		}
		b.Items = slices.Clone(b.Items)
		for j, it := range b.Items {
			b.Items[j] = Item{Text: visible.Line(it.Text), Below: eachLine(it.Below)}
		}
		b.Pictures = slices.Clone(b.Pictures)
		for j := range b.Pictures {
			b.Pictures[j].Caption = visible.Line(b.Pictures[j].Caption)
		}
	}
	return d
}

func eachLine(texts []string) []string {
	out := slices.Clone(texts)
	for i, s := range out {
		out[i] = visible.Line(s)
	}
	return out
}
