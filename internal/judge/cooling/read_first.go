package cooling

import (
	"math"
	"slices"
	"strings"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// wrongSetting: where gauges are set to another refrigerant, or read from another place than the
// clamp, every figure is another's, and so is every rule about it.
func (k *planner) wrongSetting() bool {
	for _, c := range []diagnose.Code{
		diagnose.OtherRefrigerant, diagnose.SuctionHose, diagnose.LiquidHose,
	} {
		if k.b.present(c) {
			k.mend(c)
			k.Add(modes.ReadAgain)
			return true
		}
	}
	return false
}

// reread says what to see to before readings that cannot be are taken again.
func (k *planner) reread(d *readcheck.Doubt) {
	code := fact.Code("doubt." + d.Code)
	k.Add(code + ".mend").Why = fact.New(code, d.Values...)
}

// shown is how long after a start a compressor that pumps has made its difference, and a circuit
// with refrigerant in it has filled: common practice, no source.
const shown = 5 * time.Minute

// shownByNow: that next to nothing is in it, or nothing pumped, shows before all else has settled,
// and it is not run on for a reading more.
func (k *planner) shownByNow() bool {
	early := func(o charge.Obstacle) bool { return o.Code == "run-short" }
	return len(k.c.Spoils) > 0 && k.c.Running >= shown && k.c.Moving.IsZero() &&
		!slices.ContainsFunc(k.c.Spoils, func(o charge.Obstacle) bool { return !early(o) }) &&
		k.b.present(diagnose.NextToEmpty, diagnose.NotPumping)
}

// free is outdoor air that cools a building by itself: economizers change over well above it.
// Common practice, no source.
const free = quantity.Temperature((55 + 459.67) / 1.8)

// spoiled: what keeps the machine from running as it usually does is mended first, and
// nothing else is built on what was read.
func (k *planner) spoiled() bool {
	wet := func(o charge.Obstacle) bool { return ways[o.Code] == modes.DryCoil }
	if len(k.c.Spoils) == 1 && wet(k.c.Spoils[0]) && k.Stopped() {
		return false // it is not run on to dry
	}
	if len(k.c.Spoils) == 0 || k.b.cold() != nil {
		if !k.c.Moving.IsZero() {
			wait := fact.Of("wait", modes.Minutes(k.c.Course.Wait))
			k.Add(modes.Settle, wait).Why = k.c.Moving
		}
		return !k.c.Moving.IsZero()
	}
	for _, o := range k.c.Spoils {
		if o.Code == "run-short" && (k.Stopped() || k.waitsAsLongFor("just-moved", o)) {
			continue
		}
		way := ways[o.Code]
		if way == modes.MakersChart {
			k.Add(way, fact.Of("mode", fact.Term("mode.cooling"))).Why = o.Says
			return true
		}
		if way == modes.RunOn {
			k.lookBehind() // what it comes to by now waits for nothing
			k.dirt()
		}
		values := modes.WaitOf(o.Says)
		if air := k.c.OutdoorDryBulb; way == modes.CloseDamper && air != nil && air.Value < free {
			way = modes.WhyRuns
		}
		if way == modes.HouseRule {
			values = o.Says.Values
		}
		k.Add(way, values...).Why = o.Says
		if way == modes.Thaw {
			k.whyFroze()
		}
	}
	k.dirt()
	k.weighInstead()
	k.Add(modes.ReadAgain)
	return true
}

// warmerDay puts the charge off, or weighs it, where the weather alone keeps it from being judged.
func (k *planner) warmerDay() bool {
	cold := k.b.cold()
	if cold == nil || k.b.present(diagnose.OutdoorSensor) { // it is not cold then
		return false
	}
	k.Add(modes.WarmerDay).Why = cold.Says
	k.weighInstead()
	return true
}

// weighInstead: where readings are not judged by, the scale is.
func (k *planner) weighInstead() {
	if slices.ContainsFunc(k.c.Spoils, func(o charge.Obstacle) bool { return o.WeighIn }) {
		if k.j.WeighIn = k.c.Weighing; k.j.WeighIn == nil && k.Has(modes.WarmerDay) {
			k.Add(k.c.WeighingWants)
		}
	}
}

// waitsAsLongFor reports whether the wait for a condition lasts until another is gone too.
func (k *planner) waitsAsLongFor(code string, other charge.Obstacle) bool {
	left := func(o charge.Obstacle) (most time.Duration) {
		for _, v := range modes.WaitOf(o.Says) {
			most, _ = v.Of.(time.Duration)
		}
		return most
	}
	return slices.ContainsFunc(k.c.Spoils, func(o charge.Obstacle) bool {
		return o.Code == code && left(o) >= left(other)
	})
}

// readFirst asks for the readings that a judgement starts from.
func (k *planner) readFirst() {
	if k.waterFirst() {
		return
	}
	var missing []string
	for _, name := range []string{
		"suctionPressure", "suctionLine", "liquidPressure", "liquidLine", "outdoorDryBulb",
		"returnDryBulb", "returnWetBulb", "supplyDryBulb",
	} {
		if k.c.NoLiquidPort && strings.HasPrefix(name, "liquid") {
			continue
		}
		if !slices.Contains(k.c.Given, name) {
			missing = append(missing, name)
		}
	}
	if k.c.Seen.NotCoolingComplaint && len(k.c.Given) == 0 && !k.c.Metered {
		k.Add(modes.SeeRuns)
	}
	k.Add(modes.RunOn, fact.Of("wait", charge.ShortestRun()))
	k.Add(modes.Read, fact.Of("readings", modes.ReadingTerms(missing)))
}

// unexplained: readings that cannot be true together, and no cause that says why, are taken
// again before anything is built on them.
func (k *planner) unexplained() bool {
	if d := k.b.unexplained(); d != nil {
		k.reread(d)
		k.Add(modes.ReadAgain)
		return true
	}
	if k.b.Contradictory() {
		k.iceFirst() // beside which nothing reads as it should
		k.Add(modes.Reread)
		return true
	}
	return false
}

// slow: at less than its full capacity, which nobody told, a machine reads as one whose compressor
// moves too little does; it is run at full capacity before that one is proved.
func (k *planner) slow() bool {
	of := &k.c.Evidence.Known
	steps := of.Stages > population.SingleStage || of.Stages == 0 && k.c.Metering == refrigerant.EXV
	if d := &k.b.Decision; !steps || of.Share > 0 || d.Signature != diagnose.VaporLeak ||
		d.Chance < worth {
		return false
	}
	k.Add(modes.FullCapacity)
	k.Add(modes.ReadAgain)
	return true
}

// starved: without a reading of the liquid a leak and a restriction read alike; where no port has
// liquid, the scale tells them apart.
func (k *planner) starved() bool {
	if !k.b.starved() || k.c.Seen.FilterDirty || k.c.Seen.OutdoorCoilDirty || k.c.NoPairs {
		return false
	}
	var unread []string // of the suction
	if k.c.SuctionPressure == nil {
		unread = append(unread, "suctionPressure")
	}
	if k.c.SuctionLine == nil {
		unread = append(unread, "suctionLine")
	}
	if len(unread) == 2 { // the air alone says little of the circuit, or whether it runs at all
		idle := k.b.Probability(diagnose.NextToEmpty) + k.b.Probability(diagnose.NotPumping)
		if idle >= likely && !k.c.Metered && k.c.Current == nil && k.c.Power == nil {
			k.Add(modes.SeeRuns)
		}
		k.seeAir(fact.Fact{})
	} else if len(unread) == 0 {
		k.findLeak()
	}
	if k.b.Probability(diagnose.LowIndoorAir) >= worth/2 {
		k.seeAir(fact.Fact{})
	}
	if !k.c.NoLiquidPort {
		unread = append(unread, "liquidPressure", "liquidLine")
	}
	if len(unread) > 0 {
		k.Add(modes.Read, fact.Of("readings", modes.ReadingTerms(unread)))
		k.Add(modes.LeaveCharge)
		return true
	}
	k.Add(modes.RecoverWeigh)
	k.Add(modes.MendLeak)
	k.Add(modes.Nitrogen)
	k.Add(modes.Evacuate)
	k.byWeight()
	return true
}

// unread asks for what the charge is read from before a machine is left; false where it is there,
// where no port has it, or where nobody put gauges on a machine that is only maintained.
func (k *planner) unread() bool {
	maintained := k.c.Complaint == "maintenance" &&
		k.c.SuctionPressure == nil && k.c.LiquidPressure == nil
	if len(k.c.Wanting) == 0 || k.c.NoLiquidPort || maintained {
		return false
	}
	s := k.Add(modes.Read, fact.Of("readings", modes.ReadingTerms(k.c.Wanting)))
	s.Field = k.c.Wanting[0]
	return true
}

// readAside: what is farther off the label's own target than its tolerance and the instruments
// allow is looked at once more before it is left: the clamp first, then what makes it so; false
// where that was done, or there is no need.
func (k *planner) readAside() bool {
	r := k.c.Reading
	if r == nil || r.Deviation == nil || k.c.Target == nil || k.c.Target.General() ||
		k.b.cold() != nil {
		return false
	}
	const coverage = 2
	off := math.Abs(float64(r.Deviation.Value)) - float64(r.Tolerance)
	if off <= coverage*r.Deviation.Std {
		return false
	}
	looks := asides[r.Method].above
	if r.Deviation.Value < 0 {
		looks = asides[r.Method].below
	}
	return slices.ContainsFunc(looks, func(code string) bool { return k.lookAt(code, r.Says) })
}

// clampFirst looks at a line clamp that may lie, before a circuit is emptied by what it reads;
// false where none may, where that was done, or where a leak was found.
func (k *planner) clampFirst() bool {
	if found, _ := k.answer(leakLook); found {
		return false
	}
	for _, x := range clamps {
		if k.b.Probability(x.cause) >= diagnose.WorthDoubting && k.lookAt(x.look, fact.Fact{}) {
			return true
		}
	}
	return false
}
