package airside

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Survey is what is read of the air of one machine while its blower runs. Everything that is
// not known is left out. An uncertainty that is not stated is that of sound instruments: 0.01
// in. w.c., 5 % of an airflow, 0.6 °F (common practice, no source).
type Survey struct {
	// Return and Supply are read against the room where the air enters and where it leaves the
	// box whose label states MaxExternal; that of the return is below zero. See StaticReadings.
	Return *quantity.Uncertain[quantity.StaticPressure] `json:"return,omitzero"`
	Supply *quantity.Uncertain[quantity.StaticPressure] `json:"supply,omitzero"`
	// MaxExternal is the blower's limit; zero stands for 0.5 in. w.c.
	MaxExternal quantity.StaticPressure `json:"maxExternal,omitzero"`
	// FilterDrop and CoilDrop are read across the part. One that is inside the box is no part
	// of the external static pressure.
	FilterDrop   *quantity.Uncertain[quantity.StaticPressure] `json:"filterDrop,omitzero"`
	CoilDrop     *quantity.Uncertain[quantity.StaticPressure] `json:"coilDrop,omitzero"`
	FilterInside bool                                         `json:"filterInside,omitzero"`
	CoilInside   bool                                         `json:"coilInside,omitzero"`
	// CleanFilter and CleanCoil are rows of the makers' tables of the two.
	CleanFilter *CleanDrop `json:"cleanFilter,omitzero"`
	CleanCoil   *CleanDrop `json:"cleanCoil,omitzero"`

	// Airflow was measured by any method; where it was not, it follows from Gas or Electric.
	Airflow *quantity.Uncertain[quantity.VolumeFlow] `json:"airflow,omitzero"`
	// RatedAirflow is that of the label; where it is not stated, 400 CFM for each ton of Capacity.
	RatedAirflow quantity.VolumeFlow `json:"ratedAirflow,omitzero"`
	Capacity     quantity.Power      `json:"capacity,omitzero"`

	// ReturnAir and SupplyAir are read while it heats, the supply out of sight of the heat.
	ReturnAir *quantity.Uncertain[quantity.Temperature] `json:"returnAir,omitzero"`
	SupplyAir *quantity.Uncertain[quantity.Temperature] `json:"supplyAir,omitzero"`
	// MinRise and MaxRise are the label's.
	MinRise quantity.TemperatureDelta `json:"minRise,omitzero"`
	MaxRise quantity.TemperatureDelta `json:"maxRise,omitzero"`
	// Gas is clocked, Electric read at the heater. RatedInput is that of a gas label, at sea
	// level.
	Gas        *GasInput      `json:"gas,omitzero"`
	Electric   *ElectricInput `json:"electric,omitzero"`
	RatedInput quantity.Power `json:"ratedInput,omitzero"`
	// Elevation of the site, -450 m to 5500 m; sea level where it is not stated.
	Elevation *quantity.Length `json:"elevation,omitzero"`
}

// A CleanDrop is a row of a part's table.
type CleanDrop struct {
	Drop quantity.StaticPressure `json:"drop" strict:"required"`
	Flow quantity.VolumeFlow     `json:"flow" strict:"required"`
}

// Surveyed is what a Survey shows.
type Surveyed struct {
	// Finding is what is wrong first; zero where nothing that was read is.
	Finding fact.Fact    `json:"finding,omitzero"`
	Checks  []fact.Check `json:"checks,omitempty"`
	// Plan is what to do, in order.
	Plan     []fact.Fact `json:"plan"`
	Cautions []fact.Fact `json:"cautions"`
	// Static is the external static pressure, Airflow what follows from the heat.
	Static  *StaticVerdict `json:"static,omitempty"`
	Airflow *Airflow       `json:"airflow,omitempty"`
}

// Limits of a survey with their sources.
const (
	// airflowBand either way of the target.
	airflowBand = 0.15
	// usualFlow for each ton where the label states none: 400 CFM.
	usualFlow = 400
	// A part may take such a share of the blower's limit: common practice, no source.
	filterBudget, coilBudget, ductBudget = 0.2, 0.4, 0.2
	// thinGas is how much less gas a burner takes for each 1,000 ft above 2,000 ft.
	thinGas = 0.04
)

