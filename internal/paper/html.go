package paper

import (
	"html/template"
	"io"
	"sync"
)

// WriteHTML writes the document as one page that stands by itself. The SVG of pictures is
// taken as it is. The error is the writer's.
func (d Document) WriteHTML(w io.Writer) error { return page().Execute(w, d.visible().page()) }

type pageData struct {
	Lang, Title string
	Lines       []string
	Blocks      []pageBlock
	// Print is the size of the text on paper in points, and Figure the height of a
	// picture in millimeters.
	Print, Figure float64
}

type pageBlock struct {
	Heading    string
	Paragraphs []string
	Head       []string
	Rows       [][]string
	Numbered   bool
	Items      []pageItem
	Pictures   []pagePicture
}

type pageItem struct {
	Text  string
	Below []string
}

type pagePicture struct {
	Caption string
	SVG     template.HTML
}

func (d Document) page() pageData {
	print := d.PrintSize()
	p := pageData{
		Lang:   d.Lang,
		Title:  d.Title,
		Lines:  d.Lines,
		Print:  print,
		Figure: pictureHeight(print),
	}
	for _, b := range d.Blocks {
		out := pageBlock{Heading: b.Heading, Paragraphs: b.Paragraphs, Numbered: b.Numbered}
		if b.Table != nil {
			out.Head, out.Rows = b.Table.Head, b.Table.Rows
		}
		for _, it := range b.Items {
			out.Items = append(out.Items, pageItem(it))
		}
		for _, pic := range b.Pictures {
			out.Pictures = append(out.Pictures, pagePicture{pic.Caption, template.HTML(pic.SVG)})
		}
		p.Blocks = append(p.Blocks, out)
	}
	return p
}

var page = sync.OnceValue(
	func() *template.Template { return template.Must(template.New("page").Parse(pageHTML)) },
)

const pageHTML = `<!DOCTYPE html>
<html lang="{{.Lang}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Title}}</title>
<style>
body { font: 16px/1.4 system-ui, sans-serif; color: #111; background: #fff; max-width: 46rem; margin: 1rem auto; padding: 0 1rem; }
h1 { font-size: 1.4rem; margin: 0 0 .3rem; }
h2 { font-size: 1.05rem; margin: 1rem 0 .3rem; border-bottom: 2px solid #111; }
p, ul, ol { margin: .3rem 0; }
li ul { color: #333; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; padding: .15rem .5rem .15rem 0; border-bottom: 1px solid #bbb; vertical-align: top; }
figure { margin: .5rem 0; }
svg { max-width: 100%; height: auto; }
@page { margin: 9mm; }
@media print {
  body { font-size: {{.Print}}pt; line-height: 1.22; margin: 0; padding: 0; max-width: none; columns: 2; column-gap: 7mm; }
  h1 { font-size: 1.6em; column-span: all; }
  h2 { font-size: 1.13em; margin: .6em 0 .2em; border-bottom-width: 1px; break-after: avoid; }
  p, ul, ol { margin: .2em 0; }
  ul, ol { padding-left: 1.5em; }
  th, td { padding: 0 2mm 0 0; }
  figure { break-inside: avoid; margin: 1mm 0; display: inline-block; width: 49%; vertical-align: top; text-align: center; }
  svg { max-height: {{.Figure}}mm; }
  figcaption { font-size: .87em; text-align: left; }
}
</style>
</head>
<body>
<h1>{{.Title}}</h1>
{{range .Lines}}<p>{{.}}</p>
{{end}}{{range .Blocks}}<section>
<h2>{{.Heading}}</h2>
{{range .Paragraphs}}<p>{{.}}</p>
{{end}}{{if .Rows}}<table>
<tr>{{range .Head}}<th scope="col">{{.}}</th>{{end}}</tr>
{{range .Rows}}<tr>{{range .}}<td>{{.}}</td>{{end}}</tr>
{{end}}</table>
{{end}}{{if .Items}}{{if .Numbered}}<ol>{{else}}<ul>{{end}}
{{range .Items}}<li>{{.Text}}{{if .Below}}<ul>{{range .Below}}<li>{{.}}</li>{{end}}</ul>{{end}}</li>
{{end}}{{if .Numbered}}</ol>{{else}}</ul>{{end}}
{{end}}{{range .Pictures}}<figure>{{.SVG}}<figcaption>{{.Caption}}</figcaption></figure>{{end}}
</section>
{{end}}</body>
</html>
`
