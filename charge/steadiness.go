package charge

import (
	"encoding/json"
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/internal/enum"
	"github.com/satline/satline/internal/span"
	"github.com/satline/satline/quantity"
)

// A Sample is a value at a moment, counted from any one start.
type Sample[T quantity.Quantity] struct {
	At    time.Duration
	Value T
}

// A State is what a log of readings says about whether a system has settled.
type State int

// The states.
const (
	// TooShort: too few readings, or too noisy, to say.
	TooShort State = iota + 1
	// Drifting: still moving, and where to is not to be seen yet.
	Drifting
	// Settling: on its way to a value that can be seen.
	Settling
	// Hunting: swinging about a settled mean.
	Hunting
	// Settled: steady within what was asked for.
	Settled
)

var stateNames = []string{"not judged", "too short", "drifting", "settling", "hunting", "settled"}

// String returns the state in words.
func (s State) String() string { return enum.Name(stateNames, s) }

// MarshalText writes the state in words.
func (s State) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (s *State) UnmarshalText(text []byte) error {
	return enum.Parse("charge: state", stateNames, text, s)
}

// Steadiness is what a log says: whether the value has settled, at what, and
// how long it will take.
type Steadiness[T quantity.Quantity] struct {
	State State
	// Value is where it settles, with the standard uncertainty that the
	// scatter of the log leaves: the mean of a settled or hunting value, the
	// end of the curve of a settling one. While Drifting or TooShort it is the
	// mean of the latest readings and their spread, and no settled value.
	Value quantity.Uncertain[T]
	// Low and High hold 95 % of the readings about the settled value, without
	// spikes: the band of a fluctuating value.
	Low, High T
	// TimeConstant is that of the approach: 63 % of the way in one of it. Zero
	// where the log shows no approach.
	TimeConstant time.Duration
	// Wait is how long it still takes to come within what was asked for.
	Wait time.Duration
	// Period and Swing (lowest to highest) of the hunting; zero without any.
	Period time.Duration
	Swing  T
	// Noise is the standard deviation of single readings about the fit.
	Noise T
	// Spikes is the number of readings left out as freaks, Gaps that of holes
	// in the log much longer than its usual step.
	Spikes, Gaps int

	// Within is what Settle was asked for.
	Within T
}

// steadinessJSON is the JSON form: lower camel case, times as Go writes them.
type steadinessJSON[T quantity.Quantity] struct {
	State        State                 `json:"state"`
	Value        quantity.Uncertain[T] `json:"value"`
	Low          T                     `json:"low"`
	High         T                     `json:"high"`
	TimeConstant span.Span             `json:"timeConstant,omitzero"`
	Wait         span.Span             `json:"wait,omitzero"`
	Period       span.Span             `json:"period,omitzero"`
	Swing        T                     `json:"swing,omitzero"`
	Noise        T                     `json:"noise,omitzero"`
	Spikes       int                   `json:"spikes,omitzero"`
	Gaps         int                   `json:"gaps,omitzero"`
	Within       T                     `json:"within"`
}

