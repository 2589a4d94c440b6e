package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Equipment is what the machine is. What its label says outranks any general
// rule, so give it wherever it can be read.
type Equipment struct {
	// Refrigerant by its ASHRAE 34 designation, in any usual spelling.
	Refrigerant string `json:"refrigerant"`
	// Metering is the expansion device at the indoor coil. Where it is not stated, a machine that
	// cools is judged as with each that it may have; what hangs on it waits until it is told.
	Metering Metering `json:"metering,omitzero"`
	// Restrictor is the bore of the fixed restrictor that is fitted, by the number on it: 0.3 to
	// 6 mm.
	Restrictor quantity.Length `json:"restrictor,omitzero"`
	// Arrangement of the machine.
	Arrangement Arrangement `json:"arrangement,omitzero"`
	// Stages of the compressor.
	Stages Stages `json:"stages,omitzero"`
	// NominalCapacity as rated for cooling, 500 W to 200 ton.
	NominalCapacity quantity.Power `json:"nominalCapacity,omitzero"`
	// Label holds what the manufacturer states for this machine.
	Label Label `json:"label,omitzero"`
	// LineSet joins the two halves of a split system.
	LineSet LineSet `json:"lineSet,omitzero"`
	// Accessories hold refrigerant that the label does not count: a filter
	// drier, an accumulator.
	Accessories []charge.Accessory `json:"accessories,omitempty"`
	// ColdRoom is what a machine for refrigeration keeps cold.
	ColdRoom coldroom.Room `json:"coldRoom,omitzero"`
}

// Label is what the nameplate, charging chart or installation instructions of
// the machine itself say. Zero fields are not stated.
type Label struct {
	// Charge as it is shipped, 50 g to 500 kg; Subcooling that it is set to, up to 30 K.
	Charge     quantity.Mass                                  `json:"charge,omitzero"`
	Subcooling *quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling,omitzero"`
	// Superheat is the target the unit's own chart gives for the conditions of
	// this visit, up to 40 K.
	Superheat *quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat,omitzero"`
	// Approach is the liquid line temperature above the outdoor air, up to 30 K.
	Approach *quantity.Uncertain[quantity.TemperatureDelta] `json:"approach,omitzero"`
	// Tolerance is how far off its target the maker lets the reading be, either
	// way, where the label states it: 0.1 to 15 K.
	Tolerance quantity.TemperatureDelta `json:"tolerance,omitzero"`
	// LineAdder is the charge per length of liquid line beyond FactoryLineSet;
	// it outranks the one that is computed from the liquid line's diameter.
	LineAdder *charge.Adder `json:"lineAdder,omitzero"`
	// FactoryLineSet is the length of line set that Charge allows for, up to 100 m.
	FactoryLineSet quantity.Length `json:"factoryLineSet,omitzero"`
	// RatedAirflow through the indoor coil, 50 to 100,000 CFM.
	RatedAirflow quantity.VolumeFlow `json:"ratedAirflow,omitzero"`
	// MaxExternalStatic is the blower's limit, up to 2,500 Pa.
	MaxExternalStatic quantity.StaticPressure `json:"maxExternalStatic,omitzero"`
	// Restrictor is the bore of the fixed restrictor that the outdoor unit wants, 0.3 to 6 mm.
	Restrictor quantity.Length `json:"restrictor,omitzero"`
	// RatedLoadCurrent of the compressor, 0.5 to 1,000 A.
	RatedLoadCurrent quantity.Current `json:"ratedLoadCurrent,omitzero"`
	// Year in which it was made, 1950 to 2100: what a sound machine reads has changed.
	Year int `json:"year,omitzero"`
	// SEER and SEER2 are the seasonal efficiency, in Btu/Wh by either rating, 5 to 45. What
	// a sound machine reads goes with it.
	SEER  float64 `json:"seer,omitzero"`
	SEER2 float64 `json:"seer2,omitzero"`
	// Normal holds rows of the maker's table of normal operating pressures, as they stand. They
	// outrank what machines of its kind read. In heating those below 65 °F outdoors count.
	Normal []NormalPressures `json:"normal,omitempty"`
}

// NormalPressures are what the maker says a sound machine reads in some weather, at the service
// ports. What is not stated of the weather is that of the rating: 95 °F outdoors, return air at
// 80 °F dry bulb and 67 °F wet bulb.
type NormalPressures struct {
	Outdoor       quantity.Temperature   `json:"outdoor,omitzero"`
	ReturnDryBulb quantity.Temperature   `json:"returnDryBulb,omitzero"`
	ReturnWetBulb quantity.Temperature   `json:"returnWetBulb,omitzero"`
	Suction       quantity.GaugePressure `json:"suction,omitzero"`
	Liquid        quantity.GaugePressure `json:"liquid,omitzero"`
}

