package coldroom

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/coldroom/bench"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// decorated is a visit with sights, answers, dangers and gaps at random.
func decorated(t *testing.T, i int) *modes.Case {
	rng := rand.New(rand.NewPCG(77, uint64(i)))
	v := bench.Draw(rng, 0.2)
	c := caseOf(t, v)
	often := func(p float64) bool { return rng.Float64() < p }
	c.Seen.CoilIced, c.Seen.DoorsOpen, c.Seen.OilStains = often(0.1), often(0.1), often(0.1)
	c.Seen.OutdoorCoilDirty, c.Seen.NotCoolingComplaint = often(0.1), often(0.3)
	c.Seen.SealedSystemOpened, c.ReadBeforeMove, c.NoPairs = often(0.05), often(0.05), often(0.1)
	if often(0.2) {
		c.Running = time.Duration(1+rng.IntN(60)) * time.Minute
	}
	if often(0.15) {
		c.Charge = 0
	}
	if often(0.1) {
		c.Moved = c.WholeCharge * 6 / 10
	}
	if often(0.1) {
		c.ReturnDryBulb = nil
	}
	if often(0.1) {
		c.OutdoorDryBulb = nil
	}
	if often(0.05) {
		c.SuctionPressure, c.EvaporatingDew = nil, nil
	}
	for i := range looks {
		answered := slices.ContainsFunc(
			c.Answers, func(a diagnose.Answer) bool { return a.Code == looks[i].code },
		)
		if often(0.05) && !answered {
			c.Answers = append(c.Answers, diagnose.Answer{Code: looks[i].code, Yes: often(0.5)})
		}
	}
	if often(0.15) {
		c.Dangers = append(c.Dangers, modes.Danger{
			Code: "condensing-highest", Grave: true, Stops: true,
			Says: fact.New("danger.condensing-highest",
				fact.Amount("figure", quantity.Fahrenheit(150))),
		})
	}
	if often(0.1) {
		c.Dangers = append(c.Dangers, modes.Danger{Code: "evaporating-coldest", Grave: true})
	}
	return c
}

// The laws of a plan.
func TestLaws(t *testing.T) {
	n := 60
	if testing.Short() {
		n = 20
	}
	for i := range n {
		c := decorated(t, i)
		j := Judge(c)
		fail := func(what string, args ...any) {
			t.Helper()
			t.Errorf("visit %d: "+what, append([]any{i}, args...)...)
		}
		if len(j.Steps) == 0 || j.Headline.Code == "" {
			fail("no step, or no headline")
			continue
		}
		first := j.Steps[0].Do.Code
		stops := slices.ContainsFunc(j.Dangers, func(d modes.Danger) bool { return d.Stops })
		if stops != (first == "step.stop") {
			fail("a danger that stops it, and first %s", first)
		}
		food, belongs := 0, stops || c.ReturnDryBulb == nil
		if stops {
			food = 1
		}
		if t := c.ReturnDryBulb; t != nil {
			belongs = belongs || t.Value > usualOf(c).FoodLimit().At
		}
		if code := string(j.Steps[food].Do.Code); belongs &&
			!strings.HasPrefix(code, "step.cold-food") && code != "step.cold-room-warms" {
			fail("the food does not come first: %s", code)
		}
		if slices.ContainsFunc(
			j.Dangers, func(d modes.Danger) bool { return d.Code == "evaporating-coldest" },
		) {
			fail("a limit of comfort cooling is told")
		}
		stopped, looksLeft := false, false
		for k, s := range j.Steps {
			if s.Running && stopped {
				fail("%s runs after a stop", s.Do.Code)
			}
			stopped = (stopped || s.Stops || s.Do.Code == "step.stop") && !s.Starts
			looksLeft = looksLeft || s.Look != ""
			if strings.HasPrefix(string(s.Do.Code), "step.cold-add") && j.Charge.Outcome != "low" ||
				strings.HasPrefix(string(s.Do.Code), "step.cold-recover") &&
					j.Charge.Outcome != "high" {
				fail("%s at a charge that is %s", s.Do.Code, j.Charge.Outcome)
			}
			if s.Moves && looksLeft {
				fail("%s before a look is answered", s.Do.Code)
			}
			if s.Cause != "" && s.Chance < worth {
				fail("%s with a chance of %.2f", s.Do.Code, s.Chance)
			}
			if s.Look != "" && slices.ContainsFunc(
				c.Answers, func(a diagnose.Answer) bool { return a.Code == s.Look },
			) {
				fail("%s is asked again", s.Look)
			}
			if slices.ContainsFunc(
				j.Steps[:k], func(x modes.Step) bool { return x.Do.Code == s.Do.Code },
			) {
				fail("%s stands twice", s.Do.Code)
			}
		}
		sum := j.Charge.Low + j.Charge.InBand + j.Charge.High
		if (j.Charge.Outcome == "not-judged") != (sum == 0) || sum != 0 && math.Abs(sum-1) > 1e-6 {
			fail("chances of the charge add up to %v, %s", sum, j.Charge.Outcome)
		}
		// Two causes may be at once, and neither where nothing is wrong.
		nothing, most, total := 0.0, 0.0, 0.0
		for _, f := range j.Findings {
			total += f.Chance
			if f.Cause == sound {
				nothing = f.Chance
			} else {
				most = max(most, f.Chance)
			}
		}
		if !(nothing+most <= 1+1e-9) || !(total <= 2-nothing+1e-9) {
			fail("findings add up to %v, nothing wrong %v, the likeliest %v", total, nothing, most)
		}
		if d := cmp.Diff(j, Judge(c), cmp.AllowUnexported(charge.Weighing{})); i < 5 && d != "" {
			fail("two answers to one case: %s", d)
		}
	}
}

