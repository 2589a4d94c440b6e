package heatpump

import (
	"slices"
	"sort"
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A planner puts the steps in order.
type planner struct {
	c      *modes.Case
	b      *belief
	j      *modes.Judgement
	ranked []standing
	// why nothing is judged, zero where something is; blind that the readings tell nothing.
	why   fact.Fact
	blind bool
	// secured is the cause that the steps about a danger look for.
	secured string
}

func (p *planner) add(steps ...modes.Step) { p.j.Steps = append(p.j.Steps, steps...) }

// has reports whether a step is in the plan.
func (p *planner) has(codes ...fact.Code) bool { return modes.Has(p.j.Steps, codes...) }

func (p *planner) plan() {
	p.secure()
	// Readings that are not those of the machine as it runs tell nothing of it.
	p.blind = p.b.seen.count() < least || p.c.Seen.SealedSystemOpened || p.c.ReadBeforeMove ||
		!p.c.Moving.IsZero()
	switch {
	case p.c.Seen.SealedSystemOpened:
		p.why = fact.New("condition.circuit-opened")
		p.add(modes.Do("step.nitrogen"), modes.Do("step.evacuate"), p.c.WeighIn())
		p.j.WeighIn = p.c.Weighing
	case p.spoiled():
	case p.c.ReadBeforeMove:
		p.why = fact.New("charge.read-before-move")
		wait := fact.Of("wait", charge.WaitAfterMove())
		p.add(modes.Do("step.wait", wait).Because(p.why), modes.Do("step.read-again"))
	case !p.c.Moving.IsZero():
		p.why = p.c.Moving
		values := []fact.Value{}
		if w, ok := p.c.Moving.Value("wait"); ok {
			values = append(values, w)
		}
		p.add(modes.Do("step.settle", values...).Because(p.why))
	case p.notHeating():
	case p.blind:
		p.readFirst()
	case p.movedMuch():
	case p.b.of(contradiction) >= likely:
		p.why = fact.New("charge.contradictory")
		p.dirt()
		for i := range p.ranked { // what is likely beside that, and costs a look
			s := &p.ranked[i]
			if s.chance >= worth && s.code != sound && !ofCharge(s.code) {
				p.mend(s.code)
			}
		}
		p.thaw()
		if p.has("step.stop", "step.heating-thaw") {
			p.add(modes.Do("step.read-again"))
		} else {
			p.add(modes.Do("step.reread"))
		}
	default:
		p.byBelief()
	}
}

// mayFallShort is where a heat pump that is sound may give less than its house loses: common
// practice, no source.
var mayFallShort = quantity.Fahrenheit(40)

// secures is what is looked at, with the machine stopped, about a danger; in heating the head
// is a matter of the indoor air.
var secures = map[string]struct {
	step        fact.Code
	look, cause string
}{
	"condensing-highest": {"step.heating-indoor-air", "indoor-air-path", lowIndoorAir},
	"suction-in-vacuum":  {step: "step.open-valves"},
	"current-highest":    {step: "step.voltage"},
}

func (p *planner) secure() {
	for _, d := range p.j.Dangers {
		if !d.Stops {
			continue
		}
		p.add(modes.Do("step.stop").Because(d.Says))
		switch by := secures[d.Code]; {
		case by.step == "":
		case by.look == "":
			p.add(modes.Do(by.step))
		case !answered(p.c, by.look):
			step := modes.Do(by.step)
			step.Look, p.secured = by.look, by.cause
			p.add(step)
		}
		return
	}
	for _, d := range p.j.Dangers {
		if d.Code == "floodback" || d.Code == "slugging" {
			p.add(modes.Do("step.feel-compressor").Because(d.Says))
			return
		}
	}
}

// ways are what is done about the conditions that spoil the readings of a machine that heats.
var ways = map[string]fact.Code{
	"panels-off": "step.panels-on", "run-short": "step.run-on", "just-moved": "step.wait",
}

func (p *planner) spoiled() bool {
	for _, o := range p.c.Spoils {
		way, ours := ways[o.Code]
		if !ours || p.has("step.stop") && way != "step.panels-on" {
			continue
		}
		if p.why.IsZero() {
			p.why = o.Says
		}
		p.add(modes.Do(way, modes.WaitOf(o.Says)...).Because(o.Says))
	}
	if p.why.IsZero() {
		return false
	}
	p.blind = true
	p.dirt()
	p.thaw()
	p.add(modes.Do("step.read-again"))
	return true
}

// notHeating: a supply colder than the room is a defrost, or a machine in cooling.
func (p *planner) notHeating() bool {
	s, r := p.c.SupplyDryBulb, p.c.ReturnDryBulb
	const colder = quantity.TemperatureDelta(4 / 1.8)
	if s == nil || r == nil || r.Value.Sub(s.Value) < colder {
		return false
	}
	p.why = fact.New("charge.heating-cold-supply",
		fact.Amount("supply", s.Value), fact.Amount("return", r.Value))
	p.blind = true
	p.add(modes.Do("step.heating-defrosting").Because(p.why), modes.Do("step.read-again"))
	return true
}

func (p *planner) readFirst() {
	var missing fact.Terms
	for _, f := range []struct {
		name string
		has  bool
	}{
		{"suctionPressure", p.c.SuctionPressure != nil}, {"suctionLine", p.c.SuctionLine != nil},
		{"liquidPressure", p.c.LiquidPressure != nil}, {"liquidLine", p.c.LiquidLine != nil},
		{"outdoorDryBulb", p.c.OutdoorDryBulb != nil}, {"returnDryBulb", p.c.ReturnDryBulb != nil},
		{"supplyDryBulb", p.c.SupplyDryBulb != nil},
	} {
		circuit := strings.HasPrefix(f.name, "suction") || strings.HasPrefix(f.name, "liquid")
		if !f.has && !(circuit && p.c.NoLiquidPort) {
			missing = append(missing, fact.Term("reading."+f.name))
			p.j.Charge.Missing = append(p.j.Charge.Missing, f.name)
		}
	}
	p.why = fact.New("charge.heating-few")
	p.eyesFirst()
	if p.c.Running == 0 {
		p.add(modes.Do("step.run-on", fact.Of("wait", charge.ShortestRun())))
	}
	if len(missing) > 0 {
		p.add(modes.Do("step.read", fact.Of("readings", missing)))
		return
	}
	p.add(modes.Do("step.makers-chart", fact.Of("mode", fact.Term("mode.heating"))))
}

// eyesFirst has done what wants no gauges: ice or dirt outdoors, the air indoors.
func (p *planner) eyesFirst() {
	for _, code := range []string{"outdoor-ice", "outdoor-coil", "indoor-air-path"} {
		p.askFor(code)
	}
}

// movedMuch: a good part of the whole charge has been moved, and it is still not right.
func (p *planner) movedMuch() bool {
	if p.c.WholeCharge <= 0 || p.b.of(sound) >= likely {
		return false
	}
	share := float64(p.c.Moved / p.c.WholeCharge)
	if max(share, -share) <= charge.MostMoved() {
		return false
	}
	p.why = fact.New("charge.moved-much", fact.Of("share", fact.Share(max(share, -share))))
	p.add(modes.Do("step.halt", p.why.Values...))
	p.recharge(undercharge)
	return true
}

// dirt and ice that were seen are cleared; there is nothing to find out about them.
func (p *planner) dirt() {
	if !p.has("step.stop") {
		p.thaw()
	}
	if p.c.Seen.FilterDirty {
		p.add(modes.Do("step.clean-filter"))
	}
	if p.c.Seen.OutdoorCoilDirty {
		p.add(modes.Do("step.clean-outdoor"))
	}
}

// thaw melts the ice that stays on the outdoor coil, which the machine itself does as a rule.
func (p *planner) thaw() {
	if p.c.Seen.CoilIced && !p.has("step.heating-thaw") {
		thaw := modes.Do("step.heating-thaw")
		thaw.Effect = modes.Effect{Running: true}
		p.add(thaw)
	}
}

func (p *planner) byBelief() {
	d := p.b.decide(p.has("step.feel-compressor"))
	before := len(p.j.Steps)
	p.dirt()
	dirty := p.c.Seen.CoilIced || p.has("step.clean-filter", "step.clean-outdoor")
	p.lookFirst(d)
	looking := dirty || len(d.looks) > 0
	waits := !ofCharge(d.mend) && d.mend != ""
	if waits && ofCharge(p.ranked[0].code) {
		p.leakFirst()
	}
	p.act(d, looking, before)
	p.mendBeside(d)
	if waits && (p.leakFirst() || p.b.of(overcharge) >= likely && len(p.j.Steps) > before) {
		p.add(modes.Do("step.leave-charge"))
	}
	p.instrumentsFirst()
	p.putRight()
	if !looking && len(p.j.Steps) == before {
		p.withoutMend()
	}
	if len(p.j.Steps) == 1 && p.has("step.stop") {
		p.add(modes.Do("step.heating-why-stopped"))
	}
	if !p.has("step.evacuate") {
		p.thaw() // after what can be done while it is stopped
	}
	stays := p.has("step.charge-stays") && !p.has("step.stop")
	if !stays && !p.has("step.leave", "step.evacuate") {
		p.add(modes.Do("step.read-again"))
	}
}

// act does what the belief decides on; looking says that something is looked at first, and before
// how many steps stood already.
func (p *planner) act(d decision, looking bool, before int) {
	switch {
	case ofCharge(d.mend) && looking:
		if d.mend != overcharge {
			p.leakFirst()
		}
		if len(p.j.Steps) == before {
			p.chargeStays()
		} else {
			p.add(modes.Do("step.leave-charge"))
		}
	case ofCharge(d.mend):
		p.recharge(d.mend)
	case d.mend != "" && p.b.of(d.mend) >= worth && p.b.of(d.mend) > p.b.of(sound):
		// To look at an instrument is to put it right, and a hand on the reversing valve is its
		// proof.
		s := p.standing(d.mend)
		if byLook := s.ofInstrument || s.code == reversing; !byLook || !s.lookedAt(d.looks) {
			p.mend(d.mend)
		}
	}
}

// chargeStays leaves the charge as it is, and says how likely it is to be wrong all the same.
func (p *planner) chargeStays() {
	step := modes.Do("step.charge-stays")
	for _, code := range [...]string{undercharge, overcharge} {
		if chance := p.b.of(code); chance >= likely {
			step.Cause, step.Chance = code, chance
			step.Do = step.Do.With(fact.Of("chance", fact.Share(chance)))
		}
	}
	p.add(step)
}

// inSight are the steps that put right what a look found, whatever else is the matter, by the
// look, with the causes whose mending does so too.
var inSight = []struct {
	look   string
	step   fact.Code
	causes []string
}{
	{"indoor-air-path", "step.heating-seen-indoor", []string{lowIndoorAir}},
	{"outdoor-coil", "step.heating-seen-outdoor", []string{outdoorAir}},
	{"strips-current", "step.heating-seen-strips", []string{strips}},
	{"defrost-test", "step.heating-seen-defrost", []string{defrost, outdoorAir}},
	{"check-valves", "step.heating-seen-check", []string{"overfeed"}},
	{"valve-bulb", "step.heating-seen-bulb", []string{"overfeed", "restriction"}},
}

// putRight adds what a look found and no step of the plan is for yet.
func (p *planner) putRight() {
	for _, s := range inSight {
		found := slices.Contains(p.c.Answers, diagnose.Answer{Code: s.look, Yes: true})
		mended := slices.ContainsFunc(p.j.Steps, func(x modes.Step) bool {
			return slices.Contains(s.causes, x.Cause)
		})
		cleared := s.look == "indoor-air-path" && p.has("step.clean-filter") ||
			s.look == "outdoor-coil" && p.has("step.clean-outdoor")
		if found && !mended && !cleared {
			p.add(modes.Do(s.step))
		}
	}
}

// withoutMend is for a machine that there is nothing to do about yet: what a customer complained
// of is looked at before it is left alone, and a charge in warm weather is one of cooling.
func (p *planner) withoutMend() {
	o := p.c.OutdoorDryBulb
	switch {
	case p.complained():
	case p.has("step.stop"):
	case p.liquidReturns():
	case o != nil && o.Value >= warmest && ofCharge(p.ranked[0].code):
		p.add(modes.Do("step.heating-change-over", fact.Amount("outdoor", o.Value)))
	case p.b.of(sound) < likely && p.seeOthers():
	case p.b.of(sound) >= worth && p.b.of(undercharge, overcharge) < likely:
		p.leave()
	default:
		p.chargeStays()
	}
}

// seeOthers looks for the likeliest cause that nobody has looked for, where it is nearly as likely
// as not and no reading alone is wrong by it; false where none is left.
func (p *planner) seeOthers() bool {
	for i := range p.ranked {
		s := &p.ranked[i]
		for k := range looks {
			if s.chance >= 2*worth && !s.ofInstrument && s.lookedAt([]*look{&looks[k]}) &&
				p.askFor(looks[k].code) {
				return true
			}
		}
	}
	return false
}

// liquidReturns asks what lets liquid come back, where it does, and reports whether it does: such a
// machine is not left as it is.
func (p *planner) liquidReturns() bool {
	if !slices.ContainsFunc(p.j.Dangers, func(d modes.Danger) bool {
		return d.Code == "floodback" || d.Code == "slugging"
	}) {
		return false
	}
	p.askFor("check-valves")
	p.askFor("valve-bulb")
	if p.c.Complaint == "noise" {
		p.add(modes.Do(modes.FindNoise))
	}
	p.chargeStays()
	return true
}

// complaintLooks are the looks at what a customer complained of.
var complaintLooks = map[string][]string{
	"frozen coil": {"outdoor-ice", "defrost-test"}, "high bill": {"strips-current"},
}

// complained asks for the looks at what was complained of, and reports whether any is left.
func (p *planner) complained() bool {
	any := false
	for _, code := range complaintLooks[p.c.Complaint] {
		any = p.askFor(code) || any
	}
	return any
}

// askFor asks for a look, and reports whether the machine has what it looks at and nobody looked.
func (p *planner) askFor(code string) bool {
	i := slices.IndexFunc(looks, func(l look) bool { return l.code == code })
	l := &looks[i]
	if answered(p.c, code) || l.fits != nil && !l.fits(p.c) {
		return false
	}
	p.addLook(l)
	return true
}

func (p *planner) addLook(l *look) {
	if p.j.Ask == nil {
		p.j.Ask = p.b.question(l)
	}
	if slices.ContainsFunc(p.j.Steps, func(s modes.Step) bool { return s.Look == l.code }) {
		return
	}
	p.add(modes.Step{
		Do: lookFact(l.code, ""), Look: l.code, Effect: modes.Effect{Running: l.running},
	})
}

// lookFirst asks for the looks that were decided on.
func (p *planner) lookFirst(d decision) {
	for _, l := range d.looks {
		p.addLook(l)
	}
}

// leave is for a machine that nothing is found wrong with.
func (p *planner) leave() {
	t := p.c.OutdoorDryBulb
	if p.c.Seen.NotCoolingComplaint && t != nil && t.Value < mayFallShort {
		p.add(modes.Do("step.heating-auxiliary", fact.Amount("outdoor", t.Value)))
	}
	if p.c.Complaint == "noise" {
		p.add(modes.Do(modes.FindNoise))
	}
	p.add(modes.Do("step.leave"))
}

// mendBeside puts right what is worth it beside the cause that was decided on.
func (p *planner) mendBeside(d decision) {
	if ofCharge(d.mend) {
		return
	}
	for i := range p.ranked {
		s := &p.ranked[i]
		if s.chance >= worth && s.chance > p.b.of(sound) && s.code != sound &&
			!ofCharge(s.code) && s.code != d.mend && !s.lookedAt(d.looks) &&
			(s.chance >= likely || !s.denied(p.c)) {
			p.mend(s.code)
		}
	}
}

// leakFirst has the leak looked for where refrigerant is likely to be missing, and reports
// whether it is: nothing is added before the other causes are put right.
func (p *planner) leakFirst() bool {
	short := p.b.of(undercharge, nextToEmpty) >= likely
	if short && !answered(p.c, "oil-and-leak") && !p.has("step.find-leak") {
		p.add(modes.Do("step.find-leak"))
	}
	return short
}

// instrumentsFirst puts what is wrong with an instrument before what is wrong with the machine:
// it takes minutes, and the machine is judged by it. Mends come last in a plan so far.
func (p *planner) instrumentsFirst() {
	at := slices.IndexFunc(p.j.Steps, func(s modes.Step) bool { return s.Cause != "" })
	if at < 0 {
		return
	}
	rank := func(s modes.Step) int {
		if s.Cause != "" && p.standing(s.Cause).ofInstrument {
			return 0
		}
		return 1
	}
	after := p.j.Steps[at:]
	sort.SliceStable(after, func(i, j int) bool { return rank(after[i]) < rank(after[j]) })
}

// lookedAt reports whether a look of the plan answers for a cause.
func (s *standing) lookedAt(looks []*look) bool {
	return slices.ContainsFunc(looks, func(l *look) bool {
		return slices.ContainsFunc(s.cause.faults, func(f fault) bool {
			return l.chance(&atom{cause: s.cause, fault: &f}) >= 0.5
		})
	})
}

// denied reports whether a look that was taken was after a cause and did not find it.
func (s *standing) denied(c *modes.Case) bool {
	var taken []*look
	for i := range looks {
		if slices.Contains(c.Answers, diagnose.Answer{Code: looks[i].code}) {
			taken = append(taken, &looks[i])
		}
	}
	return s.lookedAt(taken)
}

func (p *planner) standing(code string) *standing {
	i := slices.IndexFunc(p.ranked, func(s standing) bool { return s.code == code })
	return &p.ranked[i]
}

// mend puts a cause right, by the name of its fault where one is likeliest by far.
func (p *planner) mend(code string) {
	if code == p.secured || code == contradiction {
		return
	}
	if code == gas && (p.askFor("liquid-clamp-second") || p.askFor(atRest)) {
		return // no charge is thrown away before the gas is proved, and a clamp takes minutes
	}
	s := p.standing(code)
	name, opens := code, false
	if len(s.faults) > 0 && s.faults[0].Chance >= 0.7 {
		name = s.faults[0].Fault
		i := slices.IndexFunc(s.cause.faults, func(f fault) bool { return f.code == name })
		opens = s.cause.faults[i].opens
	}
	if p.has(cleared[name]) {
		return
	}
	if other, ok := inHeating[name]; ok {
		name = other
	}
	for _, x := range found {
		if name == x.name && slices.Contains(p.c.Answers, diagnose.Answer{Code: x.look, Yes: true}) {
			name = x.then
		}
	}
	if name == "valve-before-compressor" && (answered(p.c, "reversing-valve") ||
		answered(p.c, "pressures-at-stop")) {
		name = code
	}
	if clear := (diagnose.Answer{Code: "indoor-air-path"}); code == lowIndoorAir &&
		slices.Contains(p.c.Answers, clear) {
		name = "air-beyond"
	}
	chance := fact.Of("chance", fact.Share(s.chance))
	p.add(modes.Step{
		Do: fact.New(fact.Code("mend."+name), chance), Cause: code, Chance: s.chance,
		// A drop of temperature shows while liquid flows.
		Effect: modes.Effect{Opens: opens, Running: code == "restriction"},
	})
}

// cleared are the steps that put right what was seen, by the fault that it is.
var cleared = map[string]fact.Code{
	"filter": "step.clean-filter", "outdoor-dirt": "step.clean-outdoor",
}

// atRest is the look that proves a gas in the refrigerant.
const atRest = "standing-pressure"

// found are the names of what is proved by its look, and how that is put right then.
var found = []struct{ name, look, then string }{
	{"reversing-valve-leak", reversing, "reversing-valve-found"},
	{reversing, reversing, "reversing-valve-found"},
	{gas, atRest, "gas-proved"},
}

// inHeating are causes that are gone about otherwise than in cooling.
var inHeating = map[string]string{
	"restriction": "heating-restriction", "overfeed": "heating-overfeed",
	notPumping: "heating-not-pumping", "vapor-leak": "valve-before-compressor",
	"compressor-valves": "valve-before-compressor",
}

// recharge: in heating no charge is tuned by pressures; it is weighed in.
func (p *planner) recharge(code string) {
	all := modes.Do("step.heating-recover-all").Because(fact.New("charge.heating-no-tuning"))
	all.Effect = modes.Effect{Moves: true, Stops: true}
	switch {
	case code == overcharge:
		p.add(all, modes.Do("step.evacuate"), p.c.WeighIn())
	case answered(p.c, "oil-and-leak") && p.b.of(nextToEmpty) < likely && !p.leakFound():
		p.add(all, modes.Do("step.nitrogen"), modes.Do("step.evacuate"), p.c.WeighIn())
	case p.leakFound():
		p.add(p.c.LeakPath()[1:]...) // it is not searched for again
	default:
		p.add(p.c.LeakPath()...)
	}
	p.j.WeighIn = p.c.Weighing
}

// leakFound says that a search found a leak.
func (p *planner) leakFound() bool {
	return slices.Contains(p.c.Answers, diagnose.Answer{Code: "oil-and-leak", Yes: true})
}
