package airside

import (
	"encoding/json"
	"errors"
	"math"
	"testing"
	"time"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func frostReadings(t testing.TB, evaporating, std, cfm float64) FrostReadings {
	c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		t.Fatal(err)
	}
	at := airAt(72, quantity.StandardAtmosphere)
	at.WetBulb = fahrenheit(60, 0.6)
	return FrostReadings{
		Return:      at,
		Airflow:     quantity.CFM(cfm).PlusMinus(quantity.CFM(60)),
		Evaporating: fahrenheit(evaporating, std),
		Coil:        c,
	}
}

func TestJudgeFrost(t *testing.T) {
	for _, c := range []struct {
		evaporating, cfm float64
		want             FrostOutcome
	}{{40, 1200, FrostClear}, {29, 1200, FrostNear}, {20, 600, FrostForming}} {
		f, err := JudgeFrost(frostReadings(t, c.evaporating, 0.8, c.cfm))
		if err != nil {
			t.Fatal(err)
		}
		if f.Outcome != c.want {
			t.Errorf(
				"refrigerant of %v °F with %v CFM: %v, %+v", c.evaporating, c.cfm, f.Outcome, f,
			)
		}
		if f.Surface.Value <= f.Evaporating.Value || f.Margin.Std <= 0 {
			t.Errorf("%+v", f)
		}
		b, err := json.Marshal(f)
		var back map[string]any
		if err == nil {
			err = json.Unmarshal(b, &back)
		}
		if err != nil || back["outcome"] != c.want.String() {
			t.Errorf("%v: %s", err, b)
		}
		var o FrostOutcome
		if text, _ := f.Outcome.MarshalText(); o.UnmarshalText(text) != nil || o != f.Outcome {
			t.Errorf("%v does not survive text", f.Outcome)
		}
	}
	r := frostReadings(t, 15, 0.8, 600)
	r.Return.WetBulb = fahrenheit(47, 0.3)
	f, err := JudgeFrost(r)
	if err != nil || f.Outcome != FrostDry {
		t.Errorf("desert air: %v, %v", f.Outcome, err)
	}
	r.Coil = Coil{}
	var re *RangeError
	if _, err := JudgeFrost(r); !errors.As(err, &re) {
		t.Errorf("no coil: %v", err)
	}
}

func seen(t testing.TB) (CapacityLine, Conditions) {
	c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		t.Fatal(err)
	}
	at := Conditions{
		Return:  mustAir(t, 75, 62, quantity.StandardAtmosphere),
		Airflow: quantity.CFM(1150),
		Outdoor: quantity.Fahrenheit(82),
	}
	plant, err := NewCapacityLine(c, at, quantity.Fahrenheit(40))
	if err != nil {
		t.Fatal(err)
	}
	return plant, at
}

func TestCapacityLineBalances(t *testing.T) {
	plant, at := seen(t)
	now, err := plant.Run(at)
	if err != nil || math.Abs(now.Evaporating.Fahrenheit()-40) > 1e-6 ||
		math.Abs(float64(now.Capacity-plant.Capacity)) > 1e-3 {
		t.Fatalf("where it was seen: %+v, %v", now, err)
	}
	rapid.Check(t, func(t *rapid.T) {
		c := at
		c.Airflow = quantity.CFM(rapid.Float64Range(300, 1600).Draw(t, "flow"))
		c.Outdoor = quantity.Fahrenheit(rapid.Float64Range(55, 110).Draw(t, "outdoor"))
		c.Return = mustRH(
			t, rapid.Float64Range(68, 84).Draw(t, "return"),
			rapid.Float64Range(0.3, 0.6).Draw(t, "humidity"),
		)
		r, err := plant.Run(c)
		if err != nil {
			t.Fatal(err)
		}
		pass, err := plant.Coil.Through(c.Return, c.Airflow, r.Evaporating)
		if err != nil {
			t.Fatal(err)
		}
		if d := float64(pass.Capacity.Total.Value -
			r.Capacity); math.Abs(d) > 1e-6*float64(r.Capacity) {
			t.Fatalf("coil %v, plant %v", pass.Capacity.Total.Value, r.Capacity)
		}
		// Less air, cooler outdoors or cooler return: a colder coil.
		less := c
		less.Airflow *= 0.95
		cooler := c
		cooler.Outdoor -= 2
		for name, v := range map[string]Conditions{"less air": less, "cooler outdoors": cooler} {
			s, err := plant.Run(v)
			if err != nil {
				t.Fatal(err)
			}
			if s.Surface >= r.Surface {
				t.Fatalf("%s: surface %v after %v", name, s.Surface, r.Surface)
			}
		}
	})
}

