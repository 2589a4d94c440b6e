package coldroom

import (
	"errors"
	"math"
	"slices"
	"time"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/nearest"
	"github.com/satline/satline/internal/judge/coldroom/machine"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// differs is what a machine may differ in from one that is usual for its room, and by how much
// one of its kind does, one standard deviation: common practice, no source. What is logarithmic
// is a factor, the others are in K.
var differs = []struct {
	std float64
	by  func(d *machine.Design, x float64)
}{
	{0.3, func(d *machine.Design, x float64) { d.Difference *= math.Exp(x) }},
	{1.5, func(d *machine.Design, x float64) { d.Bulb += x }},
	{0.6, func(d *machine.Design, x float64) { d.Gain *= math.Exp(x) }},
	{0.35, func(d *machine.Design, x float64) { d.OverOutdoor *= math.Exp(x) }},
	{0.6, func(d *machine.Design, x float64) { d.Subcooling *= math.Exp(x) }},
	{5, func(d *machine.Design, x float64) { d.Floor += x }},
	{0.12, func(d *machine.Design, x float64) { d.Ideal *= math.Exp(x) }},
	{0.2, func(d *machine.Design, x float64) { d.Open *= math.Exp(-x) }},
	{0.25, func(d *machine.Design, x float64) { d.IndoorAir *= math.Exp(x) }},
}

// overOutdoorDiffers and floorDiffers are places in differs, usualFloor the head, K, that a control
// holds where the floor does not differ.
const (
	overOutdoorDiffers, floorDiffers = 3, 5
	usualFloor                       = 301
)

// Forecast fits a machine of common make to what was read of one that keeps a cold room.
func Forecast(c *modes.Case) (modes.Foretell, error) {
	if c.OutdoorDryBulb == nil || c.ReturnDryBulb == nil || c.EvaporatingDew == nil ||
		middleOf(c) == nil {
		return nil, modes.Lacking(
			"readings",
			"a forecast needs outdoorDryBulb, returnDryBulb, suctionPressure and liquidPressure",
		)
	}
	k, err := evidenceOf(c)
	if err != nil {
		return nil, err
	}
	f := forecast{c: c, k: k, fluid: k.fluid}
	most := make([]float64, len(differs))
	for i := range differs {
		most[i] = 2.5 * differs[i].std
	}
	by, err := nearest.Find(f.misses, most)
	if err != nil {
		return nil, err
	}
	around, err := nearest.Around(f.misses, by)
	if err != nil {
		return nil, err
	}
	f.machines = append(f.machines, f.differing(by))
	for _, other := range around {
		f.machines = append(f.machines, f.differing(other))
	}
	if f.wider, err = f.widened(by); err != nil {
		return nil, err
	}
	f.compare()
	f.mayBeHeld(by)
	return f.outlook, nil
}

// widened is how many times more uncertain a machine is that misses what was read by more than its
// uncertainty: by Birge's ratio, the root of the squared misses over their number.
func (f *forecast) widened(by []float64) (float64, error) {
	misses, err := f.misses(by)
	if err != nil {
		return 0, err
	}
	sum := 0.0
	for _, x := range misses {
		sum += sq(x)
	}
	readings := float64(len(misses) - len(by))
	return math.Sqrt(max(1, sum/readings)), nil
}

// mayBeHeld is the fitted machine with a usual condenser, whose control holds the head where it
// was read, with the chance that it is this one: on a hot day the two part.
func (f *forecast) mayBeHeld(by []float64) {
	if f.heldChance = believe(f.k).cause(headHigh); f.heldChance < worth/2 {
		return
	}
	by = slices.Clone(by)
	by[overOutdoorDiffers] = 0
	by[floorDiffers] = float64(middleOf(f.c).Value) - usualFloor
	f.held = f.differing(by)
}

// A forecast is a machine that was fitted to a case.
type forecast struct {
	c     *modes.Case
	k     *known
	fluid *cyclefluid.Fluid
	// machines are the fitted one, and those that it may be as well, each one standard
	// deviation away.
	machines []*machine.Machine
	believe  []fact.Fact
	// wider is how many times more uncertain they are than where the fitted one reads as the
	// machine does.
	wider float64
	// held may be the machine as well, or is nil.
	held       *machine.Machine
	heldChance float64
	// off is how far the fitted machine is off the two pressures that were read, in K.
	off struct{ evaporating, condensing float64 }
}

// differing is the machine that is usual for the room, with differences.
func (f *forecast) differing(by []float64) *machine.Machine {
	u := &f.k.usual
	d := machine.Design{
		Box: float64(u.Box.Value), Difference: float64(u.Difference.Value),
		Bulb: float64(u.BulbSuperheat.Value), Gain: 6, OverOutdoor: 11.5,
		IndoorAir: 0.5, OutdoorAir: 0.5, Floor: usualFloor, Subcooling: 3.2, Ideal: 0.6, Open: 0.58,
		Drop: 0.8, HeatLoss: 0.1, Valve: f.k.valve, DesignDay: machine.HotDay, DryEnd: 0.3,
		Follows: 0.2,
	}
	if u.Frozen {
		d.OverOutdoor, d.Gain = 9.5, 13
	}
	if !d.Valve {
		d.DesignDay, d.Gain = 304, 18
	}
	for i, x := range by {
		differs[i].by(&d, x)
	}
	if !d.Valve {
		d.Floor = 0
	}
	d.Bulb = max(1, min(d.Bulb, 0.85*d.Difference))
	d.Open, d.IndoorAir = min(d.Open, 0.95), min(d.IndoorAir, 0.8)
	return machine.New(f.fluid, d)
}

func (f *forecast) seen() machine.Weather {
	return machine.Weather{Box: f.k.weather.box, Outdoor: f.k.weather.outdoor}
}

var errNotSolved = errors.New("no state of the machine was found there")

func (f *forecast) run(m *machine.Machine, w machine.Weather) (machine.State, error) {
	st, _ := m.Run(w, machine.Failing{}, nil)
	if !st.Converged {
		return st, errNotSolved
	}
	return st, nil
}

// reads is what of a state was read, each with what the model is off by itself.
func (f *forecast) reads(st *machine.State) []held {
	c := f.c
	return []held{
		{"feature.evaporating", st.Evaporating, c.EvaporatingDew, 0.5},
		{"feature.condensing", (st.Bubble + st.CondensingDew) / 2, middleOf(c), 0.5},
		{"reading.suctionLine", st.Suction, c.SuctionLine, 1.2},
		{"reading.bulbLine", st.Bulb, c.BulbLine, 0.8},
		{"reading.liquidLine", st.Liquid, c.LiquidLine, 0.6},
		{"reading.dischargeLine", st.Discharge, c.DischargeLine, 4},
		{"reading.supplyDryBulb", st.Supply, c.SupplyDryBulb, 0.8},
	}
}

// A held figure of the model is held against what was read, where it was.
type held struct {
	of    fact.Term
	is    float64
	read  *quantity.Uncertain[quantity.Temperature]
	model float64 // standard uncertainty
}

func (f *forecast) misses(by []float64) ([]float64, error) {
	st, err := f.run(f.differing(by), f.seen())
	if err != nil {
		return nil, err
	}
	var out []float64
	for _, h := range f.reads(&st) {
		if h.read != nil {
			out = append(out, (h.is-float64(h.read.Value))/math.Hypot(h.read.Std, h.model))
		}
	}
	for i, x := range by {
		out = append(out, x/differs[i].std)
	}
	return out, nil
}

// compare says what the fitted machine misses of what was read.
func (f *forecast) compare() {
	f.believe = Judge(f.c).DoNotBuild()
	st, err := f.run(f.machines[0], f.seen())
	fits := err == nil
	f.off.evaporating = st.Evaporating - float64(f.c.EvaporatingDew.Value)
	f.off.condensing = (st.Bubble+st.CondensingDew)/2 - float64(middleOf(f.c).Value)
	for _, h := range f.reads(&st) {
		if h.read == nil {
			continue
		}
		if gap := math.Abs(h.is - float64(h.read.Value)); gap > 2*math.Hypot(h.read.Std, h.model) {
			fits = false
			f.believe = append(f.believe, fact.New(
				"forecast.misses", fact.Of("feature", h.of),
				fact.Amount("by", quantity.TemperatureDelta(gap)),
			))
		}
	}
	if fits {
		f.believe = append(f.believe, fact.New("forecast.fits"))
	}
}

// outlook is what the machine will do in a scenario, where the box is at the temperature that
// it is kept at or at that of the scenario.
func (f *forecast) outlook(s modes.Scenario) (out modes.Outlook, err error) {
	if err := s.WithoutCharge(); err != nil {
		return out, err
	}
	w := machine.Weather{Box: float64(f.k.usual.Box.Value), Outdoor: f.k.weather.outdoor}
	today := w
	if s.OutdoorDryBulb != 0 {
		err := limit.Within(
			"outdoor dry bulb", s.OutdoorDryBulb, quantity.Fahrenheit(-20),
			quantity.Fahrenheit(130),
			"the air that the condenser gives its heat to",
		)
		if err != nil {
			return out, err
		}
		w.Outdoor = float64(s.OutdoorDryBulb)
	}
	if s.ReturnDryBulb != 0 {
		err := limit.Within(
			"box temperature", s.ReturnDryBulb, coldroom.Coldest, coldroom.Warmest,
			"that of a cold room",
		)
		if err != nil {
			return out, err
		}
		w.Box = float64(s.ReturnDryBulb)
	}
	var states []machine.State
	for _, m := range f.machines {
		st, err := f.run(m, w)
		if err != nil {
			return out, err
		}
		states = append(states, st)
	}
	type at = quantity.Temperature
	type by = quantity.TemperatureDelta
	out = modes.Outlook{
		Superheat: told[by](states, f.wider, func(st *machine.State) float64 {
			return st.Suction - st.Evaporating
		}),
		Subcooling: told[by](states, f.wider, func(st *machine.State) float64 {
			return st.Bubble - st.Liquid
		}),
		Evaporating: told[at](states, f.wider, func(st *machine.State) float64 { return st.Evaporating }),
		Condensing:  told[at](states, f.wider, func(st *machine.State) float64 { return st.Condensing }),
		Supply:      told[at](states, f.wider, func(st *machine.State) float64 { return st.Supply }),
		Believe:     f.believe,
	}
	out.Evaporating.Std = math.Hypot(out.Evaporating.Std, f.off.evaporating)
	out.Condensing.Std = math.Hypot(out.Condensing.Std, f.off.condensing)
	if f.held != nil {
		if st, err := f.run(f.held, w); err == nil {
			apart := st.Condensing - states[0].Condensing
			out.Condensing.Std = math.Hypot(out.Condensing.Std, math.Sqrt(f.heldChance)*apart)
		}
	}
	out.CoilSurface = out.Evaporating
	discharge := told[at](states, f.wider, func(st *machine.State) float64 { return st.Discharge })
	out.Says = append(out.Says, fact.New(
		"forecast.cold-pressures", fact.Measured("condensing", out.Condensing),
		fact.Measured("evaporating", out.Evaporating), fact.Measured("discharge", discharge),
	))
	if s.Load == 0 {
		s.Load = f.c.Room.Load
	}
	box := w.Box
	if nominal := f.c.NominalCapacity; nominal > 0 { // that of the day it is designed for
		const rated, change = 0.07, 0.3 // how far a rating is off, and what a model says of it
		share := states[0].Capacity
		std := math.Hypot(rated*share, change*(1-share))
		out.Capacity = quantity.Uncertain[quantity.Power]{
			Value: nominal * quantity.Power(share), Std: float64(nominal) * std,
		}
		out.Says = append(
			out.Says, fact.New("forecast.cold-capacity", fact.Measured("capacity", out.Capacity)),
		)
	}
	if s.Load > 0 && f.c.NominalCapacity > 0 {
		var carries fact.Fact
		carries, box = f.carries(s.Load, w)
		out.Says = append(out.Says, carries)
	} else if now, err := f.run(f.machines[0], today); err == nil {
		const worse = 0.97
		if part := states[0].Capacity / now.Capacity; part < worse {
			out.Says = append(out.Says, fact.New(
				"forecast.cold-run", fact.Of("part", fact.Share(part)),
				fact.Of("run", time.Duration(part*float64(f.most())).Round(time.Hour)),
			))
		}
	}
	out.Box = &quantity.Uncertain[quantity.Temperature]{
		Value: quantity.Temperature(box), Std: f.k.usual.Box.Std,
	}
	return out, nil
}

func (f *forecast) most() time.Duration {
	most, _ := f.k.usual.MostRun()
	return most
}

// carries says how long of a day the machine runs for a load, or how warm the box gets where
// it runs as long as it may.
func (f *forecast) carries(load quantity.Power, w machine.Weather) (fact.Fact, float64) {
	const day, step, warmest = 24 * time.Hour, 0.25, 15.0 // K
	short := fact.New("forecast.cold-short", fact.Amount("load", load))
	for box := w.Box; box <= w.Box+warmest; box += step {
		st, err := f.run(f.machines[0], machine.Weather{Box: box, Outdoor: w.Outdoor})
		if err != nil {
			break
		}
		gives := st.Capacity * float64(f.c.NominalCapacity)
		if run := time.Duration(float64(day) * float64(load) / gives); run <= f.most() {
			if box == w.Box {
				return fact.New(
					"forecast.cold-carries", fact.Amount("load", load),
					fact.Of("run", run.Round(time.Hour)),
				), box
			}
			return short.With(fact.Amount("box", quantity.Temperature(box))), box
		}
	}
	return fact.New("forecast.cold-lost", fact.Amount("load", load)), w.Box + warmest
}

// unlike is how far, in K, a model of common make is off a machine of another: common practice,
// no source.
const unlike = 0.7

// told is a figure of the fitted machine, with how far those are off that it may be as well, so
// many times wider.
func told[T quantity.Quantity](
	states []machine.State, wider float64, of func(*machine.State) float64,
) quantity.Uncertain[T] {
	first, sum := of(&states[0]), 0.0
	for i := range states[1:] {
		sum += sq(of(&states[1+i]) - first)
	}
	return quantity.Uncertain[T]{Value: T(first), Std: wider * math.Sqrt(sum+sq(unlike))}
}
