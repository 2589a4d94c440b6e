package airside

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

func airAt(db float64, p quantity.Pressure) AirAt {
	return AirAt{DryBulb: fahrenheit(db, 0.5), Atmosphere: p.PlusMinus(quantity.Pascals(400))}
}

// standardAirAt is dry air of 70 °F at sea level, 0.075 lb/ft³, so that the
// trade's figures come back.
func standardAirAt() AirAt {
	return AirAt{
		DryBulb:    fahrenheit(70, 0),
		WetBulb:    quantity.Uncertain[quantity.Temperature]{Value: StandardAir().WetBulb()},
		Atmosphere: quantity.StandardAtmosphere.PlusMinus(0),
	}
}

var highAtmosphere = quantity.AtmosphereAt(quantity.Feet(6000))

func practice(cite string) verify.Source {
	return verify.Source{Cite: cite, Kind: verify.CommonPractice}
}

func TestHeatRise(t *testing.T) {
	// 80,000 Btu/h into the air, a rise of 60 °F: 80000/(1.08·60) = 1235 CFM.
	r := HeatRise{
		Heat:   quantity.BtuPerHour(80000).PlusMinus(quantity.BtuPerHour(2000)),
		Return: standardAirAt(),
		Supply: fahrenheit(130, 0.7),
	}
	a, err := r.Airflow()
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(
		t, practice("CFM = Btu/h ÷ (1.08 × rise), sea level"),
		"airflow from 80,000 Btu/h and a rise of 60 °F", "CFM", 80000/(1.08*60), a.Flow.Value.CFM(),
		0.005,
	)
	if math.Abs(float64(a.Flow.Value-a.Standard.Value)) > 1e-9*float64(a.Flow.Value) {
		t.Errorf("of standard air %v is %v standard", a.Flow.Value, a.Standard.Value)
	}
	r.Return = airAt(70, highAtmosphere)
	high, err := r.Airflow()
	if err != nil {
		t.Fatal(err)
	}
	// The same mass, so the same standard flow, takes more volume.
	if got := float64(high.Flow.Value / a.Flow.Value); math.Abs(
		got*float64(highAtmosphere/quantity.StandardAtmosphere)-1,
	) > 0.015 {
		t.Errorf("at 6,000 ft the flow is %.3f of sea level", got)
	}
	if high.Flow.Std <= 0 || len(high.Budget.Terms()) < 4 {
		t.Errorf("%+v", high)
	}
	r.Supply = fahrenheit(60, 0.7)
	if _, err := r.Airflow(); err == nil {
		t.Error("a supply colder than the return was heated")
	}
}

func TestGasAndElectricHeat(t *testing.T) {
	g := GasInput{
		Metered: quantity.CubicFeet(2).
			PlusMinus(quantity.CubicFeet(0.01)),
		Elapsed: 72 * time.Second,
		HeatingValue: quantity.BtuPerCubicFoot(1000).
			PlusMinus(quantity.BtuPerCubicFoot(15)),
		Efficiency: 0.80, EfficiencyStd: 0.02,
	}
	heat, err := g.Heat()
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(
		t, practice("input = 3600 × cubic feet × heating value ÷ seconds"),
		"2 ft³ in 72 s of 1,000 Btu/ft³ at 80 %", "Btu/h", 80000, heat.Value.BtuPerHour(), 1e-9,
	)
	if r := heat.Std / float64(heat.Value); r < 0.028 || r > 0.032 {
		t.Errorf("relative uncertainty %v", r)
	}
	e := ElectricInput{
		Voltage: quantity.Volts(240).PlusMinus(quantity.Volts(2)),
		Current: quantity.Amperes(41.7).PlusMinus(quantity.Amperes(0.5)),
	}
	heat, err = e.Heat()
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(
		t, practice("Btu/h = 3.412 × volts × amps"), "240 V and 41.7 A", "Btu/h", 3.412*240*41.7,
		heat.Value.BtuPerHour(), 1e-4,
	)
	e.ThreePhase = true
	three, err := e.Heat()
	if err != nil || math.Abs(float64(three.Value/heat.Value)-math.Sqrt(3)) > 1e-12 {
		t.Errorf("three phases: %v, %v", three, err)
	}
	sum := TotalHeat(
		quantity.Watts(3).PlusMinus(quantity.Watts(3)),
		quantity.Watts(4).PlusMinus(quantity.Watts(4)),
	)
	if sum.Value != 7 || math.Abs(sum.Std-5) > 1e-12 {
		t.Errorf("sum %v", sum)
	}
}

