package coldroom

import (
	"math"
	"slices"
	"time"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/coldroom/machine"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// likely is the chance from which a cause is taken to be present, worth from which it is
// worth a step.
const likely, worth = 0.5, 0.2

// Looks lists what a technician at a cold room can be asked to see or try.
func Looks() []diagnose.Look {
	out := make([]diagnose.Look, len(looks))
	for i := range looks {
		out[i] = diagnose.Look{Code: looks[i].code, Running: looks[i].running}
	}
	return out
}

// Judge says what is found of a machine that keeps a cold room.
func Judge(c *modes.Case) modes.Judgement {
	k, err := evidenceOf(c)
	if err != nil { // no such machine runs on it
		return unknownFluid(c)
	}
	p := planner{c: c, k: k, b: believe(k)}
	p.dangers = dangersOf(c, k, p.b)
	p.ranking = p.b.ranking()
	p.plan()
	findings := p.findings()
	j := modes.Judgement{
		Headline: p.headline, Dangers: p.dangers, Steps: p.steps, Findings: findings,
		Charge: p.charge(), Ask: p.ask(), WeighIn: p.weighIn, Performance: p.figures(findings),
	}
	c.TellLeak(&j)
	return j
}

// unknownFluid keeps the food, and leaves the rest to the maker's chart.
func unknownFluid(c *modes.Case) modes.Judgement {
	k := &known{usual: usualOf(c)}
	says := fact.New("headline.cold-fluid")
	p := planner{c: c, k: k, dangers: foodDangers(c, k)}
	p.food()
	p.add("step.cold-chart")
	return modes.Judgement{
		Headline: says, Dangers: p.dangers, Steps: p.steps,
		Charge: modes.Charge{Outcome: modes.NotJudged, Why: []fact.Fact{says}},
	}
}

func finding(code string, chance float64) fact.Fact {
	return fact.New(
		"finding.cold", fact.Of("chance", fact.Share(chance)),
		fact.Of("cause", fact.Term("cause."+code)),
	)
}

// findings lists the causes with their chances, while anything was judged.
func (p *planner) findings() []modes.Finding {
	const least, most = 0.05, 6
	var out []modes.Finding
	if p.unjudged.Code != "" && !p.believed() {
		return nil
	}
	for _, r := range p.ranking {
		if r.chance < least || len(out) == most {
			break
		}
		f := modes.Finding{Cause: r.code, Chance: r.chance, Says: finding(r.code, r.chance)}
		f.For, f.Against = p.b.signs(p.k, r.code)
		for _, j := range r.faults {
			f.Faults = append(f.Faults, modes.FaultChance{
				Fault: faults[j].code, Chance: p.b.faults[j] / max(r.chance, 1e-12),
			})
		}
		out = append(out, f)
	}
	return out
}

// charge is what is believed of it.
func (p *planner) charge() modes.Charge {
	if p.unjudged.Code != "" {
		return modes.Charge{
			Outcome: modes.NotJudged, Why: []fact.Fact{p.unjudged}, Missing: p.missing,
		}
	}
	low, high := p.low(), p.b.cause(overcharge)
	out := modes.Charge{Outcome: modes.ChargeOpen, Low: low, High: high, InBand: max(0, 1-low-high)}
	switch {
	case low >= likely:
		out.Outcome = modes.ChargeLow
	case high >= likely:
		out.Outcome = modes.ChargeHigh
	case out.InBand >= 0.8:
		out.Outcome = modes.ChargeInBand
	}
	if p.hold.Code != "" {
		out.Why = append(out.Why, p.hold)
	}
	if p.k.usual.Receiver > 0.5 {
		if !p.has(modes.Evacuate) { // what is weighed in whole is judged by no level
			out.Why = append(out.Why, fact.New("charge.cold-receiver"))
		}
		if p.k.weather.outdoor < signature.CoolWeather && low+p.b.cause(headLow) >= worth/2 {
			out.Why = append(out.Why, fact.New("charge.cold-winter"))
		}
	}
	return out
}

// ask is the look that is worth most, with what each answer would mean.
func (p *planner) ask() *modes.Question {
	a := p.asked
	if a == nil {
		return nil
	}
	q := &modes.Question{Look: a.look.code, Take: fact.New(fact.Code("look." + a.look.code))}
	for _, o := range []struct {
		chances []float64
		chance  float64
		answer  string
	}{{a.ifYes, a.yes, ".yes"}, {a.ifNo, 1 - a.yes, ".no"}} {
		code, chance := p.b.bestCause(o.chances)
		then := modes.Outcome{
			Chance: o.chance, Then: code, ThenChance: chance / max(o.chance, 1e-12),
		}
		then.Says = fact.New(
			"outcome.look", fact.Of("answer", fact.Term("look."+a.look.code+o.answer)),
			fact.Of("chance", fact.Share(then.Chance)), fact.Of("then", fact.Term("cause."+code)),
			fact.Of("thenChance", fact.Share(then.ThenChance)),
		)
		q.Outcomes = append(q.Outcomes, then)
	}
	return q
}

// behindTube is the usual superheat at the compressor behind a capillary tube, most of which are
// soldered to the suction line: common practice, no source.
var behindTube = quantity.Uncertain[quantity.TemperatureDelta]{
	Value: quantity.FahrenheitDelta(40), Std: float64(quantity.FahrenheitDelta(15)),
}

// figures are what such a machine usually reads beside what this one does, with the limits that
// matter today and that no danger tells. What the likeliest cause is held against has its usual
// value there.
func (p *planner) figures(findings []modes.Finding) []fact.Fact {
	c, k, u := p.c, p.k, &p.k.usual
	var out []fact.Fact
	shown := map[fact.Code]bool{}
	if len(findings) > 0 {
		for _, s := range slices.Concat(findings[0].For, findings[0].Against) {
			shown[s.Code] = true
		}
	}
	type apart = quantity.Uncertain[quantity.TemperatureDelta]
	of := func(code fact.Code, f int, usual apart, s fact.Source) {
		if k.read(f) && !shown[signCodes[f]] {
			out = append(out, sourced(fact.New(
				code, fact.Amount("measured", quantity.TemperatureDelta(k.value[f])),
				fact.Measured("usual", usual),
			), s))
		}
	}
	practice := fact.Source{Standing: fact.CommonPractice}
	of("cold-figure.difference", signature.Difference, u.Difference, u.DifferenceSource)
	of("cold-figure.bulb", signature.BulbSuperheat, u.BulbSuperheat, practice)
	superheat := u.Superheat
	if !k.valve {
		superheat = behindTube
	}
	of("cold-figure.superheat", signature.Superheat, superheat, practice)
	below := fact.Code("cold-figure.subcooling")
	if k.weather.outdoor < signature.CoolWeather {
		below = "cold-figure.subcooling-cold"
	}
	of(below, signature.Subcooling, u.Subcooling, practice)
	if from, to := c.LiquidLine, c.LiquidAtValve; from != nil && to != nil {
		out = append(out, fact.New(
			"cold-figure.liquid-drop", fact.Amount("by", from.Value.Sub(to.Value)),
		))
	}
	out = append(out, gives(c)...)
	if limit := u.FoodLimit(); !p.dangers.Tell("cold-food", "cold-frozen-food") {
		out = append(out, sourced(
			fact.New("cold-figure.food", fact.Amount("limit", limit.At)), limit.Source,
		))
	}
	if run := runOf(c); run > 0 {
		most, source := u.MostRun()
		code := fact.Code("cold-figure.load")
		if run > most {
			code = "cold-figure.load-over"
		}
		out = append(out, sourced(fact.New(
			code, fact.Amount("load", c.Room.Load), fact.Of("run", run.Round(time.Hour)),
			fact.Of("most", most),
		), source))
	}
	out = append(out, atPressures(c, k)...)
	out = append(out, k.course.figures(k)...)
	const may = 0.05
	control := c.Room.PumpDown || p.dangers.Tell(suctionInVacuum) || p.b.cause(shortCycle) >= may
	if f, ok := controlFigure(c, u); ok && control {
		out = append(out, f)
	}
	return out
}

// gives is what the air through the evaporator says of its capacity, where its flow was read; the
// frost that it takes on is not in it.
func gives(c *modes.Case) []fact.Fact {
	flow, in, out := c.Airflow, c.ReturnDryBulb, c.SupplyDryBulb
	if flow == nil || in == nil || out == nil || in.Value <= out.Value {
		return nil
	}
	const humidity = 0.85 // of a box, about; it hardly counts
	air, err := psychro.FromRelativeHumidity(in.Value, humidity, c.Atmosphere)
	if err != nil {
		return nil
	}
	split := float64(in.Value.Sub(out.Value))
	cp := 1006 + 1860*air.HumidityRatio() // J/(kg K) of dry air with its water
	q := float64(air.DryAirFlow(flow.Value)) * cp * split
	return []fact.Fact{fact.New("cold-figure.gives", fact.Measured("capacity",
		quantity.Uncertain[quantity.Power]{
			Value: quantity.Power(q),
			Std: q * math.Hypot(
				flow.Std/float64(flow.Value), math.Hypot(in.Std, out.Std)/split,
			),
		},
	))}
}

// atPressures is what a sound compressor of the nominal capacity gives at the pressures that were
// read, beside what the box needs of it while it may run, where its load is known. The nominal
// capacity is that of a hot day with the box as it is kept.
func atPressures(c *modes.Case, k *known) []fact.Fact {
	evaporating, condensing := c.EvaporatingDew, middleOf(c)
	if c.NominalCapacity <= 0 || evaporating == nil || condensing == nil {
		return nil
	}
	const over = 11 // K of condensing over the air
	// Shares that compressors differ by, and that a load sheet is off by: common practice, no source.
	const unlike, sheet = 0.12, 0.1
	u := &k.usual
	at := func(te, tc float64) float64 {
		return machine.Cooling(
			k.fluid, te, tc, float64(u.Superheat.Value), float64(u.Subcooling.Value),
		)
	}
	design := at(float64(u.Box.Value)-float64(u.Difference.Value), machine.HotDay+over)
	share := at(float64(evaporating.Value), float64(condensing.Value)) / design
	if !(share > 0.05 && share < 3) {
		return nil
	}
	gives := float64(c.NominalCapacity) * share
	f := fact.New("cold-figure.at-pressures", fact.Measured(
		"gives", quantity.Uncertain[quantity.Power]{
			Value: quantity.Power(gives), Std: unlike * gives,
		},
	))
	if needs, err := u.Needs(c.Room.Load); err == nil && needs > 0 {
		most, _ := u.MostRun()
		f = f.With(
			fact.Measured("needs", needs.PlusMinus(sheet*needs)), fact.Of("most", most),
		)
	}
	return []fact.Fact{f}
}

// runOf is how long of a day the machine runs for its load by its nominal capacity; zero where
// either is not known.
func runOf(c *modes.Case) time.Duration {
	load, nominal := c.Room.Load, c.NominalCapacity
	if load <= 0 || nominal <= 0 {
		return 0
	}
	return time.Duration(float64(24*time.Hour) * math.Min(float64(load/nominal), 10))
}

// sourced adds where a figure comes from.
func sourced(f fact.Fact, s fact.Source) fact.Fact {
	if s.Title == "" {
		return f.With(fact.Of("source", fact.Term("mark.practice")))
	}
	if f = f.With(fact.Of("source", s.Title)); s.Standing == fact.FromMemory {
		f = f.With(fact.Of("mark", fact.Term("mark.memory")))
	}
	return f
}

// controlFigure is the usual setting of the low-pressure control.
func controlFigure(c *modes.Case, u *coldroom.Usual) (fact.Fact, bool) {
	set, err := c.Room.PressureControl(c.Fluid, u.Box.Value, c.Atmosphere)
	code := fact.Code("cold-figure.control")
	if c.Room.PumpDown {
		code = "cold-figure.pump-down"
	}
	return sourced(fact.New(
		code, fact.Amount("in", set.CutIn), fact.Amount("out", set.CutOut),
	), set.Source), err == nil
}
