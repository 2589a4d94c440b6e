package airside

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
)

func TestClose(t *testing.T) {
	kw := func(v, u float64) quantity.Uncertain[quantity.Power] {
		return quantity.Kilowatts(v).PlusMinus(quantity.Kilowatts(u))
	}
	for _, c := range []struct {
		air, refrigerant quantity.Uncertain[quantity.Power]
		closes           bool
	}{{kw(10, 0.6), kw(10.8, 0.4), true}, {kw(13, 0.6), kw(10.8, 0.4), false},
		{kw(8, 0.6), kw(10.8, 0.4), false}} {
		got, err := ClosureOf(c.air, c.refrigerant)
		if err != nil || got.Closes != c.closes {
			t.Errorf("%+v, %v", got, err)
		}
		if got.Best.Std >= min(c.air.Std, c.refrigerant.Std) {
			t.Errorf("the mean of two is no better than the better: %v", got.Best)
		}
	}
	got, err := ClosureOf(kw(10, 0), kw(10.8, 0))
	if err != nil || got.Best.Value != quantity.Kilowatts(10.8) || math.IsNaN(got.RelativeStd) {
		t.Errorf("without uncertainty: %+v, %v", got, err)
	}
	if _, err := ClosureOf(kw(10, 0.5), kw(0, 0.5)); err == nil {
		t.Error("nothing is closed against")
	}
}

func TestRefrigerantCapacity(t *testing.T) {
	q, err := RefrigerantCapacity(
		quantity.KilogramsPerSecond(0.06).PlusMinus(quantity.KilogramsPerSecond(0.003)),
		quantity.KilojoulesPerKilogram(260).
			PlusMinus(0),
		quantity.KilojoulesPerKilogram(430).PlusMinus(0),
	)
	if err != nil || math.Abs(q.Value.Watts()-10200) > 1e-9 || math.Abs(q.Std-510) > 1e-9 {
		t.Errorf("%v, %v", q, err)
	}
	_, swapped := RefrigerantCapacity(
		quantity.KilogramsPerSecond(0.06).PlusMinus(0),
		quantity.KilojoulesPerKilogram(430).PlusMinus(0),
		quantity.KilojoulesPerKilogram(260).PlusMinus(0),
	)
	var re *RangeError
	if !errors.As(swapped, &re) {
		t.Errorf("swapped: %v", swapped)
	}
}

func TestEfficiency(t *testing.T) {
	e, err := EfficiencyOf(
		quantity.BtuPerHour(36000).PlusMinus(quantity.BtuPerHour(1800)),
		quantity.Kilowatts(3).PlusMinus(quantity.Kilowatts(0.09)),
	)
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(
		t, practice("EER = 3.412 × COP"), "EER of a COP of 3.517", "Btu/(h·W)", 12, e.EER, 1e-9,
	)
	if math.Abs(e.EER/e.COP-3.412) > 0.001 ||
		math.Abs(e.EERStd/e.EER-math.Hypot(0.05, 0.03)) > 1e-9 {
		t.Errorf("%+v", e)
	}
	if _, err := EfficiencyOf(quantity.Tons(3).PlusMinus(0),
		quantity.Power(0).PlusMinus(0)); err == nil {
		t.Error("a machine without power has an efficiency")
	}
}