func TestTraverse(t *testing.T) {
	area := quantity.SquareFeet(2).PlusMinus(quantity.SquareFeet(0.02))
	v := Traverse{
		Velocities:    slices.Repeat([]quantity.Velocity{quantity.FeetPerMinute(600)}, 25),
		InstrumentStd: 0.02,
		Area:          area,
		Air:           airAt(60, highAtmosphere),
	}
	a, err := v.Airflow()
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(a.Flow.Value.CFM()-1200) > 1e-9 {
		t.Errorf("600 fpm over 2 ft²: %v", a.Flow.Value.CFM())
	}
	if r := a.Flow.Std / float64(a.Flow.Value); math.Abs(r-math.Hypot(0.02, 0.01)) > 1e-6 {
		t.Errorf("relative uncertainty %v", r)
	}
	p := Traverse{
		VelocityPressures: slices.Repeat([]quantity.StaticPressure{quantity.InchesWater(0.04)}, 25),
		Area:              area,
		Air:               standardAirAt(),
	}
	b, err := p.Airflow()
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(
		t, practice("velocity = 4005 × √(velocity pressure in in. w.c.), standard air"),
		"velocity at 0.04 in. w.c.", "ft/min", 4005*0.2, b.Flow.Value.CFM()/2, 0.002,
	) // 0.1 % for 0.075 rounded from 0.0749, 0.1 % for water of 70 °F
	p.Air = airAt(70, highAtmosphere)
	c, err := p.Airflow()
	if err != nil || c.Flow.Value <= b.Flow.Value || c.Standard.Value >= b.Standard.Value {
		t.Errorf(
			"thin air is faster at the same velocity pressure and carries less: %v after %v, %v",
			c.Flow.Value, b.Flow.Value, err,
		)
	}
	p.VelocityPressures[3] = -2
	if d, err := p.Airflow(); err != nil ||
		math.Abs(float64(d.Flow.Value/c.Flow.Value)-0.96) > 1e-9 ||
		!slices.ContainsFunc(
			d.Notes, func(n fact.Fact) bool { return n.Code == "note.readings-run-back" },
		) {
		t.Errorf(
			"air that runs back counts as none: %v, %v, %v", float64(d.Flow.Value/c.Flow.Value),
			d.Notes, err,
		)
	}
	for i := range p.VelocityPressures {
		p.VelocityPressures[i] = -2
	}
	if d, err := p.Airflow(); err == nil || !strings.Contains(err.Error(), "hoses") {
		t.Errorf("swapped hoses read %v, %v", d.Flow, err)
	}
	if few, err := (Traverse{Velocities: v.Velocities[:1], Area: area,
		Air: v.Air}).Airflow(); err != nil ||
		len(few.Notes) == 0 {
		t.Errorf("one reading passes for a traverse: %v", err)
	}
	for _, bad := range []Traverse{{Area: area, Air: v.Air},
		{Velocities: v.Velocities, VelocityPressures: p.VelocityPressures, Area: area,
			Air: v.Air}} {
		if _, err := bad.Airflow(); err == nil {
			t.Error("neither or both kinds of reading pass")
		}
	}
}

