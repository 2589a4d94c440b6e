package main

import (
	_ "embed"
	"html/template"
	"strings"
)

//go:embed page.html
var pageHTML string

var pageTemplate = template.Must(
	template.New("page").Funcs(template.FuncMap{"sentence": sentence}).Parse(pageHTML),
)

// A sheet is what the page shows of a problem.
type sheet struct {
	Problem
	Chart    string // the name of the chart to use
	Solution template.HTML
}

// html writes one page that prints: problems first, then the charts they need,
// an answer sheet, and the key on pages of its own.
func (s Set) html(key bool) (string, error) {
	charts, names, err := s.charts()
	if err != nil {
		return "", err
	}
	var sheets []sheet
	for _, p := range s.Problems {
		sh := sheet{Problem: p}
		if p.charted() {
			sh.Chart = names[p.chartKey()]
		}
		if key && p.charted() {
			if sh.Solution, err = s.draw(p, true); err != nil {
				return "", err
			}
		}
		sheets = append(sheets, sh)
	}
	var b strings.Builder
	err = pageTemplate.Execute(&b, struct {
		Title    string
		Problems []sheet
		Formulas []string
		Charts   []drawing
		Cautions []string
		Key      bool
	}{s.title(), sheets, s.formulas(), charts, s.cautions(), key})
	return b.String(), err
}
