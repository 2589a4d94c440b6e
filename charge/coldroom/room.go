package coldroom

import (
	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
)

// A Room is what is known of a cold room and of the machine that keeps it. Every field that
// is not known is left out.
type Room struct {
	Application Application `json:"application,omitzero"`
	// Setpoint is the temperature that it is kept at, from Coldest to Warmest.
	Setpoint *quantity.Temperature `json:"setpoint,omitzero"`
	// Receiver says whether the machine has one; absent where nobody looked.
	Receiver *bool   `json:"receiver,omitzero"`
	Defrost  Defrost `json:"defrost,omitzero"`
	// PumpDown says that the thermostat closes a solenoid valve and the low-pressure control
	// stops the compressor.
	PumpDown bool `json:"pumpDown,omitzero"`
	// Load is what the room takes in, by its load sheet, as the mean of a day.
	Load quantity.Power `json:"load,omitzero"`
}

// Coldest and Warmest are -60 °F and 65 °F, between which a cold room is kept.
const (
	Coldest = quantity.Temperature((-60 + 459.67) / 1.8)
	Warmest = quantity.Temperature((65 + 459.67) / 1.8)
)

// Application is what a cold room is for.
type Application int

// The applications.
const (
	// WalkInCooler keeps food that is not frozen.
	WalkInCooler Application = iota + 1
	// WalkInFreezer keeps frozen food.
	WalkInFreezer
	// ReachInCooler is a cabinet with its own small machine.
	ReachInCooler
	// ReachInFreezer is a cabinet for frozen food.
	ReachInFreezer
	// DisplayCase shows what it keeps, behind glass or an air curtain.
	DisplayCase
	// ProduceCooler keeps fruit, vegetables or flowers moist.
	ProduceCooler
	// WorkRoom is a room in which people prepare food.
	WorkRoom
)

// Defrost is how ice is taken off the evaporator.
type Defrost int

// The defrosts.
const (
	// OffCycle lets the fans melt it while the compressor rests; for boxes above freezing.
	OffCycle Defrost = iota + 1
	// Electric melts it with heaters.
	Electric
	// HotGas melts it with discharge gas.
	HotGas
)

var (
	applicationNames = []string{
		"not stated", "walk-in cooler", "walk-in freezer", "reach-in cooler", "reach-in freezer",
		"display case", "produce cooler", "work room",
	}
	defrostNames = []string{"not stated", "off-cycle", "electric", "hot gas"}
)

// String returns the application as the JSON form writes it.
func (a Application) String() string { return enum.Name(applicationNames, a) }

// MarshalText implements encoding.TextMarshaler.
func (a Application) MarshalText() ([]byte, error) {
	return enum.Text("application", applicationNames, a)
}

// UnmarshalText reads the names that String writes.
func (a *Application) UnmarshalText(text []byte) error {
	return enum.Parse("application", applicationNames, text, a)
}

// String returns the defrost as the JSON form writes it.
func (d Defrost) String() string { return enum.Name(defrostNames, d) }

// MarshalText implements encoding.TextMarshaler.
func (d Defrost) MarshalText() ([]byte, error) { return enum.Text("defrost", defrostNames, d) }

// UnmarshalText reads the names that String writes.
func (d *Defrost) UnmarshalText(text []byte) error {
	return enum.Parse("defrost", defrostNames, text, d)
}

// KeepsFood reports whether food lies in such a room for longer than it is worked on; true
// where the application is not stated.
func (a Application) KeepsFood() bool { return a != WorkRoom }
