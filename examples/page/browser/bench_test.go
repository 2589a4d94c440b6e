package browser

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/systeminfo"
	"github.com/chromedp/chromedp"
)

// BenchmarkFirstAnswer is the time from the start of loading to the first
// assessment on the page, of a visit that is kept from the last time.
func BenchmarkFirstAnswer(b *testing.B) {
	address := fileURL(pageFile(b))
	p := open(b, address, 390, 844)
	p.openVisit(demo)
	var took []float64
	for b.Loop() {
		p.visit(address)
		took = append(took, number(p, "first"))
	}
	quantiles(b, took)
}

// BenchmarkLaterAnswer is the time from a key to the verdict on the page, and to the end of the
// frame that draws it. Keys come 60 to 760 ms apart, some while the whole answer to the one before
// is being worked out or drawn. Of %-ahead of them the verdict was worked out before they came.
// That of the others waits: after a key, Chromium holds what a worker sends until the frame that
// shows the key. What the processors work for a key is counted over the whole browser.
func BenchmarkLaterAnswer(b *testing.B) { laterAnswer(b, demo) }

// BenchmarkLaterInTheLoop is the same while a machine is charged: with a log, and its clock.
func BenchmarkLaterInTheLoop(b *testing.B) { laterAnswer(b, visits+"just-moved.json") }

func laterAnswer(b *testing.B, visit string) {
	p := open(b, fileURL(pageFile(b)), 390, 844)
	p.openVisit(visit)
	p.press("#tab-loop")
	p.do(`window.pressed = window.drawn = 0;
	  const field = document.getElementById("f-readings-suctionLine");
	  field.focus();
	  field.setSelectionRange(9, 9);
	  addEventListener("keydown", (e) => window.pressed = e.timeStamp, true);
	  new MutationObserver(() => requestAnimationFrame(() =>
	    setTimeout(() => window.drawn = performance.now()),
	  )).observe(document.documentElement, { attributeFilter: ["data-shown"] })`)
	var ready, library, shown, drawn []float64
	ahead, spent := 0, p.spent()
	for b.Loop() {
		n := len(shown)
		// The last digit of the number goes and comes, as a keyboard sends it.
		key := input.DispatchKeyEvent(input.KeyDown).WithKey("Backspace").WithWindowsVirtualKeyCode(8)
		if n%2 == 1 {
			digit := strconv.Itoa(1 + n/2%4)
			key = input.DispatchKeyEvent(input.KeyDown).WithKey(digit).WithText(digit)
		}
		p.run(key)
		time.Sleep(time.Duration(60+n*5%8*100) * time.Millisecond)
		p.wait("a verdict", `drawn > pressed`)
		pressed := eval[float64](p, `pressed`)
		ready = append(ready, number(p, "ready")-pressed)
		library = append(library, number(p, "library"))
		shown = append(shown, number(p, "shown")-pressed)
		drawn = append(drawn, eval[float64](p, `drawn - pressed`))
		if p.wasAhead() {
			ahead++
		}
	}
	p.settled()
	keys := float64(len(shown))
	b.ReportMetric(100*float64(ahead)/keys, "%-ahead")
	b.ReportMetric(1000*(p.spent()-spent)/keys, "ms-cpu/key")
	quantiles(b, shown)
	b.ReportMetric(late(ready), "ms-ready-p95")
	b.ReportMetric(late(drawn), "ms-drawn-p95")
	b.ReportMetric(median(library), "ms-library")
}

// spent is the time in seconds that the processors worked for the browser.
func (b tab) spent() (seconds float64) {
	b.Helper()
	b.run(chromedp.ActionFunc(func(ctx context.Context) error {
		whole := cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser)
		processes, err := systeminfo.GetProcessInfo().Do(whole)
		for _, p := range processes {
			seconds += p.CPUTime
		}
		return err
	}))
	return seconds
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
	b.ReportMetric(slices.Min(took), "ms-least")
	b.ReportMetric(median(took), "ms-median")
	b.ReportMetric(late(took), "ms-p95")
}

func median(v []float64) float64 { return at(v, 50) }
func late(v []float64) float64   { return at(v, 95) }

func at(v []float64, percent int) float64 {
	return slices.Sorted(slices.Values(v))[len(v)*percent/100]
}
