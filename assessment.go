package satline

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// AssessmentSchema names the version of the JSON form of an Assessment. A field
// is never removed or given another meaning under the same name of schema.
const AssessmentSchema = "satline.assessment/1"

// An Assessment is what a technician needs from a Visit: what can be believed,
// what follows from it and how surely, what to do next, and what to be careful
// of. Sentences are written in the unit system of the visit; values carry their
// own units.
type Assessment struct {
	Schema string          `json:"schema"`
	Title  string          `json:"title,omitzero"`
	Units  quantity.System `json:"units"`
	// Headline is the whole answer in one sentence.
	Headline string `json:"headline"`

	Refrigerant RefrigerantFacts `json:"refrigerant"`
	// Atmosphere is the pressure that gauges count from.
	Atmosphere AtmosphereUsed  `json:"atmosphere"`
	Readings   []JudgedReading `json:"readings"`
	Doubts     []Doubt         `json:"doubts,omitempty"`
	Derived    Derived         `json:"derived"`
	// Steadiness is what the log says of the superheat or subcooling.
	Steadiness *SteadinessVerdict `json:"steadiness,omitempty"`
	// Valve is the superheat of an expansion valve that hunts, by the log.
	Valve  *SteadinessVerdict `json:"valve,omitempty"`
	Charge ChargeVerdict      `json:"charge"`
	Air    *AirVerdict        `json:"air,omitempty"`
	Freeze *FreezeVerdict     `json:"freeze,omitempty"`

	Findings []Finding `json:"findings,omitempty"`
	// Change compares with the readings before refrigerant was last moved.
	Change *ChangeVerdict `json:"change,omitempty"`
	Risks  []Risk         `json:"risks,omitempty"`
	// Next is what to do now, in order; the first step is the one to take.
	Next []Step `json:"next"`
	// Dose is the next move of refrigerant, where one is due.
	Dose *charge.Dose `json:"dose,omitempty"`
	// WeighIn is the charge to weigh in, where readings cannot judge the charge
	// now and the label states it.
	WeighIn *charge.Weighing `json:"weighIn,omitempty"`
	// Settle is the one reading that would settle most.
	Settle   *Measurement `json:"settle,omitempty"`
	Cautions []string     `json:"cautions"`
	// Notes are the technician's own, unchanged.
	Notes string `json:"notes,omitzero"`
}

// RefrigerantFacts are the safety facts of the refrigerant named in the visit.
type RefrigerantFacts struct {
	Designation string `json:"designation"`
	SafetyGroup string `json:"safetyGroup"` // ASHRAE 34
	Flammable   bool   `json:"flammable"`
	// Estimated says why its properties are an estimate; empty where they are
	// not.
	Estimated string `json:"estimated,omitzero"`
}

// AtmosphereUsed says which atmosphere was taken and where it came from.
type AtmosphereUsed struct {
	Pressure quantity.Uncertain[quantity.Pressure] `json:"pressure"`
	Source   string                                `json:"source"` // "barometer", "elevation", "sea level assumed"
}

// Belief is what became of a reading.
type Belief string

// The beliefs.
const (
	Believed Belief = "believed"
	// Unusual: seldom so, and possible.
	Unusual Belief = "unusual"
	// Doubted: at odds with other readings; what rests on it is held back.
	Doubted Belief = "doubted"
	// Impossible: no machine reads so; measure it again before anything else.
	Impossible Belief = "impossible"
)

// A JudgedReading is a reading of the visit and whether it can be believed.
type JudgedReading struct {
	Field  string `json:"field"` // its name in the visit: "suctionPressure"
	Name   string `json:"name"`  // its name in the trade: "suction pressure"
	Value  string `json:"value"` // with standard uncertainty, in the units of the visit
	Belief Belief `json:"belief"`
	// Why names the doubts, by code, that touch the reading.
	Why []string `json:"why,omitempty"`
	// Settled says that the value comes from the settled end of the log.
	Settled bool `json:"settled,omitzero"`
}

// A Doubt is a check that the readings fail together.
type Doubt struct {
	Code   string   `json:"code"`
	Fields []string `json:"fields"`
	Belief Belief   `json:"belief"`
	Text   string   `json:"text"`
	Mend   string   `json:"mend"`
}

// Short names for derived values; nil where the readings do not give them.
type (
	derivedTemperature = *quantity.Uncertain[quantity.Temperature]
	derivedDelta       = *quantity.Uncertain[quantity.TemperatureDelta]
	derivedPower       = *quantity.Uncertain[quantity.Power]
)

