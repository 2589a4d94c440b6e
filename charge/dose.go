package charge

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A Moved is what a machine showed after a net mass had been moved.
type Moved struct {
	// Net is the refrigerant added less that recovered since the first reading.
	Net quantity.Mass `json:"net"`
	// Value is the settled superheat, subcooling or approach, with its
	// standard uncertainty.
	Value quantity.Uncertain[quantity.TemperatureDelta] `json:"value"`
}

// Dosing is what is known when the next dose is to be decided.
type Dosing struct {
	Target Target
	// History is in order of time, the first entry before anything was moved.
	History []Moved
	// LabelCharge is the whole charge by the label; zero where it is not known,
	// and then NominalCapacity stands in for it.
	LabelCharge     quantity.Mass
	NominalCapacity quantity.Power
	// Cylinder is what is left to add, Tank what the recovery tank may still
	// take; nil where not stated.
	Cylinder, Tank *quantity.Mass
	// Most is what else is believed of the charge: no more than this is moved. Zero is no limit.
	Most quantity.Mass
	// Obstacles are what stands in the way of the target's method; those of
	// another method do not count. One that forbids it halts the dosing, and a
	// valve that floods halts adding.
	Obstacles []Obstacle
	// Fluid halts the dosing where refrigerant.ComfortCooling refuses it; nil where it is
	// not known.
	Fluid *refrigerant.Refrigerant
	// Settling is how the last move settled, for the time to wait after the
	// next; zero where there is no log.
	Settling Steadiness[quantity.TemperatureDelta]
}

// An Action is what to do with the charge next.
type Action int

// The actions.
const (
	// Leave: the charge is right; stop here.
	Leave Action = iota + 1
	// Add refrigerant.
	Add
	// Recover refrigerant into a recovery tank.
	Recover
	// Halt: move nothing more; the reason says why and what to do instead.
	Halt
)

var actionNames = []string{"not-decided", "leave", "add", "recover", "halt"}

// String returns the action in a word.
func (a Action) String() string { return enum.Name(actionNames, a) }

// MarshalText writes the action in a word.
func (a Action) MarshalText() ([]byte, error) {
	return enum.Text("action of a dose", actionNames, a)
}

// UnmarshalText reads what MarshalText writes.
func (a *Action) UnmarshalText(text []byte) error {
	return enum.Parse("action of a dose", actionNames, text, a)
}

// A Dose is the next move.
type Dose struct {
	Action Action `json:"action"`
	// Mass to add or recover now, never more than may be wanted; zero for Leave and Halt.
	Mass quantity.Mass `json:"mass,omitzero"`
	// Reason is a stable code: "towards-target" for a move, "by-belief" for one that is sized
	// by what is believed of the charge and not by a target, otherwise why there is none.
	Reason string `json:"reason"`
	// LimitedBy names what cut the dose: "overshoot", "step", "most", "cylinder", "tank"; empty
	// where nothing did.
	LimitedBy string `json:"limitedBy,omitzero"`
	// Verdict is that of the last reading.
	Verdict Verdict `json:"verdict"`
	// After is the value to expect once it has settled.
	After quantity.Uncertain[quantity.TemperatureDelta] `json:"after,omitzero"`
	// InBand and PastBand are the probabilities that the dose brings the value
	// into the band, and past its far edge.
	InBand   float64 `json:"inBand,omitzero"`
	PastBand float64 `json:"pastBand,omitzero"`
	// PerOunce is the change of the value per ounce added, as learned so far.
	PerOunce quantity.Uncertain[quantity.TemperatureDelta] `json:"perOunce,omitzero"`
	// Wait is how long to wait before the next reading counts.
	Wait time.Duration `json:"-"` // in JSON as "wait", "12m30s"
}

