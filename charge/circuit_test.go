package charge

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// ASTM B280 as engineering tables reprint it (above 1 3/8 in from memory): outside
// diameter and wall in inches.
func TestTubes(t *testing.T) {
	for _, c := range []struct {
		outside, wall float64
		temper        Temper
	}{
		{0.25, 0.030, Annealed}, {0.3125, 0.032, Annealed}, {0.375, 0.032, Annealed},
		{0.5, 0.032, Annealed}, {0.625, 0.035, Annealed}, {0.875, 0.045, Annealed},
		{1.125, 0.050, Annealed}, {0.375, 0.030, Drawn}, {0.5, 0.035, Drawn}, {0.625, 0.040, Drawn},
		{0.75, 0.042, Drawn}, {2.125, 0.070, Drawn}, {4.125, 0.110, Drawn},
	} {
		tube, err := TubeOf(quantity.Inches(c.outside), c.temper)
		if err != nil || math.Abs(tube.Wall.Inches()-c.wall) > 1e-9 ||
			math.Abs(tube.Bore().Inches()-(c.outside-2*c.wall)) > 1e-9 {
			t.Errorf("%v in: %+v, %v", c.outside, tube, err)
		}
	}
	if tube, err := TubeOf(quantity.Millimeters(9.53), Annealed); err != nil ||
		math.Abs(tube.Outside.Inches()-0.375) > 1e-9 {
		t.Errorf("9.53 mm: %+v, %v", tube, err)
	}
	var r *RangeError
	if _, err := TubeOf(quantity.Inches(0.44), Annealed); !errors.As(err, &r) ||
		!strings.Contains(err.Error(), "0.375") {
		t.Errorf("7/16 in: %v", err)
	}
	if _, err := TubeOf(quantity.Inches(0.375), 0); !errors.As(err, &r) {
		t.Errorf("no temper: %v", err)
	}
	for _, temper := range []Temper{Annealed, Drawn} {
		for i, tube := range Tubes(temper) {
			if tube.Bore() <= 0 || i > 0 && tube.Outside <= Tubes(temper)[i-1].Outside {
				t.Errorf("%v: %+v", temper, tube)
			}
		}
	}
}

// Adders of R-22 in liquid lines, ounces per foot: common practice, no source.
func TestLineChargeOfCommonPractice(t *testing.T) {
	r22 := fluid(t, "R-22")
	for _, c := range []struct{ outside, want float64 }{{0.25, 0.23}, {0.3125, 0.40}, {0.375, 0.62},
		{0.5, 1.2}} {
		tube, err := TubeOf(quantity.Inches(c.outside), Annealed)
		if err != nil {
			t.Fatal(err)
		}
		m, err := LineCharge(r22, tube, quantity.Feet(1), f(95))
		if err != nil {
			t.Fatal(err)
		}
		adders := verify.Source{Cite: "adders per foot of liquid line", Kind: verify.CommonPractice}
		verify.Relative(
			t, adders, fmt.Sprintf("R-22 in a liquid line of %v in", c.outside), "oz/ft", c.want,
			m.Ounces(), 0.12,
		)
	}
}

func weighed(t testing.TB) WeighedCharge {
	tube, err := TubeOf(quantity.Inches(0.375), Annealed)
	if err != nil {
		t.Fatal(err)
	}
	return WeighedCharge{
		Fluid: fluid(t, "R-22"), Label: quantity.Pounds(7), FactoryLength: quantity.Feet(15),
		Length: quantity.Feet(40).PlusMinus(quantity.Feet(1)), Tube: tube,
	}
}

