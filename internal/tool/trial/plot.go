package trial

import (
	"fmt"
	"math"
	"strings"
)

// A Panel of the calibration plot: what the first explanation said of itself along, how often
// it was right up.
type Panel struct {
	Title       string
	Calibration Calibration
}

// Plot draws the panels side by side. Text is the same in both colour schemes:
// black and blue on white.
func Plot(judge string, panels []Panel) string {
	const (
		side, gap     = 240.0, 76.0
		left, top     = 64.0, 64.0
		right, bottom = 20.0, 64.0
	)
	width := left + float64(len(panels))*side + float64(len(panels)-1)*gap + right
	height := top + side + bottom
	var b strings.Builder
	put := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	put(
		`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="t d" `+
			`width="%.0f" height="%.0f" viewBox="0 0 %.0f %.0f" `+
			`font-family="sans-serif" font-size="12">`,
		width, height, width, height,
	)
	put(`<title id="t">Calibration of %s on simulated visits</title>`, judge)
	put(
		`<desc id="d">What the first explanation said of itself against how often it was right, ` +
			`in tenths; bars are 95 % score intervals, areas go with the number of visits. ` +
			`On the diagonal said is right; above it the diagnosis is surer than it says.</desc>`,
	)
	put(`<rect width="%.0f" height="%.0f" fill="#fff"/>`, width, height)
	for i, p := range panels {
		x0, y0 := left+float64(i)*(side+gap), top+side
		x := func(share float64) float64 { return x0 + side*share }
		y := func(share float64) float64 { return y0 - side*share }
		put(`<g aria-label="%s">`, p.Title)
		put(`<text x="%.1f" y="%.1f" font-weight="bold">%s</text>`, x0, top-34, p.Title)
		n := 0
		for _, bin := range p.Calibration {
			n += bin.Right.Of
		}
		put(
			`<text x="%.1f" y="%.1f">%d visits, off by %.1f points on average</text>`, x0, top-16,
			n, 100*p.Calibration.Off(),
		)
		for tick := range 6 {
			share := float64(tick) / 5
			put(
				`<path d="M%.1f %.1fH%.1fM%.1f %.1fV%.1f" stroke="#ddd"/>`, x(0), y(share), x(1),
				x(share), y(0), y(1),
			)
			put(`<text x="%.1f" y="%.1f" text-anchor="end">%d</text>`, x(0)-6, y(share)+4, 20*tick)
			put(
				`<text x="%.1f" y="%.1f" text-anchor="middle">%d</text>`, x(share), y(0)+16,
				20*tick,
			)
		}
		put(
			`<path d="M%.1f %.1fL%.1f %.1f" stroke="#555" stroke-dasharray="5 4"/>`, x(0), y(0),
			x(1), y(1),
		)
		put(
			`<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" fill="none" stroke="#000"/>`, x(0),
			y(1), side, side,
		)
		put(`<text x="%.1f" y="%.1f" text-anchor="middle">said, %%</text>`, x(0.5), y(0)+36)
		put(
			`<text transform="translate(%.1f %.1f) rotate(-90)" text-anchor="middle">`+
				`right, %%</text>`,
			x(0)-38, y(0.5),
		)
		for _, bin := range p.Calibration {
			if bin.Right.Of == 0 {
				continue
			}
			said, right := bin.mean(), bin.Right.Share()
			low, high := bin.Right.Interval()
			put(
				`<path d="M%.1f %.1fV%.1f" stroke="#1f4e8c" stroke-width="1.5"/>`, x(said), y(low),
				y(high),
			)
			put(
				`<circle cx="%.1f" cy="%.1f" r="%.1f" fill="#1f4e8c" fill-opacity="0.75">`+
					`<title>said %.0f %%, right %.0f %% of %d</title></circle>`,
				x(said), y(right), 2+8*math.Sqrt(float64(bin.Right.Of)/float64(n)), 100*said,
				100*right, bin.Right.Of,
			)
		}
		put(`</g>`)
	}
	b.WriteString("</svg>\n")
	return b.String()
}
