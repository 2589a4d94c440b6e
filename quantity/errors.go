package quantity

import (
	"fmt"
	"strings"
)

// A ParseError says why a text is not a quantity and what to write instead.
type ParseError struct {
	Quantity string   // what was wanted: "temperature", "gauge pressure"
	Text     string   // what was given, cut to 40 characters
	Problem  string   // what is wrong with it
	Units    []string // the units that would do
}

// Error implements error.
func (e *ParseError) Error() string {
	return fmt.Sprintf("%s %q: %s; write a number and one of %s", e.Quantity, e.Text, e.Problem,
		strings.Join(e.Units, ", "))
}

// A NameError says that a text names none of the constants of a type, or that a value is
// none of them and cannot be written.
type NameError struct {
	Of    string   // what was wanted: "metering device"
	Given string   // the text, or the number of the value
	Known []string // the names that would do
}

// Error implements error in one line.
func (e *NameError) Error() string {
	return fmt.Sprintf("%s %.40q is not known; write one of \"%s\"", e.Of, e.Given,
		strings.Join(e.Known, `", "`))
}

// A RangeError says that a value lies outside the range in which a question
// has an answer. Every package of the module returns it for that case, so one
// errors.As catches it everywhere.
type RangeError struct {
	// Quantity names the value as a technician would: "bubble temperature of R-744".
	Quantity string
	// Value, Min and Max are of one quantity type, whose Format shows them in
	// the units of a system. Min or Max may be nil where
	// there is no bound on that side, and Value where there is none at all: a
	// reading that was not taken, air that no constructor made.
	Value, Min, Max fmt.Stringer
	// Advice says what the bound is and what to do: "above the critical
	// pressure there is no saturation; read the gas cooler outlet instead".
	Advice string
}

// Error implements error.
func (e *RangeError) Error() string { return e.Quantity + ": " + e.Problem() }

// Problem returns what Error does without the name of the quantity: for a form that shows
// it at the field.
func (e *RangeError) Problem() string {
	var b strings.Builder
	if e.Value == nil {
		b.WriteString("missing")
	} else {
		fmt.Fprintf(&b, "%s is out of range", InBoth(e.Value))
	}
	switch {
	case e.Min != nil && e.Max != nil:
		fmt.Fprintf(&b, "; valid from %s to %s", InBoth(e.Min), InBoth(e.Max))
	case e.Min != nil:
		fmt.Fprintf(&b, "; valid from %s up", InBoth(e.Min))
	case e.Max != nil:
		fmt.Fprintf(&b, "; valid up to %s", InBoth(e.Max))
	}
	if e.Advice != "" {
		b.WriteString("; ")
		b.WriteString(e.Advice)
	}
	return b.String()
}

// InBoth returns v in both systems of units where they differ, "5.4 kPa (0.8 psia)": an
// error does not know which one its reader works in. Of nil it is "none".
func InBoth(v fmt.Stringer) string {
	if v == nil {
		return "none"
	}
	q, ok := v.(interface{ Format(System) string })
	if !ok {
		return v.String()
	}
	si, ip := q.Format(SI), q.Format(IP)
	if si == ip {
		return si
	}
	return si + " (" + ip + ")"
}
