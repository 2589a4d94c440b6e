package airside

import (
	"encoding"
	"strings"
	"testing"
)

// What a constant writes it reads back, and the error of another text lists what
// to write.
func TestNamesReadBack(t *testing.T) {
	for _, c := range []struct {
		v interface {
			encoding.TextMarshaler
			encoding.TextUnmarshaler
		}
		names []string
	}{{new(SplitOutcome), splitOutcomes}, {new(StaticOutcome), staticOutcomes},
		{new(FrostOutcome), frostOutcomes}, {new(Part), partNames}} {
		for _, name := range c.names {
			if err := c.v.UnmarshalText([]byte(name)); err != nil {
				t.Errorf("%T: %v", c.v, err)
			}
			if text, err := c.v.MarshalText(); err != nil || string(text) != name {
				t.Errorf("%T: %q reads back as %q, %v", c.v, name, text, err)
			}
		}
		if err := c.v.UnmarshalText([]byte("sideways")); err == nil ||
			!strings.Contains(err.Error(), c.names[1]) {
			t.Errorf("%T: %v", c.v, err)
		}
	}
}