// Fact is the dose for a plan: "step.add" or "step.recover" with its mass, else "halt." and
// the reason.
func (d Dose) Fact() fact.Fact {
	switch d.Action {
	case Add:
		return fact.New("step.add", fact.Amount("mass", d.Mass))
	case Recover:
		return fact.New("step.recover", fact.Amount("mass", d.Mass))
	}
	return fact.New(fact.Code("halt." + d.Reason))
}

type doseFields Dose

type doseJSON struct {
	doseFields
	Wait span.Span `json:"wait"`
}

// MarshalJSON writes the fields by their tags, and the time to wait as "12m30s".
func (d Dose) MarshalJSON() ([]byte, error) { return json.Marshal(d.JSONForm()) }

// JSONForm returns what MarshalJSON writes, for whoever writes its quantities in other units.
func (d Dose) JSONForm() any { return doseJSON{doseFields(d), toSecond(d.Wait)} }

// UnmarshalJSON reads what MarshalJSON writes.
func (d *Dose) UnmarshalJSON(text []byte) error {
	var j doseJSON
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*d = Dose(j.doseFields)
	d.Wait = time.Duration(j.Wait)
	return nil
}

// Next decides the next move from what the machine has shown so far.
//
// How much a machine answers to an ounce is not known beforehand. Next starts
// from a general figure with a wide doubt, sharpens it by every reading (Bayes'
// theorem on a grid of gain, curvature and starting point), and chooses the
// dose that is expected to reach the target, or less: so much that the chance
// of passing the far edge of the band stays below 5 %. The superheat of a fixed
// restrictor falls faster the nearer it is to flooding, and a flooded one hides
// how far it is flooded; the doubt about both counts.
//
// A system above its target superheat is never told to recover, nor one below
// to add. The error is a *RangeError for values that cannot be.
func (d Dosing) Next() (Dose, error) {
	if err := d.check(); err != nil {
		return Dose{}, err
	}
	last := d.History[len(d.History)-1]
	measured, err := NewMeasurement(d.Target.Method, last.Value)
	if err != nil {
		return Dose{}, err
	}
	verdict, err := Judge(measured, d.Target)
	if err != nil {
		return Dose{}, err
	}
	dose := Dose{Verdict: verdict, Wait: waitAfterMove.value}
	whole, wholeDoubt := d.wholeCharge()
	b := newBelief(d, float64(whole), wholeDoubt)
	gain, gainStd := b.gain()
	perOunce := -d.Target.Method.falls() * float64(quantity.Ounces(1))
	dose.PerOunce = delta{
		Value: quantity.TemperatureDelta(gain * perOunce),
		Std:   math.Abs(gainStd * perOunce),
	}

	if dose.Action, dose.Reason = d.halt(verdict, whole); dose.Action != 0 {
		return dose, nil
	}
	// In the belief everything falls with charge: above the target, add.
	target := d.Target.Method.falls() * float64(d.Target.Value.Value)
	tolerance := float64(d.Target.Tolerance)
	sign := 1.0
	dose.Action = Add
	if d.Target.Method.falls()*float64(verdict.Deviation.Value) < 0 {
		sign, dose.Action = -1, Recover
	}
	if dose.Action == Add &&
		slices.ContainsFunc(
			d.Obstacles, func(o Obstacle) bool { return o.Code == valveFlooding.code },
		) {
		dose.Action, dose.Reason = Halt, "valve-flooding"
		return dose, nil
	}
	// Of a charge that is not known, the machine may hold less.
	most, cut := largestStep.value*float64(whole)*math.Exp(-wholeDoubt), "step"
	if d.Most > 0 && float64(d.Most) < most {
		most, cut = float64(d.Most), "most"
	}
	limit, name := d.Cylinder, "cylinder"
	if dose.Action == Recover {
		limit, name = d.Tank, "tank"
	}
	if limit != nil && float64(*limit) < most {
		most, cut = float64(*limit), name
	}
	past := func(m, edge float64, below func(float64) float64) float64 {
		return b.past(sign*m, sign, target-sign*edge, d.Target.Value.Std, below)
	}
	wanted := largest(most, func(m float64) float64 { return past(m, 0, normal.Near) - 0.5 })
	mass := largest(wanted, func(m float64) float64 {
		return past(m, tolerance, normal.Near) - overshootRisk.value
	})
	switch {
	case mass >= most:
		dose.LimitedBy = cut
	case mass < wanted:
		dose.LimitedBy = "overshoot"
	}
	step := float64(smallestDose.value)
	mass = math.Floor(mass/step+1e-9) * step
	if mass < step {
		dose.Action = Halt
		switch dose.LimitedBy {
		case "cylinder":
			dose.Reason = "cylinder-empty"
		case "tank":
			dose.Reason = "tank-full"
		default:
			dose.Reason, dose.LimitedBy = "too-small", ""
		}
		return dose, nil
	}
	dose.Mass, dose.Reason = quantity.Mass(mass), "towards-target"
	mean, std := b.expect(sign*mass, d.Target.Method)
	dose.After = delta{Value: quantity.TemperatureDelta(mean), Std: std}
	dose.PastBand = past(mass, tolerance, normal.Below)
	dose.InBand = max(0, past(mass, -tolerance, normal.Below)-dose.PastBand)
	dose.Wait = d.Settling.WaitAfter(dose.After.Value - last.Value.Value)
	return dose, nil
}

