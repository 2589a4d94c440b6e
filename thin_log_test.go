package satline

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// Sensors that send one after the other come together in a slot; one slot is one entry,
// its time in the slot; and a log that is thinned, while it is taken or at once, is
// thinned for good.
func TestThinning(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1))
		var log []LogEntry
		at := time.Duration(0)
		for range rapid.IntRange(1, 300).Draw(rt, "n") {
			at += time.Duration(1 + rng.Int64N(int64(4*time.Second)))
			var r Readings
			if rng.IntN(2) == 0 {
				r.SuctionPressure = Measured(quantity.PSIG(118 + rng.NormFloat64()))
			}
			if rng.IntN(2) == 0 {
				r.SuctionLine = ReadingOf(
					quantity.Fahrenheit(52 + rng.NormFloat64()).
						PlusMinus(quantity.FahrenheitDelta(1)),
				)
			}
			if rng.IntN(20) == 0 {
				r.Airflow = Measured(quantity.CFM(1000 + 100*rng.Float64()))
			}
			log = append(log, LogEntry{At: at, Readings: r})
		}
		once := thinned(log)
		var stream thinning
		var taken []LogEntry
		for i := range log {
			if e, ok := stream.take(&log[i]); ok {
				taken = append(taken, e)
			}
		}
		if last, ok := stream.soFar(); ok {
			taken = append(taken, last)
		}
		if diff := cmp.Diff(once, taken); diff != "" {
			rt.Fatal(diff)
		}
		if diff := cmp.Diff(once, thinned(once)); diff != "" {
			rt.Fatal(diff)
		}
		airflows := 0
		for i, e := range once {
			if i > 0 && thin.Slot(e.At) <= thin.Slot(once[i-1].At) {
				rt.Fatalf("entries %d and %d share a slot", i-1, i)
			}
			if e.Airflow.taken {
				airflows++
			}
			if p := e.SuctionPressure.Get(); p != nil &&
				(p.Value < quantity.PSIG(110) || p.Value > quantity.PSIG(126)) {
				rt.Fatalf("%v", p)
			}
		}
		for i := range log {
			if log[i].Airflow.taken && airflows == 0 {
				rt.Fatal("a reading got lost")
			}
		}
	})
}

// BenchmarkThinning is one entry of four readings.
func BenchmarkThinning(b *testing.B) {
	b.ReportAllocs()
	e := LogEntry{Readings: Readings{
		SuctionPressure: Measured(quantity.PSIG(118)), LiquidPressure: Measured(quantity.PSIG(340)),
		SuctionLine: Measured(quantity.Fahrenheit(52)),
		LiquidLine:  Measured(quantity.Fahrenheit(95)),
	}}
	var t thinning
	for b.Loop() {
		e.At += time.Second
		t.take(&e)
	}
}