func TestWeigh(t *testing.T) {
	w := weighed(t)
	out, err := w.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	perFoot, _ := LineCharge(w.Fluid, w.Tube, quantity.Feet(1), f(95))
	if want := 25 * perFoot; math.Abs(float64(out.Line-want)) > 1e-9 ||
		out.Total.Value != out.Label+out.Line ||
		out.Source.Standing == fact.Label ||
		out.Total.Std <= 0 {
		t.Errorf("%+v, want %v", out, want)
	}
	// The label's own adder outranks the computed one.
	w.Adder = &Adder{oz(0.6), quantity.Feet(1)}
	w.Accessories = []Accessory{{"filter drier", oz(4)}}
	if out, err = w.Weigh(); err != nil || math.Abs((out.Line-oz(15)).Ounces()) > 1e-9 ||
		out.Accessories != oz(4) ||
		out.Source.Standing != fact.Label ||
		math.Abs((out.Total.Value-quantity.Pounds(7)-oz(19)).Ounces()) > 1e-9 {
		t.Errorf("%+v, %v", out, err)
	}
	// A line shorter than the factory's allowance takes less than the label.
	w.Adder, w.Accessories, w.Length.Value = nil, nil, quantity.Feet(5)
	if out, err = w.Weigh(); err != nil || out.Line >= 0 {
		t.Errorf("%+v, %v", out, err)
	}
	// The same length in a smaller tube than the factory's.
	w.Length.Value, w.FactoryTube = quantity.Feet(15), w.Tube
	w.Tube, _ = TubeOf(quantity.Inches(0.25), Annealed)
	if out, err = w.Weigh(); err != nil || out.Line >= 0 {
		t.Errorf("%+v, %v", out, err)
	}
	// A machine in one housing has no line to add for.
	w.Tube, w.FactoryTube, w.FactoryLength, w.Length = Tube{}, Tube{}, 0,
		quantity.Uncertain[quantity.Length]{}
	if out, err = w.Weigh(); err != nil || out.Line != 0 || out.Total.Value != out.Label ||
		out.Source.Standing != fact.Label {
		t.Errorf("%+v, %v", out, err)
	}
	if b, err := json.Marshal(out); err != nil || !strings.Contains(string(b), `"perFoot"`) {
		t.Errorf("%s, %v", b, err)
	}
}

// Adders as manufacturers print them: the computed ones lie within their doubt, and where
// the device stands outdoors the line holds about half as much.
func TestAddersAgainstPrint(t *testing.T) {
	ducted := verify.Source{
		Cite: "installation instructions of an R-410A ducted split system, ounces per foot of " +
			"liquid line (one decimal)",
		Kind: verify.Published,
	}
	both := verify.Source{
		Cite: "installation manual of ductless systems, grams per meter by liquid line and " +
			"place of the orifice",
		Kind: verify.Published,
	}
	perFoot := func(designation string, inches float64, place DevicePlace) float64 {
		tube, err := TubeOf(quantity.Inches(inches), Annealed)
		if err != nil {
			t.Fatal(err)
		}
		w := WeighedCharge{
			Fluid:  fluid(t, designation),
			Label:  quantity.Pounds(6),
			Tube:   tube,
			Length: quantity.Feet(40).PlusMinus(0),
			Device: place,
		}
		out, err := w.Weigh()
		if err != nil {
			t.Fatal(err)
		}
		return out.PerFoot.Ounces()
	}
	for _, c := range []struct{ inches, ounces float64 }{{5. / 16, 0.4}, {3. / 8, 0.6},
		{1. / 2, 1.2}} {
		verify.Value(
			t, ducted, fmt.Sprintf("adder of R-410A, %v in, device indoors", c.inches), "oz/ft",
			c.ounces, perFoot("R-410A", c.inches, DeviceIndoors), 0.05+adderDoubt.value*c.ounces,
		)
	}
	const gramsPerMeter = 28.349523125 / 0.3048
	for _, c := range []struct {
		designation string
		inches      float64
		indoors     float64
		outdoors    float64
	}{
		{"R-22", 1. / 4, 30, 15}, {"R-22", 3. / 8, 65, 30}, {"R-22", 1. / 2, 115, 60},
		{"R-410A", 1. / 4, 30, 15}, {"R-410A", 3. / 8, 65, 30}, {"R-410A", 1. / 2, 115, 65},
		{"R-32", 1. / 4, 0, 12}, {"R-32", 3. / 8, 0, 24}, {"R-32", 1. / 2, 0, 40},
	} {
		name := fmt.Sprintf("adder of %s, %v in, device ", c.designation, c.inches)
		if c.indoors > 0 { // within two of its standard uncertainties, and 5 g/m of rounding
			verify.Value(
				t, both, name+"indoors", "g/m", c.indoors,
				gramsPerMeter*perFoot(c.designation, c.inches, DeviceIndoors),
				5+2*adderDoubt.value*c.indoors,
			)
		}
		verify.Value(
			t, both, name+"outdoors", "g/m", c.outdoors,
			gramsPerMeter*perFoot(c.designation, c.inches, DeviceOutdoors), 0.4*c.outdoors,
		)
	}
}

