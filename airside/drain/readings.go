package drain

import (
	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Answer is what a look found.
type Answer int

// The answers. Zero is not looked at.
const (
	Yes Answer = iota + 1
	No
)

var answers = []string{"not looked at", "yes", "no"}

// String returns "yes", "no" or "not looked at".
func (a Answer) String() string { return enum.Name(answers, a) }

// MarshalText writes the name of String.
func (a Answer) MarshalText() ([]byte, error) { return enum.Text("answer", answers, a) }

// UnmarshalText reads what MarshalText writes.
func (a *Answer) UnmarshalText(text []byte) error { return enum.Parse("answer", answers, text, a) }

// Readings are what was seen and measured. What was not looked at is left out.
type Readings struct {
	// Iced says that there is, or was on this call, ice on the coil.
	Iced Answer `json:"iced,omitzero"`
	// PanFull says that water stands in the pan, Runs that water poured into it runs off.
	PanFull Answer `json:"panFull,omitzero"`
	Runs    Answer `json:"runs,omitzero"`
	// Trapped says that there is a trap and that it holds water.
	Trapped Answer `json:"trapped,omitzero"`
	// Seal is how far the trap's outlet lies below the pan's, where the blower draws through
	// the coil: the water that stands against it.
	Seal *quantity.Length `json:"seal,omitzero"`
	// Negative is how far the static pressure at the pan is below the room's, as a positive
	// figure, up to 2500 Pa.
	Negative *quantity.StaticPressure `json:"negative,omitzero"`
	// Fall of the drain line over its Run.
	Fall *quantity.Length `json:"fall,omitzero"`
	Run  *quantity.Length `json:"run,omitzero"`
	// PanSound says that the pan is neither cracked nor rusted through, Level that the unit
	// leans to its drain or stands level.
	PanSound Answer `json:"panSound,omitzero"`
	Level    Answer `json:"level,omitzero"`
	// Insulated says that duct, cabinet and suction line are insulated and do not sweat.
	Insulated Answer `json:"insulated,omitzero"`
	// Above says that the unit stands where an overflow harms the building: in an attic, over
	// a ceiling. Float says that it has a switch that stops it, and that the switch does.
	Above Answer `json:"above,omitzero"`
	Float Answer `json:"float,omitzero"`
}

// A Report is what the looks show.
type Report struct {
	// Finding is what is wrong first; zero where nothing is, as far as was looked.
	Finding fact.Fact    `json:"finding,omitzero"`
	Checks  []fact.Check `json:"checks,omitempty"`
	// Plan is what to do, in order: what was found is put right, else the next look.
	Plan     []fact.Fact `json:"plan"`
	Cautions []fact.Fact `json:"cautions"`
}
