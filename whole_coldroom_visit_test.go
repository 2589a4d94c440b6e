package satline

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/judge/coldroom/bench"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A coldVisit is a visit to a machine that keeps a cold room, worked through as the plan says.
type coldVisit struct {
	bench *bench.Visit
	visit Visit
	rng   *rand.Rand
	at    time.Duration
	done  tasks
	// fallsNoMore says that the head did not fall as refrigerant came out.
	fallsNoMore bool
	plans       int
	// tooWarm says that the box was read too warm for its food at first, warned that the first plan
	// said so.
	tooWarm, warned bool
}

func newColdVisit(b *bench.Visit, rng *rand.Rand) *coldVisit {
	v := &coldVisit{bench: b, rng: rng, at: 20 * time.Minute}
	v.visit.Equipment = Equipment{
		Refrigerant: b.Fluid.Designation(), Metering: Capillary, ColdRoom: b.Room,
		Label: Label{Charge: b.Charge, RatedLoadCurrent: quantity.Amperes(10)},
	}
	if b.Valve {
		v.visit.Equipment.Metering = TXV
	}
	v.visit.Conditions = Conditions{Mode: Refrigeration, Running: 30 * time.Minute}
	for look, found := range b.Answers {
		v.visit.Checks = append(v.visit.Checks, Check{Look: look, Found: found})
	}
	slices.SortFunc(v.visit.Checks, func(a, b Check) int { return strings.Compare(a.Look, b.Look) })
	v.note()
	return v
}

// note writes the readings down.
func (v *coldVisit) note() {
	b, r := v.bench, v.bench.Readings
	v.visit.Readings = Readings{
		SuctionPressure: given(b.Suction), LiquidPressure: given(b.Liquid),
		SuctionLine: given(r["suctionLine"]), LiquidLine: given(r["liquidLine"]),
		BulbLine: given(r["bulbLine"]), DischargeLine: given(r["dischargeLine"]),
		ReturnDryBulb: given(r["returnDryBulb"]), SupplyDryBulb: given(r["supplyDryBulb"]),
		OutdoorDryBulb: given(r["outdoorDryBulb"]), CondenserLeaving: given(r["condenserLeaving"]),
	}
	if b.Current > 0 {
		v.visit.Readings.CompressorCurrent = ReadingOf(
			quantity.Amperes(10 * b.Current).PlusMinus(quantity.Amperes(0.3)),
		)
	}
}

func (v *coldVisit) act(a *Assessment) bool {
	if v.plans++; v.plans == 1 {
		box := v.bench.Readings["returnDryBulb"]
		v.tooWarm = box != nil && v.bench.Room.Application.KeepsFood() &&
			box.Value > v.bench.Room.Usual(&box.Value).FoodLimit().At
		v.warned = slices.ContainsFunc(a.Plan, func(s Step) bool {
			return strings.HasPrefix(string(s.Do.Code), "step.cold-food-move")
		})
	}
	for i := range a.Plan {
		s := &a.Plan[i]
		if v.looks(s) || v.reads(s) || v.sees(s) || v.doses(s) || v.weighsIn(s) || v.mends(s) {
			return true
		}
	}
	iced := slices.ContainsFunc(
		a.Plan, func(s Step) bool { return s.Do.Code == "step.cold-defrost-now" },
	)
	if !iced {
		return false
	}
	writeDown(&v.visit, "cold-coil-iced", false) // it was melted, and nothing made it
	v.visit.Conditions.CoilIced = false
	return v.anew("cold-evaporator")
}

// looksFor are the looks that a step asks for without being one: a compressor is proved to leak
// before it is condemned, a drier is felt before it is renewed, and ice has a reason.
var looksFor = map[fact.Code][]string{
	"mend.cold-compressor":         {"cold-pump-down"},
	"mend.cold-compressor-valves":  {"cold-pump-down"},
	"mend.cold-compressor-stopped": {"cold-pump-down"},
	"mend.cold-drier-stopped":      {"cold-drier-drop"},
	"step.cold-why-iced":           {"cold-evaporator-fans", "cold-defrost-works", "cold-door-leaks"},
}