// What is not known of the place is doubted, and asked for.
func TestAdderAsksForThePlaceOfTheDevice(t *testing.T) {
	w := weighed(t)
	unknown, err := w.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	w.Device = DeviceIndoors
	indoors, err := w.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	w.Device = DeviceOutdoors
	outdoors, err := w.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	if unknown.Total.Value != indoors.Total.Value || unknown.Total.Std <= indoors.Total.Std ||
		outdoors.Line >= indoors.Line {
		t.Errorf(
			"unknown %v, indoors %v, outdoors %v", unknown.Total, indoors.Total, outdoors.Total,
		)
	}
	if !unknown.AskDevice || indoors.AskDevice || outdoors.AskDevice {
		t.Error("nobody asks where the device stands")
	}
	w.Device, w.Adder = 0, &Adder{quantity.Ounces(0.6), quantity.Feet(1)}
	if label, err := w.Weigh(); err != nil || label.Source != unitLabel || label.AskDevice ||
		label.Total.Std >= indoors.Total.Std {
		t.Errorf("the label's adder: %+v, %v", label, err)
	}
}

// Where the device stands outdoors the label holds for any line up to the length that it states
// (makers' instructions; common practice, no source): nothing is taken off for a shorter one, by
// the label's adder or by a computed one. Where the place is not known, the doubt reaches so far.
func TestShortLine(t *testing.T) {
	w := weighed(t)
	w.FactoryLength, w.Length = quantity.Feet(25), quantity.Feet(10).PlusMinus(0)
	computed := w
	for _, w.Adder = range []*Adder{nil, {quantity.Ounces(0.2), quantity.Feet(1)}} {
		for _, w.Device = range []DevicePlace{0, DeviceIndoors, DeviceOutdoors} {
			out, err := w.Weigh()
			if err != nil {
				t.Fatal(err)
			}
			if w.Device == DeviceOutdoors != (out.Line == 0) || out.Line > 0 {
				t.Errorf("adder %v, device %v: line %v", w.Adder, w.Device, out.Line)
			}
			if w.Device == 0 != out.AskDevice {
				t.Errorf("adder %v, device %v: asks %v", w.Adder, w.Device, out.AskDevice)
			}
		}
	}
	out, err := computed.Weigh()
	if err != nil || out.Total.Std*math.Sqrt(3) < -0.99*float64(out.Line) {
		t.Errorf("device unknown: %v for %v of line, %v", out.Total, out.Line, err)
	}
}

// Monte Carlo over length, bore, temperature and what is known of adders (JCGM 101:2008).
func TestWeighUncertaintyByMonteCarlo(t *testing.T) {
	w := weighed(t)
	for _, w.Device = range []DevicePlace{DeviceIndoors, DeviceOutdoors} {
		weighByMonteCarlo(t, w)
	}
}

