package coldroom

import (
	"maps"
	"math"
	"slices"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// settled is how long a machine runs after a start, a defrost or a move of refrigerant before
// its readings count (common practice, no source).
const settled = 15 * time.Minute

// sure is the chance from which a circuit is opened for a shortage that only a level shows.
const sure = 0.75

// A planner puts the steps in order: what keeps the machine from harm, the food, and then the
// machine.
type planner struct {
	c       *modes.Case
	k       *known
	b       *belief
	ranking []ranked
	dangers []modes.Danger

	headline fact.Fact
	steps    []modes.Step
	weighIn  *charge.Weighing
	asked    *asked
	// looks are those of the plan: what they are after is mended where they find it.
	looks []*look
	// unjudged is why the charge is not judged, hold why no refrigerant is moved; missing
	// are the readings that are needed.
	unjudged, hold fact.Fact
	missing        []string
}

func (p *planner) add(code fact.Code, values ...fact.Value) *modes.Step {
	s := modes.Do(code, values...)
	if e, own := effects[code]; own {
		s.Effect = e
	}
	p.steps = append(p.steps, s)
	return &p.steps[len(p.steps)-1]
}

// effects of the steps of this mode alone.
var effects = map[fact.Code]modes.Effect{
	"step.cold-oil":                    {Running: true},
	"step.cold-run":                    {Running: true, Waits: true},
	"step.cold-add":                    {Starts: true, Moves: true, Adds: true},
	"step.cold-add-share":              {Starts: true, Moves: true, Adds: true},
	"step.cold-add-level":              {Starts: true, Moves: true, Adds: true},
	"step.cold-add-level-share":        {Starts: true, Moves: true, Adds: true},
	"step.cold-mend-leak":              {Stops: true, Opens: true},
	"step.cold-recover":                {Running: true, Moves: true},
	"step.cold-level":                  {Running: true},
	"step.cold-recover-standing":       {Moves: true},
	"step.cold-recover-standing-share": {Moves: true},
	"step.cold-start-level":            {Starts: true},
	"step.cold-start-frost":            {Starts: true},
	"step.cold-weigh-frost":            {Moves: true, Adds: true},
	"step.cold-restart":                {Starts: true},
	"step.cold-watch":                  {Running: true},
	"step.cold-weigh-glass":            {Moves: true, Adds: true},
	"step.cold-defrost-now":            {Waits: true},
	"step.cold-recover-share":          {Running: true, Moves: true},

	"mend.cold-compressor-stopped": {Starts: true},
}

func (p *planner) plan() {
	stop := p.stop()
	if !stop && p.in("floodback", "slugging") {
		p.add("step.feel-compressor")
	}
	switch {
	case p.opened():
	case p.contradicts():
	case p.early():
	case p.unread():
	case p.movedMuch():
	case p.iced():
	default:
		p.byBelief()
	}
	if p.headline.Code == "" {
		p.headline = p.answer()
	}
	p.foodAway()
	p.food()
}

// foodAway finds the food another cold place before the machine is opened, which takes hours.
func (p *planner) foodAway() {
	opens := slices.IndexFunc(p.steps, func(s modes.Step) bool {
		return s.Opens || s.Do.Code == "step.recover-rest" || s.Do.Code == "step.nitrogen"
	})
	if opens < 0 || !p.c.Room.Application.KeepsFood() || p.in("cold-food", "cold-frozen-food") {
		return
	}
	p.steps = slices.Insert(p.steps, opens, modes.Do(foodAway))
}

const foodAway = fact.Code("step.cold-food-away")

func (p *planner) in(codes ...string) bool {
	return slices.ContainsFunc(
		p.dangers, func(d modes.Danger) bool { return slices.Contains(codes, d.Code) },
	)
}

// stop is first where the machine may harm itself as it runs.
func (p *planner) stop() bool {
	for _, d := range p.dangers {
		if !d.Stops {
			continue
		}
		p.steps = append(p.steps, modes.Do("step.stop").Because(d.Says))
		p.unjudged = d.Says
		return true
	}
	return false
}

// food comes before everything that can wait, where it may get too warm or the machine is held up.
// A box that is as cold as it is kept, with a machine that runs on, is left in peace.
func (p *planner) food() {
	const screen = 3 // steps that are read at once
	told := modes.Has(p.steps[:min(screen, len(p.steps))], foodAway)
	if !p.warms() && (told || !p.holdsUp()) {
		return
	}
	first := 0
	if p.stopped() || !p.in("cold-food", "cold-frozen-food") && p.c.ReturnDryBulb != nil &&
		len(p.steps) > 0 && p.steps[0].Do.Code == "step.feel-compressor" {
		first = 1 // what harms the compressor at once comes before food that is cold
	}
	p.steps = slices.Insert(p.steps, first, p.aboutFood())
}

// warms says that the box may be too warm or get so: it is unread, near the limit of its food or
// warmer than it is kept, or the machine stands or defrosts first.
func (p *planner) warms() bool {
	const near = quantity.TemperatureDelta(2 / 1.8)
	box := p.c.ReturnDryBulb
	return box == nil || p.stopped() || p.has("step.cold-defrost-now", "step.cold-start-frost") ||
		p.k.value[signature.OverBox] > warmBox ||
		p.c.Room.Application.KeepsFood() && box.Value > p.k.usual.FoodLimit().At.Add(-near)
}

// holdsUp says that the plan stops the machine or takes something in hand, for which it stands.
func (p *planner) holdsUp() bool {
	stopping := []string{"cold-standing", "cold-pump-down", "cold-defrost-works"}
	return p.has(inSight...) || slices.ContainsFunc(p.steps, func(s modes.Step) bool {
		return s.Stops || s.Opens || s.Cause != "" && s.Cause != clamp ||
			slices.Contains(stopping, s.Look)
	})
}

func (p *planner) aboutFood() modes.Step {
	if !p.c.Room.Application.KeepsFood() {
		return modes.Do("step.cold-room-warms")
	}
	limit := p.k.usual.FoodLimit()
	box := p.c.ReturnDryBulb
	frozen := ""
	if p.k.usual.Frozen {
		frozen = "-frozen"
	}
	at := fact.Amount("limit", limit.At)
	switch {
	case box == nil:
		return modes.Do(fact.Code("step.cold-food-unknown"+frozen), at)
	case box.Value > limit.At:
		return modes.Do(
			fact.Code("step.cold-food-move"+frozen), fact.Amount("box", box.Value), at,
		)
	}
	return modes.Do(fact.Code("step.cold-food"+frozen), fact.Amount("box", box.Value), at)
}

// opened: a circuit that was open is charged by weight.
func (p *planner) opened() bool {
	if !p.c.Seen.SealedSystemOpened {
		return false
	}
	p.unjudged = fact.New("charge.cold-opened")
	p.headline = fact.New("headline.cold-weigh")
	p.closed()
	return true
}

// early: readings that are not those of the machine as it keeps its box.
func (p *planner) early() bool {
	wait := settled - p.c.Running
	switch {
	case p.unjudged.Code != "":
		return false
	case p.c.ReadBeforeMove:
		p.unjudged = fact.New("charge.read-before-move")
		wait = settled
	case p.c.Running > 0 && wait > 0 && !p.c.Seen.CoilIced:
		p.unjudged = fact.New("charge.cold-early", fact.Of("running", p.c.Running))
	default:
		return false
	}
	p.headline = fact.New("headline.cold-early", fact.Of("why", fact.Term(p.unjudged.Code))).
		With(p.unjudged.Values...)
	p.add("step.cold-run", fact.Of("wait", wait.Round(time.Minute)))
	p.add("step.read-again")
	return true
}

// movedMuch: a good part of the whole charge has been moved, and it is still not right: what else
// lets vapor into the line is looked for, and all of it is weighed in anew.
func (p *planner) movedMuch() bool {
	if p.c.WholeCharge <= 0 || p.b.cause(sound) >= likely || p.stopped() {
		return false
	}
	share := math.Abs(float64(p.c.Moved / p.c.WholeCharge))
	if share <= charge.MostMoved() {
		return false
	}
	p.unjudged = fact.New("charge.moved-much", fact.Of("share", fact.Share(share)))
	p.headline = fact.New("headline.moved-much")
	p.add("step.halt", p.unjudged.Values...)
	p.look("cold-drier-drop", "cold-receiver-low", "cold-head-holds", "cold-glass")
	p.putRight()
	p.add("step.find-leak")
	if p.asked != nil {
		p.add("step.leave-charge")
	} else {
		p.wholeCharge()
	}
	p.watch()
	return true
}

// least is how many readings a belief starts from.
const least = 3

// unread asks for the readings that a judgement starts from.
func (p *planner) unread() bool {
	has := 0
	for _, f := range []int{
		signature.Difference, signature.Superheat, signature.Subcooling, signature.OverOutdoor,
	} {
		if p.k.read(f) {
			has++
		}
	}
	if has >= least || has >= 1 && p.unjudged.Code != "" {
		return false
	}
	if p.iced() { // ice that was seen is melted before anything is read
		return true
	}
	c := p.c
	for _, r := range []struct {
		name string
		has  bool
	}{
		{"suctionPressure", c.SuctionPressure != nil}, {"suctionLine", c.SuctionLine != nil},
		{"liquidPressure", c.LiquidPressure != nil}, {"liquidLine", c.LiquidLine != nil},
		{"returnDryBulb", c.ReturnDryBulb != nil}, {"outdoorDryBulb", c.OutdoorDryBulb != nil},
	} {
		if !r.has {
			p.missing = append(p.missing, r.name)
		}
	}
	terms := modes.ReadingTerms(p.missing)
	if p.unjudged.Code == "" {
		p.unjudged = fact.New("charge.cold-unread", fact.Of("readings", terms))
		p.headline = fact.New("headline.cold-unread")
	}
	if p.c.ReturnDryBulb != nil && !p.stopped() { // the eye wants no gauges
		p.look(
			"cold-coil-iced", "cold-evaporator-fans", "cold-condenser-dirt",
			"cold-condenser-fan-stands",
		)
	}
	p.putRight()
	p.add("step.read", fact.Of("readings", terms))
	return true
}

// believed reports whether the belief is worth telling although the charge is not judged.
func (p *planner) believed() bool {
	return p.missing == nil && p.headline.Code != "headline.cold-early" &&
		!p.c.Seen.SealedSystemOpened
}

// iced: the coil is freed first; what is found of it by the gauges is that of the ice.
func (p *planner) iced() bool {
	yes, asked := p.k.answers["cold-coil-iced"]
	if !p.c.Seen.CoilIced && !(asked && yes) || p.stopped() {
		return false
	}
	p.unjudged = fact.New("charge.cold-iced")
	p.add("step.cold-defrost-now")
	// What the gauges show is that of the ice.
	p.look("cold-evaporator-fans", "cold-defrost-works", "cold-door-leaks")
	why := fact.Of("defrost", p.defrost())
	r := p.rank(evaporator)
	if r.chance < likely {
		p.headline = fact.New("headline.cold-iced")
	}
	switch {
	case p.k.answers["cold-defrost-works"]:
		s := p.add("step.cold-seen-defrost", why)
		s.Cause, s.Chance = r.code, r.chance
	case r.chance < likely:
		p.add("step.cold-why-iced", why)
	case faults[r.faults[0]].code == "cold-defrost": // the ice itself is seen to already
		s := p.add("step.cold-why-iced", why)
		s.Cause, s.Chance = r.code, r.chance
	default:
		p.mend(r)
	}
	for i := range p.ranking {
		r := &p.ranking[i]
		if r.chance >= likely && r.code != sound && r.code != evaporator && !p.ofCharge(r) {
			p.mend(r)
		}
	}
	p.putRight()
	if p.low() >= likely { // a coil that is short of refrigerant ices where it is fed
		p.add("step.find-leak")
	}
	p.watch()
	return true
}

func (p *planner) defrost() fact.Term {
	d := p.c.Room.Defrost
	if d == 0 {
		d = coldroom.OffCycle
		if p.k.usual.Frozen {
			d = coldroom.Electric
		}
	}
	return fact.Term("defrost." + d.String())
}

func (p *planner) rank(code string) *ranked {
	for i := range p.ranking {
		if p.ranking[i].code == code {
			return &p.ranking[i]
		}
	}
	return &p.ranking[0]
}

// look asks for the look that is worth most, of those that are named where any are.
func (p *planner) look(after ...string) {
	if p.asked = p.b.next(p.k, after...); p.asked == nil {
		return
	}
	l := p.asked.look
	if l.running && p.stopped() {
		p.asked = nil
		return
	}
	p.askFor(l)
	if !p.found(&faults[p.ranking[0].faults[0]]) {
		p.lookOn(after...)
	}
}

func (p *planner) askFor(l *look) {
	p.looks = append(p.looks, l)
	s := p.add(fact.Code("look." + l.code))
	s.Look, s.Running = l.code, l.running
}

// lookOn asks for a second look where it would be worth its minutes if the first finds nothing,
// and takes few.
func (p *planner) lookOn(after ...string) {
	k := *p.k
	k.answers = maps.Clone(k.answers)
	k.answers[p.asked.look.code] = false
	b := weigh(&k, p.b.clusters)
	next := b.next(&k, after...)
	if next == nil || next.look.minutes > fewMinutes || next.look.running && p.stopped() {
		return
	}
	// What is nearly certain by then is gone after first.
	const nearly = 0.85
	if cause, chance := b.bestCause(b.faults); chance >= nearly && !next.look.after(cause) {
		return
	}
	p.askFor(next.look)
	if last := len(p.steps) - 1; 2*next.look.minutes < p.asked.look.minutes { // much the shorter
		p.steps[last-1], p.steps[last] = p.steps[last], p.steps[last-1]
	}
}

// asksAfter says that a look of the plan would find a fault that none has found yet.
func (p *planner) asksAfter(f *fault) bool {
	return !p.found(f) &&
		slices.ContainsFunc(p.looks, func(l *look) bool { return l.chance(f) >= likely })
}

// found says that a look that was taken found a fault.
func (p *planner) found(f *fault) bool {
	if f.code == pullsDown && p.k.course.falls() {
		return true
	}
	for i := range looks {
		l := &looks[i]
		if l.chance(f) >= likely && (p.k.answers[l.code] || slices.Contains(p.k.hints, l.code)) {
			return true
		}
	}
	return false
}

// proved says that a look found a fault that is after that very one.
func (k *known) proved(f *fault) bool {
	return slices.ContainsFunc(looks, func(l look) bool {
		return k.answers[l.code] && l.of[f.code] >= likely
	})
}

// byBelief looks where a look is worth it, and mends what is likely.
func (p *planner) byBelief() {
	stopped := p.stopped()
	top := &p.ranking[0]
	if p.c.ReturnDryBulb == nil && !stopped { // how warm the box is says what to look for
		p.add("step.read", fact.Of("readings", fact.Terms{"reading.returnDryBulb"})).
			Field = "returnDryBulb"
	} else {
		p.look()
	}
	p.bulb()
	low := p.low()
	p.heldUp(low)
	if low >= likely && p.in(suctionInVacuum) && p.asked == nil && !p.beside() {
		p.add("step.find-leak")
		p.wholeCharge()
		return
	}
	waits := p.asked != nil || stopped || p.has("step.read") || p.beside()
	p.missingCharge(low, waits)
	p.mends(low, waits)
	p.slowLookLast()
	if low >= likely && (stopped || p.beside()) {
		p.add("step.find-leak")
	}
	p.suctionLine()
	p.tooCold()
	p.complained()
	p.putRight()
	p.oilMarks()
	asks := p.looks != nil || p.has(inSight...) ||
		p.has("step.read", "step.cold-too-cold", "step.find-leak")
	if top.code == sound && !asks && low < likely && !stopped {
		if !p.has("step.cold-drain") {
			p.add("step.cold-leave")
		}
		return
	}
	if stopped && len(p.steps) == 1 {
		p.add("step.cold-why-stopped")
	}
	if p.hold.Code != "" {
		p.add("step.leave-charge")
	}
	p.oil()
	if stopped {
		if !p.has("step.cold-start-level", "step.cold-start-frost") {
			p.add("step.cold-restart")
		}
		return
	}
	p.watch()
}

// stopped says that the plan begins with a stop.
func (p *planner) stopped() bool {
	return len(p.steps) > 0 && p.steps[0].Do.Code == "step.stop"
}

// bulb asks for the superheat at the bulb, which alone tells what the valve does.
func (p *planner) bulb() {
	if p.stopped() || p.has("step.read") || !p.b.wantsBulb(p.k) {
		return
	}
	p.add("step.read", fact.Of("readings", fact.Terms{"reading.bulbLine"})).Field = "bulbLine"
}

// sights are what a look finds that is put right whatever else is the matter, by the look, with
// the fault that it is; ice is seen to by itself.
var sights = []struct {
	look, fault string
	step        fact.Code
}{
	{"cold-condenser-dirt", "cold-condenser-dirty", "step.cold-seen-dirt"},
	{"cold-condenser-fan-stands", "cold-condenser-fan", "step.cold-seen-condenser-fan"},
	{"cold-evaporator-fans", "cold-evaporator-fan", "step.cold-seen-fan"},
	{"cold-door-leaks", "cold-door", "step.cold-seen-door"},
	{"cold-bulb-off", "cold-bulb-loose", "step.cold-seen-bulb"},
	{"cold-defrost-by-clock", defrostHeats, "step.cold-seen-termination"},
}

// inSight are the steps of sights.
var inSight = func() (out []fact.Code) {
	for i := range sights {
		out = append(out, sights[i].step)
	}
	return out
}()

// putRight adds what was seen and no step of the plan is for yet.
func (p *planner) putRight() {
	for _, s := range sights {
		seen := p.k.answers[s.look] || slices.Contains(p.k.hints, s.look)
		of := slices.IndexFunc(faults, func(f fault) bool { return f.code == s.fault })
		mends := []fact.Code{fact.Code("mend." + s.fault), fact.Code("mend." + faults[of].cause)}
		if seen && !p.has(mends...) {
			p.add(s.step)
		}
	}
}

// oilMarks has the leak looked for where oil marks it, however sound the readings are.
func (p *planner) oilMarks() {
	if p.k.stains && !p.has("step.find-leak") {
		p.add("step.find-leak")
	}
}

// complained has looked at what was complained of before a machine is left alone.
func (p *planner) complained() {
	if p.c.Complaint == "water leak" {
		p.add("step.cold-drain")
	}
	if p.c.Complaint != "frozen coil" || p.stopped() {
		return
	}
	for i := range looks {
		l := &looks[i]
		if (l.code == "cold-coil-iced" || l.code == "cold-defrost-works" && p.k.heated) &&
			p.k.open(l) && !slices.Contains(p.looks, l) {
			p.askFor(l)
		}
	}
}

// suctionLine has the pipe seen that warms its vapor on the way more than such pipes do; the valve
// is not to blame for that.
func (p *planner) suctionLine() {
	if p.k.gain > 0 && p.b.cause(clamp) < worth {
		p.add("step.cold-suction-line", fact.Amount("gain", p.k.gain))
	}
}

// tooCold has what should have stopped a machine seen to that runs on in a box colder than it is
// kept.
func (p *planner) tooCold() {
	if p.k.tooCold {
		p.add("step.cold-too-cold", fact.Amount("box", p.k.usual.Box.Value))
	}
}

// oil stays out in a coil that is starved, and is washed out of a compressor that is flooded.
func (p *planner) oil() {
	if p.stopped() || p.has("step.evacuate") || p.k.usual.Receiver < 0.5 {
		return // a small sealed compressor has no glass to see it by
	}
	for _, code := range []string{undercharge, restriction, starving, flooding} {
		if p.b.cause(code) >= likely {
			p.add("step.cold-oil")
			return
		}
	}
}

// missingCharge is what is done where refrigerant is likely to be missing; waits that something
// comes before it.
func (p *planner) missingCharge(low float64, waits bool) {
	onlyLevel := p.b.cause(reserve) > p.b.cause(undercharge)
	level := p.k.answers["cold-receiver-low"]
	switch {
	case low < likely && low >= worth && level && onlyLevel && !p.stopped():
		p.markLevel()
	case low < likely:
	case waits:
		p.hold = fact.New("charge.look-first")
	case p.shutOff():
		p.add("step.find-leak")
		p.hold = fact.New("charge.look-first")
	case onlyLevel && low < sure && p.c.Moved == 0:
		// Nothing shows but a level, which may be that of a cool day.
		p.markLevel()
	case onlyLevel:
		p.short("step.cold-add-level")
	default:
		p.short("step.cold-add")
	}
}

// shutOff asks for the receiver's level where nothing tells yet that the liquid is not there:
// behind a valve that stays shut all of it stands in the receiver, and the gauges read as if it
// were gone.
func (p *planner) shutOff() bool {
	const level = "cold-receiver-low"
	at := slices.IndexFunc(looks, func(l look) bool { return l.code == level })
	has := p.c.Room.Receiver
	if has == nil || !*has || p.levelKnown() || p.stopped() || !p.k.open(&looks[at]) {
		return false
	}
	p.askFor(&looks[at])
	return true
}

// heldUp asks, where suction was pulled into a vacuum and the machine stopped for it, whether
// liquid is held up ahead of a valve: nothing is recovered before that is known. Where the head is
// below the saturation of its air there is no liquid anywhere, and nothing to ask.
func (p *planner) heldUp(low float64) {
	at := slices.IndexFunc(looks, func(l look) bool { return l.vacuum })
	_, done := p.k.answers[looks[at].code]
	if done || !p.k.vacuum || !p.k.valve || !p.stopped() || low < likely || p.asked != nil ||
		p.k.below(signature.OverOutdoor) || p.levelKnown() {
		return
	}
	a := p.b.ask(&looks[at])
	p.asked = &a
	p.askFor(a.look)
}

// levelKnown says that a look tells already whether liquid reaches the valve.
func (p *planner) levelKnown() bool {
	return slices.ContainsFunc(
		[]string{"cold-glass", "cold-receiver-low", "cold-drier-drop"},
		func(code string) bool { _, asked := p.k.answers[code]; return asked },
	)
}

// markLevel has the leak looked for and the level watched; no refrigerant is moved on it.
func (p *planner) markLevel() {
	p.add("step.find-leak")
	p.add("step.cold-mark-level")
	p.hold = fact.New("charge.cold-level-only")
}

// mends puts right what is worth it, but for a shortage.
func (p *planner) mends(low float64, waits bool) {
	for i := range p.ranking {
		r := &p.ranking[i]
		if r.code == sound || r.chance < worth || r.chance < p.b.cause(sound) ||
			low >= likely && (r.chance < likely || p.ofCharge(r)) {
			continue
		}
		if p.ofCharge(r) && waits && !p.gasProved(r) && !p.holdsTooMuch(r) {
			p.hold = fact.New("charge.look-first")
			continue
		}
		if i > 0 && p.asked != nil && r.chance < likely {
			continue // the look comes first
		}
		switch {
		case r.code == gas && p.gasProved(r):
			p.gas()
		case r.code == overcharge && r.chance >= likely:
			p.over()
		case !p.ofCharge(r):
			p.mend(r)
		}
	}
}

// gasProved says that a machine has a gas in it, by the pressure at which it stands. Where nobody
// read that yet, it is asked for: no charge is thrown away on what else makes a head high.
func (p *planner) gasProved(r *ranked) bool {
	if r.code != gas || r.chance < likely || p.asked != nil || p.beside() {
		return false
	}
	const code = "cold-standing"
	proved, answered := p.k.answers[code]
	if at := slices.IndexFunc(looks, func(l look) bool { return l.code == code }); !answered {
		a := p.b.ask(&looks[at])
		p.asked, p.hold = &a, fact.New("charge.look-first")
		p.askFor(a.look)
	}
	return proved
}

// holdsTooMuch says that nothing but too much refrigerant is likely in a machine that stands for
// its head, and nothing is left to look at: it does not run before some of it is out.
func (p *planner) holdsTooMuch(r *ranked) bool {
	return r.code == overcharge && r.chance >= sure && p.stopped() && p.asked == nil &&
		!p.beside() && !p.has("step.read")
}

// slowLookLast puts a look that takes half an hour behind what is mended meanwhile without opening
// the circuit: it may be answered by that.
func (p *planner) slowLookLast() {
	if p.asked == nil || p.asked.look.minutes < manyMinutes {
		return
	}
	at := slices.IndexFunc(p.steps, func(s modes.Step) bool { return s.Look == p.asked.look.code })
	last := len(p.steps) - 1
	mends := func(s modes.Step) bool { return s.Cause != "" }
	waits := func(s modes.Step) bool { return s.Opens || s.Moves }
	if at < 0 || !slices.ContainsFunc(p.steps[at:], mends) ||
		slices.ContainsFunc(p.steps[at:], waits) {
		return
	}
	slow := p.steps[at]
	copy(p.steps[at:], p.steps[at+1:])
	p.steps[last] = slow
}

// beside says that something is likely that is put right before any refrigerant is moved.
func (p *planner) beside() bool {
	return slices.ContainsFunc(p.ranking, func(r ranked) bool {
		return r.chance >= likely && r.code != sound && !p.ofCharge(&r)
	})
}

// low is the chance that refrigerant is missing, whether it shows or not.
func (p *planner) low() float64 { return p.b.cause(undercharge) + p.b.cause(reserve) }

func (p *planner) ofCharge(r *ranked) bool {
	return slices.Contains([]string{undercharge, reserve, overcharge, gas}, r.code)
}

// watch ends a plan: the box tells whether it was right.
func (p *planner) watch() {
	if p.has("step.cold-leave", "step.cold-run") {
		return
	}
	p.add("step.read-again")
	p.add("step.cold-watch", fact.Amount("box", p.k.usual.Box.Value))
}

func (p *planner) has(codes ...fact.Code) bool {
	return modes.Has(p.steps, codes...)
}

// mend puts a cause right, by the name of its fault where one is likeliest by far. What a look of
// the plan would find waits for it.
func (p *planner) mend(r *ranked) {
	code, chance, opens := fact.Code("mend."+r.code), r.chance, false
	l := p.quickLook(&faults[r.faults[0]])
	if l != nil && p.unseen(r) && !slices.Contains(p.looks, l) {
		p.askFor(l)
		return
	}
	i := slices.IndexFunc(
		r.faults, func(f int) bool { return !p.asksAfter(&faults[f]) && !p.denied(r, f) },
	)
	if i < 0 {
		return
	}
	f := r.faults[i]
	if others := p.asksAfterAny(r); others || p.alone(r) {
		code, opens = fact.Code("mend."+faults[f].code), faults[f].opens
		if others {
			if chance = p.b.faults[f]; chance < worth {
				return
			}
			if l := p.quickLook(&faults[f]); l != nil && !p.found(&faults[f]) {
				p.askFor(l)
				return
			}
		}
	}
	switch _, warmed := p.k.answers["cold-bulb-warm"]; {
	case warmed && r.code == starving:
		code = "mend.cold-valve-inside"
	case r.code == compressor:
		code, opens = p.ofCompressor(code)
	}
	drier := opens && r.code == restriction
	whole := drier && !p.k.valve && !p.stopped()
	if whole && p.looks != nil {
		return // nothing is recovered before a look is answered
	}
	if drier {
		code = p.ofDrier(code, whole)
	}
	s := p.add(code, p.mendsWith(code, chance)...)
	s.Cause, s.Chance = r.code, chance
	s.Opens = s.Opens || opens
	if whole {
		p.closed()
	}
}

// denied says that a look was after one fault of several and did not find it, or that this machine
// cannot have it.
func (p *planner) denied(r *ranked, f int) bool {
	if len(r.faults) == 1 {
		return false
	}
	for i := range looks {
		found, asked := p.k.answers[looks[i].code]
		if asked && !found && looks[i].chance(&faults[f]) >= likely {
			return true
		}
	}
	return p.b.faults[f] == 0
}

// unseen says that a look comes before a cause is mended by its likeliest fault. What warms a box,
// and what keeps a coil from its air, is found by the eye, not by what is left over; and no circuit
// is opened for what a hand on the pipe would find in minutes.
func (p *planner) unseen(r *ranked) bool {
	f := &faults[r.faults[0]]
	coil := (r.code == condenser || r.code == evaporator) && p.alone(r) && !p.stopped()
	return (r.code == load || coil) && !p.found(f) || f.opens && !p.k.proved(f)
}

// mendsWith are the figures of a step that mends.
func (p *planner) mendsWith(code fact.Code, chance float64) []fact.Value {
	out := []fact.Value{fact.Of("chance", fact.Share(chance)), fact.Of("defrost", p.defrost())}
	if usual, ok := controlFigure(p.c, &p.k.usual); ok && code == "mend.cold-pressure-control" {
		out = append(out, usual.Values...)
	}
	if wait, ok := p.k.course.rest(p.k); ok && code == "mend."+pullsDown {
		out = append(out, fact.Of("wait", wait))
	}
	return out
}

// ofDrier is how one is renewed, else by code; behind a tube the whole charge is recovered, for
// there is no receiver to pump it into.
func (p *planner) ofDrier(code fact.Code, whole bool) fact.Code {
	switch {
	case whole:
		p.add("step.recover-rest")
		return "mend.cold-drier-tube"
	case p.stopped() && !p.k.answers["cold-drier-drop"]:
		return "mend.cold-drier-stopped"
	}
	return code
}

// ofCompressor is how a compressor is seen to that leaks within, else by code: no part is condemned
// before that is proved, and what has no valve to shut the liquid with cannot be pumped down.
func (p *planner) ofCompressor(code fact.Code) (_ fact.Code, opens bool) {
	if p.c.Room.Defrost == coldroom.HotGas { // its valve leaks as a compressor does
		p.add("step.cold-hot-gas")
	}
	switch {
	case p.k.answers["cold-pump-down"]:
		return "mend.cold-compressor-proved", true
	case p.k.usual.Receiver < 0.5:
		return "mend.cold-compressor-sealed", false
	case p.stopped():
		return "mend.cold-compressor-stopped", false
	}
	return code, false
}

// quickLook is an unanswered one that finds a fault in few minutes; nil for none.
func (p *planner) quickLook(f *fault) *look {
	for i := range looks {
		l := &looks[i]
		if l.minutes <= fewMinutes && l.chance(f) >= likely && p.k.open(l) &&
			!(l.running && p.stopped()) {
			return l
		}
	}
	return nil
}

// alone says that one fault of a cause is likeliest by far, or the only one that no look denied.
func (p *planner) alone(r *ranked) bool {
	const byFar = 0.7
	left := 0
	for _, f := range r.faults {
		if !p.denied(r, f) {
			left++
		}
	}
	return p.b.faults[r.faults[0]] >= byFar*r.chance || left == 1
}

func (p *planner) asksAfterAny(r *ranked) bool {
	return slices.ContainsFunc(r.faults, func(f int) bool { return p.asksAfter(&faults[f]) })
}
