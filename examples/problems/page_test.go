package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// measure runs in the page: how far it scrolls sideways in a frame of 360 pixels,
// and what axe-core finds wrong in it.
const measure = `<script>%s</script><script>
const page = document.documentElement.outerHTML;
const frame = document.createElement("iframe");
frame.style.cssText = "width:360px;height:600px;border:0";
frame.srcdoc = page.replace(/<script[^]*?<\/script>/g, "");
frame.onload = async () => {
	const wide = frame.contentDocument.documentElement.scrollWidth;
	frame.remove();
	const found = await axe.run(document, {resultTypes: ["violations"]});
	const out = document.createElement("pre");
	out.id = "measured";
	const violations = found.violations.map(v =>
		v.id + ": " + v.nodes.map(n => n.html.slice(0, 160)).slice(0, 3));
	out.textContent = JSON.stringify({wide, rules: found.passes.length, violations});
	document.body.append(out);
};
document.body.append(frame);
</script>`

var measured = regexp.MustCompile(`<pre id="measured">(.*?)</pre>`)

// inBrowser opens a page in Chromium and reads the JSON that it leaves in #measured; without a
// browser the test is skipped.
func inBrowser(t *testing.T, page string, into any) {
	t.Helper()
	browser := findBrowser()
	if browser == "" {
		t.Skip("SKIPPED: no chromium is on the PATH; WHAT A PAGE DOES IN IT WAS NOT TESTED")
	}
	dir := t.TempDir()
	in := filepath.Join(dir, "page.html")
	if err := os.WriteFile(in, []byte(page), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.CommandContext(t.Context(), browser, "--headless", "--no-sandbox",
		"--disable-gpu", "--no-first-run", "--user-data-dir="+dir, "--virtual-time-budget=60000",
		"--dump-dom", "file://"+filepath.ToSlash(in)).Output()
	if err != nil {
		t.Fatal(err)
	}
	m := measured.FindSubmatch(out)
	if m == nil {
		t.Fatalf("nothing was measured: %d bytes", len(out))
	}
	text := strings.NewReplacer("&lt;", "<", "&gt;", ">", "&amp;", "&").Replace(string(m[1]))
	if err := json.Unmarshal([]byte(text), into); err != nil {
		t.Fatal(err)
	}
}

// The page has no barrier that axe-core finds, and does not scroll sideways on a
// screen of 360 pixels; what is too wide for it scrolls by itself.
func TestPageIsOpenToAll(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: a browser has to run")
	}
	axe, err := os.ReadFile("readers/node_modules/axe-core/axe.min.js")
	if err != nil {
		t.Skip("SKIPPED: npm ci in examples/problems/readers was not run; " +
			"NARROW SCREENS AND BARRIERS WERE NOT TESTED")
	}
	for _, language := range []Language{English, Spanish} {
		set := mustGenerate(t, Options{Seed: 6, PerTopic: 1, Difficulty: 3, Language: language,
			Choices: language == English})
		page, err := set.html(true)
		if err != nil {
			t.Fatal(err)
		}
		var got struct {
			Wide       int      `json:"wide"`
			Rules      int      `json:"rules"`
			Violations []string `json:"violations"`
		}
		inBrowser(t, strings.Replace(page, "</body>", fmt.Sprintf(measure, axe)+"</body>", 1), &got)
		if got.Wide > 360 {
			t.Errorf("%s: the page is %d pixels wide on a screen of 360", language, got.Wide)
		}
		for _, v := range got.Violations {
			t.Errorf("%s: %s", language, v)
		}
		t.Logf("%s: %d pixels wide, %d violations", language, got.Wide, len(got.Violations))
	}
}
