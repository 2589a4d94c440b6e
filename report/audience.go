package report

import "github.com/satline/satline/internal/base/enum"

// Audience is who a report is for.
type Audience int

const (
	// Technician: at the machine, now. What to do comes before the numbers.
	Technician Audience = iota
	// File: the technical record, with every number and its source.
	File
	// Owner: the person who pays, in plain language.
	Owner
)

var audienceNames = []string{"", "technician", "file", "owner"}

// String returns "technician", "file" or "owner".
func (a Audience) String() string { return enum.Name(audienceNames, a+1) }

// MarshalText implements encoding.TextMarshaler.
func (a Audience) MarshalText() ([]byte, error) {
	return enum.TextFromZero("audience", audienceNames, a)
}

// UnmarshalText reads "technician", "file" or "owner".
func (a *Audience) UnmarshalText(text []byte) error {
	return enum.ParseFromZero("audience", audienceNames, text, a)
}
