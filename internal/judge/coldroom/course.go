package coldroom

import (
	"time"

	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A course is what the log of a visit shows of the box and of defrosts.
type course struct {
	// trend of the box in K an hour, where the log tells it.
	trend    float64
	hasTrend bool
	defrosts *modes.Defrosts
	// none says that a coil which is heated was not defrosted for longer than any is left.
	none bool
}

// Defrosts of a heated coil: common practice, no source. What is usual is said by usualDefrosts.
const (
	mostDefrosts = 6.0 // a day
	longDefrost  = 25 * time.Minute
	longestRest  = 14 * time.Hour
)

// usualDefrosts has walk-in freezers defrosted four times a day for 30 min, ended by the coil's
// temperature.
var usualDefrosts = fact.Source{
	Title:    "NREL, openstudio-standards, refrigerated_walkins.csv",
	Standing: fact.Published,
}

// fallsFast is how fast a box falls in K an hour that is pulled down, and warmBox how far over
// what it is kept at a box is warm.
const fallsFast, warmBox = -1.0, 2.0

// falls says that the log shows the box pulled down.
func (c *course) falls() bool { return c.hasTrend && c.trend < fallsFast }

// follow takes in the log. What it shows of the defrosts answers the looks that ask for it.
func (k *known) follow(c *modes.Case) {
	const recent = 2 * time.Hour
	k.course.trend, k.course.hasTrend = modes.Trend(
		c.Log, recent,
		func(l *modes.Logged) *quantity.Uncertain[quantity.Temperature] { return l.Return },
	)
	k.course.hasTrend = k.course.hasTrend && k.value[signature.OverBox] > warmBox
	if !k.heated {
		return
	}
	d := modes.DefrostsOf(c.Log, func(l *modes.Logged) (is, known bool) {
		return k.defrosting(c, l)
	})
	if d == nil {
		return
	}
	k.course.defrosts = d
	k.course.none = d.Count == 0 && d.Over >= longestRest
	answer := func(code string, yes bool) {
		if _, answered := k.answers[code]; !answered {
			k.answers[code] = yes
		}
	}
	if d.Count >= 2 && d.Over >= 6*time.Hour {
		answer("cold-defrost-often", perDay(d) > mostDefrosts)
	}
	if alike, known := d.Alike(); known {
		answer("cold-defrost-by-clock", alike && d.Longest() >= longDefrost)
	}
}

func perDay(d *modes.Defrosts) float64 { return float64(d.Count) * 24 / d.Over.Hours() }

// defrosting says that the air behind the coil is warmer than the box, or that a freezer's
// suction is that of a coil above freezing.
func (k *known) defrosting(c *modes.Case, l *modes.Logged) (is, known bool) {
	const warmer = 1.0 // K
	if s, r := l.Supply, l.Return; s != nil && r != nil {
		is, known = float64(s.Value.Sub(r.Value)) > warmer, true
	}
	if p := l.Suction; p != nil && k.usual.Frozen {
		t, err := c.Fluid.DewTemperature(p.Value.Absolute(c.Atmosphere))
		if err == nil {
			is, known = is || t > quantity.Celsius(0), true
		}
	}
	return is, known
}

// likelihood of the course by a fault, and by another beside it where there is one: a box that
// falls is pulled down, and a coil that is never defrosted ices.
func (c *course) likelihood(f, beside *fault) float64 {
	has := func(code string) bool { return f.code == code || beside != nil && beside.code == code }
	p := 1.0
	if c.hasTrend {
		falls := 0.2
		if has(pullsDown) {
			falls = 0.9
		} else if has(defrostHeats) {
			falls = 0.5
		}
		p *= chanceOf(falls, c.falls())
	}
	if c.none {
		if has("cold-defrost") {
			p *= 0.5
		} else {
			p *= 0.04
		}
	}
	return p
}

// figures says what the log shows.
func (c *course) figures(u *known) []fact.Fact {
	var out []fact.Fact
	switch still := -0.3; {
	case !c.hasTrend:
	case c.trend > still:
		out = append(out, fact.New("cold-figure.stays"))
	default:
		f := fact.New("cold-figure.falls", fact.Amount("by", quantity.TemperatureDelta(-c.trend)))
		if rest, ok := c.rest(u); ok {
			f = f.With(
				fact.Amount("box", u.usual.Box.Value), fact.Of("wait", rest),
			)
		}
		out = append(out, f)
	}
	d := c.defrosts
	switch {
	case d == nil:
	case d.Count == 0:
		out = append(out, fact.New("cold-figure.no-defrost", fact.Of("over", d.Over)))
	default:
		f := fact.New(
			"cold-figure.defrosts", fact.Of("over", d.Over), fact.Of("count", d.Count),
		)
		if d.Longest() > 0 {
			f = f.With(
				fact.Of("shortest", d.Shortest()), fact.Of("longest", d.Longest()),
			)
		}
		out = append(out, sourced(f, usualDefrosts))
	}
	return out
}

// rest is how long the box still takes to where it is kept, at the rate of the log; false where
// that is more than a day.
func (c *course) rest(k *known) (time.Duration, bool) {
	over := k.value[signature.OverBox]
	if !(c.trend < -0.1) || !(over > 0) {
		return 0, false
	}
	hours := over / -c.trend
	if hours > 24 {
		return 0, false
	}
	return time.Duration(hours * float64(time.Hour)).Round(10 * time.Minute), true
}
