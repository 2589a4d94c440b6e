package main

import (
	"math"
	"os"
	"testing"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/refrigerant"
)

// The tables that are checked in are those that this generator makes: the last
// digits may differ where a machine multiplies and adds in one.
func TestCheckedInTablesAreCurrent(t *testing.T) {
	stored, err := os.ReadFile("../../../refrigerant/saturation.bin")
	if err != nil {
		t.Fatal(err)
	}
	for _, designation := range []string{"R-22", "R-11", "R-718", "R-454B", "R-448A", "R-470B"} {
		r, err := refrigerant.Lookup(designation)
		if err != nil {
			t.Fatal(err)
		}
		source, err := solve(r)
		if err != nil {
			t.Fatal(err)
		}
		made, err := table.Decode(string(table.Encode([]table.Source{source})), designation)
		if err != nil {
			t.Fatal(err)
		}
		kept, err := table.Decode(string(stored), designation)
		if err != nil || kept == nil {
			t.Fatalf("%s: %v, %v", designation, kept, err)
		}
		if math.Abs(made.Low/kept.Low-1) > 1e-9 || math.Abs(made.High/kept.High-1) > 1e-9 {
			t.Errorf(
				"%s: %v to %v K, kept %v to %v; run go generate ./refrigerant", designation,
				made.Low, made.High, kept.Low, kept.High,
			)
			continue
		}
		for i := range 200 {
			at := made.Low + (made.High-made.Low)*(float64(i)+0.5)/200
			for c := range table.Curves {
				a, _ := made.At(c, at)
				b, _ := kept.At(c, at)
				if math.Abs(a-b) > 1e-6*max(math.Abs(a), floor(c)) {
					t.Errorf(
						"%s: curve %d at %v K is %v, kept %v; run go generate ./refrigerant",
						designation, c, at, a, b,
					)
				}
			}
		}
	}
}

func TestCheckedInDomesAreCurrent(t *testing.T) {
	stored, err := os.ReadFile("../../../refrigerant/dome.bin")
	if err != nil {
		t.Fatal(err)
	}
	for _, designation := range []string{"R-454B", "R-407C"} {
		r, err := refrigerant.Lookup(designation)
		if err != nil {
			t.Fatal(err)
		}
		edges, err := solve(r)
		if err != nil {
			t.Fatal(err)
		}
		source, err := solveDome(r, &edges)
		if err != nil {
			t.Fatal(err)
		}
		made, err := table.DecodeDome(
			string(table.EncodeDomes([]table.DomeSource{source})), designation,
		)
		if err != nil {
			t.Fatal(err)
		}
		kept, err := table.DecodeDome(string(stored), designation)
		if err != nil || kept == nil {
			t.Fatalf("%s: %v, %v", designation, kept, err)
		}
		for i := range 50 {
			var a, b table.Isobar
			at := source.Low + (source.High-source.Low)*(float64(i)+0.5)/50
			if !made.At(at, &a) || !kept.At(at, &b) {
				t.Errorf("%s: nothing at %v K; run go generate ./refrigerant", designation, at)
				continue
			}
			for k := range table.Inners {
				for _, share := range []float64{0.03, 0.5, 0.97} {
					if x, y := a.Off(k, share), b.Off(k, share); math.Abs(x-y) > 1e-6 {
						t.Errorf(
							"%s: property %d at %v K, share %v is %v off, kept %v; run go "+
								"generate ./refrigerant",
							designation, k, at, share, x, y,
						)
					}
				}
			}
		}
	}
}
