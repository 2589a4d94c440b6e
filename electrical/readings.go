package electrical

import "github.com/satline/satline/quantity"

// Readings are what was read and seen. Everything that is not known is left out; a zero that
// was read is a reading: "0 V". But for windings and insulation, all is read while the
// thermostat calls for cooling. An uncertainty that is not stated is that of a sound clamp
// meter: 0.6 % of a voltage, 1.2 % and 0.1 A of a current, 1.5 % of a capacitance, 1 % and
// 0.1 Ω of a resistance (common practice, no source).
type Readings struct {
	Nameplate Nameplate `json:"nameplate,omitzero"`
	Supply    Supply    `json:"supply,omitzero"`
	Control   Control   `json:"control,omitzero"`
	Contactor Contactor `json:"contactor,omitzero"`

	Compressor Motor `json:"compressor,omitzero"`
	OutdoorFan Motor `json:"outdoorFan,omitzero"`
	IndoorFan  Motor `json:"indoorFan,omitzero"`
}

// Short names for readings; nil where there is none.
type (
	volts   = quantity.Uncertain[quantity.Voltage]
	amperes = quantity.Uncertain[quantity.Current]
	ohms    = quantity.Uncertain[quantity.Resistance]
	farads  = quantity.Uncertain[quantity.Capacitance]
)

// A Nameplate is the electrical part of the label. Zero fields are not stated.
type Nameplate struct {
	// Voltage is the rated one, 100 V to 700 V, the lower of a label that states two, as
	// 208/230 V; HighVoltage is the other.
	Voltage     quantity.Voltage `json:"voltage,omitzero"`
	HighVoltage quantity.Voltage `json:"highVoltage,omitzero"`
	// MinVoltage and MaxVoltage are the limits, where the label prints them.
	MinVoltage quantity.Voltage `json:"minVoltage,omitzero"`
	MaxVoltage quantity.Voltage `json:"maxVoltage,omitzero"`
	// Phases is 1 or 3; zero stands for 1.
	Phases int `json:"phases,omitzero"`
	// Inverter says that an inverter drives the compressor: it has no run capacitor, and its
	// board tells more than its currents.
	Inverter bool `json:"inverter,omitzero"`
	// Frequency of the supply, 45 Hz to 65 Hz; zero stands for 60 Hz.
	Frequency quantity.Frequency `json:"frequency,omitzero"`
}

// A Supply is read line to line at the line side of the contactor: one voltage on one phase;
// three on three phases, L1-L2, L2-L3, L3-L1.
type Supply struct {
	AtRest  []quantity.Uncertain[quantity.Voltage] `json:"atRest,omitempty"`
	Running []quantity.Uncertain[quantity.Voltage] `json:"running,omitempty"`
	// Starting is the least that is seen while the compressor starts, or tries to.
	Starting []quantity.Uncertain[quantity.Voltage] `json:"starting,omitempty"`
}

// Control is the low-voltage circuit.
type Control struct {
	// Rated voltage of the transformer's secondary; zero stands for 24 V.
	Rated quantity.Voltage `json:"rated,omitzero"`
	// Transformer is read across the secondary, Coil across the coil of the contactor.
	Transformer *quantity.Uncertain[quantity.Voltage] `json:"transformer,omitzero"`
	Coil        *quantity.Uncertain[quantity.Voltage] `json:"coil,omitzero"`
	// Across holds what is read across each switch in the circuit: next to nothing where it
	// is closed, the voltage of the circuit where it is the one that is open.
	Across []SwitchReading `json:"across,omitempty"`
}

// A SwitchReading is the voltage across a switch.
type SwitchReading struct {
	Switch  Switch                               `json:"switch" strict:"required"`
	Voltage quantity.Uncertain[quantity.Voltage] `json:"voltage" strict:"required"`
}

// A Contactor joins the supply to compressor and outdoor fan.
type Contactor struct {
	// PulledIn says whether its contacts are held in.
	PulledIn *bool `json:"pulledIn,omitzero"`
	// Drops are read from the line to the load side of each pole while the machine runs.
	Drops []quantity.Uncertain[quantity.Voltage] `json:"drops,omitempty"`
	// Pitted says that contacts are seen burnt, pitted or welded, or insects between them.
	Pitted bool `json:"pitted,omitzero"`
}

// A Motor is a fan's or the compressor's.
type Motor struct {
	State MotorState `json:"state,omitzero"`
	// AtTerminals is the voltage at its wires; for a start, at the load side of the contactor.
	AtTerminals *quantity.Uncertain[quantity.Voltage] `json:"atTerminals,omitzero"`
	// Currents holds the one of one phase, of the common wire, or the three of three phases.
	Currents []quantity.Uncertain[quantity.Current] `json:"currents,omitempty"`
	// RatedLoad is RLA of a compressor, FLA of a fan; MaxContinuous what the compressor may draw
	// without end (MCC), and LockedRotor LRA, of the label.
	RatedLoad     quantity.Current `json:"ratedLoad,omitzero"`
	MaxContinuous quantity.Current `json:"maxContinuous,omitzero"`
	LockedRotor   quantity.Current `json:"lockedRotor,omitzero"`

	RunCapacitor   *Capacitor `json:"runCapacitor,omitzero"`
	StartCapacitor *Capacitor `json:"startCapacitor,omitzero"`

	// Windings and ToGround are read locked out, the wires off the terminals.
	Windings *Windings `json:"windings,omitzero"`
	// ToGround is the insulation of the windings to the housing, by an insulation tester.
	ToGround *quantity.Uncertain[quantity.Resistance] `json:"toGround,omitzero"`
	// Hot says that its housing is too hot to touch: what reads open to its common wire may be
	// the overload within, until it is cold.
	Hot bool `json:"hot,omitzero"`
	// Tight says that the fan does not turn freely by hand, locked out.
	Tight bool `json:"tight,omitzero"`
}

// A Capacitor is one section of one.
type Capacitor struct {
	Rated quantity.Capacitance `json:"rated" strict:"required"`
	// Below and Above are the tolerance on its label; both zero stand for 6 % of a run
	// capacitor, and for 0 % below and 20 % above of a start capacitor.
	Below quantity.Ratio `json:"below,omitzero"`
	Above quantity.Ratio `json:"above,omitzero"`
	// RatedVoltage of the label.
	RatedVoltage quantity.Voltage `json:"ratedVoltage,omitzero"`
	// Measured is read by a meter: locked out, discharged, its wires off.
	Measured *quantity.Uncertain[quantity.Capacitance] `json:"measured,omitzero"`
	// Current through it and Voltage across it are read while the motor runs.
	Current *quantity.Uncertain[quantity.Current] `json:"current,omitzero"`
	Voltage *quantity.Uncertain[quantity.Voltage] `json:"voltage,omitzero"`
	// Bulged says that its case is swollen, leaks or is burnt.
	Bulged bool `json:"bulged,omitzero"`
}

// Windings are resistances between terminals. Where the meter shows an open line, write the
// end of its range: "40 megohm".
type Windings struct {
	// CommonRun, CommonStart and StartRun are those of one phase.
	CommonRun   *quantity.Uncertain[quantity.Resistance] `json:"commonRun,omitzero"`
	CommonStart *quantity.Uncertain[quantity.Resistance] `json:"commonStart,omitzero"`
	StartRun    *quantity.Uncertain[quantity.Resistance] `json:"startRun,omitzero"`
	// Lines are those of three phases, T1-T2, T2-T3, T3-T1.
	Lines []quantity.Uncertain[quantity.Resistance] `json:"lines,omitempty"`
}
