package main

import (
	"html/template"
	"strings"
)

// html writes one page that prints: problems first, the key on pages of its own.
func (s Set) html(key bool) (string, error) {
	t, err := template.New("set").Parse(pageHTML)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = t.Execute(&b, struct {
		Title    string
		Problems []Problem
		Key      bool
	}{s.title(), s.Problems, key})
	return b.String(), err
}

const pageHTML = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Title}}</title>
<style>
body { font: 16px/1.45 Georgia, serif; color: #111; max-width: 44rem; margin: 1.5rem auto; padding: 0 1rem; }
h1 { font-size: 1.4rem; } h2 { font-size: 1.1rem; margin: 1.4rem 0 .3rem; }
article { break-inside: avoid; }
table { border-collapse: collapse; margin: .6rem 0; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-style: italic; }
th, td { border: 1px solid #999; padding: .1rem .6rem; text-align: right; }
.work { height: 6rem; border-bottom: 1px solid #bbb; }
small { color: #444; }
.key { break-before: page; }
@media print { body { font-size: 11pt; margin: 0; max-width: none; } }
</style>
</head>
<body>
<h1>{{.Title}}</h1>
<p>Name: ______________________ &nbsp; Date: ______________</p>
{{range .Problems}}<article>
<h2>{{.Number}}. {{.Topic}}</h2>
<p>{{.Statement}}</p>
<ul>{{range .Given}}<li>{{.Name}}: {{.Value}}</li>{{end}}</ul>
<p><strong>{{.Ask}}</strong></p>
{{range .Tables}}<table><caption>{{.Caption}}</caption>
<tr>{{range .Head}}<th scope="col">{{.}}</th>{{end}}</tr>
{{range .Rows}}<tr>{{range .}}<td>{{.}}</td>{{end}}</tr>
{{end}}</table>
{{end}}<div class="work"></div>
</article>
{{end}}{{if .Key}}<section class="key">
<h1>Answer key</h1>
{{range .Problems}}<article>
<h2>{{.Number}}. {{.Answer.Text}}</h2>
<ol>{{range .Steps}}<li>{{.Text}} <small>({{.Source}})</small></li>{{end}}</ol>
<p>Wrong answers, and the mistake behind each:</p>
<ul>{{range .Wrong}}<li>{{.Text}}: {{.Mistake}}</li>{{end}}</ul>
</article>
{{end}}</section>
{{end}}</body>
</html>
`
