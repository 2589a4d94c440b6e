package charge

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// The names of the JSON form are a promise to those who store it: this list may
// grow, and nothing on it may change.
var promised = map[string]string{
	"verdict":    "deviation high inBand liquidReturning low measured method outcome target",
	"target":     "budget method source tolerance toleranceSource value",
	"measured":   "budget method saturation value",
	"source":     "standing title",
	"rule":       "code figure source",
	"condition":  "code doubts figure forbids source",
	"obstacle":   "says code forbids mendFirst method source weighIn",
	"better":     "all atEdge need now reading",
	"steadiness": "estimate from high low noise state timeConstant to value wait within",
	"dose":       "action after inBand limitedBy mass pastBand perOunce reason verdict wait",
	"weighing":   "accessories askDevice label line perFoot source total",
	"recovery":   "class inchesOfVacuum source to",
	"decay":      "end levels limit outcome perMinute source start",
	"tightness":  "detectable drop expected outcome source",
	"risk":       "says code grave source",
	"smooth":     "perOutdoor perWetBulb target",
}

func TestJSONNames(t *testing.T) {
	target, err := SuperheatTarget(nil, *at(67), *at(93))
	if err != nil {
		t.Fatal(err)
	}
	m, err := MeasureSuperheat(fluid(t, "R-22"), psig(60, 0.6), seaLevel, f(53).PlusMinus(df(0.9)))
	if err != nil {
		t.Fatal(err)
	}
	verdict, err := Judge(m, target)
	if err != nil {
		t.Fatal(err)
	}
	better, ok := verdict.Better()
	if !ok {
		t.Fatalf("%v", verdict.Outcome)
	}
	dose := next(
		t,
		Dosing{Target: target, LabelCharge: quantity.Pounds(7), History: seen([2]float64{0, 38})},
	)
	steady := settled(
		t, history{start: 30, end: 10, tau: 240, noise: 0.2, minutes: 8, step: 5},
		rand.New(rand.NewPCG(3, 4)),
	)
	steady.Wait = 90e9
	weighing, err := weighed(t).Weigh()
	if err != nil {
		t.Fatal(err)
	}
	recovery, err := RecoverTo(fluid(t, "R-22"), quantity.Pounds(7))
	if err != nil {
		t.Fatal(err)
	}
	decay, err := JudgeDecay(
		vacuum(
			rand.New(rand.NewPCG(1, 3)), 12, func(m float64) float64 { return 2400 - 2100/(1+m*m) },
		),
		DecayLimits{},
	)
	if err != nil {
		t.Fatal(err)
	}
	tight, err := nitrogen(500, 490, 80, 70).Judge()
	if err != nil {
		t.Fatal(err)
	}
	smooth, err := SmoothSuperheat(f(67), f(93))
	if err != nil {
		t.Fatal(err)
	}
	risky := easy()
	risky.Superheat = about(0)
	cold := sound(refrigerant.TXV)
	cold.OutdoorDryBulb = at(40)
	for name, v := range map[string]any{
		"verdict": verdict, "target": target, "measured": m, "source": target.Source,
		"rule": Rules()[0], "condition": airflowLow.rule(), "better": better,
		"obstacle": Obstacles(cold, Subcooling)[0], "steadiness": steady, "dose": dose,
		"weighing": weighing, "recovery": recovery,
		"decay": decay, "tightness": tight, "risk": Risks(risky)[0], "smooth": smooth,
	} {
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var fields map[string]any
		if err := json.Unmarshal(text, &fields); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, want := range strings.Fields(promised[name]) {
			if _, ok := fields[want]; !ok {
				t.Errorf("%s has no %q: %s", name, want, text)
			}
			delete(fields, want)
		}
		for extra := range fields {
			if !slices.Contains(
				[]string{"stackedLiquid", "spikes", "gaps", "spoils", "stops"}, extra,
			) {
				t.Errorf("%s has %q, which is not on the list", name, extra)
			}
		}
	}
	roundTrip(t, verdict)
	roundTrip(t, dose)
	roundTrip(t, steady)
	roundTrip(t, weighing)
	roundTrip(t, recovery)
	roundTrip(t, decay)
	roundTrip(t, tight)
}

// roundTrip checks that the JSON form reads back as what it was written from.
func roundTrip[T any](t *testing.T, v T) {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var back T
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("%T: %v", v, err)
	}
	again, err := json.Marshal(back)
	if err != nil || !bytes.Equal(text, again) {
		t.Errorf("%T:\n%s\n%s, %v", v, text, again, err)
	}
}
