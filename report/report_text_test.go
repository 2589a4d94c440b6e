package report

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/page/paper"
)

func load(t *testing.T, file string) satline.Visit {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	v, err := satline.DecodeVisit(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func assess(t *testing.T, v satline.Visit) satline.Assessment {
	t.Helper()
	a, err := satline.Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// No line of a report ends between a number and its unit, or at a ±.
func TestMeasuresStayWhole(t *testing.T) {
	files, err := filepath.Glob("../testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	torn := regexp.MustCompile(`(?m)(±|[0-9])\n +(±|°F|%|psi|oz|CFM)|±\n`)
	for _, f := range files {
		a := assess(t, load(t, f))
		for _, audience := range []Audience{Technician, File, Owner} {
			var text strings.Builder
			if err := Text(&text, a, audience); err != nil {
				t.Fatal(err)
			}
			if at := torn.FindString(text.String()); at != "" {
				t.Errorf("%s for the %v: torn at %q", f, audience, at)
			}
			for line := range strings.Lines(text.String()) {
				if n := len([]rune(strings.TrimSpace(line))); n > paper.TextWidth {
					t.Errorf("%s for the %v: a line of %d characters: %s", f, audience, n, line)
				}
			}
		}
	}
}

func TestReportsHaveEveryPart(t *testing.T) {
	v := load(t, "../testdata/visits/sound-r410a-piston.json")
	v.Notes = "a note with <b>markup</b> and *stars* | bars"
	for _, tag := range satline.Languages() {
		v.Language = tag
		a := assess(t, v)
		for _, audience := range []Audience{Technician, File, Owner} {
			var text, markdown, html strings.Builder
			if err := Text(&text, a, audience); err != nil {
				t.Fatal(err)
			}
			if err := Markdown(&markdown, a, audience,
				Picture{Caption: "a [line]", SVG: []byte("<svg></svg>")}); err != nil {
				t.Fatal(err)
			}
			if err := HTML(&html, a, audience, Picture{Caption: "a line",
				SVG: []byte("<svg></svg>")}); err != nil {
				t.Fatal(err)
			}
			if strings.Contains(html.String(), "<b>markup") {
				t.Error("what the technician typed became markup")
			}
			if !strings.Contains(html.String(), "<svg></svg>") {
				t.Error("the picture is not in the page")
			}
			if !strings.Contains(
				markdown.String(), `![a \[line\]](data:image/svg+xml;base64,PHN2Zz48L3N2Zz4=)`,
			) {
				t.Error("the picture is not in the Markdown")
			}
			for _, out := range []string{text.String(), markdown.String(), html.String()} {
				for _, bad := range []string{"%!", "NaN", "<nil>", "Inf"} {
					if strings.Contains(out, bad) {
						t.Errorf("a report holds %q:\n%s", bad, out)
					}
				}
			}
		}
	}
}
