package work

import (
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/airside/drain"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// An Order is one job at one machine on one day. What is not known or was not done is left
// out; Judge says what its tasks miss. The JSON form is documented by
// testdata/schema/order.schema.json.
type Order struct {
	// Title names the job in the record.
	Title string `json:"title,omitzero"`
	// Number is that of the job in the books of whoever keeps them.
	Number string `json:"number,omitzero"`
	// Units is the system that sentences are written in, "IP" or "SI".
	Units quantity.System `json:"units,omitzero"`
	// Language that sentences are written in; English where it is not given.
	Language satline.Language `json:"language,omitzero"`

	// Start and End of the job, as the clock on the wall shows them.
	Start time.Time `json:"start,omitzero"`
	End   time.Time `json:"end,omitzero"`

	Technician Technician `json:"technician,omitzero"`
	// Customer is who the machine is kept for, Address where it stands.
	Customer string `json:"customer,omitzero"`
	Address  string `json:"address,omitzero"`
	// Complaint is what the customer asks about.
	Complaint satline.Complaint `json:"complaint,omitzero"`
	Machine   Machine           `json:"machine"`
	// Tasks are what the job is for; at least one.
	Tasks []Task `json:"tasks,omitempty"`

	// Before and After are the readings before and after the work. What they do not say of
	// the equipment, the site, units and language is taken from the order.
	Before *satline.Visit `json:"before,omitempty"`
	After  *satline.Visit `json:"after,omitempty"`

	// Recovery is the refrigerant taken out before the circuit is opened.
	Recovery *RecoveryPart `json:"recovery,omitempty"`
	// Leaks are the places where one was found.
	Leaks []Leak `json:"leaks,omitempty"`
	// Nitrogen are the pressure tests, in order; the last one counts.
	Nitrogen []NitrogenPart `json:"nitrogen,omitempty"`
	// Joints made on site, of circuits with a flammable refrigerant.
	Joints []JointPart `json:"joints,omitempty"`
	// Evacuations in order; the last one counts.
	Evacuations []EvacuationPart `json:"evacuations,omitempty"`
	// Cylinders that were on the scale: what went out of them went into the machine. One that
	// took and gave on the same day stands twice.
	Cylinders []Cylinder `json:"cylinders,omitempty"`
	// Water are the looks at pan, drain and float, in order; the last counts.
	Water []drain.Readings `json:"water,omitempty"`
	// Air is what was measured of airflow, static pressure and the parts of the duct.
	// What it does not say of the label and the site is taken from the machine.
	Air *airside.Survey `json:"air,omitempty"`
	// Checklist holds what was looked at; the checks of a task are listed by Checks.
	Checklist []Checked `json:"checklist,omitempty"`

	// Parts that were fitted.
	Parts []InstalledPart `json:"parts,omitempty"`
	// Done and Left are what else was done, and what is left for another day, in the
	// technician's own words.
	Done  []string `json:"done,omitempty"`
	Left  []string `json:"left,omitempty"`
	Notes string   `json:"notes,omitzero"`
}

// A Technician is who does the work and signs for it.
type Technician struct {
	Name    string `json:"name,omitzero"`
	License string `json:"license,omitzero"`
}

// A Machine is what the work is done at.
type Machine struct {
	// Name is what people call it.
	Name string `json:"name,omitzero"`
	// Make, Model and Serial as its label has them.
	Make   string `json:"make,omitzero"`
	Model  string `json:"model,omitzero"`
	Serial string `json:"serial,omitzero"`
	// Equipment is what it is, with what its label says.
	Equipment satline.Equipment `json:"equipment,omitzero"`
	Site      satline.Site      `json:"site,omitzero"`
	Ports     Ports             `json:"ports,omitzero"`
	Use       Use               `json:"use,omitzero"`
	// LowSideDesign is the design pressure of the low side on the label. No test goes above it.
	LowSideDesign quantity.GaugePressure `json:"lowSideDesign,omitzero"`
	// FullCharge of the whole appliance where it is more than label, line and parts say.
	FullCharge quantity.Mass `json:"fullCharge,omitzero"`
	// Precharged says that a new machine came from the factory with the charge of its label.
	Precharged bool `json:"precharged,omitzero"`
}

// A Reading is what the gauges on a circuit at rest show at a moment.
type Reading struct {
	// At counts from the start of that part of the work.
	At time.Duration `json:"at" strict:"required"`
	// Vacuum is absolute, by a vacuum gauge at the circuit and not at the pump.
	Vacuum *quantity.Pressure `json:"vacuum,omitempty"`
	// Pressure is by a gauge on the circuit.
	Pressure *quantity.Uncertain[quantity.GaugePressure] `json:"pressure,omitempty"`
	// Gas is the temperature of the gas: of the pipe in the shade.
	Gas *quantity.Uncertain[quantity.Temperature] `json:"gas,omitempty"`
}

// A RecoveryPart is how the circuit was emptied.
type RecoveryPart struct {
	// Readings of the pressure, to the end and after the machine was stopped: the last one
	// counts, since what boils out of the oil brings the pressure back.
	Readings []Reading `json:"readings,omitempty"`
	// Leaking says that the circuit cannot be pulled below the atmosphere without drawing in
	// air.
	Leaking bool `json:"leaking,omitzero"`
}

// A Leak is a place where one was found.
type Leak struct {
	Where string `json:"where" strict:"required"`
	// Mended says how, and is left out where it was not.
	Mended string `json:"mended,omitzero"`
}

// A NitrogenPart is a pressure test with dry nitrogen.
type NitrogenPart struct {
	Readings []Reading `json:"readings,omitempty"`
}

// A JointPart is the leak test of a joint made on site, for a flammable refrigerant.
type JointPart struct {
	Where string `json:"where,omitzero"`
	// Applied is the pressure in the joint, PerYear the smallest leak that the method shows, as
	// refrigerant a year: "5 g"; Found says that one was found.
	Applied quantity.GaugePressure `json:"applied"`
	PerYear quantity.Mass          `json:"perYear"`
	Found   bool                   `json:"found,omitzero"`
}

// An EvacuationPart is a vacuum that was pulled, and the decay test after it.
type EvacuationPart struct {
	// Decay is read from the moment the pump is valved off.
	Decay []Reading `json:"decay,omitempty"`
	// Maker holds the limits of the unit's maker, where it states them.
	Maker charge.DecayLimits `json:"maker,omitzero"`
}

// A Cylinder is a refrigerant cylinder on the scale.
type Cylinder struct {
	Name string `json:"name"`
	// Refrigerant in it; empty for one that is evacuated and empty.
	Refrigerant string       `json:"refrigerant,omitzero"`
	Kind        CylinderKind `json:"kind,omitzero"`
	// WaterCapacity, Tare and Service as the collar is stamped: WC, TW, and the pressure behind
	// DOT.
	WaterCapacity quantity.Mass          `json:"waterCapacity,omitzero"`
	Tare          quantity.Mass          `json:"tare,omitzero"`
	Service       quantity.GaugePressure `json:"service,omitzero"`
	// Tested is when it was last tested, as stamped: "2023-04".
	Tested time.Time `json:"tested,omitzero"`
	// Before and After are what the scale showed, cylinder and all.
	Before quantity.Mass `json:"before,omitzero"`
	After  quantity.Mass `json:"after,omitzero"`
}

// collar is the cylinder as it is stamped.
func (c Cylinder) collar() refrigerant.Cylinder {
	return refrigerant.Cylinder{WaterCapacity: c.WaterCapacity, Tare: c.Tare, Service: c.Service}
}

// moved is what left the cylinder; below zero for what went in.
func (c Cylinder) moved() quantity.Mass {
	if c.Before == 0 || c.After == 0 {
		return 0
	}
	return c.Before - c.After
}

// Checked is one line of a checklist.
type Checked struct {
	Check Item `json:"check"`
	// Good says that it is as it should be; Note what there is to say of it.
	Good bool   `json:"good"`
	Note string `json:"note,omitzero"`
	// NotHere says that the machine has no such thing.
	NotHere bool `json:"notHere,omitzero"`
}

// An InstalledPart is a part that was put in.
type InstalledPart struct {
	Name   string `json:"name"`
	Number string `json:"number,omitzero"`
}
