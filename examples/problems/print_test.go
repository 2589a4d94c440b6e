package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
)

var mediaBox = regexp.MustCompile(`/MediaBox \[0 0 ([0-9]+)`)

// On paper of either size each chart has a landscape page to itself, with its
// name, and everything else is upright.
func TestChartsFitThePaper(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: a browser has to print")
	}
	browser := findBrowser()
	if browser == "" {
		t.Skip("SKIPPED: no chromium is on the PATH; THE PRINT WAS NOT TESTED")
	}
	set, err := Generate(
		Options{
			Seed:         4,
			PerTopic:     2,
			Topics:       []string{"cycle", "air"},
			Refrigerants: []string{"R-22", "R-454B"},
			Units:        quantity.SI,
			Difficulty:   3,
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	page, err := set.html(false)
	if err != nil {
		t.Fatal(err)
	}
	charts := strings.Count(page, "<figure>")
	for paper, long := range map[string]string{"letter": "792", "A4": "841"} {
		dir := t.TempDir()
		in, out := filepath.Join(dir, "set.html"), filepath.Join(dir, "set.pdf")
		sized := strings.Replace(page, "@page {", "@page { size: "+paper+";", 1)
		sized = strings.Replace(sized, "size: landscape", "size: "+paper+" landscape", 1)
		if err := os.WriteFile(in, []byte(sized), 0o644); err != nil {
			t.Fatal(err)
		}
		patience, done := context.WithTimeout(t.Context(), time.Minute)
		defer done()
		if text, err := exec.CommandContext(patience, browser, "--headless", "--no-sandbox",
			"--disable-gpu", "--no-first-run", "--user-data-dir="+dir, "--no-pdf-header-footer",
			"--print-to-pdf="+out, "file://"+filepath.ToSlash(in)).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, text)
		}
		pdf, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		landscape, pages := 0, 0
		for _, box := range mediaBox.FindAllSubmatch(pdf, -1) {
			pages++
			if string(box[1]) == long {
				landscape++
			}
		}
		if landscape != charts || pages < charts+2 {
			t.Errorf(
				"%s: %d of %d pages are landscape, for %d charts", paper, landscape, pages, charts,
			)
		}
	}
}

func findBrowser() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome",
		"google-chrome-stable", "chrome"} {
		if found, err := exec.LookPath(name); err == nil {
			return found
		}
	}
	return ""
}