// The rules average the profile of turbulent flow, (y/R)^(1/7) from the wall
// (Prandtl), to its mean: 49/60 of the middle in a round duct, and 7/8 per
// direction in a rectangular one.
func TestTraversePointsAverageAProfile(t *testing.T) {
	prandtl := verify.Source{
		Cite: "integral of Prandtl's 1/7-power velocity profile",
		Kind: verify.Computed,
	}
	profile := func(x float64) float64 { return math.Pow(2*min(x, 1-x), 1.0/7) }
	for _, n := range []int{6, 8, 10} {
		pts, err := TraversePoints(Round, n)
		if err != nil {
			t.Fatal(err)
		}
		mean := 0.0
		for _, x := range pts {
			mean += profile(x) / float64(n)
		}
		verify.Value(
			t, prandtl, "log-linear rule in a round duct, points "+quantity.Number(n).String(), "1",
			49.0/60, mean, 0.012,
		)
	}
	for _, n := range []int{5, 6, 7} {
		pts, err := TraversePoints(Rectangular, n)
		if err != nil {
			t.Fatal(err)
		}
		mean := 0.0
		for i, x := range pts {
			mean += profile(x) / float64(n)
			if i > 0 && x <= pts[i-1] {
				t.Errorf("points %v are not in order", pts)
			}
		}
		verify.Value(
			t, prandtl, "log-Tchebycheff rule along a side, points "+quantity.Number(n).String(),
			"1", 7.0/8, mean, 0.012,
		)
	}
	if _, err := TraversePoints(Round, 7); err == nil {
		t.Error("a round duct has no rule of 7")
	}
	if _, err := TraversePoints(0, 6); err == nil {
		t.Error("no shape has a rule")
	}
}

func TestDropReading(t *testing.T) {
	d := DropReading{
		Part: GridPart, Rated: quantity.InchesWater(0.2),
		RatedFlow: quantity.CFM(1000).PlusMinus(quantity.CFM(40)),
		Drop: quantity.InchesWater(0.288).
			PlusMinus(quantity.InchesWater(0.003)),
		Air: standardAirAt(),
	}
	a, err := d.Airflow()
	if err != nil {
		t.Fatal(err)
	}
	// √(0.288/0.2) = 1.2.
	if math.Abs(a.Flow.Value.CFM()-1200) > 2 || a.Method != ByGrid {
		t.Errorf("%v by %v", a.Flow.Value.CFM(), a.Method)
	}
	// With the grid the supply static falls from 0.36 to 0.25: 1.2 times more
	// flow in the normal state.
	d.WithGrid, d.Normal = quantity.InchesWater(0.25).
		PlusMinus(0),
		quantity.InchesWater(0.36).
			PlusMinus(0)
	b, err := d.Airflow()
	if err != nil || math.Abs(float64(b.Flow.Value/a.Flow.Value)-1.2) > 1e-9 {
		t.Errorf("normal state: %v, %v", float64(b.Flow.Value/a.Flow.Value), err)
	}
	d.WithGrid, d.Normal, d.Air = quantity.Uncertain[quantity.StaticPressure]{},
		quantity.Uncertain[quantity.StaticPressure]{}, airAt(
			70, highAtmosphere,
		)
	c, err := d.Airflow()
	want := math.Sqrt(float64(standardDensity() / c.Density))
	if err != nil ||
		math.Abs(
			float64(c.Flow.Value)/(quantity.CFM(1000).CubicMetersPerSecond()*1.2)-want,
		) > 1e-9 {
		t.Errorf("thin air: %v, %v", c.Flow.Value.CFM(), err)
	}
	for _, part := range []Part{CoilPart, FilterPart} {
		d.Part = part
		at, err := d.Airflow()
		if err != nil || at.Method != ByDrop {
			t.Errorf("%v: %v", part, err)
		}
		var back Part
		if text, _ := part.MarshalText(); back.UnmarshalText(text) != nil || back != part {
			t.Errorf("%v does not survive text", part)
		}
	}
	d.Part = 0
	if _, err := d.Airflow(); err == nil {
		t.Error("no part has a drop")
	}
	if (new(Part)).UnmarshalText([]byte("duct")) == nil {
		t.Error("a duct is a part")
	}
}

func TestFanSpeedReading(t *testing.T) {
	a, err := FanSpeedReading{
		Known:      quantity.CFM(1000).PlusMinus(quantity.CFM(50)),
		KnownSpeed: 900,
		Speed:      1080,
		SpeedStd:   5,
		Air:        airAt(70, highAtmosphere),
	}.Airflow()
	if err != nil || math.Abs(a.Flow.Value.CFM()-1200) > 1e-9 {
		t.Errorf("%v, %v", a.Flow.Value.CFM(), err)
	}
}

