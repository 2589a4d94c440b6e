package satline

import "time"

// Conditions are what the technician sees and knows that no instrument shows.
// A true field is a fact that limits what readings can say; a false one means
// no or not known.
type Conditions struct {
	// Running is how long the machine has run without a stop, up to 366 days.
	Running time.Duration `json:"running,omitzero"`
	// ReadAt is when Visit.Readings were taken, on the clock of Log and Moves. Where
	// refrigerant was moved and it is not given, they count as taken before.
	ReadAt time.Duration `json:"readAt,omitzero"`
	// Mode of operation; where it is not stated it is found by the readings, or asked.
	Mode Mode `json:"mode,omitzero"`
	// CapacityShare is the part of its full capacity that a machine of more than one stage
	// was running at, 0.1 to 1: about 0.7 in the first of two stages, 0.4 at 40 %.
	CapacityShare float64 `json:"capacityShare,omitzero"`
	// CoilWet says that the outdoor coil is wet from washing or rain.
	CoilWet bool `json:"coilWet,omitzero"`
	// PanelsOff says that access panels or doors of the unit are open.
	PanelsOff bool `json:"panelsOff,omitzero"`
	// DoorsOpen says that the building is open, so the load is not its own.
	DoorsOpen bool `json:"doorsOpen,omitzero"`
	// EconomizerOpen says that outdoor air is being drawn in.
	EconomizerOpen bool `json:"economizerOpen,omitzero"`
	// CondenserFanCycling says that a control stops and starts the outdoor fan.
	CondenserFanCycling bool `json:"condenserFanCycling,omitzero"`
	// CoilIced says that ice or frost is on the indoor coil or suction line; in heating, that
	// ice on the outdoor coil stays.
	CoilIced bool `json:"coilIced,omitzero"`
	// FilterDirty and OutdoorCoilDirty are judged by eye.
	FilterDirty      bool `json:"filterDirty,omitzero"`
	OutdoorCoilDirty bool `json:"outdoorCoilDirty,omitzero"`
	// SealedSystemOpened says that the circuit was open to air lately, and was not evacuated and
	// charged anew since.
	SealedSystemOpened bool `json:"sealedSystemOpened,omitzero"`
	// ChargeWeighed says that the circuit was emptied and evacuated and its whole charge weighed
	// in, before the readings and whatever stands in Moves. It ends SealedSystemOpened.
	ChargeWeighed bool `json:"chargeWeighed,omitzero"`
	// OilStains says that oil marks a joint or a valve.
	OilStains bool `json:"oilStains,omitzero"`
}

// opened says that the circuit was opened, and nothing was weighed in since.
func (c *Conditions) opened() bool { return c.SealedSystemOpened && !c.ChargeWeighed }
