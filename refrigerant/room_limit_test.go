package refrigerant

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func TestRoomTables(t *testing.T) {
	floor := verify.Source{
		Cite: "IEC 60335-2-40:2018, clause GG.2, tables for R-32 at 0.6 m in a manufacturer's " +
			"installation manual",
		Kind: verify.Published,
	}
	for _, tc := range []struct{ area, charge float64 }{
		{1, 0.138}, {3, 0.414}, {6, 0.829}, {7, 0.907}, {8, 0.970}, {10, 1.084}, {20, 1.533},
		{30, 1.877}, {45, 2.299},
	} {
		verify.Value(
			t, floor, "charge of R-32 for a floor, m², released at 0.6 m", "kg", tc.charge,
			boundByArea(0.307, 0.6, tc.area), 0.001,
		)
	}
	for _, tc := range []struct{ charge, area float64 }{{1.84, 28.81}, {2.00, 34.04}, {2.20, 41.19},
		{2.30, 45.02}} {
		verify.Value(
			t, floor, "floor for a charge of R-32, kg, released at 0.6 m", "m²", tc.area,
			floorFor(0.307, 0.6, tc.charge), 0.01,
		)
	}
	heights := verify.Source{
		Cite: "IEC 60335-2-40, table GG.1, in a manufacturer's installation manual (limits " +
			"0.038 and 0.306 kg/m³)",
		Kind: verify.Published,
	}
	for _, tc := range []struct{ limit, height, area, charge float64 }{
		{0.038, 1.0, 4, 0.08}, {0.038, 1.8, 10, 0.24}, {0.038, 2.2, 30, 0.51},
		{0.038, 1.8, 50, 0.53}, {0.306, 0.6, 20, 1.53}, {0.306, 1.0, 7, 1.51},
		{0.306, 1.8, 10, 3.24}, {0.306, 2.2, 50, 8.85},
	} {
		verify.Value(
			t, heights, "charge for a limit, a height and a floor", "kg", tc.charge,
			boundByArea(tc.limit, tc.height, tc.area), 0.006,
		)
	}
	unbound := verify.Source{
		Cite: "IEC 60335-2-40:2018: no floor is asked for below this charge of R-32, in " +
			"manufacturers' installation manuals",
		Kind: verify.Published,
	}
	l, err := mustLookup(t, "R-32").RoomFloor(1, OnWall)
	if err != nil || l.Rule != AnyRoom || l.Floor != 0 {
		t.Errorf("%+v, %v", l, err)
	}
	verify.Value(
		t, unbound, "charge of R-32 that no floor is asked for", "kg", 1.842, l.Most.Kilograms(),
		0.001,
	)
}

// Charge and floor answer each other, and a larger or higher room never takes less.
func TestRoomChargeAndFloor(t *testing.T) {
	var known []*Refrigerant
	for _, r := range All() {
		if _, err := r.FlammabilityLimit(); err == nil && !r.SafetyGroup().HigherToxicity() {
			known = append(known, r)
		}
	}
	if len(known) < 15 {
		t.Fatalf("limits of %v only", known)
	}
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(known).Draw(t, "refrigerant")
		area := quantity.Area(rapid.Float64Range(0.1, 1000).Draw(t, "area"))
		height := quantity.Length(rapid.Float64Range(0, 3).Draw(t, "height"))
		limit, err := r.RoomCharge(area, height)
		if err != nil || !(limit.Most > 0) {
			t.Fatalf("%+v, %v", limit, err)
		}
		back, err := r.RoomFloor(limit.Most, height)
		if err != nil {
			t.Fatal(err)
		}
		if limit.Rule == ByArea && math.Abs(float64(back.Floor/area)-1) > 1e-9 {
			t.Fatalf("%v on %v: %v needs %v", r, area, limit.Most, back.Floor)
		}
		if back.Floor > area*(1+1e-9) {
			t.Fatalf("%v: %v allowed on %v, and %v asked for", r, limit.Most, area, back.Floor)
		}
		larger, err := r.RoomCharge(area*1.1, height+0.1)
		if err != nil || larger.Most < limit.Most {
			t.Fatalf("%v: a larger room takes %v, not %v, %v", r, larger.Most, limit.Most, err)
		}
		more, err := r.RoomFloor(limit.Most*1000+1, height)
		var out *RangeError
		if errors.As(err, &out) {
			return
		}
		if err != nil || more.Rule != ByMeasures && more.Rule != ByArea && more.Rule != AnyRoom {
			t.Fatalf("%+v, %v", more, err)
		}
	})
}

func TestRoomRefusals(t *testing.T) {
	r32, nan := mustLookup(t, "R-32"), math.NaN()
	var out *RangeError
	for name, err := range map[string]error{
		"no floor":     second(r32.RoomCharge(0, OnWall)),
		"NaN floor":    second(r32.RoomCharge(quantity.Area(nan), OnWall)),
		"NaN height":   second(r32.RoomCharge(10, quantity.Length(nan))),
		"below":        second(r32.RoomCharge(10, -1)),
		"no charge":    second(r32.RoomFloor(0, OnWall)),
		"NaN charge":   second(r32.RoomFloor(quantity.Mass(nan), OnWall)),
		"endless room": second(r32.RoomCharge(quantity.Area(math.Inf(1)), OnWall)),
	} {
		if !errors.As(err, &out) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for designation, want := range map[string]error{"R-410A": ErrNotFlammable,
		"R-717": ErrRoomToxic, "R-444A": ErrNoFlammabilityLimit} {
		if _, err := mustLookup(t, designation).RoomCharge(10, OnWall); !errors.Is(err, want) {
			t.Errorf("%s: %v", designation, err)
		}
	}
	if _, err := (*Refrigerant)(nil).RoomFloor(1, OnWall); !errors.Is(err, ErrNoRefrigerant) {
		t.Error(err)
	}
	mixed, err := NewBlend("R-32", []Component{{"R-290", 0.5}, {"R-32", 0.5}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := mixed.FlammabilityLimit(); !errors.Is(err, ErrNoFlammabilityLimit) {
		t.Errorf("a blend that calls itself R-32: %v", err)
	}
}
