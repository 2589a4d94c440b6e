package browser

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

var (
	pictures = flag.String("pictures", "", "directory to write pictures of the page to")
	given    = flag.String("page", "", "page to test instead of a new one")
)

// built is the page, made once for all tests, in a directory of its own.
var built = sync.OnceValues(func() (string, error) {
	if *given != "" {
		return filepath.Abs(*given)
	}
	dir, err := os.MkdirTemp("", "satline-page")
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "satline.html")
	cmd := exec.Command("go", "run", "./examples/page/build", "-o", file)
	cmd.Dir = "../../.."
	if text, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, text)
	}
	return file, nil
})

func TestMain(m *testing.M) {
	flag.Parse()
	flag.Set("test.parallel", "4") // a test waits more than it computes
	code := m.Run()
	if file, err := built(); err == nil && *given == "" {
		os.RemoveAll(filepath.Dir(file))
	}
	os.Exit(code)
}

func pageFile(t testing.TB) string {
	t.Helper()
	file, err := built()
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// A tab is a page in Chromium.
type tab struct {
	testing.TB
	ctx context.Context
	// asked are the addresses of requests that the page made.
	asked *[]string
}

// chromium is the one browser of all tests.
var chromium = sync.OnceValues(func() (context.Context, error) {
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.NoSandbox, chromedp.DisableGPU, chromedp.Flag("hide-scrollbars", true))
	allocated, _ := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, _ := chromedp.NewContext(allocated)
	return ctx, chromedp.Run(ctx)
})

// open shows the page at an address, in a tab of its own that shares nothing with the others.
func open(t testing.TB, address string, width, height int64) tab {
	t.Helper()
	running, err := chromium()
	if err != nil {
		t.Fatalf("no Chromium to test the page in: %v", err)
	}
	whole := cdp.WithExecutor(running, chromedp.FromContext(running).Browser)
	own, err := target.CreateBrowserContext().Do(whole)
	if err != nil {
		t.Fatal(err)
	}
	id, err := target.CreateTarget("about:blank").
		WithBrowserContextID(own).WithNewWindow(true).Do(whole)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := chromedp.NewContext(running, chromedp.WithTargetID(id))
	t.Cleanup(func() {
		cancel()
		target.DisposeBrowserContext(own).Do(whole)
	})
	if err := chromedp.Run(ctx); err != nil {
		t.Fatal(err)
	}
	b := tab{t, ctx, new([]string)}
	var mu sync.Mutex
	chromedp.ListenTarget(ctx, func(event any) {
		switch e := event.(type) {
		case *network.EventRequestWillBeSent:
			mu.Lock()
			defer mu.Unlock()
			*b.asked = append(*b.asked, e.Request.URL)
		case *page.EventJavascriptDialogOpening:
			go chromedp.Run(ctx, page.HandleJavaScriptDialog(true))
		}
	})
	b.run(network.Enable(), emulation.SetFocusEmulationEnabled(true),
		emulation.SetDeviceMetricsOverride(width, height, 1, width < 700))
	b.visit(address)
	return b
}

func fileURL(path string) string { return (&url.URL{Scheme: "file", Path: path}).String() }

// visit opens an address and waits for the first whole answer.
func (b tab) visit(address string) {
	b.Helper()
	b.run(chromedp.Navigate(address))
	b.wait("the first answer", `document.documentElement?.dataset.answered === "whole"`)
}

func (b tab) run(actions ...chromedp.Action) {
	b.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, 30*time.Second)
	defer cancel()
	if err := chromedp.Run(ctx, actions...); err != nil {
		b.Fatal(err)
	}
}

// eval runs an expression in the page.
func eval[T any](b tab, expression string) T {
	b.Helper()
	var raw []byte
	b.run(chromedp.Evaluate(expression, &raw, chromedp.EvalAsValue, awaited))
	var v T
	if err := json.Unmarshal(raw, &v); err != nil {
		b.Fatalf("%s: %v: %.200s", expression, err, raw)
	}
	return v
}

