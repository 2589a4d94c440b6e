package charge

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/enum"
	"github.com/satline/satline/quantity"
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
	// Leak: the pressure keeps rising.
	Leak
)

var decayNames = []string{"not judged", "open", "not deep enough", "sound", "moisture", "leak"}

// String returns the outcome in words.
func (o DecayOutcome) String() string { return enum.Name(decayNames, o) }

// MarshalText writes the outcome in words.
func (o DecayOutcome) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (o *DecayOutcome) UnmarshalText(text []byte) error {
	return enum.Parse("charge: outcome of a decay test", decayNames, text, o)
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
	Source Source                                `json:"source"`
}

// DecayTest judges the readings of a vacuum gauge after the pump has been
// valved off and stopped, absolute pressures against time. A sound circuit
// rises a little and levels off low. Water levels off too, but higher, at the
// vapor pressure of what is still boiling. A leak rises and goes on rising, at
// a steady rate, since the atmosphere outside is so far above.
//
// Begin below 500 microns; within 10 minutes a sound circuit stays below 1,000.
// The unit's maker may ask for better, and comes first. Errors are *RangeError.
func DecayTest(readings []Sample[quantity.Pressure]) (Decay, error) {
	const most = quantity.StandardAtmosphere * 1.2
	if len(readings) == 0 || len(readings) > longestLog {
		return Decay{}, &RangeError{Quantity: "number of vacuum readings", Value: quantity.Number(len(readings)), Min: quantity.Number(1), Max: quantity.Number(longestLog), Advice: "log the gauge from the moment the pump is valved off"}
	}
	t, err := secondsOf(readings, "vacuum reading")
	if err != nil {
		return Decay{}, err
	}
	y := make([]float64, len(readings))
	for i, r := range readings {
		if !(r.Value >= 0 && r.Value <= most) {
			return Decay{}, &RangeError{Quantity: fmt.Sprintf("vacuum reading %d", i+1), Value: r.Value, Min: quantity.Pressure(0), Max: most, Advice: "give the absolute pressure, as microns of mercury"}
		}
		y[i] = float64(r.Value)
	}
	d := Decay{Outcome: DecayOpen, Start: readings[0].Value, End: readings[len(readings)-1].Value, Source: decayLimit.source}
	if d.Start > decayStart.value {
		d.Outcome = NotDeepEnough
		return d, nil
	}
	t, y, _ = withoutSpikes(t, y, float64(decayResolution.value))
	if len(t) < fewestReadings {
		return d, nil
	}
	t, y = averaged(t, y, mostPoints)
	span := t[len(t)-1] - t[0]
	rising := fitLine(t, y)
	leveling := fitApproach(t, y, 0)
	d.PerMinute = quantity.Pressure(60 * rising.b)
	levels := leveling.b < 0 && leveling.tau < span && leveling.better(rising.curve(), float64(decayResolution.value))
	if levels {
		d.PerMinute = quantity.Pressure(-60 * leveling.b / leveling.tau * math.Exp(-span/leveling.tau))
		d.Levels = pressure{Value: quantity.Pressure(max(leveling.a, 0)), Std: leveling.stdOfA()}
	}
	limit := float64(decayLimit.value)
	rest := max(decayTime.value.Seconds()-span, 0)
	atEnd := y[len(y)-1] + float64(d.PerMinute)/60*rest
	switch {
	case levels && leveling.a > limit && (span >= decayTime.value.Seconds()/2 || y[len(y)-1] > limit):
		d.Outcome = Moisture
	case !levels && atEnd > limit && (span >= decayTime.value.Seconds()/2 || y[len(y)-1] > limit):
		d.Outcome = Leak
	case span < decayTime.value.Seconds():
	case !levels && y[len(y)-1]+float64(d.PerMinute)*decayAhead.value.Minutes() > limit:
		// Below the limit, and on its way past it.
	default:
		d.Outcome = Sound
	}
	return d, nil
}

// straight is a fit of a + b·t.
type straight struct {
	a, b      float64
	residuals []float64
}

func fitLine(t, y []float64) straight {
	n := float64(len(t))
	mt, my := 0.0, 0.0
	for i := range t {
		mt, my = mt+t[i]/n, my+y[i]/n
	}
	xx, xy := 0.0, 0.0
	for i := range t {
		xx, xy = xx+square(t[i]-mt), xy+(t[i]-mt)*(y[i]-my)
	}
	s := straight{b: xy / xx}
	s.a = my - s.b*mt
	for i := range t {
		s.residuals = append(s.residuals, y[i]-s.a-s.b*t[i])
	}
	return s
}

// curve gives what curve.better compares with.
func (s straight) curve() curve {
	f := curve{residuals: s.residuals, parameters: 2}
	for _, r := range s.residuals {
		f.rss += r * r
	}
	return f
}

// Text says what the test means and what to do, in a system of units.
func (d Decay) Text(sys quantity.System) string {
	switch d.Outcome {
	case NotDeepEnough:
		return fmt.Sprintf("the test began at %s; pull below %s first, through large hoses without valve cores, with fresh pump oil", vacuumText(d.Start, sys), vacuumText(decayStart.value, sys))
	case Sound:
		return fmt.Sprintf("sound: from %s to %s, rising %s a minute at the end; tight and dry", vacuumText(d.Start, sys), vacuumText(d.End, sys), vacuumText(max(d.PerMinute, 0), sys))
	case Moisture:
		return fmt.Sprintf("moisture: the pressure levels off at about %s, above %s; sweep with dry nitrogen, change the filter drier, warm the circuit and pull again", vacuumText(d.Levels.Value, sys), vacuumText(decayLimit.value, sys))
	case Leak:
		return fmt.Sprintf("leak: the pressure keeps rising, %s a minute, to %s; check the hoses and the gauge first, then pressure-test with nitrogen and find it", vacuumText(d.PerMinute, sys), vacuumText(d.End, sys))
	}
	return fmt.Sprintf("open: %s after a rise of %s a minute; read the gauge at least every minute for %s, and longer while it rises steadily", vacuumText(d.End, sys), vacuumText(max(d.PerMinute, 0), sys), inMinutes(decayTime.value))
}

// vacuumText shows a deep vacuum in microns or pascals.
func vacuumText(p quantity.Pressure, sys quantity.System) string {
	if sys == quantity.IP {
		return fmt.Sprintf("%.0f microns", p.Microns())
	}
	return fmt.Sprintf("%.1f Pa", p.Pascals())
}
