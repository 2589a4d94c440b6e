// Package span writes a stretch of time into JSON as Go prints it, "15m0s".
package span

import "time"

// A Span is a time.Duration whose text is its own.
type Span time.Duration

// MarshalText writes "15m0s".
func (s Span) MarshalText() ([]byte, error) { return []byte(time.Duration(s).String()), nil }

// UnmarshalText reads what time.ParseDuration reads.
func (s *Span) UnmarshalText(text []byte) error {
	d, err := time.ParseDuration(string(text))
	if err == nil {
		*s = Span(d)
	}
	return err
}