// MarshalJSON writes the fields in lower camel case, and times to the second as
// "12m30s". The names are stable.
func (s Steadiness[T]) MarshalJSON() ([]byte, error) {
	return json.Marshal(steadinessJSON[T]{
		s.State, s.Value, s.Low, s.High, toSecond(s.TimeConstant), toSecond(s.Wait), toSecond(s.Period),
		s.Swing, s.Noise, s.Spikes, s.Gaps, s.Within,
	})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (s *Steadiness[T]) UnmarshalJSON(text []byte) error {
	var j steadinessJSON[T]
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*s = Steadiness[T]{
		State: j.State, Value: j.Value, Low: j.Low, High: j.High, TimeConstant: time.Duration(j.TimeConstant),
		Wait: time.Duration(j.Wait), Period: time.Duration(j.Period), Swing: j.Swing, Noise: j.Noise,
		Spikes: j.Spikes, Gaps: j.Gaps, Within: j.Within,
	}
	return nil
}

// toSecond is a time as JSON has it.
func toSecond(d time.Duration) span.Span { return span.Span(d.Round(time.Second)) }

// Steady reports whether Value may be used as a settled value: a settled one, or
// the mean of a hunting one.
func (s Steadiness[T]) Steady() bool { return s.State == Settled || s.State == Hunting }

// WaitAfter returns how long to wait after a move that will change the value by
// about change before reading it: until what is left of the change is within
// what Settle was asked for, and at least the usual ten minutes.
func (s Steadiness[T]) WaitAfter(change T) time.Duration {
	wait := waitAfterMove.value
	if left := math.Abs(float64(change)); s.TimeConstant > 0 && left > float64(s.Within) && s.Within > 0 {
		wait = max(wait, capDuration(s.TimeConstant.Seconds()*math.Log(left/float64(s.Within))))
	}
	return wait
}

// longestLog bounds the work on a log; at one reading a second it is over a day.
const longestLog = 100_000

// longestSpan is far beyond any visit, and short enough that no difference of
// times overflows.
const longestSpan = 366 * 24 * time.Hour

// secondsOf returns the times of readings in seconds since the first.
func secondsOf[T quantity.Quantity](log []Sample[T], what string) ([]float64, error) {
	t := make([]float64, len(log))
	for i, s := range log {
		if i > 0 && s.At <= log[i-1].At {
			return nil, &RangeError{Quantity: fmt.Sprintf("time of %s %d", what, i+1), Value: s.At, Min: log[i-1].At, Advice: "put the readings in order of time, one at a time"}
		}
		since := s.At - log[0].At
		if since < 0 || since > longestSpan {
			return nil, &RangeError{Quantity: fmt.Sprintf("time of %s %d", what, i+1), Value: s.At, Max: log[0].At + longestSpan, Advice: "count all times from one moment of the visit"}
		}
		t[i] = since.Seconds()
	}
	return t, nil
}

// Settle judges a log of readings taken since the last change to the system.
// Times may be irregular and have gaps, and freak readings are left out. A value
// counts as settled when what is left of its approach is less than within.
//
// The curve is a + b·exp(−t/τ), with a sine where the residuals show one
// (Lomb-Scargle periodogram), fitted by least squares; the uncertainty of the
// settled value allows for the serial correlation of the readings.
//
// The error is a *RangeError: times not in order or over a year apart, a value
// that is not a number, within not above zero, or no readings.
func Settle[T quantity.Quantity](log []Sample[T], within T) (Steadiness[T], error) {
	if !(within > 0) || math.IsInf(float64(within), 0) {
		return Steadiness[T]{}, &RangeError{Quantity: "nearness that counts as settled", Value: within, Advice: "say how near is near enough, above zero"}
	}
	if len(log) == 0 || len(log) > longestLog {
		return Steadiness[T]{}, &RangeError{Quantity: "number of readings in the log", Value: quantity.Number(len(log)), Min: quantity.Number(1), Max: quantity.Number(longestLog), Advice: "log the value since the last change"}
	}
	t, err := secondsOf(log, "log reading")
	if err != nil {
		return Steadiness[T]{}, err
	}
	y := make([]float64, len(log))
	for i, s := range log {
		y[i] = float64(s.Value)
		if math.IsNaN(y[i]) || math.IsInf(y[i], 0) {
			return Steadiness[T]{}, &RangeError{Quantity: fmt.Sprintf("log reading %d", i+1), Value: s.Value, Advice: "leave out readings that are not numbers"}
		}
	}
	return steadinessOf(settle(t, y, float64(within)), within), nil
}

func steadinessOf[T quantity.Quantity](c course, within T) Steadiness[T] {
	return Steadiness[T]{
		State: c.state, Value: quantity.Uncertain[T]{Value: T(c.value), Std: c.std},
		Low: T(c.low), High: T(c.high), Swing: T(c.swing), Noise: T(c.noise),
		TimeConstant: capDuration(c.tau), Wait: capDuration(c.wait), Period: capDuration(c.period),
		Spikes: c.spikes, Gaps: c.gaps, Within: within,
	}
}

// capDuration makes a duration of seconds, at most a week.
func capDuration(seconds float64) time.Duration {
	const week = 7 * 24 * 3600.0
	if !(seconds > 0) {
		return 0
	}
	return time.Duration(min(seconds, week) * float64(time.Second))
}
