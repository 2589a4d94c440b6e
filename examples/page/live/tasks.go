package live

import (
	"encoding/json"
	"errors"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/strictjson"
	"github.com/satline/satline/work"
)

// A task of a visit beside the charging loop: what it asks for, and what it answers.
type task struct {
	code string
	// visit are the fields of the visit that it needs, input is what it asks for besides.
	visit []string
	// section is the part of the visit that is entered here alone.
	section string
	input   any
	// answer gets the input as read.
	answer func(v satline.Visit, input any) ([]fact.Fact, error)
	// whole answers in place of answer what rests on the inputs of all tasks.
	whole func(v satline.Visit, all Inputs) ([]fact.Fact, error)
	// cautions by their codes in the library's words.
	cautions []fact.Code
}

// Inputs are what was entered for each task, by its code, as typed.
type Inputs map[string]json.RawMessage

// A TaskAnswer is what a task comes to, in sentences.
type TaskAnswer struct {
	Lines    []string `json:"lines,omitempty"`
	Problem  string   `json:"problem,omitempty"`
	Cautions []string `json:"cautions,omitempty"`
}

type (
	vacuumReading struct {
		At    time.Duration     `json:"at" strict:"required"`
		Value quantity.Pressure `json:"value" strict:"required"`
	}
	vacuumInput struct {
		Readings []vacuumReading   `json:"readings" strict:"required"`
		Start    quantity.Pressure `json:"start"`
		Level    quantity.Pressure `json:"level"`
	}
	nitrogenInput struct {
		Limit    quantity.GaugePressure `json:"limit"`
		Start    quantity.GaugePressure `json:"start" strict:"required"`
		StartGas quantity.Temperature   `json:"startGas" strict:"required"`
		Held     time.Duration          `json:"held"`
		End      quantity.GaugePressure `json:"end" strict:"required"`
		EndGas   quantity.Temperature   `json:"endGas" strict:"required"`
	}
	cylinderInput struct {
		WaterCapacity quantity.Mass          `json:"waterCapacity" strict:"required"`
		Tare          quantity.Mass          `json:"tare" strict:"required"`
		Service       quantity.GaugePressure `json:"service"`
		Kind          work.CylinderKind      `json:"kind"`
		Holds         string                 `json:"holds"`
		Gross         quantity.Mass          `json:"gross"` // before anything is moved
		After         quantity.Mass          `json:"after"`
	}
	nightInput struct {
		Outdoors      quantity.Temperature `json:"outdoors"`
		ReturnDryBulb quantity.Temperature `json:"returnDryBulb"`
		ReturnWetBulb quantity.Temperature `json:"returnWetBulb"`
	}
	forecastInput struct {
		nightInput
		Airflow      quantity.VolumeFlow  `json:"airflow"`
		Added        quantity.Mass        `json:"added"`
		HeadPressure quantity.Temperature `json:"headPressure"`
	}
)

// fitted are the fields that a forecast needs beside the readings of the loop.
var fitted = []string{"equipment.nominalCapacity"}

var tasks = []task{
	{code: "frozen", visit: fitted, input: nightInput{}, answer: whyFrozen},
	{code: "forecast", visit: fitted, input: forecastInput{}, answer: forecast},
	{
		code: "weighin", visit: []string{
			"equipment.arrangement", "equipment.label.charge", "equipment.label.factoryLineSet",
			"equipment.label.lineAdder.mass", "equipment.label.lineAdder.per",
			"equipment.lineSet.length", "equipment.lineSet.liquidDiameter",
			"equipment.lineSet.device", "equipment.accessories",
		},
		answer:   weighIn,
		cautions: []fact.Code{"caution.cylinder", "caution.label-first"},
	},
	{
		code: "recovery", visit: []string{"equipment.label.charge"}, answer: recovery,
		cautions: []fact.Code{"caution.no-venting", "caution.cylinder"},
	},
	{
		code: "cylinder", input: cylinderInput{}, answer: cylinder,
		cautions: []fact.Code{"caution.cylinder"},
	},
	{
		code: "nitrogen", visit: []string{"site.elevation"}, input: nitrogenInput{},
		answer: nitrogen, cautions: []fact.Code{"caution.nitrogen", "caution.label-first"},
	},
	{code: "vacuum", input: vacuumInput{}, answer: vacuum},
	{
		code: "electrical", section: "electrical.", answer: meter,
		cautions: []fact.Code{"caution.electricity"},
	},
	{code: "job", input: jobInput{}, whole: job},
}