// falls is +1 for a value that falls with added charge, −1 for one that rises.
func (m Method) falls() float64 { return -m.direction() }

// largest returns the largest m in [0, most] at which over, which rises with m, is not above
// zero: 0 where it is there already.
func largest(most float64, over func(float64) float64) float64 {
	atMost := over(most)
	if atMost <= 0 {
		return most
	}
	atNone := over(0)
	if !(atNone <= 0) {
		return 0
	}
	within := 1e-4 * float64(quantity.Ounces(1))
	return root.Find(over, 0, most, atNone, atMost, within, 0)
}

// wholeCharge is the charge that percentages count from, with the standard
// deviation of its logarithm.
func (d Dosing) wholeCharge() (quantity.Mass, float64) {
	if d.LabelCharge > 0 {
		return d.LabelCharge, labelChargeDoubt.value
	}
	return EstimateCharge(d.NominalCapacity), math.Log(chargePerTonFactor.value)
}

// EstimateCharge returns about what a comfort cooling machine of a nominal capacity
// holds, 2.8 lb per ton (common practice, no source; 2 to 4 lb is usual). It stands
// in where the label cannot be read, and is never a charge to weigh in. Of a capacity
// that is no number it is 0.
func EstimateCharge(capacity quantity.Power) quantity.Mass {
	return finite.OrZero(quantity.Mass(capacity.Tons()) * chargePerTon.value)
}

// halt finds a reason to move nothing; the zero Action where there is none.
func (d Dosing) halt(v Verdict, whole quantity.Mass) (Action, string) {
	var why *refrigerant.UnsuitableError
	if d.Fluid != nil && errors.As(d.Fluid.ComfortCooling(), &why) {
		return Halt, "unsuitable-fluid"
	}
	if slices.ContainsFunc(
		d.Obstacles, func(o Obstacle) bool { return o.Forbids && o.Method == d.Target.Method },
	) {
		return Halt, "forbidden"
	}
	if v.Outcome == InBand {
		return Leave, "in-band"
	}
	n := len(d.History)
	last := d.History[n-1]
	away := math.Abs(float64(v.Deviation.Value)) > float64(d.Target.Tolerance)
	if v.Outcome == CannotTell && !away {
		return Leave, "cannot-tell"
	}
	if n > 1 {
		if reason := d.answers(whole); reason != "" {
			return Halt, reason
		}
		most := mostMoved.value
		if last.Net < 0 && !atFloor(last) {
			most = mostRecovered.value
		}
		if math.Abs(float64(last.Net)) > most*float64(whole) {
			return Halt, "moved-much"
		}
		if n-1 >= int(mostMoves.value) {
			return Halt, "many-moves"
		}
	}
	return 0, ""
}

