package electrical

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/strictjson"
	"golang.org/x/text/language"
	"pgregory.net/rapid"
)

var bounds = strictjson.Limits{Bytes: 1 << 16, Depth: 8, Items: 50}

func load(t testing.TB, name string) Readings {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "calls", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	var r Readings
	if err := strictjson.Decode(text, &r, bounds); err != nil {
		t.Fatal(name, err)
	}
	return r
}

// Eight calls, as a technician with 25 years of practice would take them.
func TestCalls(t *testing.T) {
	for _, c := range []struct {
		call    string
		finding fact.Code
		stops   bool
		plan    []fact.Code
	}{
		{"weak-run-capacitor", "electrical.capacitor-weak", true,
			[]fact.Code{lockOut, mendCapacitor, startAndRead}},
		{"pitted-contactor", "electrical.contactor-pitted", true,
			[]fact.Code{lockOut, mendContactor, startAndRead}},
		{"float-open", "electrical.switch-open", false,
			[]fact.Code{switchSteps[FloatSwitch], startAndRead}},
		{"seized-fan-motor", "electrical.tight", true,
			[]fact.Code{lockOut, mendMotor, startAndRead}},
		{"locked-rotor", "electrical.locked", true,
			[]fact.Code{lockOut, freeCompressor, startAndRead}},
		{"reversed-scroll", "electrical.backwards", true,
			[]fact.Code{lockOut, swapLines, startAndRead}},
		{"overload-open", "electrical.overload-open", false,
			[]fact.Code{lockOut, letCool, whyTripped, startAndRead}},
		{"low-under-load", "electrical.supply-low-running", true,
			[]fact.Code{lockOut, mendConnections, startAndRead}},
	} {
		rep, err := Judge(load(t, c.call))
		if err != nil {
			t.Fatal(c.call, err)
		}
		var plan []fact.Code
		for _, s := range rep.Plan {
			plan = append(plan, s.Do.Code)
		}
		stops := slices.ContainsFunc(rep.Dangers, func(d Danger) bool { return d.Stops })
		if rep.Finding.Code != c.finding || stops != c.stops || !slices.Equal(plan, c.plan) {
			t.Errorf("%s: %v, stops %v, plan %v; want %v, %v, %v", c.call, rep.Finding, stops,
				plan, c.finding, c.stops, c.plan)
		}
	}
}

// Where nothing that was read is wrong, the next reading of the chain is asked for.
func TestNextReading(t *testing.T) {
	r := Readings{Compressor: Motor{State: Silent}}
	yes := true
	for _, c := range []struct {
		read func()
		want fact.Code
	}{
		{func() {}, readSupply},
		{func() { r.Supply.AtRest = []volts{{Value: 240}} }, readControl},
		{func() { r.Control.Coil = &volts{Value: 25} }, seeContactor},
		{func() { r.Contactor.PulledIn = &yes }, readTerminals},
		{func() { r.Compressor.AtTerminals = &volts{Value: 239} }, readCapacitor},
		{func() {
			r.Compressor.RunCapacitor = &Capacitor{Rated: 45e-6, Measured: &farads{Value: 45e-6}}
		}, readWindings},
		{func() {
			r.Compressor.Windings = &Windings{CommonRun: &ohms{Value: 1},
				CommonStart: &ohms{Value: 2}, StartRun: &ohms{Value: 3}}
		}, readGround},
		{func() { r.Compressor.ToGround = &ohms{Value: 1e8} }, readCurrents},
		{func() { r.Compressor.State = Runs }, goOn},
	} {
		c.read()
		rep, err := Judge(r)
		if err != nil {
			t.Fatal(err)
		}
		if last := rep.Plan[len(rep.Plan)-1].Do.Code; last != c.want || !rep.Finding.IsZero() {
			t.Errorf("%v, found %v; want %v", last, rep.Finding, c.want)
		}
	}
}