func whyFrozen(v satline.Visit, input any) ([]fact.Fact, error) {
	in, night := input.(*nightInput), satline.CoolNight()
	set(&night.OutdoorDryBulb, in.Outdoors)
	set(&night.ReturnDryBulb, in.ReturnDryBulb)
	set(&night.ReturnWetBulb, in.ReturnWetBulb)
	icing, err := satline.WhyFrozen(v, night)
	if err != nil {
		return nil, err
	}
	out := []fact.Fact{
		fact.New("page.night", fact.Amount("outdoors", night.OutdoorDryBulb),
			fact.Amount("room", night.ReturnDryBulb), fact.Amount("wetBulb", night.ReturnWetBulb)),
	}
	out = append(out, icing.Together.Says[:min(2, len(icing.Together.Says))]...)
	for _, step := range []struct {
		kind fact.Code
		of   []satline.IcingStep
	}{{"page.cause", icing.Causes}, {"page.control", icing.Controls}} {
		for _, s := range step.of {
			f := fact.New(step.kind, fact.Of("name", s.Code))
			if s.Outlook != nil {
				f = f.With(fact.Amount("surface", max(s.Surface, -s.Surface)),
					fact.Of("chance", fact.Share(s.Outlook.FreezeChance)))
			}
			if s.Surface < 0 {
				f.Code += ".colder"
			}
			out = append(out, f)
		}
	}
	return append(out, icing.Together.Believe...), nil
}

func set[T quantity.Quantity](to *T, v T) {
	if v != 0 {
		*to = v
	}
}

func forecast(v satline.Visit, input any) ([]fact.Fact, error) {
	in := input.(*forecastInput)
	out, err := satline.Forecast(v, satline.Scenario{
		Name: "asked", OutdoorDryBulb: in.Outdoors, ReturnDryBulb: in.ReturnDryBulb,
		ReturnWetBulb: in.ReturnWetBulb, Airflow: in.Airflow, Added: in.Added,
		HeadPressure: in.HeadPressure,
	})
	if err != nil {
		return nil, err
	}
	lines := append(out[0].Says, out[0].Extrapolating...)
	return append(lines, out[0].Believe...), nil
}

func fluidOf(v satline.Visit) (*refrigerant.Refrigerant, error) {
	if v.Equipment.Refrigerant == "" {
		return nil, missing("equipment.refrigerant")
	}
	return refrigerant.Lookup(v.Equipment.Refrigerant)
}

func missing(field string) error {
	return &satline.VisitError{Field: field, Kind: satline.FieldMissing, Problem: "missing"}
}

func weighIn(v satline.Visit, _ any) ([]fact.Fact, error) {
	w, err := v.Equipment.WeighedCharge()
	if err != nil {
		return nil, err
	}
	weighing, err := w.Weigh()
	if err != nil {
		return nil, err
	}
	says := weighing.Fact()
	says.Code = "headline.weigh-in"
	out := []fact.Fact{says}
	if w.Adder == nil && w.Length.Value != 0 {
		out = append(out, fact.New("page.per-foot", fact.Amount("mass", weighing.PerFoot),
			fact.Amount("line", weighing.Line)))
	}
	switch {
	case !weighing.AskDevice:
	case weighing.Line < 0:
		out = append(out, fact.New("caution.device-place-short"))
	default:
		out = append(out, fact.New("caution.device-place"))
	}
	return out, nil
}

