package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
)

// settledBefore is what a session has worked out from entries before its last move, to which
// nothing is added any more.
type settledBefore struct {
	earlier *diagnose.Earlier // in a mode
	mode    Mode
	courses map[stretch]deltaCourse
}

// A stretch is entries of a log.
type stretch struct {
	from, to int
	method   charge.Method
}

func newSettledBefore() *settledBefore {
	return &settledBefore{courses: map[stretch]deltaCourse{}}
}

// followed is follow of a part of the log.
func (p *prepared) followed(from, to int, method charge.Method) (deltaCourse, error) {
	key, whole := stretch{from, to, method}, p.before != nil && to < len(p.log)
	if whole {
		if course, ok := p.before.courses[key]; ok {
			return course, nil
		}
	}
	course, err := follow(p, thinned(p.log[from:to]), method)
	if whole && err == nil {
		p.before.courses[key] = course
	}
	return course, err
}
