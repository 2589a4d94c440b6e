package charge

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

func taken(t testing.TB, m Method, value, std float64) Measurement {
	t.Helper()
	out, err := NewMeasurement(m, df(value).PlusMinus(df(std)))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func targetOf(t testing.TB, m Method, value, std float64) Target {
	t.Helper()
	label := df(value).PlusMinus(df(std))
	make := map[Method]func(*delta) (Target, error){
		Superheat: func(l *delta) (Target, error) {
			return SuperheatTarget(l, temperature{}, temperature{})
		},
		Subcooling: SubcoolingTarget, Approach: ApproachTarget,
	}
	out, err := make[m](&label)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func judged(t testing.TB, m Method, value, std, target, targetStd float64) Verdict {
	t.Helper()
	v, err := Judge(taken(t, m, value, std), targetOf(t, m, target, targetStd))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestJudge(t *testing.T) {
	for _, c := range []struct {
		method       Method
		value, std   float64
		target, tStd float64
		want         Outcome
		liquid       bool
	}{
		{Superheat, 14, 1, 14, 1, InBand, false},
		{Superheat, 22, 1, 14, 1, Undercharged, false},
		{Superheat, 7, 1, 14.5, 1, Overcharged, false},
		{Superheat, 19, 1, 14, 1, CannotTell, false},
		{Superheat, 14, 6, 14, 1, CannotTell, false},
		{Superheat, 5, 0, 10, 0, InBand, false}, // the edge is within
		{Superheat, 4.9, 0, 10, 0, Overcharged, false},
		{Superheat, -3, 1, 14, 1, Overcharged, true},
		{Superheat, 1.5, 0, 5, 0, InBand, true},
		{Subcooling, 10, 0.8, 9, 0, InBand, false},
		{Subcooling, 3, 0.8, 9, 0, Undercharged, false},
		{Subcooling, 15, 0.8, 9, 0, Overcharged, false},
		{Subcooling, 0, 0.8, 9, 0, Undercharged, false},
		{Approach, 12, 0.8, 7, 0, Undercharged, false},
		{Approach, 2, 0.8, 7, 0, Overcharged, false},
	} {
		v := judged(t, c.method, c.value, c.std, c.target, c.tStd)
		if v.Outcome != c.want || v.LiquidReturning != c.liquid {
			t.Errorf(
				"%v %v ± %v against %v ± %v: %v (liquid %v), want %v (liquid %v)", c.method,
				c.value, c.std, c.target, c.tStd, v.Outcome, v.LiquidReturning, c.want, c.liquid,
			)
		}
	}
}

// Common practice, no source: a suction line at 41.9 °F with saturation at
// 41.5 °F is liquid coming back, whatever the small positive number.
func TestSmallPositiveSuperheatIsLiquid(t *testing.T) {
	for _, std := range []float64{0, 0.1, 0.3, 1, 2} {
		v := judged(t, Superheat, 41.9-41.5, std, 14, 1)
		if !v.LiquidReturning || v.Outcome != Overcharged {
			t.Errorf("0.4 °F ± %v: %v, liquid returning %v", std, v.Outcome, v.LiquidReturning)
		}
	}
}

// Common practice, no source: a subcooling of 26 °F beside no superheat on a
// fixed restrictor reads overcharged, with a target and without one.
func TestStackedLiquidReadsOvercharged(t *testing.T) {
	low := targetOf(t, Superheat, 5, 1)
	for _, target := range []*Target{nil, &low} {
		for _, superheat := range []float64{-2, 0, 0.4} {
			v, err := JudgeTogether(
				taken(t, Superheat, superheat, 1), taken(t, Subcooling, 26, 1.2), target,
			)
			if err != nil || v.Outcome != Overcharged {
				t.Errorf(
					"superheat %v beside 26 °F of subcooling, target %v: %v (%v)", superheat,
					target != nil, v.Outcome, err,
				)
			}
		}
	}
	// No superheat beside an ordinary subcooling is no proof of overcharge.
	v, err := JudgeTogether(taken(t, Superheat, 0, 1), taken(t, Subcooling, 10, 1), nil)
	if err != nil || v.Outcome != CannotTell || !v.LiquidReturning {
		t.Errorf("%+v, %v", v.Outcome, err)
	}
	// Subcooling alone does not decide against a superheat in band.
	target := targetOf(t, Superheat, 14, 1)
	if v, _ := JudgeTogether(taken(t, Superheat, 14, 1), taken(t, Subcooling, 26, 1),
		&target); v.Outcome != InBand {
		t.Errorf("superheat on target beside a high subcooling: %v", v.Outcome)
	}
}

// What is said of a verdict goes by the band alone, whatever the chances.
func TestFactOfAVerdict(t *testing.T) {
	for value, want := range map[float64]fact.Code{
		10: "reading.within", 14: "reading.within", 20: "reading.above", 8: "reading.below",
	} {
		for _, std := range []float64{0, 6} {
			says := judged(t, Superheat, value, std, 14, 1).Fact()
			off, _ := says.Value("off")
			if d, ok := off.Of.(quantity.TemperatureDelta); says.Code != want || !ok ||
				says.Code != "reading.within" && d <= 0 {
				t.Errorf("%v °F against 14 °F: %v", value, says)
			}
		}
	}
	v, err := JudgeTogether(taken(t, Superheat, 0, 1), taken(t, Subcooling, 26, 1), nil)
	if says := v.Fact(); err != nil || says.Code != "reading.no-target" {
		t.Errorf("without a target: %v, %v", says, err)
	}
}

var methods = []Method{Superheat, Subcooling, Approach}

// More charge never raises the chance that it is low, and never lowers the
// chance that it is high.
func TestMoreChargeNeverReadsLower(t *testing.T) {
	rank := map[Outcome]int{Undercharged: 0, CannotTell: 1, InBand: 1, Overcharged: 2}
	rapid.Check(t, func(rt *rapid.T) {
		m := rapid.SampledFrom(methods).Draw(rt, "method")
		value := rapid.Float64Range(-10, 60).Draw(rt, "value")
		more := rapid.Float64Range(0, 20).Draw(rt, "effect of more charge")
		std := rapid.Float64Range(0, 5).Draw(rt, "std")
		target := rapid.Float64Range(5, 40).Draw(rt, "target")
		before := judged(t, m, value, std, target, 0.5)
		after := judged(t, m, value+m.direction()*more, std, target, 0.5)
		const eps = 1e-12
		if after.Low > before.Low+eps || after.High < before.High-eps ||
			rank[after.Outcome] < rank[before.Outcome] {
			rt.Fatalf(
				"%v: %v (%.3f/%.3f/%.3f) with more charge %v (%.3f/%.3f/%.3f)", m, before.Outcome,
				before.Low, before.InBand, before.High, after.Outcome, after.Low, after.InBand,
				after.High,
			)
		}
		if s := before.Low + before.InBand + before.High; math.Abs(s-1) > 1e-12 || before.Low < 0 ||
			before.InBand < 0 ||
			before.High < 0 {
			rt.Fatalf("chances sum to %v", s)
		}
	})
}

func TestMoreChargeNeverReadsLowerTogether(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		superheat := rapid.Float64Range(-5, 40).Draw(rt, "superheat")
		subcooling := rapid.Float64Range(-5, 40).Draw(rt, "subcooling")
		a := rapid.Float64Range(0, 15).Draw(rt, "fall of superheat")
		b := rapid.Float64Range(0, 15).Draw(rt, "rise of subcooling")
		std := rapid.Float64Range(0, 4).Draw(rt, "std")
		var target *Target
		if rapid.Bool().Draw(rt, "has target") {
			x := targetOf(t, Superheat, rapid.Float64Range(5, 40).Draw(rt, "target"), 1)
			target = &x
		}
		before, err1 := JudgeTogether(
			taken(t, Superheat, superheat, std), taken(t, Subcooling, subcooling, std), target,
		)
		after, err2 := JudgeTogether(
			taken(t, Superheat, superheat-a, std), taken(t, Subcooling, subcooling+b, std), target,
		)
		const eps = 1e-12
		if err1 != nil || err2 != nil || after.Low > before.Low+eps ||
			after.High < before.High-eps {
			rt.Fatalf(
				"%v %v: %.4f/%.4f/%.4f then %.4f/%.4f/%.4f", err1, err2, before.Low, before.InBand,
				before.High, after.Low, after.InBand, after.High,
			)
		}
	})
}

// A fixed restrictor above its target superheat never reads overcharged.
func TestAboveTargetNeverReadsOvercharged(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		target := rapid.Float64Range(5, 45).Draw(rt, "target")
		above := rapid.Float64Range(0, 30).Draw(rt, "above")
		std := rapid.Float64Range(0, 10).Draw(rt, "std")
		tt := targetOf(t, Superheat, target, rapid.Float64Range(0, 3).Draw(rt, "target std"))
		sh := taken(t, Superheat, target+above, std)
		v, err := Judge(sh, tt)
		if err != nil || v.Outcome == Overcharged {
			rt.Fatalf("%v above target: %v (%v)", above, v.Outcome, err)
		}
		v, err = JudgeTogether(
			sh, taken(t, Subcooling, rapid.Float64Range(-5, 40).Draw(rt, "subcooling"), std), &tt,
		)
		if err != nil || v.Outcome == Overcharged {
			rt.Fatalf("%v above target with subcooling: %v (%v)", above, v.Outcome, err)
		}
	})
}

