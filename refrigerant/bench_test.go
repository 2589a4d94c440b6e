package refrigerant

import (
	"testing"

	"github.com/satline/satline/quantity"
)

// Every speed figure of the package, side by side. Run with
//
//	go test -run '^$' -bench . -benchmem -count 5 ./refrigerant
//
// and take the least of each: other work on the machine only adds.

// sink keeps the compiler from dropping what a benchmark computes.
var sink struct {
	t quantity.Temperature
	p quantity.Pressure
	d quantity.Density
	h quantity.SpecificEnthalpy
	s State

	table TableState
}

func benchLookup(b *testing.B, designation string, f func(*Refrigerant, int)) {
	r := mustLookup(b, designation)
	f(r, 0)
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		f(r, i&1023)
		i++
	}
}

func BenchmarkTableBubbleTemperature(b *testing.B) {
	benchLookup(b, "R-410A", func(r *Refrigerant, i int) {
		sink.t, _ = r.BubbleTemperature(quantity.Pressure(8e5 + 2e3*float64(i)))
	})
}

func BenchmarkTableDewTemperature(b *testing.B) {
	benchLookup(b, "R-454B", func(r *Refrigerant, i int) {
		sink.t, _ = r.DewTemperature(quantity.Pressure(8e5 + 2e3*float64(i)))
	})
}

func BenchmarkTableDewPressure(b *testing.B) {
	benchLookup(b, "R-22", func(r *Refrigerant, i int) {
		sink.p, _ = r.DewPressure(quantity.Temperature(250 + 0.08*float64(i)))
	})
}

func BenchmarkTableLiquidDensity(b *testing.B) {
	benchLookup(b, "R-22", func(r *Refrigerant, i int) {
		sink.d, _ = r.BubbleDensity(quantity.Temperature(250 + 0.08*float64(i)))
	})
}

func BenchmarkTableVaporEnthalpy(b *testing.B) {
	benchLookup(b, "R-22", func(r *Refrigerant, i int) {
		sink.h, _ = r.DewEnthalpy(quantity.Temperature(250 + 0.08*float64(i)))
	})
}

func BenchmarkSuperheat(b *testing.B) {
	benchLookup(b, "R-410A", func(r *Refrigerant, i int) {
		d, _ := r.Superheat(quantity.Pressure(8e5+200*float64(i)), 290)
		sink.t = quantity.Temperature(d)
	})
}

func BenchmarkStatePT(b *testing.B) {
	for _, designation := range []string{"R-22", "R-134a", "R-410A", "R-407C", "R-448A"} {
		b.Run(designation, func(b *testing.B) {
			benchLookup(b, designation, func(r *Refrigerant, i int) {
				sink.s, _ = r.State(5e5, quantity.Temperature(290+0.04*float64(i)))
			})
		})
	}
}

func BenchmarkStatePTLiquid(b *testing.B) {
	benchLookup(b, "R-22", func(r *Refrigerant, i int) {
		sink.s, _ = r.State(2e6, quantity.Temperature(280+0.02*float64(i)))
	})
}

func benchStateTable(b *testing.B, designation string, f func(*StateTable, int)) {
	states, err := mustLookup(b, designation).StateTable()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		f(states, i&1023)
		i++
	}
}

func BenchmarkStateTable(b *testing.B) {
	for _, designation := range []string{"R-22", "R-448A"} {
		b.Run("vapor/"+designation, func(b *testing.B) {
			benchStateTable(b, designation, func(t *StateTable, i int) {
				sink.table, _ = t.At(
					quantity.Pressure(4e5+200*float64(i)),
					quantity.Temperature(290+0.04*float64(i)),
				)
			})
		})
	}
	b.Run("liquid/R-22", func(b *testing.B) {
		benchStateTable(b, "R-22", func(t *StateTable, i int) {
			sink.table, _ = t.At(
				quantity.Pressure(2e6+1e3*float64(i)), quantity.Temperature(280+0.02*float64(i)),
			)
		})
	})
}