// answers says what is wrong with how the machine answered to all that was
// moved so far: a value that goes the wrong way, or hardly moves where much was
// to be expected. A flooded or starved reading, held at zero, is no answer.
func (d Dosing) answers(whole quantity.Mass) string {
	first, last := d.History[0], d.History[len(d.History)-1]
	if atFloor(first) || atFloor(last) {
		return ""
	}
	moved := float64(last.Net - first.Net)
	change := float64(
		last.Value.Value-first.Value.Value,
	) * d.Target.Method.direction() * math.Copysign(1, moved)
	doubt := coverage * math.Hypot(first.Value.Std, last.Value.Std)
	expected := float64(gainOf(d.Target.Method)) * 100 * math.Abs(moved) / float64(whole)
	switch {
	case expected > doubt && change < -doubt:
		return "wrong-way"
	case expected > 2*doubt && change+doubt < noResponse.value*expected:
		return "no-response"
	}
	return ""
}

// atFloor says that a value is held at zero: a flooded superheat, a subcooling without liquid.
func atFloor(h Moved) bool {
	return (Measurement{Method: Superheat, Value: h.Value}).LiquidReturning()
}

func gainOf(m Method) quantity.TemperatureDelta {
	switch m {
	case Subcooling:
		return subcoolingGain.value
	case Approach:
		return approachGain.value
	}
	return superheatGain.value
}

func (d Dosing) check() error {
	if err := checkMethod(d.Target.Method); err != nil {
		return err
	}
	if len(d.History) == 0 || len(d.History) > 100 {
		return &RangeError{
			Quantity: "number of settled readings",
			Value:    quantity.Number(len(d.History)),
			Min:      quantity.Number(1),
			Max:      quantity.Number(100),
			Advice:   "give the settled value before the first move, and after each",
		}
	}
	const most = quantity.Mass(1000)
	for _, c := range []struct {
		name  string
		value quantity.Mass
	}{
		{"label charge", d.LabelCharge}, {"refrigerant left in the cylinder", deref(d.Cylinder)},
		{"room in the recovery tank", deref(d.Tank)}, {"most to move", d.Most},
	} {
		if !(c.value >= 0 && c.value <= most) {
			return &RangeError{
				Quantity: c.name,
				Value:    c.value,
				Min:      quantity.Mass(0),
				Max:      most,
				Advice:   "give a mass, or leave it out",
			}
		}
	}
	const leastCharge = quantity.Mass(0.01)
	if d.LabelCharge != 0 && d.LabelCharge < leastCharge {
		return &RangeError{
			Quantity: "label charge",
			Value:    d.LabelCharge,
			Min:      leastCharge,
			Max:      most,
			Advice:   "give the whole charge of the label, or leave it out",
		}
	}
	const smallestMachine, largestMachine = quantity.Power(100), quantity.Power(2e6)
	if d.LabelCharge == 0 &&
		!(d.NominalCapacity >= smallestMachine && d.NominalCapacity <= largestMachine) {
		return &RangeError{
			Quantity: "nominal capacity",
			Value:    d.NominalCapacity,
			Min:      smallestMachine,
			Max:      largestMachine,
			Advice: "a dose is a part of the whole charge: " +
				"give the label charge or the nominal capacity",
		}
	}
	for i, h := range d.History {
		if !(h.Net >= -most && h.Net <= most) {
			return &RangeError{
				Quantity: fmt.Sprintf("net mass of settled reading %d", i+1),
				Value:    h.Net,
				Min:      -most,
				Max:      most,
				Advice:   "count what was added less what was recovered",
			}
		}
		if err := (Measurement{Method: d.Target.Method, Value: h.Value}).check(); err != nil {
			return err
		}
	}
	return nil
}

func deref(m *quantity.Mass) quantity.Mass {
	if m == nil {
		return 0
	}
	return *m
}