func recovery(v satline.Visit, _ any) ([]fact.Fact, error) {
	fluid, err := fluidOf(v)
	if err != nil {
		return nil, err
	}
	if v.Equipment.Label.Charge == 0 {
		return nil, missing("equipment.label.charge")
	}
	level, err := charge.RecoverTo(fluid, v.Equipment.Label.Charge)
	return []fact.Fact{level.Fact()}, err
}

func cylinder(v satline.Visit, input any) ([]fact.Fact, error) {
	in := input.(*cylinderInput)
	fluid, err := fluidOf(v)
	if err != nil {
		return nil, err
	}
	tank := refrigerant.Cylinder{
		WaterCapacity: in.WaterCapacity, Tare: in.Tare, Service: in.Service,
	}
	fill, err := tank.SafeFill(fluid)
	if err != nil {
		return nil, err
	}
	var out []fact.Fact
	if moved := in.After - in.Gross; in.Gross != 0 && in.After != 0 && moved != 0 {
		way := fact.Code("page.went-in")
		if moved < 0 {
			way = "page.came-out"
		}
		out = append(out, fact.New(way, fact.Amount("mass", max(moved, -moved))))
	}
	if in.Kind == work.Disposable {
		return append([]fact.Fact{fact.New("page.never-filled")}, out...), nil
	}
	out = append(out, fact.New("page.fill",
		fact.Amount("net", fill.Net), fact.Amount("gross", fill.Gross)))
	now := in.After
	if now == 0 {
		now = in.Gross
	}
	if now == 0 {
		return out, nil
	}
	holds := fluid
	if in.Holds != "" {
		if holds, err = refrigerant.Lookup(in.Holds); err != nil {
			return nil, err
		}
	}
	room, err := charge.TankRoom(tank, holds, fluid, now)
	if err != nil {
		return nil, err
	}
	return append([]fact.Fact{fact.New("page.room", fact.Amount("room", room))}, out...), nil
}

func nitrogen(v satline.Visit, input any) ([]fact.Fact, error) {
	in := input.(*nitrogenInput)
	air, err := v.Site.Atmosphere()
	if err != nil {
		return nil, err
	}
	is := satline.DefaultInstruments()
	gauge, clamp := is.Gauge, is.Clamp
	tight, err := charge.PressureTest{
		Start: in.Start.PlusMinus(gauge), End: in.End.PlusMinus(gauge),
		StartGas: in.StartGas.PlusMinus(clamp), EndGas: in.EndGas.PlusMinus(clamp),
		Atmosphere: air.Pressure, Held: in.Held, Limit: in.Limit,
	}.Judge()
	if err != nil {
		return nil, err
	}
	return []fact.Fact{tight.Fact()}, nil
}

func vacuum(_ satline.Visit, input any) ([]fact.Fact, error) {
	in := input.(*vacuumInput)
	log := make([]charge.Sample[quantity.Pressure], 0, len(in.Readings))
	for _, r := range in.Readings {
		log = append(log, charge.Sample[quantity.Pressure]{At: r.At, Value: r.Value})
	}
	d, err := charge.JudgeDecay(log, charge.DecayLimits{Start: in.Start, Level: in.Level})
	return []fact.Fact{d.Fact()}, err
}

// meter is what the assessment makes of the meter's readings: dangers, finding, next steps.
func meter(v satline.Visit, _ any) ([]fact.Fact, error) {
	if v.Electrical == nil {
		return nil, missing("electrical.supply")
	}
	report, err := electrical.Judge(*v.Electrical)
	if err != nil {
		return nil, err
	}
	var out []fact.Fact
	if !report.Finding.IsZero() {
		out = append(out, report.Finding)
	}
	for _, d := range report.Dangers {
		out = append(out, d.Says)
	}
	for _, s := range report.Plan {
		out = append(out, s.Do)
	}
	return out, nil
}

