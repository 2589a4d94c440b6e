package modes

import (
	"slices"
	"sort"
	"time"

	"github.com/satline/satline/quantity"
)

// A Logged is what the log of a visit holds of air and suction at a moment; nil what it does not.
type Logged struct {
	At                      time.Duration
	Return, Supply, Outdoor *quantity.Uncertain[quantity.Temperature]
	Suction                 *quantity.Uncertain[quantity.GaugePressure]
}

// Defrosts are those that a log shows.
type Defrosts struct {
	Count int
	// Over is the time that the log covers, Every that between two readings.
	Over, Every time.Duration
	// Lengths of those that begin and end within the log.
	Lengths []time.Duration
}

// coarse is the time between two readings above which a log misses defrosts.
const coarse = 5 * time.Minute

// DefrostsOf finds the defrosts in a log; nil where it is too short or too coarse to show any.
// Known says whether an entry tells, and is whether the machine defrosts then.
func DefrostsOf(log []Logged, tells func(*Logged) (is, known bool)) *Defrosts {
	const shortest = time.Hour
	var d Defrosts
	var began, last time.Duration
	var steps []time.Duration
	defrosting, whole, first := false, false, true
	for i := range log {
		is, known := tells(&log[i])
		if !known {
			continue
		}
		at := log[i].At
		if !first {
			d.Over += at - last
			steps = append(steps, at-last)
		}
		switch {
		case is && !defrosting:
			began, whole = at, !first
			d.Count++
		case !is && defrosting && whole:
			d.Lengths = append(d.Lengths, at-began)
		}
		defrosting, last, first = is, at, false
	}
	if d.Over < shortest {
		return nil
	}
	sort.Slice(steps, func(i, j int) bool { return steps[i] < steps[j] })
	if d.Every = steps[len(steps)/2]; d.Every > coarse {
		return nil
	}
	return &d
}

// Longest is the most of the lengths; zero for none.
func (d *Defrosts) Longest() time.Duration {
	if len(d.Lengths) == 0 {
		return 0
	}
	return slices.Max(d.Lengths)
}

// Shortest is the least of the lengths; zero for none.
func (d *Defrosts) Shortest() time.Duration {
	if len(d.Lengths) == 0 {
		return 0
	}
	return slices.Min(d.Lengths)
}

// Alike says whether three or more lasted equally long, as those do that a clock ends and not
// the coil; false for known where the log does not tell.
func (d *Defrosts) Alike() (alike, known bool) {
	const fine = 2 * time.Minute
	if len(d.Lengths) < 3 || d.Every > fine {
		return false, false
	}
	return d.Longest()-d.Shortest() <= d.Every+d.Every/2, true
}

// Trend is by how much a temperature in a log changes in an hour, K, over the last part of it;
// false where that holds too little.
func Trend(
	log []Logged, over time.Duration, of func(*Logged) *quantity.Uncertain[quantity.Temperature],
) (perHour float64, ok bool) {
	const least, stretch = 4, 20 * time.Minute
	var n, sum, sumAt, at2, both float64
	var from, to time.Duration
	for i := len(log) - 1; i >= 0; i-- {
		t := of(&log[i])
		if t == nil {
			continue
		}
		if n == 0 {
			to = log[i].At
		}
		if to-log[i].At > over {
			break
		}
		from = log[i].At
		hours := (from - to).Hours()
		n, sum, sumAt = n+1, sum+float64(t.Value), sumAt+hours
		at2, both = at2+hours*hours, both+hours*float64(t.Value)
	}
	if n < least || to-from < stretch {
		return 0, false
	}
	return (both - sum*sumAt/n) / (at2 - sumAt*sumAt/n), true
}