// A coil's own capacity, taken as the refrigerant side, gives its airflow back;
// and so does its split.
func TestAirflowBackFromACoil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := quantity.AtmosphereAt(quantity.Feet(rapid.Float64Range(0, 8000).Draw(t, "elevation")))
		db := rapid.Float64Range(70, 84).Draw(t, "dry bulb")
		in, err := psychro.FromRelativeHumidity(
			quantity.Fahrenheit(db), rapid.Float64Range(0.3, 0.6).Draw(t, "humidity"), p,
		)
		if err != nil {
			t.Fatal(err)
		}
		flow := quantity.CFM(rapid.Float64Range(700, 1600).Draw(t, "flow"))
		c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
		if err != nil {
			t.Fatal(err)
		}
		evap := quantity.Fahrenheit(rapid.Float64Range(36, 46).Draw(t, "evaporating"))
		pass, err := c.Through(in, flow, evap)
		if err != nil {
			t.Fatal(err)
		}
		std := quantity.FahrenheitDelta(0.5)
		supply := AirReading{
			pass.Leaving.DryBulb().PlusMinus(std), pass.Leaving.WetBulb().PlusMinus(std),
		}
		back, err := RefrigerantBalance{
			Capacity: pass.Capacity.Total.Value.PlusMinus(quantity.Watts(300)),
			Return: AirReading{
				in.DryBulb().PlusMinus(std), in.WetBulb().PlusMinus(std),
			}, Supply: supply, Atmosphere: p.PlusMinus(quantity.Pascals(400)),
		}.Airflow()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(back.Flow.Value/flow)-1) > 1e-6 {
			t.Fatalf("balance: %v, was %v", back.Flow.Value, flow)
		}
		split, err := SplitBackwards{
			Coil: c, Return: AirAt{in.DryBulb().PlusMinus(std), in.WetBulb().PlusMinus(std),
				p.PlusMinus(quantity.Pascals(400))},
			Supply: supply.DryBulb, Evaporating: evap.PlusMinus(std),
		}.Airflow()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(split.Flow.Value/flow)-1) > 1e-6 || split.Flow.Std <= 0 ||
			len(split.Notes) == 0 {
			t.Fatalf("split: %+v, was %v", split, flow)
		}
	})
}

func TestCombineAirflows(t *testing.T) {
	flow := func(m AirflowMethod, cfm, std float64) Airflow {
		return Airflow{Method: m, Standard: quantity.CFM(cfm).PlusMinus(quantity.CFM(std))}
	}
	c, err := CombineAirflows(flow(ByHeat, 1000, 50), flow(ByGrid, 1060, 50))
	if err != nil || !c.Agree || math.Abs(c.Standard.Value.CFM()-1030) > 1e-9 ||
		math.Abs(quantity.VolumeFlow(c.Standard.Std).CFM()-50/math.Sqrt2) > 1e-9 {
		t.Errorf("%+v, %v", c, err)
	}
	c, err = CombineAirflows(flow(ByHeat, 1000, 30), flow(ByGrid, 1020, 30), flow(ByDrop, 1400, 40))
	if err != nil || c.Agree || c.Odd != ByDrop || quantity.VolumeFlow(c.Standard.Std).CFM() < 60 {
		t.Errorf("%+v, %v", c, err)
	}
	if c, err := CombineAirflows(flow(ByHeat, 1000, 30)); err != nil || !c.Agree ||
		math.Abs(c.Standard.Value.CFM()-1000) > 1e-9 {
		t.Errorf("%+v, %v", c, err)
	}
	for _, bad := range [][]Airflow{nil, {flow(ByHeat, 1000, 0)}} {
		if _, err := CombineAirflows(bad...); err == nil {
			t.Error("combined without weight")
		}
	}
}

