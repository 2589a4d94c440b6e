package diagnose_test

import (
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
)

// BenchmarkInfer weighs all readings, the eight usual ones, and those without pairs of
// suspects.
func BenchmarkInfer(b *testing.B) {
	for _, x := range []struct {
		name    string
		options simulate.Options
		singles bool
	}{
		{"all-readings", simulate.Options{Full: true}, false},
		{"eight-readings", simulate.Options{Bare: true}, false},
	} {
		b.Run(x.name, func(b *testing.B) {
			visits := make([]diagnose.Evidence, 16)
			for i := range visits {
				v, err := simulate.Draw(rand.New(rand.NewPCG(1, uint64(i))), x.options)
				if err != nil {
					b.Fatal(err)
				}
				visits[i] = v.Evidence
			}
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				diagnose.Infer(visits[i%len(visits)])
			}
		})
	}
}