// Derived values follow from the readings; each has its standard uncertainty,
// and each is absent where a reading it needs is.
type Derived struct {
	// EvaporatingDew is the dew temperature at the suction pressure.
	EvaporatingDew *quantity.Uncertain[quantity.Temperature] `json:"evaporatingDew,omitzero"`
	// CondensingBubble is the bubble temperature at the liquid pressure.
	CondensingBubble *quantity.Uncertain[quantity.Temperature] `json:"condensingBubble,omitzero"`
	// Superheat is counted from the dew point, as measured; a negative one is
	// not clipped.
	Superheat *quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat,omitzero"`
	// Subcooling is counted from the bubble point, as measured.
	Subcooling *quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling,omitzero"`
	// CondensingOverOutdoor is the condensing temperature (the middle of
	// bubble and dew) over the outdoor air.
	CondensingOverOutdoor *quantity.Uncertain[quantity.TemperatureDelta] `json:"condensingOverOutdoor,omitzero"`
	// Approach is the liquid line over the outdoor air.
	Approach *quantity.Uncertain[quantity.TemperatureDelta] `json:"approach,omitzero"`
	// CompressionRatio is absolute discharge (or liquid) over suction pressure.
	CompressionRatio    *float64 `json:"compressionRatio,omitzero"`
	CompressionRatioStd float64  `json:"compressionRatioStd,omitzero"`
	// TemperatureSplit is the return less the supply dry bulb.
	TemperatureSplit *quantity.Uncertain[quantity.TemperatureDelta] `json:"temperatureSplit,omitzero"`
	// ReturnHumidity is the relative humidity of the return air, 0 to 1.
	ReturnHumidity    *float64 `json:"returnHumidity,omitzero"`
	ReturnHumidityStd float64  `json:"returnHumidityStd,omitzero"`
	// The capacities follow from air states and airflow.
	TotalCapacity    *quantity.Uncertain[quantity.Power] `json:"totalCapacity,omitzero"`
	SensibleCapacity *quantity.Uncertain[quantity.Power] `json:"sensibleCapacity,omitzero"`
	LatentCapacity   *quantity.Uncertain[quantity.Power] `json:"latentCapacity,omitzero"`
	// SensibleHeatRatio is sensible over total capacity.
	SensibleHeatRatio    *float64 `json:"sensibleHeatRatio,omitzero"`
	SensibleHeatRatioStd float64  `json:"sensibleHeatRatioStd,omitzero"`
	// Condensate is the water that the coil takes out of the air.
	Condensate *quantity.Uncertain[quantity.MassFlow] `json:"condensate,omitzero"`
	// Efficiency is total capacity over electric power, both of the whole
	// machine, in the conditions of the visit; a label's is in others.
	Efficiency *airside.Efficiency `json:"efficiency,omitzero"`
}

// A ChargeOutcome is what can be said of the charge.
type ChargeOutcome string

// The outcomes of judging the charge.
const (
	// ChargeInBand: within the tolerance of its target; leave it.
	ChargeInBand ChargeOutcome = "in band"
	ChargeLow    ChargeOutcome = "undercharged"
	ChargeHigh   ChargeOutcome = "overcharged"
	// ChargeCannotTell: the uncertainty of the readings leaves it open.
	ChargeCannotTell ChargeOutcome = "these instruments cannot tell"
	// ChargeNotNow: the conditions rule the method out; Instead says what to do.
	ChargeNotNow ChargeOutcome = "do not charge by this method now"
	// ChargeNotMeasured: Missing names the readings that the method lacks.
	ChargeNotMeasured ChargeOutcome = "not measured"
)

// ChargeVerdict is the judgement of the refrigerant charge.
type ChargeVerdict struct {
	Outcome ChargeOutcome `json:"outcome"`
	// Method is "superheat", "subcooling" or "approach".
	Method string `json:"method,omitzero"`
	// Target and Tolerance of the method, and where each comes from.
	Target          *quantity.Uncertain[quantity.TemperatureDelta] `json:"target,omitzero"`
	TargetSource    string                                         `json:"targetSource,omitzero"`
	Tolerance       quantity.TemperatureDelta                      `json:"tolerance,omitzero"`
	ToleranceSource string                                         `json:"toleranceSource,omitzero"`
	Measured        *quantity.Uncertain[quantity.TemperatureDelta] `json:"measured,omitzero"`
	// Deviation is measured less target.
	Deviation *quantity.Uncertain[quantity.TemperatureDelta] `json:"deviation,omitzero"`
	// Chances that the charge is low, in band and high, as far as the method
	// and the uncertainty of the readings go; they add up to 1.
	Low    float64 `json:"low"`
	InBand float64 `json:"inBand"`
	High   float64 `json:"high"`
	// Hold says why no refrigerant is to be moved yet although the charge reads
	// out of band: the diagnosis doubts an instrument, the air or the circuit.
	// Only an assessment of scope Whole can tell.
	Hold string `json:"hold,omitempty"`
	// Reasons are sentences with numbers.
	Reasons []string `json:"reasons"`
	// Instead says what to do where the method does not apply.
	Instead []string `json:"instead,omitempty"`
	// Missing names the readings that the method needs and the visit lacks, as in
	// the JSON form of a visit: "suctionLine".
	Missing []string `json:"missing,omitempty"`
}

