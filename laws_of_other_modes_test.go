package satline

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/internal/judge/coldroom/bench"
	"github.com/satline/satline/internal/judge/diagnose/testbench"
	"github.com/satline/satline/quantity"
)

// heated writes a heat pump that heats down as a technician would.
func heated(t *testing.T, rng *rand.Rand) Visit {
	t.Helper()
	drawn, err := testbench.DrawHeatingVisit(rng)
	if err != nil {
		t.Fatal(err)
	}
	v := visitOf(&drawn.Evidence)
	v.Equipment.Arrangement = SplitHeatPump
	v.Conditions.Mode = Heating
	v.Conditions.CoilIced = drawn.Evidence.Seen.CoilIced
	return v
}

// chilled writes a cold room down as a technician would.
func chilled(rng *rand.Rand) Visit {
	b := bench.Draw(rng, 0.3)
	read := func(name string) Reading[quantity.Temperature] { return given(b.Readings[name]) }
	v := Visit{
		Equipment: Equipment{
			Refrigerant: b.Fluid.Designation(), Metering: Capillary, ColdRoom: b.Room,
			Label: Label{Charge: b.Charge},
		},
		Conditions: Conditions{Mode: Refrigeration},
		Readings: Readings{
			SuctionPressure: given(b.Suction), LiquidPressure: given(b.Liquid),
			SuctionLine: read("suctionLine"), LiquidLine: read("liquidLine"),
			BulbLine: read("bulbLine"), DischargeLine: read("dischargeLine"),
			OutdoorDryBulb: read("outdoorDryBulb"), CondenserLeaving: read("condenserLeaving"),
			ReturnDryBulb: read("returnDryBulb"), SupplyDryBulb: read("supplyDryBulb"),
		},
	}
	if b.Valve {
		v.Equipment.Metering = TXV
	}
	if b.Current > 0 {
		v.Equipment.Label.RatedLoadCurrent = quantity.Amperes(10)
		v.Readings.CompressorCurrent = Measured(quantity.Amperes(10 * b.Current))
	}
	for look, yes := range b.Answers {
		v.Checks = append(v.Checks, Check{Look: look, Found: yes})
	}
	slices.SortFunc(v.Checks, func(a, b Check) int { return strings.Compare(a.Look, b.Look) })
	if len(v.Validate()) > 0 {
		return chilled(rng) // colder or hotter than a reading may be
	}
	return v
}

// The laws of a plan hold in the other modes too; over ten thousand visits to cold rooms, and a
// thousand to heat pumps, whose bench is slow, with SATLINE_TRIAL=full.
func TestLawsOfOtherModes(t *testing.T) {
	n := lawful()
	holdLaws(t, n, chilled)
	holdLaws(t, n/10, func(rng *rand.Rand) Visit { return heated(t, rng) })
}

func holdLaws(t *testing.T, n int, draw func(*rand.Rand) Visit) {
	t.Helper()
	broken := map[string]int{}
	for i := range n {
		v := draw(rand.New(rand.NewPCG(23, uint64(i))))
		if i%3 == 0 {
			v.Language = Spanish
		}
		a, err := Assess(v)
		if err != nil {
			t.Fatalf("visit %d: %v", i, err)
		}
		for _, l := range laws {
			if what := l.broken(&v, &a); what != "" {
				if broken[l.name]++; broken[l.name] <= 3 {
					t.Errorf("visit %d: %s: %s %v", i, l.name, what, codes(a))
				}
			}
		}
	}
}