func mustRH(t *rapid.T, db, rh float64) psychro.Air {
	a, err := psychro.FromRelativeHumidity(quantity.Fahrenheit(db), rh, quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Running the plant at each limit puts its surface at 32 °F.
func TestFreezeLimitsAreLimits(t *testing.T) {
	plant, at := seen(t)
	for _, flow := range []float64{1150, 350} {
		at.Airflow = quantity.CFM(flow)
		l, err := FindFreezeLimits(plant, at)
		if err != nil {
			t.Fatal(err)
		}
		if l.Freezes != (flow == 350) || l.Airflow == nil || l.ReturnDryBulb == nil {
			t.Fatalf("%v CFM: %+v", flow, l)
		}
		check := func(name string, c Conditions) {
			r, err := plant.Run(c)
			if err != nil || math.Abs(float64(r.Surface-Freezing)) > 1e-4 {
				t.Errorf("%v CFM, at the limit of %s: surface %v, %v", flow, name, r.Surface, err)
			}
		}
		c := at
		c.Airflow = *l.Airflow
		check("airflow", c)
		c = at
		c.Return, _ = psychro.FromRelativeHumidity(
			*l.ReturnDryBulb, at.Return.RelativeHumidity(), at.Return.Pressure(),
		)
		check("return", c)
		if l.Outdoor != nil {
			c = at
			c.Outdoor = *l.Outdoor
			check("outdoor", c)
		}
		if l.ReturnWetBulb != nil {
			c = at
			c.Return, _ = psychro.FromWetBulb(
				at.Return.DryBulb(), *l.ReturnWetBulb, at.Return.Pressure(),
			)
			check("wet bulb", c)
		}
	}
}

// Energy balance: what melts the ice is what the air gives.
func TestThaw(t *testing.T) {
	in := mustAir(t, 72, 60, quantity.StandardAtmosphere)
	th := Thaw{Ice: quantity.Kilograms(5), Return: in, Airflow: quantity.CFM(1200)}
	got, err := th.Time()
	if err != nil {
		t.Fatal(err)
	}
	melted, _ := psychro.Saturated(Freezing, in.Pressure())
	want := 5 * heatOfFusion / (0.8 * float64(in.DryAirFlow(th.Airflow)) *
		float64(in.Enthalpy()-melted.Enthalpy()))
	if math.Abs(got.Soonest.Seconds()/3-want) > 1 || got.Likely < got.Soonest ||
		got.Latest < got.Likely ||
		math.Abs(got.Water.Liters()-5) > 1e-9 {
		t.Errorf("%+v, want %v s", got, want)
	}
	practice := verify.Source{
		Cite: "an iced-over coil thaws with the blower in half an hour to two hours",
		Kind: verify.CommonPractice,
	}
	th.Ice = quantity.Pounds(15)
	if got, err = th.Time(); err != nil {
		t.Fatal(err)
	}
	verify.Value(
		t, practice, "thawing of 15 lb of ice, likely", "min", 30, got.Likely.Minutes(), 15,
	)
	verify.Value(
		t, practice, "thawing of 15 lb of ice, latest", "min", 90, got.Latest.Minutes(), 45,
	)
	for name, bad := range map[string]Thaw{
		"no blower": {5, in, 0}, "no air": {5, psychro.Air{}, 1},
		"frost":   {5, mustAir(t, 35, 33, quantity.StandardAtmosphere), 0.5},
		"ice NaN": {quantity.Mass(math.NaN()), in, 0.5},
	} {
		var re *RangeError
		if _, err := bad.Time(); !errors.As(err, &re) {
			t.Errorf("%s: %v", name, err)
		}
	}
	ice, err := IceFrom(quantity.PoundsPerHour(4), 3*time.Hour)
	if err != nil || math.Abs(ice.Pounds()-12) > 1e-9 {
		t.Errorf("%v, %v", ice, err)
	}
	if _, err := IceFrom(1, -time.Hour); err == nil {
		t.Error("negative time")
	}
}

// A plant whose kind nobody knows is looked through.
type anyPlant struct{ Plant }

// The limits of a line are those that are found by looking.
func TestLimitsOfALine(t *testing.T) {
	var limits [4]int
	rapid.Check(t, func(rt *rapid.T) {
		c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
		if err != nil {
			rt.Fatal(err)
		}
		dry := rapid.Float64Range(55, 95).Draw(rt, "return")
		at := Conditions{
			Return: mustAir(
				t, dry, dry-rapid.Float64Range(0, 0.3).Draw(rt, "depression")*(dry-10),
				quantity.Pressure(rapid.Float64Range(70e3, 105e3).Draw(rt, "atmosphere")),
			),
			Airflow: quantity.CFM(rapid.Float64Range(200, 2000).Draw(rt, "airflow")),
			Outdoor: quantity.Fahrenheit(rapid.Float64Range(50, 110).Draw(rt, "outdoor")),
		}
		plant, err := NewCapacityLine(
			c, at, quantity.Fahrenheit(rapid.Float64Range(15, 50).Draw(rt, "evaporating")),
		)
		if err != nil {
			rt.Skip()
		}
		plant.PerOutdoor = rapid.SampledFrom([]float64{0, -0.02, 0.015}).Draw(rt, "per outdoor")
		got, err := FindFreezeLimits(plant, at)
		want, errWant := FindFreezeLimits(anyPlant{plant}, at)
		if err != nil || errWant != nil {
			rt.Fatal(err, errWant)
		}
		same := func(i int, name string, got, want *float64, within float64) {
			if (got == nil) != (want == nil) {
				rt.Fatalf("limits of %s: %v and %v", name, got, want)
			}
			if got == nil {
				return
			}
			limits[i]++
			if math.Abs(*got-*want) > within {
				rt.Fatalf("limits of %s: %v and %v", name, *got, *want)
			}
		}
		same(0, "outdoor", (*float64)(got.Outdoor), (*float64)(want.Outdoor), 1e-3)
		same(1, "return", (*float64)(got.ReturnDryBulb), (*float64)(want.ReturnDryBulb), 1e-3)
		same(2, "wet bulb", (*float64)(got.ReturnWetBulb), (*float64)(want.ReturnWetBulb), 1e-3)
		same(3, "airflow", (*float64)(got.Airflow), (*float64)(want.Airflow),
			1e-4*float64(at.Airflow))
	})
	for i, n := range limits {
		if n == 0 {
			t.Errorf("limit %d was never compared", i)
		}
	}
}

func BenchmarkJudgeFrost(b *testing.B) {
	b.ReportAllocs()
	r := frostReadings(b, 36, 0.8, 1100)
	for b.Loop() {
		if _, err := JudgeFrost(r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFindFreezeLimits(b *testing.B) {
	b.ReportAllocs()
	plant, at := seen(b)
	for b.Loop() {
		if _, err := FindFreezeLimits(plant, at); err != nil {
			b.Fatal(err)
		}
	}
}
