package satline

import (
	"fmt"
	"strings"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// AssessmentSchema names the version of the JSON form of an Assessment. A field
// is never removed or given another meaning under the same name of schema.
const AssessmentSchema = "satline.assessment/2"

// An Assessment is what a technician needs from a Visit: what is believed of the machine,
// what to do about it in which order, and what to be careful of. Statements are facts, each
// a code with its quantities and its sentence in the language and the units of the visit;
// see In for another language.
type Assessment struct {
	Schema   string          `json:"schema"`
	Title    string          `json:"title,omitzero"`
	Language Language        `json:"language,omitzero"`
	Units    quantity.System `json:"units"`
	// Scope tells what was worked out; a verdict alone holds no plan for refrigerant.
	Scope Scope `json:"scope"`

	// Headline is the whole answer in one sentence.
	Headline fact.Fact `json:"headline"`
	// Dangers to machine and people, the gravest first.
	Dangers []Danger `json:"dangers,omitempty"`
	// Plan is what to do, in order; the first step is the one to take now.
	Plan []Step `json:"plan"`

	// Mode that the machine was judged in.
	Mode ModeFound `json:"mode"`
	// Charge, Findings, Freeze and Ask come from one belief over what is wrong, by how
	// much, and which readings lie.
	Charge   ChargeVerdict `json:"charge"`
	Findings []Finding     `json:"findings,omitempty"`
	// Ask is the look or reading that is worth most before anything is done.
	Ask    *Question      `json:"ask,omitempty"`
	Freeze *FreezeVerdict `json:"freeze,omitempty"`
	// Electrical is what the meter's readings show, where the visit has any.
	Electrical *electrical.Report `json:"electrical,omitempty"`
	// Change compares with the readings before refrigerant was last moved.
	Change *ChangeVerdict `json:"change,omitempty"`
	// Dose is the next move of refrigerant, where the plan has one.
	Dose *charge.Dose `json:"dose,omitempty"`
	// WeighIn is the charge to weigh in, where the plan comes to that.
	WeighIn *charge.Weighing `json:"weighIn,omitempty"`

	Refrigerant RefrigerantFacts `json:"refrigerant"`
	// Atmosphere is the pressure that gauges count from.
	Atmosphere AtmosphereUsed  `json:"atmosphere"`
	Readings   []JudgedReading `json:"readings"`
	Doubts     []Doubt         `json:"doubts,omitempty"`
	Derived    Derived         `json:"derived"`
	// Steadiness is what the log says of the superheat or subcooling.
	Steadiness *SteadinessVerdict `json:"steadiness,omitempty"`
	// Valve is the superheat of an expansion valve that hunts, by the log.
	Valve *SteadinessVerdict `json:"valve,omitempty"`
	// Air is the temperature split against its target.
	Air *AirVerdict `json:"air,omitempty"`
	// Performance is what a machine in another mode than cooling gives now, and will give in
	// other weather.
	Performance []fact.Fact `json:"performance,omitempty"`

	Cautions []fact.Fact `json:"cautions"`
	// Notes are the technician's own, unchanged.
	Notes string `json:"notes,omitzero"`
}

// String returns the first screen: the headline, the dangers and the steps. Package report
// writes the whole.
func (a Assessment) String() string {
	var b strings.Builder
	fmt.Fprintln(&b, a.Headline.Text)
	for _, d := range a.Dangers {
		fmt.Fprintf(&b, "! %s\n", d.Says.Text)
	}
	for i, s := range a.Plan {
		fmt.Fprintf(&b, "%d. %s\n", i+1, s.Do.Text)
	}
	return b.String()
}

// RefrigerantFacts are the safety facts of the refrigerant named in the visit.
type RefrigerantFacts struct {
	Designation string `json:"designation"` // as in ASHRAE 34
	SafetyGroup string `json:"safetyGroup"` // by ASHRAE 34
	Flammable   bool   `json:"flammable"`   // in any of the groups 2L, 2 and 3
	// Estimated says that its properties are an estimate.
	Estimated bool `json:"estimated,omitzero"`
}

// Belief is what became of a reading.
type Belief string

// The beliefs.
const (
	Believed Belief = "believed"
	// Unusual: seldom so, and possible.
	Unusual Belief = "unusual"
	// Doubted: at odds with other readings, or likely to be of a wrong instrument.
	Doubted Belief = "doubted"
	// Impossible: no machine reads so; measure it again before anything else.
	Impossible Belief = "impossible"
)

// A JudgedReading is a reading of the visit and whether it can be believed.
type JudgedReading struct {
	Field string `json:"field"` // its name in the visit: "suctionPressure"
	// Value with its standard uncertainty.
	Value  fact.Value `json:"value"`
	Belief Belief     `json:"belief"`
	// Lies is the chance that the reading is of a wrong instrument or place.
	Lies float64 `json:"lies,omitzero"`
	// Why names the doubts, by code, that touch the reading.
	Why []fact.Code `json:"why,omitempty"`
	// Settled says that the value comes from the settled end of the log.
	Settled bool `json:"settled,omitzero"`
}

// A Doubt is a check that the readings fail together, and what to look at.
type Doubt struct {
	Says   fact.Fact `json:"says"`
	Fields []string  `json:"fields"` // the readings that fail it
	Belief Belief    `json:"belief"`
	Mend   fact.Fact `json:"mend"`
}

// Derived values follow from the readings; each has its standard uncertainty,
// and each is absent where a reading it needs is.
type Derived struct {
	// EvaporatingDew is the dew temperature at the suction pressure.
	EvaporatingDew *quantity.Uncertain[quantity.Temperature] `json:"evaporatingDew,omitzero"`
	// CondensingBubble is the bubble temperature at the liquid pressure.
	CondensingBubble *quantity.Uncertain[quantity.Temperature] `json:"condensingBubble,omitzero"`
	// CondensingDew is the dew temperature at the liquid pressure.
	CondensingDew *quantity.Uncertain[quantity.Temperature] `json:"condensingDew,omitzero"`
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
	CompressionRatio *quantity.UncertainNumber `json:"compressionRatio,omitzero"`
	// TemperatureSplit is the return less the supply dry bulb.
	TemperatureSplit *quantity.Uncertain[quantity.TemperatureDelta] `json:"temperatureSplit,omitzero"`
	// ReturnHumidity is the relative humidity of the return air, 0 to 1.
	ReturnHumidity *quantity.UncertainNumber `json:"returnHumidity,omitzero"`
	// The capacities follow from air states and airflow.
	TotalCapacity    *quantity.Uncertain[quantity.Power] `json:"totalCapacity,omitzero"`
	SensibleCapacity *quantity.Uncertain[quantity.Power] `json:"sensibleCapacity,omitzero"`
	LatentCapacity   *quantity.Uncertain[quantity.Power] `json:"latentCapacity,omitzero"`
	// SensibleHeatRatio is sensible over total capacity.
	SensibleHeatRatio *quantity.UncertainNumber `json:"sensibleHeatRatio,omitzero"`
	// Condensate is the water that the coil takes out of the air.
	Condensate *quantity.Uncertain[quantity.MassFlow] `json:"condensate,omitzero"`
	// Efficiency is total capacity over electric power, both of the whole
	// machine, in the conditions of the visit; a label's is in others.
	Efficiency *airside.Efficiency `json:"efficiency,omitzero"`
}

// A ChargeOutcome is what is believed of the charge.
type ChargeOutcome string

// The outcomes of judging the charge.
const (
	// ChargeInBand: right, as far as anything was read; leave it.
	ChargeInBand ChargeOutcome = "in-band"
	ChargeLow    ChargeOutcome = "low"
	ChargeHigh   ChargeOutcome = "high"
	// ChargeOpen: more than one of the three is likely.
	ChargeOpen ChargeOutcome = "open"
	// ChargeNotJudged: Why says what keeps the readings from telling.
	ChargeNotJudged ChargeOutcome = "not-judged"
)

// ChargeVerdict is what is believed of the refrigerant charge, from everything that is
// known: readings, label, log, moves, looks.
type ChargeVerdict struct {
	Outcome ChargeOutcome `json:"outcome"`
	// Low, InBand and High are the chances that the charge is more than 5 % too low, within 5 %,
	// more than 5 % too high; they add up to 1, and are all zero where it is not judged.
	Low    float64 `json:"low"`
	InBand float64 `json:"inBand"`
	High   float64 `json:"high"`
	// Error is how much of the whole charge there is too much; negative for too little.
	Error *quantity.UncertainNumber `json:"error,omitzero"`
	// Why says what keeps the charge from being judged, or from being moved.
	Why []fact.Fact `json:"why,omitempty"`
	// Reading is the value that this machine is charged by against its target: a fact beside
	// the belief, and no second verdict.
	Reading *TargetReading `json:"reading,omitzero"`
	// Missing names the readings that the method needs and the visit lacks, as in
	// the JSON form of a visit: "suctionLine".
	Missing []string `json:"missing,omitempty"`
}

// A TargetReading is a measured superheat, subcooling or approach beside its target.
type TargetReading struct {
	Method   charge.Method                                 `json:"method"`
	Measured quantity.Uncertain[quantity.TemperatureDelta] `json:"measured"`
	// Target is absent where there is none in these conditions; Why says so.
	Target          *quantity.Uncertain[quantity.TemperatureDelta] `json:"target,omitzero"`
	TargetSource    fact.Source                                    `json:"targetSource,omitzero"`
	Tolerance       quantity.TemperatureDelta                      `json:"tolerance,omitzero"`
	ToleranceSource fact.Source                                    `json:"toleranceSource,omitzero"`
	// Deviation is measured less target.
	Deviation *quantity.Uncertain[quantity.TemperatureDelta] `json:"deviation,omitzero"`
	Says      fact.Fact                                      `json:"says"`
}

// SteadinessVerdict says whether the value that the charge is judged by has
// come to rest.
type SteadinessVerdict struct {
	Method charge.Method                                `json:"method"`
	Course charge.Steadiness[quantity.TemperatureDelta] `json:"course"`
	Says   fact.Fact                                    `json:"says"`
}

// AirVerdict is the temperature split against its target.
type AirVerdict struct {
	Measured  quantity.Uncertain[quantity.TemperatureDelta] `json:"measured"`
	Target    quantity.Uncertain[quantity.TemperatureDelta] `json:"target"`
	Deviation quantity.Uncertain[quantity.TemperatureDelta] `json:"deviation"`
	Tolerance quantity.TemperatureDelta                     `json:"tolerance"`
	Says      fact.Fact                                     `json:"says"`
}

// A FreezeVerdict says how near the indoor coil is to freezing, or why that is not judged.
type FreezeVerdict struct {
	// Outcome is absent where it was not judged; Says tells why.
	Outcome airside.FrostOutcome `json:"outcome,omitzero"`
	// Surface is the coldest surface of the coil, Margin how far it is above
	// freezing. Chance is that of ice: that the surface is below freezing, or that
	// by airside.IcingChance, whichever is larger.
	Surface *quantity.Uncertain[quantity.Temperature]      `json:"surface,omitzero"`
	Margin  *quantity.Uncertain[quantity.TemperatureDelta] `json:"margin,omitzero"`
	Chance  float64                                        `json:"chance"`
	Says    fact.Fact                                      `json:"says"`
	// Would says what would freeze it, each by itself.
	Would []fact.Fact `json:"would,omitempty"`
	// Causes of the ice by falling chance, for a coil that is iced or the complaint of one,
	// and Controls what would have kept it away.
	Causes   []fact.Fact `json:"causes,omitempty"`
	Controls []fact.Fact `json:"controls,omitempty"`
}

// A Finding is a cause that may be present, alone or beside others.
type Finding struct {
	// Cause by its code: "undercharge"; "sound" where nothing is wrong. Chance that it is there.
	Cause  string  `json:"cause"`
	Chance float64 `json:"chance"`
	// Faults that make it, the likeliest first.
	Faults []FaultChance `json:"faults,omitempty"`
	Says   fact.Fact     `json:"says"`
	// For and Against are the readings and looks that speak for and against it.
	For     []fact.Fact `json:"for,omitempty"`
	Against []fact.Fact `json:"against,omitempty"`
}

// A FaultChance is a fault, and how likely it is where its cause is present.
type FaultChance struct {
	Fault  string  `json:"fault"`  // its code: "filter", or the name that a house gave it
	Chance float64 `json:"chance"` // where its cause is present
}

// A ChangeVerdict says whether the readings moved as was to be expected when something was
// done.
type ChangeVerdict struct {
	AsExpected bool `json:"asExpected"` // whether they did
	// Chance of a departure at least as large if they did.
	Chance float64 `json:"chance"`
	// Revised says that the belief is another one now.
	Revised bool        `json:"revised"`
	Says    fact.Fact   `json:"says"`
	Moved   []fact.Fact `json:"moved,omitempty"` // what moved, from where to where
}

// A Danger is what can harm the machine or a person.
type Danger struct {
	Code  string `json:"code"`  // "floodback"
	Grave bool   `json:"grave"` // act now, or stop the machine
	// Stops says that the machine is to be stopped before anything else.
	Stops bool      `json:"stops,omitzero"`
	Says  fact.Fact `json:"says"`
	Why   fact.Fact `json:"why"`
	// Source of the limit.
	Source fact.Source `json:"source"`
}

// A Step is something to do.
type Step struct {
	Do fact.Fact `json:"do"`
	// Why, where a reason is worth a line.
	Why *fact.Fact `json:"why,omitzero"`
	// Cause that the step is for, with its Chance; empty for a step that is not about one.
	Cause  string  `json:"cause,omitzero"`
	Chance float64 `json:"chance,omitzero"`
	// Look is the code by which a Check answers the step.
	Look string `json:"look,omitzero"`
	// Field is the reading that the step asks for.
	Field string `json:"field,omitzero"`
	Effect
}

// An Effect is what a step does to the machine.
type Effect struct {
	// Running says that the machine has to run for it; Stops and Starts, what it does to it.
	Running bool `json:"running,omitzero"`
	Stops   bool `json:"stops,omitzero"`
	Starts  bool `json:"starts,omitzero"`
	// Moves says that refrigerant goes in or comes out, Adds that it goes in.
	Moves bool `json:"moves,omitzero"`
	Adds  bool `json:"adds,omitzero"`
	// Opens says that the circuit is opened.
	Opens bool `json:"opens,omitzero"`
	// Waits says that nothing is done but to let time pass.
	Waits bool `json:"waits,omitzero"`
}

// A Question is what is worth looking at or reading before anything is done, and what each
// answer would mean. With neither Look nor Field it is which metering device the machine has.
type Question struct {
	// Look is the code by which a Check answers it; empty for a reading.
	Look string `json:"look,omitzero"`
	// Field is the reading's name in the visit; empty for a look.
	Field string    `json:"field,omitzero"`
	Take  fact.Fact `json:"take"`
	// Outcomes; of a look the one that finds something first.
	Outcomes []Outcome `json:"outcomes"`
}

// An Outcome is one answer to a Question.
type Outcome struct {
	Chance float64 `json:"chance"` // of this answer
	// Then is the likeliest cause after it, ThenChance its chance.
	Then       string    `json:"then"`
	ThenChance float64   `json:"thenChance"`
	Says       fact.Fact `json:"says"`
}
