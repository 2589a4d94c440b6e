package diagnose_test

import (
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/diagnose/simulate"
)

func BenchmarkInfer(b *testing.B) {
	visits := make([]simulate.Visit, 16)
	for i := range visits {
		v, err := simulate.Draw(rand.New(rand.NewPCG(1, uint64(i))), simulate.Options{Full: true})
		if err != nil {
			b.Fatal(err)
		}
		visits[i] = v
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		diagnose.Infer(visits[i%len(visits)].Evidence)
	}
}
