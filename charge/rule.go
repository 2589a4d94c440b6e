package charge

import (
	"fmt"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Rule is a figure, or a condition, that the package works by.
type Rule struct {
	// Code is a stable name: "superheat-tolerance".
	Code string `json:"code"`
	// Figure is the number, in both systems of units; empty where the rule has none.
	Figure string `json:"figure,omitzero"`
	// Forbids and Doubts are the methods that a condition rules out, and those
	// that it only makes less sure; none for a figure.
	Forbids []Method    `json:"forbids,omitempty"`
	Doubts  []Method    `json:"doubts,omitempty"`
	Source  fact.Source `json:"source"`
}

// A figure is a number with its source.
type figure[T any] struct {
	code   string
	value  T
	source fact.Source
}

func (f *figure[T]) rule() Rule {
	return Rule{Code: f.code, Figure: bothSystems(f.value), Source: f.source}
}

func (c *condition) rule() Rule {
	r := Rule{
		Code:    c.code,
		Forbids: c.forbids.methods(),
		Doubts:  c.doubts.methods(),
		Source:  c.source,
	}
	if c.limit != nil {
		r.Figure = bothSystems(c.limit)
	}
	return r
}

// bothSystems shows a figure in both systems of units, or plainly where there
// is only one way.
func bothSystems(v any) string {
	switch q := v.(type) {
	case quantity.Length:
		return across(q).String()
	case fact.Times:
		return fmt.Sprintf("%.1f to 1", float64(q))
	case interface{ Format(quantity.System) string }:
		ip, si := q.Format(quantity.IP), q.Format(quantity.SI)
		if ip == si {
			return ip
		}
		return ip + " (" + si + ")"
	case time.Duration:
		return inMinutes(q)
	}
	return fmt.Sprint(v)
}

// inMinutes shows a time as a technician reads a watch.
func inMinutes(d time.Duration) string {
	if d < 2*time.Minute {
		return fmt.Sprintf("%.0f s", d.Seconds())
	}
	return fmt.Sprintf("%.0f min", d.Minutes())
}