// A LineSet is the pair of pipes between the outdoor and the indoor half.
type LineSet struct {
	// Length is one way, up to 150 m; LiquidDiameter the outside of the liquid line, 3 to 110 mm.
	Length         quantity.Length `json:"length,omitzero"`
	LiquidDiameter quantity.Length `json:"liquidDiameter,omitzero"`
	// Device is where the metering device for cooling stands: outdoors, as in most systems
	// without ducts, the small line holds liquid and vapor. It matters where the label has no
	// LineAdder.
	Device charge.DevicePlace `json:"device,omitzero"`
}

// Metering is an expansion device; that of package refrigerant.
type Metering = refrigerant.Metering

// The expansion devices.
const (
	// FixedRestrictor is a piston or short tube: charged by superheat.
	FixedRestrictor = refrigerant.FixedRestrictor
	// TXV is a thermostatic expansion valve: charged by subcooling.
	TXV = refrigerant.TXV
	// EXV is an electronic expansion valve: charged by subcooling.
	EXV = refrigerant.EXV
	// Capillary is a long thin tube: charged by superheat.
	Capillary = refrigerant.Capillary
)

// Arrangement says how the halves of a machine stand together.
type Arrangement int

// The arrangements.
const (
	// Split has a coil indoors and a condensing unit outdoors.
	Split Arrangement = iota + 1
	// SplitHeatPump is a split system that can reverse.
	SplitHeatPump
	// Package has everything in one housing outdoors.
	Package
	// PackageHeatPump is a package unit that can reverse.
	PackageHeatPump
	// WallMounted is a package machine in or on a wall: its condenser is small.
	WallMounted
)

func (a Arrangement) reverses() bool { return a == SplitHeatPump || a == PackageHeatPump }

// inTwo reports whether a line set joins its halves, or may.
func (a Arrangement) inTwo() bool { return a < Package }

// noLiquidPort reports whether no port has liquid: what expands outdoors has none, nor has a room
// machine, which is sealed around its capillary.
func (e *Equipment) noLiquidPort() bool {
	return e.LineSet.Device == charge.DeviceOutdoors ||
		e.Arrangement == WallMounted && e.Metering == Capillary
}

// mayMeter is the valve and the fixed device that it may have, where nobody said which it has.
func (e *Equipment) mayMeter() (valve, fixed Metering) {
	valve, fixed = TXV, FixedRestrictor
	if outdoors := e.LineSet.Device == charge.DeviceOutdoors; outdoors || e.Stages == VariableSpeed {
		valve = EXV
	}
	if valve == EXV || e.Arrangement == WallMounted {
		fixed = Capillary
	}
	return valve, fixed
}

// known is the arrangement in the words of the population.
func (a Arrangement) known() population.Arrangement {
	switch a {
	case Split, SplitHeatPump:
		return population.Split
	case Package, PackageHeatPump:
		return population.Packaged
	case WallMounted:
		return population.WallMounted
	}
	return 0
}

// Stages is how a compressor varies its capacity.
type Stages int

// The stages.
const (
	SingleStage Stages = iota + 1
	TwoStage
	VariableSpeed
)

// Complaint is why the technician was called.
type Complaint int

// The complaints.
const (
	NotCooling Complaint = iota + 1
	FrozenCoil
	HighBill
	Noise
	WaterLeak
	Maintenance
	NotHeating
)

var (
	arrangementNames = []string{
		notStated, "split", "split heat pump", "package", "package heat pump", "wall-mounted",
	}
	stageNames     = []string{notStated, "single stage", "two stages", "variable speed"}
	complaintNames = []string{
		notStated, "not cooling", "frozen coil", "high bill", "noise", "water leak", "maintenance",
		"not heating",
	}
)

// notStated is how a zero is written, and read back: a visit may be kept before it is
// complete.
const notStated = "not stated"

// String returns the arrangement as the JSON form writes it.
func (a Arrangement) String() string { return enum.Name(arrangementNames, a) }

// MarshalText implements encoding.TextMarshaler.
func (a Arrangement) MarshalText() ([]byte, error) {
	return enum.Text("arrangement", arrangementNames, a)
}

// UnmarshalText reads the names that String writes.
func (a *Arrangement) UnmarshalText(text []byte) error {
	return enum.Parse("arrangement", arrangementNames, text, a)
}

// String returns the stages as the JSON form writes them.
func (s Stages) String() string { return enum.Name(stageNames, s) }

// MarshalText implements encoding.TextMarshaler.
func (s Stages) MarshalText() ([]byte, error) { return enum.Text("stages", stageNames, s) }

// UnmarshalText reads the names that String writes.
func (s *Stages) UnmarshalText(text []byte) error {
	return enum.Parse("stages", stageNames, text, s)
}

// String returns the complaint as the JSON form writes it.
func (c Complaint) String() string { return enum.Name(complaintNames, c) }

// MarshalText implements encoding.TextMarshaler.
func (c Complaint) MarshalText() ([]byte, error) {
	return enum.Text("complaint", complaintNames, c)
}

// UnmarshalText reads the names that String writes.
func (c *Complaint) UnmarshalText(text []byte) error {
	return enum.Parse("complaint", complaintNames, text, c)
}
