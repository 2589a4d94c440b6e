package electrical

import "github.com/satline/satline/internal/base/enum"

// The parts that a check is about, in the order of the chain.
const (
	SupplyPart     = "supply"
	ControlPart    = "control"
	ContactorPart  = "contactor"
	CompressorPart = "compressor"
	OutdoorFanPart = "outdoor-fan"
	IndoorFanPart  = "indoor-fan"
)

// State is what a motor does while the thermostat calls.
type MotorState int

// The states.
const (
	Runs MotorState = iota + 1
	// Hums: it is fed and does not turn.
	Hums
	// Silent: it neither turns nor hums.
	Silent
	// Trips: it starts, or tries to, and is cut out.
	Trips
	// Backwards: it turns the wrong way, as a scroll compressor on swapped phases does: loud, and
	// without pumping.
	Backwards
)

var states = []string{"not stated", "runs", "hums", "silent", "trips", "backwards"}

// String returns the name of the state.
func (s MotorState) String() string { return enum.Name(states, s) }

// MarshalText writes the name of String.
func (s MotorState) MarshalText() ([]byte, error) {
	return enum.Text("state of a motor", states, s)
}

// UnmarshalText reads what MarshalText writes.
func (s *MotorState) UnmarshalText(text []byte) error {
	return enum.Parse("state of a motor", states, text, s)
}

// Switch is what may open a control circuit.
type Switch int

// The switches.
const (
	OtherSwitch Switch = iota + 1
	FloatSwitch
	HighPressureSwitch
	LowPressureSwitch
	ThermostatContact
	DelayTimer
	ControlFuse
	DoorSwitch
)

var switches = []string{"not stated", "other", "float", "high pressure", "low pressure",
	"thermostat", "delay timer", "fuse", "door"}

// String returns the name of the switch.
func (s Switch) String() string { return enum.Name(switches, s) }

// MarshalText writes the name of String.
func (s Switch) MarshalText() ([]byte, error) { return enum.Text("switch", switches, s) }

// UnmarshalText reads what MarshalText writes.
func (s *Switch) UnmarshalText(text []byte) error {
	return enum.Parse("switch", switches, text, s)
}
