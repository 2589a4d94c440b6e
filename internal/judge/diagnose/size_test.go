package diagnose

import (
	"testing"

	"github.com/satline/satline/quantity/fact"
)

// A size is told as a part of the whole, never as all of it or more.
func TestSizeIsAPart(t *testing.T) {
	for severity, want := range map[float64]fact.Share{0.98: 0.95, 1.3: 0.95, 0.31: 0.3} {
		if got, ok := sizeOf(CondenserAir, severity); !ok || got.Of != want {
			t.Errorf("%v is told as %v", severity, got.Of)
		}
	}
}
