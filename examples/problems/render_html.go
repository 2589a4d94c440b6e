package main

import (
	_ "embed"
	"html/template"
	"regexp"
	"strings"
)

//go:embed page.html
var pageHTML string

// A sheet is what the page shows of a problem.
type sheet struct {
	Problem
	Chart     string // the name of the chart to use
	Tolerance string
	Solution  template.HTML
}

var numberAndWord = regexp.MustCompile(`([0-9]) ([^0-9 ])`)

// held keeps a number on one line with the unit behind it.
func held(text string) string { return numberAndWord.ReplaceAllString(text, "$1\u00a0$2") }

// html writes one page that prints: problems first, then formulas, words and the
// charts they need, an answer sheet, and the key on pages of its own.
func (s Set) html(key bool) (string, error) {
	page, err := template.New("page").Funcs(template.FuncMap{
		"say": s.say, "math": mathML, "held": held,
		"words": func(f formula) string { return f.words.in(s.Options.Language) },
		"sum":   func(f formula) template.HTML { return mathML(f.sum) },
	}).Parse(pageHTML)
	if err != nil {
		return "", err
	}
	charts, names, err := s.charts()
	if err != nil {
		return "", err
	}
	var sheets []sheet
	for _, p := range s.Problems {
		sh := sheet{Problem: p, Tolerance: p.tolerance()}
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
	err = page.Execute(&b, struct {
		Language    Language
		Title, Name string
		Problems    []sheet
		Formulas    []formula
		Glossary    []term
		Charts      []drawing
		Cautions    []string
		Key         bool
	}{s.Options.Language, s.title(), s.Name(), sheets, s.formulas(), s.glossary(), charts,
		s.cautions(), key})
	return b.String(), err
}
