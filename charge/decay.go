package charge

import (
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A DecayOutcome is what the rise of an isolated vacuum says.
type DecayOutcome int

// The outcomes.
const (
	// DecayOpen: too few readings or too short a test to say.
	DecayOpen DecayOutcome = iota + 1
	// NotDeepEnough: the test began above the vacuum that it needs.
	NotDeepEnough
	// Sound: tight and dry.
	Sound
	// Moisture: the pressure levels off above the limit; water or refrigerant
	// in the oil is boiling off.
	Moisture
	// Leak: the pressure keeps rising, however slowly.
	Leak
)

var decayNames = []string{"not-judged", "open", "not-deep-enough", "sound", "moisture", "leak"}

// String returns the outcome in words.
func (o DecayOutcome) String() string { return enum.Name(decayNames, o) }

// MarshalText writes the outcome in words.
func (o DecayOutcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a decay test", decayNames, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *DecayOutcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a decay test", decayNames, text, o)
}

// A Decay is the judgement of a decay test.
type Decay struct {
	Outcome DecayOutcome `json:"outcome"`
	// Start and End are the first and last reading.
	Start quantity.Pressure `json:"start"`
	End   quantity.Pressure `json:"end"`
	// PerMinute is the rise per minute at the end of the test.
	PerMinute quantity.Pressure `json:"perMinute"`
	// Levels is where the pressure levels off; absent where it does not.
	Levels quantity.Uncertain[quantity.Pressure] `json:"levels,omitzero"`
	// Limit is what the test was held to, the maker's or the general one: what it begins
	// below for NotDeepEnough, and what it stays below otherwise.
	Limit  quantity.Pressure `json:"limit"`
	Source fact.Source       `json:"source"`
}

// DecayLimits are what a decay test is held to: those of the unit's maker, who comes first
// where stricter. Zero fields are not stated.
type DecayLimits struct {
	// Start is the vacuum at or below which the test begins, Level what a tight and dry
	// circuit stays below.
	Start quantity.Pressure `json:"start,omitzero"`
	Level quantity.Pressure `json:"level,omitzero"`
	// Time that the test lasts at least.
	Time time.Duration `json:"-"`
}

// general returns l with the general figures where these are stricter.
func (l DecayLimits) general() DecayLimits {
	stricter := func(maker, general quantity.Pressure) quantity.Pressure {
		if maker > 0 && maker < general {
			return maker
		}
		return general
	}
	return DecayLimits{
		stricter(l.Start, decayStart.value), stricter(l.Level, decayLimit.value),
		max(l.Time, decayTime.value),
	}
}

// JudgeDecay judges the readings of a vacuum gauge after the pump has been
// valved off and stopped, absolute pressures against time. A sound circuit
// rises a little and levels off low. Water levels off too, but higher, at the
// vapor pressure of what is still boiling. A leak rises and goes on rising, at
// a steady rate, since the atmosphere outside is so far above: a steady rise that the
// gauge can resolve is a leak however slow it is.
//
// Begin at 500 microns or below and read for 10 minutes at least. What levels off stays
// below 500 microns; what does not rise that the gauge could tell must be sure to stay
// below 500 for an hour at the fastest rise that the readings leave open, or it is open
// and takes a longer test. The unit's maker may ask for better.
//
// Errors are *RangeError.
func JudgeDecay(readings []Sample[quantity.Pressure], maker DecayLimits) (Decay, error) {
	const most = quantity.StandardAtmosphere * 1.2
	if err := maker.check(); err != nil {
		return Decay{}, err
	}
	if len(readings) == 0 || len(readings) > longestLog {
		return Decay{}, &RangeError{
			Quantity: "number of vacuum readings",
			Value:    quantity.Number(len(readings)),
			Min:      quantity.Number(1),
			Max:      quantity.Number(longestLog),
			Advice:   "log the gauge from the moment the pump is valved off",
		}
	}
	t, err := secondsOf(readings, "vacuum reading")
	if err != nil {
		return Decay{}, err
	}
	y := make([]float64, len(readings))
	for i, r := range readings {
		if !(r.Value >= 0 && r.Value <= most) {
			return Decay{}, &RangeError{
				Quantity: fmt.Sprintf("vacuum reading %d", i+1),
				Value:    r.Value,
				Min:      quantity.Pressure(0),
				Max:      most,
				Advice:   "give the absolute pressure, as microns of mercury",
			}
		}
		y[i] = float64(r.Value)
	}
	limits := maker.general()
	d := Decay{
		Outcome: DecayOpen,
		Start:   readings[0].Value,
		End:     readings[len(readings)-1].Value,
		Limit:   limits.Level,
		Source:  decayLimit.source,
	}
	if maker.Level > 0 && maker.Level == limits.Level {
		d.Source = unitLabel
	}
	if d.Start > limits.Start {
		d.Outcome = NotDeepEnough
		d.Limit = limits.Start
		return d, nil
	}
	t, y, _ = withoutSpikes(t, y, float64(decayResolution.value))
	if len(t) < fewestReadings {
		return d, nil
	}
	t, y = averaged(t, y, mostPoints)
	d.judge(t, y, limits)
	return d, nil
}