func (b tab) do(script string) {
	b.Helper()
	eval[bool](b, "(async () => {"+script+"; return true})()")
}

func (b tab) text(selector string) string {
	b.Helper()
	return strings.ReplaceAll(eval[string](b, fmt.Sprintf(
		`document.querySelector(%q)?.textContent ?? ""`, selector,
	)), "\u00a0", " ")
}

func (b tab) wait(what, condition string) {
	b.Helper()
	const most = 30 * time.Second // a machine may have other work
	for start := time.Now(); time.Since(start) < most; time.Sleep(10 * time.Millisecond) {
		if eval[bool](b, "!!("+condition+")") {
			return
		}
	}
	b.Fatalf("not within %v: %s", most, what)
}

// settled waits for the whole answer to what was done last.
func (b tab) settled() {
	b.Helper()
	b.wait("the whole answer", `document.documentElement.dataset.answered === "whole"`)
}

// enter types into fields as a keyboard does, and waits.
func (b tab) enter(fields ...string) {
	b.Helper()
	for i := 0; i < len(fields); i += 2 {
		b.do(fmt.Sprintf(`const e = document.getElementById("f-" + %q); if (!e) throw %q;
		  for (let d = e.closest("details"); d; d = d.parentElement.closest("details"))
		    d.open = true;
		  document.getElementById("tab-" + e.closest("[role=tabpanel]").id)?.click();
		  e.focus(); e.select?.()`,
			fields[i], fields[i]))
		b.run(chromedp.KeyEvent(fields[i+1]))
	}
	b.settled()
}

// press clicks an element by script, wherever it is.
func (b tab) press(selector string) {
	b.Helper()
	b.do(fmt.Sprintf(`document.querySelector(%q).click()`, selector))
}

// choose sets a select.
func (b tab) choose(selector, value string) {
	b.Helper()
	b.do(fmt.Sprintf(`delete document.documentElement.dataset.answered;
	  const e = document.querySelector(%q); e.value = %q;
	  e.dispatchEvent(new Event("change", {bubbles: true}));
	  e.dispatchEvent(new Event("input", {bubbles: true}))`,
		selector, value))
}

// openFile gives the page a file as its own dialog would.
func (b tab) openFile(text string) {
	b.Helper()
	quoted, err := json.Marshal(text)
	if err != nil {
		b.Fatal(err)
	}
	b.do(fmt.Sprintf(`delete document.documentElement.dataset.answered;
	  const d = new DataTransfer(), input = document.getElementById("file");
	  d.items.add(new File([%s], "visit.json"));
	  input.files = d.files;
	  input.dispatchEvent(new Event("change", {bubbles: true}))`, quoted))
}

func (b tab) openVisit(file string) {
	b.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	b.openFile(string(text))
	b.settled()
}

// shoot keeps a picture where pictures are wanted.
func (b tab) shoot(name string) {
	b.Helper()
	if *pictures == "" {
		return
	}
	var shot []byte
	b.run(chromedp.CaptureScreenshot(&shot))
	if err := os.WriteFile(filepath.Join(*pictures, name+".png"), shot, 0o644); err != nil {
		b.Error(err)
	}
}

// sheets is on how many sheets of letter paper the page prints what is there now.
func (b tab) sheets() int {
	b.Helper()
	var pdf []byte
	b.run(chromedp.ActionFunc(func(ctx context.Context) (err error) {
		print := page.PrintToPDF().WithPreferCSSPageSize(true).WithPrintBackground(true)
		pdf, _, err = print.Do(ctx)
		return err
	}))
	if *pictures != "" {
		if err := os.WriteFile(filepath.Join(*pictures, "print.pdf"), pdf, 0o644); err != nil {
			b.Error(err)
		}
	}
	return bytes.Count(pdf, []byte("/Type /Page\n"))
}