var (
	airflowRule = fact.Source{
		Title: "ANSI/ACCA 5 QI-2015, airflow within 15 %", Standing: fact.FromMemory,
	}
	surveyPractice = fact.Source{Standing: fact.CommonPractice}
	surveyLabel    = fact.Source{Title: "the unit's label", Standing: fact.Label}
	gasCode        = fact.Source{
		Title: "NFPA 54: 4 % less input for each 1,000 ft above 2,000 ft", Standing: fact.Published,
	}
)

// JudgeSurvey holds each reading against the label, the part's table or the rule, and puts what
// is wrong in the order in which it is mended. The error is a *RangeError.
func JudgeSurvey(s Survey) (Surveyed, error) {
	j := surveyor{s: &s}
	for _, part := range []func() error{j.atmosphere, j.heat, j.static, j.parts, j.flow, j.rise} {
		if err := part(); err != nil {
			return Surveyed{}, err
		}
	}
	j.plan()
	return j.out, nil
}

type surveyor struct {
	s   *Survey
	out Surveyed
	air AirAt
	// flow is what was measured, or what follows from the heat.
	through *quantity.Uncertain[quantity.VolumeFlow]
	// large are the parts that take more than their budget, with how many times it.
	large map[string]float64
	// what was found.
	high, low, little, much, hot, cool, fired bool
	dirty                                     map[string]bool
	// excess is what dirt takes of the pressure.
	excess quantity.StaticPressure
}

func (j *surveyor) add(
	part string, o fact.Outcome, from fact.Source, code fact.Code, values ...fact.Value,
) {
	says := fact.New(code, append(values, fact.Of("part", fact.Term("part."+part)))...)
	j.out.Checks = append(
		j.out.Checks, fact.Check{Part: part, Outcome: o, Says: says, Source: from},
	)
	if o == fact.Wrong && j.out.Finding.IsZero() {
		j.out.Finding = says
	}
}

// unless gives a reading that states no uncertainty that of a sound instrument.
func unless[T quantity.Quantity](u quantity.Uncertain[T], std T) quantity.Uncertain[T] {
	if u.Std == 0 {
		u.Std = math.Abs(float64(std))
	}
	return u
}

type (
	staticReading      = quantity.Uncertain[quantity.StaticPressure]
	temperatureReading = quantity.Uncertain[quantity.Temperature]
)

func sureStatic(u staticReading) staticReading { return unless(u, quantity.InchesWater(0.01)) }

func sureTemperature(u temperatureReading) temperatureReading {
	return unless(u, quantity.Temperature(quantity.FahrenheitDelta(0.6)))
}

// atmosphere is the air that flows are counted in.
func (j *surveyor) atmosphere() error {
	height, std := quantity.Length(0), quantity.Pressure(1500)
	if z := j.s.Elevation; z != nil {
		height, std = *z, 800
	}
	if err := limit.Within("elevation", height, quantity.Meters(-450), quantity.Meters(5500),
		"it is the height of the site above sea level"); err != nil {
		return err
	}
	j.air = AirAt{DryBulb: quantity.Fahrenheit(70).PlusMinus(quantity.FahrenheitDelta(5)),
		Atmosphere: quantity.AtmosphereAt(height).PlusMinus(std)}
	if t := j.s.ReturnAir; t != nil {
		j.air.DryBulb = sureTemperature(*t)
	}
	return j.air.check("return")
}

// heat works the airflow out of a measured heat.
func (j *surveyor) heat() error {
	s := j.s
	if s.Airflow != nil {
		u := unless(*s.Airflow, s.Airflow.Value/20)
		if err := limit.Reading("airflow", u, quantity.CFM(10), largestFlow,
			"it is the flow through the machine"); err != nil {
			return err
		}
		j.through = &u
	}
	var parts []quantity.Uncertain[quantity.Power]
	if s.Gas != nil {
		heat, err := s.Gas.Heat()
		if err != nil {
			return err
		}
		parts = append(parts, heat)
		j.fire(heat, s.Gas.Efficiency)
	}
	if s.Electric != nil {
		heat, err := s.Electric.Heat()
		if err != nil {
			return err
		}
		parts = append(parts, heat)
	}
	if len(parts) == 0 || s.ReturnAir == nil || s.SupplyAir == nil {
		return nil
	}
	flow, err := HeatRise{Heat: TotalHeat(parts...), Return: j.air,
		Supply: sureTemperature(*s.SupplyAir)}.Airflow()
	if err != nil {
		return err
	}
	j.out.Airflow = &flow
	if j.through == nil {
		j.through = &flow.Flow
	}
	return nil
}