// judge finds the outcome from seconds and pascals.
func (d *Decay) judge(t, y []float64, limits DecayLimits) {
	span := t[len(t)-1] - t[0]
	long := span >= limits.Time.Seconds()-t0Slack
	resolution, limit := float64(decayResolution.value), float64(limits.Level)
	rising := lineOver(t, y, 0)
	leveling, determined := curveThrough(t, y)
	d.PerMinute = quantity.Pressure(60 * rising.slope)
	slows := determined && leveling.left < 0 && leveling.better(rising, resolution)
	if slows && leveling.tau < span {
		d.PerMinute = quantity.Pressure(-60 * leveling.left / leveling.tau)
		d.Levels = pressure{Value: quantity.Pressure(max(leveling.end, 0)), Std: leveling.std}
		doubt := coverage * d.Levels.Std
		switch {
		case leveling.end-doubt > limit && (span >= limits.Time.Seconds()/2 || y[len(y)-1] > limit):
			d.Outcome = Moisture
		case leveling.end+doubt <= limit && long:
			d.Outcome = Sound
		}
		return
	}
	if slows {
		return // it slows down, and has not yet shown where to
	}
	std := rising.slopeDoubt
	steady := rising.slope > coverage*std && rising.slope*span > resolution
	// A small rise may as well be leveling off: then it takes a longer test to tell.
	either := determined && leveling.left < 0 &&
		(leveling.evidence(rising, resolution) > 0 || rising.slope*span < 2*resolution)
	ahead := d.fastest(rising.slope, std, span) * max(decayHold.value.Seconds()-span, 0)
	switch {
	case steady && (y[len(y)-1] > limit || long && !either):
		d.Outcome = Leak
	case steady || !long:
	case max(y[len(y)-1], rising.last)+ahead <= limit:
		d.Outcome = Sound
	}
}

// t0Slack lets a log that ends a moment before the time is over count as whole.
const t0Slack = 1.0

// fastest is the fastest rise in pascals per second that the readings leave open: that of
// the fit with its doubt, and no less than what the gauge could have hidden.
func (d *Decay) fastest(slope, std, span float64) float64 {
	hidden := float64(decayResolution.value) / span / 2
	return max(slope, 0) + max(coverage*std, hidden)
}

func (l DecayLimits) check() error {
	const most = quantity.StandardAtmosphere
	for _, p := range [2]struct {
		name  string
		value quantity.Pressure
	}{{"maker's vacuum to begin at", l.Start}, {"maker's limit of a decay test", l.Level}} {
		if !(p.value >= 0 && p.value <= most) {
			return &RangeError{
				Quantity: p.name,
				Value:    p.value,
				Min:      quantity.Pressure(0),
				Max:      most,
				Advice:   "give an absolute pressure, or zero where the maker states none",
			}
		}
	}
	if l.Time < 0 {
		return &RangeError{
			Quantity: "maker's time of a decay test",
			Value:    l.Time,
			Min:      time.Duration(0),
			Advice:   "give zero where the maker states none",
		}
	}
	return nil
}

// mostPoints of a log of any length are fitted.
const mostPoints = 360

// averaged means neighbors together until at most n points are left.
func averaged(t, y []float64, n int) ([]float64, []float64) {
	group := (len(t) + n - 1) / n
	if group <= 1 {
		return t, y
	}
	var tt, yy []float64
	for i := 0; i < len(t); i += group {
		end := min(i+group, len(t))
		st, sy := 0.0, 0.0
		for k := i; k < end; k++ {
			st, sy = st+t[k], sy+y[k]
		}
		tt, yy = append(tt, st/float64(end-i)), append(yy, sy/float64(end-i))
	}
	return tt, yy
}

// better reports whether the curve explains the readings so much better than the
// line that its third parameter is called for.
func (f approachFit) better(l line, resolution float64) bool {
	const strong = 10 // "very strong" in Kass and Raftery 1995
	return f.evidence(l, resolution) > strong
}

// evidence is the fall of BIC from the line to the curve (Schwarz 1978). Differences far
// below the resolution explain nothing.
func (f approachFit) evidence(l line, resolution float64) float64 {
	n := float64(l.n)
	floor := n * square(resolution/50)
	line, curve := square(l.sigma)*max(n-2, 1), square(f.sigma)*max(n-3, 1)
	return f.effective*math.Log((line+floor)/(curve+floor)) - math.Log(f.effective)
}

// Fact is the result for a record: "result.decay-sound", with the pressures that it rests on.
func (d Decay) Fact() fact.Fact {
	end, limit := fact.Amount("end", d.End), fact.Amount("limit", d.Limit)
	rise := fact.Amount("rise", max(d.PerMinute, 0))
	switch d.Outcome {
	case NotDeepEnough:
		return fact.New("result.decay-not-deep-enough", fact.Amount("start", d.Start), limit)
	case Sound:
		return fact.New("result.decay-sound", fact.Amount("start", d.Start), end, limit)
	case Moisture:
		return fact.New("result.decay-moisture", fact.Amount("level", d.Levels.Value), limit)
	case Leak:
		return fact.New("result.decay-leak", end, rise)
	}
	open := fact.New("result.decay-open", end, fact.Of("time", decayTime.value))
	if d.PerMinute > 0 { // two readings do not tell it
		open = open.With(rise)
	}
	return open
}