// A fan that stands stops the compressor, and is looked at locked out.
func TestFanStands(t *testing.T) {
	r := Readings{Supply: Supply{AtRest: []volts{{Value: 240}}},
		Control:   Control{Coil: &volts{Value: 25}},
		Contactor: Contactor{PulledIn: new(true)}, Compressor: Motor{State: Trips},
		OutdoorFan: Motor{State: Silent}}
	rep, err := Judge(r)
	if err != nil {
		t.Fatal(err)
	}
	if rep.Plan[0].Do.Code != lockOut || rep.Plan[1].Do.Code != readFan ||
		rep.Finding.Code != "electrical.fan-stands" {
		t.Error(rep.Plan, rep.Finding)
	}
}

// A blower that stands beside a compressor that runs has a feed of its own: it is looked at itself.
func TestBlowerStands(t *testing.T) {
	rep, err := Judge(Readings{
		Compressor: Motor{State: Runs}, IndoorFan: Motor{State: Silent},
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(rep.Plan) != 2 || rep.Plan[0].Do.Code != lockOut || rep.Plan[1].Do.Code != readFan {
		t.Error(rep.Plan)
	}
}

// What trips is not started for a reading of the supply before its insulation was tested.
func TestTripsUntested(t *testing.T) {
	r := Readings{Compressor: Motor{State: Trips}}
	for _, want := range []fact.Code{readGround, readSupply} {
		rep, err := Judge(r)
		if err != nil {
			t.Fatal(err)
		}
		if last := rep.Plan[len(rep.Plan)-1].Do.Code; last != want {
			t.Errorf("%v; want %v", rep.Plan, want)
		}
		r.Compressor.ToGround = &ohms{Value: 1e8}
	}
}

// An inverter's compressor has no run capacitor to ask for.
func TestInverter(t *testing.T) {
	r := Readings{
		Nameplate:  Nameplate{Inverter: true},
		Supply:     Supply{AtRest: []volts{{Value: 240}}},
		Control:    Control{Coil: &volts{Value: 25}},
		Contactor:  Contactor{PulledIn: new(true)},
		Compressor: Motor{State: Silent},
	}
	rep, err := Judge(r)
	if err != nil || rep.Plan[0].Do.Code != readBoard {
		t.Error(rep.Plan, err)
	}
}

// No motor is condemned on what something before it explains.
func TestUpstreamFirst(t *testing.T) {
	condemns := []fact.Code{freeCompressor, proveWinding, mendMotor, findLoad}
	for _, c := range []struct {
		name  string
		spoil func(*Readings)
	}{
		{"low supply", func(r *Readings) { r.Supply.Running = []volts{{Value: 180}} }},
		{"burnt contact", func(r *Readings) { r.Contactor.Drops = []volts{{Value: 9}} }},
		{"weak capacitor", func(r *Readings) { r.Compressor.RunCapacitor.Measured.Value = 20e-6 }},
	} {
		r := load(t, "locked-rotor")
		c.spoil(&r)
		rep, err := Judge(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range rep.Plan {
			if slices.Contains(condemns, s.Do.Code) {
				t.Errorf("%s: %v", c.name, s.Do)
			}
		}
	}
}

// What is grounded or open is not started again before it is proved.
func TestNotStartedOnGround(t *testing.T) {
	r := load(t, "locked-rotor")
	r.Compressor.ToGround = &ohms{Value: 200e3}
	rep, err := Judge(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range rep.Plan {
		if s.Starts {
			t.Error("started on a grounded winding")
		}
	}
	if !rep.Dangers[0].Stops || rep.Plan[0].Do.Code != lockOut {
		t.Error("not stopped first", rep.Dangers, rep.Plan[0].Do)
	}
}

// Each check with the limit that it turns at.
func TestLimits(t *testing.T) {
	exact := func(v quantity.Voltage) []volts { return []volts{v.PlusMinus(0.01)} }
	for _, c := range []struct {
		name string
		make func(*Readings)
		want fact.Code
	}{
		{"10 % under 208 V", func(r *Readings) { r.Supply.AtRest = exact(187.1) },
			"electrical.supply-low"},
		{"within 10 % of 208 V", func(r *Readings) { r.Supply.AtRest = exact(187.3) },
			"electrical.supply-within"},
		{"10 % over 230 V", func(r *Readings) { r.Supply.AtRest = exact(253.2) },
			"electrical.supply-high"},
		{"nothing there", func(r *Readings) { r.Supply.AtRest = exact(2) },
			"electrical.supply-dead"},
		{"control at 85 %", func(r *Readings) { r.Control.Coil = &volts{Value: 20.3, Std: 0.01} },
			"electrical.coil-low"},
		{"above class 2", func(r *Readings) {
			r.Control.Transformer = &volts{Value: 31,
				Std: 0.01}
		}, "electrical.control-high"},
		{"half the voltage across a switch", func(r *Readings) {
			r.Control.Transformer = &volts{Value: 26}
			r.Control.Across = []SwitchReading{{DoorSwitch, volts{Value: 13}}}
		}, "electrical.switch-open"},
		{"held in without a call", func(r *Readings) {
			in := true
			r.Control.Coil, r.Contactor.PulledIn = &volts{}, &in
		}, "electrical.contactor-stuck"},
		{"pole that does not close", func(r *Readings) { r.Contactor.Drops = exact(236) },
			"electrical.contact-open"},
		{"rated load is no limit", func(r *Readings) {
			r.Compressor = Motor{RatedLoad: 20, Currents: []amperes{{Value: 28}}}
		}, "electrical.current-over-rated"},
		{"156 % of rated load", func(r *Readings) {
			r.Compressor = Motor{RatedLoad: 20, Currents: []amperes{{Value: 32}}}
		}, "electrical.current-highest"},
		{"115 % of a fan", func(r *Readings) {
			r.OutdoorFan = Motor{RatedLoad: 1.5, Currents: []amperes{{Value: 1.9, Std: 0.01}}}
		}, "electrical.fan-current-highest"},
		{"hardly pumping", func(r *Readings) {
			r.Compressor = Motor{RatedLoad: 20, Currents: []amperes{{Value: 6}}}
		}, "electrical.current-little"},
		{"old winding", func(r *Readings) { r.Compressor.ToGround = &ohms{Value: 3e6} },
			"electrical.insulation-low"},
		{"start capacitor up to 20 % above", func(r *Readings) {
			r.Compressor.StartCapacitor = &Capacitor{Rated: 88e-6,
				Measured: &farads{Value: 104e-6, Std: 1e-8}}
		}, "electrical.capacitor-within"},
		{"one line without current", func(r *Readings) {
			r.Compressor = Motor{RatedLoad: 20, Currents: []amperes{{Value: 31}, {Value: 30},
				{Value: 0}}}
		}, "electrical.single-phase"},
		{"two thirds of a phase", func(r *Readings) {
			r.Supply.AtRest = []volts{{Value: 460}, {Value: 240}, {Value: 238}}
		}, "electrical.phase-lost"},
		{"winding of three phases open", func(r *Readings) {
			r.Compressor.Windings = &Windings{Lines: []ohms{{Value: 1.1}, {Value: 4e7},
				{Value: 4e7}}}
		}, "electrical.winding-open"},
		{"winding of a hot motor open", func(r *Readings) {
			r.Compressor = Motor{Hot: true, Windings: &Windings{CommonRun: &ohms{Value: 4e7}}}
		}, "electrical.overload-open"},
		{"winding of a cold motor open", func(r *Readings) {
			r.Compressor.Windings = &Windings{CommonRun: &ohms{Value: 4e7}}
		}, "electrical.winding-open"},
		{"start to run of a hot motor open", func(r *Readings) {
			r.Compressor = Motor{Hot: true, Windings: &Windings{
				CommonRun: &ohms{Value: 4e7}, StartRun: &ohms{Value: 4e7}}}
		}, "electrical.winding-open"},
		{"windings that do not add up", func(r *Readings) {
			r.Compressor.Windings = &Windings{CommonRun: &ohms{Value: 2.5},
				CommonStart: &ohms{Value: 0.6}, StartRun: &ohms{Value: 1.9}}
		}, "electrical.windings-off"},
	} {
		r := Readings{Nameplate: Nameplate{Voltage: 208, HighVoltage: 230}}
		c.make(&r)
		rep, err := Judge(r)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !slices.ContainsFunc(
			rep.Checks, func(x fact.Check) bool { return x.Says.Code == c.want },
		) {
			t.Errorf("%s: %v, want %v", c.name, rep.Checks, c.want)
		}
	}
}

func TestUnbalance(t *testing.T) {
	mg := verify.Source{
		Cite: "NEMA MG 1, 14.36: definition of voltage unbalance",
		Kind: verify.Published,
	}
	old := verify.Source{Cite: "NEMA MG 1, 14.36: 220, 215 and 210 V", Kind: verify.FromMemory}
	doe := verify.Source{
		Cite: "US DOE, Motor Systems Tip Sheet 7: 462, 463 and 455 V", Kind: verify.Published,
	}
	for _, c := range []struct {
		of     [3]quantity.Voltage
		want   float64
		source verify.Source
	}{
		{[3]quantity.Voltage{462, 463, 455}, 1.1, doe},
		{[3]quantity.Voltage{460, 467, 450}, 1.96, mg},
		{[3]quantity.Voltage{220, 215, 210}, 2.3, old},
	} {
		got, err := Unbalance(c.of)
		if err != nil {
			t.Fatal(err)
		}
		verify.Value(t, c.source, "voltage unbalance", "%", c.want, got.Percent(), 0.05)
	}
	power, err := Derating(quantity.Percent(2))
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(t, verify.Source{Cite: "NEMA MG 1, figure 14-1", Kind: verify.FromMemory},
		"derating at 2 % unbalance", "%", 95, power.Percent(), 0.5)
}

// 2,652 µF for each ampere over volt at 60 Hz is the trade's figure for 1/(2π 60 Hz).
func TestCapacitanceUnderLoad(t *testing.T) {
	got, err := CapacitanceUnderLoad(amperes{Value: 5}, volts{Value: 300}, quantity.Hertz(60))
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(t, verify.Source{Cite: "2,652 I/V at 60 Hz", Kind: verify.CommonPractice},
		"capacitance under load", "µF", 2652*5.0/300, got.Value.Microfarads(), 5e-4)
}

func TestUnbalanceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(n string) quantity.Voltage {
			return quantity.Voltage(rapid.Float64Range(1, 600).Draw(t, n))
		}
		a, b, c := draw("a"), draw("b"), draw("c")
		of := func(x, y, z quantity.Voltage) float64 {
			u, err := Unbalance([3]quantity.Voltage{x, y, z})
			if err != nil {
				t.Fatal(err)
			}
			return float64(u)
		}
		u := of(a, b, c)
		if u < 0 || u > 2 || math.Abs(u-of(c, a, b)) > 1e-9 ||
			math.Abs(u-of(2*a, 2*b, 2*c)) > 1e-9 {
			t.Fatalf("%v of %v %v %v", u, a, b, c)
		}
		if of(a, a, a) > 1e-12 {
			t.Fatal("equal phases are unbalanced")
		}
		if p, err := Derating(quantity.Ratio(min(u, 0.05))); err != nil || p < 0.75 || p > 1 {
			t.Fatal(p, err)
		}
	})
}

// A capacitor that loses microfarads never gets sound again, and the two ways of reading it
// agree.
func TestCapacitorProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rated := quantity.Microfarads(rapid.Float64Range(2, 100).Draw(t, "rated"))
		part := rapid.Float64Range(0.1, 1).Draw(t, "part")
		less := part * rapid.Float64Range(0.1, 1).Draw(t, "less")
		judge := func(c Capacitor) fact.Outcome {
			c.Rated = rated
			rep, err := Judge(Readings{Compressor: Motor{RunCapacitor: &c}})
			if err != nil {
				t.Fatal(err)
			}
			return rep.Checks[0].Outcome
		}
		read := func(p float64) Capacitor {
			return Capacitor{Measured: &farads{Value: rated * quantity.Capacitance(p)}}
		}
		if judge(read(part)) == fact.Wrong && judge(read(less)) != fact.Wrong {
			t.Fatalf("wrong at %v and not at %v", part, less)
		}
		v := quantity.Voltage(300)
		i := 2 * math.Pi * 60 * float64(v) * float64(rated) * part
		c, err := CapacitanceUnderLoad(quantity.Current(i).PlusMinus(0.001), v.PlusMinus(0.1), 60)
		if err != nil || math.Abs(float64(c.Value)/float64(rated)/part-1) > 1e-9 {
			t.Fatal(c, err)
		}
	})
}