// The chances are those of a normal deviation, by Monte Carlo (JCGM 101:2008).
func TestChancesByMonteCarlo(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	v := judged(t, Superheat, 17.5, 1.2, 14, 1.1)
	const n = 200000
	low := 0
	for range n {
		if (17.5+1.2*rng.NormFloat64())-(14+1.1*rng.NormFloat64()) > 5 {
			low++
		}
	}
	p := float64(low) / n
	if d := math.Abs(p - v.Low); d > 4*math.Sqrt(p*(1-p)/n) {
		t.Errorf("chance low %v, by Monte Carlo %v", v.Low, p)
	}
}

func TestBetter(t *testing.T) {
	target, err := SuperheatTarget(nil, f(62).PlusMinus(df(2)), f(77).PlusMinus(df(0.5)))
	if err != nil {
		t.Fatal(err)
	}
	v, err := Judge(taken(t, Superheat, 17.5, 0.8), target)
	if err != nil || v.Outcome != CannotTell {
		t.Fatalf("%v, %v", v.Outcome, err)
	}
	b, ok := v.Better()
	if !ok || b.Reading != fromReturnWetBulb || b.Need <= 0 || b.Need >= b.Now || b.AtEdge {
		t.Fatalf("%+v, %v", b, ok)
	}
	// With the wet bulb as good as asked for, the verdict falls.
	ratio := float64(b.Need / b.Now)
	target, _ = SuperheatTarget(nil, f(62).PlusMinus(df(2*ratio*0.999)), f(77).PlusMinus(df(0.5)))
	if v, _ := Judge(taken(t, Superheat, 17.5, 0.8), target); v.Outcome != InBand {
		t.Errorf("after bettering the wet bulb: %v, in band %v", v.Outcome, v.InBand)
	}
	if b, ok := judged(t, Superheat, 19.05, 1, 14, 1).Better(); !ok || !b.AtEdge {
		t.Errorf("at the edge of the band: %+v, %v", b, ok)
	}
	if _, ok := judged(t, Superheat, 14, 1, 14, 1).Better(); ok {
		t.Error("a verdict in band asks for a better reading")
	}
}