func weighByMonteCarlo(t *testing.T, w WeighedCharge) {
	t.Helper()
	out, err := w.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(6, 6))
	sum, sq := 0.0, 0.0
	const n = 4000
	for range n {
		// The factory line is of the same tube at the same temperature.
		tube := w.Tube
		tube.Wall -= quantity.Length(float64(boreDoubt.value) * rng.NormFloat64() / 2)
		length := w.Length.Value + quantity.Length(w.Length.Std*rng.NormFloat64())
		at := f(
			95,
		).Add(quantity.TemperatureDelta(float64(liquidLineDoubt.value) * rng.NormFloat64()))
		m, err := LineCharge(w.Fluid, tube, length, at)
		if err != nil {
			t.Fatal(err)
		}
		factory, err := LineCharge(w.Fluid, tube, w.FactoryLength, at)
		if err != nil {
			t.Fatal(err)
		}
		share, doubt := w.lineShare()
		printed := (share + doubt*rng.NormFloat64()) * (1 + adderDoubt.value*rng.NormFloat64())
		total := printed*float64(m-factory) + float64(smallestDose.value)*(2*rng.Float64()-1)
		sum, sq = sum+total, sq+total*total
	}
	std := math.Sqrt(sq/n - sum/n*sum/n)
	if math.Abs(out.Total.Std/std-1) > 0.06 {
		t.Errorf(
			"standard uncertainty %v, by Monte Carlo %v", quantity.Mass(out.Total.Std).Ounces(),
			quantity.Mass(std).Ounces(),
		)
	}
}

func TestWeighRefusesNonsense(t *testing.T) {
	var r *RangeError
	for name, change := range map[string]func(*WeighedCharge){
		"no label":       func(w *WeighedCharge) { w.Label = 0 },
		"no tube":        func(w *WeighedCharge) { w.Tube = Tube{} },
		"length":         func(w *WeighedCharge) { w.Length.Value = -1 },
		"length doubt":   func(w *WeighedCharge) { w.Length.Std = math.NaN() },
		"factory length": func(w *WeighedCharge) { w.FactoryLength = quantity.Length(math.Inf(1)) },
		"liquid":         func(w *WeighedCharge) { w.LiquidTemperature = f(400) },
		"adder":          func(w *WeighedCharge) { w.Adder = &Adder{} },
		"nothing left": func(w *WeighedCharge) {
			w.Length, w.FactoryLength = quantity.Feet(1).PlusMinus(0), quantity.Feet(400)
		},
		"accessory": func(w *WeighedCharge) { w.Accessories = []Accessory{{"drier", -1}} },
	} {
		w := weighed(t)
		change(&w)
		if out, err := w.Weigh(); !errors.As(err, &r) || out.Total.Value != 0 {
			t.Errorf("%s: %+v, %v", name, out.Total, err)
		}
	}
}

// 40 CFR 82.152 and 82.156, Table 1.
func TestRecoverTo(t *testing.T) {
	for _, c := range []struct {
		designation string
		pounds      float64
		class       RecoveryClass
		inches      float64
	}{
		{"R-22", 7, HighPressure, 0}, {"R-22", 300, HighPressure, 10},
		{"R-134a", 3, MediumPressure, 10}, {"R-134a", 250, MediumPressure, 15},
		{"R-123", 500, LowPressure, 28.937}, {"R-23", 10, VeryHighPressure, 0},
		{"R-744", 10, VeryHighPressure, 0},
	} {
		out, err := RecoverTo(fluid(t, c.designation), quantity.Pounds(c.pounds))
		if err != nil || out.Class != c.class {
			t.Errorf(
				"%s, %v lb: %v (%v), want %v", c.designation, c.pounds, out.Class, err, c.class,
			)
		}
		rule := verify.Source{Cite: recoveryRule.Title, Kind: verify.Published}
		verify.Value(
			t, rule, fmt.Sprintf("recovery level of %s, %v lb", c.designation, c.pounds),
			"in. Hg of vacuum", c.inches, out.InchesOfVacuum, 0.01,
		)
		if math.Abs(
			float64(quantity.StandardAtmosphere-out.To)-float64(quantity.InchesHg(c.inches)),
		) > 50 {
			t.Errorf("%s: %+v", c.designation, out)
		}
	}
	var r *RangeError
	if _, err := RecoverTo(fluid(t, "R-22"), 0); !errors.As(err, &r) {
		t.Errorf("no charge: %v", err)
	}
}

