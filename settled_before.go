package satline

import "github.com/satline/satline/internal/judge/diagnose"

// settledBefore are the readings before the last move, for as long as nothing is added to them.
type settledBefore struct {
	moves, entries int
	mode           Mode
	earlier        *diagnose.Earlier
}

func (s *settledBefore) same(as settledBefore) bool {
	return s.earlier != nil && s.moves == as.moves && s.entries == as.entries && s.mode == as.mode
}
