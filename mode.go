package satline

import (
	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity/fact"
)

// Mode is how a machine is operated.
type Mode int

// The modes.
const (
	// Cooling: the indoor coil cools the air of rooms.
	Cooling Mode = iota + 1
	// Heating: a heat pump whose indoor coil condenses.
	Heating
	// Refrigeration: a cold room, a cooler or a freezer.
	Refrigeration
)

var modeNames = []string{notStated, "cooling", "heating", "refrigeration"}

// String returns the mode as the JSON form writes it.
func (m Mode) String() string { return enum.Name(modeNames, m) }

// MarshalText implements encoding.TextMarshaler.
func (m Mode) MarshalText() ([]byte, error) { return enum.Text("mode", modeNames, m) }

// UnmarshalText reads the names that String writes.
func (m *Mode) UnmarshalText(text []byte) error { return enum.Parse("mode", modeNames, text, m) }

// ModeFound is the mode that a machine is taken to run in.
type ModeFound struct {
	// Mode is the one Stated, else the one that the readings show; the zero Mode where they
	// are in doubt, and then the first step asks.
	Mode   Mode      `json:"mode,omitzero"`
	Stated bool      `json:"stated,omitzero"`
	Says   fact.Fact `json:"says"`
}

// term is the code of a word of a vocabulary.
func term(vocabulary, code string) fact.Term { return fact.Term(vocabulary + "." + code) }
