package charge

import (
	"math"
	"time"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A PressureTest is a circuit under dry nitrogen, read twice.
type PressureTest struct {
	// Start and End are gauge pressures, StartGas and EndGas the temperatures
	// of the gas with them: of the pipe in the shade, not of the air in the sun.
	Start, End       quantity.Uncertain[quantity.GaugePressure]
	StartGas, EndGas quantity.Uncertain[quantity.Temperature]
	// Atmosphere is what the gauge counts from.
	Atmosphere quantity.Uncertain[quantity.Pressure]
	// Held is the time between the two readings; zero where not stated.
	Held time.Duration
	// Limit is the design pressure of the low side on the label, which the
	// test must not pass, neither at its start nor warmed up at its end; zero where
	// it is not known.
	Limit quantity.GaugePressure
}

// A TestOutcome is what a pressure test says.
type TestOutcome int

// The outcomes.
const (
	// TestOpen: the readings cannot tell a leak from the doubt of temperature
	// and gauge.
	TestOpen TestOutcome = iota + 1
	// Holds: no drop beyond what the readings explain.
	Holds
	// Leaks: the pressure fell by more than the temperature explains.
	Leaks
)

var testNames = []string{"not-judged", "open", "holds", "leaks"}

// String returns the outcome in a word.
func (o TestOutcome) String() string { return enum.Name(testNames, o) }

// MarshalText writes the outcome in a word.
func (o TestOutcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a pressure test", testNames, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *TestOutcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a pressure test", testNames, text, o)
}

// A Tightness is the judgement of a pressure test.
type Tightness struct {
	Outcome TestOutcome `json:"outcome"`
	// Expected is the gauge pressure that a tight circuit would show at the end.
	Expected quantity.GaugePressure `json:"expected"`
	// Drop is what is missing from it; below zero where there is more.
	Drop quantity.Uncertain[quantity.GaugePressure] `json:"drop"`
	// Detectable is the smallest drop that these readings would show.
	Detectable quantity.GaugePressure `json:"detectable"`
	// Short says that nothing is missing yet, and that the test was too short to hold.
	Short  bool        `json:"short,omitzero"`
	Source fact.Source `json:"source"`
}

// Judge corrects the pressure for the temperature of the gas, at constant
// volume, with the second virial coefficient of nitrogen, and compares. At 500
// psig a pipe 10 °F cooler shows about 10 psi less, and that is no leak.
//
// A test above the limit is a *RangeError, and so are values that cannot be.
func (p PressureTest) Judge() (Tightness, error) {
	if err := p.check(); err != nil {
		return Tightness{}, err
	}
	start := float64(p.Start.Value.Absolute(p.Atmosphere.Value))
	t1, t2 := float64(p.StartGas.Value), float64(p.EndGas.Value)
	expected := nitrogenAt(start, t1, t2)
	out := Tightness{
		Expected: quantity.Pressure(expected).Gauge(p.Atmosphere.Value),
		Source:   nitrogenSource,
	}
	// Sensitivities by differences (GUM 5.1.3, note 2). A gauge that is off by
	// the same amount both times nearly cancels, and is counted in full.
	const dT, dp = 0.01, 10.0
	perStart := (nitrogenAt(start+dp, t1, t2) - expected) / dp
	perT1 := (nitrogenAt(start, t1+dT, t2) - expected) / dT
	perT2 := (nitrogenAt(start, t1, t2+dT) - expected) / dT
	out.Drop.Value = out.Expected - p.End.Value
	out.Drop.Std = math.Sqrt(square(perStart*p.Start.Std) + square(p.End.Std) +
		square(perT1*p.StartGas.Std) + square(perT2*p.EndGas.Std) +
		square((perStart-1)*p.Atmosphere.Std))
	doubt := quantity.GaugePressure(coverage * out.Drop.Std)
	out.Detectable = doubt
	switch {
	case out.Drop.Value > doubt:
		out.Outcome = Leaks
	case p.Held > 0 && p.Held < testTime.value:
		out.Outcome, out.Short = TestOpen, true
	case out.Drop.Value < -doubt || float64(doubt) > testResolution.value*start:
		out.Outcome = TestOpen
	default:
		out.Outcome = Holds
	}
	return out, nil
}

