package satline

import (
	"cmp"
	"math"
	"slices"
	"time"

	"github.com/satline/satline/internal/base/apart"
	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
)

// A Session is a visit while it goes on: it takes samples as gauges send them, and moves,
// looks and conditions as they come, and can be assessed at any moment. Work on a sample
// and memory stay the same however long it lasts:
//
//   - The samples of a slot of ten seconds become one entry of the log, each reading their
//     mean, without the lowest and the highest where there are three or more. A move ends
//     the slot.
//   - Of what follows the last move, and of what came between it and the one before, the
//     last half hour of entries is kept; before each of the twenty moves before those, the
//     last five minutes, for what the machine answered to them.
//   - A reading that is in no entry any more stays in Visit.Readings as it was last.
//
// A Session is not safe for use by several goroutines at once, and is not to be copied.
type Session struct {
	now    prepared // without the slot that is open
	in     Instruments
	open   thinning
	sample LogEntry // the last
	held   fieldSet // the readings that came at its time
	taken  bool
	told   time.Duration // when Conditions came, on the clock of the samples
	gauge  [gauges]struct {
		value quantity.GaugePressure
		at    time.Duration
		read  bool
		off   bool
	}
}

// gauges are the first of the readingFields.
const gauges = 3

// What is kept of a log between two moves, in entries, and of how many of them; see Session.
const (
	keptLately = thin.Kept
	keptBefore = 30
	keptMoves  = 20
	mostMoves  = 1000
)

// A hose that comes off lets its gauge fall from pressure to the air's between two samples;
// a machine takes longer. Common practice, no source.
const (
	underPressure = quantity.GaugePressure(20 * 6894.757)
	atTheAir      = quantity.GaugePressure(2 * 6894.757)
	hoseOffWithin = 10 * time.Second
	farAhead      = time.Minute // no part of a sample comes so late
)

// A SetAside is a sample, or one reading of it, that a Session has not taken.
type SetAside struct {
	At time.Duration `json:"at"`
	// Field is the reading, as in "suctionPressure"; "at" where it is the whole sample.
	Field string         `json:"field"`
	Why   SetAsideReason `json:"why"`
}

// A SetAsideReason says why a sample is set aside.
type SetAsideReason string

// The reasons.
const (
	// TimeDoubled: the reading has come at that time already. TimeBackward: the sample is earlier
	// than the one before it.
	TimeDoubled  SetAsideReason = "time doubled"
	TimeBackward SetAsideReason = "time backward"
	// TimeAhead: samples of one slot came over a minute before their time, as one after them
	// shows. They were taken, and are taken back: one clock that jumps silences no session.
	TimeAhead SetAsideReason = "time ahead"
	// TimeImpossible: before the start of the visit, or over a year after it.
	TimeImpossible SetAsideReason = "time impossible"
	// SensorLost: no number, or one that its instrument cannot read.
	SensorLost SetAsideReason = "sensor lost"
	// HoseOff: a gauge under pressure reads that of the air from one sample to the next. It
	// is set aside until it reads pressure again.
	HoseOff SetAsideReason = "hose off"
	// NotBegun: the session was not made by NewSession.
	NotBegun SetAsideReason = "not begun"
)

func (s *Session) begun() bool { return s != nil && s.now.fluid != nil }

func notBegun() error { return missing("", "make a session with NewSession") }

// NewSession starts from what is known of the machine, or goes on from what Visit returned. It
// shares nothing with v. The error is the first of Visit.Validate that is about a field itself.
func NewSession(v Visit) (*Session, error) {
	p, err := prepare(apart.From(v))
	if err != nil {
		return nil, err
	}
	s := &Session{now: *p, in: v.Instruments.withDefaults()}
	s.now.visit.Log, s.now.log, s.now.before = nil, nil, newSettledBefore()
	for i := range p.log {
		s.keep(p.log[i])
		s.sample.At, s.taken, s.told = p.log[i].At, true, p.log[i].At
	}
	s.held = allFields
	s.prune()
	return s, nil
}

// Take takes a sample: any of the readings, at a time later than those before, or at that of the
// last from another instrument. What cannot be is returned and changes nothing; the other
// readings of the sample count.
func (s *Session) Take(sent LogEntry) []SetAside {
	var aside []SetAside
	switch at := sent.At; {
	case !s.begun():
		return []SetAside{{at, "at", NotBegun}}
	case at < 0 || at > longestVisit:
		return []SetAside{{at, "at", TimeImpossible}}
	case s.taken && at < s.sample.At && !s.jumped(at):
		return []SetAside{{at, "at", TimeBackward}}
	case s.taken && at < s.sample.At:
		aside = append(aside, SetAside{s.sample.At, "at", TimeAhead})
		s.told = min(s.told, at)
		s.open.close()
	}
	if !s.taken {
		s.told = sent.At
	}
	if !s.taken || sent.At != s.sample.At {
		s.held = 0
	}
	s.sample, s.taken = sent, true
	sample, left := &s.sample, 0
	for i := range readingFields {
		f, why := &readingFields[i], SetAsideReason("")
		if s.held.has(i) && f.has(&sample.Readings) {
			why = TimeDoubled
		} else if f.check(&sample.Readings) != nil {
			why = SensorLost
		} else if i < gauges && s.hoseOff(i) {
			why = HoseOff
		}
		if why != "" {
			aside = append(aside, SetAside{sample.At, f.name, why})
			f.drop(&sample.Readings)
		} else if f.has(&sample.Readings) {
			s.held |= 1 << i
			left++
		}
	}
	if left == 0 {
		return aside
	}
	if closed, ok := s.open.take(sample); ok {
		s.keep(closed)
	}
	return aside
}

