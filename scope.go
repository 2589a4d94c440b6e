package satline

import "github.com/satline/satline/internal/base/enum"

// Scope is how much an assessment works out.
type Scope int

const (
	// Whole is everything.
	Whole Scope = iota
	// VerdictOnly leaves out what takes most of the time: two faults at once, the reading that
	// would be worth most, freezing and the next dose. Its chances are those of single faults.
	// Its plan ends before refrigerant is moved; for a batch of visits, or a display that
	// follows the gauges.
	VerdictOnly
)

var scopeNames = []string{"", "whole", "verdict"}

// String returns "whole" or "verdict".
func (s Scope) String() string { return enum.Name(scopeNames, s+1) }

// MarshalText implements encoding.TextMarshaler.
func (s Scope) MarshalText() ([]byte, error) { return enum.TextFromZero("scope", scopeNames, s) }

// UnmarshalText reads "whole" or "verdict".
func (s *Scope) UnmarshalText(text []byte) error {
	return enum.ParseFromZero("scope", scopeNames, text, s)
}