// most bounds what a task reads.
var most = strictjson.Limits{Bytes: satline.MaxVisitBytes, Depth: 8, Items: 5000}

// Perform answers a task: its fields as typed, beside the visit.
func Perform(code string, visit, inputs []byte) TaskAnswer {
	var t *task
	for i := range tasks {
		if tasks[i].code == code {
			t = &tasks[i]
		}
	}
	v, _ := reading(visit)
	b := book{v.Language}
	if t == nil {
		return TaskAnswer{Problem: code}
	}
	var out TaskAnswer
	for _, c := range t.cautions {
		out.Cautions = append(out.Cautions, b.say(fact.New(c), v.Units))
	}
	all := inputsOf(inputs)
	in := fresh(t.input)
	if in != nil {
		if err := all.decode(code, in); err != nil {
			out.Problem = b.malformed(t.code, err)
			return out
		}
	}
	var facts []fact.Fact
	var err error
	if t.whole != nil {
		facts, err = t.whole(v, all)
	} else {
		facts, err = t.answer(v, in)
	}
	if err != nil {
		out.Problem = b.problem(err, v.Units)
		return out
	}
	for _, f := range facts {
		out.Lines = append(out.Lines, b.say(f, v.Units))
	}
	return out
}

// inputsOf are none where they cannot be read.
func inputsOf(text []byte) Inputs {
	var all Inputs
	if json.Unmarshal(text, &all) != nil {
		return nil
	}
	return all
}

// decode reads the input of a task.
func (all Inputs) decode(code string, into any) error {
	text := all[code]
	if text == nil {
		text = json.RawMessage("{}")
	}
	return strictjson.Decode(text, into, most)
}

// malformed says which field of a task is missing, or cannot be read.
func (b book) malformed(code string, err error) string {
	var at *strictjson.Error
	if !errors.As(err, &at) || at.Path == "" {
		return b.word("problem.missing")
	}
	label := b.label("task." + code + "." + anyRow(at.Path))
	if at.Err == nil {
		return label + ": " + b.word("problem.missing")
	}
	return label + ": " + b.word("problem.unreadable")
}

// anyRow is the path of a field in every row of a list: "readings[0].at" as "readings.*.at".
func anyRow(path string) string {
	return brackets(path, func(string) string { return ".*" })
}

// problem says in one line what is wrong. The library's own sentences of errors are in
// English; in another language the page says what is known of it.
func (b book) problem(err error, sys quantity.System) string {
	var far *quantity.RangeError
	var at *satline.VisitError
	where := ""
	if errors.As(err, &at) && at.Field != "" {
		where = b.label(at.Field) + ": "
	}
	switch isFar := errors.As(err, &far); {
	case at != nil && at.Kind == satline.FieldMissing || isFar && far.Value == nil:
		if where == "" && far != nil {
			return b.word("problem.missing") + b.english(": "+far.Error())
		}
		return where + b.word("problem.missing")
	case isFar && far.Min != nil && far.Max != nil:
		return where + b.sentence("problem.outside",
			"value", b.figures(inSystem(far.Value, sys)), "low", b.figures(inSystem(far.Min, sys)),
			"high", b.figures(inSystem(far.Max, sys))) + b.english("; "+far.Advice)
	case b.language != satline.English && b.language != "":
		if at != nil && at.Kind == satline.FieldUnknown {
			return where + b.word("problem.unknown")
		}
		return where + b.word("problem.far")
	case at != nil:
		return where + at.Problem
	}
	return err.Error()
}

func (b book) english(text string) string {
	if b.language != satline.English && b.language != "" {
		return ""
	}
	return text
}

// inSystem writes a value of an error in one system of units.
func inSystem(v interface{ String() string }, sys quantity.System) string {
	if f, ok := v.(interface{ Format(quantity.System) string }); ok {
		return f.Format(sys)
	}
	return v.String()
}