// jumped reports whether a sample that is earlier than the last, but later than the log, shows
// the samples of the open slot to be far ahead of their time.
func (s *Session) jumped(at time.Duration) bool {
	n := len(s.now.log)
	return s.open.open && s.sample.At-at > farAhead && (n == 0 || at > s.now.log[n-1].At)
}

// hoseOff reports whether a gauge has lost its hose.
func (s *Session) hoseOff(i int) bool {
	e, g := &s.sample, &s.gauge[i]
	r := [gauges]*gauge{&e.SuctionPressure, &e.LiquidPressure, &e.DischargePressure}[i]
	if !r.taken {
		return false
	}
	read := r.of.Value
	if math.Abs(float64(read)) > float64(atTheAir) {
		g.off = false
	} else if g.read && g.value > underPressure && e.At-g.at <= hoseOffWithin {
		g.off = true
	}
	if !g.off {
		g.value, g.at, g.read = read, e.At, true
	}
	return g.off
}

// keep appends an entry to the log and lets the oldest go.
func (s *Session) keep(e LogEntry) {
	s.now.took(e, s.in)
	if since := sinceLastMove(&s.now); len(since) > keptLately {
		s.now.log = slices.Delete(s.now.log, len(s.now.log)-len(since), len(s.now.log)-keptLately)
	}
}

// Move tells of refrigerant moved. The error is a *VisitError that names the field, and
// then nothing has changed: the time is before that of the last move, or the mass cannot be.
func (s *Session) Move(m Move) error {
	if !s.begun() {
		return notBegun()
	}
	moves := append(slices.Clone(s.now.visit.Moves), m)
	var c checker
	if c.times(&Visit{Moves: moves}); len(moves) > mostMoves {
		n := quantity.Number(len(moves))
		c.beyond("moves", n, nil, quantity.Number(mostMoves), "begin another session")
	}
	if len(c) > 0 {
		return c[0]
	}
	if e, ok := s.open.close(); ok {
		s.keep(e)
	}
	s.now.visit.Moves, s.held = moves, allFields
	s.prune()
	s.now.before = newSettledBefore()
	return nil
}

// prune keeps the last entries between each two moves.
func (s *Session) prune() {
	moves := s.now.visit.Moves
	stretch := func(at time.Duration) int { // the moves after it
		n := 0
		for i := len(moves) - 1; i >= 0 && moves[i].At >= at; i-- {
			n++
		}
		return n
	}
	var kept []LogEntry
	count := map[int]int{}
	for _, e := range slices.Backward(s.now.log) {
		n := stretch(e.At)
		most := keptLately
		if n > keptMoves+1 {
			break
		} else if n > 1 {
			most = keptBefore
		}
		if count[n]++; count[n] <= most {
			kept = append(kept, e)
		}
	}
	slices.Reverse(kept)
	s.now.log = kept
}

// Look takes the answer to a look, in the place of an earlier one. The error is a
// *VisitError: there is no such look.
func (s *Session) Look(answer Check) error {
	if !s.begun() {
		return notBegun()
	}
	var c checker
	if c.checks([]Check{answer}); len(c) > 0 {
		return c[0]
	}
	s.now.visit.Checks = append(
		slices.DeleteFunc(s.now.visit.Checks, func(b Check) bool { return b.Look == answer.Look }),
		answer,
	)
	s.now.before = newSettledBefore()
	return nil
}

// Conditions takes what is seen now, in the place of all that was seen before; Running goes on
// with the clock of the samples. The error is a *VisitError that names the field, and then
// nothing has changed.
func (s *Session) Conditions(now Conditions) error {
	if !s.begun() {
		return notBegun()
	}
	v := s.now.visit
	v.Conditions = now
	if _, wrong := checked(v); len(wrong) > 0 {
		return wrong[0]
	}
	s.now.visit.Conditions, s.told = now, s.sample.At
	s.now.before = newSettledBefore()
	return nil
}

// Assess is Assess of the Visit that the session has come to.
func (s *Session) Assess() (Assessment, error) { return s.assess(nil) }

// Verdict is Assess in the scope VerdictOnly, for a display that follows the gauges.
func (s *Session) Verdict() (Assessment, error) { return s.assess(new(VerdictOnly)) }

func (s *Session) assess(scope *Scope) (Assessment, error) {
	if !s.begun() {
		return Assessment{}, notBegun()
	}
	p := s.upToNow()
	p.visit.Scope = *cmp.Or(scope, &p.visit.Scope)
	return p.assess()
}

// upToNow is the session with the slot that is open, and the run that goes on.
func (s *Session) upToNow() prepared {
	p := s.now
	if ran := &p.visit.Conditions.Running; *ran > 0 {
		*ran = min(*ran+max(s.sample.At-s.told, 0), longestVisit)
	}
	if e, ok := s.open.soFar(); ok {
		p.took(e, s.in) // where the next entry will stand
	}
	return p
}

// took has an entry in the log, and its readings as the last.
func (p *prepared) took(e LogEntry, in Instruments) {
	p.logged |= e.Readings.state(in)
	for i := range readingFields {
		readingFields[i].copy(&p.readings, &e.Readings)
	}
	p.log = append(p.log, e)
}

// Visit returns what the session has come to, small enough for DecodeVisit to read back
// what it is written as. It shares nothing with the session.
func (s *Session) Visit() Visit {
	if !s.begun() {
		return Visit{}
	}
	p := s.upToNow()
	v := p.visit
	v.Readings, v.Log = p.readings, p.log
	return apart.From(v)
}
