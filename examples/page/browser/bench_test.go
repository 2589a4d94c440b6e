package browser

import (
	"fmt"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// BenchmarkFirstAnswer is the time from the start of loading to the first
// assessment on the page, of a visit that is kept from the last time.
func BenchmarkFirstAnswer(b *testing.B) {
	address := fileURL(pageFile(b))
	p := open(b, address, 390, 844)
	p.openVisit("../../visit/demo/mountain-library.json")
	var took []float64
	for b.Loop() {
		p.visit(address)
		took = append(took, number(p, "first"))
	}
	quantiles(b, took)
}

// BenchmarkLaterAnswer is the time from a key to the verdict on the page, also
// where the diagnosis of the key before is still being worked out. The verdict is ready sooner:
// after a key, Chromium holds what a worker sends back until the frame that shows the key; with
// -unheld it does not.
func BenchmarkLaterAnswer(b *testing.B) {
	p := open(b, fileURL(pageFile(b)), 390, 844)
	p.openVisit("../../visit/demo/mountain-library.json")
	p.press("#tab-loop")
	p.do(`document.getElementById("f-readings-suctionLine").focus()`)
	var took, ready, library, shown []float64
	for b.Loop() {
		p.do(`delete document.documentElement.dataset.latency; document.activeElement.select()`)
		p.run(chromedp.KeyEvent(strconv.Itoa(5 + len(took)%4)))
		p.wait("a verdict", `document.documentElement.dataset.latency`)
		took = append(took, number(p, "latency"))
		ready = append(ready, number(p, "ready"))
		library = append(library, number(p, "library"))
		shown = append(shown, number(p, "render"))
		time.Sleep(time.Duration(len(took)%8) * 30 * time.Millisecond)
	}
	quantiles(b, took)
	slices.Sort(ready)
	b.ReportMetric(ready[len(ready)*95/100], "ms-ready-p95")
	b.ReportMetric(median(library), "ms-library")
	b.ReportMetric(median(shown), "ms-shown")
}

func number(p tab, name string) float64 {
	p.Helper()
	text := eval[string](p, fmt.Sprintf(`document.documentElement.dataset[%q]`, name))
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		p.Fatal(err)
	}
	return v
}

func quantiles(b *testing.B, took []float64) {
	slices.Sort(took)
	b.ReportMetric(took[0], "ms-least")
	b.ReportMetric(median(took), "ms-median")
	b.ReportMetric(took[len(took)*95/100], "ms-p95")
}

func median(v []float64) float64 { return slices.Sorted(slices.Values(v))[len(v)/2] }
