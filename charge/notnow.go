package charge

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// RangeError is quantity.RangeError: the value, the valid range, and what to do.
type RangeError = quantity.RangeError

// ErrNotNow is what a *NotNowError is for errors.Is: do not charge by this
// method now.
var ErrNotNow = errors.New("do not charge by this method now")

// A NotNowError says that a method has no answer under the conditions, and what
// to do instead. It is never to be turned into a number.
type NotNowError struct {
	Method    Method
	condition *condition // see rule
	measured  any        // nil where the condition is not a matter of degree
}

// Code names the condition: "outdoor-cold". Codes are stable.
func (e *NotNowError) Code() string { return e.rule().code }

// unstated is the condition of a NotNowError that this package did not make.
var unstated = condition{code: "not-stated", weighIn: true}

func (e *NotNowError) rule() *condition {
	if e.condition == nil {
		return &unstated
	}
	return e.condition
}

// Error implements error.
func (e *NotNowError) Error() string {
	says := e.Says()
	out := fmt.Sprintf("charge: do not charge by %v now: %s", e.Method, e.Code())
	for _, v := range says.Values {
		out += fmt.Sprintf(", %s %s", v.Name, bothSystems(v.Of))
	}
	if e.rule().weighIn {
		return out + "; recover the charge and weigh it in, or wait until the condition is gone"
	}
	return out + "; mend the condition first"
}

// Unwrap makes errors.Is(err, ErrNotNow) true.
func (e *NotNowError) Unwrap() error { return ErrNotNow }

// Says is the condition with what was measured and its limit: "condition.outdoor-cold".
func (e *NotNowError) Says() fact.Fact { return e.rule().says(e.measured) }

// Obstacle returns the error as an entry of a list of obstacles.
func (e *NotNowError) Obstacle() Obstacle { return e.rule().obstacle(e.Method, true, e.measured) }

// An Obstacle is a condition that stands in the way of a method.
type Obstacle struct {
	// Code is a stable name: "coil-wet".
	Code   string `json:"code"`
	Method Method `json:"method"`
	// Forbids says that no verdict may rest on the method now; otherwise the
	// condition only widens the doubt.
	Forbids bool `json:"forbids"`
	// Says is the condition with what was measured and its limit: "condition.coil-wet".
	Says fact.Fact `json:"says"`
	// MendFirst says that charge is not to be moved before the condition is gone: one
	// that forbids the method, or moves its reading by itself.
	MendFirst bool `json:"mendFirst,omitzero"`
	// Spoils says that the machine does not run as it usually does, so that nothing that is
	// read now tells what is wrong with it.
	Spoils bool `json:"spoils,omitzero"`
	// WeighIn says that weighing the charge in is one way on: the obstacle does
	// not go away with a panel put back or a wait.
	WeighIn bool        `json:"weighIn,omitzero"`
	Source  fact.Source `json:"source"`
}

// A condition is a rule about when a method has an answer.
type condition struct {
	code   string
	limit  any // what fact.Value holds; nil where it is not a matter of degree
	source fact.Source
	// forbids and doubts are the methods that the condition rules out, and the
	// ones that it only makes less sure.
	forbids, doubts methodSet
	// ofTarget says that a doubt is about the target, not about the machine.
	ofTarget bool
	// spoils says that the machine does not run as it usually does.
	spoils bool
	// weighIn says that the charge may be weighed in instead.
	weighIn bool
	// holds finds the condition in a situation, with the measured value where
	// it is a matter of degree. It is nil for conditions of the target table,
	// which TableSuperheat finds.
	holds func(*Situation) (any, bool)
}

func (c *condition) obstacle(m Method, forbids bool, measured any) Obstacle {
	return Obstacle{
		Code: c.code, Method: m, Forbids: forbids, Says: c.says(measured),
		MendFirst: forbids || !c.ofTarget, Spoils: c.spoils, WeighIn: c.weighIn, Source: c.source,
	}
}

func (c *condition) says(measured any) fact.Fact {
	f := fact.New(fact.Code("condition." + c.code))
	if measured != nil {
		f = f.With(fact.Value{Name: "measured", Of: measured})
	}
	if c.limit != nil {
		f = f.With(fact.Value{Name: "limit", Of: c.limit})
	}
	return f
}

// methodSet is a set of methods, one bit each.
type methodSet uint8

func of(methods ...Method) methodSet {
	var s methodSet
	for _, m := range methods {
		s |= 1 << m
	}
	return s
}

func (s methodSet) has(m Method) bool { return m >= Superheat && m <= WeighIn && s&(1<<m) != 0 }

func (s methodSet) methods() []Method {
	var out []Method
	for m := Superheat; m <= WeighIn; m++ {
		if s.has(m) {
			out = append(out, m)
		}
	}
	return out
}
