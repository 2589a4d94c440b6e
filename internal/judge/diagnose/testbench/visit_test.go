package testbench

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
)

func draw(t testing.TB, seed uint64, want func(*Visit) bool) (*Visit, *rand.Rand) {
	t.Helper()
	for i := range uint64(300) {
		rng := rand.New(rand.NewPCG(seed, i))
		v, err := DrawVisit(rng, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if want(v) {
			return v, rng
		}
	}
	t.Fatal("no such visit")
	return nil, nil
}

// One seed gives one visit.
func TestVisitsRepeat(t *testing.T) {
	for i := range uint64(20) {
		a, err := DrawVisit(rand.New(rand.NewPCG(8, i)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		b, err := DrawVisit(rand.New(rand.NewPCG(8, i)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(a.Truth, b.Truth) || a.Loss != b.Loss ||
			!reflect.DeepEqual(a.Evidence.Input, b.Evidence.Input) {
			t.Errorf("visit %d differs from itself", i)
		}
	}
}

// Hardly any draw has to be made again, and every kind of visit comes.
func TestDrawsOfEveryKind(t *testing.T) {
	var tally Tally
	n := 150
	if testing.Short() {
		n = 60
	}
	kinds := map[int]int{}
	for i := range uint64(n) {
		v, err := DrawVisit(rand.New(rand.NewPCG(9, i)), Options{Tally: &tally})
		if err != nil {
			t.Fatal(err)
		}
		kind := len(v.Truth)
		if v.Instrument {
			kind = 3
		}
		kinds[kind]++
		e := &v.Evidence
		for what, u := range map[string]*quantity.Uncertain[quantity.Temperature]{
			"suction line": e.SuctionLine, "liquid line": e.LiquidLine, "outdoor": e.OutdoorDryBulb,
			"return": e.ReturnDryBulb, "return wet bulb": e.ReturnWetBulb,
			"supply": e.SupplyDryBulb,
		} {
			if u == nil || !(u.Std > 0) || !(u.Value > 230 && u.Value < 400) {
				t.Errorf("visit %d, %s: %v", i, what, u)
			}
		}
		if math.IsNaN(v.Loss) || v.Loss > 1 {
			t.Errorf("visit %d, %s: loss %.3f", i, v.Code(), v.Loss)
		}
	}
	for kind := range 4 {
		if kinds[kind] == 0 {
			t.Errorf("no visit of kind %d in %v", kind, kinds)
		}
	}
	t.Logf("of %d visits drawn again: %+v", n, tally)
	if tally.Unsolved > n/50 || tally.Stopped+tally.Iced > n/6 {
		t.Errorf("of %d visits drawn again: %+v", n, tally)
	}
}

// A short machine is filled step by step: each dose raises the subcooling behind a valve, and
// at the right charge it reads as its label says.
func TestChargingInSteps(t *testing.T) {
	v, rng := draw(t, 21, func(v *Visit) bool {
		return v.Code() == string(diagnose.Undercharge) && v.LabelSubcooling != nil &&
			v.Machine.ChargeError() < -0.15
	})
	m := v.Machine
	before, err := m.Operate(Rated())
	if err != nil {
		t.Fatal(err)
	}
	for m.ChargeError() < -0.03 {
		last := *v.Evidence.LiquidPressure
		if err := v.Add(m.LabelCharge * 0.05); err != nil {
			t.Fatal(err)
		}
		if err := v.Again(rng); err != nil {
			t.Fatal(err)
		}
		earlier := v.Evidence.Earlier
		if earlier == nil || len(earlier.Done) != 1 ||
			earlier.Done[0].Kind != diagnose.ChargeAdded ||
			*earlier.LiquidPressure != last {
			t.Fatalf("earlier readings: %+v", earlier)
		}
	}
	after, err := m.Operate(Rated())
	if err != nil {
		t.Fatal(err)
	}
	if after.Subcooling < before.Subcooling+1 ||
		math.Abs(float64(after.Subcooling-m.LabelSubcooling)) > 2 {
		t.Errorf("subcooling %v, then %v, label %v",
			before.Subcooling, after.Subcooling, m.LabelSubcooling)
	}
	if err := v.Add(-m.LabelCharge * 2); err == nil {
		t.Error("more was recovered than there was")
	}
}

// A mended cause is gone from the truth and from the readings.
func TestMending(t *testing.T) {
	v, rng := draw(t, 22, func(v *Visit) bool {
		return v.Code() == string(diagnose.LowIndoorAir) && v.Truth[0].Size > 0.4
	})
	cold := v.Evidence.SuctionPressure.Value
	if v.Mend(diagnose.CondenserAir) || !v.Mend(diagnose.LowIndoorAir) {
		t.Fatal("mended what was not there, or not what was")
	}
	if err := v.Again(rng); err != nil {
		t.Fatal(err)
	}
	if v.Code() != "sound" || v.Evidence.SuctionPressure.Value < cold+quantity.PSIG(5) {
		t.Errorf("%s, suction %v after %v", v.Code(), v.Evidence.SuctionPressure.Value, cold)
	}
	w, rng := draw(t, 23, func(v *Visit) bool { return v.Code() == string(diagnose.SunOnSensor) })
	if !w.Mend(diagnose.SunOnSensor) {
		t.Fatal("not mended")
	}
	if err := w.Again(rng); err != nil {
		t.Fatal(err)
	}
	if off := math.Abs(float64(w.Evidence.OutdoorDryBulb.Value - w.Weather.Outdoor)); off > 2 {
		t.Errorf("the outdoor thermometer is still %.1f K off", off)
	}
}

// A look shows what is there nine times in ten, and what is not one time in twenty.
func TestLooks(t *testing.T) {
	v, rng := draw(t, 24, func(v *Visit) bool {
		return len(v.Truth) == 1 && v.Truth[0].Fault == "condenser-coil"
	})
	shows, misleads := 0, 0
	for range 1000 {
		if v.Look(rng, "outdoor-coil") {
			shows++
		}
		if v.Look(rng, "gauge-zero") {
			misleads++
		}
	}
	if shows < 860 || shows > 940 || misleads < 20 || misleads > 80 {
		t.Errorf("of 1000 looks %d showed the dirt, %d a gauge off zero", shows, misleads)
	}
}

func BenchmarkVisit(b *testing.B) {
	for i := range b.N {
		if _, err := DrawVisit(rand.New(rand.NewPCG(1, uint64(i))), Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOperate(b *testing.B) {
	all := machines(b, 60, nil)
	w := Rated()
	w.Outdoor, w.ReturnWetBulb = quantity.Fahrenheit(80), quantity.Fahrenheit(63)
	for i := range b.N {
		if _, err := all[i%len(all)].Operate(w); err != nil {
			b.Fatal(err)
		}
	}
}