func BenchmarkIsobar(b *testing.B) {
	b.Run("AtEnthalpy", func(b *testing.B) {
		benchStateTable(b, "R-22", func(t *StateTable, i int) {
			line, _ := t.Isobar(quantity.Pressure(5e5 + 100*float64(i)))
			sink.table, _ = line.AtEnthalpy(quantity.SpecificEnthalpy(430e3 + 30*float64(i)))
		})
	})
	b.Run("AtEntropy", func(b *testing.B) {
		benchStateTable(b, "R-22", func(t *StateTable, i int) {
			line, _ := t.Isobar(quantity.Pressure(16e5 + 100*float64(i)))
			sink.table, _ = line.AtEntropy(quantity.SpecificEntropy(1780 + 0.1*float64(i)))
		})
	})
}

func BenchmarkMakeStateTable(b *testing.B) {
	for _, designation := range []string{"R-22", "R-448A"} {
		b.Run(designation, func(b *testing.B) {
			r := mustLookup(b, designation)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := r.makeStateTable(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkStatePTSupercritical(b *testing.B) {
	for _, designation := range []string{"R-744", "R-410A", "R-448A"} {
		b.Run(designation, func(b *testing.B) {
			benchLookup(b, designation, func(r *Refrigerant, i int) {
				sink.s, _ = r.State(9e6, quantity.Temperature(380+0.04*float64(i)))
			})
		})
	}
}

func BenchmarkStatePHSupercritical(b *testing.B) {
	for _, designation := range []string{"R-744", "R-410A", "R-448A"} {
		b.Run(designation, func(b *testing.B) {
			benchLookup(b, designation, func(r *Refrigerant, i int) {
				sink.s, _ = r.StateAtEnthalpy(9e6, quantity.SpecificEnthalpy(430e3+30*float64(i)))
			})
		})
	}
}

func BenchmarkStatePH(b *testing.B) {
	for _, designation := range []string{"R-22", "R-410A", "R-448A"} {
		b.Run(designation, func(b *testing.B) {
			benchLookup(b, designation, func(r *Refrigerant, i int) {
				sink.s, _ = r.StateAtEnthalpy(5e5, quantity.SpecificEnthalpy(430e3+30*float64(i)))
			})
		})
	}
}

func BenchmarkStatePHTwoPhase(b *testing.B) {
	for _, designation := range []string{"R-22", "R-407C", "R-448A", "R-454B"} {
		b.Run(designation, func(b *testing.B) {
			benchLookup(b, designation, func(r *Refrigerant, i int) {
				sink.s, _ = r.StateAtEnthalpy(5e5, quantity.SpecificEnthalpy(250e3+50*float64(i)))
			})
		})
	}
}

func BenchmarkStatePSTwoPhase(b *testing.B) {
	benchLookup(b, "R-448A", func(r *Refrigerant, i int) {
		sink.s, _ = r.StateAtEntropy(5e5, quantity.SpecificEntropy(1.2e3+0.2*float64(i)))
	})
}

func BenchmarkStateAtQuality(b *testing.B) {
	benchLookup(b, "R-448A", func(r *Refrigerant, i int) {
		sink.s, _ = r.StateAtQuality(5e5, float64(i+1)/1026)
	})
}

func BenchmarkRunTimeBlend(b *testing.B) {
	r, err := NewBlend(
		"leaked R-407C", []Component{{"R-32", 0.19}, {"R-125", 0.23}, {"R-134a", 0.58}},
	)
	if err != nil {
		b.Skip(err)
	}
	b.Run("DewTemperature", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink.t, _ = r.DewTemperature(6e5)
		}
	})
	b.Run("DewPressure", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink.p, _ = r.DewPressure(280)
		}
	})
	b.Run("StateAtEnthalpy", func(b *testing.B) {
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			sink.s, _ = r.StateAtEnthalpy(5e5, quantity.SpecificEnthalpy(250e3+50*float64(i&1023)))
		}
	})
	b.Run("StateAtQuality", func(b *testing.B) {
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			sink.s, _ = r.StateAtQuality(5e5, float64(i&1023+1)/1026)
		}
	})
}

// First use of a refrigerant: its table is made ready.
func BenchmarkFirstUse(b *testing.B) {
	known := mustLookup(b, "R-22")
	b.ReportAllocs()
	for b.Loop() {
		r := Refrigerant{designation: known.designation, parts: known.parts}
		sink.t, _ = r.DewTemperature(6e5)
	}
}

func BenchmarkLookup(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Lookup("r454b"); err != nil {
			b.Fatal(err)
		}
	}
}
