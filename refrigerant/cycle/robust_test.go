package cycle

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// randomCase covers all that a machine may be asked: outdoor air of 40 to 125 °F, return
// wet bulb of 55 to 80 °F, 40 to 130 % airflow, 60 to 140 % charge, and every fault alone
// and together, far beyond what a technician meets at once.
func randomCase(r *rand.Rand) (Conditions, Faults) {
	u := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	maybe := func(p, a, b float64) float64 {
		if r.Float64() < p {
			return u(a, b)
		}
		return 0
	}
	wb := u(55, 80)
	c := weather(u(40, 125), min(wb+u(0, 25), 110), wb)
	c.Elevation = quantity.Feet(u(0, 7000))
	return c, Faults{
		Charge:             maybe(0.6, -0.4, 0.4),
		IndoorAirflow:      u(-0.6, 0.3),
		OutdoorAirflow:     maybe(0.4, -0.7, 0.2),
		EvaporatorFouling:  maybe(0.3, 0, 0.6),
		CondenserFouling:   maybe(0.3, 0, 0.6),
		Recirculation:      quantity.KelvinDelta(maybe(0.1, 0, 10)),
		LiquidRestriction:  quantity.Bar(maybe(0.3, 0, 20)),
		SuctionRestriction: quantity.Bar(maybe(0.1, 0, 2)),
		CompressorLeak:     maybe(0.3, 0, 0.5),
		NonCondensables:    maybe(0.2, 0, 1),
		MeteringSize:       maybe(0.3, -0.5, 0.6),
		BulbOff:            maybe(0.1, 0, 1),
		ValveSetting:       quantity.KelvinDelta(maybe(0.1, -5, 10)),
		ValveStuck:         r.Float64() < 0.1,
		ValveOpening:       r.Float64(),
	}
}

func randomMachines(t testing.TB) []*System {
	var all []*System
	for _, d := range append([]string{"R-455A"}, fluids...) {
		for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
			for _, heatPump := range []bool{false, true} {
				all = append(
					all,
					mustDesign(
						t,
						Spec{
							Refrigerant: lookup(t, d),
							Capacity:    quantity.Tons(3),
							Metering:    m,
							HeatPump:    heatPump,
						},
					),
				)
			}
		}
	}
	all = append(
		all,
		mustDesign(
			t,
			Spec{
				Refrigerant:  lookup(t, "R-22"),
				Capacity:     quantity.Tons(2),
				Metering:     refrigerant.FixedRestrictor,
				HeadPressure: quantity.Fahrenheit(90),
			},
		),
		mustDesign(
			t,
			Spec{
				Refrigerant:  lookup(t, "R-32"),
				Capacity:     quantity.Tons(5),
				Metering:     refrigerant.TXV,
				HeadPressure: quantity.Fahrenheit(85),
				MaxOperating: quantity.Fahrenheit(58),
				Packaged:     true,
			},
		),
	)
	return all
}

// Every one of 10,000 random cases has a state, and in it mass and energy balance to 1e-6.
// With -short it is 1,000.
func TestAlwaysSolves(t *testing.T) {
	n := 10000
	if testing.Short() {
		n = 1000
	}
	machines := randomMachines(t)
	r := rand.New(rand.NewPCG(1, 2))
	limits := map[Limit]int{}
	var most worst
	for i := range n {
		s := machines[i%len(machines)]
		c, f := randomCase(r)
		o, err := s.Solve(c, f)
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		limits[o.Limit]++
		w := imbalance(t, s, c, f, &o)
		if w.by > 1e-6 {
			t.Errorf(
				"case %d, %v with %v: %s off by %.2g\n%+v\n%+v", i, s.r, s.spec.Metering, w.of,
				w.by, c, f,
			)
		}
		if w.by > most.by {
			most = w
		}
	}
	t.Logf("furthest off: %s, by %.2g", most.of, most.by)
	t.Logf("%d cases: %d run on, %d stop on high pressure, %d on low, %d do not cool",
		n, limits[NoLimit], limits[HighPressure], limits[LowPressure], limits[NotCooling])
}

