package trial

import (
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestPlot(t *testing.T) {
	var some Calibration
	some[8] = Bin{42, Part{40, 50}}
	some[9] = Bin{95, Part{96, 100}}
	text := Plot("a judge", []Panel{{"a panel", some}, {"another", some}})
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
}

func TestInterval(t *testing.T) {
	// From memory: the score interval of 40 of 50 is 67.0 to 88.8 %.
	if low, high := (Part{40, 50}).Interval(); math.Abs(low-0.670) > 0.001 ||
		math.Abs(high-0.888) > 0.001 {
		t.Errorf("interval %.3f to %.3f", low, high)
	}
	if s := (Part{40, 50}).String(); s != "80.0 % (67.0 to 88.8)" {
		t.Error(s)
	}
	if s := (Part{}).String(); s != "" {
		t.Errorf("of nothing: %q", s)
	}
	rapid.Check(t, func(t *rapid.T) {
		of := rapid.IntRange(0, 5000).Draw(t, "of")
		p := Part{rapid.IntRange(0, of).Draw(t, "n"), of}
		low, high := p.Interval()
		if of > 0 && !(0 <= low && low <= p.Share()+1e-12 && p.Share() <= high+1e-12 && high <= 1) {
			t.Errorf("%v: %v to %v", p, low, high)
		}
		twice := Part{2 * p.N, 2 * p.Of}
		if a, b := twice.Interval(); of > 0 && b-a >= high-low {
			t.Errorf("more visits leave more open: %v, %v", p, twice)
		}
	})
}

func TestCauses(t *testing.T) {
	c := Causes{}
	c.Count("a leak", "a leak", true, true)
	c.Count("a leak", "sound", true, false)
	c.Count("a leak", "dirt", false, false)
	c.Count("a leak", "dirt", true, true)
	var b strings.Builder
	c.Write(&b, "a look")
	if !strings.Contains(b.String(), "| a leak | 4 | 25.0 % (4.6 to 69.9) | 75.0 %") ||
		!strings.Contains(b.String(), "| dirt 2, sound 1 |") {
		t.Error(b.String())
	}
}

func TestCalibration(t *testing.T) {
	var c Calibration
	for i := range 10 {
		c.Count(0.75, i < 9)
		c.Count(1, i < 9)
	}
	if off := c.Off(); math.Abs(off-0.125) > 1e-12 {
		t.Errorf("off by %v", off)
	}
}
