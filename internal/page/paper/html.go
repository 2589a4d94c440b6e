package paper

import (
	"fmt"
	"io"
	"strings"
)

// WriteHTML writes the document as one page that stands by itself. The SVG of pictures is
// taken as it is. The error is the writer's.
func (d Document) WriteHTML(w io.Writer) error {
	_, err := io.WriteString(w, d.visible().html())
	return err
}

// html is written by hand: a package of templates, which calls methods by their names, would
// keep every method of every package in whatever program writes a report.
func (d Document) html() string {
	p := htmlWriter{}
	title, print := escape(d.Title), d.PrintSize()
	p.writef(pageHead, escape(d.Lang), title, pageStyle, print, pictureHeight(print), title)
	p.each("<p>%s</p>\n", d.Lines)
	for _, b := range d.Blocks {
		p.block(b)
	}
	p.WriteString("</body>\n</html>\n")
	return p.String()
}

type htmlWriter struct{ strings.Builder }

func (p *htmlWriter) writef(format string, args ...any) { fmt.Fprintf(p, format, args...) }

// each writes texts, escaped, into one format.
func (p *htmlWriter) each(format string, texts []string) {
	for _, t := range texts {
		p.writef(format, escape(t))
	}
}

func (p *htmlWriter) block(b Block) {
	p.writef("<section>\n<h2>%s</h2>\n", escape(b.Heading))
	p.each("<p>%s</p>\n", b.Paragraphs)
	if b.Table != nil && len(b.Table.Rows) > 0 {
		p.WriteString("<table>\n<tr>")
		p.each(`<th scope="col">%s</th>`, b.Table.Head)
		p.WriteString("</tr>\n")
		for _, row := range b.Table.Rows {
			p.WriteString("<tr>")
			p.each("<td>%s</td>", row)
			p.WriteString("</tr>\n")
		}
		p.WriteString("</table>\n")
	}
	if len(b.Items) > 0 {
		list := "ul"
		if b.Numbered {
			list = "ol"
		}
		p.writef("<%s>\n", list)
		for _, it := range b.Items {
			p.writef("<li>%s", escape(it.Text))
			if len(it.Below) > 0 {
				p.WriteString("<ul>")
				p.each("<li>%s</li>", it.Below)
				p.WriteString("</ul>")
			}
			p.WriteString("</li>\n")
		}
		p.writef("</%s>\n", list)
	}
	for _, pic := range b.Pictures {
		p.writef("<figure>%s<figcaption>%s</figcaption></figure>", pic.SVG, escape(pic.Caption))
	}
	p.WriteString("\n</section>\n")
}

var escaper = strings.NewReplacer(
	"&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;", "'", "&#39;", "+", "&#43;", "\x00",
	"\uFFFD",
)

func escape(text string) string { return escaper.Replace(text) }

const pageHead = `<!DOCTYPE html>
<html lang="%s">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>%s</title>
<style>
%s@media print {
  body { font-size: %gpt; }
  svg { max-height: %gmm; }
}
</style>
</head>
<body>
<h1>%s</h1>
`

// pageStyle leaves out the size of the print on paper, and the height of a picture.
const pageStyle = `body { font: 16px/1.4 system-ui, sans-serif; color: #111; background: #fff;
  max-width: 46rem; margin: 1rem auto; padding: 0 1rem; }
h1 { font-size: 1.4rem; margin: 0 0 .3rem; }
h2 { font-size: 1.05rem; margin: 1rem 0 .3rem; border-bottom: 2px solid #111; }
p, ul, ol { margin: .3rem 0; }
li ul { color: #333; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; padding: .15rem .5rem .15rem 0; border-bottom: 1px solid #bbb;
  vertical-align: top; }
figure { margin: .5rem 0; }
svg { max-width: 100%; height: auto; }
@page { margin: 9mm; }
@media print {
  body { line-height: 1.22; margin: 0; padding: 0; max-width: none; columns: 2; column-gap: 7mm; }
  h1 { font-size: 1.6em; column-span: all; }
  h2 { font-size: 1.13em; margin: .6em 0 .2em; border-bottom-width: 1px; break-after: avoid; }
  p, ul, ol { margin: .2em 0; }
  ul, ol { padding-left: 1.5em; }
  th, td { padding: 0 2mm 0 0; }
  figure { break-inside: avoid; margin: 1mm 0; display: inline-block; width: 49%;
    vertical-align: top; text-align: center; }
  figcaption { font-size: .87em; text-align: left; }
}
`