// fire judges the input of a burner, less where the air is thin.
func (j *surveyor) fire(heat quantity.Uncertain[quantity.Power], efficiency float64) {
	rated := j.s.RatedInput
	if rated <= 0 {
		return
	}
	from, feet := surveyLabel, 0.0
	if z := j.s.Elevation; z != nil && z.Feet() > 2000 {
		from, feet = gasCode, z.Feet()
	}
	most := rated * quantity.Power(max(0.1, 1-thinGas*feet/1000))
	input := quantity.Power(float64(heat.Value) / efficiency)
	values := []fact.Value{fact.Amount("input", input), fact.Amount("limit", most)}
	switch std := heat.Std / efficiency; {
	case float64(input-most) > 1.28*std:
		j.fired = true
		j.add("burner", fact.Wrong, from, "air.input-above", values...)
	case input < most*9/10:
		j.add("burner", fact.Watch, from, "air.input-below", values...)
	default:
		j.add("burner", fact.Sound, from, "air.input-within", values...)
	}
}

func (j *surveyor) static() error {
	s := j.s
	if s.Return == nil || s.Supply == nil {
		return nil
	}
	v, err := JudgeStatic(StaticReadings{Entering: sureStatic(*s.Return),
		Leaving: sureStatic(*s.Supply), Maximum: s.MaxExternal})
	if err != nil {
		return err
	}
	j.out.Static = &v
	code, outcome := fact.Code("air.static-within"), fact.Sound
	switch v.Outcome {
	case StaticHigh:
		code, outcome, j.high = "air.static-high", fact.Wrong, true
	case StaticLow:
		code, outcome, j.low = "air.static-low", fact.Watch, true
	case StaticCannotTell:
		code, outcome = "air.static-near", fact.CannotTell
	}
	j.add("ducts", outcome, v.MaximumSource, code, fact.Amount("static", v.External.Value),
		fact.Amount("limit", v.Maximum), fact.Amount("return", quantity.Ratio(v.ReturnShare)))
	return nil
}

// parts judges filter and coil by their tables, and every part by its share of the limit.
func (j *surveyor) parts() error {
	s := j.s
	j.large, j.dirty = map[string]float64{}, map[string]bool{}
	most := s.MaxExternal
	if most == 0 {
		most = usualMaximum
	}
	for _, p := range []struct {
		name   string
		kind   Part
		drop   *quantity.Uncertain[quantity.StaticPressure]
		clean  *CleanDrop
		budget float64
	}{
		{"filter", FilterPart, s.FilterDrop, s.CleanFilter, filterBudget},
		{"coil", CoilPart, s.CoilDrop, s.CleanCoil, coilBudget},
	} {
		if p.drop == nil {
			continue
		}
		drop := sureStatic(*p.drop)
		if err := limit.Reading("drop of the "+p.name, drop, 0, 2500,
			"it is the pressure before the part less that after it"); err != nil {
			return err
		}
		if p.clean == nil || j.through == nil {
			j.share(p.name, drop.Value, most, p.budget)
			continue
		}
		v, err := PartDrop{Part: p.kind, Rated: p.clean.Drop, RatedFlow: p.clean.Flow,
			Flow: *j.through, Air: j.air, Measured: drop}.Judge()
		if err != nil {
			return err
		}
		code, outcome := fact.Code("air.part-clean"), fact.Sound
		switch {
		case v.Dirty >= decisionLevel:
			code, outcome, j.dirty[p.name] = "air.part-dirty", fact.Wrong, true
			j.excess += drop.Value - v.Expected.Value
		case v.Open >= decisionLevel:
			code, outcome = "air.part-open", fact.Watch
		case v.Dirty > 1-decisionLevel || v.Open > 1-decisionLevel:
			code, outcome = "air.part-near", fact.CannotTell
		}
		j.add(p.name, outcome, fact.Source{Title: "the part's table", Standing: fact.Label}, code,
			fact.Amount("drop", drop.Value), fact.Amount("clean", v.Expected.Value))
	}
	if s.Return != nil && (s.FilterInside || s.FilterDrop != nil) {
		j.share("return", outside(-s.Return.Value, s.FilterDrop, s.FilterInside), most, ductBudget)
	}
	if s.Supply != nil && (s.CoilInside || s.CoilDrop != nil) {
		j.share("supply-ducts", outside(s.Supply.Value, s.CoilDrop, s.CoilInside), most, ductBudget)
	}
	return nil
}