// A better reading never takes a verdict away, and what Better asks for is
// never worse than what there is.
func TestBetterIsBetter(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := rapid.SampledFrom(methods).Draw(rt, "method")
		v := judged(
			t,
			m,
			rapid.Float64Range(-5, 40).Draw(rt, "value"),
			rapid.Float64Range(0.1, 8).Draw(rt, "std"),
			rapid.Float64Range(5, 30).
				Draw(rt, "target"),
			rapid.Float64Range(0, 3).Draw(rt, "target std"),
		)
		b, ok := v.Better()
		if ok != (v.Outcome == CannotTell) {
			rt.Fatalf("%v asks for a better reading: %v", v.Outcome, ok)
		}
		if ok && (b.Need > b.Now || b.All > quantity.TemperatureDelta(v.Deviation.Std)) {
			rt.Fatalf("%+v", b)
		}
	})
}

func TestJudgeRefusesNonsense(t *testing.T) {
	good, target := taken(t, Superheat, 10, 1), targetOf(t, Superheat, 10, 1)
	var r *RangeError
	for name, c := range map[string]struct {
		m Measurement
		t Target
	}{
		"methods differ": {taken(t, Subcooling, 10, 1), target},
		"no tolerance":   {good, Target{Method: Superheat}},
		"not a number": {Measurement{Method: Superheat,
			Value: delta{Value: quantity.TemperatureDelta(math.NaN())}}, target},
		"negative std": {Measurement{Method: Superheat, Value: delta{Std: -1}},
			target},
		"std not a number": {Measurement{Method: Superheat,
			Value: delta{Std: math.NaN()}}, target},
		"no method": {Measurement{}, Target{}},
		"weigh-in":  {Measurement{Method: WeighIn}, Target{Method: WeighIn}},
		"far out": {Measurement{Method: Superheat,
			Value: delta{Value: 500}}, target},
		"counted from where nothing boils": {Measurement{Method: Approach,
			Saturation: temperature{Value: 1e300}}, Target{Method: Approach, Tolerance: 3}},
		"counted from no number": {Measurement{Method: Superheat,
			Saturation: temperature{Value: quantity.Temperature(math.NaN())}}, target},
		"counted with no doubt there is": {Measurement{Method: Superheat,
			Saturation: temperature{Value: 280, Std: math.Inf(1)}}, target},
		"target not a number": {good, Target{Method: Superheat, Tolerance: 3,
			Value: delta{Value: quantity.TemperatureDelta(math.NaN())}}},
	} {
		if v, err := Judge(c.m, c.t); !errors.As(err, &r) || v.Outcome != 0 {
			t.Errorf("%s: %v, %v", name, v.Outcome, err)
		}
	}
}

func TestJudgeDoesNotAllocate(t *testing.T) {
	m, target := taken(t, Superheat, 22, 1), targetOf(t, Superheat, 14, 1)
	if n := testing.AllocsPerRun(100, func() {
		if _, err := Judge(m, target); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkJudge(b *testing.B) {
	b.ReportAllocs()
	m, target := taken(b, Superheat, 22, 1), targetOf(b, Superheat, 14, 1)
	for b.Loop() {
		if _, err := Judge(m, target); err != nil {
			b.Fatal(err)
		}
	}
}