func TestTankRoom(t *testing.T) {
	tank := refrigerant.Cylinder{
		WaterCapacity: quantity.Pounds(47.7),
		Tare:          quantity.Pounds(28),
	} // invented stamps
	r22, r134a := fluid(t, "R-22"), fluid(t, "R-134a")
	empty, err := TankRoom(tank, nil, r22, tank.Tare)
	if err != nil || empty < quantity.Pounds(35) || empty > quantity.Pounds(50) {
		t.Errorf("%v lb, %v", empty.Pounds(), err)
	}
	half, err := TankRoom(tank, r22, r22, tank.Tare+quantity.Pounds(20))
	if err != nil || math.Abs((empty-half).Pounds()-20) > 1e-9 {
		t.Errorf("%v lb, %v", half.Pounds(), err)
	}
	if full, err := TankRoom(tank, r22, r22, tank.Tare+quantity.Pounds(60)); err != nil ||
		full != 0 {
		t.Errorf("overfilled: %v, %v", full, err)
	}
	var mixed *MixedError
	if _, err := TankRoom(tank, r134a, r22, tank.Tare); !errors.As(err, &mixed) {
		t.Errorf("mixing: %v", err)
	}
}

// vacuum makes a decay test in microns.
func vacuum(
	rng *rand.Rand, minutes float64, at func(minute float64) float64,
) []Sample[quantity.Pressure] {
	var out []Sample[quantity.Pressure]
	for m := 0.0; m <= minutes; m += 0.5 {
		out = append(
			out,
			Sample[quantity.Pressure]{
				time.Duration(m * float64(time.Minute)),
				quantity.Microns(max(at(m)+5*rng.NormFloat64(), 1)),
			},
		)
	}
	return out
}