// outside is what the duct takes of a side, without the part that stands in it.
func outside(
	side quantity.StaticPressure, part *quantity.Uncertain[quantity.StaticPressure], inside bool,
) quantity.StaticPressure {
	if inside || part == nil {
		return max(0, side)
	}
	return max(0, side-part.Value)
}

// share judges a drop by its share of the blower's limit.
func (j *surveyor) share(part string, drop, most quantity.StaticPressure, budget float64) {
	values := []fact.Value{fact.Amount("drop", drop),
		fact.Amount("share", quantity.Ratio(drop/most)),
		fact.Amount("budget", quantity.Ratio(budget))}
	times := float64(drop/most) / budget
	if times <= 1 {
		j.add(part, fact.Sound, surveyPractice, "air.part-within", values...)
		return
	}
	j.large[part] = times
	outcome := fact.Watch
	if j.high {
		outcome = fact.Wrong
	}
	j.add(part, outcome, surveyPractice, "air.part-large", values...)
}

func (j *surveyor) flow() error {
	target, from := j.s.RatedAirflow, surveyLabel
	if target == 0 {
		target = quantity.CFM(usualFlow * j.s.Capacity.Tons())
		from = surveyPractice
	}
	if j.through == nil {
		return nil
	}
	if target == 0 {
		j.add("blower", 0, fact.Source{}, "air.flow", fact.Amount("flow", j.through.Value))
		return nil
	}
	if err := limit.Within("target airflow", target, quantity.CFM(50), quantity.CFM(1e6),
		"take it, or the capacity, from the label"); err != nil {
		return err
	}
	if from == surveyLabel {
		from = airflowRule
	}
	off := float64(j.through.Value-target) / float64(target)
	values := []fact.Value{fact.Amount("flow", j.through.Value), fact.Amount("target", target),
		fact.Amount("off", quantity.Ratio(math.Abs(off)))}
	slack := 1.28 * j.through.Std / float64(target)
	switch {
	case off < -airflowBand-slack:
		j.little = true
		j.add("blower", fact.Wrong, from, "air.flow-low", values...)
	case off > airflowBand+slack:
		j.much = true
		j.add("blower", fact.Wrong, from, "air.flow-high", values...)
	case math.Abs(off) > airflowBand-slack:
		j.add("blower", fact.CannotTell, from, "air.flow-near", values...)
	default:
		j.add("blower", fact.Sound, from, "air.flow-within", values...)
	}
	return nil
}

func (j *surveyor) rise() error {
	s := j.s
	if s.ReturnAir == nil || s.SupplyAir == nil || s.MaxRise == 0 {
		return nil
	}
	back, supply := sureTemperature(*s.ReturnAir), sureTemperature(*s.SupplyAir)
	if err := airTemperature("supply dry bulb", supply); err != nil {
		return err
	}
	if err := limit.Within("highest rise of the label", s.MaxRise, s.MinRise, 100,
		"the label prints both, as 35 °F to 65 °F"); err != nil {
		return err
	}
	err := limit.Within("lowest rise of the label", s.MinRise, 0, 100, "it is above zero")
	if err != nil {
		return err
	}
	rise := supply.Value.Sub(back.Value)
	std := 1.28 * math.Hypot(back.Std, supply.Std)
	values := []fact.Value{fact.Amount("rise", rise), fact.Amount("low", s.MinRise),
		fact.Amount("high", s.MaxRise)}
	above, under := float64(rise-s.MaxRise), float64(s.MinRise-rise)
	switch {
	case above > std:
		j.hot = true
		j.add("heat", fact.Wrong, surveyLabel, "air.rise-above", values...)
	case under > std:
		j.cool = true
		j.add("heat", fact.Wrong, surveyLabel, "air.rise-below", values...)
	case max(above, under) > -std:
		j.add("heat", fact.CannotTell, surveyLabel, "air.rise-near", values...)
	default:
		j.add("heat", fact.Sound, surveyLabel, "air.rise-within", values...)
	}
	return nil
}
