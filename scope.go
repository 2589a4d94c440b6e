package satline

// Scope is how much an assessment works out.
type Scope int

const (
	// Whole is everything: verdicts, the next dose, what would freeze the coil,
	// the diagnosis.
	Whole Scope = iota
	// VerdictOnly leaves out the size of the next dose, freezing and the diagnosis,
	// which take a hundred times as long as everything else together; for a batch of
	// visits, or a display that follows the gauges.
	VerdictOnly
)

var scopeNames = []string{"", "whole", "verdict"}

// String returns "whole" or "verdict".
func (s Scope) String() string { return nameOf(scopeNames, int(s)+1) }

// MarshalText implements encoding.TextMarshaler.
func (s Scope) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "whole" or "verdict".
func (s *Scope) UnmarshalText(text []byte) error {
	i, err := indexOf("scope", scopeNames, text)
	if err == nil {
		*s = Scope(i - 1)
	}
	return err
}
