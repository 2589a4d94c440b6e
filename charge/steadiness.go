package charge

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
)

// A Sample is a value at a moment, counted from any one start.
type Sample[T quantity.Quantity] struct {
	At    time.Duration
	Value T
}

type sampleJSON[T quantity.Quantity] struct {
	At    span.Span `json:"at"`
	Value T         `json:"value"`
}

// MarshalJSON writes {"at": "1m30s", "value": "9.5 K"}.
func (s Sample[T]) MarshalJSON() ([]byte, error) {
	return json.Marshal(sampleJSON[T]{span.Span(s.At), s.Value})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (s *Sample[T]) UnmarshalJSON(text []byte) error {
	var j sampleJSON[T]
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*s = Sample[T]{time.Duration(j.At), j.Value}
	return nil
}

// A Course is what a log of readings says about whether a system has settled.
type Course int

// The states.
const (
	// TooShort: too few readings, or too noisy, to say.
	TooShort Course = iota + 1
	// Drifting: still moving, and where to is not to be seen yet.
	Drifting
	// Settling: on its way to a value that can be seen.
	Settling
	// Hunting: swinging about a settled mean.
	Hunting
	// Settled: steady within what was asked for.
	Settled
)

var courseNames = []string{"not-judged", "too-short", "drifting", "settling", "hunting", "settled"}

// String returns the course in words.
func (s Course) String() string { return enum.Name(courseNames, s) }

// MarshalText writes the course in words.
func (s Course) MarshalText() ([]byte, error) {
	return enum.Text("course of a value", courseNames, s)
}

// UnmarshalText reads what MarshalText writes.
func (s *Course) UnmarshalText(text []byte) error {
	return enum.Parse("course of a value", courseNames, text, s)
}

// Steadiness is what a log says: whether the value stands still, at what, and
// how long it will take.
type Steadiness[T quantity.Quantity] struct {
	State Course
	// Value is what was read, with the standard uncertainty that the scatter of the
	// log leaves: the mean over the stretch from From to To. That is the last
	// stretch in which the value stood still, of a hunting one that in which its
	// mean did. While Settling, Drifting or TooShort it is the mean of the last
	// half minute, of two readings at least, and no settled value.
	Value quantity.Uncertain[T]
	// From and To are the times of the first and the last reading of the stretch.
	From, To time.Duration
	// Low and High hold 95 % of the readings of the stretch, without freaks: the
	// band of a fluctuating value.
	Low, High T
	// Estimate is where a value that is Settling seems to go, with the uncertainty
	// of the curve: to tell somebody how long to wait, and nothing to judge by. Zero
	// in every other state.
	Estimate quantity.Uncertain[T]
	// TimeConstant is that of the approach: 63 % of the way in one of it. Zero
	// where the log shows no approach.
	TimeConstant time.Duration
	// Wait is how long it may still take until the value stands still. It is zero where readings
	// that are TooShort differ by no more than Within, or the last five minutes of them do.
	Wait time.Duration
	// Period and Swing (lowest to highest) of the hunting; zero without any.
	Period time.Duration
	Swing  T
	// Noise is the standard deviation about a line through the stretch, or about the
	// curve of what is Settling.
	Noise T
	// Spikes is the number of readings left out as freaks, Gaps that of holes
	// in the log much longer than its usual step. Readings of one slot of ten
	// seconds count as one.
	Spikes, Gaps int

	// Within is what SteadinessOf was asked for.
	Within T
}

// steadinessJSON is the JSON form: lower camel case, times as Go writes them.
type steadinessJSON[T quantity.Quantity] struct {
	State        Course                `json:"state"`
	Value        quantity.Uncertain[T] `json:"value"`
	From         span.Span             `json:"from,omitzero"`
	To           span.Span             `json:"to,omitzero"`
	Low          T                     `json:"low"`
	High         T                     `json:"high"`
	Estimate     quantity.Uncertain[T] `json:"estimate,omitzero"`
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
func (s Steadiness[T]) MarshalJSON() ([]byte, error) { return json.Marshal(s.JSONForm()) }

// JSONForm returns what MarshalJSON writes, for whoever writes its quantities in other units.
func (s Steadiness[T]) JSONForm() any {
	return steadinessJSON[T]{
		s.State, s.Value, toSecond(s.From), toSecond(s.To), s.Low, s.High, s.Estimate,
		toSecond(s.TimeConstant), toSecond(s.Wait), toSecond(s.Period), s.Swing, s.Noise, s.Spikes,
		s.Gaps, s.Within,
	}
}

// UnmarshalJSON reads what MarshalJSON writes.
func (s *Steadiness[T]) UnmarshalJSON(text []byte) error {
	var j steadinessJSON[T]
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*s = Steadiness[T]{
		State: j.State, Value: j.Value, From: time.Duration(j.From), To: time.Duration(j.To),
		Low: j.Low, High: j.High, Estimate: j.Estimate,
		TimeConstant: time.Duration(j.TimeConstant), Wait: time.Duration(j.Wait),
		Period: time.Duration(j.Period), Swing: j.Swing, Noise: j.Noise,
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
// what SteadinessOf was asked for, and at least the usual ten minutes.
func (s Steadiness[T]) WaitAfter(change T) time.Duration {
	wait := waitAfterMove.value
	if left := math.Abs(float64(change)); s.TimeConstant > 0 && left > float64(s.Within) &&
		s.Within > 0 {
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
			return nil, &RangeError{
				Quantity: fmt.Sprintf("time of %s %d", what, i+1),
				Value:    s.At,
				Min:      log[i-1].At,
				Advice:   "put the readings in order of time, one at a time",
			}
		}
		since := s.At - log[0].At
		if since < 0 || since > longestSpan {
			return nil, &RangeError{
				Quantity: fmt.Sprintf("time of %s %d", what, i+1),
				Value:    s.At,
				Max:      log[0].At + longestSpan,
				Advice:   "count all times from one moment of the visit",
			}
		}
		t[i] = since.Seconds()
	}
	return t, nil
}

// SteadinessOf judges a log of readings taken since the last change to the system, by
// what it has held last. Times may be irregular and have gaps, and freak readings
// are left out.
//
// A value stands still when it has moved by no more than within in five minutes
// and the log is long enough, and quiet enough, to say so; it is then the mean of
// the longest stretch up to the last reading, of at most twenty minutes, that
// agrees with these five. A value hunts when it goes up and down by three times
// within and more, two cycles at least, and still does: regularly, as the
// correlation of readings half a cycle apart says, or so far that no instrument
// does. What moves is judged by nothing; where it goes is an estimate, by a curve
// a + b·exp(−t/τ) of least squares, and Value stays what was read last. The
// figures are common practice, no source, and tried out on simulated logs.
//
// SteadinessOf is a Watch over the log at once.
//
// The error is a *RangeError: times not in order or over a year apart, a value
// that is not a number, within not above zero, or no readings.
func SteadinessOf[T quantity.Quantity](log []Sample[T], within T) (Steadiness[T], error) {
	if err := checkWithin(within); err != nil {
		return Steadiness[T]{}, err
	}
	var kept [thin.Kept]Sample[T]
	w := Watch[T]{within: within, kept: kept[:0]}
	if len(log) == 0 || len(log) > longestLog {
		return Steadiness[T]{}, &RangeError{
			Quantity: "number of readings in the log",
			Value:    quantity.Number(len(log)),
			Min:      quantity.Number(1),
			Max:      quantity.Number(longestLog),
			Advice:   "log the value since the last change",
		}
	}
	for i := range log {
		if err := w.Take(log[i]); err != nil {
			var wrong *RangeError
			if errors.As(err, &wrong) {
				wrong.Quantity = fmt.Sprintf("%s %d", wrong.Quantity, i+1)
			}
			return Steadiness[T]{}, err
		}
	}
	return w.Steadiness(), nil
}

// capDuration makes a duration of seconds, at most a week.
func capDuration(seconds float64) time.Duration {
	const week = 7 * 24 * 3600.0
	if !(seconds > 0) {
		return 0
	}
	return time.Duration(min(seconds, week) * float64(time.Second))
}