func TestDecayTest(t *testing.T) {
	leveling := func(from, to, tau float64) func(float64) float64 {
		return func(m float64) float64 { return to + (from-to)*math.Exp(-m/tau) }
	}
	for name, c := range map[string]struct {
		minutes float64
		at      func(float64) float64
		want    DecayOutcome
	}{
		"sound":                {10, leveling(250, 420, 2.5), Sound},
		"flat":                 {10, func(float64) float64 { return 300 }, Sound},
		"moisture":             {12, leveling(300, 2400, 3), Moisture},
		"leak":                 {10, func(m float64) float64 { return 300 + 400*m }, Leak},
		"large leak, short":    {5, func(m float64) float64 { return 300 + 3000*m }, Leak},
		"slow and steady":      {10, func(m float64) float64 { return 300 + 50*m }, Leak},
		"straight through 500": {10, func(m float64) float64 { return 480 + 15*m }, Leak},
		"very slow and steady": {30, func(m float64) float64 { return 300 + 8*m }, Leak},
		"below the gauge":      {10, func(m float64) float64 { return 200 + 0.5*m }, Sound},
		"flat at the limit":    {10, func(float64) float64 { return 470 }, DecayOpen},
		"flat for an hour":     {60, func(float64) float64 { return 470 }, Sound},
		"plateau near 980":     {15, leveling(300, 980, 3), Moisture},
		"slows, not yet level": {20, leveling(200, 900, 25), DecayOpen},
		"too short":            {4, leveling(250, 420, 2.5), DecayOpen},
		"not deep":             {10, leveling(1500, 2000, 3), NotDeepEnough},
	} {
		right := 0
		rng := rand.New(rand.NewPCG(1, 3))
		for range 50 {
			d, err := JudgeDecay(vacuum(rng, c.minutes, c.at), DecayLimits{})
			if err != nil {
				t.Fatal(err)
			}
			if d.Outcome == c.want {
				right++
			}
		}
		if right < 48 {
			t.Errorf("%s: %d of 50 are %v", name, right, c.want)
		}
	}
	rng := rand.New(rand.NewPCG(1, 3))
	if d, _ := JudgeDecay(vacuum(rng, 12, leveling(300, 2400, 3)), DecayLimits{}); math.Abs(
		d.Levels.Value.Microns()-2400,
	) > 60 {
		t.Errorf("levels off at %v microns", d.Levels.Value.Microns())
	}
	if d, _ := JudgeDecay(vacuum(rng, 10, func(m float64) float64 { return 300 + 400*m }),
		DecayLimits{}); math.Abs(
		d.PerMinute.Microns()-400,
	) > 5 {
		t.Errorf("rises %v microns a minute", d.PerMinute.Microns())
	}
	var r *RangeError
	for name, readings := range map[string][]Sample[quantity.Pressure]{
		"none": nil, "negative": {{0, -1}}, "not a number": {{0, quantity.Pressure(math.NaN())}},
		"backwards": {{5, 1}, {1, 1}}, "ages apart": {{math.MinInt64, 1}, {math.MaxInt64, 1}},
	} {
		if _, err := JudgeDecay(readings, DecayLimits{}); !errors.As(err, &r) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What the maker asks for comes first where it is stricter, and never loosens the test.
func TestDecayTestByTheMaker(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 5))
	level := vacuum(rng, 12, func(m float64) float64 { return 380 - 180*math.Exp(-m/2.5) })
	for _, c := range []struct {
		maker DecayLimits
		want  DecayOutcome
	}{
		{DecayLimits{}, Sound}, {DecayLimits{Level: quantity.Microns(300)}, Moisture},
		{DecayLimits{Level: quantity.Microns(2000)}, Sound},
		{DecayLimits{Start: quantity.Microns(150)}, NotDeepEnough},
		{DecayLimits{Time: 30 * time.Minute}, DecayOpen},
	} {
		d, err := JudgeDecay(level, c.maker)
		if err != nil || d.Outcome != c.want || d.Limit > decayLimit.value {
			t.Errorf("%+v: %+v, %v; want %v", c.maker, d, err, c.want)
		}
		if own := d.Source.Standing == fact.Label; own != (c.maker.Level == quantity.Microns(300)) {
			t.Errorf("%+v: source %v", c.maker, d.Source)
		}
	}
	var r *RangeError
	for _, bad := range []DecayLimits{{Start: -1}, {Level: quantity.Pressure(math.NaN())},
		{Time: -1}} {
		if _, err := JudgeDecay(level, bad); !errors.As(err, &r) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}

// A steady rise that the gauge can tell is never sound, and never dry air either.
func TestSteadyRiseIsALeak(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := rapid.Float64Range(5, 2000).Draw(t, "microns a minute")
		start := rapid.Float64Range(100, 480).Draw(t, "start")
		minutes := rapid.Float64Range(10, 60).Draw(t, "minutes")
		rng := rand.New(rand.NewPCG(uint64(rapid.Int().Draw(t, "seed")), 1))
		d, err := JudgeDecay(
			vacuum(rng, minutes, func(m float64) float64 { return start + rate*m }), DecayLimits{},
		)
		if err != nil {
			t.Fatal(err)
		}
		if d.Outcome == Sound || d.Outcome == Moisture {
			t.Fatalf("%v microns a minute from %v for %v min: %+v", rate, start, minutes, d)
		}
	})
}

// A circuit that levels off below the limit is no leak and not wet.
func TestLevelingBelowTheLimitIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := rapid.Float64Range(80, 300).Draw(t, "start")
		level := start + rapid.Float64Range(0, 150).Draw(t, "rise")
		tau := rapid.Float64Range(0.5, 3).Draw(t, "time constant")
		minutes := rapid.Float64Range(12, 40).Draw(t, "minutes")
		rng := rand.New(rand.NewPCG(uint64(rapid.Int().Draw(t, "seed")), 1))
		at := func(m float64) float64 { return level + (start-level)*math.Exp(-m/tau) }
		d, err := JudgeDecay(vacuum(rng, minutes, at), DecayLimits{})
		if err != nil {
			t.Fatal(err)
		}
		if d.Outcome == Leak || d.Outcome == Moisture || d.Outcome == NotDeepEnough {
			t.Fatalf("from %v to %v in %v min: %+v", start, level, tau, d)
		}
	})
}

