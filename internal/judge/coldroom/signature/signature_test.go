package signature

import (
	"math"
	"testing"
)

// The table is the one that the causes ask for, and what it says can be: spreads are above
// zero, faults cost capacity, and a sound machine evaporates below the box and condenses above
// the outdoor air.
func TestTable(t *testing.T) {
	if want := count * rowLength * 2; len(table) != want {
		t.Fatalf(
			"%d bytes, want %d: go generate ./internal/judge/coldroom/signature", len(table), want,
		)
	}
	for i := range rows {
		r := &rows[i]
		for f := range Features {
			if !(r.Cold[f][f] > 0 && r.Warm[f][f] > 0) {
				t.Errorf("row %d: no spread of feature %d", i, f)
			}
		}
		if !(r.Loss >= 0 && r.Loss < 1) {
			t.Errorf("row %d: a loss of %v", i, r.Loss)
		}
	}
	for k := range Kinds {
		sound := Of(k, 0)[0]
		for outdoor := 255.0; outdoor < 320; outdoor += 5 {
			p := Place{
				Box: 276, Outdoor: outdoor, Setpoint: 275.5, Difference: 6, Ideal: 25,
			}
			if k >= Freezer {
				p.Box, p.Setpoint, p.Ideal = 252, 251.5, 35
			}
			m := sound.Mean(&p)
			for f := range m {
				m[f], _ = Straighten(f, m[f])
			}
			if m[Difference] < 2 || m[OverOutdoor] < 3 || m[Split] < 1 {
				t.Errorf("kind %d at %g K: %v", k, outdoor, m)
			}
		}
	}
}

// A value that is bent and straightened is what it was, and the slopes are those of the scale.
func TestBend(t *testing.T) {
	const step = 1e-6
	for f := range Features {
		for x := -60.0; x < 130; x += 7 {
			y, slope := Bend(f, x)
			back, same := Straighten(f, y)
			next, _ := Bend(f, x+step)
			if math.Abs(back-x) > 1e-9 || math.Abs(slope-same) > 1e-9 ||
				math.Abs((next-y)/step-slope) > 1e-5 {
				t.Errorf("feature %d: %g is bent to %g, slope %g; back %g, %g",
					f, x, y, slope, back, same)
			}
		}
	}
}

// What was encoded is read back, but for the end of its fraction.
func TestEncode(t *testing.T) {
	if got := Encode(rows); string(got) != string(table) {
		t.Error("the table is not what its rows encode to")
	}
}
