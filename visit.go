package satline

import (
	"time"

	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
)

// A Visit is what a technician knows about one machine on one occasion. Every
// field that is not known is left out; Assess says which missing reading it
// needs. The JSON form is documented by testdata/schema/visit.schema.json.
type Visit struct {
	// Title names the visit in the record: "Reading room unit 2". At most 200 bytes.
	Title string `json:"title,omitzero"`
	// Units is the system that sentences are written in, "IP" or "SI".
	Units quantity.System `json:"units,omitzero"`
	// Language that sentences are written in; English where it is not given.
	Language Language `json:"language,omitzero"`

	Equipment   Equipment   `json:"equipment,omitzero"`
	Site        Site        `json:"site,omitzero"`
	Instruments Instruments `json:"instruments,omitzero"`
	// House holds rules of the firm beside those of the trade.
	House *House `json:"house,omitzero"`
	// Readings are the ones to judge the machine by. Where Log has later ones,
	// their means over its last steady stretch take their place, or the last of them
	// where nothing is steady yet; one that Log holds only before the last move, as it holds
	// it last.
	Readings Readings `json:"readings,omitzero"`
	// Log holds readings over time, in order; see LogEntry.
	Log []LogEntry `json:"log,omitempty"`
	// Electrical holds what the meter shows of supply, control circuit and motors.
	Electrical *electrical.Readings `json:"electrical,omitzero"`
	// Charge moved during the visit, in order.
	Moves []Move `json:"moves,omitempty"`

	Conditions Conditions `json:"conditions,omitzero"`
	// Checks are the answers to looks and tests that an assessment asked for, each
	// at most once.
	Checks []Check `json:"checks,omitempty"`
	// Complaint is what the customer asks about.
	Complaint Complaint `json:"complaint,omitzero"`
	// Scope of the assessment; the whole of it where not given.
	Scope Scope `json:"scope,omitzero"`
	// Notes go into the record, as Title does, with what steers a terminal or turns the
	// direction of writing shown as U+FFFD.
	Notes string `json:"notes,omitzero"`
}

// Short names for what is read and what follows from it.
type (
	temperatureReading = quantity.Uncertain[quantity.Temperature]
	gaugeReading       = quantity.Uncertain[quantity.GaugePressure]
	deltaReading       = quantity.Uncertain[quantity.TemperatureDelta]
)

// Readings are taken together, at one time. Gauge pressures count from the atmosphere of the site,
// up to 1,500 psig at the suction port and 2,500 psig elsewhere. Pipes are at -60 °C to 100 °C, a
// liquid line up to 110 °C and a discharge line up to 200 °C; air is at -40 °C to 75 °C.
type Readings struct {
	// SuctionPressure is read at the suction service port; on a heat pump in heating at the
	// true suction port, since the large line carries hot gas then.
	SuctionPressure Reading[quantity.GaugePressure] `json:"suctionPressure,omitzero"`
	// LiquidPressure is read at the liquid line service port.
	LiquidPressure Reading[quantity.GaugePressure] `json:"liquidPressure,omitzero"`
	// DischargePressure is read at the compressor discharge. Where there is no
	// LiquidPressure it stands in for it, less a correction, with a wider
	// uncertainty.
	DischargePressure Reading[quantity.GaugePressure] `json:"dischargePressure,omitzero"`

	// SuctionLine is the pipe temperature near the compressor.
	SuctionLine Reading[quantity.Temperature] `json:"suctionLine,omitzero"`
	// BulbLine is the pipe temperature at the outlet of the evaporator, where the bulb of the
	// valve sits; in a cold room it is far from the compressor.
	BulbLine Reading[quantity.Temperature] `json:"bulbLine,omitzero"`
	// LiquidLine is the pipe temperature at the condenser outlet; in heating that is indoors.
	LiquidLine Reading[quantity.Temperature] `json:"liquidLine,omitzero"`
	// LiquidAtValve is the liquid line just ahead of the metering device, past drier and solenoid
	// valve: what it is colder tells of a restriction between, in heating and in cold rooms.
	LiquidAtValve Reading[quantity.Temperature] `json:"liquidAtValve,omitzero"`
	// DischargeLine is the pipe temperature about 6 in (150 mm) from the
	// compressor.
	DischargeLine Reading[quantity.Temperature] `json:"dischargeLine,omitzero"`

	// OutdoorDryBulb is the air entering the condenser, in the shade.
	OutdoorDryBulb Reading[quantity.Temperature] `json:"outdoorDryBulb,omitzero"`
	// CondenserLeaving is the air leaving the condenser; in heating, the outdoor coil.
	CondenserLeaving Reading[quantity.Temperature] `json:"condenserLeaving,omitzero"`
	// ReturnDryBulb and ReturnWetBulb are the air entering the indoor coil.
	ReturnDryBulb Reading[quantity.Temperature] `json:"returnDryBulb,omitzero"`
	ReturnWetBulb Reading[quantity.Temperature] `json:"returnWetBulb,omitzero"`
	// SupplyDryBulb and SupplyWetBulb are the air leaving the indoor coil.
	SupplyDryBulb Reading[quantity.Temperature] `json:"supplyDryBulb,omitzero"`
	SupplyWetBulb Reading[quantity.Temperature] `json:"supplyWetBulb,omitzero"`

	// Airflow through the indoor coil, at the condition of the air itself.
	Airflow Reading[quantity.VolumeFlow] `json:"airflow,omitzero"`
	// ExternalStatic is the total external static pressure of the blower.
	ExternalStatic Reading[quantity.StaticPressure] `json:"externalStatic,omitzero"`
	// Power is the electric power of the whole machine.
	Power Reading[quantity.Power] `json:"power,omitzero"`
	// CompressorCurrent is the current of the compressor alone.
	CompressorCurrent Reading[quantity.Current] `json:"compressorCurrent,omitzero"`
}