// looks answers a look, or the next of those that a step asks for.
func (v *coldVisit) looks(s *Step) bool {
	for _, look := range append(looksFor[s.Do.Code], s.Look) {
		is := func(c Check) bool { return c.Look == look }
		if look != "" && !slices.ContainsFunc(v.visit.Checks, is) {
			v.done.looks++
			writeDown(&v.visit, look, v.bench.Look(look))
			return true
		}
	}
	return false
}

func (v *coldVisit) reads(s *Step) bool {
	readings, ok := s.Do.Value("readings")
	if !ok || s.Do.Code != StepRead {
		return false
	}
	terms, _ := readings.Of.(fact.Terms)
	taken := false
	for _, t := range terms {
		if v.bench.Read(strings.TrimPrefix(string(t), "reading.")) {
			v.done.readings++
			taken = true
		}
	}
	v.note()
	return taken
}

// anew reads a machine in which a cause was put right, with what was not found where it was looked
// for, and with what was seen that is of another cause.
func (v *coldVisit) anew(mended string) bool {
	if !v.bench.Again() {
		return false // a control stops it
	}
	v.note()
	v.visit.Checks = slices.DeleteFunc(v.visit.Checks, func(c Check) bool {
		remains := slices.ContainsFunc(seenCold, func(s seenToBe) bool {
			return s.look == c.Look && s.cause != mended
		})
		return c.Found && !remains
	})
	return true
}

// A seenToBe is a step that sees to what a look found, with the look, the cause and the fault.
type seenToBe struct {
	step               fact.Code
	look, cause, fault string
}

var seenCold = []seenToBe{
	{"step.cold-seen-dirt", "cold-condenser-dirt", "cold-condenser", "cold-condenser-dirty"},
	{
		"step.cold-seen-condenser-fan", "cold-condenser-fan-stands", "cold-condenser",
		"cold-condenser-fan",
	},
	{"step.cold-seen-fan", "cold-evaporator-fans", "cold-evaporator", "cold-evaporator-fan"},
	{"step.cold-seen-door", "cold-door-leaks", "cold-load", "cold-door"},
	{"step.cold-seen-bulb", "cold-bulb-off", "cold-flooding", "cold-bulb-loose"},
	{"step.cold-seen-defrost", "cold-defrost-works", "cold-evaporator", "cold-defrost"},
	{"step.cold-seen-termination", "cold-defrost-by-clock", "cold-load", "cold-defrost-heats"},
}

// sees puts right what was seen, or finds that it is not so.
func (v *coldVisit) sees(s *Step) bool {
	at := slices.IndexFunc(seenCold, func(x seenToBe) bool { return x.step == s.Do.Code })
	if at < 0 {
		return false
	}
	by := &seenCold[at]
	if (v.bench.Fault == by.fault || v.bench.SecondFault == by.fault) && v.bench.Mend(by.cause) {
		v.done.mends++
	} else {
		v.done.inVain++
	}
	writeDown(&v.visit, by.look, false)
	return v.anew(by.cause)
}

// doses moves what the plan says, with an eye on glass, level and head; false where the plan says
// no more, or to take out what lets the head fall no more.
func (v *coldVisit) doses(s *Step) bool {
	amount, ok := s.Do.Value("mass")
	mass, _ := amount.Of.(quantity.Mass)
	if !s.Moves || !ok || !s.Adds && v.fallsNoMore {
		return false
	}
	v.done.doses++
	off, head := v.bench.ChargeError(), v.bench.Liquid.Value
	if s.Adds && off > 0.1 || !s.Adds && off < -0.1 {
		v.done.wrongWay++
	}
	m := Move{At: v.at, Added: mass}
	if !s.Adds {
		m.Added, m.Recovered, mass = 0, mass, -mass
	}
	v.visit.Moves = append(v.visit.Moves, m)
	v.at += 30 * time.Minute
	v.visit.Conditions.ReadAt = v.at - time.Minute
	if !v.bench.Add(mass) {
		return false
	}
	v.note()
	v.fallsNoMore = !s.Adds && v.bench.Liquid.Value > head-quantity.PSIG(1)
	level, full := v.bench.Spare()
	sees := map[string]bool{"cold-glass": level < 0, "cold-receiver-low": level < full/2}
	for i := range v.visit.Checks {
		if found, ok := sees[v.visit.Checks[i].Look]; ok {
			v.visit.Checks[i].Found = found
		}
	}
	return true
}

