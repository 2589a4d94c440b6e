package charge

import (
	"math"
	"time"

	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
)

// A Watch judges a value while its log is taken. Work on a reading and memory stay
// the same however long the log: readings of one slot of ten seconds become their
// mean, without the lowest and the highest where there are three or more, and the
// last 180 slots are kept. That is half an hour of gauges that send every second and
// three hours of somebody who writes every minute; a steady stretch is looked for
// in twenty minutes, and a valve swings over 45 s and more.
//
// What a Watch says is what SteadinessOf says of the same readings, and of those that
// Log returns. A Watch is not safe for use by several goroutines at once.
type Watch[T quantity.Quantity] struct {
	within T
	kept   []Sample[T] // a ring once it is full
	next   int         // where the next slot goes
	open   thin.Mean   // the slot that readings still go into
	clock  thin.Clock
	slot   int64         // that is open
	first  time.Duration // of the log
	last   time.Duration // reading taken
	taken  bool
}

// NewWatch returns a Watch for a value that counts as settled when it moves by no
// more than within in five minutes: 1 °F of superheat or subcooling. The error is
// a *RangeError: within not above zero.
func NewWatch[T quantity.Quantity](within T) (*Watch[T], error) {
	if err := checkWithin(within); err != nil {
		return nil, err
	}
	return &Watch[T]{within: within, kept: make([]Sample[T], 0, thin.Kept)}, nil
}

func checkWithin[T quantity.Quantity](within T) error {
	if !(within > 0) || float64(within) > largestValue {
		return &RangeError{
			Quantity: "nearness that counts as settled", Value: within,
			Advice: "say how near is near enough, above zero",
		}
	}
	return nil
}

// largestValue is far beyond any reading, and its square is a number.
const largestValue = 1e100

// Take takes a reading later than the one before. One that cannot be is refused
// with a *RangeError and leaves the Watch as it was: of the same time or an
// earlier one, over a year after the first, or no number.
func (w *Watch[T]) Take(s Sample[T]) error {
	if !(math.Abs(float64(s.Value)) <= largestValue) {
		return &RangeError{
			Quantity: "log reading", Value: s.Value,
			Advice: "leave out readings that are not numbers",
		}
	}
	if w.taken {
		if s.At <= w.last {
			return &RangeError{
				Quantity: "time of log reading", Value: s.At, Min: w.last,
				Advice: "put the readings in order of time, one at a time",
			}
		}
		if since := s.At - w.first; since < 0 || since > longestSpan {
			return &RangeError{
				Quantity: "time of log reading", Value: s.At, Max: w.first + longestSpan,
				Advice: "count all times from one moment of the visit",
			}
		}
		if slot := thin.Slot(s.At); slot != w.slot {
			w.close()
			w.slot = slot
		}
	} else {
		w.first, w.slot, w.taken = s.At, thin.Slot(s.At), true
	}
	w.open.Add(float64(s.Value))
	w.clock.Add(s.At)
	w.last = s.At
	return nil
}

// close keeps the open slot, in the place of the oldest.
func (w *Watch[T]) close() {
	s := w.ofOpen()
	if len(w.kept) < cap(w.kept) {
		w.kept = append(w.kept, s)
	} else {
		w.kept[w.next] = s
	}
	w.next = (w.next + 1) % cap(w.kept)
	w.open, w.clock = thin.Mean{}, thin.Clock{}
}

func (w *Watch[T]) ofOpen() Sample[T] {
	v, _ := w.open.Value()
	return Sample[T]{w.clock.At(), T(v)}
}

// Log returns the readings that the Watch judges by, one for each slot.
func (w *Watch[T]) Log() []Sample[T] {
	if !w.taken {
		return nil
	}
	before, after := w.ordered()
	log := make([]Sample[T], 0, len(before)+len(after)+1)
	return append(append(append(log, before...), after...), w.ofOpen())
}

// ordered is what was kept, in two parts; the oldest gives way to the open slot.
func (w *Watch[T]) ordered() (before, after []Sample[T]) {
	if len(w.kept) == cap(w.kept) {
		return w.kept[w.next+1:], w.kept[:w.next]
	}
	return w.kept, nil
}

// Restart forgets all readings, after a change to the system: what came before it
// says nothing about where the value settles now.
func (w *Watch[T]) Restart() {
	*w = Watch[T]{within: w.within, kept: w.kept[:0]}
}

// Steadiness judges the readings taken up to now. Without any it is the zero
// value.
func (w *Watch[T]) Steadiness() Steadiness[T] {
	if !w.taken {
		return Steadiness[T]{}
	}
	before, after := w.ordered()
	open := [1]Sample[T]{w.ofOpen()}
	var times, values [thin.Kept + 1]float64
	t, y, first := times[:0], values[:0], open[0].At
	for _, part := range [...][]Sample[T]{before, after, open[:]} {
		for _, s := range part {
			if len(t) == 0 {
				first = s.At
			}
			t, y = append(t, (s.At-first).Seconds()), append(y, float64(s.Value))
		}
	}
	c := settle(t, y, float64(w.within))
	return Steadiness[T]{
		State: c.state, Value: quantity.Uncertain[T]{Value: T(c.value), Std: c.std},
		From: first + secondsAsDuration(c.from), To: first + secondsAsDuration(c.to),
		Low: T(c.low), High: T(c.high), Swing: T(c.swing), Noise: T(c.noise),
		Estimate:     quantity.Uncertain[T]{Value: T(c.end), Std: c.endStd},
		TimeConstant: capDuration(c.tau), Wait: capDuration(c.wait), Period: capDuration(c.period),
		Spikes: c.spikes, Gaps: c.gaps, Within: w.within,
	}
}

func secondsAsDuration(s float64) time.Duration {
	return time.Duration(math.Round(s * float64(time.Second)))
}

// MeanOver returns the mean of a log over a stretch of time, such as the one that a
// Steadiness gives for the value that the charge is judged by, so that every
// reading is that of the same minutes. Freaks are left out; the standard uncertainty
// is that of the scatter and half of what the two halves differ by. still says that
// it moved by no more than within in five minutes, as far as can be told. ok is
// false where the log holds no reading in the stretch.
func MeanOver[T quantity.Quantity](log []Sample[T], from, to time.Duration, within T) (
	mean quantity.Uncertain[T], still, ok bool,
) {
	var times, values [thin.Kept]float64
	t, y := times[:0], values[:0]
	for _, s := range log {
		if s.At >= from && s.At <= to && math.Abs(float64(s.Value)) <= largestValue {
			t, y = append(t, (s.At-from).Seconds()), append(y, float64(s.Value))
		}
	}
	t, y, _ = withoutSpikes(t, y, float64(within))
	if len(t) == 0 {
		return mean, false, false
	}
	l := lineOver(t, y, 0)
	mean = quantity.Uncertain[T]{Value: T(l.mean), Std: doubtOfMean(y)}
	moved := math.Abs(l.slope) * shortestCalm
	return mean, l.n >= fewestReadings && moved <= float64(within)+2*l.slopeDoubt*shortestCalm, true
}

// doubtOfMean does not count a swing over whole cycles as scatter.
func doubtOfMean(y []float64) float64 {
	n := len(y)
	if n < 2 {
		return 0
	}
	early, late := 0.0, 0.0
	half := n / 2
	for i := range half {
		early += y[i] - y[0]
		late += y[n-1-i] - y[0]
	}
	return math.Hypot(jitter(y)/math.Sqrt(float64(n)), (late-early)/float64(2*half))
}
