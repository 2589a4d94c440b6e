package coldroom_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func moist(celsius, humidity float64) psychro.Air {
	air, err := psychro.FromRelativeHumidity(
		quantity.Celsius(celsius), humidity, quantity.StandardAtmosphere,
	)
	if err != nil {
		panic(err)
	}
	return air
}

// A store of 7 m by 6 m by 5 m.
func TestPublishedPanels(t *testing.T) {
	source := verify.Source{
		Cite: "Cold Room Heat Load Calculation (scribd.com 561708009): walls and roof of 172 m² " +
			"at 27 °C, a floor of 42 m² at 8 °C, 0.28 W/(m² K), 1 °C inside, in kWh of a day",
		Kind: verify.Published,
	}
	panel := func(area, outside float64) coldroom.Panel {
		return coldroom.Panel{
			Conductance: quantity.WattsPerKelvin(0.28 * area), Outside: quantity.Celsius(outside),
		}
	}
	for _, c := range []struct {
		name   string
		panels []coldroom.Panel
		kWh    float64
	}{
		{"walls and roof", []coldroom.Panel{panel(172, 27)}, 30.05184},
		{"floor", []coldroom.Panel{panel(42, 8)}, 1.97568},
		{"all panels", []coldroom.Panel{panel(172, 27), panel(42, 8)}, 32.03},
	} {
		box := coldroom.Box{Inside: moist(1, 0.95), Panels: c.panels}
		load, err := box.Load()
		if err != nil {
			t.Fatal(err)
		}
		verify.Value(
			t, source, "load of "+c.name, "kWh", c.kWh, float64(load.Total)*24/1000, 0.006,
		)
	}
}

// The flow through a door by hand, in the units of its source: ft/min by 13.26 of the opening.
func TestPublishedDoor(t *testing.T) {
	source := verify.Source{
		Cite: "Jekel, Door infiltration estimator, IRC Research and Technology Forum (2017): " +
			"13.26 A (1-ρo/ρi)^0.5 (g H)^0.5 Fm, worked by hand in ft and min",
		Kind: verify.Published,
	}
	inside, outside := moist(-20, 0.9), moist(25, 0.5)
	door := coldroom.Door{
		Width: quantity.Feet(4), Height: quantity.Feet(7), Outside: outside, Open: time.Hour,
	}
	box := coldroom.Box{Inside: inside, Doors: []coldroom.Door{door}}
	load, err := box.Load()
	if err != nil {
		t.Fatal(err)
	}
	in, out := float64(inside.Density()), float64(outside.Density())
	factor := math.Pow(2/(1+math.Cbrt(in/out)), 1.5)
	cubicFeet := 13.26 * 28 * math.Sqrt(1-out/in) * math.Sqrt(32.174*7) * factor
	dry := float64(inside.DryAirFlow(quantity.CFM(cubicFeet)))
	want := dry * float64(outside.Enthalpy()-inside.Enthalpy()) / 24
	verify.Value(
		t, source, "load of a freezer's door, open an hour", "W", want, float64(load.Doors), 0.001*want,
	)
	door.Guard = 0.9
	box.Doors[0] = door
	if less, _ := box.Load(); math.Abs(float64(less.Doors/load.Doors)-0.1) > 1e-9 {
		t.Errorf("behind strips %v of %v", less.Doors, load.Doors)
	}
}