// A LogEntry is a set of readings at a moment since some start of the visit.
type LogEntry struct {
	// At counts from any one moment of the visit, the same for all entries: 0 to 366 days.
	At time.Duration `json:"at" strict:"required"`
	Readings
}

// A Move is refrigerant added to or recovered from the machine, on the clock of the log. Exactly
// one of Added and Recovered is set, up to 500 kg.
type Move struct {
	At        time.Duration `json:"at" strict:"required"`
	Added     quantity.Mass `json:"added,omitzero"`
	Recovered quantity.Mass `json:"recovered,omitzero"`
}

// Site is where the machine stands.
type Site struct {
	Name string `json:"name,omitzero"`
	// Elevation above sea level, from -450 m to 5500 m; the atmosphere follows from
	// it. Where neither it nor the barometer is given, sea level is assumed, with
	// the doubt of not knowing.
	Elevation *quantity.Length `json:"elevation,omitzero"`
	// Barometer is the pressure of the atmosphere, from 50 kPa to 110 kPa, where it
	// was read at the site itself; not the pressure "reduced to sea level" of a
	// weather report. It comes before the elevation.
	Barometer *quantity.Pressure `json:"barometer,omitzero"`
}

// Instruments states the standard uncertainty of readings that do not state their own, about half
// of the maker's accuracy: up to 50 psi and 10 K. Zero fields take that of DefaultInstruments.
type Instruments struct {
	// Gauge is written as a difference or as a gauge shows it: "0.6 psi", "0.6 psig".
	Gauge       quantity.GaugePressure    `json:"gauge,omitzero" strict:"uncertainty"`
	Clamp       quantity.TemperatureDelta `json:"clamp,omitzero"`
	Thermometer quantity.TemperatureDelta `json:"thermometer,omitzero"`
	WetBulb     quantity.TemperatureDelta `json:"wetBulb,omitzero"`
	// The uncertainty of an instrument that is specified in parts of its reading, from 0 to
	// 0.5: 0.01 is one per cent. That of a gauge adds to Gauge as one of an independent cause
	// does; the others take the place of 7 % of an airflow, 5 % of a static pressure and 3 %
	// of a power and a current (common practice, no source).
	GaugePart   float64 `json:"gaugePart,omitzero"`
	AirflowPart float64 `json:"airflowPart,omitzero"`
	StaticPart  float64 `json:"staticPart,omitzero"`
	PowerPart   float64 `json:"powerPart,omitzero"`
	CurrentPart float64 `json:"currentPart,omitzero"`
}

// DefaultInstruments are standard uncertainties of sound field instruments in
// sound use: a digital gauge within 1 psi, a pipe clamp within about 1.5 °F, an
// air thermometer within 1 °F and a wet bulb within 1.2 °F, each limit taken as
// a rectangular distribution (GUM 4.3.7). Common practice, no source; state
// your own instruments' where you know them.
func DefaultInstruments() Instruments {
	return Instruments{
		Gauge:       quantity.PSIG(0.6),
		Clamp:       quantity.FahrenheitDelta(0.9),
		Thermometer: quantity.FahrenheitDelta(0.6),
		WetBulb:     quantity.FahrenheitDelta(0.7),
		AirflowPart: 0.07, StaticPart: 0.05, PowerPart: 0.03, CurrentPart: 0.03,
	}
}