func TestJointTest(t *testing.T) {
	good := JointTest{
		Allowable:   quantity.PSIG(600),
		Applied:     quantity.PSIG(150),
		Sensitivity: gramsPerYear(5),
	}
	for _, c := range []struct {
		change  func(*JointTest)
		outcome TestOutcome
		reason  JointReason
	}{
		{func(*JointTest) {}, Holds, JointTight},
		{func(j *JointTest) { j.Found = true }, Leaks, JointLeaking},
		{func(j *JointTest) { j.Found, j.Applied, j.Sensitivity = true, 0, gramsPerYear(500) },
			Leaks, JointLeaking},
		{func(j *JointTest) { j.Applied = quantity.PSIG(149) }, TestOpen, JointPressureLow},
		{func(j *JointTest) { j.Sensitivity = gramsPerYear(6) }, TestOpen, JointMethodBlunt},
	} {
		j := good
		c.change(&j)
		if out, err := j.Judge(); err != nil || out.Outcome != c.outcome || out.Reason != c.reason {
			t.Errorf("%+v: %+v, %v", j, out, err)
		}
	}
	var r *RangeError
	for _, bad := range []func(*JointTest){
		func(j *JointTest) { j.Allowable = 0 }, func(j *JointTest) { j.Applied = j.Allowable + 1 },
		func(j *JointTest) { j.Applied = -1 }, func(j *JointTest) { j.Sensitivity = 0 },
		func(j *JointTest) { j.Sensitivity = quantity.MassFlow(math.Inf(1)) },
		func(j *JointTest) { j.Allowable = quantity.GaugePressure(math.NaN()) },
	} {
		j := good
		bad(&j)
		if out, err := j.Judge(); !errors.As(err, &r) {
			t.Errorf("%+v: %+v, %v", j, out, err)
		}
	}
}

// The table prints the coefficients of B = a − b·exp(c/T), which are within 1 cm³/mol of the
// correlation used.
func TestNitrogenVirial(t *testing.T) {
	source := verify.Source{
		Cite: "Kaye and Laby, Tables of Physical and Chemical Constants, second virial " +
			"coefficients, as LibreTexts reprints them (table A9)",
		Kind: verify.Published,
	}
	for _, kelvin := range []float64{253.15, 273.15, 298.15, 323.15} {
		want := 185.4 - 141.8*math.Exp(88.7/kelvin)
		verify.Value(
			t, source, fmt.Sprintf("second virial coefficient of nitrogen at %v K", kelvin),
			"cm³/mol", want, 1e6*nitrogenVirial(kelvin), 1,
		)
	}
}

func nitrogen(start, end, t1, t2 float64) PressureTest {
	return PressureTest{
		Start: psig(start, 0.5), End: psig(end, 0.5),
		StartGas: f(t1).PlusMinus(df(0.7)), EndGas: f(t2).PlusMinus(df(0.7)),
		Atmosphere: quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(300)),
		Limit:      quantity.PSIG(550),
	}
}

