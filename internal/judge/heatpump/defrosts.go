package heatpump

import (
	"time"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Defrosts of heat pumps: boards start one 30, 60 or 90 min of frosting after the last, or as
// the coil asks for it, and end it by the coil's temperature or after some 10 min. Common
// practice, no source.
const (
	oftenDefrost = 25 * time.Minute // apart
	longDefrost  = 9 * time.Minute
	longestRest  = 3 * time.Hour
)

// defrostsOf finds the defrosts in the log of a case; nil where it shows none or too little: the
// indoor air is cooled then, or the suction is that of a coil in the room.
func defrostsOf(c *modes.Case) *modes.Defrosts {
	const colder, above = 2.0, 3.0 // K
	return modes.DefrostsOf(c.Log, func(l *modes.Logged) (is, known bool) {
		if s, r := l.Supply, l.Return; s != nil && r != nil {
			is, known = float64(r.Value.Sub(s.Value)) > colder, true
		}
		outdoor := l.Outdoor
		if outdoor == nil {
			outdoor = c.OutdoorDryBulb
		}
		if p := l.Suction; p != nil && outdoor != nil && c.Fluid != nil {
			t, err := c.Fluid.DewTemperature(p.Value.Absolute(c.Evidence.Atmosphere))
			if err == nil {
				is, known = is || float64(t.Sub(outdoor.Value)) > above, true
			}
		}
		return is, known
	})
}

// logged are the defrosts of a log as what was seen: too many, too long, none at all.
func logged(c *modes.Case) []sight {
	d := defrostsOf(c)
	if d == nil {
		return nil
	}
	var out []sight
	if d.Count >= 3 {
		out = append(out, sight{
			d.Over/time.Duration(d.Count) < oftenDefrost, 0.03,
			map[string]float64{"defrost-often": 0.9},
		})
	}
	if alike, known := d.Alike(); known {
		out = append(out, sight{
			alike && d.Longest() >= longDefrost, 0.04, map[string]float64{"defrost-long": 0.85},
		})
	}
	if d.Count == 0 && d.Over >= longestRest && frosts(c) {
		out = append(out, sight{true, 0.08, map[string]float64{"outdoor-ice": 0.5}})
	}
	return out
}

// frosts says that a coil takes on frost: it evaporates below freezing in weather that brings
// any.
func frosts(c *modes.Case) bool {
	return c.OutdoorDryBulb != nil && c.OutdoorDryBulb.Value < quantity.Fahrenheit(40) &&
		c.EvaporatingDew != nil && c.EvaporatingDew.Value < quantity.Fahrenheit(28)
}

// defrostFigure says what the log shows of defrosts; false where it shows nothing.
func defrostFigure(c *modes.Case) (fact.Fact, bool) {
	d := defrostsOf(c)
	switch {
	case d == nil:
		return fact.Fact{}, false
	case d.Count == 0:
		return fact.New("performance.heating-no-defrost", fact.Of("over", d.Over)), frosts(c)
	}
	f := fact.New(
		"performance.heating-defrosts", fact.Of("over", d.Over), fact.Of("count", d.Count),
	)
	if d.Longest() > 0 {
		f = f.With(fact.Of("shortest", d.Shortest()), fact.Of("longest", d.Longest()))
	}
	return f, true
}