func TestImpossibleReadings(t *testing.T) {
	for name, r := range map[string]Readings{
		"two phases":   {Nameplate: Nameplate{Phases: 2}},
		"two of three": {Supply: Supply{AtRest: []volts{{Value: 240}, {Value: 241}}}},
		"one of three": {Nameplate: Nameplate{Phases: 3},
			Supply: Supply{AtRest: []volts{{Value: 240}}}},
		"negative":          {Compressor: Motor{Currents: []amperes{{Value: -3}}}},
		"not a number":      {Control: Control{Coil: &volts{Value: quantity.Voltage(math.NaN())}}},
		"a farad":           {Compressor: Motor{RunCapacitor: &Capacitor{Rated: 1}}},
		"no rating":         {Compressor: Motor{RunCapacitor: &Capacitor{}}},
		"limits swapped":    {Nameplate: Nameplate{MinVoltage: 253, MaxVoltage: 197}},
		"400 Hz":            {Nameplate: Nameplate{Frequency: 400}},
		"two windings":      {Compressor: Motor{Windings: &Windings{Lines: make([]ohms, 2)}}},
		"switch of no name": {Control: Control{Across: []SwitchReading{{}}}},
	} {
		var out *RangeError
		if _, err := Judge(r); !errors.As(err, &out) || out.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Everything that can be found or advised has its sentence.
func TestEveryCodeHasWords(t *testing.T) {
	spoken := words.Shapes(language.English)
	known := func(code fact.Code) {
		if _, ok := spoken[string(code)]; !ok {
			t.Errorf("no words for %s", code)
		}
	}
	for code, k := range kinds {
		known(code)
		if k.danger {
			known(code + ".why")
		}
		for _, s := range k.does {
			known(s)
		}
	}
	for code := range ways {
		known(code)
	}
	for s, code := range switchSteps {
		known(code)
		known(fact.Code("switch." + s.String()))
	}
	for code := range spoken {
		if _, check := kinds[fact.Code(strings.TrimSuffix(code, ".why"))]; !check &&
			strings.HasPrefix(code, "electrical.") && strings.Count(code, ".") == 1 &&
			code != "electrical.at-rest" && code != "electrical.running" {
			t.Errorf("%s is said of nothing", code)
		}
	}
}

func FuzzReadings(f *testing.F) {
	files, _ := filepath.Glob("testdata/calls/*.json")
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		var r Readings
		if strictjson.Decode(text, &r, bounds) != nil {
			return
		}
		rep, err := Judge(r)
		if err != nil {
			return
		}
		if len(rep.Plan) == 0 || len(rep.Cautions) == 0 {
			t.Fatal("no plan")
		}
		spoken := words.In(language.English, quantity.IP)
		for _, c := range rep.Checks {
			if said := spoken.Say(c.Says); strings.Contains(said, "NaN") ||
				strings.Contains(said, "Inf") {
				t.Fatal(said)
			}
		}
	})
}
