// Package modes is all that the facade and the judges of the modes know of each other. A mode
// has a package of its own with one Judge in it, its Forecaster and the list of its looks; the
// facade's judges.go names all three, its case.go makes the Case that a judge is handed, and its
// judgement.go copies the Judgement into the assessment. A judge sees no type of the facade, makes
// no sentence, and reads none: all that it says are facts, whose sentences stand in
// internal/page/words under the same codes.
//
// What a judge can rely on: the visit is well formed, its log settled, and every reading has a
// standard uncertainty above zero. What it owes: chances that add up to no more than they may,
// no NaN and no infinity, the same answer to the same case, and steps that can be done one after
// the other. A step of a code that cooling has too keeps the effect that it has there; a new
// code brings its own.
package modes

import (
	"math"
	"slices"
	"time"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A Judge says what is found of a machine and what to do about it.
type Judge func(*Case) Judgement

// A Case is what is known of a machine that runs in the mode of its judge.
type Case struct {
	// Evidence holds the settled readings with their uncertainty, the saturation temperatures
	// that follow from the gauges, what the label says, what was seen, the looks that were
	// answered and the checks that the readings fail. Its expectations are those of cooling;
	// NoPairs says that a verdict alone is asked for, with no move of refrigerant.
	diagnose.Evidence
	// Fluid is the refrigerant named, with all of its properties.
	Fluid *refrigerant.Refrigerant
	// Superheat and Subcooling follow from the gauges and the line clamps; nil where a reading
	// is missing.
	Superheat, Subcooling *quantity.Uncertain[quantity.TemperatureDelta]

	// Room is the cold room, and BulbLine the pipe at the bulb of its valve; zero and nil
	// where neither was given.
	Room     coldroom.Room
	BulbLine *quantity.Uncertain[quantity.Temperature]

	// LiquidAtValve is the liquid line just ahead of the metering device; nil where not read.
	LiquidAtValve *quantity.Uncertain[quantity.Temperature]

	// Aim is what a cooling machine is charged by, held against its target.
	Aim
	// Other is the case of the same machine with a fixed metering device, where nobody said which
	// it has and this one is that with a valve; nil else.
	Other *Case
	// Says how the mode was found.
	Says fact.Fact
	// Given names the readings there are, as in the JSON form of a visit; Metered says that
	// electrical ones are there too.
	Given   []string
	Metered bool
	// Site is the atmosphere with its uncertainty.
	Site quantity.Uncertain[quantity.Pressure]
	// DischargePressure is the one that was read, where there is one.
	DischargePressure *quantity.Uncertain[quantity.GaugePressure]

	// NoLiquidPort says that no port has liquid: the refrigerant expands outdoors, as in most
	// systems without ducts, or it is a sealed room machine. In heating no port has suction
	// pressure then.
	NoLiquidPort bool
	// Running is the time since the last start, zero where it is not known.
	Running time.Duration
	// Complaint in the words of the JSON form: "not cooling", "frozen coil"; may be empty.
	Complaint string
	// Moving says that what the charge is read from has not come to rest; zero where it has.
	// Valve says that the superheat behind a valve hunts; zero where it does not.
	Moving, Valve fact.Fact
	// Course is that of what the charge is read from; nil where no log holds it.
	Course *charge.Steadiness[quantity.TemperatureDelta]
	// NetMoved is what was added in the visit less what was recovered, and Answered how the
	// reading of the Aim came to rest after each move; it is worked out when asked for.
	NetMoved quantity.Mass
	Answered func() []charge.Moved
	// Log is that of the visit; nil in cooling, which follows it by Course.
	Log []Logged
	// ReadBeforeMove says that no reading is known to be later than the last move.
	ReadBeforeMove bool
	// Spoils are the obstacles of the Aim in which readings are not those of the machine as
	// it usually runs. A judge takes those that hold in its mode, by their code.
	Spoils []charge.Obstacle
	// Dangers that the meter showed, and those to the compressor by the limits of package
	// charge. A judge drops those that mean nothing in its mode, or that another says, and adds
	// its own.
	Dangers Dangers
	// WholeCharge is that of the label, else by the capacity; zero where neither is known.
	WholeCharge quantity.Mass
	// Weighing is the charge to weigh in; where it cannot be worked out it is nil, and
	// WeighingWants is the step that gets what is missing.
	Weighing      *charge.Weighing
	WeighingWants fact.Code
}

// An Aim is what a cooling machine is charged by.
type Aim struct {
	Method charge.Method
	// Obstacles to judging the charge by it.
	Obstacles []charge.Obstacle
	// Wanting names the readings that the method lacks.
	Wanting []string
	// Reading is nil where it cannot be taken, and Target where there is none in these
	// conditions.
	Reading *Reading
	Target  *charge.Target
}

// LiquidDrops says whether the liquid line has a clear drop of temperature on its way to the
// metering device, as behind a restriction where liquid boils; false for known where that was not
// read or is neither clear nor none. Common practice, no source: a warm room takes a degree or
// two from a line without one.
func (c *Case) LiquidDrops() (drops, known bool) {
	const clear, none = 3.0, 1.5 // K
	from, to := c.LiquidLine, c.LiquidAtValve
	if from == nil || to == nil {
		return false, false
	}
	drop := float64(from.Value.Sub(to.Value))
	return drop >= clear, drop >= clear || drop <= none
}

// Measured is the case with the look along the liquid line answered, where both its ends were read
// and nobody looked.
func (c *Case) Measured() *Case {
	const look = "liquid-line-drop"
	drops, known := c.LiquidDrops()
	if !known || slices.ContainsFunc(
		c.Answers, func(a diagnose.Answer) bool { return a.Code == look },
	) {
		return c
	}
	out := *c
	out.Answers = append(slices.Clone(c.Answers), diagnose.Answer{Code: look, Yes: drops})
	return &out
}

// A Judgement is what a judge says. Facts without a code say nothing.
type Judgement struct {
	// Headline is the whole answer in one fact.
	Headline fact.Fact
	// Dangers, the gravest first.
	Dangers Dangers
	// Steps in order; see InOrder.
	Steps []Step
	// Findings by falling chance, "sound" among them.
	Findings []Finding
	Charge   Charge
	// Ask is the look or reading that is worth most; nil for none.
	Ask *Question
	// WeighIn is the charge to weigh in where the steps come to that, Dose the next move of
	// refrigerant where they have one.
	WeighIn *charge.Weighing
	Dose    *charge.Dose
	// Lies are the chances that a reading is of a wrong instrument, by its name.
	Lies   map[string]float64
	Air    *Air
	Freeze *Freeze
	Change *Change
	// Performance is what the machine gives now and will give in other weather.
	Performance []fact.Fact
}

// A Step is something to do.
type Step struct {
	Do, Why fact.Fact
	// Cause that the step is for, with its chance.
	Cause  string
	Chance float64
	// Look is the code by which it is answered, Field the reading that it asks for.
	Look, Field string
	Effect
}

// An Effect is what a step does to the machine.
type Effect struct{ Running, Stops, Starts, Moves, Adds, Opens, Waits bool }

// A Finding is a cause that may be present, with the words "cause.CAUSE" for it.
type Finding struct {
	Cause        string
	Chance       float64
	Faults       []FaultChance
	Says         fact.Fact
	For, Against []fact.Fact
}

// A FaultChance is a fault, and how likely it is where its cause is present.
type FaultChance struct {
	Fault  string
	Chance float64
}

// Outcomes of judging a charge.
const (
	ChargeLow    = "low"
	ChargeInBand = "in-band"
	ChargeHigh   = "high"
	ChargeOpen   = "open" // more than one of the three is likely
	NotJudged    = "not-judged"
)

// A Charge is what is believed of the charge. The three chances add up to 1, or are zero where
// it is not judged, and then Why says why. Error is the part of the whole charge that there is
// too much.
type Charge struct {
	Outcome           string
	Low, InBand, High float64
	Error             *quantity.UncertainNumber
	Why               []fact.Fact
	Reading           *Reading
	Missing           []string
}

// A Reading is a measured value beside the one that it should be.
type Reading struct {
	Method          charge.Method
	Measured        quantity.Uncertain[quantity.TemperatureDelta]
	Target          *quantity.Uncertain[quantity.TemperatureDelta]
	TargetSource    fact.Source
	Tolerance       quantity.TemperatureDelta
	ToleranceSource fact.Source
	Deviation       *quantity.Uncertain[quantity.TemperatureDelta]
	Says            fact.Fact
}

// Within says that there is a target and the reading is as near to it as it may be.
func (r *Reading) Within() bool {
	return r.Deviation != nil && max(r.Deviation.Value, -r.Deviation.Value) <= r.Tolerance
}

// Rank is a chance as causes stand in order by it: what differs by less is how a processor rounds,
// and keeps the order of its list.
func Rank(chance float64) float64 { return math.Round(1e9 * chance) }

// A Question is a look (by its code) or a reading (by its field) and what each answer would mean;
// of a look the answer that finds something first. With neither it is which metering device the
// machine has.
type Question struct {
	Look, Field string
	Take        fact.Fact
	Outcomes    []Outcome
}

// An Outcome is one answer to a Question, with the likeliest cause after it.
type Outcome struct {
	Chance     float64
	Then       string
	ThenChance float64
	Says       fact.Fact
}

// An Air is the temperature split against its target.
type Air struct {
	Measured, Target, Deviation quantity.Uncertain[quantity.TemperatureDelta]
	Tolerance                   quantity.TemperatureDelta
	Says                        fact.Fact
}

// A Freeze says how near the indoor coil is to freezing, what would freeze it, and what made
// the ice that is there.
type Freeze struct {
	Outcome                 airside.FrostOutcome
	Surface                 *quantity.Uncertain[quantity.Temperature]
	Margin                  *quantity.Uncertain[quantity.TemperatureDelta]
	Chance                  float64
	Says                    fact.Fact
	Would, Causes, Controls []fact.Fact
}

// A Change says whether the readings moved as was to be expected when something was done.
type Change struct {
	AsExpected bool
	Chance     float64
	Revised    bool
	Says       fact.Fact
	Moved      []fact.Fact
}