// nitrogenAt returns the pressure in pascals of nitrogen at p and t1 after it
// has come to t2 in the same volume: p = ρRT(1 + Bρ).
func nitrogenAt(p, t1, t2 float64) float64 {
	const gasConstant = 8.314462618 // J/(mol K)
	b1, b2 := nitrogenVirial(t1), nitrogenVirial(t2)
	ideal := p / (gasConstant * t1)
	// The root of Bρ² + ρ − ideal = 0 that goes over into ideal for B → 0.
	density := 2 * ideal / (1 + math.Sqrt(max(0, 1+4*b1*ideal)))
	return density * gasConstant * t2 * (1 + b2*density)
}

// nitrogenVirial is the second virial coefficient of nitrogen in m³/mol by the
// correlation of Tsonopoulos (AIChE Journal 20, 263, 1974), with the critical
// point and acentric factor of nitrogen.
func nitrogenVirial(t float64) float64 {
	const (
		tc, pc, omega = 126.192, 3.3958e6, 0.0372
		scale         = 8.314462618 * tc / pc
	)
	tr := t / tc
	t2, t3 := tr*tr, tr*tr*tr
	t8 := t3 * t3 * t2
	f0 := 0.1445 - 0.330/tr - 0.1385/t2 - 0.0121/t3 - 0.000607/t8
	f1 := 0.0637 + 0.331/t2 - 0.423/t3 - 0.008/t8
	return scale * (f0 + omega*f1)
}

func (p PressureTest) check() error {
	const highest = quantity.GaugePressure(6e6)
	const coldest, hottest = quantity.Temperature(230), quantity.Temperature(350)
	for _, g := range [2]struct {
		name  string
		value gauge
	}{{"pressure at the start", p.Start}, {"pressure at the end", p.End}} {
		if err := checkGauge(g.name, g.value, p.Atmosphere); err != nil {
			return err
		}
		if !(g.value.Value >= 0 && g.value.Value <= highest) {
			return &RangeError{
				Quantity: g.name,
				Value:    g.value.Value,
				Min:      quantity.GaugePressure(0),
				Max:      highest,
				Advice:   "read the gauge on the circuit, not on the nitrogen cylinder",
			}
		}
	}
	for _, t := range [2]struct {
		name  string
		value temperature
	}{{"gas temperature at the start", p.StartGas}, {"gas temperature at the end", p.EndGas}} {
		if !(t.value.Value >= coldest && t.value.Value <= hottest) {
			return &RangeError{
				Quantity: t.name,
				Value:    t.value.Value,
				Min:      coldest,
				Max:      hottest,
				Advice:   "clamp the pipe in the shade",
			}
		}
		if err := checkStd(t.name, t.value.Std); err != nil {
			return err
		}
	}
	if !(p.Limit >= 0 && p.Limit <= highest) {
		return &RangeError{
			Quantity: "limit of the test pressure",
			Value:    p.Limit,
			Min:      quantity.GaugePressure(0),
			Max:      highest,
			Advice: "it is the low-side design pressure on the label; " +
				"leave it zero where it cannot be read",
		}
	}
	if most := max(p.Start.Value, p.End.Value); p.Limit > 0 && most > p.Limit {
		return &RangeError{
			Quantity: "test pressure",
			Value:    most,
			Max:      p.Limit,
			Advice: "the label's low-side design pressure is the limit: let nitrogen off now, " +
				"standing clear",
		}
	}
	return nil
}

// Fact is the result for a record: "result.pressure-holds", with what the gauge showed, what
// a tight circuit would have shown, and the smallest drop that would have been seen.
func (t Tightness) Fact() fact.Fact {
	shown := fact.Amount("shown", t.Expected-t.Drop.Value)
	expected := fact.Amount("expected", t.Expected)
	detectable := fact.Amount("detectable", t.Detectable)
	switch {
	case t.Outcome == Leaks:
		return fact.New("result.pressure-leaks", shown, expected)
	case t.Outcome == Holds:
		return fact.New("result.pressure-holds", shown, expected, detectable)
	case t.Short:
		return fact.New("result.pressure-short", fact.Of("time", testTime.value))
	case t.Drop.Value < 0:
		return fact.New("result.pressure-above", shown, expected)
	}
	return fact.New("result.pressure-open", detectable)
}
