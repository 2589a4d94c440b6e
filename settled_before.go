package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
)

// settledBefore is what a session has worked out from entries before its last move, to which
// nothing is added any more.
type settledBefore struct {
	earlier *diagnose.Earlier // in a mode
	mode    Mode
	courses map[stretch]deltaCourse
}

// deltaCourse is that of a superheat or a subcooling.
type deltaCourse = charge.Steadiness[quantity.TemperatureDelta]

// A stretch is entries of a log.
type stretch struct {
	from, to int
	method   charge.Method
}

func newSettledBefore() *settledBefore { return &settledBefore{courses: map[stretch]deltaCourse{}} }
