package fact

import "github.com/satline/satline/internal/base/enum"

// Outcome is what a check shows.
type Outcome int

// The outcomes.
const (
	Sound Outcome = iota + 1
	// Watch: out of the ordinary, and no fault by itself.
	Watch
	Wrong
	// CannotTell: so near to the limit that the instruments cannot tell.
	CannotTell
)

var outcomeNames = []string{"not judged", "sound", "watch", "wrong", "cannot tell"}

// String returns the name of the outcome.
func (o Outcome) String() string { return enum.Name(outcomeNames, o) }

// MarshalText writes the name of String.
func (o Outcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a check", outcomeNames, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *Outcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a check", outcomeNames, text, o)
}

// A Check is a reading, or what was seen, held against its limit.
type Check struct {
	// Part is what it is about; its words have the code "part." and its name.
	Part    string  `json:"part,omitzero"`
	Outcome Outcome `json:"outcome"`
	Says    Fact    `json:"says"`
	// Source of the limit.
	Source Source `json:"source"`
}
