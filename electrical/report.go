package electrical

import "github.com/satline/satline/quantity/fact"

// A Report is what readings show.
type Report struct {
	// Finding is what is wrong first in the chain from the supply to the motor; zero where
	// nothing that was read is wrong.
	Finding fact.Fact `json:"finding,omitzero"`
	Dangers []Danger  `json:"dangers,omitempty"`
	// Plan is what to do, in order. It mends what is wrong, or asks for the next reading.
	Plan []Step `json:"plan"`
	// Checks are the readings against their limits, in the order of the chain.
	Checks   []fact.Check `json:"checks,omitempty"`
	Cautions []fact.Fact  `json:"cautions"`
	// Compressor, OutdoorFan and IndoorFan tell what each does, by what was seen or, where
	// that was not stated, by its current.
	Compressor MotorState `json:"compressor,omitzero"`
	OutdoorFan MotorState `json:"outdoorFan,omitzero"`
	IndoorFan  MotorState `json:"indoorFan,omitzero"`
}

// A Danger is what can harm people or the machine.
type Danger struct {
	Code  string `json:"code"`
	Grave bool   `json:"grave"`
	// Stops says that the machine is to be stopped, and locked out, before anything else.
	Stops  bool        `json:"stops,omitzero"`
	Says   fact.Fact   `json:"says"`
	Why    fact.Fact   `json:"why"`
	Source fact.Source `json:"source"`
}

// A Step is something to do.
type Step struct {
	Do fact.Fact `json:"do"`
	// Why is the check that the step is for.
	Why *fact.Fact `json:"why,omitzero"`
	// Locked says that it is done with the machine locked out and its capacitors discharged,
	// Live that live parts are measured.
	Locked bool `json:"locked,omitzero"`
	Live   bool `json:"live,omitzero"`
	Stops  bool `json:"stops,omitzero"`
	Starts bool `json:"starts,omitzero"`
}