func TestPressureTest(t *testing.T) {
	for name, c := range map[string]struct {
		p    PressureTest
		want TestOutcome
	}{
		"nothing changed":      {nitrogen(500, 500, 80, 80), Holds},
		"cooled by 10 °F":      {nitrogen(500, 490.2, 80, 70), Holds},
		"cooled, and leaks":    {nitrogen(500, 478, 80, 70), Leaks},
		"warmed, hides a leak": {nitrogen(500, 500, 70, 82), Leaks},
		"more than explained":  {nitrogen(500, 512, 75, 75), TestOpen},
		"held for a moment": {func() PressureTest {
			p := nitrogen(500, 500, 80, 80)
			p.Held = 5 * time.Minute
			return p
		}(), TestOpen},
		"poor clamp": {func() PressureTest {
			p := nitrogen(500, 498, 80, 80)
			p.EndGas.Std = float64(df(6))
			return p
		}(), TestOpen},
	} {
		out, err := c.p.Judge()
		if err != nil || out.Outcome != c.want {
			t.Errorf(
				"%s: %v (drop %v psi ± %v), %v", name, out.Outcome, out.Drop.Value.PSIG(),
				out.Drop.Std/quantity.PSI, err,
			)
		}
	}
	p := nitrogen(500, 150, 80, 80)
	if out, err := p.Judge(); err != nil || math.Abs(out.Drop.Value.PSIG()-350) > 1 {
		t.Errorf("a large leak: %v, %v", out.Drop, err)
	}
	var r *RangeError
	p = nitrogen(600, 600, 80, 80)
	if _, err := p.Judge(); !errors.As(err, &r) {
		t.Errorf("above the label's limit: %v", err)
	}
	p = nitrogen(540, 556, 70, 85)
	if _, err := p.Judge(); !errors.As(err, &r) || r.Value != psig(556, 0).Value {
		t.Errorf("warmed above the label's limit: %v", err)
	}
	for _, limit := range []float64{math.NaN(), math.Inf(1), -1} {
		p = nitrogen(500, 500, 80, 80)
		p.Limit = quantity.PSIG(limit)
		if _, err := p.Judge(); !errors.As(err, &r) {
			t.Errorf("a limit of %g psig: %v", limit, err)
		}
	}
	p = nitrogen(500, math.NaN(), 80, 80)
	if _, err := p.Judge(); !errors.As(err, &r) {
		t.Errorf("not a number: %v", err)
	}
	p = nitrogen(500, 500, 80, 1000)
	if _, err := p.Judge(); !errors.As(err, &r) {
		t.Errorf("a pipe at 1,000 °F: %v", err)
	}
}

// At low pressure nitrogen is ideal, and going there and back again changes
// nothing.
func TestNitrogenProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := rapid.Float64Range(1e4, 5e6).Draw(rt, "p")
		t1, t2 := rapid.Float64Range(250, 330).
			Draw(rt, "t1"),
			rapid.Float64Range(250, 330).
				Draw(rt, "t2")
		there := nitrogenAt(p, t1, t2)
		if back := nitrogenAt(there, t2, t1); math.Abs(back/p-1) > 1e-12 {
			rt.Fatalf("%v, back %v", p, back)
		}
		if ideal := p * t2 / t1; math.Abs(there/ideal-1) > 1e-9*p*math.Abs(t2-t1)+1e-12 {
			rt.Fatalf("%v, ideal %v", there, ideal)
		}
	})
}

func TestPressureTestUncertaintyByMonteCarlo(t *testing.T) {
	p := nitrogen(500, 488, 82, 70)
	out, err := p.Judge()
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(5, 5))
	const n = 20000
	sum, sq := 0.0, 0.0
	for range n {
		q := p
		q.Start.Value += quantity.GaugePressure(p.Start.Std * rng.NormFloat64())
		q.End.Value += quantity.GaugePressure(p.End.Std * rng.NormFloat64())
		q.StartGas.Value += quantity.Temperature(p.StartGas.Std * rng.NormFloat64())
		q.EndGas.Value += quantity.Temperature(p.EndGas.Std * rng.NormFloat64())
		q.Atmosphere.Value += quantity.Pressure(p.Atmosphere.Std * rng.NormFloat64())
		o, err := q.Judge()
		if err != nil {
			t.Fatal(err)
		}
		v := float64(o.Drop.Value)
		sum, sq = sum+v, sq+v*v
	}
	std := math.Sqrt(sq/n - sum/n*sum/n)
	if math.Abs(out.Drop.Std/std-1) > 0.03 {
		t.Errorf(
			"standard uncertainty %v psi, by Monte Carlo %v", out.Drop.Std/quantity.PSI,
			std/quantity.PSI,
		)
	}
}