// Nor do conditions and faults at the very ends of what is taken, all together, give what
// is no number or a compressor that yields work.
func TestAtTheEndsOfTheRanges(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	pick := func(xs ...float64) float64 { return xs[r.IntN(len(xs))] }
	kelvin := func(xs ...float64) quantity.TemperatureDelta {
		return quantity.KelvinDelta(pick(xs...))
	}
	for _, d := range []string{"R-22", "R-113", "R-114", "R-447B", "R-455A", "R-463A", "R-511A"} {
		for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
			s, err := DesignResidential(lookup(t, d), quantity.Tons(3), m)
			if err != nil {
				t.Logf("%s with %v: %v", d, m, err)
				continue
			}
			for range 15 {
				c := weather(pick(35, 130), pick(50, 115), pick(64, 90))
				c.ReturnWetBulb = min(c.ReturnWetBulb, c.ReturnDryBulb)
				c.Elevation = quantity.Feet(pick(-1500, 16000))
				f := Faults{
					Charge:        pick(-0.6, 0, 1),
					IndoorAirflow: pick(-0.95, 0, 1), OutdoorAirflow: pick(-0.95, 0, 1),
					EvaporatorFouling: pick(0, 0.95),
					CondenserFouling:  pick(0, 0.95), Recirculation: kelvin(0, 30),
					LiquidRestriction:  quantity.Bar(pick(0, 60)),
					SuctionRestriction: quantity.Bar(pick(0, 60)),
					CompressorLeak:     pick(0, 0.8),
					NonCondensables:    pick(0, 1.5), MeteringSize: pick(-0.95, 0, 2),
					BulbOff:      pick(0, 1),
					ValveSetting: kelvin(-10, 0, 20), ValveStuck: pick(0, 0, 1) == 1,
					ValveOpening: pick(0, 1),
				}
				o, err := s.Solve(c, f)
				if err != nil {
					t.Fatalf("%s with %v: %v\n%+v\n%+v", d, m, err, c, f)
				}
				if field := notFinite(reflect.ValueOf(o)); field != "" {
					t.Errorf("%s with %v: %s is not finite\n%+v\n%+v", d, m, field, c, f)
				}
				if math.Signbit(float64(o.CompressorPower)) || o.CondenserLeaving > 2000 {
					t.Errorf(
						"%s with %v: power %v, air leaves the condenser at %v\n%+v\n%+v", d, m,
						o.CompressorPower, o.CondenserLeaving, c, f,
					)
				}
			}
		}
	}
}

// notFinite returns the path of a number in v that is infinite or none at all.
func notFinite(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return v.String()
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if at := notFinite(v.Field(i)); at != "" {
				return v.Type().Field(i).Name + " " + at
			}
		}
	}
	return ""
}

type worst struct {
	of string
	by float64
}

// imbalance returns the balance that is furthest off, relative.
func imbalance(t testing.TB, s *System, c Conditions, f Faults, o *Operating) worst {
	t.Helper()
	var w worst
	check := func(of string, a, b, scale float64) {
		if by := math.Abs(a-b) / scale; !(by <= w.by) {
			w = worst{of, by}
		}
	}
	m := float64(o.Flow)
	rejected := float64(o.HeatRejected)
	scale := math.Abs(rejected) + float64(o.CompressorPower) + 1
	check(
		"energy of the circuit", float64(o.Capacity+o.LineGain+o.CompressorPower-o.ShellLoss),
		rejected, scale,
	)
	check(
		"energy of the compressor", m*float64(o.Discharge.Enthalpy-o.Suction.Enthalpy),
		float64(o.CompressorPower-o.ShellLoss), scale,
	)
	check(
		"energy of the condenser", m*float64(o.Discharge.Enthalpy-o.Liquid.Enthalpy), rejected,
		scale,
	)
	check(
		"energy of the evaporator", m*float64(o.EvaporatorOut.Enthalpy-o.EvaporatorIn.Enthalpy),
		float64(o.Capacity), scale,
	)
	check(
		"energy of the suction line", m*float64(o.Suction.Enthalpy-o.EvaporatorOut.Enthalpy),
		float64(o.LineGain), scale,
	)

	// The air over the evaporator, by package psychro.
	in, err := c.air()
	if err != nil {
		t.Fatal(err)
	}
	flow := float64(in.DryAirFlow(s.spec.Airflow)) * (1 + f.IndoorAirflow)
	out, err := psychro.FromHumidityRatio(o.CoilLeaving, o.SupplyHumidityRatio, in.Pressure())
	if err != nil {
		// More vapor than such air holds: it leaves as fog, which psychro does not take.
		out = psychro.Air{}
	}
	if out.IsValid() {
		water := float64(o.Condensate) * 4186 * max(0, o.CondensateTemperature.Celsius())
		check(
			"energy of the indoor air", flow*float64(in.Enthalpy()-out.Enthalpy())-water,
			float64(o.Capacity), scale,
		)
	}
	check(
		"water of the indoor air", flow*(in.HumidityRatio()-o.SupplyHumidityRatio),
		float64(o.Condensate), flow*0.01,
	)

	// What is solved for: flows and charge.
	tr := trial{plant: &s.plant}
	if err := s.ask(&tr.question, c, f); err != nil {
		t.Fatal(err)
	}
	if o.Limit == NoLimit && !(o.NetCapacity > 0) || o.Limit == NotCooling && o.NetCapacity > 0 {
		return worst{"the limit of a machine that does not cool", math.Inf(1)}
	}
	if o.Limit == NoLimit || o.Limit == NotCooling {
		check("charge", float64(o.Charge), tr.charge, tr.charge)
	}
	if o.FanShare == 1 {
		r := tr.evaluate(unknowns{
			uSuction: math.Log(float64(o.Suction.Pressure)),
			uHead:    math.Log(float64(o.Discharge.Pressure)),
			uFlow:    math.Log(m), uEnthalpy: float64(o.Suction.Enthalpy) / 1e5,
		})
		check("flow through the device", r[rDevice], 0, 1)
		check("enthalpy around the circuit", r[rHeat], 0, 1)
		if o.Limit != LowPressure {
			check("flow through the compressor", r[rPump], 0, 1)
		}
	}
	for _, v := range []float64{o.COP, float64(o.Supply), float64(o.CoilSurface), float64(o.Charge),
		float64(o.Subcooling), float64(o.Superheat), float64(o.CondenserLeaving), m} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return worst{"a number", math.Inf(1)}
		}
	}
	return w
}
