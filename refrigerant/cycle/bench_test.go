package cycle

import (
	"testing"

	"github.com/satline/satline/refrigerant"
)

// Every speed figure of the package. Run with
//
//	go test -run '^$' -bench . -benchmem -count 5 ./refrigerant/cycle
//
// and take the least of each: other work on the machine only adds.

func BenchmarkSolve(b *testing.B) {
	for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
		b.Run(m.String(), func(b *testing.B) {
			s := machine(b, "R-22", m)
			c := weather(88, 78, 63)
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				if _, err := s.Solve(c, Faults{Charge: -0.2 + 0.01*float64(i&31)}); err != nil {
					b.Fatal(err)
				}
				i++
			}
		})
	}
}

// Once around the circuit: what a solution does about forty times.
func BenchmarkEvaluate(b *testing.B) {
	s := machine(b, "R-22", refrigerant.FixedRestrictor)
	t := trial{plant: &s.plant}
	if err := s.ask(&t.question, RatingConditions(), Faults{}); err != nil {
		b.Fatal(err)
	}
	y := t.guess()
	b.ReportAllocs()
	for b.Loop() {
		t.evaluate(y)
	}
}

func BenchmarkDesign(b *testing.B) {
	spec := machine(b, "R-22", refrigerant.TXV).Spec()
	for b.Loop() {
		if _, err := Design(spec); err != nil {
			b.Fatal(err)
		}
	}
}
