package work

import "github.com/satline/satline/internal/base/enum"

// A Task is what a job is for. A task asks for what it needs, and no more.
type Task int

// The tasks.
const (
	// FindFault finds why a machine does not do what it should.
	FindFault Task = iota + 1
	// SetCharge brings the charge to its target, or weighs it in where the machine has no
	// port to read it by.
	SetCharge
	// Commission installs a machine and starts it for the first time.
	Commission
	// RepairLeak finds a leak, mends it and fills the machine again.
	RepairLeak
	// OpenCircuit opens the circuit, for a new part, and closes it.
	OpenCircuit
	// Maintain is the yearly service.
	Maintain
	// WeighIn fills an empty, tight and evacuated circuit by weight.
	WeighIn
	// CheckCylinder tells what a cylinder holds and what it may still take.
	CheckCylinder
)

var taskNames = []string{
	"not stated", "find the fault", "set the charge", "commission", "repair a leak",
	"open the circuit", "maintain", "weigh in", "check a cylinder",
}

// String returns the task as the JSON form writes it.
func (t Task) String() string { return enum.Name(taskNames, t) }

// MarshalText writes the name of the task.
func (t Task) MarshalText() ([]byte, error) { return enum.Text("task", taskNames, t) }

// UnmarshalText reads what String writes.
func (t *Task) UnmarshalText(text []byte) error { return enum.Parse("task", taskNames, text, t) }

// Use is what an appliance is used for, as the rules on leaks sort it.
type Use int

// The uses. ComfortCooling is taken where none is stated.
const (
	ComfortCooling Use = iota + 1
	// LightComfortCooling is residential and light commercial air conditioning, which 40 CFR 84
	// subpart C leaves out.
	LightComfortCooling
	CommercialRefrigeration
	IndustrialProcess
	OtherUse
)

var useNames = []string{
	"not stated", "comfort cooling", "light comfort cooling", "commercial refrigeration",
	"industrial process refrigeration", "other",
}

// String returns the use as the JSON form writes it.
func (u Use) String() string { return enum.Name(useNames, u) }

// MarshalText writes the name of the use.
func (u Use) MarshalText() ([]byte, error) { return enum.Text("use", useNames, u) }

// UnmarshalText reads what String writes.
func (u *Use) UnmarshalText(text []byte) error { return enum.Parse("use", useNames, text, u) }

// Ports are the service ports that a machine has.
type Ports int

// The ports. Where they are not stated a machine has both, but for one whose metering device
// stands outdoors: its one port is on the suction side in cooling.
const (
	SuctionAndLiquid Ports = iota + 1
	SuctionOnly
	NoPorts
)

var portNames = []string{"not stated", "suction and liquid", "suction only", "none"}

// String returns the ports as the JSON form writes them.
func (p Ports) String() string { return enum.Name(portNames, p) }

// MarshalText writes the name of the ports.
func (p Ports) MarshalText() ([]byte, error) { return enum.Text("ports", portNames, p) }

// UnmarshalText reads what String writes.
func (p *Ports) UnmarshalText(text []byte) error { return enum.Parse("ports", portNames, text, p) }

// A CylinderKind tells what a cylinder may be used for.
type CylinderKind int

// The kinds of cylinder.
const (
	// Disposable cylinders come filled and are never filled again (DOT 39).
	Disposable CylinderKind = iota + 1
	// Refillable cylinders come filled and go back.
	Refillable
	// Recovery cylinders take what comes out of machines.
	Recovery
)

var cylinderKindNames = []string{"not stated", "disposable", "refillable", "recovery"}

// String returns the kind as the JSON form writes it.
func (k CylinderKind) String() string { return enum.Name(cylinderKindNames, k) }

// MarshalText writes the name of the kind.
func (k CylinderKind) MarshalText() ([]byte, error) {
	return enum.Text("kind of cylinder", cylinderKindNames, k)
}

// UnmarshalText reads what String writes.
func (k *CylinderKind) UnmarshalText(text []byte) error {
	return enum.Parse("kind of cylinder", cylinderKindNames, text, k)
}
