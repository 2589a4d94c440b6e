package signature

import "testing"

// The table is the one that the causes ask for, and what it says can be: spreads are above
// zero, and a sound machine evaporates below the outdoor air and condenses above the room.
func TestTable(t *testing.T) {
	if want := len(Causes) * Sizes * Devices * Parts * rowLength * 4; len(table) != want {
		t.Fatalf("%d bytes, want %d: go generate ./internal/judge/heatpump/signature", len(table),
			want)
	}
	for c := range Causes {
		for s := range Sizes {
			for d := range Device(Devices) {
				for p := range Part(Parts) {
					r := Of(c, s, d, p)
					for f := range r.Covariance {
						if !(r.Covariance[f][f] > 0) {
							t.Errorf("%s %d %d %d: no spread of feature %d", Causes[c], s, d, p, f)
						}
					}
				}
			}
		}
	}
	for d := range Device(Devices) {
		for outdoor := 255.0; outdoor < 292; outdoor += 5 {
			m := Mean(0, 0, d, Weather{Outdoor: outdoor, Return: 294})
			if m[EvaporatingUnder] < 3 || m[CondensingOver] < 8 || m[Rise] < 5 {
				t.Errorf("device %d at %g K: %v", d, outdoor, m)
			}
		}
	}
}