// neutral are the codes outside of this package's own that its judge may use: what they say
// holds for any machine.
var neutral = []fact.Code{
	"step.stop", "step.feel-compressor", "step.nitrogen", "step.evacuate", "step.weigh-in",
	"step.weigh-in-label", "step.read", "step.read-again", "step.find-leak", "step.recover-rest",
	"step.mend-leak", "step.leave-charge", "headline.cause", "headline.open", "headline.stop",
	"step.halt", "headline.moved-much", "charge.moved-much",
	"charge.read-before-move", "charge.look-first", "outcome.look", "danger.condensing-highest",
	"danger.condensing-high", "danger.suction-in-vacuum", "danger.discharge-hottest",
	"danger.discharge-hot", "danger.current-highest", "danger.current-high", "danger.floodback",
	"danger.slugging", "danger.leak-burns", "doubt.gauges-swapped", "doubt.gauges-swapped.mend",
}

// Every code that the judge can say is of cold rooms, or holds for any machine.
func TestNoSentenceOfCooling(t *testing.T) {
	n := 60
	if testing.Short() {
		n = 20
	}
	for i := range n {
		j := Judge(decorated(t, i))
		for _, code := range codesOf(reflect.ValueOf(j)) {
			if !strings.Contains(string(code), "cold-") && code != "finding.cold" &&
				!slices.Contains(neutral, code) {
				t.Errorf("visit %d says %s", i, code)
			}
		}
	}
}

func codesOf(v reflect.Value) []fact.Code {
	var out []fact.Code
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			out = codesOf(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			out = append(out, codesOf(v.Index(i))...)
		}
	case reflect.Struct:
		if f, ok := v.Interface().(fact.Fact); ok {
			if f.IsZero() {
				return nil
			}
			return []fact.Code{f.Code}
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out = append(out, codesOf(v.Field(i))...)
			}
		}
	}
	return out
}

// Every fault is of a cause, and every look names what there is.
func TestTablesAgree(t *testing.T) {
	known := map[string]bool{}
	for i := range faults {
		if causeIndex(faults[i].cause) < 0 {
			t.Errorf("%s is of no cause", faults[i].code)
		}
		known[faults[i].code], known[faults[i].cause] = true, true
	}
	for i := range looks {
		for code, chance := range looks[i].of {
			if !known[code] || !(chance > 0 && chance < 1) {
				t.Errorf("%s: %s %v", looks[i].code, code, chance)
			}
		}
	}
	for _, c := range signature.Causes {
		if !known[c.Code] {
			t.Errorf("%s has no fault", c.Code)
		}
	}
}

// Whatever is read, the answer is finite: chances lie between none and one.
func TestAnyReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		temperature := func(name string) *quantity.Uncertain[quantity.Temperature] {
			if !rapid.Bool().Draw(t, name+" is read") {
				return nil
			}
			v := quantity.Celsius(rapid.Float64Range(-60, 110).Draw(t, name))
			return &quantity.Uncertain[quantity.Temperature]{Value: v, Std: 0.3}
		}
		designation := rapid.SampledFrom([]string{"R-404A", "R-449A", "R-290"}).Draw(t, "fluid")
		r, err := refrigerant.Lookup(designation)
		if err != nil {
			t.Fatal(err)
		}
		c := &modes.Case{Fluid: r, BulbLine: temperature("bulb")}
		c.Room.Application = rapid.Custom(func(t *rapid.T) coldroom.Application {
			n := rapid.IntRange(0, int(coldroom.WorkRoom)).Draw(t, "application")
			return coldroom.Application(n)
		}).Draw(t, "application")
		c.Evidence = diagnose.Evidence{
			Input: readcheck.Input{
				EvaporatingDew: temperature("evaporating"), CondensingBubble: temperature("bubble"),
				CondensingDew: temperature("dew"), SuctionLine: temperature("suction"),
				LiquidLine: temperature("liquid"), DischargeLine: temperature("discharge"),
				OutdoorDryBulb: temperature("outdoor"), ReturnDryBulb: temperature("box"),
				SupplyDryBulb: temperature("supply"),
			},
			Atmosphere: quantity.StandardAtmosphere, Metering: refrigerant.TXV,
		}
		j := Judge(c)
		chances := []float64{j.Charge.Low, j.Charge.InBand, j.Charge.High}
		for _, f := range j.Findings {
			chances = append(chances, f.Chance)
		}
		for _, s := range j.Steps {
			chances = append(chances, s.Chance)
		}
		for _, p := range chances {
			if !(p >= 0 && p <= 1+1e-9) {
				t.Fatalf("a chance of %v", p)
			}
		}
	})
}

// What has no valve to shut the liquid with is not pumped down, and a tube has no control of the
// head.
func TestCabinets(t *testing.T) {
	for i, seen := 0, 0; seen < 40; i++ {
		v := bench.Draw(rand.New(rand.NewPCG(79, uint64(i))), 0.2)
		if v.Valve {
			continue
		}
		seen++
		no := false
		v.Room.Receiver = &no
		j := Judge(caseOf(t, v))
		for _, s := range j.Steps {
			switch s.Do.Code {
			case "look.cold-pump-down", "mend.cold-drier", "mend.cold-compressor",
				"mend.cold-compressor-valves":
				t.Errorf("visit %d: %s", i, s.Do.Code)
			}
		}
		for _, f := range j.Findings {
			if f.Cause == headHigh || f.Cause == headLow {
				t.Errorf("visit %d: %s %.2f", i, f.Cause, f.Chance)
			}
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	c := caseOf(b, bench.Draw(rand.New(rand.NewPCG(41, 3)), 0))
	for b.Loop() {
		Judge(c)
	}
}
