package electrical

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Judge holds readings against their limits, in the order of the chain from the supply to the
// motors. The error is a *RangeError: a reading that no meter shows, or a number of them that
// the phases do not have. A machine in a bad way is no error.
func Judge(r Readings) (Report, error) {
	if err := r.check(); err != nil {
		return Report{}, err
	}
	j := judge{r: &r}
	j.rep.Compressor = doing(&r.Compressor)
	j.rep.OutdoorFan = doing(&r.OutdoorFan)
	j.rep.IndoorFan = doing(&r.IndoorFan)
	j.supply()
	j.control()
	j.contactor()
	for _, m := range j.motors() {
		j.motor(m)
	}
	j.plan()
	j.cautions()
	return j.rep, nil
}

type judge struct {
	r   *Readings
	rep Report
	// doing what a check asks for beside what its kind does.
	more map[int]Step
}

// A named is a motor with the part that it is.
type named struct {
	*Motor
	part  string
	state MotorState
}

// motors in the order in which one explains the next: without its fan a compressor trips.
func (j *judge) motors() []named {
	return []named{
		{&j.r.IndoorFan, IndoorFanPart, j.rep.IndoorFan},
		{&j.r.OutdoorFan, OutdoorFanPart, j.rep.OutdoorFan},
		{&j.r.Compressor, CompressorPart, j.rep.Compressor},
	}
}

// doing is what a motor does, as stated, or by its currents.
func doing(m *Motor) MotorState {
	if m.State != 0 || len(m.Currents) == 0 {
		return m.State
	}
	if float64(highest(m.Currents).Value) <= idle(m) {
		return Silent
	}
	if lockedAt(m) {
		return Hums
	}
	return Runs
}

// idle is the current that is none.
func idle(m *Motor) float64 { return max(0.1, noCurrent*float64(m.RatedLoad)) }

// lockedAt reports whether a current is that of a rotor that stands.
func lockedAt(m *Motor) bool {
	if len(m.Currents) == 0 {
		return false
	}
	i := highest(m.Currents).Value
	switch {
	case m.LockedRotor > 0:
		return float64(i) >= lockedPart*float64(m.LockedRotor)
	case m.RatedLoad > 0:
		return float64(i) >= lockedTimes*float64(m.RatedLoad)
	}
	return false
}

// add notes a check and, where it is one, the danger.
func (j *judge) add(part string, code fact.Code, values ...fact.Value) {
	k := kinds[code]
	says := fact.New(code, append([]fact.Value{partValue(part)}, values...)...)
	j.rep.Checks = append(j.rep.Checks, fact.Check{
		Part: part, Outcome: k.outcome, Says: says, Source: k.source,
	})
	if k.danger {
		j.rep.Dangers = append(j.rep.Dangers, Danger{
			Code: string(code), Grave: k.grave, Stops: k.stops, Says: says,
			Why: fact.New(code + ".why"), Source: k.source,
		})
	}
}

// from gives the last check, and its danger, another source of its limit.
func (j *judge) from(s fact.Source) {
	c := &j.rep.Checks[len(j.rep.Checks)-1]
	c.Source = s
	if n := len(j.rep.Dangers); n > 0 && kinds[c.Says.Code].danger {
		j.rep.Dangers[n-1].Source = s
	}
}

// does gives the last check a step of its own.
func (j *judge) does(code fact.Code, values ...fact.Value) {
	if j.more == nil {
		j.more = map[int]Step{}
	}
	s := ways[code]
	s.Do = fact.New(code, values...)
	j.more[len(j.rep.Checks)-1] = s
}

func (j *judge) wrong(code fact.Code, parts ...string) bool {
	return slices.ContainsFunc(j.rep.Checks, func(c fact.Check) bool {
		return c.Outcome == fact.Wrong && (code == "" || c.Says.Code == code) &&
			(len(parts) == 0 || slices.Contains(parts, c.Part))
	})
}

func (j *judge) found(part string, codes ...fact.Code) bool {
	return slices.ContainsFunc(j.rep.Checks, func(c fact.Check) bool {
		return c.Part == part && slices.Contains(codes, c.Says.Code)
	})
}

// A side is where a reading stands to its limits.
type side int

const (
	within side = iota
	below
	above
	near // so close to a limit that the meter cannot tell
)

// surely is the chance from which a reading is taken to be beyond a limit.
const surely = 0.9

func sideOf[T quantity.Quantity](u quantity.Uncertain[T], low, high T) side {
	v := float64(u.Value)
	under, _, _ := normal.Chances(v-float64(low), u.Std, 0)
	_, _, over := normal.Chances(v-float64(high), u.Std, 0)
	switch {
	case under >= surely:
		return below
	case over >= surely:
		return above
	case under+over > 1-surely:
		return near
	}
	return within
}

// none and most stand for a limit that is not there.
const none, most = -math.MaxFloat64, math.MaxFloat64

// withStd gives a reading the uncertainty of a sound meter where it states none.
func withStd[T quantity.Quantity](
	u quantity.Uncertain[T], part, least float64,
) quantity.Uncertain[T] {
	if u.Std == 0 {
		u.Std = math.Hypot(part*math.Abs(float64(u.Value)), least)
	}
	return u
}

func sureVolts(u volts) volts       { return withStd(u, 0.006, 0) }
func sureAmperes(u amperes) amperes { return withStd(u, 0.012, 0.1) }
func sureFarads(u farads) farads    { return withStd(u, 0.015, 0) }
func sureOhms(u ohms) ohms          { return withStd(u, 0.01, 0.1) }

func highest[T quantity.Quantity](of []quantity.Uncertain[T]) quantity.Uncertain[T] {
	return slices.MaxFunc(of, compare[T])
}

func lowest[T quantity.Quantity](of []quantity.Uncertain[T]) quantity.Uncertain[T] {
	return slices.MinFunc(of, compare[T])
}

func compare[T quantity.Quantity](a, b quantity.Uncertain[T]) int {
	switch {
	case a.Value < b.Value:
		return -1
	case a.Value > b.Value:
		return 1
	}
	return 0
}

func mean[T quantity.Quantity](of []quantity.Uncertain[T]) T {
	sum := T(0)
	for _, u := range of {
		sum += u.Value
	}
	return sum / T(len(of))
}

func partValue(p string) fact.Value { return termValue("part", "part."+p) }

func termValue(name, term string) fact.Value { return fact.Of(name, fact.Term(term)) }