// weighsIn empties the circuit, mends its leak and weighs the right charge in.
func (v *coldVisit) weighsIn(s *Step) bool {
	c := &v.visit.Conditions
	if s.Do.Code != StepEvacuate || c.ChargeWeighed {
		return false
	}
	if v.bench.Charged() && v.bench.Truth != "cold-gas" {
		v.done.needless++
	}
	v.bench.WeighIn()
	v.visit.Moves, c.ReadAt, v.at = nil, 0, 20*time.Minute
	c.OilStains, c.ChargeWeighed = false, true
	return v.anew("cold-undercharge")
}

// deniedBy are the looks that say of a cause that it is not there, once somebody went to mend it.
var deniedBy = map[string][]string{
	"cold-condenser":   {"cold-condenser-dirt", "cold-condenser-fan-stands"},
	"cold-evaporator":  {"cold-coil-iced", "cold-evaporator-fans", "cold-defrost-works"},
	"cold-restriction": {"cold-drier-drop"}, "cold-starving": {"cold-bulb-warm"},
	"cold-flooding": {"cold-bulb-off"}, "cold-compressor": {"cold-pump-down"},
	"cold-head-low": {"cold-head-holds"}, "cold-head-high": {"cold-head-holds"},
	"cold-load":        {"cold-door-leaks", "cold-warm-product"},
	"cold-short-cycle": {"cold-cycles"}, "cold-clamp": {"cold-second-clamp"},
}

// mends puts a cause right, or finds by its next look that it is not there.
func (v *coldVisit) mends(s *Step) bool {
	if s.Cause == "" || s.Look != "" {
		return false
	}
	if v.bench.Mend(s.Cause) {
		v.done.mends++
		return v.anew(s.Cause)
	}
	for _, look := range deniedBy[s.Cause] {
		if no := (Check{Look: look}); !slices.Contains(v.visit.Checks, no) {
			v.done.inVain++
			if s.Opens {
				v.done.needless++
			}
			writeDown(&v.visit, look, false)
			return true
		}
	}
	return false
}

// putRight reports whether nothing is wrong any more.
func (v *coldVisit) putRight() bool {
	ofCharge := []string{"cold-sound", "cold-undercharge", "cold-reserve", "cold-overcharge"}
	return slices.Contains(ofCharge, v.bench.Truth) && v.bench.Second == "" && v.bench.Charged()
}

// Visits to machines of the bench of cold rooms are worked through to their end. Of 3,000 each comes
// to one; the floors are three standard deviations of the sample under 99, 88 and 86 %. Who is
// called to a box that is too warm for its food is told so at once, and nobody else is.
func TestWholeVisitsInColdRooms(t *testing.T) {
	var food []*coldVisit
	begin := func(i int, rng *rand.Rand) workedVisit {
		var b *bench.Visit
		if i%6 == 5 {
			b = bench.DrawPair(rng)
		} else {
			b = bench.Draw(rng, 0.35)
		}
		v := newColdVisit(b, rng)
		food = append(food, v)
		kind, name := "slight", b.Fault
		switch {
		case b.Truth == "cold-sound":
			kind = "sound"
		case b.Second != "":
			kind, name = "two faults", b.Fault+"+"+b.SecondFault
		case b.Truth == "cold-clamp":
			kind = "instrument"
		case b.Strong:
			kind = "one fault"
		}
		return workedVisit{
			kind: kind, name: name, visit: &v.visit, done: &v.done, act: v.act,
			right: v.putRight, chargeError: b.ChargeError,
		}
	}
	groups, n := workThrough(t, visits{short: 100, usual: 300, full: 3000}, begin)
	groups.hold(t, "sound", 0.99)
	groups.hold(t, "one fault", 0.88)
	groups.hold(t, "two faults", 0.86)
	all := groups.all()
	if all.wrongWay > 1+n/1000 {
		t.Errorf("%d doses the wrong way", all.wrongWay)
	}
	if all.needless > 1+n/100 {
		t.Errorf("%d circuits opened in vain", all.needless)
	}
	warned := 0
	for i, v := range food {
		if v.warned {
			warned++
		}
		if v.plans > 0 && v.warned != v.tooWarm {
			t.Errorf("visit %d: box too warm for its food %v, told so %v", i, v.tooWarm, v.warned)
		}
	}
	t.Logf("%d boxes too warm for their food, each of them told at once", warned)
}