// Whatever comes in adds to the load, the colder the box the more, and what a machine gives while
// it may run is the load of the day.
func TestLoadGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inside := rapid.Float64Range(-28, 14).Draw(t, "inside")
		hours := func(name string) time.Duration {
			return time.Duration(rapid.Float64Range(0, 24).Draw(t, name) * float64(time.Hour))
		}
		box := coldroom.Box{
			Inside: moist(inside, 0.85),
			Panels: []coldroom.Panel{{Conductance: 30, Outside: quantity.Celsius(30)}},
			Doors: []coldroom.Door{{
				Width: 1, Height: 2, Outside: moist(28, 0.5), Open: hours("open"),
			}},
			Goods: []coldroom.Goods{{
				Mass:         quantity.Kilograms(rapid.Float64Range(0, 2000).Draw(t, "mass")),
				Enters:       quantity.Celsius(20),
				SpecificHeat: quantity.SpecificHeat(3500),
			}},
			People:     hours("people"),
			Appliances: []coldroom.Appliance{{Power: 200, On: hours("on")}},
		}
		load, err := box.Load()
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range []quantity.Power{
			load.Panels, load.Doors, load.Goods, load.People, load.Appliances,
		} {
			if !(q >= 0) {
				t.Fatalf("a load below nought: %+v", load)
			}
		}
		for _, a := range []coldroom.Application{coldroom.WalkInCooler, coldroom.WalkInFreezer} {
			u := coldroom.Room{Application: a}.Usual(nil)
			run, _ := u.MostRun()
			needs, err := u.Needs(load.Total)
			if given := float64(needs) * run.Hours() / 24; err != nil ||
				math.Abs(given-float64(load.Total)) > 1e-6 {
				t.Fatalf("%v in %v carry %v, not %v: %v", needs, run, given, load.Total, err)
			}
		}
		box.Inside = moist(inside-1, 0.85)
		if colder, err := box.Load(); err != nil || colder.Total <= load.Total {
			t.Fatalf("1 K colder: %v, after %v; %v", colder.Total, load.Total, err)
		}
	})
}

// What cannot be is refused, by name.
func TestLoadRefuses(t *testing.T) {
	sound := moist(2, 0.85)
	for _, b := range []coldroom.Box{
		{}, {Inside: moist(40, 0.3)},
		{Inside: sound, Panels: []coldroom.Panel{{Conductance: -1, Outside: 300}}},
		{Inside: sound, Panels: []coldroom.Panel{{Conductance: 1}}},
		{Inside: sound, Doors: []coldroom.Door{{Width: 1, Height: 2}}},
		{Inside: sound, Doors: []coldroom.Door{{Width: 1, Height: 99, Outside: sound}}},
		{Inside: sound, Doors: []coldroom.Door{{Width: 1, Height: 2, Outside: sound, Guard: 1}}},
		{Inside: sound, Doors: []coldroom.Door{{
			Width: 1, Height: 2, Outside: sound, Open: 25 * time.Hour,
		}}},
		{Inside: sound, Goods: []coldroom.Goods{{Mass: -1, Enters: 290}}},
		{Inside: sound, Goods: []coldroom.Goods{{Mass: 1, Enters: 0}}},
		{Inside: sound, Goods: []coldroom.Goods{{Mass: 1, Enters: 290, SpecificHeat: 9000}}},
		{Inside: sound, Goods: []coldroom.Goods{{Mass: 1, Enters: 290, Freezing: 1e6}}},
		{Inside: sound, Respiration: -1}, {Inside: sound, People: -time.Hour},
		{Inside: sound, Appliances: []coldroom.Appliance{{Power: -1}}},
		{Inside: sound, Appliances: []coldroom.Appliance{{Power: 1, On: 25 * time.Hour}}},
	} {
		var out *quantity.RangeError
		if _, err := b.Load(); !errors.As(err, &out) {
			t.Errorf("%+v: %v", b, err)
		}
	}
	if q, err := (coldroom.Usual{}).Needs(-1); err == nil {
		t.Errorf("a load below nought needs %v", q)
	}
	for _, c := range []struct {
		of        coldroom.Insulation
		area      quantity.Area
		thickness quantity.Length
	}{
		{coldroom.Polyurethane, -1, 0.1}, {coldroom.Polyurethane, 1, 0},
		{coldroom.ExpandedPolystyrene, 1, quantity.Length(math.NaN())}, {0, 1, 0.1}, {4, 1, 0.1},
	} {
		if _, err := c.of.Conductance(c.area, c.thickness); err == nil {
			t.Errorf("%+v is no panel", c)
		}
	}
}