func TestAirflowRefuses(t *testing.T) {
	nan := math.NaN()
	area := quantity.SquareFeet(2).PlusMinus(0)
	for name, f := range map[string]func() (Airflow, error){
		"heat not a number": HeatRise{Heat: quantity.Power(nan).PlusMinus(0),
			Return: airAt(70, 1e5), Supply: fahrenheit(120, 1)}.Airflow,
		"return not a number": HeatRise{Heat: quantity.Power(1e4).PlusMinus(0),
			Return: airAt(nan, 1e5), Supply: fahrenheit(120, 1)}.Airflow,
		"gauge pressure": HeatRise{Heat: quantity.Power(1e4).PlusMinus(0),
			Return: airAt(70, 0), Supply: fahrenheit(120, 1)}.Airflow,
		"velocity NaN": Traverse{Velocities: []quantity.Velocity{quantity.Velocity(nan)},
			Area: area, Air: airAt(70, 1e5)}.Airflow,
		"no area": Traverse{Velocities: []quantity.Velocity{1},
			Air: airAt(70, 1e5)}.Airflow,
		"no speed": FanSpeedReading{Known: quantity.CFM(1000).PlusMinus(0), Speed: 900,
			Air: airAt(70, 1e5)}.Airflow,
		"no coil": SplitBackwards{Return: airAt(70, 1e5), Supply: fahrenheit(55, 1),
			Evaporating: fahrenheit(40, 1)}.Airflow,
		"supply below coil": SplitBackwards{Coil: Coil{1200, 1800, 0.6, ""},
			Return: airAt(70, 1e5), Supply: fahrenheit(38, 1),
			Evaporating: fahrenheit(40, 1)}.Airflow,
		"not cooled": RefrigerantBalance{Capacity: quantity.Tons(3).PlusMinus(0),
			Return:     AirReading{fahrenheit(60, 1), fahrenheit(55, 1)},
			Supply:     AirReading{fahrenheit(75, 1), fahrenheit(62, 1)},
			Atmosphere: quantity.Pressure(1e5).PlusMinus(0)}.Airflow,
	} {
		_, err := f()
		var re *RangeError
		if !errors.As(err, &re) || re.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, err := range map[string]error{
		"no time": second(GasInput{Metered: quantity.CubicFeet(2).PlusMinus(0),
			HeatingValue: quantity.BtuPerCubicFoot(1000).PlusMinus(0), Efficiency: 0.8}.Heat()),
		"80 %": second(GasInput{Metered: quantity.CubicFeet(2).PlusMinus(0),
			Elapsed: time.Minute, HeatingValue: quantity.BtuPerCubicFoot(1000).PlusMinus(0),
			Efficiency: 80}.Heat()),
		"no voltage": second(ElectricInput{Current: quantity.Amperes(10).PlusMinus(0)}.Heat()),
		"power factor": second(ElectricInput{Voltage: quantity.Volts(240).PlusMinus(0),
			Current: quantity.Amperes(10).PlusMinus(0), PowerFactor: 2}.Heat()),
		"negative time": second(GasInput{Metered: quantity.CubicFeet(2).PlusMinus(0),
			Elapsed: time.Minute, ElapsedStd: -1,
			HeatingValue: quantity.BtuPerCubicFoot(1000).PlusMinus(0), Efficiency: 0.8}.Heat()),
	} {
		var re *RangeError
		if !errors.As(err, &re) || re.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func TestPerTonAndCautions(t *testing.T) {
	a := Airflow{Flow: quantity.CFM(1200).PlusMinus(0)}
	if got := a.PerTon(quantity.Tons(3)); math.Abs(got-400) > 1e-9 {
		t.Errorf("%v CFM per ton", got)
	}
	if a.PerTon(0) != 0 {
		t.Error("no capacity has a flow per ton")
	}
	for _, m := range []AirflowMethod{ByHeat, ByVelocity, ByPitot, ByGrid, ByDrop, ByFanSpeed,
		ByFanCurve, ByRefrigerant, BySplit} {
		if len(m.Cautions()) == 0 {
			t.Errorf("%s has no cautions", m)
		}
	}
}
