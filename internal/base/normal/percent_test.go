package normal

import "testing"

func TestPercent(t *testing.T) {
	for p, want := range map[float64]string{0: "below 1 %", 0.004: "below 1 %", 0.01: "1 %",
		0.5: "50 %", 0.994: "above 99 %", 1: "above 99 %"} {
		if got := Percent(p); got != want {
			t.Errorf("%v reads %q, want %q", p, got, want)
		}
	}
}
