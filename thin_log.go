package satline

import "github.com/satline/satline/internal/base/thin"

// A thinning makes the entries of each slot of a log one, whatever subset of the
// readings each of them holds. Work on an entry and memory are the same however many
// a slot has.
type thinning struct {
	means []slotMean
	clock thin.Clock
	slot  int64
	open  bool
}

// take adds an entry later than those before. Where it begins a slot, the entry of
// the slot before is returned, and ok is true.
func (t *thinning) take(e *LogEntry) (closed LogEntry, ok bool) {
	if slot := thin.Slot(e.At); !t.open || slot != t.slot {
		closed, ok = t.close()
		*t = thinning{means: t.means, slot: slot, open: true}
	}
	if t.means == nil {
		t.means = make([]slotMean, len(readingFields))
	}
	t.clock.Add(e.At)
	for i, f := range readingFields {
		f.add(&e.Readings, &t.means[i])
	}
	return closed, ok
}

// soFar is the entry of the open slot.
func (t *thinning) soFar() (e LogEntry, ok bool) {
	if !t.open {
		return LogEntry{}, false
	}
	e.At = t.clock.At()
	for i, f := range readingFields {
		f.give(&e.Readings, &t.means[i])
	}
	return e, true
}

// close ends the slot: after a move, what follows begins another.
func (t *thinning) close() (e LogEntry, ok bool) {
	e, ok = t.soFar()
	clear(t.means)
	*t = thinning{means: t.means}
	return e, ok
}

// thinned is the log with the readings of each slot made one. It changes nothing in
// a log that is thinned already.
func thinned(log []LogEntry) []LogEntry {
	slots, last := 0, int64(0)
	for i := range log {
		slot := thin.Slot(log[i].At)
		if i == 0 || slot != last {
			slots++
		}
		last = slot
	}
	if slots == len(log) {
		return log
	}
	var t thinning
	out := make([]LogEntry, 0, slots)
	for i := range log {
		if e, ok := t.take(&log[i]); ok {
			out = append(out, e)
		}
	}
	e, _ := t.close()
	return append(out, e)
}