// SteadinessVerdict says whether the value that the charge is judged by has
// come to rest.
type SteadinessVerdict struct {
	// Of is "superheat" or "subcooling".
	Of     string                                       `json:"of"`
	Course charge.Steadiness[quantity.TemperatureDelta] `json:"course"`
	Text   string                                       `json:"text"`
}

// AirVerdict is the judgement of the air side.
type AirVerdict struct {
	// Outcome is one of airside.SplitOutcome's words, or "no target here" or "not
	// judged"; the reasons say why.
	Outcome     string                                         `json:"outcome"`
	TargetSplit *quantity.Uncertain[quantity.TemperatureDelta] `json:"targetSplit,omitzero"`
	Deviation   *quantity.Uncertain[quantity.TemperatureDelta] `json:"deviation,omitzero"`
	Tolerance   quantity.TemperatureDelta                      `json:"tolerance,omitzero"`
	Source      string                                         `json:"source,omitzero"`
	Reasons     []string                                       `json:"reasons"`
	// Do is what the air side needs first, and Why; empty where it is sound.
	Do  string `json:"do,omitzero"`
	Why string `json:"why,omitzero"`
}

// A FreezeVerdict says how near the indoor coil is to freezing.
type FreezeVerdict struct {
	// Outcome is one of airside.FrostOutcome's words, or "not judged" where a
	// reading it needs is missing or not to be believed.
	Outcome string `json:"outcome"`
	// Surface is the coldest surface of the coil, Margin how far it is above
	// freezing. Chance is that of ice: that the surface is below freezing, or that
	// by airside.IcingRule, whichever is larger.
	Surface *quantity.Uncertain[quantity.Temperature]      `json:"surface,omitzero"`
	Margin  *quantity.Uncertain[quantity.TemperatureDelta] `json:"margin,omitzero"`
	Chance  float64                                        `json:"chance"`
	Reasons []string                                       `json:"reasons"`
	// Would says what would freeze it, each by itself.
	Would []string `json:"would,omitempty"`
	// Why says why it froze or would freeze, and what would have kept it from
	// it; for a coil that is iced or the complaint of one.
	Why []string `json:"why,omitempty"`
	// Instead says what the usual controls and changes would do.
	Instead []string `json:"instead,omitempty"`
}

// A Finding is a possible cause with the evidence for and against it.
type Finding struct {
	Code        string   `json:"code"`
	Cause       string   `json:"cause"`
	Probability float64  `json:"probability"`
	For         []string `json:"for,omitempty"`
	Against     []string `json:"against,omitempty"`
	// Do is the repair, in words.
	Do string `json:"do,omitzero"`
}

// A ChangeVerdict says whether the readings moved as the diagnosis said they
// would when something was done.
type ChangeVerdict struct {
	AsExpected bool `json:"asExpected"`
	// Chance of a departure at least as large if the diagnosis is right.
	Chance float64 `json:"chance"`
	// Revised says that the diagnosis is another one now.
	Revised bool     `json:"revised"`
	Text    []string `json:"text"`
}

// A Risk is a danger to the compressor.
type Risk struct {
	Code  string `json:"code"`
	Grave bool   `json:"grave"`
	Text  string `json:"text"`
	Why   string `json:"why"`
	// Do begins with Stop where the machine should be stopped before anything
	// else, or felt for whether it should.
	Do   string `json:"do"`
	Stop string `json:"stop,omitzero"`
}

// A Step is something to do.
type Step struct {
	Do  string `json:"do"`
	Why string `json:"why"`
}

// A Measurement is a reading worth taking.
type Measurement struct {
	Take string `json:"take"`
	Why  string `json:"why"`
	// Look is the code by which a Check answers it; empty where it is a reading,
	// which belongs into Visit.Readings.
	Look string `json:"look,omitzero"`
	// Field is the reading's name in the visit: "dischargeLine"; empty where it is
	// a look, or several readings.
	Field string `json:"field,omitzero"`
	// Outcomes say what each result would mean; of a look the one that finds
	// something comes first.
	Outcomes []string `json:"outcomes,omitempty"`
}
