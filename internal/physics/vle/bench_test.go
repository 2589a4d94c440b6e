package vle_test

import (
	"testing"

	"github.com/satline/satline/internal/physics/vle"
)

// The blends of the benchmarks have one to five components; R-1234yf and R-32
// stand for equations with and without Gaussian terms.
func benchmarkSystems(b *testing.B) []struct {
	name string
	s    *vle.System
} {
	systems, _ := blendSystems(b)
	type named = struct {
		name string
		s    *vle.System
	}
	return []named{
		{
			"R-32", pureSystem(b, "R-32"),
		}, {"R-1234yf", pureSystem(b, "R-1234yf")}, {"R-22", pureSystem(b, "R-22")},
		{"R-410A", systems["R-410A"]}, {"R-454B", systems["R-454B"]}, {"R-407C", systems["R-407C"]},
		{"R-438A", systems["R-438A"]},
	}
}

func benchmarkEach(b *testing.B, prepare func(*vle.System) func() error) {
	for _, c := range benchmarkSystems(b) {
		b.Run(c.name, func(b *testing.B) {
			f := prepare(c.s)
			if err := f(); err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if err := f(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkVaporState(b *testing.B) {
	benchmarkEach(b, func(s *vle.System) func() error {
		return func() error { return second(s.State(295, 5e5, vle.Vapor)) }
	})
}

func BenchmarkLiquidState(b *testing.B) {
	benchmarkEach(b, func(s *vle.System) func() error {
		return func() error { return second(s.State(300, 3e6, vle.Liquid)) }
	})
}

func BenchmarkDewPoint(b *testing.B) {
	benchmarkEach(b, func(s *vle.System) func() error {
		return func() error { return second(s.DewT(280)) }
	})
}

func BenchmarkBubblePoint(b *testing.B) {
	benchmarkEach(b, func(s *vle.System) func() error {
		return func() error { return second(s.BubbleT(280)) }
	})
}

func BenchmarkDewTemperature(b *testing.B) {
	benchmarkEach(b, func(s *vle.System) func() error {
		return func() error { return second(s.DewP(6e5)) }
	})
}

func BenchmarkTwoPhaseFlash(b *testing.B) {
	benchmarkEach(b, func(s *vle.System) func() error {
		l, err := s.BubbleP(6e5)
		if err != nil {
			b.Fatal(err)
		}
		v, err := s.DewP(6e5)
		if err != nil {
			b.Fatal(err)
		}
		h := (s.Model().At(l.T, l.RhoLiquid).H + s.Model().At(v.T, v.RhoVapor).H) / 2
		return func() error { return second(s.FlashPH(6e5, h)) }
	})
}

// A blend that is made at run time pays for its model once and for its critical
// point and envelope where they are first needed.
func BenchmarkCriticalPoint(b *testing.B) {
	systems, _ := blendSystems(b)
	m := systems["R-438A"].Model()
	for b.Loop() {
		if _, err := vle.New(m).Critical(); err != nil {
			b.Fatal(err)
		}
	}
}
