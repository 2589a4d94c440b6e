package diagnose_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
)

// A panel of the calibration plot: what the first explanation said of itself along, how often
// it was right up.
type panel struct {
	title string
	t     *tally
}

// wilson is the 95 % score interval of k of n (Wilson 1927, JASA 22:209-212).
func wilson(k, n float64) (low, high float64) {
	const z = 1.96
	p := k / n
	middle := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return middle - half, middle + half
}

// calibrationPlot draws the panels side by side. Text is the same in both colour schemes:
// black and blue on white.
func calibrationPlot(panels []panel) string {
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
		`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="t d" width="%.0f" height="%.0f" viewBox="0 0 %.0f %.0f" font-family="sans-serif" font-size="12">`,
		width, height, width, height,
	)
	put(`<title id="t">Calibration of the diagnosis on simulated visits</title>`)
	put(
		`<desc id="d">What the first explanation said of itself against how often it was right, in tenths; bars are 95 % score intervals, areas go with the number of visits. On the diagonal said is right; above it the diagnosis is surer than it says.</desc>`,
	)
	put(`<rect width="%.0f" height="%.0f" fill="#fff"/>`, width, height)
	for i, p := range panels {
		x0, y0 := left+float64(i)*(side+gap), top+side
		x := func(share float64) float64 { return x0 + side*share }
		y := func(share float64) float64 { return y0 - side*share }
		put(`<g aria-label="%s">`, p.title)
		put(`<text x="%.1f" y="%.1f" font-weight="bold">%s</text>`, x0, top-34, p.title)
		n := 0.0
		for _, bin := range p.t.bins {
			n += bin.n
		}
		put(
			`<text x="%.1f" y="%.1f">%.0f visits, off by %.1f points on average</text>`, x0, top-16,
			n, 100*p.t.miscalibration(),
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
			`<text transform="translate(%.1f %.1f) rotate(-90)" text-anchor="middle">right, %%</text>`,
			x(0)-38, y(0.5),
		)
		for _, bin := range p.t.bins {
			if bin.n == 0 {
				continue
			}
			said, right := bin.said/bin.n, bin.right/bin.n
			low, high := wilson(bin.right, bin.n)
			put(
				`<path d="M%.1f %.1fV%.1f" stroke="#1f4e8c" stroke-width="1.5"/>`, x(said), y(low),
				y(high),
			)
			put(
				`<circle cx="%.1f" cy="%.1f" r="%.1f" fill="#1f4e8c" fill-opacity="0.75"><title>said %.0f %%, right %.0f %% of %.0f</title></circle>`,
				x(said), y(right), 2+8*math.Sqrt(bin.n/n), 100*said, 100*right, bin.n,
			)
		}
		put(`</g>`)
	}
	b.WriteString("</svg>\n")
	return b.String()
}

func TestCalibrationPlot(t *testing.T) {
	var some tally
	some.bins[8] = struct{ n, right, said float64 }{50, 40, 42}
	some.bins[9] = struct{ n, right, said float64 }{100, 96, 95}
	text := calibrationPlot([]panel{{"a panel", &some}, {"another", &some}})
	d := xml.NewDecoder(strings.NewReader(text))
	circles := 0
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if s, ok := token.(xml.StartElement); ok && s.Name.Local == "circle" {
			circles++
		}
	}
	if circles != 4 {
		t.Errorf("%d points drawn, want 4", circles)
	}
	if !strings.Contains(text, "said 84 %, right 80 % of 50") {
		t.Error("a point does not say what it stands for")
	}
	// From memory: the score interval of 40 of 50 is 67.0 to 88.8 %.
	if low, high := wilson(40, 50); math.Abs(low-0.670) > 0.001 || math.Abs(high-0.888) > 0.001 {
		t.Errorf("interval %.3f to %.3f", low, high)
	}
}
